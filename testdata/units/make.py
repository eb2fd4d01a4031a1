#!/usr/bin/env python3
"""Makes values.tsv: every unit that notation takes, turned by a program for units.

    apt-get install --no-install-recommends units
    python3 make.py > values.tsv

Columns: what, written, value, source. length, pitch, feed: mm; angle: degrees. Each value is what the program
gives to 15 figures for the expression behind the writing; the names of units are its own.
"""
import subprocess

VERSION = subprocess.run(["units", "--version"], capture_output=True, text=True).stdout.split("\n")[0]


def turned(expression, to):
    out = subprocess.run(["units", "-t", "-d", "15", expression, to], capture_output=True, text=True, check=True)
    return out.stdout.strip()


ROWS = []
for figure, plain in (("1", "1"), ("12", "12"), ("0.5", "0.5"), ("3/8", "3|8"), ("1 1/8", "(1+1|8)"), ("17/64", "17|64"), ("2.125", "2.125")):
    for word, unit in (("mm", "mm"), ("in", "inch"), ("inch", "inch"), ("inches", "inch"), ('"', "inch"), ("thou", "mil")):
        blank = "" if word == '"' else " "
        ROWS.append(("length", figure + blank + word, f"{plain} {unit}", "mm"))
for written, plain in (("1 deg", "1 degree"), ("1 degree", "1 degree"), ("22.5 degrees", "22.5 degree"), ("7\u00b0", "7 degree"),
                       ("30'", "30 arcmin"), ("30 min", "30 arcmin"), ('15"', "15 arcsec"), ("15 sec", "15 arcsec"), ("15''", "15 arcsec"),
                       ("22 deg 30'", "22 degree + 30 arcmin"), ("1 deg 30' 15\"", "1 degree + 30 arcmin + 15 arcsec")):
    ROWS.append(("angle", written, plain, "degree"))
for written, plain in (("0.1 mm/rev", "0.1 mm"), ("0.004 in/rev", "0.004 inch"), ("4 thou/tooth", "4 mil"), ("2 in/min", "2 inch"), ("60 mm/min", "60 mm")):
    ROWS.append(("feed", written, plain, "mm"))
for written, plain in (("8 tpi", "1|8 inch"), ("13 tpi", "1|13 inch"), ("11 1/2 tpi", "inch / (11+1|2)"), ("1.5 mm", "1.5 mm"), ("1/8 in", "1|8 inch")):
    ROWS.append(("pitch", written, plain, "mm"))
for written, plain in (("module 0.8", "0.8 pi mm"), ("diametral pitch 20", "pi inch / 20"), ("20 dp", "pi inch / 20")):
    ROWS.append(("worm pitch", written, plain, "mm"))

print(f"# What units come to, by {VERSION}; made by make.py. Columns: what, written, value, source.")
print("# length, pitch, worm pitch, feed: mm; angle: degrees.")
print("what\twritten\tvalue\tsource")
for what, written, expression, to in ROWS:
    print(f"{what}\t{written}\t{turned(expression, to)}\t{VERSION}: {expression}")

#!/usr/bin/env python3
"""Makes pieces.tsv: random milled pieces, and what the reference says of them.

    g++ -O2 reference.cpp -o reference -I/usr/include/opencascade -lTKernel -lTKMath \
        -lTKG2d -lTKG3d -lTKGeomBase -lTKBRep -lTKGeomAlgo -lTKTopAlgo -lTKPrim -lTKBO
    python3 make.py ./reference > pieces.tsv
    python3 make.py ./reference gaps > gaps.tsv
    python3 make.py ./reference mixed > mixed.tsv

One row a fact, millimetres and cubic millimetres; a piece's rows follow its row "piece".
  piece   number
  blank   box x0 y0 z0 x1 y1 z1  or  cone px py pz ux uy uz height r0 r1
  take    the same, one row a removal
  volume  of the piece
  ray     ox oy oz dx dy dz, then the spans of metal on the whole straight line
  tool    z0 z1 r0 r1 and the way of the tip x y z x y z, then the volume of the overlap of
          sweep and piece and their least distance (0 where they overlap)

In mixed.tsv (turned pieces, and turned ones that are milled) shapes may also be
          ball cx cy cz r  and  column n x y z ... dx dy dz  (an outline and the way it is drawn)
and a row "take" may name further shapes, each in its own column: what was left standing.

In gaps.tsv each row is a tool and its way as above, an obstacle, and their least distance.
"""
import math
import random
import subprocess
import sys

dice = random.Random(20240611)


def num(lo, hi):
    return round(dice.uniform(lo, hi), 3)


def pocket(size):
    """A pocket, step or slot from the top, the front or an end."""
    l, w, h = size
    x, y = num(-5, l), num(-5, w)
    return ("box", x, y, num(h * 0.3, h - 1), x + num(2, l / 2), y + num(2, w / 2), h + 1)


def web(size):
    """Two pockets with a thin wall between them."""
    l, w, h = size
    x, y, z = num(5, l - 15), num(2, w - 12), num(h * 0.3, h - 1)
    t = round(dice.choice([0.2, 0.3, 0.5, 1.0]), 3)
    m = x + num(2, 5)
    return [("box", x, y, z, m, y + num(5, 9), h + 1), ("box", m + t, y, z, m + t + num(2, 6), y + num(5, 9), h + 1)]


def cylinder(size, axis):
    l, w, h = size
    r = num(0.8, min(size) / 5)
    p = [num(0, l), num(0, w), num(0, h)]
    u = [0, 0, 0]
    u[axis] = 1
    full = size[axis]
    p[axis] = dice.choice([-1.0, num(1, full / 2)])
    return ("cone", *p, *u, full + 2, r, r)


def sink(size, axis):
    """A countersink or a drill's point."""
    l, w, h = size
    p = [num(3, l - 3), num(3, w - 3), num(3, h - 3)]
    u = [0, 0, 0]
    u[axis] = 1
    depth = num(1, 5)
    p[axis] = size[axis] - depth
    return ("cone", *p, *u, depth + 0.5, dice.choice([0.0, num(0.5, 1.5)]), num(2, 5))


def leaning(size):
    """A tilted hole."""
    l, w, h = size
    a, b = math.radians(num(10, 40)), math.radians(num(0, 360))
    u = [round(math.sin(a) * math.cos(b), 6), round(math.sin(a) * math.sin(b), 6), round(math.cos(a), 6)]
    r = num(0.8, 3)
    return ("cone", num(5, l - 5), num(5, w - 5), num(-3, h / 2), *u, h * 1.5, r, r)


def features(size, n):
    out = []
    while len(out) < n:
        k = dice.random()
        if k < 0.3:
            out.append(pocket(size))
        elif k < 0.45:
            out.extend(web(size))
        elif k < 0.75:
            out.append(cylinder(size, dice.randrange(3)))
        elif k < 0.92:
            out.append(sink(size, dice.randrange(3)))
        else:
            out.append(leaning(size))
    return out[:n]


def words(shape):
    return " ".join(str(round(x, 6)) if not isinstance(x, str) else x for x in shape)


def tool(size):
    """A piece of a stack and a way: standing still, level along x or y, or upright."""
    l, w, h = size
    z = num(h * 0.4, h + 0.5)
    at = (num(-2, l + 2), num(-2, w + 2), z)
    r0 = num(0.5, 4)
    r1 = dice.choice([r0, r0, num(0.5, 6)])
    to = list(at)
    kind = dice.randrange(4)
    if kind < 2 and r0 == r1:
        to[kind] = round(to[kind] + num(2, 25), 3)
    elif kind == 2 and r0 == r1:
        to[2] = round(to[2] + num(1, 8), 3)
    return num(2, 25), r0, r1, at, tuple(to)


def sweep(t):
    height, r0, r1, a, b = t
    lines = [words(("cone", *a, 0, 0, 1, height + b[2] - a[2], r0, r1))]
    if a[:2] != b[:2]:
        lines.append(words(("cone", *b, 0, 0, 1, height, r0, r1)) + "\nfuse")
        if a[0] != b[0]:
            lines.append(words(("box", a[0], a[1] - r0, a[2], b[0], a[1] + r0, a[2] + height)) + "\nfuse")
        else:
            lines.append(words(("box", a[0] - r0, a[1], a[2], a[0] + r0, b[1], a[2] + height)) + "\nfuse")
    return "\n".join(lines)


def ask(program, text, answers):
    try:
        done = subprocess.run([program], input=text, capture_output=True, text=True, timeout=60)
    except subprocess.TimeoutExpired:
        return None
    lines = done.stdout.split("\n")[:-1]
    return lines if done.returncode == 0 and len(lines) == answers else None


def piece(program, number):
    size = (num(30, 80), num(20, 50), num(10, 30))
    blank = ("box", 0, 0, 0, *size)
    if number % 10 == 9:  # a disc or a bar on its side
        r = num(10, 25)
        blank = ("cone", r, r, 0, 0, 0, 1, size[2], r, r) if number % 20 == 9 else ("cone", 0, r, r, 1, 0, 0, size[0], r, r)
        size = (2 * r, 2 * r, size[2]) if number % 20 == 9 else (size[0], 2 * r, 2 * r)
    cuts = features(size, 2 + (number * 7) % 29)
    rows = [("piece", number), ("blank", words(blank))] + [("take", words(c)) for c in cuts]
    text = words(blank) + "\n" + "".join(words(c) + "\ncut\n" for c in cuts)
    text += "keep\nvol\n"
    rays, tools = [], []
    for _ in range(12):
        o = [num(0, s) for s in size]
        d = [0, 0, 0]
        if dice.random() < 0.6:
            d[dice.randrange(3)] = 1
        else:
            d = [num(-1, 1), num(-1, 1), num(-1, 1)]
        rays.append((*o, *d))
        text += words(("ray", *rays[-1])) + "\n"
    for _ in range(5):
        t = tool(size)
        tools.append(t)
        text += "keep\n" + sweep(t) + "\ncommon\nvol\nkeep\n" + sweep(t) + "\ngap\n"
    got = ask(program, text, 1 + len(rays) + 2 * len(tools))
    if got is None:
        return None
    rows.append(("volume", got[0]))
    for r, line in zip(rays, got[1:]):
        rows.append(("ray", words(r), line))
    for i, t in enumerate(tools):
        height, r0, r1, a, b = t
        rows.append(("tool", words((0, height, r0, r1, *a, *b)), got[1 + len(rays) + 2 * i], got[2 + len(rays) + 2 * i]))
    return rows


def gaps(program):
    print("# Made by make.py gaps with the reference beside it; Open CASCADE Technology 7.6.3.")
    for number in range(200):
        lo = [num(0, 40), num(0, 40), num(0, 20)]
        if number % 3 == 0:
            r = num(2, 20)
            u = [0, 0, 0]
            u[dice.randrange(3)] = 1
            other = ("cone", *lo, *u, num(5, 40), r, r)
        elif number % 3 == 1:
            other = ("box", *lo, *[x + num(3, 30) for x in lo])
        else:
            a, b = num(-1, 1), num(-1, 1)
            other = ("cone", *lo, a, b, num(-1, 1), num(5, 40), num(0, 9), num(1, 9))
        t = tool((45, 45, 25))
        got = ask(program, sweep(t) + "\n" + words(other) + "\ngap\n", 1)
        if got:
            height, r0, r1, a, b = t
            print(words((0, height, r0, r1, *a, *b)), words(other), got[0], sep="\t")


# Turned and mixed work. The axis is x; its origin lies at the left end.

mixed_dice = random.Random(20261125)


def mnum(lo, hi):
    return round(mixed_dice.uniform(lo, hi), 3)


def out(angle):
    return 0.0, math.sin(angle), math.cos(angle)


def bar(length, r, number):
    kind = number % 5
    if kind == 3:  # hexagon, a flat towards top
        c = r / math.cos(math.pi / 6)
        ps = [(0, c * math.sin((2 * i + 1) * math.pi / 6), c * math.cos((2 * i + 1) * math.pi / 6)) for i in range(6)]
        return ("column", 6, *[x for p in ps for x in p], length, 0, 0)
    if kind == 4:
        return ("box", 0, -r, -r, length, r, r)
    return ("cone", 0, 0, 0, 1, 0, 0, length, r, r)


def turned_cut(length, r):
    """What turning takes: rings, tapers, balls, grooves with thin collars, bores."""
    big = 1.5 * r
    x = mnum(-3, length - 3)
    w = mnum(1, length / 3)
    k = mixed_dice.randrange(8)
    y, z = (mnum(-2, 2), mnum(-2, 2)) if mixed_dice.random() < 0.15 else (0.0, 0.0)
    slab = ("cone", x, y, z, 1, 0, 0, w, big, big)
    if k < 2:
        s = mnum(0.3 * r, 0.95 * r)
        return [[slab, ("cone", x, y, z, 1, 0, 0, w, s, s)]]
    if k == 2:
        return [[slab, ("cone", x, y, z, 1, 0, 0, w, mnum(0.3 * r, r), mnum(0.3 * r, r))]]
    if k == 3:
        s = mnum(0.5 * r, 0.9 * r)
        w = min(w, 1.6 * s)
        return [[("cone", x, y, z, 1, 0, 0, w, big, big), ("ball", round(x + w / 2, 4), y, z, s)]]
    if k == 4:  # two grooves with a thin collar between them
        s, t = mnum(0.4 * r, 0.8 * r), mixed_dice.choice([0.2, 0.3, 0.5, 1.0])
        at = [x, round(x + w / 3 + t, 4)]
        return [[("cone", a, y, z, 1, 0, 0, w / 3, big, big), ("cone", a, y, z, 1, 0, 0, w / 3, s, s)] for a in at]
    if k == 5:
        return [[("cone", x, y, z, 1, 0, 0, w, mnum(0.05 * r, 0.5 * r), mnum(0.05 * r, 0.5 * r))]]
    if k == 6:
        return [[("ball", x, y, z, mnum(0.1 * r, 0.5 * r))]]
    s = mnum(0.05 * r, 0.45 * r)
    return [[("cone", x, y, z, 1, 0, 0, w, s, s)]]


def milled_cut(length, r):
    """What is then milled: cross holes, tilted holes, flats, tee slots, dovetails, ball recesses."""
    x = mnum(2, length - 2)
    k = mixed_dice.randrange(7)
    a = mixed_dice.choice([0, math.pi / 2, math.pi, -math.pi / 2, mnum(0, 6.28)])
    u = [round(c, 9) for c in out(a)]
    s = mnum(0.04 * r, 0.3 * r)
    deep = mixed_dice.choice([-1.5 * r, mnum(-0.8 * r, 0.5 * r)])
    if k < 2:
        return [[("cone", x, *[c * deep for c in u[1:]], *u, round(1.5 * r - deep, 4), s, s)]]
    if k == 2:
        v = (round(mnum(-0.6, 0.6), 3), u[1], u[2])
        return [[("cone", x, *[c * deep for c in u[1:]], *v, round(2.5 * r, 4), s, s)]]
    if k == 3:
        h = mnum(0.5 * r, 0.95 * r)
        return [[("box", x, -1.5 * r, h, x + mnum(1, length / 3), 1.5 * r, 1.5 * r)]]
    w = mnum(1, length / 2)
    if k == 4:  # tee slot
        n, m = mnum(0.05 * r, 0.15 * r), mnum(0.16 * r, 0.3 * r)
        d, h = mnum(0.2 * r, 0.5 * r), mnum(0.05 * r, 0.18 * r)
        return [[("box", x, -n, d, x + w, n, 1.5 * r)], [("box", x, -m, d, x + w, m, d + h)]]
    if k == 5:  # dovetail
        n, d = mnum(0.1 * r, 0.25 * r), mnum(0.4 * r, 0.8 * r)
        top = r - 0.01
        m = n + (top - d) / math.tan(math.radians(60))
        ps = [(x, -m, d), (x, m, d), (x, n, top), (x, -n, top)]
        return [[("column", 4, *[c for p in ps for c in p], w, 0, 0)], [("box", x, -n, top, x + w, n, 1.5 * r)]]
    return [[("ball", x, *[c * r for c in u[1:]], mnum(0.1 * r, 0.4 * r))]]


def solid(blank, cuts):
    text = words(blank) + "\n"
    for c in cuts:
        text += words(c[0]) + "\n" + "".join(words(s) + "\ncut\n" for s in c[1:]) + "cut\n"
    return text


def mixed_piece(program, number):
    length, r = mnum(30, 90), mnum(8, 25)
    blank = bar(length, r, number)
    want, cuts = 2 + (number * 11) % 29, []
    while len(cuts) < want:
        mill = number % 2 == 1 and mixed_dice.random() < 0.6
        cuts += milled_cut(length, r) if mill else turned_cut(length, r)
    cuts = cuts[:want]
    rows = [("piece", number), ("blank", words(blank))] + [("take", *[words(s) for s in c]) for c in cuts]
    text = solid(blank, cuts) + "keep\nvol\n"
    rays, tools = [], []
    for _ in range(12):
        o = [mnum(0, length), mnum(-r, r), mnum(-r, r)]
        d = [0, 0, 0]
        if mixed_dice.random() < 0.5:
            d[mixed_dice.randrange(3)] = 1
        else:
            d = [mnum(-1, 1), mnum(-1, 1), mnum(-1, 1)]
        rays.append((*o, *d))
        text += words(("ray", *rays[-1])) + "\n"
    for _ in range(5):
        at = [mnum(-2, length + 2), mnum(-r, r), mnum(-0.3 * r, r)]
        to = list(at)
        r0 = mnum(0.5, 4)
        r1 = mixed_dice.choice([r0, r0, mnum(0.5, 6)])
        kind = mixed_dice.randrange(4)
        if kind < 2 and r0 == r1:
            to[kind] = round(to[kind] + mnum(2, 20), 3)
        elif kind == 2 and r0 == r1:
            to[2] = round(to[2] + mnum(1, 8), 3)
        t = (mnum(2, 25), r0, r1, tuple(at), tuple(to))
        tools.append(t)
        text += "keep\n" + sweep(t) + "\ncommon\nvol\nkeep\n" + sweep(t) + "\ngap\n"
    got = ask(program, text, 1 + len(rays) + 2 * len(tools))
    if got is None:
        return None
    # The reference's own cutting fails now and then, without a word: then the same cuts in
    # another order give another volume, and the piece is left out.
    again = ask(program, solid(blank, cuts[::-1]) + "vol\n", 1)
    if again is None or abs(float(again[0]) - float(got[0])) > 1e-6 * abs(float(got[0])):
        return None
    rows.append(("volume", got[0]))
    for ray, line in zip(rays, got[1:]):
        rows.append(("ray", words(ray), line))
    for i, t in enumerate(tools):
        height, r0, r1, a, b = t
        rows.append(("tool", words((0, height, r0, r1, *a, *b)), got[1 + len(rays) + 2 * i], got[2 + len(rays) + 2 * i]))
    return rows


def mixed(program):
    print("# Made by make.py mixed with the reference beside it; Open CASCADE Technology 7.6.3.")
    failed = made = number = 0
    while made < 200:
        rows = mixed_piece(program, number)
        number += 1
        if rows is None:
            failed += 1
            continue
        made += 1
        for r in rows:
            print("\t".join(str(x) for x in r))
        sys.stdout.flush()
    print(f"{failed} pieces left out: the reference gave no answer, or two", file=sys.stderr)


def main():
    if sys.argv[2:] == ["mixed"]:
        return mixed(sys.argv[1])
    if sys.argv[2:] == ["gaps"]:
        return gaps(sys.argv[1])
    print("# Made by make.py with the reference beside it; Open CASCADE Technology 7.6.3.")
    failed = 0
    for number in range(100):
        rows = piece(sys.argv[1], number)
        if rows is None:
            failed += 1
            continue
        for r in rows:
            print("\t".join(str(x) for x in r))
        sys.stdout.flush()
    print(f"{failed} pieces left out: the reference gave no answer", file=sys.stderr)


main()

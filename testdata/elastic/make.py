#!/usr/bin/env python3
"""Makes values.tsv: elastic figures of press fits, stepped bars and thin walls by finite elements.

    apt-get install --no-install-recommends calculix-ccx
    python3 make.py > values.tsv

Columns: what, given, got, source. Millimetres, newtons, MPa, rev/min; elastic constants in each row.
  press   bore of shaft, common diameter, outside of hub, diametral interference, E and Poisson's
          ratio of shaft, of hub; got: pressure, how much the bore closes and the outside grows, on
          diameter. Rings of second-order axisymmetric elements, free to slide along the axis, tied
          so that the radii at the interface differ by half the interference.
  bar     diameter and length of each part from the clamp on, force at the free end, E, Poisson's ratio;
          got: deflection there. Solid second-order bricks, the clamped face held all over.
  centre  the same with the middle line of the free end held against the force, which is at a distance
          from the clamp; got: deflection at the force.
  whirl   the same with density in kg/m3; got: lowest natural frequency as rev/min.
  wall    edges clamped (1: foot, 3: foot and both ends), place of the load on the free edge (middle,
          end), length / height, thickness / height, Poisson's ratio; got: w D / (P H^2), from
          second-order shells with ten elements to the height.
"""
import math
import os
import re
import statistics
import subprocess
import tempfile

DIR = tempfile.mkdtemp()


def solve(text):
    """Runs one deck and gives its printed blocks as (quantity, set) -> rows of figures."""
    name = os.path.join(DIR, "deck")
    for end in (".dat", ".frd", ".sta"):
        if os.path.exists(name + end):
            os.remove(name + end)
    with open(name + ".inp", "w") as f:
        f.write(text)
    r = subprocess.run(["ccx", "-i", name], capture_output=True, text=True)
    if "Job finished" not in r.stdout:
        raise SystemExit(r.stdout[-2000:])
    out, at = {}, None
    for line in open(name + ".dat"):
        m = re.match(r" (\w+) \(.*for set (\w+)", line)
        if m:
            at = (m[1], m[2])
            out.setdefault(at, [])
            continue
        if "E I G E N V A L U E" in line:
            at = ("frequency", "")
            out[at] = []
        f = line.split()
        if at and f:
            try:
                out[at].append([float(x) for x in f])
            except ValueError:
                pass
    return out


def row(what, given, got):
    print("\t".join([what, " ".join("%g" % x if not isinstance(x, str) else x for x in given),
                     " ".join("%.6g" % x for x in got), "calculix-ccx 2.20, testdata/elastic/make.py"]), flush=True)


def nodes(n):
    return "*NODE,NSET=ALL\n" + "".join("%d,%.12g,%.12g,%.12g\n" % (k, *v) for k, v in n.items())


def lines(ids):
    return "".join("%d,\n" % k for k in ids)


# Press fits -----------------------------------------------------------------------------------

def ring(r0, r1, n, h, first):
    """n elements from r0 to r1; node numbers go on from first, three (two) to a radius."""
    pts, els = {}, []
    at = lambda i, j: first + 3 * i + j
    for i in range(2 * n + 1):
        for j in range(3):
            if not (i % 2 and j == 1):
                pts[at(i, j)] = (r0 + (r1 - r0) * i / (2 * n), h * j / 2, 0)
    for e in range(n):
        i = 2 * e
        els.append([at(i, 0), at(i + 2, 0), at(i + 2, 2), at(i, 2), at(i + 1, 0), at(i + 2, 1), at(i + 1, 2), at(i, 1)])
    return pts, els


def press(di, d, do, delta, es, vs, eh, vh):
    a, c, b, n, h = di / 2, d / 2, do / 2, 60, 0.05
    shaft, shaft_els = ring(a, c, n, h, 1)
    hub, hub_els = ring(c, b, n, h, 1001)
    every = {**shaft, **hub}
    t = nodes(every) + "*NODE\n9999,0,0,0\n"
    for name, els, first in (("SHAFT", shaft_els, 1), ("HUB", hub_els, 1001)):
        t += "*ELEMENT,TYPE=CAX8R,ELSET=%s\n" % name
        t += "".join("%d,%s\n" % (first + k, ",".join(map(str, e))) for k, e in enumerate(els))
    t += "*NSET,NSET=FOOT\n" + lines(k for k, v in every.items() if v[1] == 0)
    t += "*NSET,NSET=BORE\n1\n*NSET,NSET=OUT\n%d\n" % (1001 + 6 * n)
    if a == 0:
        t += "*NSET,NSET=AXIS\n" + lines(k for k, v in shaft.items() if v[0] == 0)
    t += "*MATERIAL,NAME=S\n*ELASTIC\n%g,%g\n*MATERIAL,NAME=H\n*ELASTIC\n%g,%g\n" % (es, vs, eh, vh)
    t += "*SOLID SECTION,MATERIAL=S,ELSET=SHAFT\n*SOLID SECTION,MATERIAL=H,ELSET=HUB\n"
    for j in range(3):
        t += "*EQUATION\n3\n%d,1,1,%d,1,-1,9999,1,-1\n" % (1001 + j, 1 + 6 * n + j)
    t += "*BOUNDARY\nFOOT,2,2\n" + ("AXIS,1,1\n" if a == 0 else "")
    t += "*STEP\n*STATIC\n*BOUNDARY\n9999,1,1,%.9g\n" % (delta / 2)
    t += "*NODE PRINT,NSET=BORE\nU\n*NODE PRINT,NSET=OUT\nU\n*EL PRINT,ELSET=HUB\nS\n*END STEP\n"
    got = solve(t)
    u = lambda s: got[("displacements", s)][0][1]
    # The radial stress at the middles of the first three elements (mean of their inner points),
    # brought to the interface on the parabola through them.
    mean = lambda e: statistics.mean(r[2] for r in got[("stresses", "HUB")] if r[0] == e)
    pressure = -(15 * mean(1001) - 10 * mean(1002) + 3 * mean(1003)) / 8
    row("press", (di, d, do, delta, es, vs, eh, vh), (pressure, 0 if a == 0 else -2 * u("BORE"), 2 * u("OUT")))


# Round bars -----------------------------------------------------------------------------------

def disc(radii, n, m):
    """Second-order quadrilaterals of a round section: a core of n by n, bent from a square, and rings
    of m elements between the radii. Gives points by key, elements by keys, and each element's ring."""
    pts, els = {}, []

    def core(i, j):
        u, v = i / n - 1, j / n - 1
        pts[("c", i, j)] = (radii[0] * u * math.sqrt(1 - v * v / 2), radii[0] * v * math.sqrt(1 - u * u / 2))
        return ("c", i, j)

    rim = [(i, 0) for i in range(2 * n)] + [(2 * n, j) for j in range(2 * n)]
    rim += [(2 * n - i, 2 * n) for i in range(2 * n)] + [(0, 2 * n - j) for j in range(2 * n)]

    def out(k, q):
        """Point k along the rim, q half elements out of the core."""
        k %= len(rim)
        if q == 0:
            return core(*rim[k])
        x, y = pts[core(*rim[k])]
        g, f = divmod(q, 2 * m)
        r = radii[g] if f == 0 else radii[g] + (radii[g + 1] - radii[g]) * f / (2 * m)
        pts[("r", k, q)] = (x * r / radii[0], y * r / radii[0])
        return ("r", k, q)

    def take(at, i, j, part):
        els.append((part, [at(i, j), at(i + 2, j), at(i + 2, j + 2), at(i, j + 2),
                           at(i + 1, j), at(i + 2, j + 1), at(i + 1, j + 2), at(i, j + 1)]))

    for i in range(0, 2 * n, 2):
        for j in range(0, 2 * n, 2):
            take(core, i, j, 0)
    for g in range(len(radii) - 1):
        for q in range(2 * m * g, 2 * m * (g + 1), 2):
            for k in range(0, len(rim), 2):
                els.append((g + 1, [out(k, q), out(k, q + 2), out(k + 2, q + 2), out(k + 2, q),
                                    out(k, q + 1), out(k + 1, q + 2), out(k + 2, q + 1), out(k + 1, q)]))
    return pts, els


def bar(parts, e, v, size, extra=()):
    """The deck of a bar along x of parts (diameter, length), the thinnest last or first; extra gives
    places that must be planes of nodes. Returns deck, nodes by place, and the axis nodes."""
    radii = sorted({d / 2 for d, _ in parts})
    pts, quads = disc(radii, 4, 2)
    planes, x = [0.0], 0.0
    cuts = sorted(set(extra) | {sum(l for _, l in parts[:k]) for k in range(1, len(parts) + 1)})
    for c in cuts:
        k = max(2, round((c - x) / size))
        planes += [x + (c - x) * i / k for i in range(1, k + 1)]
        x = c
    number, where, els = {}, {}, []

    def node(key, h):
        if (key, h) not in number:
            number[(key, h)] = len(number) + 1
            x = planes[h // 2] if h % 2 == 0 else (planes[h // 2] + planes[h // 2 + 1]) / 2
            where[number[(key, h)]] = (x, *pts[key])
        return number[(key, h)]

    for k in range(len(planes) - 1):
        mid, end = (planes[k] + planes[k + 1]) / 2, 0.0
        for d, l in parts:
            end += l
            if mid < end:
                break
        for part, q in quads:
            if radii[part] <= d / 2 + 1e-9:
                lo, hi = 2 * k, 2 * k + 2
                els.append([node(p, lo) for p in q[:4]] + [node(p, hi) for p in q[:4]] + [node(p, lo) for p in q[4:]]
                           + [node(p, hi) for p in q[4:]] + [node(p, 2 * k + 1) for p in q[:4]])
    t = nodes(where) + "*ELEMENT,TYPE=C3D20R,ELSET=BAR\n"
    for k, el in enumerate(els):
        t += "%d,%s,\n%s\n" % (k + 1, ",".join(map(str, el[:10])), ",".join(map(str, el[10:])))
    t += "*NSET,NSET=CLAMP\n" + lines(k for k, p in where.items() if p[0] == 0)
    t += "*MATERIAL,NAME=M\n*ELASTIC\n%g,%g\n" % (e, v)
    return t, where


def plane(where, x):
    return [k for k, p in where.items() if abs(p[0] - x) < 1e-9]


def push(where, x, force):
    """A force spread over the nodes of a plane, and their names."""
    ids = plane(where, x)
    return ids, "".join("%d,2,%.12g\n" % (k, force / len(ids)) for k in ids)


def flat(parts):
    return [x for p in parts for x in p]


def bent(parts, force, e, v, size):
    length = sum(l for _, l in parts)
    t, where = bar(parts, e, v, size)
    ids, load = push(where, length, force)
    t += "*SOLID SECTION,MATERIAL=M,ELSET=BAR\n*NSET,NSET=AT\n" + lines(ids)
    t += "*BOUNDARY\nCLAMP,1,3\n*STEP\n*STATIC\n*CLOAD\n" + load + "*NODE PRINT,NSET=AT\nU\n*END STEP\n"
    u = solve(t)[("displacements", "AT")]
    row("bar", (*flat(parts), force, e, v), (sum(r[2] for r in u) / len(u),))


def centre(parts, place, force, e, v, size):
    length = sum(l for _, l in parts)
    t, where = bar(parts, e, v, size, (place,))
    ids, load = push(where, place, force)
    held = [k for k in plane(where, length) if abs(where[k][1]) < 1e-9]
    assert len(held) > 4
    t += "*SOLID SECTION,MATERIAL=M,ELSET=BAR\n*NSET,NSET=AT\n" + lines(ids) + "*NSET,NSET=HELD\n" + lines(held)
    t += "*BOUNDARY\nCLAMP,1,3\nHELD,2,2\n*STEP\n*STATIC\n*CLOAD\n" + load + "*NODE PRINT,NSET=AT\nU\n*END STEP\n"
    u = solve(t)[("displacements", "AT")]
    row("centre", (*flat(parts), place, force, e, v), (sum(r[2] for r in u) / len(u),))


def whirl(d, length, e, v, density, size):
    t, _ = bar([(d, length)], e, v, size)
    t += "*DENSITY\n%g\n*SOLID SECTION,MATERIAL=M,ELSET=BAR\n" % (density * 1e-12)
    t += "*BOUNDARY\nCLAMP,1,3\n*STEP\n*FREQUENCY\n2\n*END STEP\n"
    got = solve(t)[("frequency", "")]
    row("whirl", (d, length, e, v, density), (min(r[3] for r in got if len(r) == 5) * 60,))


# Thin walls -----------------------------------------------------------------------------------

def wall(edges, place, ratio, thin, v, mesh=10):
    h, e, force = 20.0, 210e3, 10.0
    length, t = ratio * h, thin * h
    nx, ny = max(6, round(mesh * ratio / 2) * 2), mesh
    number, where, els = {}, {}, []

    def at(i, j):
        if (i, j) not in number:
            number[(i, j)] = len(number) + 1
            where[number[(i, j)]] = (length * i / (2 * nx), h * j / (2 * ny), 0)
        return number[(i, j)]

    for i in range(0, 2 * nx, 2):
        for j in range(0, 2 * ny, 2):
            els.append([at(i, j), at(i + 2, j), at(i + 2, j + 2), at(i, j + 2),
                        at(i + 1, j), at(i + 2, j + 1), at(i + 1, j + 2), at(i, j + 1)])
    fixed = [k for k, p in where.items() if p[1] == 0 or edges == 3 and (p[0] == 0 or abs(p[0] - length) < 1e-9)]
    load = at(nx if place == "middle" else 0, 2 * ny)
    s = nodes(where) + "*ELEMENT,TYPE=S8R,ELSET=W\n"
    s += "".join("%d,%s\n" % (k + 1, ",".join(map(str, el))) for k, el in enumerate(els))
    s += "*NSET,NSET=FIX\n" + lines(fixed) + "*NSET,NSET=AT\n%d\n" % load
    s += "*MATERIAL,NAME=M\n*ELASTIC\n%g,%g\n*SHELL SECTION,MATERIAL=M,ELSET=W\n%g\n" % (e, v, t)
    s += "*BOUNDARY\nFIX,1,6\n*STEP\n*STATIC\n*CLOAD\n%d,3,%g\n*NODE PRINT,NSET=AT\nU\n*END STEP\n" % (load, force)
    w = solve(s)[("displacements", "AT")][0][3]
    plate = e * t ** 3 / 12 / (1 - v * v)
    row("wall" if mesh == 10 else "wall fine", (edges, place, ratio, thin, v), (w * plate / force / h ** 2,))


print("# Elastic figures by finite elements; the columns are told in make.py beside this file.")
print("what\tgiven\tgot\tsource")
press(16, 30, 60, 0.02, 210e3, 0.3, 210e3, 0.3)
press(12, 16, 40, 0.02, 110e3, 0.34, 205e3, 0.29)
press(0, 6, 30, 0.01, 205e3, 0.29, 97e3, 0.31)
press(0, 8, 24, 0.012, 205e3, 0.29, 69e3, 0.33)
press(6, 8, 30, 0.015, 110e3, 0.34, 205e3, 0.29)
press(30, 40, 44, 0.03, 100e3, 0.26, 193e3, 0.28)
bent([(10, 100)], 100, 210e3, 0.3, 2)
bent([(20, 60), (12, 60)], 200, 210e3, 0.3, 2)
bent([(16, 40), (10, 80)], 150, 100e3, 0.34, 2)
bent([(12, 30), (20, 60)], 200, 210e3, 0.3, 2)
bent([(30, 60), (22, 50), (14, 70)], 300, 206e3, 0.29, 3)
centre([(10, 200)], 100, 100, 207e3, 0.3, 2.5)
centre([(20, 80), (14, 120)], 120, 300, 207e3, 0.3, 2.5)
whirl(10, 300, 207e3, 0.3, 7850, 5)
whirl(6.35, 610, 207e3, 0.3, 7850, 6)
RATIOS = (0.25, 0.35, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 7, 10)
for edges, place in ((1, "middle"), (1, "end"), (3, "middle")):
    for ratio in RATIOS:
        wall(edges, place, ratio, 0.05, 0.3)
    for ratio in (0.3, 0.6, 1.75, 3.5, 6):
        wall(edges, place, ratio, 0.05, 0.3)
    for ratio in (1, 3, 6):
        wall(edges, place, ratio, 0.05, 0.3, mesh=20)
    for ratio in (1, 2.5):
        for thin, v in ((0.05, 0.34), (0.05, 0.25), (0.1, 0.3), (0.02, 0.3)):
            wall(edges, place, ratio, thin, v)

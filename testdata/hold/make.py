#!/usr/bin/python3
"""Makes kept.tsv: least clamping forces of made-up holdings, by a general solver (HiGHS in scipy).

Run by hand with Debian's python3-scipy: /usr/bin/python3 make.py > kept.tsv
Columns: sides; contacts as x y z nx ny nz friction clamp body against, parted by ;
loads as fx fy fz x y z body, parted by ;   least sum of the clamps' normal forces, N, or "none".
Friction pyramids as the package has them: edges n + mu (u cos + v sin), u the axis of the frame most
nearly square to n (first of equals) made square to it, v = n x u.
"""
import random
import numpy as np
from scipy.optimize import linprog


def edges(c, sides):
    n = np.array(c[3:6], float)
    n /= np.linalg.norm(n)
    k = 0
    for i in range(3):
        if abs(n[i]) < abs(n[k]) - 1e-9:
            k = i
    u = np.zeros(3)
    u[k] = 1
    u -= n * (u @ n)
    u /= np.linalg.norm(u)
    v = np.cross(n, u)
    return [n + c[6] * (u * np.cos(2 * np.pi * i / sides) + v * np.sin(2 * np.pi * i / sides)) for i in range(sides)]


def least(contacts, loads, sides):
    bodies = max([max(c[8], c[9], 1) for c in contacts] + [l[6] for l in loads])
    cols, cost = [], []
    for c in contacts:
        for e in edges(c, sides):
            w = np.zeros(6 * bodies)
            part = np.concatenate([e, np.cross(np.array(c[:3]), e)])
            w[6 * (c[8] - 1):6 * c[8]] += part
            if c[9]:
                w[6 * (c[9] - 1):6 * c[9]] -= part
            cols.append(w)
            cost.append(1 if c[7] else 0)
    b = np.zeros(6 * bodies)
    for l in loads:
        f = np.array(l[:3])
        b[6 * (l[6] - 1):6 * l[6]] -= np.concatenate([f, np.cross(np.array(l[3:6]), f)])
    # moments in a size near the forces
    scale = np.tile([1, 1, 1, .02, .02, .02], bodies)
    got = linprog(cost, A_eq=np.array(cols).T * scale[:, None], b_eq=b * scale, bounds=(0, None), method="highs",
                  options={"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10})
    if got.status == 2:
        return None
    assert got.status == 0, got
    return got.fun


def vise(r):
    L, W, H = r.uniform(20, 120), r.uniform(10, 60), r.uniform(10, 60)
    grip, mu, mub = r.uniform(3, H), r.uniform(.07, .35), r.uniform(.05, .3)
    jaw = r.uniform(.2, 1) * L / 2
    cs = []
    for y, n, clamp in ((W / 2, -1, 0), (-W / 2, 1, 1)):
        for x in (-jaw, jaw):
            for z in (r.uniform(0, grip / 2), grip):
                cs.append([x, y, z, 0, n, 0, mu, clamp, 1, 0])
    for x in (-L * .4, L * .4):
        for y in (-W * .3, W * .3):
            cs.append([x, y, 0, 0, 0, 1, mub, 0, 1, 0])
    ls = [[r.uniform(-900, 900), r.uniform(-900, 900), r.uniform(-400, 400), r.uniform(-L / 2, L / 2), r.uniform(-W / 2, W / 2), H, 1],
          [0, 0, -L * W * H * 7.85e-6 * 9.81, 0, 0, H / 2, 1]]
    return cs, ls


def straps(r):
    cs = []
    for x in (-40, 40):
        for y in (-25, 25):
            cs.append([x, y, 0, 0, 0, 1, r.uniform(.1, .2), 0, 1, 0])
    for k in range(r.randint(1, 3)):
        cs.append([r.uniform(-40, 40), r.uniform(-25, 25), 20, r.uniform(-.1, .1), r.uniform(-.1, .1), -1, r.uniform(.1, .3), 1, 1, 0])
    if r.random() < .5:
        cs.append([40, 0, 10, -1, 0, 0, .15, 0, 1, 0])
    ls = [[r.uniform(-600, 600), r.uniform(-600, 600), r.uniform(-200, 200), r.uniform(-40, 40), r.uniform(-25, 25), 22, 1], [0, 0, -6, 0, 0, 10, 1]]
    return cs, ls


def chuck(r):
    cs, jaws, R = [], r.choice([3, 4]), r.uniform(5, 40)
    for k in range(jaws):
        a = 2 * np.pi * k / jaws + .3
        for z in (2., r.uniform(5, 25)):
            cs.append([R * np.cos(a), R * np.sin(a), z, -np.cos(a), -np.sin(a), 0, r.uniform(.1, .4), 1, 1, 0])
    ls = [[r.uniform(-200, 200), r.uniform(-200, 200), r.uniform(-200, 200), 0, R * r.uniform(.2, 1), r.uniform(20, 80), 1]]
    return cs, ls


def leaning(r):
    x = r.uniform(40, 80)
    cs = [[x, 60, 0, -1, r.uniform(-.3, .3), 0, r.uniform(.1, .8), 0, 1, 2], [0, 0, 0, 0, 1, 0, r.uniform(.1, .8), 0, 1, 0],
          [x, 0, 0, 0, 1, 0, r.uniform(.1, .8), 0, 2, 0], [x + 12, 0, 0, 0, 1, 0, r.uniform(.1, .8), 0, 2, 0]]
    if r.random() < .5:
        cs.append([x + 14, 50, 0, -1, 0, 0, .2, 1, 2, 0])
    return cs, [[0, -9.81 * r.uniform(1, 4), 0, 25, 35, 0, 1], [0, -9.81 * r.uniform(2, 20), 0, x + 6, 42, 0, 2]]


def text(rows):
    return ";".join(" ".join(str(x) for x in row) for row in rows)


r = random.Random(20)
print("# made by make.py beside it: least clamping forces by a general solver of linear programs")
print("sides\tcontacts\tloads\tleast_N\tsource")
for maker in (vise, straps, chuck, leaning):
    for k in range(30):
        cs, ls = maker(r)
        cs = [[round(float(x), 4) for x in c[:7]] + c[7:] for c in cs]
        ls = [[round(float(x), 4) for x in l[:6]] + l[6:] for l in ls]
        sides = r.choice([4, 8, 16])
        got = least(cs, ls, sides)
        print(sides, text(cs), text(ls), "none" if got is None else "%.6f" % got, "HiGHS in scipy 1.10.1, " + maker.__name__, sep="\t")

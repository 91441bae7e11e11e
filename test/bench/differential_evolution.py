"""The mixed-discrete spring of Lampinen & Zelinka 1999 by scipy's differential evolution at its defaults, one run for each seed.
   python3 differential_evolution.py [seeds]    inch, lbf, psi; prints how many runs end at the optimum, and the median time."""
import json, sys, time
import numpy as np
from scipy.optimize import NonlinearConstraint, differential_evolution

WIRES = np.array([0.207, 0.225, 0.244, 0.263, 0.283, 0.307, 0.331, 0.362, 0.394, 0.4375, 0.5])
G, LARGEST, PRELOAD, ALLOWED = 11.5e6, 1000, 300, 189e3
OPTIMUM = 2.658559166


def spring(x):
    return round(x[0]), WIRES[int(round(x[1]))], x[2]


def volume(x):
    turns, d, D = spring(x)
    return np.pi**2 * D * d**2 * (turns + 2) / 4


def margins(x):
    turns, d, D = spring(x)
    C = D / d
    wahl = (4 * C - 1) / (4 * C - 4) + 0.615 / C
    rate = G * d**4 / (8 * D**3 * turns)
    return [
        1 - 8 * wahl * LARGEST * D / (np.pi * d**3) / ALLOWED,
        1 - (LARGEST / rate + 1.05 * (turns + 2) * d) / 14,
        1 - (D + d) / 3,
        C / 3 - 1,
        1 - PRELOAD / rate / 6,
        (LARGEST - PRELOAD) / rate / 1.25 - 1,
    ]


seeds = int(sys.argv[1]) if len(sys.argv) > 1 else 20
times, right = [], 0
for seed in range(seeds):
    begun = time.perf_counter()
    best = differential_evolution(
        volume,
        [(1, 70), (0, len(WIRES) - 1), (0.6, 3)],
        constraints=NonlinearConstraint(margins, 0, np.inf),
        integrality=[True, True, False],
        seed=seed,
    )
    times.append(1000 * (time.perf_counter() - begun))
    right += bool(min(margins(best.x)) >= -1e-9 and best.fun <= OPTIMUM * (1 + 1e-6))
print(json.dumps({"seeds": seeds, "right": right, "medianMs": sorted(times)[seeds // 2]}))

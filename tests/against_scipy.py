"""Coils charged step by step: `L di/dt = V - i R` up to the limit of the switch, by scipy's solver.

Reads a case a line (V, R, L, limit, t, then the current, charge, square and held energy that are compared) and prints how far
apart the two are. Ends with 1 where anything is further apart than 1e-8, relative.
"""
import math
import sys

import scipy
from scipy.integrate import solve_ivp

NAMES = ["current", "charge", "integral of the square", "energy in the switch"]
ALLOWED = 1e-8


def charged(supply, resistance, inductance, limit, time):
    """Current, charge, integral of the square, and the energy that the switch takes by holding the current."""
    def rising(_, state):
        return [(supply - state[0] * resistance) / inductance, state[0], state[0] ** 2]

    def at_limit(_, state):
        return state[0] - limit

    at_limit.terminal = True
    events = [at_limit] if math.isfinite(limit) else None
    found = solve_ivp(rising, (0.0, time), [0.0, 0.0, 0.0], method="DOP853", rtol=1e-12, atol=1e-15, events=events)
    current, charge, square = (float(it[-1]) for it in found.y)
    held = time - float(found.t[-1])
    if held <= 0.0:
        return [current, charge, square, 0.0]
    energy = held * limit * (supply - limit * resistance)
    return [limit, charge + held * limit, square + held * limit ** 2, energy]


def main():
    worst = [0.0] * len(NAMES)
    count = 0
    for line in sys.stdin:
        numbers = [float(it) for it in line.split()]
        theirs = charged(*numbers[:5])
        for at, (ours, other) in enumerate(zip(numbers[5:], theirs)):
            size = max(abs(other), 1e-12)
            worst[at] = max(worst[at], abs(ours - other) / size)
        count += 1
    print(f"{count} coils, about half of them with a limit, scipy {scipy.__version__}, DOP853 with a relative tolerance of 1e-12.\n")
    print("| what | furthest apart, relative |\n| --- | ---: |")
    for name, apart in zip(NAMES, worst):
        print(f"| {name} | {apart:.1e} |")
    sys.exit(0 if count > 0 and max(worst) <= ALLOWED else 1)


main()

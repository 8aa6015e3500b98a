"""Coils charged, and engines cranked, step by step: `L di/dt = V - i R` up to the limit of the switch, by scipy's solver.

Reads a case a line (V, R, L, limit, t, then the current, charge, square and held energy that are compared) and prints how far
apart the two are. Ends with 1 where anything is further apart than 1e-8, relative.
"""
import math
import sys

import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

NAMES = ["current", "charge", "integral of the square", "energy in the switch"]
ALLOWED = 1e-8
ALLOWED_DEG = 1e-5


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


def speed(firings, mean, dip):
    """Speed in degrees a second, by time at full rate since a firing top dead centre: half cosines about each valley, flat
    between them where they are more than 180 degrees apart; the mean over time is `mean`."""
    between = 720.0 / firings
    total = between / (6.0 * mean)
    low = 6.0 * mean * (1.0 - dip)
    slopes = min(180.0, between)

    def of_level(level):
        return slopes / ((low + level) / 2.0) + (between - slopes) / level - total

    high = brentq(of_level, 6.0 * mean * (1.0 - 1e-12), 6.0 * mean * 3.0, xtol=1e-13) if dip > 0.0 else 6.0 * mean
    side = slopes / 2.0 / ((low + high) / 2.0)

    def at(time):
        within = time % total
        off = min(within, total - within)
        return high if off >= side else (low + high) / 2.0 - (high - low) / 2.0 * math.cos(math.pi * off / side)

    return at


def turned(firings, mean, dip, run_up, start, pitch, *times):
    """How far apart the teeth are from where they should be at these times, in degrees at most."""
    at = speed(firings, mean, dip)

    def there(_, state):
        return state[0] - start

    there.terminal = True
    span = 720.0 / (6.0 * mean)
    step = 720.0 / firings / (6.0 * mean) / 40.0
    given = {"method": "DOP853", "rtol": 1e-11, "atol": 1e-11, "max_step": step}
    begun = 0.0
    if start > 0.0:
        begun = float(solve_ivp(lambda t, _: [at(t)], (0.0, 1.1 * span), [0.0], events=[there], **given).t_events[0][0])

    def cranked(time, state):
        rate = min(time / run_up, 1.0)
        return [rate, rate * at(begun + state[0])]

    found = solve_ivp(cranked, (0.0, times[-1]), [0.0, start], t_eval=times, **given)
    # the first reading is complete at the second tooth after the start
    first = math.floor(start / pitch + 1e-9) + 2
    return max(abs(angle - pitch * (first + n)) for n, angle in enumerate(found.y[1]))


def main():
    worst = [0.0] * len(NAMES)
    count = 0
    starts, furthest = 0, 0.0
    for line in sys.stdin:
        if line.startswith("start "):
            furthest = max(furthest, turned(*(float(it) for it in line.split()[1:])))
            starts += 1
            continue
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
    print(f"\n{starts} starts of 1 to 12 cylinders: the crank angle at each tooth, furthest apart {furthest:.1e}°.")
    sys.exit(0 if count > 0 and starts > 0 and max(worst) <= ALLOWED and furthest <= ALLOWED_DEG else 1)


main()

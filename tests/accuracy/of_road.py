# SPDX-License-Identifier: MIT
"""On the road, where there is a closed form: an engine of constant torque, one gear, and what resists by a constant
and by the square of speed. Such a machine gathers speed by an area tangent, and coasts by a tangent.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from functools import cache

import layshaft as ls
from accuracy.exact import Exact, Number, mp
from accuracy.function import Arguments, Draw, Function, exactly

REVS = (1000.0, 12000.0)  # what the engine's curve covers, in rpm
FRONT, REAR, PRIMARY = 15, 45, 3.0


@cache
def machine(torque: float, gear: float, circumference: float, efficiency: float, mass: float) -> ls.Machine:
    stock = ls.Setup(front=FRONT, rear=REAR, circumference=circumference * ls.m)
    return ls.Machine(
        name="Invented machine of one gear",
        gearbox=ls.Gearbox(
            primary=PRIMARY, gears=(gear,), idle="900 rpm", rev_limit=REVS[1] * ls.rpm, lowest_pull=REVS[0] * ls.rpm
        ),
        adjuster=ls.Adjuster(centre_min="580 mm", centre_max="660 mm"),
        chain="520",
        speedometer="front wheel",
        stock=stock,
        engine=ls.Engine(ls.EngineCurve([n * ls.rpm for n in REVS], [torque * ls.Nm] * 2)),
        drive_efficiency=efficiency,
        body=ls.Body(mass=mass * ls.kg),
    )


def thrust(torque: float, gear: float, circumference: float, efficiency: float) -> Number:
    ratio = mp.mpf(PRIMARY) * mp.mpf(gear) * REAR / FRONT
    return 2 * mp.pi * mp.mpf(torque) * ratio * mp.mpf(efficiency) / mp.mpf(circumference)


def speed_of_revs(rpm: float, gear: float, circumference: float) -> Number:
    return mp.mpf(rpm) / 60 * mp.mpf(circumference) / (mp.mpf(PRIMARY) * mp.mpf(gear) * REAR / FRONT)


def drive(random: random.Random) -> tuple[float, float, float, float]:
    return random.uniform(15.0, 90.0), random.uniform(0.9, 2.5), random.uniform(1.8, 2.2), random.uniform(0.85, 0.97)


def road(constant: float, quadratic: float) -> ls.RoadLoad:
    return ls.RoadLoad(constant=constant * ls.N, quadratic=f"{quadratic!r} kg/m")


# --- Top speed --------------------------------------------------------------------------------------------------------


def top_speed(random: random.Random) -> tuple[Arguments, Exact] | None:
    parts = drive(random)
    _, gear, circumference, _ = parts
    constant, quadratic = random.uniform(20.0, 90.0), random.uniform(0.2, 0.6)
    spare = thrust(*parts) - mp.mpf(constant)
    if spare <= 0:
        return None
    by_power = mp.sqrt(spare / mp.mpf(quadratic))
    by_revs = speed_of_revs(REVS[1], gear, circumference)
    if by_power <= 1.01 * speed_of_revs(REVS[0], gear, circumference):
        return None
    return (*parts, constant, quadratic), exactly(min(by_power, by_revs))


def top_speed_near_both(random: random.Random) -> tuple[Arguments, Exact] | None:
    """Where power and revs end nearly together."""
    parts = drive(random)
    _, gear, circumference, _ = parts
    revs, constant = speed_of_revs(REVS[1], gear, circumference), random.uniform(20.0, 90.0)
    spare = thrust(*parts) - mp.mpf(constant)
    if spare <= 0:
        return None
    quadratic = float(spare / revs**2) * (
        1.0 + random.choice((-1.0, 1.0)) * random.uniform(1.0, 10.0) * 2.0 ** -random.randint(20, 40)
    )
    return (*parts, constant, quadratic), exactly(min(mp.sqrt(spare / mp.mpf(quadratic)), revs))


def ask_top_speed(torque: float, gear: float, circumference: float, efficiency: float, *what: float) -> float:
    one = machine(torque, gear, circumference, efficiency, 200.0)
    return ls.top_speed(one, one.stock, road(*what)).speed.nominal / ls.mps


# --- From speed to speed ----------------------------------------------------------------------------------------------


def run(
    random: random.Random, of: Callable[[Number, Number, Number, Number, Number], Number]
) -> tuple[Arguments, Exact] | None:
    parts = drive(random)
    _, gear, circumference, _ = parts
    mass, constant, quadratic = random.uniform(120.0, 350.0), random.uniform(20.0, 90.0), random.uniform(0.2, 0.6)
    spare = thrust(*parts) - mp.mpf(constant)
    if spare <= 0:
        return None
    slowest = speed_of_revs(REVS[0], gear, circumference)
    fastest = min(speed_of_revs(REVS[1], gear, circumference), mp.mpf("0.97") * mp.sqrt(spare / mp.mpf(quadratic)))
    room = float(fastest - slowest)
    if room < 2:
        return None
    start = float(slowest) + room * random.uniform(0.01, 0.4)
    end = float(slowest) + room * random.uniform(0.5, 0.99)
    value = of(spare, mp.mpf(quadratic), mp.mpf(mass), mp.mpf(start), mp.mpf(end))
    return (*parts, mass, constant, quadratic, start, end), exactly(value)


def time_of(spare: Number, quadratic: Number, mass: Number, start: Number, end: Number) -> Number:
    root = mp.sqrt(spare * quadratic)
    return mass / root * (mp.atanh(end * quadratic / root) - mp.atanh(start * quadratic / root))


def way_of(spare: Number, quadratic: Number, mass: Number, start: Number, end: Number) -> Number:
    return mass / (2 * quadratic) * mp.log((spare - quadratic * start**2) / (spare - quadratic * end**2))


def ask_run(
    torque: float, gear: float, circumference: float, efficiency: float, mass: float, constant: float, quadratic: float,
    start: float, end: float,
) -> ls.SpeedRun:  # fmt: skip
    one = machine(torque, gear, circumference, efficiency, mass)
    return ls.time_to_speed(one, one.stock, road(constant, quadratic), start * ls.mps, end * ls.mps)


def ask_time(*what: float) -> float:
    time = ask_run(*what).time
    assert time is not None
    return time.nominal / ls.s


def ask_way(*what: float) -> float:
    way = ask_run(*what).distance
    assert way is not None
    return way.nominal / ls.m


# --- Coasting down ----------------------------------------------------------------------------------------------------


def coasting(difficulty: str) -> Draw:
    def draw(random: random.Random) -> tuple[Arguments, Exact]:
        mass, constant, linear = random.uniform(80.0, 350.0), random.uniform(5.0, 90.0), 0.0
        quadratic, start = random.uniform(0.05, 0.6), random.uniform(10.0, 60.0)
        end = start * random.uniform(0.05, 0.95)
        if difficulty == "cancelling":  # speeds that nearly meet; a resistance that is nearly a square
            end = start * (1.0 - random.uniform(1.0, 2.0) * 2.0 ** -random.randint(10, 40))
            linear = float(2 * mp.sqrt(mp.mpf(constant) * mp.mpf(quadratic))) * (
                1.0 + random.uniform(-1.0, 1.0) * 2.0 ** -random.randint(2, 40)
            )
        a, b, c = (mp.mpf(one) for one in (constant, linear, quadratic))
        v1, v2 = mp.mpf(start), mp.mpf(end)
        bend = 4 * a * c - b * b
        root = mp.sqrt(abs(bend))
        lower, upper = (2 * c * v2 + b), (2 * c * v1 + b)
        if bend > 0:
            integral = 2 / root * (mp.atan(upper / root) - mp.atan(lower / root))
        else:
            integral = (mp.log((upper - root) / (upper + root)) - mp.log((lower - root) / (lower + root))) / root
        return (constant, linear, quadratic, mass, start, end), exactly(mp.mpf(mass) * integral)

    return draw


def ask_coasting(constant: float, linear: float, quadratic: float, mass: float, start: float, end: float) -> float:
    load = ls.RoadLoad(constant=constant * ls.N, linear=f"{linear!r} N s/m", quadratic=f"{quadratic!r} kg/m")
    return ls.coast_down_time(load, mass * ls.kg, start * ls.mps, end * ls.mps) / ls.s


SAMPLES = 40


def log_of(random: random.Random) -> tuple[float, ...]:
    """A log without any error but the rounding of its speeds: a sample a second."""
    mass, start = random.uniform(120.0, 350.0), random.uniform(25.0, 40.0)
    a, c = mp.mpf(random.uniform(20.0, 60.0)), mp.mpf(random.uniform(0.2, 0.5))
    begin = mp.atan(mp.mpf(start) * mp.sqrt(c / a))
    speeds = []
    for second in range(SAMPLES):
        phase = begin - mp.sqrt(a * c) * second / mp.mpf(mass)
        if phase < 0.15:
            break
        speeds.append(float(mp.sqrt(a / c) * mp.tan(phase)))
    return (mass, float(a), float(c), *speeds)


def fit_constant(random: random.Random) -> tuple[Arguments, Exact]:
    mass, a, _, *speeds = log_of(random)
    return (mass, *speeds), exactly(a)


def fit_quadratic(random: random.Random) -> tuple[Arguments, Exact]:
    mass, _, c, *speeds = log_of(random)
    return (mass, *speeds), exactly(c)


def fitted(mass: float, *speeds: float) -> ls.RoadLoad:
    times = [second * ls.s for second in range(len(speeds))]
    return ls.fit_coast_down(times, [speed * ls.mps for speed in speeds], mass * ls.kg).road


FUNCTIONS = [
    Function("top_speed", "m/s", {"ordinary": top_speed, "cancelling": top_speed_near_both}, ask_top_speed),
    Function("time_to_speed.time", "s", {"ordinary": lambda random: run(random, time_of)}, ask_time),
    Function("time_to_speed.distance", "m", {"ordinary": lambda random: run(random, way_of)}, ask_way),
    Function("coast_down_time", "ulp", {kind: coasting(kind) for kind in ("ordinary", "cancelling")}, ask_coasting),
    Function("fit_coast_down.constant", "N", {"ordinary": fit_constant}, lambda *log: fitted(*log).constant.nominal / ls.N),
    Function(
        "fit_coast_down.quadratic", "kg/m", {"ordinary": fit_quadratic},
        lambda *log: fitted(*log).quadratic.nominal / ls.LinearDensity("1 kg/m"),
    ),
]  # fmt: skip

# SPDX-License-Identifier: MIT
"""Units: a decimal number of any of them in text, into SI and into another unit of its kind."""

from __future__ import annotations

import random
from collections.abc import Callable
from typing import Any

import layshaft as ls
from accuracy.exact import UNITS, Exact, constant, mp
from accuracy.function import Arguments, Draw, Function

# What each spelling is, by definition.
KINDS: dict[str, dict[str, Any]] = {
    "Length": {
        "mm": UNITS["mm"],
        "cm": 10 * UNITS["mm"],
        "m": 1,
        "km": 1000,
        "inch": UNITS["inch"],
        "mile": mp.mpf("1609.344"),
    },
    "Area": {"m2": 1},
    "Mass": {"kg": 1, "g": UNITS["mm"], "lb": mp.mpf("0.45359237")},
    "Duration": {"s": 1, "min": 60, "h": 3600},
    "Speed": {"km/h": UNITS["kmh"], "mph": mp.mpf("0.44704"), "m/s": 1},
    "Acceleration": {"m/s2": 1},
    "Force": {"N": 1, "kN": 1000, "lbf": mp.mpf("4.4482216152605")},
    "Torque": {"Nm": 1, "lbf ft": mp.mpf("4.4482216152605") * mp.mpf("0.3048")},
    "Power": {"kW": 1000, "W": 1, "hp": UNITS["hp"]},
    "Energy": {"J": 1},
    "Pressure": {"bar": 100000, "MPa": 1000000, "Pa": 1},
    "Density": {"kg/m3": 1},
    "LinearDensity": {"kg/m": 1},
    "ForcePerSpeed": {"N s/m": 1, "N/(km/h)": mp.mpf("3.6")},
    "Angle": {"deg": UNITS["deg"], "rad": 1},
    "AngularSpeed": {"rpm": UNITS["rpm"], "rad/s": 1},
    "MomentOfInertia": {"kg m2": 1},
    "Temperature": {"K": 1},
}
ONE = {
    kind: getattr(ls, kind)(f"1 {next(name for name, size in units.items() if size == 1)}")
    for kind, units in KINDS.items()
}


def decimal(random: random.Random, difficulty: str) -> str:
    """Some digits before and after the point; in the wide class a power of ten as well."""
    number = f"{random.randint(0, 9999)}.{random.randint(1, 10 ** random.randint(1, 8))}"
    return number if difficulty == "ordinary" else f"{number}e{random.randint(-200, 200)}"


def into_si(difficulty: str) -> Draw:
    def draw(random: random.Random) -> tuple[Arguments, Exact]:
        kind = random.choice(sorted(KINDS))
        unit = random.choice(sorted(KINDS[kind]))
        text = decimal(random, difficulty)
        return (kind, f"{text} {unit}"), constant(mp.mpf(text) * KINDS[kind][unit])

    return draw


def into_another(difficulty: str) -> Draw:
    def draw(random: random.Random) -> tuple[Arguments, Exact]:
        kind = random.choice(sorted(kind for kind in KINDS if len(KINDS[kind]) > 1))
        unit, other = random.sample(sorted(KINDS[kind]), 2)
        text = decimal(random, difficulty)
        return (kind, f"{text} {unit}", f"1 {other}"), constant(mp.mpf(text) * KINDS[kind][unit] / KINDS[kind][other])

    return draw


def in_both(of: Callable[[str], Draw]) -> dict[str, Draw]:
    return {difficulty: of(difficulty) for difficulty in ("ordinary", "wide")}


def converted(kind: str, text: str, unit: str) -> float:
    quantity = getattr(ls, kind)
    return float(quantity(text) / quantity(unit))


FUNCTIONS = [
    Function(
        "quantity.of_text", "ulp", in_both(into_si), lambda kind, text: float(getattr(ls, kind)(text) / ONE[kind])
    ),
    Function("quantity.in_unit", "ulp", in_both(into_another), converted),
]

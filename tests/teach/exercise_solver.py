# SPDX-License-Identifier: MIT
"""Solves an exercise from what its question tells, and nothing else: formulas in sympy, units by pint.

Written from the geometry and mechanics, not from the library, which the answers are held against. `keep` is what a
learner does to each number on the way: nothing, or rounding.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import pint
import sympy as sp
from layshaft import exercises

_REGISTRY = pint.UnitRegistry()
# A turn is a plain one here, so that turns a minute times metres a turn are metres a minute.
_UNITS = {"": "", "Nm": "newton * meter", "rpm": "1 / minute", "%": "percent", "km/h": "kilometer / hour"} | {
    "m/s2": "meter / second ** 2", "links": "", "deg": "degree",
}  # fmt: skip
Keep = Callable[[Any], Any]


def _plain(value: Any) -> float:
    return float(value.to("").magnitude if hasattr(value, "to") else value)


_FUNCTIONS = [
    {"sin": lambda x: math.sin(_plain(x)), "cos": lambda x: math.cos(_plain(x)), "asin": lambda x: math.asin(_plain(x))}
]


def _formula(names: str, line: str) -> Callable[..., Any]:
    symbols = {name: sp.Symbol(name, positive=True) for name in names.split()}
    return sp.lambdify(list(symbols.values()), sp.sympify(line, locals=symbols), _FUNCTIONS)  # type: ignore[no-any-return]


_SPEED = _formula("turning ratio rolled", "turning / ratio * rolled")
_TURNING = _formula("speed ratio rolled", "speed / rolled * ratio")
_TURNS = _formula("way ratio rolled", "way / rolled * ratio")
_RADIUS = _formula("rolled", "rolled / (2 * pi)")
_THRUST = _formula("torque ratio kept radius", "torque * ratio * kept / radius")
_MARKED = _formula("rim width aspect less", "pi * (rim + 2 * width * aspect) * (1 - less)")
_PITCH_RADIUS = _formula("pitch teeth", "pitch / (2 * sin(pi / teeth))")
_SLANT = _formula("small large centre", "asin((large - small) / centre)")
# Each arc holds the share of its sprocket's teeth that the chain goes round.
_LINKS = _formula("pitch front rear centre slant", (
    "2 * centre * cos(slant) / pitch + front * (pi - 2 * slant) / (2 * pi) + rear * (pi + 2 * slant) / (2 * pi)"
))  # fmt: skip


def quantities(exercise: exercises.Exercise) -> dict[str, Any]:
    """What the question tells, as pint quantities; counts are plain."""
    return {
        one.name: _REGISTRY.Quantity(one.value, _UNITS.get(one.unit, one.unit)) if one.unit else one.value
        for one in exercise.given
    }


def _overall(told: dict[str, Any], keep: Keep) -> Any:
    """The overall ratio: driven over driving, pair by pair."""
    if "final drive" in told:
        return keep(told["final drive"] * told["gear"] * told["rear"] / told["front"])
    pairs = [pair for pair in ("primary", "gear") if f"{pair} driving" in told]
    inner = math.prod(keep(told[f"{pair} driven"] / told[f"{pair} driving"]) for pair in pairs)
    return keep(inner * told["rear"] / told["front"])


def _root(at: Callable[[float], float], first: float, second: float) -> float:
    """Where a function that bends little is zero, by chords."""
    before, now = at(first), at(second)
    for _ in range(30):
        if now == before or abs(second - first) < 1e-13 * abs(second):
            return second
        first, second = second, second - now * (second - first) / (now - before)
        before, now = now, at(second)
    raise AssertionError("the chords do not settle")


def _loop(told: dict[str, Any], centre: Any, keep: Keep) -> float:
    small, large = sorted((told["front"], told["rear"]))
    radii = (keep(_PITCH_RADIUS(told["pitch"], teeth)) for teeth in (small, large))
    slant = _SLANT(*radii, centre)
    return _plain(_LINKS(told["pitch"], small, large, centre, slant))


def _gear_ratio(told: dict[str, Any], keep: Keep) -> Any:
    return told["rear"] / told["front"]


def _rollout(told: dict[str, Any], keep: Keep) -> Any:
    if "turns" in told:
        return told["distance"] / told["turns"]
    width = told["section width"] * _REGISTRY.millimeter  # the marking has it bare; the question says in what
    return _MARKED(told["rim diameter"], width, told["aspect ratio"] / 100, told["rolls less"].to(""))


def _engine_turns(told: dict[str, Any], keep: Keep) -> Any:
    wheel = keep(_TURNS(1 * _REGISTRY.kilometer, 1, told["circumference"]).to(""))
    return wheel * _overall(told, keep)


def _road_speed(told: dict[str, Any], keep: Keep) -> Any:
    wheel = keep(told["engine speed"] / _overall(told, keep))
    return _SPEED(wheel, 1, told["circumference"])


def _engine_speed(told: dict[str, Any], keep: Keep) -> Any:
    wheel = keep(_TURNING(told["road speed"], 1, told["circumference"]).to("1 / minute"))
    return wheel * _overall(told, keep)


def _thrust(told: dict[str, Any], keep: Keep) -> Any:
    at_wheel = keep(told["torque"] * _overall(told, keep) * told["efficiency"].to(""))
    return _THRUST(at_wheel, 1, 1, keep(_RADIUS(told["circumference"])))


def _hill(told: dict[str, Any], keep: Keep) -> Any:
    thrust, weight, rolling = (
        keep(x.to("newton")) for x in (_thrust(told, keep), told["mass"] * told["gravity"], told["resistance"])
    )
    push, down, back = thrust.magnitude, weight.magnitude, rolling.magnitude
    steep = _root(lambda angle: down * math.sin(angle) + back * math.cos(angle) - push, 0.1, 0.2)
    return _REGISTRY.Quantity(steep, "radian")


def _top_speed(told: dict[str, Any], keep: Keep) -> Any:
    gears = [name.split()[1] for name in told if name.startswith("gear ") and name.endswith("driving")]
    speeds = []
    for gear in gears:
        here = told | {f"gear {side}": told[f"gear {gear} {side}"] for side in ("driving", "driven")}
        speeds.append(_SPEED(told["limit"], _overall(here, keep), told["circumference"]))
    return max(speeds)


def _chain_length(told: dict[str, Any], keep: Keep) -> Any:
    return 2 * math.ceil(_loop(told, told["centre"], keep) / 2)


def _axle_position(told: dict[str, Any], keep: Keep) -> Any:
    def misses(millimetres: float) -> float:
        return _loop(told, _REGISTRY.Quantity(millimetres, "mm"), keep) - float(told["links"])

    return _REGISTRY.Quantity(_root(misses, 500.0, 600.0), "mm")


def _chain_pull(told: dict[str, Any], keep: Keep) -> Any:
    return told["torque"] / keep(_PITCH_RADIUS(told["pitch"], told["front"]))


def _tooth_contacts(told: dict[str, Any], keep: Keep) -> Any:
    wheel = 1 * _REGISTRY.kilometer / told["circumference"]
    return wheel.to("") * told["rear"] / told["front"]


def _speedometer(told: dict[str, Any], keep: Keep) -> Any:
    if "circumference before" in told:
        return told["true speed"] * keep((told["circumference before"] / told["circumference after"]).to(""))
    before, after = (keep(told[f"rear {when}"] / told[f"front {when}"]) for when in ("before", "after"))
    return told["true speed"] * keep(after / before)


_SOLVERS = {
    "gear ratio": _gear_ratio, "overall ratio": _overall, "rollout": _rollout, "engine turns": _engine_turns,
    "road speed": _road_speed, "engine speed": _engine_speed, "thrust": _thrust, "hill": _hill,
    "top speed by revs": _top_speed, "chain length": _chain_length, "axle position": _axle_position,
    "chain pull": _chain_pull, "tooth contacts": _tooth_contacts, "speedometer": _speedometer,
}  # fmt: skip


def significant(number: float, digits: int) -> float:
    """A number rounded to so many significant digits."""
    return float(f"{number:.{digits - 1}e}")


def rounding(digits: int) -> Keep:
    """What a learner does who rounds to so many digits on the way."""

    def keep(value: Any) -> Any:
        if hasattr(value, "to"):
            return _REGISTRY.Quantity(significant(value.magnitude, digits), value.units)
        return significant(float(value), digits)

    return keep


def solved(exercise: exercises.Exercise, keep: Keep = lambda value: value) -> float:
    """The answer as a number in the unit that is asked for."""
    value = _SOLVERS[exercise.topic](quantities(exercise), keep)
    return float(value.to(_UNITS.get(exercise.unit, exercise.unit)).magnitude) if hasattr(value, "to") else float(value)

# SPDX-License-Identifier: MIT
"""Every set-up of a space and how it fares, and in words what a question asks and what a set-up would change.

>>> import layshaft as ls
>>> from layshaft import studies
>>> studies.limit_in_words(ls.Limit("engine speed", most="7000 rpm", speed="90 km/h", gear=6))
'engine speed at 90.0 km/h in gear 6 at most 7000 rpm'
"""

from __future__ import annotations

import string
from typing import TYPE_CHECKING, Any, NamedTuple

from . import _core as ls

if TYPE_CHECKING:
    from ._core import _Units as Units

__all__ = [
    "Looked",
    "letter",
    "limit_in_words",
    "look_at_all",
    "measured",
    "number",
    "open_limits",
    "short_name",
    "tyre_name",
    "unit",
    "what_differs",
]

SHARES = ("wear room", "speedometer beyond rule")  # shares of one beside those that are changes
PLAIN_UNITS: dict[type, dict[str, tuple[str, Any]]] = {
    ls.Length: {"metric": ("mm", ls.mm), "us": ("in", ls.inch)},
    ls.Mass: {"metric": ("kg", ls.kg), "us": ("lb", ls.lb)},
    ls.Speed: {"metric": ("km/h", ls.kmh), "us": ("mph", ls.mph)},
    ls.AngularSpeed: {"metric": ("rpm", ls.rpm), "us": ("rpm", ls.rpm)},
    ls.Angle: {"metric": ("deg", ls.deg), "us": ("deg", ls.deg)},
}


def _is_share(measure: str) -> bool:
    return measure.endswith(" change") or measure in SHARES


def _amount(measure: str, value: Any, units: Units) -> str:
    """'+2.0 %', '1.5 %', '52', '10.2 km/h'."""
    if measure.endswith(" change"):
        return ls.show_percent(value)
    if measure in SHARES:
        return f"{100 * value:.1f} %"
    return f"{value:g}" if isinstance(value, float) else ls.show(value, units)


def measured(asked: ls.Limit | ls.Wish, units: Units = "metric") -> str:
    """What a limit or a wish is about: 'engine speed at 90.0 km/h in gear 6'."""
    at = "" if asked.speed is None else f" at {ls.show(asked.speed, units)}"
    return asked.measure + at + ("" if asked.gear is None else f" in gear {asked.gear}")


def limit_in_words(limit: ls.Limit, units: Units = "metric") -> str:
    """A limit as one says it: 'rear teeth at most 52'."""
    ends = [
        f"{word} {_amount(limit.measure, end, units)}"
        for word, end in (("at least", limit.least), ("at most", limit.most))
        if end is not None
    ]
    return f"{measured(limit, units)} {' and '.join(ends)}"


def letter(place: int) -> str:
    """The letter of the limit at a place, from 0: A to Z, then a to z."""
    if not 0 <= place < 52:
        raise ls.RangeError(f"place is {place}; expected 0 to 51")
    return (string.ascii_uppercase + string.ascii_lowercase)[place]


def number(measure: str, value: Any, units: Units = "metric") -> float:
    """A value of a measure as an axis shows it: shares in per cent, quantities in the unit that ``unit`` names."""
    if isinstance(value, float):
        return 100 * value if _is_share(measure) else value
    return float(value / PLAIN_UNITS[type(value)][units][1])


def unit(measure: str, value: Any, units: Units = "metric") -> str:
    """The unit of ``number``: '%', 'mm', or nothing for a count."""
    if isinstance(value, float):
        return "%" if _is_share(measure) else ""
    return PLAIN_UNITS[type(value)][units][0]


def open_limits(goals: ls.Goals, values: tuple[Any, ...]) -> list[int]:
    """The places of the limits that an end of a band breaks."""
    return [
        place
        for place, (limit, value) in enumerate(zip(goals.limits, values, strict=True))
        if value is None
        or (limit.least is not None and value.low < limit.least)
        or (limit.most is not None and value.high > limit.most)
    ]


class Looked(NamedTuple):
    """One set-up of a space, and how its wishes and limits come out.

    ``limits`` are the bands of what the limits ask for, ``broken`` the places of those not kept, ``price`` what it
    costs (None where not known), and ``score`` is as ``Chosen.score``: above 1 for what is worse than all of the
    trade-off, None where it cannot be told.
    """

    setup: ls.Setup
    limits: tuple[Any, ...]
    broken: tuple[int, ...]
    price: ls.Band[float] | None
    score: float | None


def _loss(wish: ls.Wish, value: ls.Band[Any], robust: bool) -> float:
    """How far a set-up is from a wish: the less, the better."""

    def at(end: Any) -> float:
        own = number(wish.measure, end)
        if wish.want in ("less", "more"):
            return own if wish.want == "less" else -own
        return abs(own - number(wish.measure, wish.want))

    return max(at(end) for end in (value.low, value.nominal, value.high)) if robust else at(value.nominal)


def look_at_all(machine: ls.Machine, space: ls.Space, goals: ls.Goals, choice: ls.Choice) -> list[Looked]:
    """Every set-up of a space, held against the trade-off of a choice by the rule that ranks it.

    Raises Error where the machine does not state what a measure needs.

    >>> import layshaft as ls
    >>> from layshaft import studies
    >>> bike = ls.Machine(name="A bike", gearbox=ls.Gearbox(gears=[3.0], idle="1000 rpm", rev_limit="9000 rpm"),
    ...                   chain="520", adjuster=ls.Adjuster("600 mm", "640 mm"), speedometer="front wheel",
    ...                   stock=ls.Setup(front=15, rear=45, circumference="2 m"))
    >>> space = ls.Space(fronts=[14, 15], rears=[44, 45])
    >>> goals = ls.Goals(limits=[ls.Limit("rear teeth", most=44)], wishes=[ls.Wish("thrust change", 0.0)])
    >>> found = studies.look_at_all(bike, space, goals, ls.choose(bike, space, goals))
    >>> sorted({(one.setup.rear, one.broken) for one in found})
    [(44, ()), (45, (0,))]
    """
    told = ls.survey(machine, space, goals)
    kept: list[tuple[Any, ...]] = [
        wishes for _, wishes, _, broken in told if not broken and all(value is not None for value in wishes)
    ]
    spans = []
    for place, wish in enumerate(goals.wishes):
        on_front = [_loss(wish, one.wishes[place], goals.robust) for one in choice.front]
        best, worst = min(on_front, default=0.0), max(on_front, default=0.0)
        if best == worst:  # a wish in which the trade-off is of one mind still tells the others from it
            worst = max((_loss(wish, wishes[place], goals.robust) for wishes in kept), default=best)
        spans.append((best, worst))
    weights = sum(wish.weight for wish in goals.wishes)

    def score(wishes: tuple[Any, ...]) -> float | None:
        if not choice.front or any(value is None for value in wishes):
            return None
        total = 0.0
        for wish, value, (best, worst) in zip(goals.wishes, wishes, spans, strict=True):
            if best < worst:
                total += wish.weight / weights * (_loss(wish, value, goals.robust) - best) / (worst - best)
        return total

    prices = ls.survey(machine, space, ls.Goals(wishes=[ls.Wish("cost", "less")]))
    return [
        Looked(setup, limits, broken, price, score(wishes))
        for (setup, wishes, limits, broken), (_, (price,), _, _) in zip(told, prices, strict=True)
    ]


def tyre_name(setup: ls.Setup) -> str:
    """The marking of a set-up's tyre, or that it was measured."""
    return "a measured tyre" if setup.tyre is None else setup.tyre.designation


def _chain_changed(setup: ls.Setup, present: ls.Setup) -> bool:
    return (setup.chain, setup.chain_made) != (present.chain, present.chain_made)


def what_differs(setup: ls.Setup, present: ls.Setup) -> list[str]:
    """What a set-up has that is not on the machine now, in words."""
    parts = []
    if setup.front != present.front:
        parts.append(f"{setup.front} teeth in front")
    material = setup.rear_material or present.rear_material
    if (setup.rear, material) != (present.rear, present.rear_material):
        parts.append(f"{setup.rear} teeth behind" + (f" in {material}" if material else ""))
    if _chain_changed(setup, present):
        parts.append(f"a new chain of {setup.links} links")
    elif present.links is not None and setup.links != present.links:
        parts.append(f"the chain at {setup.links} links")
    if (setup.tyre, setup.circumference) != (present.tyre, present.circumference):
        parts.append(tyre_name(setup))
    return parts


def short_name(setup: ls.Setup, present: ls.Setup) -> str:
    """A set-up by what is not on the machine now, for a list: '13/51, aluminium 7000, new chain of 112'."""
    parts = [f"{setup.front}/{setup.rear}"]
    if setup.rear_material not in (None, present.rear_material):
        parts.append(str(setup.rear_material))
    if _chain_changed(setup, present):
        parts.append(f"new chain of {setup.links}")
    elif present.links is not None and setup.links != present.links:
        parts.append(f"{setup.links} links")
    if (setup.tyre, setup.circumference) != (present.tyre, present.circumference):
        parts.append(tyre_name(setup).partition(" ")[0])
    return ", ".join(parts)

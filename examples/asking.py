# SPDX-License-Identifier: MIT
"""A question's limits and wishes in words and plain numbers, and every set-up of its space with how it fares."""

from __future__ import annotations

import string
from dataclasses import dataclass
from typing import Any, Literal, TypeAlias

import layshaft as ls

Units: TypeAlias = Literal["metric", "us"]
SHARES = ("wear room", "speedometer beyond rule")  # shares of one beside those that are changes
PLAIN_UNITS: dict[type, dict[str, tuple[str, Any]]] = {
    ls.Length: {"metric": ("mm", ls.mm), "us": ("in", ls.inch)},
    ls.Mass: {"metric": ("kg", ls.kg), "us": ("lb", ls.lb)},
    ls.Speed: {"metric": ("km/h", ls.kmh), "us": ("mph", ls.mph)},
    ls.AngularSpeed: {"metric": ("rpm", ls.rpm), "us": ("rpm", ls.rpm)},
    ls.Angle: {"metric": ("deg", ls.deg), "us": ("deg", ls.deg)},
}


def is_share(measure: str) -> bool:
    return measure.endswith(" change") or measure in SHARES


def amount(measure: str, value: Any, units: Units) -> str:
    """'+2.0 %', '1.5 %', '52', '10.2 km/h'."""
    if measure.endswith(" change"):
        return ls.show_percent(value)
    if measure in SHARES:
        return f"{100 * value:.1f} %"
    return f"{value:g}" if isinstance(value, float) else ls.show(value, units)


def measured(asked: ls.Limit | ls.Wish, units: Units) -> str:
    """'engine speed at 90.0 km/h in gear 6'."""
    at = "" if asked.speed is None else f" at {ls.show(asked.speed, units)}"
    return asked.measure + at + ("" if asked.gear is None else f" in gear {asked.gear}")


def limit_in_words(limit: ls.Limit, units: Units) -> str:
    ends = [
        f"{word} {amount(limit.measure, end, units)}"
        for word, end in (("at least", limit.least), ("at most", limit.most))
        if end is not None
    ]
    return f"{measured(limit, units)} {' and '.join(ends)}"


def letter(limit: int) -> str:
    return string.ascii_letters[26 + limit] if limit < 26 else string.ascii_letters[limit - 26]


def number(measure: str, value: Any, units: Units) -> float:
    """A value as an axis shows it."""
    if isinstance(value, float):
        return 100 * value if is_share(measure) else value
    return float(value / PLAIN_UNITS[type(value)][units][1])


def unit(measure: str, value: Any, units: Units) -> str:
    if isinstance(value, float):
        return "%" if is_share(measure) else ""
    return PLAIN_UNITS[type(value)][units][0]


def ends(band: ls.Band[Any]) -> tuple[Any, Any, Any]:
    return band.low, band.nominal, band.high


def loss(wish: ls.Wish, value: ls.Band[Any], robust: bool) -> float:
    """How far a set-up is from a wish: the less, the better."""

    def at(end: Any) -> float:
        own = number(wish.measure, end, "metric")
        if wish.want in ("less", "more"):
            return own if wish.want == "less" else -own
        return abs(own - number(wish.measure, wish.want, "metric"))

    return max(at(end) for end in ends(value)) if robust else at(value.nominal)


def open_limits(goals: ls.Goals, values: tuple[Any, ...]) -> list[int]:
    """The limits that an end of a band breaks."""
    return [
        place
        for place, (limit, value) in enumerate(zip(goals.limits, values, strict=True))
        if value is None
        or (limit.least is not None and value.low < limit.least)
        or (limit.most is not None and value.high > limit.most)
    ]


@dataclass(frozen=True)
class Looked:
    """One set-up of the space: how its wishes and limits come out, what it costs, and how it scores."""

    setup: ls.Setup
    limits: tuple[Any, ...]
    broken: tuple[int, ...]
    price: ls.Band[float] | None
    score: float | None  # as Chosen.score; above 1 for what is worse than all of the trade-off; None: not to be told


def look_at_all(machine: ls.Machine, space: ls.Space, goals: ls.Goals, choice: ls.Choice) -> list[Looked]:
    """Every set-up of the space, held against the trade-off by the rule that ranks it."""
    told = ls.survey(machine, space, goals)
    kept: list[tuple[Any, ...]] = [
        wishes for _, wishes, _, broken in told if not broken and all(value is not None for value in wishes)
    ]
    spans = []
    for place, wish in enumerate(goals.wishes):
        on_front = [loss(wish, one.wishes[place], goals.robust) for one in choice.front]
        best, worst = min(on_front, default=0.0), max(on_front, default=0.0)
        if best == worst:  # a wish in which the trade-off is of one mind still tells the others from it
            worst = max((loss(wish, wishes[place], goals.robust) for wishes in kept), default=best)
        spans.append((best, worst))
    weights = sum(wish.weight for wish in goals.wishes)

    def score(wishes: tuple[Any, ...]) -> float | None:
        if not choice.front or any(value is None for value in wishes):
            return None
        total = 0.0
        for wish, value, (best, worst) in zip(goals.wishes, wishes, spans, strict=True):
            if best < worst:
                total += wish.weight / weights * (loss(wish, value, goals.robust) - best) / (worst - best)
        return total

    prices = ls.survey(machine, space, ls.Goals(wishes=[ls.Wish("cost", "less")]))
    return [
        Looked(setup, limits, broken, price, score(wishes))
        for (setup, wishes, limits, broken), (_, (price,), _, _) in zip(told, prices, strict=True)
    ]


def teeth(setup: ls.Setup) -> str:
    return f"{setup.front}/{setup.rear}"


def tyre_name(setup: ls.Setup) -> str:
    return "a measured tyre" if setup.tyre is None else setup.tyre.designation


def chain_changed(setup: ls.Setup, present: ls.Setup) -> bool:
    return (setup.chain, setup.chain_made) != (present.chain, present.chain_made)


def what_differs(setup: ls.Setup, present: ls.Setup) -> list[str]:
    """What a set-up has that is not on the machine now, in words."""
    parts = []
    if setup.front != present.front:
        parts.append(f"{setup.front} teeth in front")
    material = setup.rear_material or present.rear_material
    if (setup.rear, material) != (present.rear, present.rear_material):
        parts.append(f"{setup.rear} teeth behind" + (f" in {material}" if material else ""))
    if chain_changed(setup, present):
        parts.append(f"a new chain of {setup.links} links")
    elif present.links is not None and setup.links != present.links:
        parts.append(f"the chain at {setup.links} links")
    if (setup.tyre, setup.circumference) != (present.tyre, present.circumference):
        parts.append(tyre_name(setup))
    return parts


def short_name(setup: ls.Setup, present: ls.Setup) -> str:
    """'13/51, aluminium 7000, new chain of 112'."""
    parts = [teeth(setup)]
    if setup.rear_material not in (None, present.rear_material):
        parts.append(str(setup.rear_material))
    if chain_changed(setup, present):
        parts.append(f"new chain of {setup.links}")
    elif present.links is not None and setup.links != present.links:
        parts.append(f"{setup.links} links")
    if (setup.tyre, setup.circumference) != (present.tyre, present.circumference):
        parts.append(tyre_name(setup).partition(" ")[0])
    return ", ".join(parts)

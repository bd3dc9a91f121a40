# SPDX-License-Identifier: MIT
"""A tyre's sizes out of its marking: the numbers that the working looks up are taken as the decimals they are."""

from __future__ import annotations

import random
from collections.abc import Callable
from functools import cache

import layshaft as ls
from accuracy.exact import Exact, Number, constant, mp
from accuracy.function import Arguments, Draw, Function

BAND = ("low", "nominal", "high")
WIDTHS, ASPECTS, RIMS = tuple(range(80, 210, 10)), tuple(range(50, 105, 5)), (10, 12, 14, 16, 17, 18, 19, 21)


@cache
def looked_up(marking: str) -> dict[str, dict[str, Number]]:
    """What the marking gives and the tables add, in metres or plain, at each end of the band."""
    found: dict[str, dict[str, Number]] = {}
    for step in ls.TyreSize(marking).explain("circumference").steps:
        if step.kind != "computed":
            found[step.name] = {end: decimal(run) for end, run in step.runs.items()}
    return found


def decimal(value: ls.Length | float) -> Number:
    return mp.mpf(str(value).removesuffix(" mm")) / 1000 if isinstance(value, ls.Length) else mp.mpf(repr(value))


def overall_diameter(marking: str, end: str) -> Number:
    of = {name: runs[end] for name, runs in looked_up(marking).items()}
    return of["rim diameter"] + 2 * of["section width"] * of["aspect ratio"] / 100 * of["height factor"]


def circumference(marking: str, end: str) -> Number:
    return mp.pi * overall_diameter(marking, end) * looked_up(marking)["rolling factor"][end]


def marking_of(random: random.Random, difficulty: str) -> str:
    width, aspect, rim = (
        random.choice((of[0], of[-1]) if difficulty == "edge" else of) for of in (WIDTHS, ASPECTS, RIMS)
    )
    return f"{width}/{aspect}-{rim}"


def drawn(difficulty: str, of: Callable[[str, str], Number]) -> Draw:
    def draw(random: random.Random) -> tuple[Arguments, Exact]:
        marking, end = marking_of(random, difficulty), random.choice(BAND)
        return (marking, end), constant(of(marking, end))

    return draw


FUNCTIONS = [
    Function(
        "TyreSize.rolling_circumference", "ulp", {kind: drawn(kind, circumference) for kind in ("ordinary", "edge")},
        lambda marking, end: getattr(ls.rolling_circumference(marking), end) / ls.m,
    ),
    Function(
        "TyreSize.overall_diameter", "ulp", {kind: drawn(kind, overall_diameter) for kind in ("ordinary", "edge")},
        lambda marking, end: getattr(ls.TyreSize(marking).overall_diameter, end) / ls.m,
    ),
]  # fmt: skip

# SPDX-License-Identifier: MIT
"""The array functions of all formulas, whose arguments and results are in units: those are rounded as well."""

from __future__ import annotations

import random
from functools import cache

from accuracy.exact import FORMULAS, Exact, Number, in_range, mp, worker
from accuracy.function import Arguments, Draw, Function
from accuracy.of_units import KINDS
from accuracy.rows import ordinary, wide_within
from layshaft import _arrays, arrays

LISTED = {one[0]: one for one in _arrays._formulas() if one[1] in FORMULAS}


@cache
def size(kind: str, unit: str) -> Number:
    """A unit's, by definition; that of a number is one."""
    return mp.mpf(KINDS[kind][unit]) if unit else mp.mpf(1)


def in_units(difficulty: str) -> Draw:
    wide = wide_within(10.0)

    def draw(random: random.Random) -> tuple[Arguments, Exact] | None:
        name = random.choice(sorted(LISTED))
        _, formula, arguments, result = LISTED[name]
        numbers = ordinary(formula, random) if difficulty == "ordinary" else wide(formula, random)
        elements, exact = [], {}
        for _, word, kind, unit in arguments:
            one = size(kind, unit)
            element = float(mp.mpf(numbers[word]) / one)
            value = mp.mpf(element) * one
            elements.append(element)
            exact[word] = Exact(value, abs(value) if one != 1 else 0)
            numbers[word] = float(value)
        if not in_range(formula, numbers):
            return None
        try:
            worked = worker(formula)(exact)
        except (ZeroDivisionError, ValueError, TypeError, OverflowError):
            return None
        one = size(result[2], result[3])
        return (name, *elements), Exact(worked.value / one, worked.touched / one)

    return draw


FUNCTIONS = [
    Function(
        "arrays", "ulp", {kind: in_units(kind) for kind in ("ordinary", "wide")},
        lambda name, *elements: float(getattr(arrays, name)(*elements)),
    )
]  # fmt: skip

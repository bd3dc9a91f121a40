# SPDX-License-Identifier: MIT
"""Everything that the table holds: the formulas, and the functions that are none."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import layshaft as ls
from accuracy import of_arrays, of_chain, of_counts, of_road, of_tyre, of_units
from accuracy.exact import FORMULAS
from accuracy.function import Function
from accuracy.rows import CLASSES, Row, rows_of

# So many rows of each class: of a formula, and of any other function.
ROWS = {"ordinary": 130, "edge": 110, "cancelling": 110, "wide": 130}
ROWS_OF_A_FUNCTION = 400
ROWS_OF_ARRAYS = 5000  # for all of them together


@dataclass(frozen=True)
class Entry:
    name: str
    unit: str
    classes: tuple[str, ...]
    rows: Callable[[str, int, int], Iterator[Row]]  # of a class, so many, by a seed
    call: Callable[..., float]
    count: Callable[[str], int]


def of_formula(formula: ls.Formula) -> Entry:
    def rows(difficulty: str, count: int, seed: int) -> Iterator[Row]:
        return rows_of(formula.name, difficulty, count, seed)

    return Entry(formula.name, "ulp", CLASSES, rows, formula.evaluate, lambda difficulty: ROWS[difficulty])


def of_function(function: Function) -> Entry:
    count = ROWS_OF_ARRAYS if function.name == "arrays" else ROWS_OF_A_FUNCTION
    return Entry(function.name, function.unit, tuple(function.draws), function.rows, function.call, lambda _: count)


OTHERS: list[Any] = [of_chain, of_tyre, of_road, of_units, of_counts, of_arrays]
ENTRIES = {formula.name: of_formula(formula) for formula in FORMULAS.values()}
ENTRIES |= {one.name: of_function(one) for module in OTHERS for one in module.FUNCTIONS}

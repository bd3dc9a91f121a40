# SPDX-License-Identifier: MIT
"""Every formula's text, read and worked out by an evaluator of its own at fifty digits, against its function.

These are the first rows of each class of the table; tests/run --long looks at all of them (accuracy/check.py).
"""

from __future__ import annotations

from itertools import islice

import layshaft as ls
import pytest
from accuracy.errors import broken, kept, worst_of
from accuracy.exact import FORMULAS, in_range, parameters
from accuracy.functions import ENTRIES
from accuracy.rows import CLASSES

ROWS = 8
BOUNDS = kept()


def test_every_formula_is_here() -> None:
    assert len(FORMULAS) == len(ls.formulas()) > 60


@pytest.mark.parametrize("name", FORMULAS)
def test_a_formula_is_what_its_text_says(name: str) -> None:
    entry = ENTRIES[name]
    rows = [row for kind in CLASSES for row in islice(entry.rows(kind, entry.count(kind), 0), ROWS)]
    assert len(rows) >= 3 * ROWS, "the spans lie outside the formula's range"
    assert not broken(worst_of(rows), BOUNDS)


@pytest.mark.parametrize("name", FORMULAS)
def test_the_range_is_asked_as_its_text_says(name: str) -> None:
    formula = FORMULAS[name]
    for kind, word in parameters(formula):
        if kind in ("Teeth", "Links"):
            continue
        for number in (-1.0, 0.0):
            row = next(ENTRIES[name].rows("ordinary", 1, 0))
            numbers = dict(zip((one for _, one in parameters(formula)), row.arguments, strict=True)) | {word: number}
            if in_range(name, numbers):
                formula.evaluate(*numbers.values())
            else:
                with pytest.raises(ls.Error, match="asks for"):
                    formula.evaluate(*numbers.values())

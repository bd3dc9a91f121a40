# SPDX-License-Identifier: MIT
"""What the table holds beside the formulas: a function, how its arguments are drawn, and its exact result."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from accuracy.exact import Exact, Number, mp
from accuracy.rows import LEAST_TRIES, TRIES, Row, row_of

Arguments = tuple[Any, ...]
Draw = Callable[[random.Random], tuple[Arguments, Exact] | None]


@dataclass(frozen=True)
class Function:
    """`unit` is that of its errors: "ulp" of the result, or what the result is measured in."""

    name: str
    unit: str
    draws: Mapping[str, Draw]  # by class
    call: Callable[..., float]

    def rows(self, difficulty: str, count: int, seed: int = 0) -> Iterator[Row]:
        draw = random.Random(f"{self.name} {difficulty} {seed}")
        made = 0
        for _ in range(TRIES * count + LEAST_TRIES):
            if made == count:
                return
            drawn = self.draws[difficulty](draw)
            if drawn is not None:
                made += 1
                yield row_of(self.name, difficulty, drawn[0], drawn[1])


def exactly(value: Number) -> Exact:
    return Exact(mp.mpf(value))

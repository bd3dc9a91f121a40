# SPDX-License-Identifier: MIT
"""Where nothing may be rounded: who meets whom, the tables of load indices and speed symbols, and text read back."""

from __future__ import annotations

import csv
import math
import random
from pathlib import Path
from typing import Any

import layshaft as ls
from accuracy.exact import Exact, constant, mp
from accuracy.function import Arguments, Function, exactly
from accuracy.of_units import KINDS, ONE

TABLES = Path(__file__).resolve().parents[1] / "reference"


def rows_of_table(name: str) -> list[list[str]]:
    with (TABLES / name).open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))[1:]


LOADS = rows_of_table("tyre_load_index.csv")
SPEEDS = [row for row in rows_of_table("tyre_speed_symbol.csv") if row[1].isdecimal()]


def load(random: random.Random) -> tuple[Arguments, Exact]:
    index, mass, _ = random.choice(LOADS)
    return (float(index),), exactly(mp.mpf(float(mass)))


def speed(random: random.Random) -> tuple[Arguments, Exact]:
    symbol, kmh, _ = random.choice(SPEEDS)
    return (symbol,), constant(mp.mpf(kmh) / mp.mpf("3.6"))


def counts(random: random.Random, difficulty: str) -> tuple[int, int]:
    if difficulty == "ordinary":
        return random.randint(9, 70), 2 * random.randint(40, 100)
    return random.choice((4, 5, 999, 1000)), random.choice((4, 5, 6, 9999, 10000))


def passes_of(difficulty: str) -> Any:
    def draw(random: random.Random) -> tuple[Arguments, Exact]:
        teeth, links = counts(random, difficulty)
        return (float(teeth), float(links)), exactly(teeth // math.gcd(teeth, links))

    return draw


def distinct_of(difficulty: str) -> Any:
    def draw(random: random.Random) -> tuple[Arguments, Exact]:
        teeth, links = counts(random, difficulty)
        return (float(teeth), float(links)), exactly(links // math.gcd(teeth, links))

    return draw


def printed(difficulty: str) -> Any:
    """Any double of any kind of quantity, which its text must give back to the bit."""

    def draw(random: random.Random) -> tuple[Arguments, Exact]:
        kind = random.choice(sorted(KINDS))
        number = random.uniform(0.01, 3000.0)
        if difficulty == "wide":
            number = random.choice((-1.0, 1.0)) * math.ldexp(random.uniform(1.0, 2.0), random.randint(-900, 900))
        return (kind, number), exactly(mp.mpf(number))

    return draw


def read_back(kind: str, number: float) -> float:
    quantity = getattr(ls, kind)
    return float(quantity(str(number * ONE[kind])) / ONE[kind])


FUNCTIONS = [
    Function("load_capacity", "ulp", {"ordinary": load}, lambda index: ls.load_capacity(int(index)) / ls.kg),
    Function("rated_speed", "ulp", {"ordinary": speed}, lambda symbol: ls.rated_speed(symbol) / ls.mps),
    Function(
        "hunting.passes", "ulp", {kind: passes_of(kind) for kind in ("ordinary", "edge")},
        lambda teeth, links: float(ls.hunting(int(teeth), int(links)).passes),
    ),
    Function(
        "hunting.distinct_links", "ulp", {kind: distinct_of(kind) for kind in ("ordinary", "edge")},
        lambda teeth, links: float(ls.hunting(int(teeth), int(links)).distinct_links),
    ),
    Function("quantity.text", "ulp", {kind: printed(kind) for kind in ("ordinary", "wide")}, read_back),
]  # fmt: skip

# SPDX-License-Identifier: MIT
"""The array functions beside NumPy, and many tyre designations read at once beside Python's re, as ratios in one run.

Contestants run in rounds, in random order, and the best round of each counts; all must give the same answers first. No
times are printed: they are true of one machine only.
"""

from __future__ import annotations

import math
import random
import re
import time
from collections.abc import Callable

import layshaft as ls
import numpy as np
import pandas as pd
from layshaft import arrays

ROUNDS = 15


def compare(subject: str, contestants: dict[str, Callable[[], object]]) -> None:
    """Times each contestant against the first."""
    best = dict.fromkeys(contestants, math.inf)
    for _ in range(ROUNDS):
        for name in random.sample(list(contestants), len(contestants)):
            began = time.perf_counter()
            contestants[name]()
            best[name] = min(best[name], time.perf_counter() - began)
    first = best[next(iter(contestants))]
    print(f"\n{subject}\n  {'time over that of the first:':72}{'best':>8}")
    for name, seconds in best.items():
        print(f"  {name:72}{seconds / first:8.2f}")


# --- Formulas --------------------------------------------------------------------------------------------------------
def light_formulas(size: int) -> None:
    numbers = np.random.default_rng(7)
    rpm, ratio = numbers.uniform(1000.0, 11000.0, size), numbers.uniform(5.0, 30.0, size)
    circumference, out, spare = numbers.uniform(1800.0, 2200.0, size), np.empty(size), np.empty(size)

    def by_numpy() -> np.ndarray:
        np.multiply(rpm, circumference, out=out)
        np.divide(out, ratio, out=out)
        return np.multiply(out, 60e-6, out=out)

    expected = arrays.road_speed_kmh(rpm, ratio, circumference)
    np.testing.assert_allclose(by_numpy(), expected, rtol=1e-14)
    np.testing.assert_allclose(0.006 * rpm, arrays.road_speed_kmh(rpm, 20.0, 2000.0), rtol=1e-14)
    compare(
        f"road speed of {size:,} engine speeds, into an array that is there",
        {
            "layshaft.arrays.road_speed_kmh(rpm, 20.0, 2000.0)": lambda: arrays.road_speed_kmh(
                rpm, 20.0, 2000.0, out=spare
            ),
            "the same of columns that lie two apart": lambda: arrays.road_speed_kmh(
                rpm[::2], 20.0, 2000.0, out=spare[::2]
            ),
            "NumPy: one product, numbers read and written once and no range": lambda: np.multiply(
                rpm, 0.006, out=spare
            ),
            "layshaft.arrays.road_speed_kmh, all three arrays": lambda: arrays.road_speed_kmh(
                rpm, ratio, circumference, out=spare
            ),
            "NumPy: all three arrays, in place, and no range": by_numpy,
        },
    )


def memory_bound(size: int) -> None:
    """One product, so that reading and writing is all that takes time."""
    radius, out = np.random.default_rng(8).uniform(290.0, 340.0, size), np.empty(size)
    turn = 2.0 * math.pi
    np.testing.assert_allclose(arrays.circumference_of_radius_mm(radius), turn * radius, rtol=1e-14)
    compare(
        f"circumferences of {size:,} radii, into an array that is there",
        {
            "NumPy: radius times a number": lambda: np.multiply(radius, turn, out=out),
            "layshaft.arrays.circumference_of_radius_mm": lambda: arrays.circumference_of_radius_mm(radius, out=out),
        },
    )


# --- Designations ----------------------------------------------------------------------------------------------------
# The rival has the easier task: metric sizes in canonical spelling, no table, no dimensions, no words for an error.
PATTERN = re.compile(
    r"(\d{2,3})/(\d{2,3})(-|B|ZR|R)(\d{1,2}(?:\.5)?)(?: (M/C))?(?: (\d{1,3})([A-Z]\d?))?(?: (TL|TT))?(?: (REINF))?"
)
ROW = np.dtype(
    [("width", "f8"), ("aspect", "f8"), ("construction", "U2"), ("rim", "f8"), ("motorcycle", "?"), ("load", "f8"),
     ("speed", "U2"), ("tube", "U2"), ("reinforced", "?")]
)  # fmt: skip


def parts(text: str) -> tuple[object, ...]:
    match = PATTERN.fullmatch(text)
    if match is None:
        raise ValueError(text)
    width, aspect, construction, rim, motorcycle, load, speed, tube, reinforced = match.groups()
    return (
        int(width), int(aspect), construction, float(rim), motorcycle is not None,
        math.nan if load is None else int(load), speed or "", tube or "", reinforced is not None,
    )  # fmt: skip


def rows_by_re(texts: list[str]) -> np.ndarray:
    return np.array([parts(text) for text in texts], dtype=ROW)


def markings(number: int, kinds: int) -> list[str]:
    """So many texts, each an object of its own as those out of a file are, of so many different markings."""
    draw = random.Random(11)
    marks = ["", " M/C", " M/C 61R TL", " 65R TT", " 69W", " 54S", " 65S TT REINF"]
    one_of_each = set[str]()
    while len(one_of_each) < kinds:
        size = f"{5 * draw.randint(12, 50)}/{draw.randint(25, 110)}{draw.choice('-BR')}{draw.randint(8, 21)}"
        one_of_each.add(size + draw.choice(marks))
    all_kinds = sorted(one_of_each)
    return ["".join(list(draw.choice(all_kinds))) for _ in range(number)]


def designations(number: int, kinds: int) -> None:
    texts = markings(number, kinds)
    ours, theirs = arrays.parse_tyres(texts), rows_by_re(texts)
    for name, other in (("section_width_mm", "width"), ("aspect_ratio", "aspect"), ("rim_code", "rim"),
                        ("load_index", "load"), ("speed_symbol", "speed")):  # fmt: skip
        np.testing.assert_array_equal(ours[name], theirs[other])
    assert ours["designation"].tolist() == texts == [ls.TyreSize(text).designation for text in texts]
    column = pd.Series(texts)
    contestants: dict[str, Callable[[], object]] = {
        "layshaft.arrays.parse_tyres, a list": lambda: arrays.parse_tyres(texts),
        "layshaft.arrays.parse_tyres, a pandas Series": lambda: arrays.parse_tyres(column),
        "layshaft.TyreSize, one after the other": lambda: [ls.TyreSize(text) for text in texts],
        "re, compiled once, into a structured array": lambda: rows_by_re(texts),
        "re, compiled once, into tuples of numbers and texts": lambda: [parts(text) for text in texts],
        "re, compiled once, the match alone": lambda: [PATTERN.fullmatch(text) for text in texts],
    }
    try:
        import polars
    except ImportError:
        pass
    else:
        series = polars.Series(texts)
        contestants["layshaft.arrays.parse_tyres, a Polars Series"] = lambda: arrays.parse_tyres(series)
    compare(f"{number:,} metric designations, {kinds:,} of them different", contestants)


if __name__ == "__main__":
    light_formulas(1_000)
    light_formulas(100_000)
    light_formulas(10_000_000)
    memory_bound(10_000_000)
    designations(100_000, 300)
    designations(100_000, 50_000)

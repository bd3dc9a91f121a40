# SPDX-License-Identifier: MIT
"""What bulk work costs beside NumPy: centre distances of many chains, and whole set-ups of a data frame.

All contestants must agree on every number first; the run fails where they do not, never because of a time. Rounds are
interleaved, in random order; the best counts. Ratios against NumPy on one thread; they are true of one processor.
"""

from __future__ import annotations

import ctypes
import itertools
import math
import os
import random
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import layshaft as ls
import numpy as np
import pandas as pd
from choose import (
    CRUISE,
    FIRST,
    GRIP,
    LAST,
    LIMITS,
    LOWEST_PULL,
    MACHINE,
    PRIMARY,
    READ_MOST,
    READS,
    STOCK_RATIO,
    STOCK_REAR,
    Pairs,
    Wheel,
    chains_by_numpy,
    pairs_by_numpy,
    wheels,
)
from layshaft import arrays, frames

PITCH_MM = 15.875


def compare(subject: str, contestants: dict[str, Callable[[], object]], pieces: int, against: str, rounds: int) -> None:
    best = dict.fromkeys(contestants, math.inf)
    for _ in range(rounds):
        for name in random.sample(list(contestants), len(contestants)):
            began = time.perf_counter()
            contestants[name]()
            best[name] = min(best[name], time.perf_counter() - began)
    print(f"\n{subject}\n  {'':58}{'ns each':>10}{'times as fast as NumPy':>26}")
    for name, seconds in best.items():
        print(f"  {name:58}{seconds / pieces * 1e9:10.1f}{best[against] / seconds:26.2f}")


# --- Centre distances ------------------------------------------------------------------------------------------------
RADII = 0.5 / np.sin(np.pi / np.maximum(np.arange(201), 2))


class Newton:
    """Two steps of Newton's from the handbook's closed form, in pieces that stay in the cache, with every ufunc in
    place and the radii from a table."""

    def __init__(self, piece: int) -> None:
        self.piece = piece
        self.rows = np.empty((7, piece))
        self.places = np.empty((2, piece), dtype=np.intp)

    def __call__(
        self, pitch: float, front: np.ndarray, rear: np.ndarray, links: np.ndarray, out: np.ndarray
    ) -> np.ndarray:
        for first in range(0, len(out), self.piece):
            part = slice(first, min(first + self.piece, len(out)))
            n = part.stop - first
            radii, arc, straight, product, square, step, slope = self.rows[:, :n]
            at_front, at_rear = self.places[:, :n]
            run = out[part]
            np.copyto(at_front, front[part], casting="unsafe")
            np.copyto(at_rear, rear[part], casting="unsafe")
            np.take(RADII, at_rear, out=radii, mode="clip")
            np.take(RADII, at_front, out=step, mode="clip")
            radii -= step
            np.subtract(rear[part], front[part], out=arc)
            arc *= 1.0 / np.pi
            np.add(front[part], rear[part], out=straight)
            straight *= -0.5
            straight += links[part]
            np.multiply(arc, radii, out=product)
            np.multiply(radii, radii, out=square)
            np.multiply(straight, straight, out=run)
            np.multiply(product, 8.0, out=step)
            run -= step
            np.sqrt(run, out=run)
            run += straight
            run *= 0.25
            for _ in range(2):
                np.divide(radii, run, out=step)
                np.arctan(step, out=step)
                step *= arc
                step -= straight
                step += run
                step += run
                np.multiply(run, run, out=slope)
                slope += square
                np.divide(product, slope, out=slope)
                np.subtract(2.0, slope, out=slope)
                step /= slope
                run -= step
            run *= run
            run += square
            np.sqrt(run, out=run)
            run *= pitch
        return out


def two_at_once() -> Callable[..., None]:
    """The same loops, built for every x86-64 (two_at_once/centres.cpp)."""
    built = Path(__file__).parents[1] / "build/bench/benchmarks/libbenchmark_two_at_once.so"
    function = ctypes.CDLL(str(built)).centres_two_at_once
    column = np.ctypeslib.ndpointer(np.float64, flags="C_CONTIGUOUS")
    function.argtypes = [ctypes.c_double, column, column, column, column, ctypes.c_size_t]
    function.restype = None
    return function


def solve_many(size: int) -> None:
    """The drives of motorcycles."""
    numbers = np.random.default_rng(0)
    front, rear = numbers.integers(11, 18, size).astype(float), numbers.integers(34, 54, size).astype(float)
    links = 2.0 * numbers.integers(48, 63, size)
    out, theirs = np.empty(size), np.empty(size)
    expected = arrays.chain_centre_mm(PITCH_MM, front, rear, links)
    np.testing.assert_allclose(Newton(8192)(PITCH_MM, front, rear, links, theirs), expected, rtol=1e-14)
    halves = [slice(0, size // 2), slice(size // 2, size)]
    with ThreadPoolExecutor(2) as pool:

        def by_two() -> None:
            list(pool.map(lambda h: arrays.chain_centre_mm(PITCH_MM, front[h], rear[h], links[h], out=out[h]), halves))

        by_two()
        np.testing.assert_array_equal(out, expected)
        baseline = two_at_once()
        baseline(PITCH_MM, front, rear, links, out, size)
        np.testing.assert_array_equal(out, expected)
        rivals = {f"NumPy, Newton in pieces of {piece}": Newton(piece) for piece in (2048, 4096, 8192, 16384)}
        contestants: dict[str, Callable[[], object]] = {
            "layshaft.arrays.chain_centre_mm(..., out=)": lambda: arrays.chain_centre_mm(
                PITCH_MM, front, rear, links, out=out
            ),
            "the same on two threads": by_two,
            "the same, two numbers at once (any x86-64)": lambda: baseline(PITCH_MM, front, rear, links, out, size),
        }
        for name, newton in rivals.items():
            contestants[name] = lambda newton=newton: newton(PITCH_MM, front, rear, links, theirs)
        best = fastest_of(rivals, front, rear, links, theirs)
        compare(f"{size:,} centre distances", contestants, size, best, 15)


def fastest_of(
    rivals: dict[str, Newton], front: np.ndarray, rear: np.ndarray, links: np.ndarray, out: np.ndarray
) -> str:
    times = dict.fromkeys(rivals, math.inf)
    for _, (name, newton) in itertools.product(range(5), rivals.items()):
        began = time.perf_counter()
        newton(PITCH_MM, front, rear, links, out)
        times[name] = min(times[name], time.perf_counter() - began)
    return min(times, key=times.__getitem__)


# --- Whole set-ups ---------------------------------------------------------------------------------------------------
WIDTH = 128  # teeth, of the table by which a pair is found


class RowsByNumpy:
    """The same numbers as benchmarks/choose.py's, of rows in any order: what depends on sprockets or tyre alone is
    worked out once and looked up, all else in blocks that stay in the cache, in place."""

    def __init__(self, tyres: list[Wheel], block: int = 8192) -> None:
        self.size = np.array([t.circumference for t in tyres]).T.copy()
        self.over = np.array([t.over_stock for t in tyres]).T.copy()
        self.block = block
        self.scratch = np.empty((9, block))

    def __call__(
        self, front: np.ndarray, rear: np.ndarray, tyre: np.ndarray, out: dict[str, np.ndarray]
    ) -> dict[str, np.ndarray]:
        pairs, places = self.drives(front, rear)
        ratio = pairs.rear / pairs.front
        change = ratio / STOCK_RATIO
        turning = CRUISE * PRIMARY * LAST * 60.0 * ratio
        rolling = LOWEST_PULL / (2.0 * math.pi) / (PRIMARY * FIRST * ratio) * 3.6
        pulling = STOCK_REAR * np.sin(np.pi / pairs.rear)
        ends = ("_low", "", "_high")
        under = 1.0 / self.over[::-1]
        per_metre = 1.0 / self.size[::-1]
        rear_contacts = under - 1.0
        for first in range(0, len(front), self.block):
            rows = slice(first, min(first + self.block, len(front)))
            n = rows.stop - first
            c, factor, a, below, r0, r1, r2, _, _ = self.scratch[:, :n]
            reads = (r0, r1, r2)
            place = places[rows]
            t = tyre[rows]
            np.take(change, place, out=c, mode="clip")
            for end, share, name in zip(reads, READS, ends, strict=True):
                i = ends.index(name)
                np.take(under[i], t, out=a, mode="clip")
                a *= c
                np.subtract(a, 1.0, out=out["thrust_change" + name][rows])
                out["front_contacts_change" + name][rows] = out["thrust_change" + name][rows]
                np.multiply(a, share, out=end)
                speed = out["speed_change" + ends[2 - i]][rows]
                np.divide(1.0, a, out=speed)
                speed -= 1.0
                np.take(rear_contacts[i], t, out=out["rear_contacts_change" + name][rows], mode="clip")
            for end in reads:
                np.subtract(1.0, end, out=below)
                end -= READ_MOST
                np.maximum(end, below, out=end)
                np.maximum(end, 0.0, out=end)
            np.minimum(r0, r2, out=below)
            np.minimum(below, r1, out=out["speedometer_beyond_rule_low"][rows])
            out["speedometer_beyond_rule"][rows] = r1
            np.maximum(r0, r2, out=below)
            np.maximum(below, r1, out=out["speedometer_beyond_rule_high"][rows])
            np.take(turning, place, out=factor, mode="clip")
            for i, name in enumerate(("engine_speed_low_rpm", "engine_speed_rpm", "engine_speed_high_rpm")):
                np.take(per_metre[i], t, out=a, mode="clip")
                np.multiply(a, factor, out=out[name][rows])
            np.take(rolling, place, out=factor, mode="clip")
            for i, name in enumerate(("walking_pace_low_kmh", "walking_pace_kmh", "walking_pace_high_kmh")):
                np.take(self.size[i], t, out=a, mode="clip")
                a *= GRIP[i]
                np.multiply(a, factor, out=out[name][rows])
            np.take(pulling, place, out=factor, mode="clip")
            for i, name in enumerate(ends):
                pull = out["chain_pull_change" + name][rows]
                np.take(self.over[i], t, out=pull, mode="clip")
                pull *= factor
                pull -= 1.0
                np.take(pairs.wear_room[i], place, out=out["wear_room" + name][rows], mode="clip")
            for i, name in enumerate(("axle_room_low_mm", "axle_room_mm", "axle_room_high_mm")):
                np.take(pairs.axle_room[i] * 1e3, place, out=out[name][rows], mode="clip")
            np.take(pairs.in_mesh[0], place, out=out["teeth_in_mesh"][rows], mode="clip")
        return out

    def drives(self, front: np.ndarray, rear: np.ndarray) -> tuple[Pairs, np.ndarray]:
        """Every pair of sprockets once, and which of them each row has."""
        low, high = front.min(), front.max()
        pairs = pairs_by_numpy(range(low, high + 1), range(rear.min(), rear.max() + 1))
        at = np.zeros((high + 1) * WIDTH, dtype=np.intp)
        at[pairs.front * WIDTH + pairs.rear] = np.arange(len(pairs.front))
        return pairs, at[front * WIDTH + rear]


class RowByRow(RowsByNumpy):
    """As one writes it who thinks of columns: every formula over all rows, also what many of them share."""

    def drives(self, front: np.ndarray, rear: np.ndarray) -> tuple[Pairs, np.ndarray]:
        return chains_by_numpy(front.astype(float), rear.astype(float)), np.arange(len(front))


MEASURES = list(LIMITS)


def appraise_many(size: int, tyres: int, marked: bool) -> None:
    """Rows in any order over all pairs of sprockets that fit, each with a marked tyre or a measured rollout."""
    numbers = np.random.default_rng(1)
    every = wheels(tyres)[:4] if marked else wheels(tyres)[4:]
    pairs = pairs_by_numpy(range(9, 19), range(36, 61))
    pair, tyre = numbers.integers(0, len(pairs.front), size), numbers.integers(0, len(every), size)
    table = pd.DataFrame({"front": pairs.front[pair], "rear": pairs.rear[pair]})
    if marked:
        marks = np.array([str(t.offer.tyre.designation) for t in every], dtype=object)  # type: ignore[union-attr]
        table["tyre"] = pd.Series(marks[tyre], dtype=object)
    else:
        bands = [t.offer.circumference for t in every]
        for name, end in (("_low", "low"), ("", "nominal"), ("_high", "high")):
            table[f"circumference{name}_mm"] = np.array([getattr(band, end) / ls.mm for band in bands])[tyre]
    first = frames.appraise(MACHINE, table.head(1), columns=MEASURES, speed="90 km/h")
    names = [name for name in first.columns if name not in table.columns]
    out = {name: np.empty(size) for name in names}
    theirs = {name: np.empty(size) for name in names}
    numpy_rows, row_by_row = RowsByNumpy(every), RowByRow(every)
    key = "tyre" if marked else "circumference_mm"
    places = {mark: i for i, mark in enumerate(marks)} if marked else None

    def by_numpy(rows: RowsByNumpy) -> object:
        codes, words = pd.factorize(table[key])
        of = (
            np.array([places[word] for word in words])
            if places is not None
            else np.argsort(np.argsort(np.asarray(words)))
        )
        return rows(table["front"].to_numpy(), table["rear"].to_numpy(), of[codes], theirs)

    def by_layshaft(threads: int) -> object:
        return frames.appraise(MACHINE, table, columns=MEASURES, speed="90 km/h", out=out, threads=threads)

    by_layshaft(1)
    for rows in (numpy_rows, row_by_row):
        by_numpy(rows)
        for name in names:
            np.testing.assert_allclose(theirs[name], out[name], rtol=1e-9, atol=1e-9, err_msg=name)
    compare(
        f"{size:,} set-ups of {len(every):,} {'marked tyres' if marked else 'measured rollouts'}, {len(names)} columns",
        {
            "layshaft.frames.appraise(..., out=), one thread": lambda: by_layshaft(1),
            "the same on two threads": lambda: by_layshaft(2),
            "NumPy, every formula over all rows": lambda: by_numpy(row_by_row),
            "NumPy, what rows share worked out once": lambda: by_numpy(numpy_rows),
        },
        size,
        "NumPy, every formula over all rows",
        9,
    )


if __name__ == "__main__":
    print(f"{os.cpu_count()} processors")
    for size in (100_000, 1_000_000):
        solve_many(size)
    appraise_many(200_000, 8, marked=True)
    appraise_many(200_000, 404, marked=False)
    appraise_many(200_000, 20_004, marked=False)

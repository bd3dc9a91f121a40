# SPDX-License-Identifier: MIT
"""What a call from Python costs, as ratios against what Python, NumPy and SciPy offer for the same work.

Contestants run in rounds, in random order; each is compared with the first of its subject, by the best of its rounds
and by their median. All of them must give the same answers first. No times are printed: they are true of one machine
only.
"""

from __future__ import annotations

import math
import random
import re
import statistics
import time
from collections.abc import Callable

import layshaft as ls
import numpy as np
from layshaft import arrays
from scipy.optimize import brentq

ROUNDS = 15


def compare(subject: str, contestants: dict[str, tuple[Callable[[], object], int]]) -> None:
    """Times each contestant; a call of it does so many pieces of work, by which its time is divided."""
    calls: dict[str, int] = {}
    for name, (work, _) in contestants.items():
        began, n = time.perf_counter(), 0
        while time.perf_counter() - began < 0.02:
            work()
            n += 1
        calls[name] = max(1, n)
    rounds: dict[str, list[float]] = {name: [] for name in contestants}
    for _ in range(ROUNDS):
        for name in random.sample(list(contestants), len(contestants)):
            work, pieces = contestants[name]
            began = time.perf_counter()
            for _ in range(calls[name]):
                work()
            rounds[name].append((time.perf_counter() - began) / (calls[name] * pieces))
    first = rounds[next(iter(contestants))]
    print(f"\n{subject}\n  {'time over that of the first, by rounds:':64}{'best':>8}{'median':>8}")
    for name, times in rounds.items():
        best, median = min(times) / min(first), statistics.median(times) / statistics.median(first)
        print(f"  {name:64}{best:8.2f}{median:8.2f}")


# --- The centre distance of a chain from its links ------------------------------------------------------------------
# In pitches: two straight runs, and the arcs; `arc` is the difference of teeth over pi, `radii` that of the radii.


def radius(teeth: int) -> float:
    return 0.5 / math.sin(math.pi / teeth)


def by_brentq(pitch: float, front: int, rear: int, links: float) -> float:
    near, far = radius(front), radius(rear)
    radii, arc, straight = far - near, (rear - front) / math.pi, links - 0.5 * (front + rear)

    def excess(centre: float) -> float:
        return 2.0 * math.sqrt(centre * centre - radii * radii) + arc * math.asin(radii / centre) - straight

    rtol = 4.0 * np.finfo(float).eps
    return pitch * float(brentq(excess, near + far, 0.5 * straight + abs(radii), xtol=1e-13, rtol=rtol))


def by_newton(pitch: float, front: int, rear: int, links: float) -> float:
    radii, arc, straight = radius(rear) - radius(front), (rear - front) / math.pi, links - 0.5 * (front + rear)
    run = 0.25 * (straight + math.sqrt(straight * straight - 8.0 * arc * radii))
    for _ in range(2):
        excess = 2.0 * run - straight + arc * math.atan(radii / run)
        run -= excess / (2.0 - arc * radii / (run * run + radii * radii))
    return pitch * math.sqrt(run * run + radii * radii)


def solve_one() -> None:
    loop = ls.ChainLoop("520", 14, 40)
    pitch, front, rear, links = loop.series.pitch / ls.mm, loop.front, loop.rear, 106
    contestants: dict[str, tuple[Callable[[], object], int]] = {
        "layshaft: ChainLoop.centre, which checks what comes in": (lambda: loop.centre(links), 1),
        "layshaft.arrays.chain_centre_mm": (lambda: arrays.chain_centre_mm(pitch, front, rear, links), 1),
        "scipy.optimize.brentq": (lambda: by_brentq(pitch, front, rear, links), 1),
        "Newton in Python, two steps and no checks": (lambda: by_newton(pitch, front, rear, links), 1),
    }
    centre = loop.centre(links) / ls.mm
    for work, _ in list(contestants.values())[1:]:
        np.testing.assert_allclose(work(), centre, rtol=1e-14)
    compare("one centre distance from links", contestants)


# --- Reading a tyre's designation -----------------------------------------------------------------------------------
# The rival has the easier task: canonical spelling only, no table, and no words for what is wrong.
PATTERN = re.compile(
    r"(?:(\d{2,3})/(\d{2,3})|(\d+\.\d+|\d+(?: \d/\d)?)|(M[A-Z])(\d{2,3}))(-|B|ZR|R)(\d{1,2}(?:\.5)?)"
    r"(?: (M/C))?(?: (\d{1,3})([A-Z]\d?))?(?: (TL|TT))?(?: (REINF))?"
)
METRIC = ("110/90-18", "120/90-18 M/C 65R TT", "110/90-18 M/C 61R TL", "150/70R17", "140/80B17", "150/70ZR17 69W",
          "130/80-17 65S TT REINF", "90/90-21 54S", "120/80-14.5")  # fmt: skip
LISTED = ("4.10-18 59P", "3.00-21 M/C 51P TT", "2 1/2-8", "MT90B16 M/C 74H", "3.00-10 20A8")


class Read:
    """What the regular expression makes of a designation."""

    __slots__ = ("aspect_ratio", "construction", "load_index", "motorcycle", "reinforced", "rim_code", "section_width",
                 "speed_symbol", "tube")  # fmt: skip

    def __init__(self, text: str) -> None:
        match = PATTERN.fullmatch(text)
        if match is None:
            raise ValueError(text)
        width, aspect, _, _, lettered, construction, rim, motorcycle, load, speed, tube, reinforced = match.groups()
        self.section_width = None if width is None else int(width)
        aspect = aspect or lettered
        self.aspect_ratio = None if aspect is None else int(aspect)
        self.construction = construction
        self.rim_code = float(rim)
        self.motorcycle = motorcycle is not None
        self.load_index = None if load is None else int(load)
        self.speed_symbol = speed
        self.tube = tube
        self.reinforced = reinforced is not None


def parse(subject: str, designations: tuple[str, ...]) -> None:
    names = {"-": "diagonal", "B": "bias-belted", "R": "radial", "ZR": "radial"}
    for text in designations:
        ours, theirs = ls.TyreSize(text), Read(text)
        assert ours.designation == text
        assert ours.construction.replace("_", "-") == names[theirs.construction], (ours.construction, text)
        assert theirs.section_width in (None, round(ours.section_width / ls.mm))
        for name in ("aspect_ratio", "rim_code", "load_index", "speed_symbol"):
            assert getattr(ours, name) == getattr(theirs, name), (name, text)
    compare(
        subject,
        {
            "layshaft: TyreSize": (lambda: [ls.TyreSize(text) for text in designations], len(designations)),
            "re, compiled once, and a class of its parts": (
                lambda: [Read(text) for text in designations],
                len(designations),
            ),
            "re, compiled once, the match alone": (
                lambda: [PATTERN.fullmatch(text) for text in designations],
                len(designations),
            ),
        },
    )


if __name__ == "__main__":
    solve_one()
    parse("reading metric designations", METRIC)
    parse("reading code and lettered designations", LISTED)

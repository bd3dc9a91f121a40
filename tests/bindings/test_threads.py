# SPDX-License-Identifier: MIT
"""Many threads may call layshaft at once, and each is told what one alone is told; with the GIL and without it."""

from __future__ import annotations

import pickle
import threading
from collections.abc import Callable
from pathlib import Path

import layshaft as ls
import pytest

MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"
TEXTS = {path.stem: path.read_text(encoding="utf-8") for path in sorted(MACHINES.glob("*.json"))}
SHARED = {name: ls.Machine.from_json(text) for name, text in TEXTS.items()}  # used by all threads at once
TRAIL = SHARED["trail_bike"]
TRIAL = ls.Setup(front=13, rear=50, tyre="120/90-18")
LOOP = ls.ChainLoop("520", 13, 50)
THREADS = 8
ROUNDS = 5


def told(call: Callable[[], object]) -> str:
    """What a call gives, or the error it raises, as text."""
    try:
        return repr(call())
    except (ls.Error, TypeError) as error:
        return f"{type(error).__name__}: {error}"


def quantities() -> object:
    total = 0 * ls.mm
    for number in range(50):
        total = total + number * ls.inch
    return total, total > 3 * ls.m, f"{total:.2f m}", hash(total), {ls.kg: 1}[ls.Mass("1 kg")]


def choice() -> object:
    seen: list[tuple[int, int]] = []
    chosen = ls.choose(
        TRAIL,
        ls.Space(fronts=range(12, 15), rears=range(44, 53), tyres=["110/100-18", "120/90-18"]),
        ls.Goals(wishes=[ls.Wish("thrust change", 0.1), ls.Wish("rear life change", "more")]),
        threads=2,
        progress=lambda done, all_of_them: seen.append((done, all_of_them)),
    )
    assert seen and seen[-1][0] == seen[-1][1]
    return [(one.setup, one.score, one.reason) for one in chosen.front], chosen.examined, chosen.kept


CALLS: dict[str, Callable[[], object]] = {
    "formulas": lambda: (ls.road_speed(6000 * ls.rpm, 20.0, "2 m"), [f.to_latex() for f in ls.formulas()[:20]]),
    "quantities": quantities,
    "markings": lambda: [ls.TyreSize(text).overall_diameter for text in ("110/90-18 M/C 61R TL", "MT90B16", "4.10-18")],
    "a wrong marking": lambda: ls.TyreSize("110/90-"),
    "a wrong type": lambda: ls.road_speed(9000, 12.0, "2 m"),  # type: ignore[arg-type]
    "a missing argument": lambda: ls.road_speed("9000 rpm", 12.0),  # type: ignore[call-arg]
    "an unknown argument": lambda: ls.Setup(front=13, rear=50, wheel=3),  # type: ignore[call-arg]
    "out of range": lambda: ls.Sprocket("520", 2),
    "a shared loop": lambda: [LOOP.centre(links) for links in range(100, 120, 2)],
    "machines from text": lambda: [ls.Machine.from_json(text).stock for text in TEXTS.values()],
    "machines to text": lambda: [machine.to_json() for machine in SHARED.values()],
    "appraisals": lambda: [
        (a.overall_ratios, a.circumference, a.chain, [str(c) for c in a.cautions])
        for a in (ls.appraise(machine, machine.stock) for machine in SHARED.values())
    ],
    "comparisons": lambda: [
        ls.compare(TRAIL, TRAIL.stock, TRIAL).thrust_change,
        ls.compare(TRAIL, TRAIL.stock, TRIAL).contributions("thrust"),
    ],
    "workings": lambda: [
        ls.compare(TRAIL, TRAIL.stock, TRIAL).explain(what).to_text() for what in ("thrust", "speed", "chain tension")
    ],
    "a working in HTML": lambda: ls.explain(TRAIL, TRIAL, "overall ratio", gear=1).to_html(),
    "pickles": lambda: pickle.loads(pickle.dumps([TRAIL, TRIAL, LOOP, ls.appraise(TRAIL, TRIAL)])),
    "choices": choice,
}


def at_once(work: list[Callable[[], object]]) -> list[str]:
    """What each gives when all run at the same time."""
    results = [""] * len(work)
    together = threading.Barrier(len(work))

    def run(place: int) -> None:
        together.wait()
        results[place] = told(work[place])

    threads = [threading.Thread(target=run, args=(place,)) for place in range(len(work))]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return results


@pytest.mark.parametrize("name", CALLS)
def test_a_call_tells_eight_threads_what_it_tells_one(name: str) -> None:
    call = CALLS[name]
    results = [result for _ in range(ROUNDS) for result in at_once([call] * THREADS)]
    assert set(results) == {told(call)}


def test_calls_of_every_kind_at_once() -> None:
    alone = [told(call) for call in CALLS.values()]
    for first in range(0, len(CALLS), THREADS):
        mixed = [*CALLS.values(), *CALLS.values()][first : first + THREADS]
        expected = [*alone, *alone][first : first + THREADS]
        for _ in range(ROUNDS):
            assert at_once(mixed) == expected


def test_a_list_may_change_while_it_is_read() -> None:
    """Of a list that another thread keeps filling and emptying, one state or another is read, or it is refused."""
    lengths = [1.0, 2.0]
    signal = threading.Event()

    def change() -> None:
        while not signal.is_set():
            lengths.append(3.0)
            del lengths[-1]

    changing = threading.Thread(target=change)
    changing.start()
    read = set()
    try:
        for _ in range(2000):
            try:
                read.add(repr(ls.RideLog(time_s=lengths, speed_kmh=[20.0, 21.0])))
            except (ls.Error, IndexError) as error:
                read.add(type(error).__name__)
    finally:
        signal.set()
        changing.join()
    assert repr(ls.RideLog(time_s=lengths, speed_kmh=[20.0, 21.0])) == "<RideLog of 2 samples>"
    assert read and read <= {"<RideLog of 2 samples>", "RangeError", "Error", "IndexError"}


def test_an_object_takes_its_value_once() -> None:
    """__init__ of an object that has a value does nothing, so that no thread ever sees a value change."""
    for _ in range(200):
        size = ls.TyreSize.__new__(ls.TyreSize)
        at_once([lambda size=size, text=text: size.__init__(text) for text in ("110/90-18", "120/90-18", "130/80-17")])  # type: ignore[misc]
        first = size.designation
        assert first in ("110/90-18", "120/90-18", "130/80-17")
        size.__init__("90/90-21")
        assert size.designation == first

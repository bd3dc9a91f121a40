# SPDX-License-Identifier: MIT
"""Texts that mean harm, at every door of the package that takes text: a short answer, soon, and nothing opened."""

from __future__ import annotations

import re
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import layshaft as ls
import pytest
from layshaft import arrays, exercises, gpx

TOP = Path(__file__).resolve().parents[2]
MACHINE = (TOP / "examples/machines/trail_bike.json").read_text(encoding="utf-8")
BIKE = ls.Machine.from_json(MACHINE)
STEERING = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")
QUANTITIES = [one for one in vars(ls._core).values() if isinstance(one, type) and hasattr(one, "__rtruediv__")]

ANY: Any = ls  # what a type checker would refuse is what comes from outside
DOORS: dict[str, Callable[[str], Any]] = {
    "Machine.from_json": ls.Machine.from_json,
    "Setup.from_json": ls.Setup.from_json,
    "question_from_json": ls.question_from_json,
    "a machine's name": lambda text: ls.Machine.from_json(
        MACHINE.replace("Bramble 310 trail bike", text.replace("\\", "").replace('"', ""))
    ),
    "read_ride_log": ls.read_ride_log,
    "read_gpx": gpx.read_gpx,
    "TyreSize": ls.TyreSize,
    "ChainSeries": ls.ChainSeries,
    "nearest_markings": ls.nearest_markings,
    "legal_tread": ANY.legal_tread,
    "rated_speed": ls.rated_speed,
    "surface": ANY.surface,
    "drag_area": ANY.drag_area,
    "a use": lambda text: ANY.TyreSize("120/80-18", use=text),
    "a sensor": ANY.Speedometer,
    "units": lambda text: ANY.show(1 * ls.m, text),
    "a measure": lambda text: ANY.Limit(text, most=1),
    "a number to explain": lambda text: ls.explain(BIKE, BIKE.stock, text),
    "a keyword": lambda text: ANY.Setup(front=13, rear=40, tyre="120/80-18", **{text: 1}),
    "a number": lambda text: ANY.Setup(front=text, rear=40, tyre="120/80-18"),
    "parse_tyres": lambda text: arrays.parse_tyres([text]),
    "an answer": exercises.exercise(exercises.TOPICS[0], 1).check,
    "a topic": lambda text: exercises.exercise(text, 1),
    **{one.__name__: one for one in QUANTITIES},
}
TEXTS = {
    "nothing": "",
    "a NUL": "120/80-18\0",
    "half a character": "120/80-18 \ud800",
    "a terminal's command": "\x1b]0;title\x07\x1b[2J",
    "the same in one character": "\x9b31m",
    "writing turned round": "1 mm \u202e\u2066",
    "ends of lines": "1\r\n\u2028\u2029",
    "a million digits": "1" * 1_000_000,
    "a million blanks": " " * 1_000_000,
    "a million letters": "x" * 1_000_000,
    "a million brackets": "[" * 1_000_000,
    "a hundred thousand braces": '{"a":' * 100_000,
    "a hundred thousand commands": "\x1b[2J" * 100_000,
    "a hundred thousand elements": "<gpx>" + "<a>" * 100_000,
    "an attribute of a million letters": '<gpx a="' + "x" * 1_000_000 + '">',
    "a million attributes": "<gpx " + "".join(f'a{i}="" ' for i in range(100_000)) + ">",
    "a million columns": "time_s,speed_kmh" + ",a" * 1_000_000 + "\n0,1\n1,2",
    "a line without an end": "time_s,speed_kmh\n0," + "1" * 1_000_000,
    "a million quotes": 'time_s,speed_kmh\n0,"' + '"' * 1_000_000,
    "a formula of a table": "=1+1",
    "a path": "/etc/hostname",
    "an address": "http://127.0.0.1:9/ride.gpx",
}


@pytest.mark.parametrize("door", DOORS)
def test_a_hostile_text_gets_a_short_answer_soon(door: str) -> None:
    assert len(QUANTITIES) >= 18
    refused = 0
    for name, text in TEXTS.items():
        began = time.perf_counter()
        try:
            DOORS[door](text)
        except (ValueError, TypeError) as error:
            refused += 1
            said = str(error)
            assert len(said) < 1500, (name, said)
            assert not STEERING.search(said), (name, said)
            assert len(getattr(error, "caret", "")) < 1000 and not STEERING.search(getattr(error, "caret", ""))
        assert time.perf_counter() - began < 5, name
    assert refused >= len(TEXTS) - 3 or door in {"a machine's name", "nearest_markings", "parse_tyres", "an answer"}


def test_no_reader_opens_anything_or_takes_much_memory() -> None:
    """In an interpreter of its own, with a hook that hears of every file, connection and program, and a limit."""
    code = f"""
import resource, sys
sys.path[:0] = {[str(Path(__file__).parent), *sys.path]!r}
import pathlib
import test_hostile as hostile
heard, listening = [], False
def hook(event, arguments):
    if listening and event.split(".")[0] in ("open", "socket", "subprocess", "urllib", "os", "shutil", "ctypes", "exec"):
        heard.append((event, str(arguments)[:200]))
sys.addaudithook(hook)
doors = hostile.DOORS.items()
def go_through(texts):
    for name, text in texts:
        for door, read in doors:
            try:
                read(text)
            except (ValueError, TypeError):
                pass
go_through([("warm", "<gpx></gpx>"), ("warm", "x")])  # what is imported late is imported now
used = int(open("/proc/self/statm").read().split()[0]) * resource.getpagesize()
resource.setrlimit(resource.RLIMIT_AS, (used + 400_000_000,) * 2)
listening = True
go_through(hostile.TEXTS.items())
assert not heard, heard[:3]
try:
    hostile.gpx.read_gpx(pathlib.Path("/no such file"))
except FileNotFoundError:
    pass
assert [event for event, _ in heard] == ["open"], heard  # a path that the caller means is opened, and heard of
"""
    if not Path("/proc/self/statm").exists():
        pytest.skip("what a process uses is asked of /proc")
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr[-2000:]


def test_the_headers_open_no_file_and_no_connection() -> None:
    """What a hook in Python could not hear."""
    opening = re.compile(
        r"#include <(fstream|filesystem|cstdio|stdio\.h|dlfcn\.h|unistd\.h|fcntl\.h|sys/|netinet/|boost/(asio|beast|filesystem|process))"
        r"|\b(fopen|popen|system|getenv|setlocale)\s*\("
    )
    headers = [*(TOP / "include").rglob("*.[hc]pp"), *(TOP / "bindings").glob("*.[hc]pp")]
    assert len(headers) > 200
    assert {str(path.relative_to(TOP)) for path in headers if opening.search(path.read_text(encoding="utf-8"))} == set()
    assert opening.search("#include <fstream>") and opening.search('fopen("x", "r")')

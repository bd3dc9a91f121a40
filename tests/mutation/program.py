# SPDX-License-Identifier: MIT
"""A built test program as bytes that can be changed and run: what the mutation tests share.

The programs are built without position-independent code, so that addresses stand in them as they are loaded. A change is a
map from an address to the bytes that stand there instead. A changed program is killed when one of its tests fails, when it
crashes, or when it takes five times as long as it should.
"""

from __future__ import annotations

import errno
import json
import re
import struct
import subprocess
import tempfile
import time
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

TOP = Path(__file__).resolve().parents[2]
INCLUDE = TOP / "include/layshaft"
TESTS = TOP / "tests"
# Without assertions, as in the coverage: a test has to see the wrong result, not an assertion on the way.
FLAGS = "-O0 -g1 -DNDEBUG -fno-pie"
Change = Mapping[int, bytes]


def build(directory: Path, boost: str, programs: Iterable[str], jobs: int) -> None:
    """Configures and builds the test programs of these folders."""
    common = ["-GNinja", "-DCMAKE_BUILD_TYPE=Debug", f"-DCMAKE_CXX_FLAGS_DEBUG={FLAGS}", "-DCMAKE_EXE_LINKER_FLAGS=-no-pie",
              "-DCMAKE_UNITY_BUILD=ON", "-DLAYSHAFT_EXAMPLES=OFF", f"-DLAYSHAFT_BOOST_INCLUDE_DIR={boost}"]  # fmt: skip
    subprocess.run(["cmake", "-S", TOP, "-B", directory, *common], check=True)
    targets = [f"{program}_tests" for program in programs]
    subprocess.run(["cmake", "--build", directory, "-j", str(jobs), "--target", *targets], check=True)


@dataclass(frozen=True)
class Segment:
    """A part of the file that is loaded at an address."""

    address: int
    offset: int
    size: int
    flags: int


class Program:
    """A test program, its plain run, and what a changed one does."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.folder = path.name.removesuffix("_tests")
        with tempfile.TemporaryDirectory() as place:
            bare = Path(place) / path.name
            subprocess.run(["strip", "-o", bare, path], check=True)  # quicker to copy; addresses stay
            self.bytes = bare.read_bytes()
        self.segments = list(self._segments())
        self.seconds = 0.0
        self.of_test: dict[str, float] = self._plain_run()
        self.failed_near: dict[str, dict[str, None]] = {}  # by header: the tests that changes near it made fail

    def _segments(self) -> Iterator[Segment]:
        (at,) = struct.unpack_from("<Q", self.bytes, 32)
        each, number = struct.unpack_from("<HH", self.bytes, 54)
        for header in range(at, at + each * number, each):
            kind, flags, offset, address, _, in_file = struct.unpack_from("<IIQQQQ", self.bytes, header)
            if kind == 1:  # PT_LOAD
                yield Segment(address, offset, in_file, flags)

    def _plain_run(self) -> dict[str, float]:
        with tempfile.TemporaryDirectory() as place:
            report = Path(place) / "report.json"
            began = time.monotonic()
            done = subprocess.run(
                [self.path, "--gtest_brief=1", f"--gtest_output=json:{report}"],
                stdout=subprocess.PIPE,
                text=True,
                check=False,
            )
            self.seconds = time.monotonic() - began
            if done.returncode != 0:
                raise SystemExit(f"{self.path.name} fails as it is:\n{done.stdout}")
            return {name: float(test["time"].removesuffix("s")) for name, test in tests_in(report)}

    def offset(self, address: int) -> int:
        """Where an address stands in the file."""
        for segment in self.segments:
            if segment.address <= address < segment.address + segment.size:
                return address - segment.address + segment.offset
        raise ValueError(f"no part of {self.path.name} is loaded at {address:#x}")

    def holds(self, address: int) -> bool:
        """Whether something of the file is loaded at an address."""
        return any(segment.address <= address < segment.address + segment.size for segment in self.segments)

    def read(self, address: int, size: int) -> bytes:
        at = self.offset(address)
        return self.bytes[at : at + size]

    def room(self, size: int) -> int:
        """An address, divisible by 16, behind the read-only data: the page is loaded to its end and nobody uses it."""
        for segment in self.segments:
            end = -(-(segment.address + segment.size) // 16) * 16
            at = segment.offset + end - segment.address
            spare = self.bytes[at : at + size]
            if segment.flags == 4 and end % 4096 and end % 4096 + size <= 4096 and spare == bytes(size):
                return end
        raise ValueError(f"{self.path.name} has no {size} bytes to spare behind its read-only data")

    def changed(self, change: Change) -> bytes:
        changed = bytearray(self.bytes)
        for address, new in change.items():
            segment = next(one for one in self.segments if one.address <= address < one.address + one.size + 4096)
            at = address - segment.address + segment.offset
            changed[at : at + len(new)] = new
        return bytes(changed)

    def _rounds(self, near: str) -> Iterator[list[str]]:
        """The tests, in the order in which they are likely to fail soon: those that did, those of the subject, the quick
        ones, the slow."""
        failed = [name for name in self.failed_near.get(near, ()) if self.of_test[name] < 0.1]
        suites = suites_of(self.folder, near)
        first = [name for name in self.of_test if re.split("[./]", name)[0] in suites and self.of_test[name] < 1.0]
        quick = [name for name, seconds in self.of_test.items() if name not in first and seconds < 0.1]
        slow = [name for name in self.of_test if name not in first and name not in quick]
        return (names for names in (failed, first, quick, slow) if names)

    def kills(self, change: Change, near: str) -> bool:
        """Whether a test fails on the changed program. `near` is the header, whose own tests are run first."""
        with tempfile.TemporaryDirectory() as place:
            copy = Path(place) / self.path.name
            copy.write_bytes(self.changed(change))
            copy.chmod(0o755)
            report = Path(place) / "report.json"
            for names in self._rounds(near):
                usual = sum(self.of_test[name] for name in names)
                command: list[Path | str] = [
                    copy,
                    f"--gtest_filter={':'.join(names)}",
                    "--gtest_brief=1",
                    "--gtest_fail_fast",
                    f"--gtest_output=json:{report}",
                ]
                if ended(command, 5.0 * usual + 2.0) != 0:
                    if report.exists():  # not where it crashed or took too long
                        self.failed_near.setdefault(near, {}).update(dict.fromkeys(failed_in(report)))
                    return True
        return False


def ended(command: list[Path | str], timeout: float) -> int | None:
    """The code a program ends with, or nothing where it takes too long."""
    for _ in range(100):
        try:
            done = subprocess.run(
                command, timeout=timeout, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                check=False, start_new_session=True,  # what it sends to its group does not reach us
            )  # fmt: skip
            return done.returncode
        except subprocess.TimeoutExpired:
            return None
        except OSError as error:
            if error.errno != errno.ETXTBSY:  # another thread's child still holds the file open
                raise
            time.sleep(0.01)
    raise SystemExit(f"{command[0]} cannot be started")


def tests_in(report: Path) -> Iterator[tuple[str, dict[str, Any]]]:
    """Each test of GoogleTest's report, with its name."""
    for suite in json.loads(report.read_text(encoding="utf-8"))["testsuites"]:
        for test in suite["testsuite"]:
            yield f"{suite['name']}.{test['name']}", test


def failed_in(report: Path) -> Iterator[str]:
    return (name for name, test in tests_in(report) if test.get("failures"))


def suites_of(folder: str, header: str) -> set[str]:
    """The test suites in the file that tests a header."""
    file = TESTS / folder / f"{Path(header).stem}_test.cpp"
    text = file.read_text(encoding="utf-8") if file.exists() else ""
    return set(re.findall(r"^\s*(?:TYPED_)?TEST(?:_[FP])?\((\w+),", text, re.MULTILINE))


def tell(build_directory: Path, figures: Mapping[str, object]) -> None:
    """Adds figures to the result that other programs read."""
    result = build_directory / "result.json"
    told = json.loads(result.read_text(encoding="utf-8")) if result.exists() else {}
    result.write_text(json.dumps({**told, **figures}, indent=1) + "\n", encoding="utf-8")

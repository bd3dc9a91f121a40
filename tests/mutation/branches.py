# SPDX-License-Identifier: MIT
"""Whether the tests notice a condition turned round or a constant changed in the library's compiled code.

    branches.py BUILD_DIRECTORY BOOST_INCLUDE [--programs FOLDER,...] [--each N | --all] [--jobs N] [--only-run]

Builds the test programs without optimisation, reads by their line tables which conditional jumps, conditional results,
whole numbers and floating-point constants come from the headers of the program's own folder, changes one of them at a time
in a copy of the program, and runs the copy. One place in a header counts once, however many instances of a template it
makes: they are changed together, as a change of the source would.

survivors.csv lists the changes that cannot change a result, each with its reason. The script fails where fewer than 95 % of
the others are killed, where one that is listed is killed, or where a listed line is gone from its header.
"""

from __future__ import annotations

import argparse
import csv
import math
import os
import random
import re
import struct
import subprocess
import sys
import time
from bisect import bisect_right
from collections import Counter, defaultdict
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path

from program import INCLUDE, Program, build, tell

PROGRAMS = ["core", "gearing", "instrument", "tyre", "chain", "road", "wear", "setup"]
SURVIVORS = Path(__file__).with_name("survivors.csv")
COLUMNS = ["kind", "file", "text", "reason"]
LEAST_KILLED = 0.95
SEED = 11
#: A comparison that is defaulted, or an array that is filled as it is declared: no condition stands in the source.
COMPILERS_OWN = re.compile(r"= default;$|^[\w:]+(<[\w:<>, ]*>)? \w+(\{\})?;$")
Place = tuple[str, int, int]  # header, line, column
Key = tuple[str, str, str]  # kind and column, header, text of the line


@dataclass
class Mutant:
    """One change, at every instance of its place."""

    kind: str
    place: Place
    text: str
    change: dict[int, bytes] = field(default_factory=dict)

    @property
    def key(self) -> Key:
        return self.kind, self.place[0], self.text

    def __str__(self) -> str:
        return f"{self.place[0]}:{self.place[1]}:{self.place[2]}: {self.kind}: {self.text}"


class Lines:
    """The line table: which place of a header an address comes from."""

    def __init__(self, path: Path) -> None:
        self.starts: list[int] = []
        self.places: list[Place | None] = []
        rows: list[tuple[int, bool, Place | None]] = []
        files: dict[int, str] = {}
        folders: dict[int, str] = {}
        entry = re.compile(r"^(include_directories|file_names)\[\s*(\d+)\]")
        row = re.compile(r"^0x([0-9a-f]{16})\s+(\d+)\s+(\d+)\s+(\d+)(.*)")
        told = subprocess.Popen(["llvm-dwarfdump-19", "--debug-line", path], stdout=subprocess.PIPE, text=True)
        number, mine, name = 0, False, ""
        assert told.stdout is not None
        for line in told.stdout:
            if found := row.match(line):
                address, at, column, file = int(found[1], 16), int(found[2]), int(found[3]), files.get(int(found[4]))
                if address == 0:  # of a function that the linker left out
                    continue
                rows.append((address, "end_sequence" not in found[5], (file, at, column) if file and at else None))
            elif line.startswith("debug_line["):
                files, folders = {}, {}
            elif found := entry.match(line):
                number, mine = int(found[2]), found[1] == "file_names"
                if not mine:
                    folders[number] = line.split('"')[1]
            elif mine and line.lstrip().startswith("name:"):
                name = line.split('"')[1]
            elif mine and line.lstrip().startswith("dir_index:"):
                whole = os.path.normpath(Path(folders.get(int(line.split()[1]), "")) / name)
                if "include/layshaft/" in whole:
                    files[number] = whole.partition("include/layshaft/")[2]
        if told.wait() != 0:
            raise SystemExit("llvm-dwarfdump cannot read the line table")
        rows.sort(key=lambda one: (one[0], one[1]))  # an end first, so that what starts there counts
        for address, inside, place in rows:
            self.starts.append(address)
            self.places.append(place if inside else None)

    def at(self, address: int) -> Place | None:
        found = bisect_right(self.starts, address) - 1
        return self.places[found] if found >= 0 else None


@dataclass(frozen=True)
class Instruction:
    address: int
    code: bytes
    name: str
    operands: str


def functions(path: Path) -> Iterator[list[Instruction]]:
    told = subprocess.Popen(["objdump", "-d", "-w", "-j", ".text", path], stdout=subprocess.PIPE, text=True)
    line = re.compile(r"^\s*([0-9a-f]+):\t((?:[0-9a-f]{2} )+)\s*\t(\S+)\s*(.*)")
    body: list[Instruction] = []
    assert told.stdout is not None
    for text in told.stdout:
        if found := line.match(text):
            body.append(Instruction(int(found[1], 16), bytes.fromhex(found[2]), found[3], found[4]))
        elif body and text.rstrip().endswith(">:"):
            yield body
            body = []
    if body:
        yield body


def nudged(value: float) -> float:
    """One unit more in the third significant digit."""
    return value + math.copysign(10.0 ** (math.floor(math.log10(abs(value))) - 2), value)


def condition_of(one: Instruction) -> tuple[str, dict[int, bytes]] | None:
    """A conditional jump or a conditional result, and the change that turns it round."""
    code = one.code
    if 0x70 <= code[0] <= 0x7F:
        return "jump", {one.address: bytes([code[0] ^ 1])}
    start = 1 if 0x40 <= code[0] <= 0x4F else 0  # REX
    if code[start] == 0x0F and len(code) > start + 1:
        second = code[start + 1]
        kind = {0x8: "jump", 0x9: "result", 0x4: "choice"}.get(second >> 4)
        if kind and re.match(r"j|set|cmov", one.name):
            return kind, {one.address + start + 1: bytes([second ^ 1])}
    return None


def whole_number_of(one: Instruction, text: str) -> tuple[str, dict[int, bytes]] | None:
    """A whole number that stands in the source itself, one greater; zero and one take each other's place."""
    found = re.match(r"\$0x([0-9a-f]+),(.*)", one.operands)
    if not found or not re.match(r"cmp|mov|add|sub", one.name) or found[2] in ("%rsp", "%rbp"):
        return None
    value = int(found[1], 16)
    written = {0: "0|false", 1: "1|true"}.get(value, f"{value}|{value:#x}")
    if value > 0xFFFF or not re.search(rf"(?<![\w.])({written})(?![\w.])", re.sub(r'"[^"]*"', "", text)):
        return None
    wide = value.to_bytes(4, "little")
    new = value ^ 1 if value < 2 else value + 1
    if one.code.endswith(wide):
        return f"whole {value}", {one.address + len(one.code) - 4: new.to_bytes(4, "little")}
    if value < 0x7F and one.code.endswith(bytes([value])):
        return f"whole {value}", {one.address + len(one.code) - 1: bytes([new])}
    return None


def double_of(one: Instruction, program: Program, room: int) -> tuple[str, dict[int, bytes]] | None:
    """A floating-point constant, changed in a place of its own: the linker shares constants among lines."""
    found = re.match(r"0x[0-9a-f]+\(%rip\),.*# ([0-9a-f]+)|-0x[0-9a-f]+\(%rip\),.*# ([0-9a-f]+)", one.operands)
    if not found or not one.name.endswith("sd"):
        return None
    (value,) = struct.unpack("<d", program.read(int(found[1] or found[2], 16), 8))
    if not math.isfinite(value) or value == 0.0:
        return None
    displacement = struct.pack("<i", room - (one.address + len(one.code)))
    return f"double {value:.6g}", {
        one.address + len(one.code) - 4: displacement,
        room: struct.pack("<d", nudged(value)),
    }


def mutants_of(program: Program) -> list[Mutant]:
    lines = Lines(program.path)
    room = program.room(16)
    sources: dict[str, list[str]] = {}
    found: dict[tuple[str, Place], Mutant] = {}
    for body in functions(program.path):
        count: Counter[tuple[str, Place]] = Counter()
        for number, one in enumerate(body):
            place = lines.at(one.address)
            if place is None or not place[0].startswith(f"{program.folder}/"):
                continue
            header, line, column = place
            source = sources.setdefault(header, (INCLUDE / header).read_text(encoding="utf-8").splitlines())
            whole, start = source[line - 1].strip(), max(column, 1) - 1
            text, behind = source[line - 1][start:].strip(), len(source[line - 1][:start].lstrip())
            declares = re.match(r"\s+constexpr [\w:]+ \w+ =", source[line - 1]) is not None
            if COMPILERS_OWN.search(whole):
                continue
            for kind, change in changes_of(body, number, text, declares, program, room):
                count[kind, place] += 1
                numbered = f"{kind}, {count[kind, place]} at {behind + 1}"  # of the line without its indent
                found.setdefault((numbered, place), Mutant(numbered, place, whole)).change |= change
    return sorted(found.values(), key=lambda mutant: (mutant.place, mutant.kind))


def destroys(body: list[Instruction], number: int) -> bool:
    """Whether a jump only steps over the destructor of something that may never have been made: the compiler's own."""
    target = re.match(r"([0-9a-f]+) <", body[number].operands)
    over = [one for one in body[number + 1 : number + 8] if target and one.address < int(target[1], 16)]
    calls = [one.operands for one in over if one.name == "call"]
    return bool(over) and len(over) < 7 and len(calls) == 1 and re.search(r"D[12]Ev(@plt)?>$", calls[0]) is not None


def changes_of(
    body: list[Instruction], number: int, text: str, declares: bool, program: Program, room: int
) -> Iterator[tuple[str, dict[int, bytes]]]:
    one = body[number]
    if condition := condition_of(one):
        if not destroys(body, number):
            yield condition
    elif declares:  # a named constant is changed where it is used
        return
    elif constant := whole_number_of(one, text) or double_of(one, program, room):
        yield constant


def listed() -> set[Key]:
    with SURVIVORS.open(encoding="utf-8", newline="") as listing:
        rows = list(csv.DictReader(listing))
    without = [row for row in rows if not row["reason"]]
    if without:
        raise SystemExit(f"{SURVIVORS.name}: a row without a reason: {without[0]}")
    return {(row["kind"], row["file"], row["text"]) for row in rows}


def gone(survivors: set[Key]) -> Iterator[Key]:
    """What is listed though no line of its header reads so."""
    for kind, header, text in sorted(survivors):
        file = INCLUDE / header
        source = file.read_text(encoding="utf-8").splitlines() if file.exists() else []
        if not any(line.strip() == text for line in source):
            yield kind, header, text


def arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n", 1)[0])
    parser.add_argument("build", type=Path)
    parser.add_argument("boost")
    parser.add_argument("--programs", default=",".join(PROGRAMS))
    parser.add_argument("--header", default="", help="only changes in headers whose name holds this")
    parser.add_argument("--each", type=int, default=60, help="changes tried in each program")
    parser.add_argument("--all", action="store_true")
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    parser.add_argument("--only-run", action="store_true", help="the programs are built already")
    return parser.parse_args()


def main() -> int:
    asked = arguments()
    directory, folders = asked.build.resolve(), asked.programs.split(",")
    if not asked.only_run:
        build(directory, asked.boost, folders, asked.jobs)
    began = time.monotonic()
    survivors = listed()
    wrong = [f"{header}: listed as surviving, and gone: {kind}: {text}" for kind, header, text in gone(survivors)]
    known = tried = killed = explained = 0
    for folder in folders:
        program = Program(directory / "tests" / f"{folder}_tests")
        every = [mutant for mutant in mutants_of(program) if asked.header in mutant.place[0]]
        known += len(every)
        chosen = every if asked.all else random.Random(f"{SEED} {folder}").sample(every, min(asked.each, len(every)))
        with ThreadPoolExecutor(asked.jobs) as pool:
            killed_here = list(pool.map(lambda one: program.kills(one.change, one.place[0]), chosen))  # noqa: B023
        by_kind: dict[str, list[int]] = defaultdict(lambda: [0, 0])
        for mutant, is_killed in zip(chosen, killed_here, strict=True):
            if mutant.key in survivors:
                explained += 1
                if is_killed:
                    wrong.append(f"listed as surviving, and killed: {mutant}")
                continue
            tried += 1
            killed += is_killed
            by_kind[re.split("[ ,]", mutant.kind)[0]][0] += is_killed
            by_kind[re.split("[ ,]", mutant.kind)[0]][1] += 1
            if not is_killed:
                print(f"survives: {mutant}", flush=True)
        told = ", ".join(f"{kind}s {one} of {all_}" for kind, (one, all_) in sorted(by_kind.items()))
        print(f"{folder}: {len(every)} changes known, {len(chosen)} tried; killed: {told}", flush=True)
    for line in wrong:
        print(line)
    share = killed / tried if tried else 0.0
    seconds = round(time.monotonic() - began)
    figures = {"mutants": tried, "killed": killed, "listed": explained, "known": known, "seconds_of_branches": seconds}
    tell(directory, figures)
    print(
        f"{killed} of {tried} changes killed ({100.0 * share:.1f} %), {explained} more survive with a reason, {seconds} s"
    )
    return 1 if wrong or share < LEAST_KILLED else 0


if __name__ == "__main__":
    sys.exit(main())

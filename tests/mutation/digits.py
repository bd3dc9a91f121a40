# SPDX-License-Identifier: MIT
"""Whether the tests notice a single digit changed by one in any of the library's data tables.

    digits.py BUILD_DIRECTORY BOOST_INCLUDE [--sample N] [--table NAME] [--jobs N] [--only-run]

Reads each table in its header, finds every number and every text of it in the table's memory in a built test program,
changes one digit at a time (9 to 8, any other to the next) and runs the program. A number that cannot be found in memory
is an error, so no digit is left out in silence.
"""

from __future__ import annotations

import argparse
import math
import os
import random
import re
import struct
import subprocess
import sys
import time
from collections import defaultdict
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

from program import INCLUDE, Change, Program, build, tell

SEED = 11
UNITS = {"": 1.0, "m2": 1.0, "kg": 1.0, "mm": 0.001, "kmh": 1.0 / 3.6, "kN": 1000.0, "kg_per_m": 1.0, "N": 1.0,
         "Nm": 1.0, "inch": 0.0254, "N_per_kmh2": 3.6 * 3.6, "rpm": math.pi / 30.0}  # fmt: skip


@dataclass(frozen=True)
class Table:
    """Where a table stands: its header, the line it starts with, its symbol, and the program whose tests hold it."""

    name: str
    program: str
    header: str
    starts: str
    symbol: str
    units: tuple[str, ...] = ("",)  # what a number without a unit of its own may be in
    tests: str = ""  # the header whose tests hold it, where that is another


TABLES = [
    Table("chain series", "chain", "chain/series_table.hpp", "std::to_array<PrintedSeries>({", "layshaft::chain_series_table",
          ("mm", "kN", "kg_per_m")),
    Table("chain listings", "chain", "chain/listings_table.hpp", "std::to_array<PrintedListing>({",
          "layshaft::chain_listings_table", ("mm", "kN", "kg_per_m"), "chain/series_table.hpp"),
    Table("tooth tolerances", "chain", "chain/tooth_tolerance.hpp", "std::to_array<ToothTolerance>({",
          "layshaft::tooth_tolerances", ("mm", ""), "chain/tooth_width.hpp"),
    Table("load indices", "tyre", "tyre/load_index.hpp", "LoadIndex rows[] = {", "layshaft::detail::load_index_table::rows"),
    Table("speed symbols", "tyre", "tyre/speed_symbol.hpp", "SpeedSymbol rows[] = {",
          "layshaft::detail::speed_symbol_table::rows"),
    Table("rim codes", "tyre", "tyre/rim_code.hpp", "RimCode rows[] = {", "layshaft::detail::rim_code_table::rows"),
    Table("code designated tyres", "tyre", "tyre/code_designated.hpp", "CodeDesignatedTyre rows[] = {",
          "layshaft::detail::code_designated_table::rows"),
    Table("cycle bead seats", "tyre", "tyre/cycle_rim.hpp", "CycleBeadSeat seats[] = {",
          "layshaft::detail::cycle_rim_table::seats"),
    Table("cycle rim names", "tyre", "tyre/cycle_rim.hpp", "CycleRimName names[] = {",
          "layshaft::detail::cycle_rim_table::names"),
    Table("legal tread depths", "tyre", "tyre/legal_tread.hpp", "LegalTread rows[] = {",
          "layshaft::detail::legal_tread_table::rows"),
    Table("usual aspect ratios", "tyre", "tyre/closeness.hpp", "usual_aspect_ratios[] = {", "layshaft::usual_aspect_ratios",
          (), "tyre/nearest_markings.hpp"),
    Table("surfaces", "road", "road/surface.hpp", "Surface surfaces[] = {", "layshaft::surfaces"),
    Table("drag areas", "road", "road/drag_area.hpp", "DragArea drag_areas[] = {", "layshaft::drag_areas"),
    Table("road loads by mass", "road", "road/mass_table.hpp", "MassRow mass_table[] = {", "layshaft::mass_table",
          ("kg", "N_per_kmh2")),
    Table("materials", "wear", "wear/material.hpp", "Material materials[] = {", "layshaft::materials"),
]  # fmt: skip


@dataclass(frozen=True)
class Leaf:
    """A number, a product of numbers, or a text, as it stands in one row of a table."""

    text: str
    line: int

    @property
    def is_text(self) -> bool:
        return self.text.startswith('"')

    def mutations(self) -> Iterator[str]:
        """The same with one digit changed. Digits in names, as of units, are none of the table's."""
        masked = (
            self.text
            if self.is_text
            else re.sub(r"(?<![\w.])[A-Za-z]\w*|_[A-Za-z]\w*", lambda name: "_" * len(name[0]), self.text)
        )
        for place, digit in enumerate(masked):
            if digit.isdigit():
                changed = "8" if digit == "9" else str(int(digit) + 1)
                yield self.text[:place] + changed + self.text[place + 1 :]

    def number(self) -> float | None:
        """The product of the numbers in the text, without units; nothing where there is none."""
        found = re.findall(r"(?<![\w.])-?(?:\d[\d.]*|\.\d+)(?:e-?\d+)?", self.text)
        return math.prod(float(one) for one in found) if found else None

    def units(self, table: Table) -> tuple[str, ...]:
        own = re.search(r"[\d.]_([A-Za-z]\w*)|units::(\w+)", self.text)
        return (own[1] or own[2],) if own else table.units


def rows_of(table: Table) -> list[list[Leaf]]:
    """The rows of a table, each with its leaves, in order."""
    source = (INCLUDE / table.header).read_text(encoding="utf-8")
    start = source.index(table.starts) + len(table.starts)
    tokens = re.compile(r'//[^\n]*|"[^"]*"|[{}(),]|\n|[^{}(),"\n/]+|/')
    rows: list[list[Leaf]] = []
    depth, line, leaf = 1, source.count("\n", 0, start) + 1, ""
    flat = re.match(r"\s*\d", source[start:]) is not None  # a row is a single number
    row: list[Leaf] = []

    def end_leaf() -> None:
        nonlocal leaf
        if leaf.strip():
            row.append(Leaf(leaf.strip(), line))
        leaf = ""

    for token in tokens.finditer(source, start):
        text = token[0]
        if text.startswith("//"):
            continue
        if text == "\n":
            line += 1
        elif text in "{(":
            end_leaf()
            depth += 1
        elif text in ",})":
            end_leaf()
            depth -= text != ","
            if row and (depth == 0 or (depth == 1 and (flat or text != ","))):
                rows.append(row)
                row = []
            if depth == 0:
                return rows
        else:
            leaf += text
    raise SystemExit(f"{table.header}: the table {table.name} does not end")


@dataclass(frozen=True)
class Digit:
    """One digit of a table, changed, as bytes of the program."""

    table: Table
    line: int
    before: str
    after: str
    change: Change

    def __str__(self) -> str:
        return f"{self.table.header}:{self.line}: {self.table.name}: {self.before} as {self.after}"


def symbols_of(program: Program) -> dict[str, tuple[int, int]]:
    told = subprocess.run(["nm", "-S", "-C", program.path], capture_output=True, text=True, check=True).stdout
    found = re.findall(r"^([0-9a-f]+) ([0-9a-f]+) \w (.+)$", told, re.MULTILINE)
    return {name: (int(address, 16), int(size, 16)) for address, size, name in found}


def digits_of(table: Table, program: Program, symbols: dict[str, tuple[int, int]]) -> Iterator[Digit]:
    if table.symbol not in symbols:
        raise SystemExit(f"{program.path.name} does not hold {table.symbol}")
    address, size = symbols[table.symbol]
    rows = rows_of(table)
    stride, rest = divmod(size, len(rows))
    if rest:
        raise SystemExit(f"{table.symbol} has {size} bytes, and {len(rows)} rows in {table.header}")
    for number, row in enumerate(rows):
        at = address + number * stride
        memory = program.read(at, stride)
        behind = -1  # where the leaf before stands: a row is laid out in its order
        for leaf in row:
            if not any(leaf.mutations()):
                continue
            places = text_places(leaf, memory, program) if leaf.is_text else number_places(leaf, memory, table)
            found = min((one for one in places if one[0] > behind), key=lambda one: one[0], default=None)
            if found is None:
                raise SystemExit(
                    f"{table.header}:{leaf.line}: {leaf.text} is not found in the memory of {table.symbol}"
                )
            offset, form, unit = found
            behind = offset
            for changed in leaf.mutations():
                yield Digit(table, leaf.line, leaf.text, changed, change_to(changed, at + offset, form, unit, program))


Found = tuple[int, str, float]  # offset, struct's letter, unit


def number_places(leaf: Leaf, memory: bytes, table: Table) -> Iterator[Found]:
    value = leaf.number()
    assert value is not None
    units = leaf.units(table)
    if units in ((), ("",)) and re.fullmatch(r"\d+", leaf.text):
        for offset in range(0, len(memory) - 3, 4):
            if struct.unpack_from("<i", memory, offset)[0] == int(value):
                yield offset, "i", 1.0
    for unit in dict.fromkeys(units):
        wanted = value * UNITS[unit]
        for offset in range(0, len(memory) - 7, 8):
            (here,) = struct.unpack_from("<d", memory, offset)
            if here == wanted or (wanted and abs(here - wanted) <= 4e-16 * abs(wanted)):
                yield offset, "d", UNITS[unit]


def text_places(leaf: Leaf, memory: bytes, program: Program) -> Iterator[Found]:
    wanted = leaf.text[1:-1].encode()
    for offset in range(0, len(memory) - 15, 8):
        size, pointer = struct.unpack_from("<QQ", memory, offset)
        if size == len(wanted) and program.holds(pointer) and program.read(pointer, size) == wanted:
            yield offset + 8, "s", 1.0


def change_to(text: str, address: int, form: str, unit: float, program: Program) -> Change:
    if form == "s":
        room = program.room(len(text) + 1)
        return {address: struct.pack("<Q", room), room: text[1:-1].encode() + b"\0"}
    value = Leaf(text, 0).number()
    assert value is not None
    return {address: struct.pack("<i", int(value)) if form == "i" else struct.pack("<d", value * unit)}


def arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n", 1)[0])
    parser.add_argument("build", type=Path)
    parser.add_argument("boost")
    parser.add_argument("--sample", type=int, help="digits tried in all, instead of every one")
    parser.add_argument("--table", default="", help="only tables whose name holds this")
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    parser.add_argument("--only-run", action="store_true", help="the programs are built already")
    return parser.parse_args()


def main() -> int:
    asked = arguments()
    directory = asked.build.resolve()
    tables = [table for table in TABLES if asked.table in table.name]
    folders = sorted({table.program for table in tables})
    if not asked.only_run:
        build(directory, asked.boost, folders, asked.jobs)
    began = time.monotonic()
    programs = {folder: Program(directory / "tests" / f"{folder}_tests") for folder in folders}
    symbols = {folder: symbols_of(program) for folder, program in programs.items()}
    every = [one for table in tables for one in digits_of(table, programs[table.program], symbols[table.program])]
    chosen = every if asked.sample is None else random.Random(SEED).sample(every, min(asked.sample, len(every)))
    with ThreadPoolExecutor(asked.jobs) as pool:
        killed = list(
            pool.map(
                lambda one: programs[one.table.program].kills(one.change, one.table.tests or one.table.header), chosen
            )
        )
    counts: dict[str, list[int]] = defaultdict(lambda: [0, 0, 0])
    for one in every:
        counts[one.table.name][2] += 1
    for one, is_killed in zip(chosen, killed, strict=True):
        counts[one.table.name][0] += is_killed
        counts[one.table.name][1] += 1
        if not is_killed:
            print(f"survives: {one}")
    for name, (noticed, tried, known) in counts.items():
        print(f"{name}: {known} digits, {tried} tried, {noticed} killed")
    seconds = round(time.monotonic() - began)
    figures = {
        "digits": len(chosen),
        "digits_killed": sum(killed),
        "digits_in_all": len(every),
        "seconds_of_digits": seconds,
    }
    tell(directory, figures)
    print(f"{sum(killed)} of {len(chosen)} digits killed, of {len(every)} in {len(tables)} tables, {seconds} s")
    return 0 if all(killed) and chosen else 1


if __name__ == "__main__":
    sys.exit(main())

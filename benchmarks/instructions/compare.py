#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Counts the instructions of each kernel with layshaft's types and with plain numbers, by callgrind.

Give it the directory to build in, then the directories of headers, system ones behind the first. Prints a table and
fails where the claim does not hold: kernels of plain arithmetic take the very same number of instructions, and those
that call libm take at most 5 % more. Counts are those of one more element or set-up: of 2000 less those of 1000. What
a call costs once, before and behind its loop, stands in a column of its own and is not part of the claim.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

SOURCES = ("typed", "plain", "count")
LEVELS = ("-O2", "-O3")
STEP = 1000  # elements between the two runs of a kernel

# How much more the typed kernel may take.
ALLOWED = {
    "one set-up": 0.0,
    "one set-up, both changes": 0.0,
    "overall_ratio": 0.0,
    "road_speed": 0.0,
    "road_speed, one tyre": 0.0,
    "thrust_change": 0.0,
    "pitch_diameter": 0.05,
    "chain_links": 0.05,
    "chain_centre": 0.05,
}

Counts = dict[tuple[str, str, int], int]  # by kernel, side and number of elements


def compilers() -> list[str]:
    clangs = ["clang++", *(f"clang++-{version}" for version in range(25, 12, -1))]
    clang = next((name for name in clangs if shutil.which(name)), None)
    if clang is None or not shutil.which("g++"):
        sys.exit("error: the comparison needs g++ and clang++")
    return ["g++", clang]


def run(*command: str) -> None:
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"error: {' '.join(command)}\n{done.stdout}{done.stderr}")


def count(compiler: str, level: str, build: Path, includes: list[str]) -> Counts:
    here = Path(__file__).resolve().parent
    directory = build / f"{compiler}{level}"
    shutil.rmtree(directory, ignore_errors=True)
    directory.mkdir(parents=True)
    program = str(directory / "count")
    options = [compiler, "-std=c++20", level, "-DNDEBUG", f"-I{includes[0]}", *(f"-isystem{i}" for i in includes[1:])]
    for source in SOURCES:
        run(*options, "-c", str(here / f"{source}.cpp"), "-o", str(directory / f"{source}.o"))
    # Every call into libm is bound at the start, so that no kernel pays for the dynamic linker.
    run(compiler, "-Wl,-z,now", *(str(directory / f"{source}.o") for source in SOURCES), "-lm", "-o", program)
    run(
        "valgrind",
        "-q",
        "--tool=callgrind",
        f"--callgrind-out-file={directory / 'counts'}",
        "--toggle-collect=typed::*",
        "--toggle-collect=plain::*",
        program,
    )
    counts: Counts = {}
    for path in directory.glob("counts.*"):
        text = path.read_text()
        name = re.search(r"^desc: Trigger: Client Request: (.*) (typed|plain) (\d+)$", text, re.MULTILINE)
        total = re.search(r"^totals: (\d+)", text, re.MULTILINE)
        if name and total:
            counts[name[1], name[2], int(name[3])] = int(total[1])
    expected = {(kernel, side, n) for kernel in ALLOWED for side in ("typed", "plain") for n in (STEP, 2 * STEP)}
    if counts.keys() != expected:
        sys.exit(f"error: callgrind left no counts of {sorted(expected - counts.keys())}")
    return counts


def main() -> int:
    build, *includes = sys.argv[1:]
    settings = [(compiler, level) for compiler in compilers() for level in LEVELS]
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        all_counts = list(pool.map(lambda s: count(s[0], s[1], Path(build), includes), settings))

    print("Instructions for one more element, with layshaft's types and with plain numbers; results equal to the bit.")
    heading = f"{'kernel':26}{'compiler':14}{'typed':>9}{'plain':>9}{'ratio':>8}{'allowed':>9}{'once a call':>13}"
    broken = 0
    for kernel, allowed in ALLOWED.items():
        print(f"\n{heading}" if kernel == next(iter(ALLOWED)) else "")
        for (compiler, level), counts in zip(settings, all_counts, strict=True):
            rise = {side: counts[kernel, side, 2 * STEP] - counts[kernel, side, STEP] for side in ("typed", "plain")}
            once = {side: counts[kernel, side, STEP] - rise[side] for side in rise}
            holds = rise["typed"] <= rise["plain"] * (1.0 + allowed)
            broken += not holds
            print(
                f"{kernel:26}{compiler.split('-')[0] + ' ' + level:14}{rise['typed'] / STEP:9.2f}"
                f"{rise['plain'] / STEP:9.2f}{rise['typed'] / rise['plain']:8.3f}{1.0 + allowed:9.2f}"
                f"{once['typed'] - once['plain']:+13d}{'' if holds else '  BROKEN'}"
            )
    print(f"\n{broken} of the rows break the claim." if broken else "\nThe claim holds in every row.")
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())

#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Counts the instructions of each kernel, written in layshaft's way and by hand, by callgrind.

Give it the directory to build in, then the directories of headers, system ones behind the first. Prints two tables,
with layshaft's types against plain numbers, and with calculations that can be watched but are not against plain calls
of their formulas. Fails where the claim does not hold: kernels of plain arithmetic take at most the same number of
instructions, and those that call libm at most 5 % more. Counts are those of one more element or set-up: of 2000 less
those of 1000. What a call costs once, before and behind its loop, stands in a column of its own and is not part of the
claim.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

SOURCES = ("typed", "plain", "unwatched", "direct", "count")
LEVELS = ("-O2", "-O3")
STEP = 1000  # elements between the two runs of a kernel

# How much more the kernel may take on the first side than on the second.
ALLOWED = {
    ("typed", "plain"): {
        "one set-up": 0.0,
        "one set-up, both changes": 0.0,
        "overall_ratio": 0.0,
        "road_speed": 0.0,
        "road_speed, one tyre": 0.0,
        "thrust_change": 0.0,
        "pitch_diameter": 0.05,
        "chain_links": 0.05,
        "chain_centre": 0.05,
    },
    ("unwatched", "direct"): {
        "speed in gear, ratios": 0.0,
        "speed in gear, pairs": 0.0,
        "circumference": 0.0,
        "circumference, worn": 0.0,
        "links with slack": 0.05,
        "change of thrust": 0.0,
        "the same with loss": 0.0,
        "change of pull": 0.05,
        "contributions": 0.05,
        "contributions, worn": 0.05,
        "contributions, loss": 0.05,
    },
}
TITLES = {
    ("typed", "plain"): "with layshaft's types and with plain numbers",
    ("unwatched", "direct"): "of calculations that nobody watches, and of plain calls of their formulas",
}

# What a compiler inlines of a long calculation is its own choice, and swings its count by a tenth and more either way.
# So both sides of the second table have every call inlined ([[gnu::flatten]], of which clang wants more), and it is
# the code itself that is compared.
FLATTENED = ("unwatched", "direct")
FLATTEN = {"g++": (), "clang++": ("-mllvm", "-inline-threshold=100000")}

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
        flatten = FLATTEN[compiler.split("-")[0]] if source in FLATTENED else ()
        run(*options, *flatten, "-c", str(here / f"{source}.cpp"), "-o", str(directory / f"{source}.o"))
    # Every call into libm is bound at the start, so that no kernel pays for the dynamic linker.
    run(compiler, "-Wl,-z,now", *(str(directory / f"{source}.o") for source in SOURCES), "-lm", "-o", program)
    run(
        "valgrind",
        "-q",
        "--tool=callgrind",
        f"--callgrind-out-file={directory / 'counts'}",
        *(f"--toggle-collect={side}::*" for sides in ALLOWED for side in sides),
        program,
    )
    counts: Counts = {}
    for path in directory.glob("counts.*"):
        text = path.read_text()
        name = re.search(r"^desc: Trigger: Client Request: (.*) (\w+) (\d+)$", text, re.MULTILINE)
        total = re.search(r"^totals: (\d+)", text, re.MULTILINE)
        if name and total:
            counts[name[1], name[2], int(name[3])] = int(total[1])
    expected = {
        (kernel, side, n)
        for sides, kernels in ALLOWED.items()
        for kernel in kernels
        for side in sides
        for n in (STEP, 2 * STEP)
    }
    if counts.keys() != expected:
        sys.exit(f"error: callgrind left no counts of {sorted(expected - counts.keys())}")
    return counts


def main() -> int:
    build, *includes = sys.argv[1:]
    settings = [(compiler, level) for compiler in compilers() for level in LEVELS]
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        all_counts = list(pool.map(lambda s: count(s[0], s[1], Path(build), includes), settings))

    broken = 0
    for (ours, theirs), kernels in ALLOWED.items():
        print(f"Instructions for one more element, {TITLES[ours, theirs]}; results equal to the bit.\n")
        print(f"{'kernel':26}{'compiler':14}{ours:>10}{theirs:>9}{'ratio':>8}{'allowed':>9}{'once a call':>13}")
        for kernel, allowed in kernels.items():
            for (compiler, level), counts in zip(settings, all_counts, strict=True):
                rise = {side: counts[kernel, side, 2 * STEP] - counts[kernel, side, STEP] for side in (ours, theirs)}
                once = {side: counts[kernel, side, STEP] - rise[side] for side in rise}
                holds = rise[ours] <= rise[theirs] * (1.0 + allowed)
                broken += not holds
                print(
                    f"{kernel:26}{compiler.split('-')[0] + ' ' + level:14}{rise[ours] / STEP:10.2f}"
                    f"{rise[theirs] / STEP:9.2f}{rise[ours] / rise[theirs]:8.3f}{1.0 + allowed:9.2f}"
                    f"{once[ours] - once[theirs]:+13d}{'' if holds else '  BROKEN'}"
                )
            print()
    print(f"{broken} of the rows break the claim." if broken else "The claim holds in every row.")
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())

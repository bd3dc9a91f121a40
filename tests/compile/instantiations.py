#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""How many templates a typical program makes the compiler instantiate, held against the counts that are kept.

Every one costs each user of the headers some microseconds in each unit, and nobody sees it come. clang tells each
of them (-ftime-trace), so that the count, unlike a time, is the same on every run. Part of the long run.

    tests/compile/instantiations.py          compares; a count more than 2 % above the kept one fails
    tests/compile/instantiations.py --write  keeps the new counts, where none grew

Where they grew on purpose, --write --allow-growth keeps them all the same: say why when you commit.

Counts depend on the versions of clang, of the standard library and of Boost: they are kept for each set of versions,
and where none are kept for those of this machine the counts are shown, and nothing is compared.
"""

from __future__ import annotations

import argparse
import importlib.util
import json
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

HERE = Path(__file__).resolve().parent
INCLUDE = HERE.parent.parent / "include"
PROGRAMS = sorted((HERE / "programs").glob("*.cpp"))
KEPT = HERE / "instantiations.json"
BAND = 0.02
KINDS = {"InstantiateClass": "classes", "InstantiateFunction": "functions"}

Counts = dict[str, dict[str, int]]


def clangs() -> Iterator[str]:
    """The names by which clang may be there, the plain one first."""
    yield "clang++"
    for version in range(14, 30):
        yield f"clang++-{version}"


def find_clang() -> str:
    """The first clang there is."""
    for name in clangs():
        if path := shutil.which(name):
            return path
    sys.exit("clang++ is missing; install it (Debian: clang), or name one by --clang")


def find_boost() -> Path:
    """The directory of Boost's headers beside this Python."""
    found = importlib.util.find_spec("boost_headers")
    if found is None or found.origin is None:
        sys.exit("Boost's headers are not beside this Python: name the directory that holds boost/ by --boost")
    return Path(found.origin).parent / "include"


def versions(clang: str, boost: Path) -> str:
    """What the counts depend on besides the library."""
    text = "#include <version>\n#include <boost/version.hpp>\n"
    told = subprocess.run(
        [clang, "-std=c++20", "-x", "c++", "-dM", "-E", "-isystem", str(boost), "-"],
        input=text,
        capture_output=True,
        text=True,
        check=True,
    ).stdout
    words = (line.split(maxsplit=2) for line in told.splitlines())
    macro = {name[1]: name[2].strip('"') for name in words if len(name) == 3}
    library = f"libstdc++ {macro['__GLIBCXX__']}" if "__GLIBCXX__" in macro else f"libc++ {macro['_LIBCPP_VERSION']}"
    return f"clang {macro['__clang_major__']}.{macro['__clang_minor__']}, {library}, Boost {macro['BOOST_LIB_VERSION']}"


def count(clang: str, boost: Path, program: Path) -> dict[str, int]:
    """What one program instantiates: classes, functions, and how many of both are the library's own."""
    with tempfile.TemporaryDirectory() as folder:
        made = Path(folder) / "program.o"
        trace = ["-O0", "-ftime-trace", "-ftime-trace-granularity=0"]
        headers = ["-I", str(INCLUDE), "-isystem", str(boost)]
        subprocess.run([clang, "-std=c++20", *trace, *headers, "-c", str(program), "-o", str(made)], check=True)
        events = json.loads(made.with_suffix(".json").read_text())["traceEvents"]
    counts: Counter[str] = Counter()
    for event in events:
        if event["name"] in KINDS:
            counts[KINDS[event["name"]]] += 1
            counts["own"] += event["args"]["detail"].startswith("layshaft::")
    return {name: counts[name] for name in ("classes", "functions", "own")}


def change(now: int, kept: int) -> float:
    """How much more than was kept, as a part of it."""
    return now / kept - 1.0 if kept else float(now > 0)


def show(counts: Counts, kept: Counts) -> list[str]:
    """Prints a line a program, and returns what grew by more than the band."""
    grown = []
    print(f"{'program':10}{'classes':>18}{'functions':>18}{'of layshaft':>18}")
    for program, numbers in counts.items():
        line = f"{program:10}"
        for name, now in numbers.items():
            before = kept.get(program, {}).get(name)
            line += f"{now:>9}" + (f" ({change(now, before):+6.1%})" if before is not None else f"{'':9}")
            if before is not None and change(now, before) > BAND:
                grown.append(f"{program}: {now} {name}, where {before} are kept ({change(now, before):+.1%})")
        print(line)
    return grown


def main() -> int:
    """Counts, shows, and compares or keeps."""
    parser = argparse.ArgumentParser(
        description="Template instantiations of typical programs, held against kept counts"
    )
    parser.add_argument("--write", action="store_true", help="keep the counts of now, where none grew")
    parser.add_argument("--allow-growth", action="store_true", help="with --write: also where they grew")
    parser.add_argument("--clang", help="the compiler; else the first clang++ there is")
    parser.add_argument("--boost", type=Path, help="the directory that holds boost/; else that beside this Python")
    given = parser.parse_args()
    clang, boost = given.clang or find_clang(), given.boost or find_boost()

    which = versions(clang, boost)
    every: dict[str, Counts] = json.loads(KEPT.read_text()) if KEPT.exists() else {}
    kept = every.get(which, {})
    print(which)
    counts = {program.stem: count(clang, boost, program) for program in PROGRAMS}
    grown = show(counts, kept)

    if given.write:
        more = [
            f"{program} has {numbers[name]} {name}, where {kept[program][name]} are kept"
            for program, numbers in counts.items()
            for name in numbers
            if program in kept and numbers[name] > kept[program][name]
        ]
        if more and not given.allow_growth:
            print("not kept, since it grew; where it must, say --allow-growth:", *more, sep="\n  ")
            return 1
        every[which] = counts
        KEPT.write_text(json.dumps(every, indent=2, sort_keys=True) + "\n")
        print(f"kept in {KEPT.name}")
        return 0
    if not kept:
        print(
            f"nothing was compared: {KEPT.name} has counts of {'; '.join(every) or 'no versions'}; --write keeps these"
        )
        return 0
    if missing := sorted(set(counts) ^ set(kept)):
        print(f"counted and kept are not the same programs ({', '.join(missing)}); --write keeps those there are")
        return 1
    if grown:
        print("more templates than are kept; make fewer, or keep them by --write --allow-growth:", *grown, sep="\n  ")
        return 1
    print(f"none grew by more than {BAND:.0%}")
    return 0


if __name__ == "__main__":
    sys.exit(main())

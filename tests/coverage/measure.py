# SPDX-License-Identifier: MIT
"""Which lines, branches and conditions of include/ no test reaches, in C++ and in Python together.

    measure.py BUILD_DIRECTORY BOOST_INCLUDE [--only-read]

Builds the C++ tests and the Python modules by clang with its own counters (-fcoverage-mcdc), runs all tests, and reads what
they counted. A template counts as one piece of code: what any of its instances reaches, it reaches. Modified
condition/decision coverage asks that each condition of a decision was seen to decide it alone.

missing.csv lists what no test reaches, each with its reason; a line of source that stands there is named by its own text.
What is missing and not listed, and what is listed and not missing, fails. With --only-read nothing is built or run.
"""

from __future__ import annotations

import csv
import json
import os
import re
import shutil
import subprocess
import sys
import time
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

TOP = Path(__file__).resolve().parents[2]
INCLUDE = TOP / "include/layshaft"
MISSING = Path(__file__).with_name("missing.csv")
COLUMNS = ["kind", "file", "text", "reason"]
CLANG = "clang++-19"
# How often one way is taken is told from the other by subtraction, so threads must not lose a count.
FLAGS = (
    "-O0 -g0 -DNDEBUG -Wno-error -Wno-error=deprecated-declarations -fprofile-instr-generate -fprofile-update=atomic "
    "-fcoverage-mapping -fcoverage-mcdc"
)
# Those that call the library; the others run examples, notebooks and tools.
PYTHON_TESTS = ["bindings", "chain", "choose", "core", "frames", "gearing", "instrument", "io", "kept", "road", "setup",
                "show", "tyre", "wear"]  # fmt: skip
#: A line of nothing, of a comment, of the preprocessor, of a closing brace alone: clang counts what lies between two
#: pieces of code as one of them.
NO_CODE = re.compile(r"\s*(//|#|\}?$)")
#: Before a branch: it is one of the compiler's own comparisons, of which clang counts the lines but not the ways.
OF_A_DEFAULT = re.compile(r"= default$")
Place = tuple[int, int]  # line, column


@dataclass
class File:
    """What was counted of a file; the places that no test reached have a count of nothing."""

    lines: dict[int, int] = field(default_factory=dict)
    branches: dict[tuple[Place, bool], int] = field(default_factory=lambda: defaultdict(int))
    conditions: dict[tuple[Place, int], bool] = field(default_factory=dict)


def run(*command: str | Path, **environment: str) -> None:
    subprocess.run([str(one) for one in command], check=True, cwd=TOP, env=os.environ | environment)


def build_and_run(build: Path, boost: str) -> list[Path]:
    """The programs and modules that were built, after their tests have run."""
    profiles = build / "profiles"
    shutil.rmtree(profiles, ignore_errors=True)
    profiles.mkdir(parents=True)
    # Of what comes out of a precompiled header clang keeps no map.
    common = ["-GNinja", "-DCMAKE_BUILD_TYPE=Debug", f"-DCMAKE_CXX_COMPILER={CLANG}", f"-DCMAKE_CXX_FLAGS_DEBUG={FLAGS}",
              f"-DLAYSHAFT_BOOST_INCLUDE_DIR={boost}", "-DLAYSHAFT_EXAMPLES=OFF",
              "-DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON"]  # fmt: skip
    cpp, python = build / "cpp", build / "python"
    run("cmake", "-S", TOP, "-B", cpp, *common, "-DCMAKE_UNITY_BUILD=ON", "-DLAYSHAFT_TEST_FUSED=ON")
    run("cmake", "--build", cpp)
    counted = {"LLVM_PROFILE_FILE": f"{profiles}/%m-%p.profraw"}
    run(
        "ctest",
        "--test-dir",
        cpp,
        "-j",
        str(os.cpu_count()),
        "--output-on-failure",
        "-E",
        "^(consumers|compile)",
        **counted,
    )

    pybind11 = subprocess.check_output([sys.executable, "-m", "pybind11", "--cmakedir"], text=True).strip()
    run("cmake", "-S", TOP, "-B", python, *common, "-DLAYSHAFT_TESTS=OFF", "-DLAYSHAFT_PYTHON=ON",
        f"-Dpybind11_DIR={pybind11}", f"-DPython_EXECUTABLE={sys.executable}", "-DCMAKE_INTERPROCEDURAL_OPTIMIZATION=OFF",
        "-DCMAKE_CXX_FLAGS=-Wno-pass-failed",
        "-Dlayshaft_linker_collects=OFF", "-DCMAKE_STRIP=")  # clang's map is in none of what is loaded  # fmt: skip
    run("cmake", "--build", python, "--target", "layshaft_python")
    package = build / "package"
    shutil.rmtree(package, ignore_errors=True)
    shutil.copytree(TOP / "bindings/layshaft", package / "layshaft")
    modules = sorted((python / "bindings").glob("_*.so"))
    for module in modules:
        shutil.copy(module, package / "layshaft")
    run(sys.executable, "-m", "pytest", "-q", "-n", str(os.cpu_count()), "--dist", "loadfile",
        "--hypothesis-seed=0",  # the same texts each time, so that the same is reached
        "--deselect", "tests/bindings/test_import.py::test_the_package_is_small",
        "--ignore", "tests/tyre/test_reference_grammar.py",  # runs a program of the ordinary build
        *(f"tests/{folder}" for folder in PYTHON_TESTS),
        PYTHONPATH=str(package), **counted)  # fmt: skip
    programs = [
        one for one in (cpp / "tests").rglob("*") if one.is_file() and os.access(one, os.X_OK) and one.suffix == ""
    ]
    modules = [package / "layshaft" / one.name for one in modules]
    # What was counted is kept program by program: the same function may be counted otherwise in each.
    for number, program in enumerate([*programs, *modules]):
        signature = signature_of(program, build)
        counts = list(profiles.glob(f"{signature}*.profraw"))
        if counts:
            run("llvm-profdata-19", "merge", "-sparse", "-o", build / f"{number}.profdata", *counts)
    return [*programs, *modules]


def signature_of(program: Path, build: Path) -> str:
    """By what the names of a program's or a module's profiles begin."""
    probe = build / "probe"
    shutil.rmtree(probe, ignore_errors=True)
    command = [program, "--gtest_list_tests"]
    if program.suffix == ".so":
        load = f"import importlib.util as u; s = u.spec_from_file_location({program.name.split('.')[0]!r}, {str(program)!r}); u.module_from_spec(s)"
        command = [sys.executable, "-c", load]
    subprocess.run(command, capture_output=True, check=False, env=os.environ | {"LLVM_PROFILE_FILE": f"{probe}/%m"})
    (name,) = [one.name for one in probe.iterdir()]
    return name


def exported(build: Path, programs: list[Path]) -> Iterator[dict[str, Any]]:
    """What llvm-cov tells of each file, program by program."""
    for number, program in enumerate(programs):
        profile = build / f"{number}.profdata"
        if profile.exists():
            told = subprocess.run(
                ["llvm-cov-19", "export", f"-instr-profile={profile}", "-show-mcdc-summary", str(program)],
                capture_output=True, text=True, check=True,
            )  # fmt: skip
            yield from json.loads(told.stdout)["data"][0]["files"]


def read(build: Path, programs: list[Path]) -> dict[str, File]:
    files: dict[str, File] = defaultdict(File)
    for told in exported(build, programs):
        # The modules are built so that they tell no folder of the machine.
        _, _, name = told["filename"].partition("include/layshaft/")
        if not name:
            continue
        file = files[name]
        source = (INCLUDE / name).read_text(encoding="utf-8").splitlines()
        for line, count in lines_of(told["segments"]):
            if not NO_CODE.match(source[line - 1]):
                file.lines[line] = max(file.lines.get(line, 0), count)
        for line, column, _, _, when_true, when_false, *_ in told["branches"]:
            if OF_A_DEFAULT.search(source[line - 1], 0, column):
                continue
            file.branches[(line, column), True] += when_true
            file.branches[(line, column), False] += when_false
        for line, column, _, _, _, _, conditions in (record[:7] for record in told["mcdc_records"]):
            for number, decided in enumerate(conditions if isinstance(conditions, list) else []):
                key = ((line, column), number)
                file.conditions[key] = file.conditions.get(key, False) or bool(decided)
    return files


def lines_of(segments: list[list[Any]]) -> Iterator[tuple[int, int]]:
    """Lines that have code, and how often each ran, of llvm's segments: line, column, count, has a count, starts a region."""
    by_line: dict[int, list[list[Any]]] = defaultdict(list)
    for segment in segments:
        by_line[segment[0]].append(segment)
    if not by_line:
        return
    wrapped: list[Any] | None = None
    for line in range(min(by_line), max(by_line) + 1):
        here = by_line.get(line, [])
        starts = [one for one in here if one[3] and one[4] and not one[5]]
        counts = [one[2] for one in starts] + ([wrapped[2]] if wrapped is not None and wrapped[3] else [])
        if starts or (wrapped is not None and wrapped[3] and not (here and not here[0][3] and here[0][4])):
            yield line, max(counts)
        if here:
            wrapped = here[-1]


def missing(files: dict[str, File]) -> dict[tuple[str, str, str], str]:
    """Each place that no test reaches: kind, file and text, and where it is now."""
    places: dict[tuple[str, str, str], str] = {}
    for name, file in sorted(files.items()):
        found = [("line", line, 1) for line, count in sorted(file.lines.items()) if count == 0]
        for ((line, column), way), count in sorted(file.branches.items()):
            if count == 0 and file.branches[(line, column), not way] > 0:
                found.append((f"branch {str(way).lower()}", line, column))
        for ((line, column), number), decided in sorted(file.conditions.items()):
            if not decided:
                found.append((f"condition {number + 1}", line, column))
        source = (INCLUDE / name).read_text(encoding="utf-8").splitlines()
        for kind, line, column in found:
            text = source[line - 1][column - 1 :].strip()
            places.setdefault((kind, name, text), f"{name}:{line}:{column}")
    return places


def main(build: Path, boost: str, only_read: bool) -> int:
    began = time.monotonic()
    kept = build / "programs.json"
    if only_read:
        programs = [Path(one) for one in json.loads(kept.read_text())]
    else:
        programs = build_and_run(build, boost)
        kept.write_text(json.dumps([str(one) for one in programs]))
    files = read(build, programs)
    places = missing(files)
    with MISSING.open(encoding="utf-8", newline="") as listing:
        listed = {(row["kind"], row["file"], row["text"]) for row in csv.DictReader(listing)}
    for key in sorted(places.keys() - listed):
        print(f"{places[key]}: no test reaches this {key[0]}: {key[2]}")
    for kind, file, text in sorted(listed - places.keys()):
        print(f"{file}: listed as missing, and reached or gone, this {kind}: {text}")

    def share(reached: int, all_: int) -> float:
        return round(100.0 * reached / all_, 3)

    lines = [count for file in files.values() for count in file.lines.values()]
    branches = [count for file in files.values() for count in file.branches.values()]
    conditions = [decided for file in files.values() for decided in file.conditions.values()]
    figures = {
        "files": len(files),
        "lines": len(lines), "lines_percent": share(sum(map(bool, lines)), len(lines)),
        "branches": len(branches), "branches_percent": share(sum(map(bool, branches)), len(branches)),
        "conditions": len(conditions), "conditions_percent": share(sum(conditions), len(conditions)),
        "listed": len(listed), "seconds": round(time.monotonic() - began),
    }  # fmt: skip
    (build / "result.json").write_text(json.dumps(figures, indent=1) + "\n", encoding="utf-8")
    print(
        f"{figures['lines_percent']} % of {len(lines)} lines, {figures['branches_percent']} % of {len(branches)} branches, "
        f"{figures['conditions_percent']} % of {len(conditions)} conditions (MC/DC); {len(listed)} places listed with reasons"
    )
    return 0 if places.keys() == listed else 1


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]).resolve(), sys.argv[2], "--only-read" in sys.argv[3:]))

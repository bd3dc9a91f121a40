# SPDX-License-Identifier: MIT
"""Builds digest.cpp by many compilers, and says whether all print the same numbers to the last bit; builds headers alone.

    matrix.py DIRECTORY BOOST_INCLUDE

Every build multiplies and adds in two roundings (-ffp-contract=off), as LAYSHAFT_FP_CONTRACT_OFF asks. The first build is
what the others are held against: a build that prints another number fails, and is told with the functions that differ and
by how many ulp. Only on a processor that cannot fuse, for which the C library's logarithm rounds otherwise now and then, may
the functions of libm.csv differ, by as many ulp as stand there. Headers are included as ordinary ones, not as a system's, and every warning is an error. A compiler that
is not installed fails as well. The end of what is printed, and DIRECTORY/result.json, have the figures.
"""

from __future__ import annotations

import concurrent.futures
import csv
import hashlib
import json
import os
import shutil
import subprocess
import sys
import time
from collections import defaultdict
from dataclasses import dataclass
from pathlib import Path

TOP = Path(__file__).resolve().parents[2]
STRICT = ["-Wall", "-Wextra", "-Wpedantic", "-Wconversion", "-Wsign-conversion", "-Werror"]
# g++ 12 is wrong of an empty std::optional that is compared, and of a std::string that is moved.
WRONG_OF_GCC = ["-Wno-maybe-uninitialized", "-Wno-array-bounds", "-Wno-stringop-overflow"]
GCC, CLANG_14, CLANG_19, ARM = "g++", "clang++-14", "clang++-19", "aarch64-linux-gnu-g++"
LIBCXX = "-stdlib=libc++"


@dataclass(frozen=True)
class Build:
    """One way to build a unit."""

    compiler: str
    options: str
    runner: tuple[str, ...] = ()  # what runs a program of another processor

    @property
    def name(self) -> str:
        return f"{self.compiler} {self.options}" + (f", run by {' '.join(self.runner)}" if self.runner else "")

    def command(self, source: Path, boost: str, *more: str) -> list[str]:
        wrong = [] if "clang" in self.compiler else WRONG_OF_GCC
        return [
            self.compiler, *self.options.split(), "-ffp-contract=off", *STRICT, *wrong, f"-I{TOP / 'include'}",
            f"-I{TOP / 'tests'}", "-isystem", boost, *more, str(source),
        ]  # fmt: skip


ON_ARM = ("qemu-aarch64",)
# A processor of the first kind of its family, for which the C library takes other ways than for one that fuses.
ON_PLAIN_X86 = ("qemu-x86_64", "-cpu", "qemu64")


def of_libm(build: Build) -> dict[str, int]:
    """The functions that may differ by the C library, and by how many ulp."""
    if build.runner != ON_PLAIN_X86:
        return {}
    with Path(__file__).with_name("libm.csv").open(encoding="utf-8", newline="") as listing:
        return {row["function"]: int(row["ulp"]) for row in csv.DictReader(listing)}


def has_avx2() -> bool:
    cpu = Path("/proc/cpuinfo")
    return cpu.exists() and " avx2 " in cpu.read_text(encoding="utf-8", errors="replace")


WITH_AVX2 = () if has_avx2() else ("qemu-x86_64", "-cpu", "max")
DIGESTS = (
    Build(GCC, "-std=c++20 -O2"),
    *(Build(GCC, f"-std=c++20 {level}") for level in ("-O0", "-O1", "-O3", "-Os")),
    *(Build(GCC, f"-std=c++23 {level}") for level in ("-O0", "-O3")),
    Build(GCC, "-std=c++20 -O3 -march=x86-64-v3", WITH_AVX2),
    Build(GCC, "-std=c++20 -O2", ON_PLAIN_X86),
    Build(GCC, "-std=c++20 -O2 -DNDEBUG"),
    *(Build(CLANG_14, options) for options in ("-std=c++20 -O0", "-std=c++20 -O2", "-std=c++2b -O3")),
    *(Build(CLANG_19, options) for options in ("-std=c++20 -O0", "-std=c++20 -O2", "-std=c++23 -O3")),
    *(Build(CLANG_19, f"{options} {LIBCXX}") for options in ("-std=c++20 -O2", "-std=c++23 -O3")),
    *(Build(ARM, f"{options} -static", ON_ARM) for options in ("-std=c++20 -O0", "-std=c++20 -O2", "-std=c++23 -O3")),
)
# Every header alone, looked at but not translated: by the compiler and the library that differ most from those the tests
# are built with, and by the newest standard; those two together see what any other one sees.
ALONE = (Build(CLANG_19, f"-std=c++23 -fsyntax-only {LIBCXX}"), Build(GCC, "-std=c++23 -fsyntax-only"))
BARE = tuple(
    Build(compiler, f"-std=c++20 -O1 -fno-exceptions -fno-rtti {more}".strip())
    for compiler, more in ((GCC, ""), (CLANG_14, ""), (CLANG_19, ""), (CLANG_19, LIBCXX))
)


def run(command: list[str]) -> subprocess.CompletedProcess[str]:
    return subprocess.run(command, capture_output=True, text=True, check=False)


def place_of(bits: str) -> int:
    """Where a double stands in the order of all doubles."""
    number = int(bits, 16)
    return number if number < 1 << 63 else (1 << 63) - number


def differences(expected: str, told: str) -> dict[str, int]:
    """By how many ulp each function differs at most."""
    ours, theirs = expected.splitlines(), told.splitlines()
    worst: dict[str, int] = defaultdict(int)
    if len(ours) != len(theirs):
        return {f"({len(theirs)} numbers, not {len(ours)})": 0}
    for one, other in zip(ours, theirs, strict=True):
        name, bits = one.split("\t")
        if one != other:
            its_name, its_bits = other.split("\t")
            if its_name != name:
                return {f"({its_name} where {name} was expected)": 0}
            worst[name] = max(worst[name], abs(place_of(bits) - place_of(its_bits)))
    return dict(worst)


def digest(build: Build, directory: Path, boost: str) -> tuple[str | None, str]:
    """What the program printed, or nothing and why."""
    number = DIGESTS.index(build)
    program = directory / f"digest_{number}"
    made = run(build.command(TOP / "tests/builds/digest.cpp", boost, "-o", str(program)))
    if made.returncode != 0:
        return None, made.stderr
    told = run([*build.runner, str(program)])
    program.unlink()
    return (told.stdout, told.stderr) if told.returncode == 0 else (None, told.stderr or f"code {told.returncode}")


def alone(build: Build, header: Path, directory: Path, boost: str) -> str:
    """What is wrong with a header that is all there is; empty where nothing is."""
    name = header.relative_to(TOP / "include").as_posix()
    unit = directory / (name.replace("/", "_") + f"_{ALONE.index(build)}.cpp")
    unit.write_text(f"#include <{name}>\n", encoding="utf-8")
    looked = run(build.command(unit, boost))
    unit.unlink()
    return looked.stderr if looked.returncode != 0 else ""


def bare(build: Build, directory: Path, boost: str) -> str:
    """What is wrong with a program without exceptions and RTTI."""
    program = directory / f"bare_{BARE.index(build)}"
    made = run(build.command(TOP / "tests/headers/bare.cpp", boost, "-o", str(program)))
    if made.returncode != 0:
        return made.stderr
    ended = run([str(program)]).returncode
    return f"code {ended}" if ended else ""


def main(directory: Path, boost: str) -> int:
    began = time.monotonic()
    directory.mkdir(parents=True, exist_ok=True)
    wrong: list[str] = []
    absent = [one for one in (GCC, CLANG_14, CLANG_19, ARM, ON_ARM[0], ON_PLAIN_X86[0]) if shutil.which(one) is None]
    if absent:
        print(f"not installed: {', '.join(absent)}")
        return 1
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        digests = [pool.submit(digest, build, directory, boost) for build in DIGESTS]
        headers = sorted((TOP / "include/layshaft").rglob("*.hpp"))
        looks = [(b, h, pool.submit(alone, b, h, directory, boost)) for b in ALONE for h in headers]
        bares = [(b, pool.submit(bare, b, directory, boost)) for b in BARE]

        expected: str | None = None
        numbers = functions = 0
        by_libm: dict[str, int] = {}  # what differs by the C library, and by how many ulp
        for build, future in zip(DIGESTS, digests, strict=True):
            told, why = future.result()
            right = told is not None
            if told is None:
                verdict = "FAILED: " + why.strip()[:2000]
            elif expected is None:
                expected, numbers = told, told.count("\n")
                functions = len({line.split("\t")[0] for line in told.splitlines()})
                (directory / "digest.txt").write_text(told, encoding="utf-8")
                verdict = f"{numbers} numbers of {functions} functions"
            elif told == expected:
                verdict = "the same"
            else:
                other = differences(expected, told)
                right = all(0 < ulp <= of_libm(build).get(name, 0) for name, ulp in other.items())
                verdict = ("the same but by libm: " if right else "DIFFERS: ") + ", ".join(
                    f"{name} by {ulp} ulp" for name, ulp in sorted(other.items())
                )
                by_libm |= other
            print(f"  {build.name:72} {verdict}", flush=True)
            if not right:
                wrong.append(build.name)
        for one, header, look in looks:
            if problem := look.result():
                wrong.append(f"{one.name}, {header.name} alone")
                print(f"  {wrong[-1]}: {problem.strip()[:2000]}", flush=True)
        for one, check in bares:
            if problem := check.result():
                wrong.append(one.name)
                print(f"  {one.name}: {problem.strip()[:2000]}", flush=True)
    figures = {
        "builds": len(DIGESTS),
        "compilers": len({build.compiler for build in DIGESTS}),
        "numbers": numbers,
        "functions": functions,
        "by_libm": by_libm,
        "digest": hashlib.sha256((expected or "").encode()).hexdigest(),
        "headers_alone": len(looks),
        "without_exceptions": len(bares),
        "wrong": wrong,
        "seconds": round(time.monotonic() - began),
    }
    (directory / "result.json").write_text(json.dumps(figures, indent=1) + "\n", encoding="utf-8")
    print(
        f"{figures['builds']} builds by {figures['compilers']} compilers print the same {numbers} numbers of {functions} "
        f"functions but for {len(by_libm)} that the C library rounds (SHA-256 {str(figures['digest'])[:12]}); {len(looks)} headers alone, {len(bares)} builds without "
        f"exceptions and RTTI"
        if not wrong
        else f"{len(wrong)} of these builds are wrong: {', '.join(wrong)}"
    )
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), sys.argv[2]))

# SPDX-License-Identifier: MIT
"""Runs every fuzzer for a while: by libFuzzer with the address and undefined-behaviour sanitizers, those of GPX and of
quantities against a reader in Python by mutators of their own.

    fuzz.py DIRECTORY BOOST_INCLUDE SECONDS [--record]

Each starts from its corpus (corpus/NAME.txt, a text a line) and from what earlier runs in DIRECTORY found new. A text that
fails is left in DIRECTORY and belongs into failures/NAME/, from where the ordinary tests replay it. The end of what is
printed, and DIRECTORY/result.json, have the figures; --record adds the executions to executions.csv, which sums up all runs.
"""

from __future__ import annotations

import csv
import datetime
import json
import os
import re
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

HERE = Path(__file__).resolve().parent
TOP = HERE.parents[1]
CLANG = "clang++-19"
COLUMNS = ["target", "executions", "seconds", "last"]
TARGETS = {"designation": 256, "quantity": 64, "json": 2048, "ride_log": 512}  # and their longest texts
DIFFERENTIAL = "quantity against Python"
GPX = "gpx"


def compiled(target: str, directory: Path, boost: str, *options: str) -> Path:
    program = directory / target
    sources = [HERE / f"{target}.cpp"] + (
        [TOP / "include/layshaft/io/json_definitions.cpp"] if target == "json" else []
    )
    command = [CLANG, "-std=c++20", "-O2", *options, f"-I{TOP / 'include'}", "-isystem", boost, "-o", program, *sources]
    subprocess.run([str(one) for one in command], check=True)
    return program


def plain(line: str) -> bytes:
    """A line of a corpus as the text it stands for (replay.cpp)."""
    escaped = re.compile(rb"\\(x[0-9a-f]{2}|.)", re.DOTALL)

    def one(found: re.Match[bytes]) -> bytes:
        what = found[1]
        return bytes([int(what[1:], 16)]) if len(what) == 3 else b"\n" if what == b"n" else what

    return escaped.sub(one, line.encode())


def fuzz(target: str, directory: Path, boost: str, seconds: int) -> tuple[int, str]:
    """How many executions, and what failed; empty where nothing did."""
    program = compiled(
        target, directory, boost, "-g1", "-fsanitize=fuzzer,address,undefined", "-fno-sanitize-recover=all"
    )
    corpus = directory / f"{target}_corpus"
    corpus.mkdir(exist_ok=True)
    for number, line in enumerate((HERE / f"corpus/{target}.txt").read_text(encoding="utf-8").splitlines()):
        (corpus / f"kept_{number}").write_bytes(plain(line))
    words = HERE / f"corpus/{target}.dict"
    told = subprocess.run(
        [str(program), str(corpus), f"-max_total_time={seconds}", f"-max_len={TARGETS[target]}", "-print_final_stats=1",
         f"-artifact_prefix={directory}/{target}_failed_", *([f"-dict={words}"] if words.exists() else [])],
        capture_output=True, text=True, errors="replace", check=False,
    )  # fmt: skip
    executed = re.search(r"stat::number_of_executed_units: (\d+)", told.stderr)
    return int(executed[1]) if executed else 0, "" if told.returncode == 0 else told.stderr[-3000:]


def in_python(script: str, *arguments: object) -> tuple[int, str]:
    """A fuzzer that is a script with a mutator of its own."""
    told = subprocess.run(
        [sys.executable, str(HERE / script), *map(str, arguments)], capture_output=True, text=True, check=False
    )
    executed = re.match(r"(\d+) executions", told.stdout)
    return int(executed[1]) if executed else 0, "" if told.returncode == 0 else told.stdout + told.stderr


def record(target: str, executions: int, seconds: int) -> None:
    path = HERE / "executions.csv"
    with path.open(encoding="utf-8", newline="") as listing:
        rows = {row["target"]: row for row in csv.DictReader(listing)}
    row = rows.setdefault(target, dict.fromkeys(COLUMNS, "0") | {"target": target})
    row["executions"] = str(int(row["executions"]) + executions)
    row["seconds"] = str(int(row["seconds"]) + seconds)
    row["last"] = datetime.date.today().isoformat()
    with path.open("w", encoding="utf-8", newline="") as listing:
        writer = csv.DictWriter(listing, COLUMNS, lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows.values())


def main(directory: Path, boost: str, seconds: int, keep: bool) -> int:
    directory.mkdir(parents=True, exist_ok=True)
    began = time.monotonic()
    executions: dict[str, int] = {}
    failed = []
    seed = time.time_ns() % 2**32  # other texts than the last time

    def attempt(target: str) -> tuple[int, str]:
        if target == DIFFERENTIAL:
            return in_python("against_python.py", compiled("read_quantities", directory, boost), seconds, seed)
        if target == GPX:
            return in_python("gpx_texts.py", seconds, seed)
        return fuzz(target, directory, boost, seconds)

    targets = [*TARGETS, DIFFERENTIAL, GPX]
    with ThreadPoolExecutor(os.cpu_count()) as pool:  # each is a process of its own, on a core of its own
        for target, (number, problem) in zip(targets, pool.map(attempt, targets), strict=True):
            executions[target] = number
            print(f"  {target:28}{number:>12,} executions{'; FAILED: ' + problem if problem else ''}", flush=True)
            if problem:
                failed.append(target)
            elif keep:
                record(target, number, seconds)
    with (HERE / "executions.csv").open(encoding="utf-8", newline="") as listing:
        recorded = sum(int(row["executions"]) for row in csv.DictReader(listing))
    figures = {
        "executions": executions, "recorded": recorded, "failed": failed, "seconds": round(time.monotonic() - began),
    }  # fmt: skip
    (directory / "result.json").write_text(json.dumps(figures, indent=1) + "\n", encoding="utf-8")
    print(f"{sum(executions.values()):,} executions without a finding; {recorded:,} recorded in all" if not failed else
          f"failed: {', '.join(failed)}")  # fmt: skip
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]).resolve(), sys.argv[2], int(sys.argv[3]), "--record" in sys.argv[4:]))

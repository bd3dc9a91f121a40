# SPDX-License-Identifier: MIT
"""The table of exact results: `python -m accuracy.table`, in tests/, writes build/accuracy/table.csv.gz and compares its hash with the one
that is kept; `--keep` keeps the new one, after a change of a formula or of what the table holds.

Numbers are hexadecimal, so that they are exact. A result is a double and what it lacks, together over a hundred bits;
the scale is that of which the error is told in ulp (exact.py).
"""

from __future__ import annotations

import argparse
import csv
import gzip
import hashlib
import io
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path

from accuracy.functions import ENTRIES
from accuracy.rows import Row

HERE = Path(__file__).resolve().parent
TABLE = HERE.parents[1] / "build/accuracy/table.csv.gz"
HASH = HERE / "table.sha256"


def all_rows(seed: int = 0) -> Iterator[Row]:
    for entry in ENTRIES.values():
        for difficulty in entry.classes:
            yield from entry.rows(difficulty, entry.count(difficulty), seed)


def text_of(rows: Iterable[Row]) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(("function", "class", "result", "lacks", "scale", "arguments..."))
    for row in rows:
        arguments = [one if isinstance(one, str) else float(one).hex() for one in row.arguments]
        numbers = (row.head.hex(), row.tail.hex(), row.scale.hex())
        writer.writerow((row.function, row.difficulty, *numbers, *arguments))
    return out.getvalue()


def hash_of(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()


def kept_hash() -> str:
    return HASH.read_text(encoding="utf-8").split()[0] if HASH.exists() else ""


def write(rows: list[Row]) -> str:
    """Writes the table, and returns its hash."""
    text = text_of(rows)
    TABLE.parent.mkdir(parents=True, exist_ok=True)
    TABLE.write_bytes(gzip.compress(text.encode(), mtime=0))
    return hash_of(text)


def main() -> int:
    parser = argparse.ArgumentParser(description="Writes the table of exact results.")
    parser.add_argument("--keep", action="store_true", help="keep its hash in the repository")
    keep = parser.parse_args().keep
    rows = list(all_rows())
    new = write(rows)
    print(f"{len(rows)} rows of {len(ENTRIES)} functions, sha256 {new}")
    if keep:
        HASH.write_text(f"{new}  {len(rows)} rows\n", encoding="utf-8")
    elif new != kept_hash():
        print(f"the kept hash is {kept_hash() or 'none'}")
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())

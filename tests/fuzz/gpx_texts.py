# SPDX-License-Identifier: MIT
"""What holds for every GPX text whatever: it is refused in one line, or read as the standard library's parser reads it.

    gpx_texts.py SECONDS [SEED]

Mutates the documents of corpus/gpx, and ends with the number of texts or at the first that does not hold. Those that once
failed lie in failures/gpx. layshaft has to be installed.
"""

from __future__ import annotations

import math
import random
import re
import sys
import time
from collections.abc import Iterator
from datetime import datetime, timedelta
from itertools import islice
from pathlib import Path
from xml.etree import ElementTree

from layshaft import Error, RideLog, gpx

HERE = Path(__file__).resolve().parent
BATCH = 1000
# What a text is cut into: tags, attributes' values, numbers, words, and whatever lies between.
TOKEN = re.compile(rb"<[!?/]?[\w:]*|\"[^\"]*\"|[\w.:+-]+|\s+|.", re.DOTALL)
PIECES = [b"<trkseg>", b"</trkseg>", b"<trkpt", b"/>", b"</trkpt>", b"<trk>", b"</trk>", b"<ele>", b"</ele>", b"<time>",
          b"</time>", b"<speed>", b"</speed>", b"<extensions>", b"</extensions>", b"<gpx>", b"</gpx>", b"<rte>", b"<!--",
          b"-->", b"<![CDATA[", b"]]>", b"&amp;", b"&#x1f;", b"&lt;", b"&e;", b"<?x?>", b"<!DOCTYPE gpx>", b"\x00", b"\xff",
          b"\xef\xbb\xbf", b"\xe2\x80\xae", b' lat="90"', b' lon="-180"', b' lat="1e9"', b"1e-320", b"1e999", b"nan", b"-0",
          b".5", b"2031-02-29T00:00:00Z", b"2032-02-29T23:59:60Z", b"0001-01-01T00:00:00+23:59", b"9999-12-31T23:59:59-23:59",
          b"+24:00", b"+05:60", b".999999999999", b'encoding="utf-16"', b'encoding="latin-1"', b" "]  # fmt: skip


def corpus() -> list[bytes]:
    return [one.read_bytes() for one in sorted(HERE.glob("corpus/gpx/*.gpx"))]


def once_failed() -> list[bytes]:
    return [one.read_bytes() for one in sorted(HERE.glob("failures/gpx/*"))]


def mutations(seed: int = 20261126) -> Iterator[bytes]:
    draw = random.Random(seed)
    documents = [TOKEN.findall(text) for text in corpus()]
    while True:
        tokens = list(draw.choice(documents))
        for _ in range(draw.choice([0, 1, 1, 2, 3, 5])):
            place = draw.randrange(len(tokens) + 1)
            end = place + draw.choice([0, 0, 1, 1, 2, 8])
            match draw.randrange(4):
                case 0:
                    tokens[place:end] = [draw.choice(PIECES)]
                case 1:
                    other = draw.choice(documents)
                    begin = draw.randrange(len(other))
                    tokens[place:end] = other[begin : begin + draw.randint(1, 12)]
                case 2:
                    tokens[place:end] = tokens[place:end] * 2
                case _:
                    token = bytearray(b"".join(tokens[place:end]))
                    if token:
                        token[draw.randrange(len(token))] = draw.choice(b"0123456789.+-eTZ:<>/&\"' \t\n\x80")
                    tokens[place:end] = [bytes(token)]
        yield b"".join(tokens)


def moment(text: str) -> float:
    """Seconds since 1970, by the standard library."""
    found = re.fullmatch(r"([^.Z+]{19}|[^.Z]{19})(\.\d+)?(Z|[+-]\d\d:\d\d)", text)
    assert found is not None, text
    offset = timedelta(0) if found[3] == "Z" else datetime.strptime(found[3], "%z").utcoffset()
    assert offset is not None
    there = datetime.fromisoformat(found[1]) - datetime(1970, 1, 1)
    return (there - offset).total_seconds() + float(found[2] or 0.0)


def told(text: bytes) -> list[dict[str, float]]:
    """Each track point as a tree of the standard library holds it."""
    for element in (root := ElementTree.fromstring(text)).iter():
        element.tag = element.tag.rpartition("}")[2]
    points = []
    for point in root.findall("trk/trkseg/trkpt"):
        speeds = point.findall("speed") + point.findall("extensions//speed")
        first = next((one for one in point.iter() if one in speeds), None)
        cells = {"time": point.find("time"), "ele": point.find("ele"), "speed": first}
        words = {name: (cell.text or "").strip() for name, cell in cells.items() if cell is not None}
        points.append({name: moment(word) if name == "time" else float(word) for name, word in words.items()})
    return points


def must(holds: bool, what: str, text: bytes) -> None:
    if not holds:
        raise AssertionError(f"{what}: {text!r}")


def attempt(text: bytes) -> bool:
    """Whether a text is a ride; raises where something does not hold."""
    try:
        log = gpx.read_gpx(text)
    except Error as error:
        must(len(str(error)) < 500 and str(error).isprintable(), f"an error that is no line: {error}", text)
        return False
    agrees(log, text)
    return True


def agrees(log: RideLog, text: bytes) -> None:
    points = told(text)
    must(log.samples == len(points), f"{log.samples} samples of {len(points)} points", text)
    times = [point["time"] - points[0]["time"] for point in points]
    must(all(map(close, log.time_s, times)) and list(log.time_s) == sorted(set(log.time_s)), "other times", text)
    must(all(0.0 <= speed < math.inf for speed in log.speed_kmh), "a speed that is none", text)
    if all("speed" in point for point in points):
        must(
            all(close(a, 3.6 * point["speed"]) for a, point in zip(log.speed_kmh, points, strict=True)), "speeds", text
        )
    heights = [point["ele"] for point in points if "ele" in point]
    must(list(log.height_m) == (heights if len(heights) == len(points) else []), "other heights", text)


def close(a: float, b: float) -> bool:
    return math.isclose(a, b, rel_tol=1e-12, abs_tol=1e-4)  # seconds since 1970 have no more digits


def main(seconds: float, *seed: int) -> int:
    began = time.monotonic()
    texts = mutations(*seed)
    done = rides = 0
    while time.monotonic() - began < seconds:
        rides += sum(attempt(text) for text in islice(texts, BATCH))
        done += BATCH
    print(f"{done} executions, {rides} of them of rides")
    return 0 if rides > done / 20 else 1  # texts that are all refused would prove little


if __name__ == "__main__":
    sys.exit(main(float(sys.argv[1]), *map(int, sys.argv[2:])))

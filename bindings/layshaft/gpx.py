# SPDX-License-Identifier: MIT
"""Ride logs out of GPX 1.0 and 1.1, the open form in which satellite receivers hand out their tracks.

Such a file comes from outside and may be hostile. Nothing is fetched, no entity is expanded, a document type is
refused, and size, depth and number of points are bounded. It needs defusedxml: ``pip install 'layshaft[gpx]'``.

>>> from layshaft import gpx
>>> log = gpx.read_gpx('''<gpx version="1.1"><trk><trkseg>
... <trkpt lat="59.0000" lon="17"><time>2031-06-01T18:00:00Z</time></trkpt>
... <trkpt lat="59.0001" lon="17"><time>2031-06-01T18:00:01Z</time></trkpt>
... <trkpt lat="59.0002" lon="17"><time>2031-06-01T18:00:02Z</time></trkpt>
... </trkseg></trk></gpx>''')
>>> [round(speed, 2) for speed in log.speed_kmh]
[40.03, 40.03, 40.03]
"""

from __future__ import annotations

import importlib
import math
import re
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from os import PathLike
from typing import IO, Any, Final

from . import _core
from ._escape import in_short

__all__ = ["EARTH_RADIUS_M", "read_gpx"]

#: The mean radius of the earth, (2 a + b)/3 of the Geodetic Reference System 1980 of the IUGG, in metres. A great
#: circle on it is within 0.6 % of the way over the ellipsoid.
EARTH_RADIUS_M: Final = 6_371_008.8

_WINDOW = 3.0  # s, over which speeds from positions are averaged
_MOST_POINTS = 1_000_000
_DEEPEST = 64
_LONGEST_CELL = 100  # characters of a time, a height or a speed
_POINT = ["gpx", "trk", "trkseg", "trkpt"]

_NUMBER = re.compile(r"[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,3})?", re.ASCII)
_TIME = re.compile(
    r"(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(\.\d{1,12})?(?:Z|([+-])([01]\d|2[0-3]):([0-5]\d))", re.ASCII
)  # fmt: skip


@dataclass
class _Point:
    latitude: float  # rad
    longitude: float  # rad
    time: datetime | None = None  # of the world's clock, whole seconds
    fraction: float = 0.0  # s
    height: float | None = None
    speed: float | None = None  # m/s


class _Track:
    """Takes down the points of a document while it is parsed; no tree of it is ever built."""

    def __init__(self) -> None:
        self.segments: list[list[_Point]] = []
        self._path: list[str] = []
        self._point: _Point | None = None
        self._points = 0
        self._cell: str | None = None  # which part of a point is being read
        self._text = ""

    # What the parser calls.
    def start(self, tag: str, attributes: dict[str, str]) -> None:
        name = tag.rpartition("}")[2]
        if not self._path and name != "gpx":
            raise _core.Error(f"the document is a {in_short(name)}; expected a gpx")
        if len(self._path) >= _DEEPEST:
            raise _core.Error(f"elements of the GPX text lie more than {_DEEPEST} deep in each other; expected fewer")
        if self._cell is not None:
            raise _core.Error(f"{self._place()}, {self._cell}: holds {in_short(name)}; expected text alone")
        self._path.append(name)
        if self._path == _POINT[:-1]:
            self.segments.append([])
        elif self._path == _POINT:
            self._begin(attributes)
        elif self._point is not None:
            own = len(self._path) == len(_POINT) + 1
            if (own and name in ("time", "ele")) or (name == "speed" and (own or self._path[4] == "extensions")):
                self._cell, self._text = name, ""

    def end(self, tag: str) -> None:
        if self._cell is not None:
            self._take(self._cell, self._text.strip())
            self._cell = None
        elif self._point is not None and self._path == _POINT:
            if self._point.time is None:
                raise _core.Error(f"{self._place()} has no time; expected one in every point")
            self.segments[-1].append(self._point)
            self._point = None
        self._path.pop()

    def data(self, text: str) -> None:
        if self._cell is None:
            return
        self._text += text
        if len(self._text) > _LONGEST_CELL:
            raise _core.Error(
                f"{self._place()}, {self._cell}: longer than {_LONGEST_CELL} characters; expected a time or a number"
            )

    def close(self) -> None:
        pass

    def _place(self) -> str:
        return f"track point {self._points}"

    def _begin(self, attributes: dict[str, str]) -> None:
        if self._points == _MOST_POINTS:
            raise _core.RangeError(f"the GPX text has more than {_MOST_POINTS} track points; expected fewer")
        self._points += 1
        self._point = _Point(self._angle(attributes, "lat", 90.0), self._angle(attributes, "lon", 180.0))

    def _angle(self, attributes: dict[str, str], name: str, most: float) -> float:
        if name not in attributes:
            raise _core.Error(f"{self._place()} has no {name}; expected degrees, -{most:g} to {most:g}")
        degrees = self._number(name, attributes[name].strip())
        if not -most <= degrees <= most:
            raise _core.RangeError(f"{self._place()}: {name} is {degrees:g}; expected -{most:g} to {most:g}")
        return math.radians(degrees)

    def _number(self, name: str, text: str) -> float:
        if not _NUMBER.fullmatch(text):
            raise _core.Error(
                f"{self._place()}, {name}: no number, {in_short(text)}; expected one with a decimal point"
            )
        return float(text)

    def _take(self, cell: str, text: str) -> None:
        point = self._point
        assert point is not None
        if cell == "time":
            if point.time is not None:
                raise _core.Error(f"{self._place()} has two times; expected one")
            point.time, point.fraction = self._moment(text)
        elif cell == "ele":
            if point.height is not None:
                raise _core.Error(f"{self._place()} has two heights; expected one at most")
            point.height = self._number("ele", text)
        elif point.speed is None:
            point.speed = self._number("speed", text)

    def _moment(self, text: str) -> tuple[datetime, float]:
        found = _TIME.fullmatch(text)
        if found:
            year, month, day, hour, minute, second = (int(part) for part in found.groups()[:6])
            fraction, sign, off_hours, off_minutes = found.groups()[6:]
            off = timedelta(hours=int(off_hours or 0), minutes=int(off_minutes or 0))
            try:
                there = datetime(year, month, day, hour, minute, second)
                return there + off if sign == "-" else there - off, float(fraction or 0.0)
            except (ValueError, OverflowError):
                pass  # a 31st of February is no time either
        raise _core.Error(
            f"{self._place()}, time: {in_short(text)} is none; expected a date and time of ISO 8601 with Z or an "
            'offset, such as "2031-06-01T18:00:00Z"'
        )


def _bytes_of(source: str | bytes | PathLike[str] | IO[str] | IO[bytes], most: int) -> tuple[bytes, str | None]:
    """The document, and its encoding where that is known whatever it says of itself."""
    if isinstance(source, PathLike):
        with open(source, "rb") as file:
            return _bytes_of(file, most)
    text: str | bytes
    if isinstance(source, str | bytes):
        text = source
    elif hasattr(source, "read"):
        pieces: list[Any] = []
        size = 0
        while size <= most:
            piece = source.read(most + 1 - size)
            if not piece:
                break
            pieces.append(piece)
            size += len(piece)
        text = (b"" if not pieces or isinstance(pieces[0], bytes) else "").join(pieces)
    else:
        raise TypeError(f"source: expected text, bytes, a pathlib.Path or an open file, got {type(source).__name__}")
    size = len(text)
    if size <= most and isinstance(text, str):
        text = text.removeprefix("\ufeff").encode("utf-8", "surrogatepass")
        size, encoding = len(text), "utf-8"
    else:
        encoding = None
    if size > most:
        raise _core.RangeError(f"the GPX text is longer than max_bytes; expected up to {most} bytes")
    assert isinstance(text, bytes)
    if isinstance(source, str) and "<" not in source:
        raise _core.Error(
            f"{in_short(source)} is no GPX text; expected the document itself, or a pathlib.Path to read it from"
        )
    return text, encoding


def _parse(text: bytes, encoding: str | None) -> _Track:
    try:
        trees: Any = importlib.import_module("defusedxml.ElementTree")
        refusals: Any = importlib.import_module("defusedxml.common")
    except ImportError as error:
        raise ImportError("layshaft.gpx needs defusedxml: pip install 'layshaft[gpx]'") from error
    track = _Track()
    parser = trees.DefusedXMLParser(
        target=track, encoding=encoding, forbid_dtd=True, forbid_entities=True, forbid_external=True
    )
    try:
        for begin in range(0, len(text), 65536):
            parser.feed(text[begin : begin + 65536])
        parser.close()
    except refusals.DefusedXmlException:
        raise _core.Error(
            "the GPX text declares a document type, with which entities come; expected a document without one"
        ) from None
    except trees.ParseError as error:
        line, column = error.position
        problem = str(error).partition(": line ")[0]
        raise _core.Error(
            f"the GPX text cannot be read at line {line}, column {column + 1}: {problem}; expected well-formed XML"
        ) from None
    except (LookupError, UnicodeError, ValueError) as error:
        if isinstance(error, _core.Error):
            raise
        raise _core.Error("the GPX text is in an encoding that is not known; expected UTF-8") from None
    return track


def _distance(a: _Point, b: _Point) -> float:
    """By the haversine, which keeps its digits where points lie close."""
    half_chord = (
        math.sin(0.5 * (b.latitude - a.latitude)) ** 2
        + math.cos(a.latitude) * math.cos(b.latitude) * math.sin(0.5 * (b.longitude - a.longitude)) ** 2
    )
    return 2.0 * EARTH_RADIUS_M * math.asin(min(1.0, math.sqrt(half_chord)))


def _speeds_from_positions(points: list[_Point], times: list[float], gap: float) -> list[float]:
    """Of each point: the way over the time, of the stretches up to half a window before and behind it, but of one each.

    No stretch longer than the gap counts. A point between two such stands alone, and still.
    """
    ways = [0.0]
    for a, b in pairwise(points):
        ways.append(ways[-1] + _distance(a, b))
    speeds = []
    together = first = final = 0  # where the samples that belong together begin; the window
    for i, time in enumerate(times):
        if i > 0 and time - times[i - 1] > gap:
            together = i
        first = max(first, together)
        while time - times[first] > 0.5 * _WINDOW:
            first += 1
        final = max(final, i)
        while final + 1 < len(times) and times[final + 1] - times[final] <= gap and (
            final == i or times[final + 1] - time <= 0.5 * _WINDOW
        ):  # fmt: skip
            final += 1
        begin = max(together, min(first, i - 1))
        speeds.append((ways[final] - ways[begin]) / (times[final] - times[begin]) if final > begin else 0.0)
    return speeds


def _gap_of(gap: float, segments: list[list[float]]) -> float:
    """A gap so short that each break between segments is one, unless it is no longer than the samples lie apart."""
    pace = max((b - a for times in segments for a, b in pairwise(times) if b - a <= gap), default=0.0)
    breaks = [after[0] - before[-1] for before, after in pairwise(segments)]
    short = min((one for one in breaks if pace < one <= gap), default=None)
    return gap if short is None else max(0.01, 0.5 * (pace + short))


def read_gpx(
    source: str | bytes | PathLike[str] | IO[str] | IO[bytes],
    *,
    gap: _core.Duration | str = "10 s",
    max_bytes: int = 50_000_000,
) -> _core.RideLog:
    """The RideLog of a GPX 1.0 or 1.1 document's tracks.

    Times count from the first point. Speeds are the receiver's own, in m/s, where every point has a ``speed``, itself
    or among its extensions. Otherwise they are told from the positions: the way along great circles over the time, of
    the stretches within 1.5 s before and behind a point, or of one either side where points lie further apart. A
    position is some metres out, and the speed between two neighbours mostly noise; what changes within a second is
    smoothed away by that, and noise makes ways a little longer.
    Heights are taken where every point has one. Where one segment ends and the next begins the recorder stood still,
    however short the break; one no longer than the samples lie apart cannot be told from them. Routes and waypoints
    have no times and are passed over.

    :param source: the document as text or bytes, a ``pathlib.Path`` to read it from, or an open file. A ``str`` is
        always the document and never a path, so that text from outside opens no file.
    :param gap: how far apart two samples may lie and still belong together, 0.01 s to a day
    :param max_bytes: of the document; a longer one is not read
    :raises Error: for what is no GPX, a document type, a point without time, place or number, fewer than two points
    :raises RangeError: for a place that is none, times that do not rise, a number that RideLog refuses; named by track
        point, from 1
    :raises ImportError: without defusedxml
    """
    if isinstance(max_bytes, bool) or not isinstance(max_bytes, int):
        raise TypeError(f"max_bytes: expected an int, got {type(max_bytes).__name__}")
    if max_bytes < 1:
        raise _core.RangeError(f"max_bytes is {max_bytes}; expected at least 1")
    longest = _core.Duration(gap)
    text, encoding = _bytes_of(source, max_bytes)
    segments = [points for points in _parse(text, encoding).segments if points]
    points = [point for segment in segments for point in segment]
    if len(points) < 2:
        raise _core.Error(f"the GPX text has {len(points)} track points; expected at least 2, each with its time")

    start = points[0].time
    assert start is not None
    times: list[float] = []
    for number, point in enumerate(points, 1):
        assert point.time is not None
        seconds = (point.time - start).total_seconds() + (point.fraction - points[0].fraction)
        if times and not seconds > times[-1]:
            raise _core.RangeError(
                f"track point {number}: its time is {seconds - times[-1]:g} s after that of the point before it; "
                "expected more than 0 s"
            )
        times.append(seconds)

    cut: list[list[float]] = []
    at = 0
    for segment in segments:
        cut.append(times[at : at + len(segment)])
        at += len(segment)
    gap_s = _gap_of(longest / _core.s, cut)
    speeds = [point.speed for point in points if point.speed is not None]
    if len(speeds) < len(points):
        speeds = _speeds_from_positions(points, times, gap_s)
    heights = [point.height for point in points if point.height is not None]
    return _core.RideLog(
        time_s=times,
        speed_kmh=[3.6 * speed for speed in speeds],
        height_m=heights if len(heights) == len(points) else None,
        gap=gap_s * _core.s,
    )

# SPDX-License-Identifier: MIT
"""GPX: invented rides along great circles, and text that means harm."""

from __future__ import annotations

import doctest
import io
import math
import pathlib
import socket
import sys
from collections.abc import Iterable

import layshaft as ls
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from layshaft import gpx

RADIUS = 6_371_008.8  # m, the mean radius of the earth, IUGG


def great_circle(
    metres: Iterable[float], lat: float = 47.3, lon: float = 11.2, bearing: float = 63.0
) -> list[tuple[float, float]]:
    """Places so far along a great circle, by vectors: not the formula that the reader uses."""
    phi, lam, course = math.radians(lat), math.radians(lon), math.radians(bearing)
    here = np.array([math.cos(phi) * math.cos(lam), math.cos(phi) * math.sin(lam), math.sin(phi)])
    north = np.array([-math.sin(phi) * math.cos(lam), -math.sin(phi) * math.sin(lam), math.cos(phi)])
    east = np.array([-math.sin(lam), math.cos(lam), 0.0])
    ahead = math.cos(course) * north + math.sin(course) * east
    places = []
    for way in metres:
        x, y, z = math.cos(way / RADIUS) * here + math.sin(way / RADIUS) * ahead
        places.append((math.degrees(math.asin(z)), math.degrees(math.atan2(y, x))))
    return places


def moment(seconds: float) -> str:
    whole = round(seconds * 1000)
    minutes, ms = divmod(whole, 60000)
    return f"2031-06-01T{18 + minutes // 60:02d}:{minutes % 60:02d}:{ms // 1000:02d}.{ms % 1000:03d}Z"


def point(place: tuple[float, float], time: str | None, inside: str = "") -> str:
    told = f"<time>{time}</time>" if time is not None else ""
    return f'<trkpt lat="{place[0]!r}" lon="{place[1]!r}">{told}{inside}</trkpt>'


def track(*segments: str, head: str = "", version: str = "1.1") -> str:
    inside = "".join(f"<trkseg>{segment}</trkseg>" for segment in segments)
    return f'<?xml version="1.0"?>{head}<gpx version="{version}"><trk><name>invented</name>{inside}</trk></gpx>'


def steady(speed: float, times: Iterable[float], way: float = 0.0, inside: str = "") -> str:
    times = list(times)
    places = great_circle(way + speed * (t - times[0]) for t in times)
    return "".join(point(place, moment(t), inside) for place, t in zip(places, times, strict=True))


@pytest.mark.parametrize("period", [0.2, 1.0, 4.0])
@pytest.mark.parametrize("lat", [-71.0, 0.0, 47.3])
def test_a_great_circle_at_constant_speed_comes_back(period: float, lat: float) -> None:
    times = [period * i for i in range(200)]
    places = great_circle([13.7 * t for t in times], lat=lat, lon=179.999)  # over the date line
    text = track("".join(point(place, moment(t)) for place, t in zip(places, times, strict=True)))
    log = gpx.read_gpx(text)
    assert log.time_s == pytest.approx(times, abs=1e-9)
    assert np.array(log.speed_kmh) / 3.6 == pytest.approx(13.7, rel=1e-6)
    assert log.height_m == () and log.gap == ls.Duration("10 s")


def test_speeds_and_heights_of_the_receiver_count_where_every_point_has_them() -> None:
    for inside in (
        "<ele>612.5</ele><speed>9.25</speed>",
        "<ele>612.5</ele><extensions><a:b xmlns:a='x:y'><a:speed>9.25</a:speed></a:b></extensions>",
    ):
        log = gpx.read_gpx(track(steady(13.7, range(5), inside=inside), version="1.0"))
        assert log.speed_kmh == pytest.approx([33.3] * 5) and log.height_m == (612.5,) * 5
    part = gpx.read_gpx(
        track(
            steady(13.7, range(5), inside="<ele>612.5</ele><speed>9.25</speed>")
            + steady(13.7, range(5, 9), way=5 * 13.7)
        )
    )
    assert part.speed_kmh == pytest.approx([13.7 * 3.6] * 9, rel=1e-6) and part.height_m == ()


def test_the_break_between_segments_is_a_gap_however_short() -> None:
    rule = ls.ShiftRule([], [])
    for pause in (5.0, 30.0):
        later = [9.0 + pause + i for i in range(10)]
        log = gpx.read_gpx(track(steady(10.0, range(10)), "", steady(20.0, later, way=500.0)))
        assert log.speed_kmh == pytest.approx([36.0] * 10 + [72.0] * 10, rel=1e-6)
        use = ls.ride_use(log, [10.0], "2 m", rule)
        assert use.gaps / ls.s == pytest.approx(pause) and use.distance / ls.m == pytest.approx(90.0 + 180.0, rel=1e-6)
    # No longer than the samples lie apart: the receiver began a segment, and the ride went on.
    log = gpx.read_gpx(track(steady(10.0, range(10)), steady(10.0, range(10, 20), way=100.0)))
    assert log.gap == ls.Duration("10 s") and log.speed_kmh == pytest.approx([36.0] * 20, rel=1e-6)


def test_noise_of_positions_is_averaged() -> None:
    row = np.random.default_rng(3)
    places = great_circle([12.0 * i for i in range(2000)])
    noise = row.normal(0.0, 0.3 / 111_000, (2000, 2))
    text = track(
        "".join(
            point((a + x, b + y), moment(float(i)))
            for i, ((a, b), (x, y)) in enumerate(zip(places, noise.tolist(), strict=True))
        )
    )
    speed = np.array(gpx.read_gpx(text).speed_kmh) / 3.6
    assert np.mean(speed) == pytest.approx(12.0, rel=0.005)
    assert np.std(speed) < 0.35  # of two neighbours alone 0.42


def test_times_come_with_any_offset() -> None:
    places = great_circle([0.0, 10.0, 20.0])
    times = ["2031-06-01T23:59:59.5+02:00", "2031-06-01T22:00:00.500Z", "2031-06-01T16:30:01.5-05:30"]
    log = gpx.read_gpx(track("".join(point(p, t) for p, t in zip(places, times, strict=True))))
    assert log.time_s == pytest.approx([0.0, 1.0, 2.0], abs=1e-9)


def test_text_bytes_paths_and_files_are_read_alike(tmp_path: pathlib.Path) -> None:
    text = track(steady(10.0, range(4), inside="<name>Mühle</name>"))
    expected = gpx.read_gpx(text)
    path = tmp_path / "ride.gpx"
    path.write_bytes(text.encode())
    assert gpx.read_gpx(path) == expected
    assert gpx.read_gpx(text.encode()) == expected and gpx.read_gpx("\ufeff" + text) == expected
    assert gpx.read_gpx(text.replace('"1.0"?', '"1.0" encoding="utf-16"?').encode("utf-16")) == expected
    assert gpx.read_gpx(text.replace('"1.0"?', '"1.0" encoding="latin-1"?')) == expected  # text is text already
    with path.open("rb") as raw, path.open(encoding="utf-8") as lines:
        assert gpx.read_gpx(raw) == expected and gpx.read_gpx(lines) == expected
    assert gpx.read_gpx(io.StringIO(text), max_bytes=len(text.encode())) == expected
    namespaced = text.replace("<gpx ", '<gpx xmlns="https://example.org/gpx" ')
    assert gpx.read_gpx(namespaced) == expected
    with pytest.raises(ls.Error, match=r"pathlib\.Path"):
        gpx.read_gpx(str(path))  # never a path: text from outside opens no file
    with pytest.raises(FileNotFoundError):
        gpx.read_gpx(tmp_path / "none.gpx")


BOMB = "<!DOCTYPE gpx [" + '<!ENTITY a "ride">' + "".join(
    f'<!ENTITY {b} "{("&" + a + ";") * 10}">' for a, b in zip("abcdefgh", "bcdefghi", strict=True)
) + "]>"  # fmt: skip
THREE = steady(10.0, range(3))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (track(THREE, head=BOMB).replace("invented", "&i;"), "declares a document type"),
        (track(THREE, head='<!DOCTYPE gpx [<!ENTITY f SYSTEM "file:///etc/hostname">]>').replace("invented", "&f;"), "declares a document type"),
        (track(THREE, head='<!DOCTYPE gpx SYSTEM "http://127.0.0.1:9/gpx.dtd">'), "declares a document type"),
        (track(THREE, head="<!DOCTYPE gpx>"), "declares a document type"),
        (track(THREE).replace("invented", "&ride;"), "line 1, column"),
        (track(THREE)[:-10], "cannot be read at line 1, column"),
        ("", "is no GPX text"),
        ("ride.gpx", "expected the document itself, or a pathlib.Path"),
        ("<html></html>", "the document is a 'html'; expected a gpx"),
        ("<gpx></gpx>", "has 0 track points; expected at least 2"),
        (track(steady(10.0, [0.0])), "has 1 track points"),
        (track(THREE + point((47.0, 11.0), None)), "track point 4 has no time"),
        (track(steady(10.0, [0.0, 2.0, 1.0])), "track point 3: its time is -1 s after that of the point before it"),
        (track(steady(10.0, [0.0, 2.0, 2.0])), "track point 3: its time is 0 s after"),
        (track(steady(10.0, [10.0, 11.0]), steady(10.0, [1.0, 2.0])), "track point 3: its time is -10 s after"),
        (track(THREE + point((91.0, 11.0), moment(4))), "track point 4: lat is 91; expected -90 to 90"),
        (track(THREE + point((1.0, -180.5), moment(4))), "track point 4: lon is -180.5; expected -180 to 180"),
        (track(THREE.replace(' lon="', ' long="', 1)), "track point 1 has no lon"),
        (track(THREE + '<trkpt lat="nan" lon="1"/>'), "track point 4, lat: no number, 'nan'"),
        (track(THREE + '<trkpt lat="1_0" lon="1"/>'), "track point 4, lat: no number, '1_0'"),
        (track(THREE + point((1.0, 1.0), "yesterday")), "track point 4, time: 'yesterday' is none"),
        (track(THREE + point((1.0, 1.0), "2031-06-01T18:00:04")), "with Z or an offset"),  # whose clock?
        (track(THREE + point((1.0, 1.0), "2031-02-30T18:00:04Z")), "track point 4, time: '2031-02-30"),
        (track(THREE + point((1.0, 1.0), "2031-06-01T18:00:04+24:00")), "track point 4, time: '2031-06-01"),
        (track(THREE + point((1.0, 1.0), "2031-06-01T18:00:04+05:60")), "track point 4, time: '2031-06-01"),
        (track(THREE + point((1.0, 1.0), "0001-01-01T00:00:00+05:00")), "track point 4, time:"),
        (track(THREE + point((1.0, 1.0), moment(4), f"<time>{moment(5)}</time>")), "track point 4 has two times"),
        (track(steady(10.0, range(3), inside="<ele>1</ele><ele>1</ele>")), "track point 1 has two heights"),
        (track(steady(10.0, range(3), inside="<ele>1,5</ele>")), "track point 1, ele: no number, '1,5'"),
        (track(steady(10.0, range(3), inside="<ele>12000</ele>")), "height 1 is 12000 m"),
        (track(steady(10.0, range(3), inside="<speed>-1</speed>")), "speed 1 is -3.6 km/h"),
        (track(steady(10.0, range(3), inside="<ele><b>1</b></ele>")), "track point 1, ele: holds 'b'"),
        (track(steady(10.0, range(3), inside="<ele>" + "1" * 1000 + "</ele>")), "longer than 100 characters"),
        (track(THREE).replace("invented", "<a>" * 100 + "</a>" * 100), "more than 64 deep"),
        (track(THREE).replace('"1.0"?', '"1.0" encoding="klingon"?').encode(), "encoding"),
        (b"\xff\xfe\x00", "cannot be read"),
        (track(THREE).replace("invented", "\ud800"), "cannot be read"),
        (track(point((0.0, 0.0), moment(0)) + point((80.0, 170.0), moment(1))), "speed 1 is"),  # round half the world
    ],
)  # fmt: skip
def test_what_is_wrong_is_named(text: str | bytes, words: str, monkeypatch: pytest.MonkeyPatch) -> None:
    def fetched(*_: object, **__: object) -> None:
        raise AssertionError("a reader fetches nothing")

    monkeypatch.setattr(socket, "socket", fetched)
    with pytest.raises(ls.Error) as error:
        gpx.read_gpx(text)
    assert words in str(error.value)


def test_a_document_that_is_too_long_is_not_read() -> None:
    text = track(THREE)
    assert gpx.read_gpx(text, max_bytes=len(text)).samples == 3

    class Endless(io.RawIOBase):
        asked = 0

        def read(self, size: int = -1) -> bytes:
            self.asked += size
            assert size >= 0 and self.asked <= 4000, "more than was allowed is asked for"
            return b"<" * min(size, 100)

    for source in (text, text.encode(), io.StringIO(text), io.BytesIO(text.encode()), Endless()):
        with pytest.raises(ls.RangeError, match="longer than max_bytes; expected up to 50 bytes"):
            gpx.read_gpx(source, max_bytes=50)  # type: ignore[arg-type]
    for most, kind in ((0, ls.RangeError), (-1, ls.RangeError), (1.5, TypeError), (True, TypeError)):
        with pytest.raises(kind, match="max_bytes"):
            gpx.read_gpx(text, max_bytes=most)  # type: ignore[arg-type]
    with pytest.raises(TypeError, match="source: expected text"):
        gpx.read_gpx(3)  # type: ignore[arg-type]
    with pytest.raises(ls.Error, match="gap"):
        gpx.read_gpx(text, gap="0 s")


@settings(max_examples=300)
@given(
    cuts=st.lists(
        st.tuples(
            st.integers(0, 2000),
            st.sampled_from(
                ["", "<", ">", "&", '"', "\x00", "<trkpt>", "<trkseg>", "</trkpt>", "<time>", "nan", "-", "9"]
            ),
        ),
        min_size=1,
        max_size=3,
    )
)
def test_whatever_comes_is_a_log_or_an_error_of_words(cuts: list[tuple[int, str]]) -> None:
    text = track(steady(10.0, range(4), inside="<ele>3</ele><speed>2</speed>"))
    for place, sign in cuts:
        at = place % len(text)
        text = text[:at] + sign + text[at + 1 :]
    try:
        assert gpx.read_gpx(text).samples >= 2
    except ls.Error as error:
        assert str(error)


def test_without_defusedxml_nothing_is_parsed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "defusedxml.ElementTree", None)
    with pytest.raises(ImportError, match=r"pip install 'layshaft\[gpx\]'"):
        gpx.read_gpx(track(THREE))


def test_the_docstring_is_true() -> None:
    assert doctest.testmod(gpx).attempted == 3 and doctest.testmod(gpx).failed == 0

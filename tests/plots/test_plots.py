# SPDX-License-Identifier: MIT
"""The pictures, by their artists' data: held against plane geometry, units of pint's and counting by hand."""

from __future__ import annotations

import doctest
import importlib
import itertools
import math
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import layshaft as ls
import matplotlib as mpl

mpl.use("Agg")  # before pyplot: no window is wanted

import matplotlib.pyplot as plt
import pint
import pytest
import shapely
from layshaft import plots, studies
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.colors import to_rgb
from matplotlib.figure import Figure
from matplotlib.text import Text

ROOT = Path(__file__).resolve().parents[2]
U = pint.UnitRegistry()
MACHINES = {
    path.stem: ls.Machine.from_json(path.read_text(encoding="utf-8"))
    for path in sorted((ROOT / "examples/machines").glob("*.json"))
}
TRAIL = MACHINES["trail_bike"]
BOX = ls.Gearbox(primary=ls.GearPair(20, 60), gears=[3.0, 2.0, 1.5], idle="1000 rpm", rev_limit="9000 rpm")
# What can be worked out by hand: no losses, a straight curve, a wheel of two metres round.
PLAIN = ls.Machine(
    name="Plain bike", gearbox=BOX, adjuster=ls.Adjuster("600 mm", "640 mm", slack="30 mm"), chain="520",
    speedometer="front wheel", stock=ls.Setup(front=15, rear=45, circumference="2 m"), drive_efficiency=1.0,
    engine=ls.EngineCurve(["2000 rpm", "9000 rpm"], ["20 Nm", "24 Nm"]),
    road_load=ls.RoadLoad(quadratic="0.4 kg/m", mass="200 kg"),
)  # fmt: skip
SPACE, GOALS = ls.question_from_json((ROOT / "examples/questions/trail_bike.json").read_text(encoding="utf-8"))
CHOICE = ls.choose(TRAIL, SPACE, GOALS, progress=False)
LOOKED = studies.look_at_all(TRAIL, SPACE, GOALS, CHOICE)


def on(machine: ls.Machine, front: int = 0, rear: int = 0) -> ls.Setup:
    """The stock set-up with other sprockets."""
    stock = machine.stock
    return ls.Setup(
        front=front or stock.front, rear=rear or stock.rear, tyre=stock.tyre, circumference=stock.circumference,
        front_tyre=stock.front_tyre, chain_made=stock.chain_made,
    )  # fmt: skip


def loop_of(machine: ls.Machine, **more: Any) -> dict[str, Any]:
    loop = ls.ChainLoop(machine.chain, machine.stock.front, machine.stock.rear)
    links = ls.appraise(machine, machine.stock).chain.links
    between = (machine.adjuster.centre_min + machine.adjuster.centre_max) * 0.5
    return plots.chain_loop(loop, between, adjuster=machine.adjuster, links=links, **more)


def grown(machine: ls.Machine) -> list[ls.StretchMeasurement]:
    new = 40 * machine.chain.pitch
    return [ls.StretchMeasurement(km * ls.km, new * (1 + km * 7e-7), 40) for km in (1000, 4000, 7000, 9000)]


PICTURES: dict[str, Callable[..., dict[str, Any]]] = {
    "chain_loop": loop_of,
    "drivetrain": lambda m, **more: plots.drivetrain(m, gear=2, engine_speed=0.7 * m.gearbox.rev_limit, **more),
    "thrust_diagram": lambda m, **more: plots.thrust_diagram(m, m.stock, on(m, rear=m.stock.rear + 2), **more),
    "gear_ranges": lambda m, **more: plots.gear_ranges(m, m.stock, on(m, rear=m.stock.rear + 2), cruise="14 km/h", **more),
    "speed_over_engine_speed": lambda m, **more: plots.speed_over_engine_speed(m, **more),
    "slack_over_travel": lambda m, **more: plots.slack_over_travel(m, m.stock, on(m, rear=m.stock.rear + 2), **more),
    "stretch": lambda m, **more: plots.stretch(
        ls.wear_outlook(m, m.stock), ls.fit_stretch(m.chain.pitch, grown(m)), measurements=grown(m), pitch=m.chain.pitch, **more
    ),
    "wear_weights": lambda m, **more: plots.wear_weights(ls.compare(m, m.stock, on(m, front=m.stock.front - 1)), **more),
    "contact_map": lambda m, **more: plots.contact_map(m.stock.front, 110, **more),
    "circumference_over_wear": lambda m, **more: plots.circumference_over_wear(
        "120/90-18", ls.Tread(new_depth="10 mm", depth="6 mm", least="1 mm"), against=ls.appraise(m, m.stock).circumference, **more
    ),
    "space": lambda m, **more: plots.space(TRAIL, SPACE, GOALS, CHOICE, looked=LOOKED, **more),
    "trade_off": lambda m, **more: plots.trade_off(CHOICE, GOALS, present=SPACE.present, **more),
}  # fmt: skip


@pytest.fixture(autouse=True)
def _no_figure_is_left_open() -> Iterator[None]:
    yield
    plt.close("all")


def artists(drawn: Any) -> Iterator[Artist]:
    """All artists of what a picture returns, however they lie in lists and dicts."""
    if isinstance(drawn, Artist):
        yield drawn
    elif isinstance(drawn, dict):
        for one in drawn.values():
            yield from artists(one)
    elif isinstance(drawn, (list, tuple)):
        for one in drawn:
            yield from artists(one)


def texts(drawn: list[Text]) -> list[str]:
    return [one.get_text() for one in drawn]


def points(line: Any) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in zip(*line.get_data(), strict=True)]


# --- What holds for every picture --------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", PICTURES)
def test_a_picture_draws_only_into_the_axes_it_is_given_and_touches_nothing_global(name: str) -> None:
    figure = Figure(figsize=(6.4, 5), layout="constrained")
    mine, other = figure.subplots(1, 2)
    plt.figure()
    before = (dict(mpl.rcParams), plt.get_fignums(), mpl.get_backend(), len(other.get_children()))
    drawn = PICTURES[name](TRAIL, ax=mine)
    assert (dict(mpl.rcParams), plt.get_fignums(), mpl.get_backend(), len(other.get_children())) == before
    assert len(figure.axes) == 2
    found = list(artists(drawn))
    assert len(found) > 3 and all(one.axes is mine or one.axes in mine.child_axes for one in found)


@pytest.mark.parametrize("name", PICTURES)
def test_without_axes_a_picture_makes_one_figure_of_its_own_with_no_pale_words(name: str) -> None:
    before = dict(mpl.rcParams)
    drawn = PICTURES[name](TRAIL)
    assert len(plt.get_fignums()) == 1 and dict(mpl.rcParams) == before
    figure = drawn["title"].figure
    assert figure is plt.gcf() and type(figure.get_layout_engine()).__name__ == "ConstrainedLayoutEngine"
    for text in figure.findobj(Text):
        assert text.get_color() != plots.COLOURS["grey"], text.get_text()


@pytest.mark.parametrize("name", PICTURES)
def test_units_that_are_not_known_are_refused(name: str) -> None:
    with pytest.raises(ls.RangeError, match="units is 'imperial'; expected 'metric' or 'us'"):
        PICTURES[name](TRAIL, units="imperial")
    assert plt.get_fignums() == []  # refused before anything is drawn


WORDY = ("chain_loop", "drivetrain", "stretch", "wear_weights", "circumference_over_wear")


@pytest.mark.parametrize(("name", "machine"), [*itertools.product(WORDY, MACHINES), ("trade_off", "trail_bike")])
def test_no_words_lie_over_others_or_beyond_the_figure(name: str, machine: str) -> None:
    for units in ("metric", "us") if machine == "trail_bike" else ("metric",):
        figure = PICTURES[name](MACHINES[machine], units=units)["title"].figure
        figure.canvas.draw()
        said = [
            one for one in figure.findobj(Text) if one.get_text().strip() and one.get_visible() and one.get_figure()
        ]
        boxes = [(one.get_text(), one.get_window_extent()) for one in said if not _hidden(one)]
        inside = figure.bbox.padded(1)
        for text, box in boxes:
            assert inside.contains(box.x0, box.y0) and inside.contains(box.x1, box.y1), text
        for (text, box), (other, its) in itertools.combinations(boxes, 2):
            assert not box.shrunk(0.98, 0.9).overlaps(its.shrunk(0.98, 0.9)), (text, other)


def _hidden(text: Text) -> bool:
    """The ticks and labels of axes that are switched off, and ticks beyond an axis, are in the figure but not shown."""
    axes = text.axes
    if axes is None:
        return True
    ticks = [one for axis in (axes.xaxis, axes.yaxis) for one in axis.get_ticklabels(which="both")]
    own = [*ticks, axes.xaxis.label, axes.yaxis.label]
    if not axes.axison and text in own:
        return True
    at = text.get_window_extent().get_points().mean(axis=0)
    return text in ticks and not axes.bbox.padded(40).contains(*at)


def test_matplotlib_is_loaded_only_when_a_picture_is_asked_for() -> None:
    asks = "import sys, layshaft; assert 'matplotlib' not in sys.modules; layshaft.plots.chain_loop; assert 'matplotlib.pyplot' not in sys.modules"
    subprocess.run([sys.executable, "-c", asks], check=True)


def test_without_matplotlib_it_says_what_to_install() -> None:
    asks = "import sys; sys.modules['matplotlib'] = None\nimport layshaft\ntry: layshaft.plots\nexcept ImportError as e: print(e)"
    said = subprocess.run([sys.executable, "-c", asks], check=True, capture_output=True, text=True).stdout
    assert said == "layshaft.plots needs matplotlib 3.8: pip install 'layshaft[plots]'\n"


@pytest.mark.parametrize(
    "module",
    ["plots", "studies", *(f"_plots.{one}" for one in ("choice", "flow", "loop", "road", "slack", "strip", "wear"))],
)
def test_the_docstrings_examples_hold(module: str) -> None:
    failed, tried = doctest.testmod(importlib.import_module(f"layshaft.{module}"))
    assert failed == 0 and tried > 1


def test_every_picture_is_documented_with_arguments_errors_and_an_example() -> None:
    for name in set(plots.__all__) - {"COLOURS"}:
        said = getattr(plots, name).__doc__
        assert all(part in said for part in ("Args:", "Returns:", "Raises:", "Example:", ">>> ")), name
    assert set(PICTURES) == set(plots.__all__) - {"COLOURS", "what_if"}


# --- Colours -----------------------------------------------------------------------------------------------------------

# G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, A Physiologically-based Model for Simulation of Color Vision
# Deficiency, IEEE Transactions on Visualization and Computer Graphics 15(6), 2009: severity 1.0, for linear RGB.
EYES = {
    "all three cones": ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "protanopia": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
    "deuteranopia": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    "tritanopia": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.303900)),
}


def linear(colour: str) -> list[float]:
    """Linear RGB of sRGB (IEC 61966-2-1)."""
    return [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in to_rgb(colour)]


def luminance(rgb: list[float]) -> float:
    return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2]


def contrast(colour: str, other: str = "#ffffff") -> float:
    """By WCAG 2.1."""
    lighter, darker = sorted((luminance(linear(colour)), luminance(linear(other))), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def lab(rgb: list[float]) -> tuple[float, float, float]:
    """CIE 1976 L*a*b* under D65."""
    rgb = [min(1.0, max(0.0, one)) for one in rgb]
    rows = ((0.4124564, 0.3575761, 0.1804375), (0.2126729, 0.7151522, 0.0721750), (0.0193339, 0.1191920, 0.9503041))
    xyz = [
        sum(m * one for m, one in zip(row, rgb, strict=True)) / white
        for row, white in zip(rows, (0.95047, 1.0, 1.08883), strict=True)
    ]
    f = [t ** (1 / 3) if t > (6 / 29) ** 3 else t / (3 * (6 / 29) ** 2) + 4 / 29 for t in xyz]
    return 116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])


def seen(colour: str, eyes: str) -> tuple[float, float, float]:
    rgb = linear(colour)
    return lab([sum(m * one for m, one in zip(row, rgb, strict=True)) for row in EYES[eyes]])


def test_colours_are_dark_enough_for_lines_and_all_but_grey_for_text() -> None:
    for name, colour in plots.COLOURS.items():
        assert contrast(colour) >= (3.0 if name == "grey" else 4.5), name
    assert contrast("#000000") == pytest.approx(21)


@pytest.mark.parametrize("eyes", EYES)
def test_the_colours_of_set_ups_are_told_apart(eyes: str) -> None:
    series = [plots.COLOURS[name] for name in ("grey", "rust", "plum", "blue")]
    for one, other in itertools.combinations(series, 2):
        assert math.dist(seen(one, eyes), seen(other, eyes)) > 20, (one, other)  # 2.3 is a just noticeable difference


def test_set_ups_differ_in_more_than_colour() -> None:
    four = [on(TRAIL, rear=rear) for rear in (46, 48, 50, 52)]
    lines = [lines[0] for lines in plots.thrust_diagram(TRAIL, *four)["thrusts"]]
    assert len({(one.get_linestyle(), str(one._dash_pattern), one.get_linewidth()) for one in lines}) == 4
    bars = [bars[0] for bars in plots.gear_ranges(TRAIL, *four)["bars"]]
    assert len({bar.get_y() for bar in bars}) == 4  # each in its place, in the order of the legend


# --- The loop ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("front", "rear", "centre", "pitch", "chain"), [(13, 50, 615.0, 15.875, "520"), (38, 19, 460.0, 12.7, "cycle"), (16, 16, 300.0, 12.7, "420")])  # fmt: skip
@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_loop_is_the_hull_of_two_pitch_circles(
    front: int, rear: int, centre: float, pitch: float, chain: str, units: str
) -> None:
    drawn = plots.chain_loop(ls.ChainLoop(chain, front, rear), centre * ls.mm, units=units)
    scale = 1.0 if units == "metric" else 25.4
    circles = [
        shapely.Point(x / scale, 0).buffer(pitch / 2 / math.sin(math.pi / teeth) / scale, quad_segs=4000)
        for x, teeth in ((0, front), (-centre, rear))
    ]
    hull = shapely.union_all(circles).convex_hull.exterior
    for line in (*drawn["runs"], *drawn["wraps"]):
        assert max(hull.distance(shapely.Point(point)) for point in points(line)) < 1e-4 * pitch
    length = sum(shapely.LineString(points(line)).length for line in (*drawn["runs"], *drawn["wraps"]))
    assert length == pytest.approx(hull.length, rel=1e-4)
    for circle, line in zip(circles, drawn["pitch circles"], strict=True):
        assert shapely.Polygon(points(line)).area == pytest.approx(circle.area, rel=1e-3)
    turns = [
        math.degrees(2 * math.acos(d / 2 / centre)) for d in (_step(front, rear, pitch), _step(rear, front, pitch))
    ]
    for text, turn in zip(drawn["wrap labels"], turns, strict=True):
        assert f"wraps {turn:.0f}°" in text.get_text()


def _step(own: int, other: int, pitch: float) -> float:
    """By how much the other sprocket's pitch diameter is larger."""
    return pitch / math.sin(math.pi / other) - pitch / math.sin(math.pi / own)


def test_rollers_lie_a_pitch_apart_and_the_join_is_what_is_missing() -> None:
    front, rear, centre, pitch = 13, 50, 615.0, 15.875
    slope = math.asin(_step(front, rear, pitch) / 2 / centre)
    taut = 2 * centre * math.cos(slope) / pitch + front * (0.5 - slope / math.pi) + rear * (0.5 + slope / math.pi)
    loop = ls.ChainLoop("520", front, rear)
    for links in (108, 110, 112, None):
        drawn = plots.chain_loop(loop, "615 mm", links=links)
        count = math.floor(taut) if links is None else links
        rollers = [tuple(map(float, one)) for one in drawn["rollers"].get_offsets()]
        assert len(rollers) == count
        steps = [math.dist(one, other) for one, other in itertools.pairwise(rollers)]
        # A pitch on a run, and as a chord on a sprocket; a little off only where a run meets a sprocket.
        off = [step / pitch - 1 for step in steps if abs(step / pitch - 1) > 1e-9]
        assert len(off) <= 4 and max(map(abs, off)) < 0.01
        assert len(drawn["outer links"].get_paths()) == count // 2
        for path, pins in zip(
            drawn["outer links"].get_paths(), zip(rollers[1::2], rollers[2::2], strict=False), strict=False
        ):
            middle = path.vertices[:4].mean(axis=0)
            assert math.dist(middle, [sum(one) / 2 for one in zip(*pins, strict=True)]) < 1e-6  # every second one
        join = shapely.LineString(points(drawn["join"])).length / pitch
        assert join == pytest.approx(abs(count - taut), rel=1e-6)
        note = drawn["note"].get_text()
        assert f"{taut:.2f} links taut" in note
        many = "too many" if count > taut else "too few"
        assert (
            f"{taut - count:.2f} of a link is left over"
            if links is None
            else f"{links}: {abs(links - taut):.2f} {many}"
        ) in note


def test_a_loop_that_closes_has_no_join() -> None:
    loop = ls.ChainLoop("520", 13, 50)
    drawn = plots.chain_loop(loop, loop.centre(110), links=110)
    assert drawn["join"] is None and "110 close just so" in drawn["note"].get_text()
    assert plots.chain_loop(loop, loop.centre(110))["join"] is None


def test_the_adjuster_is_where_the_axle_may_stand() -> None:
    adjuster = ls.Adjuster("612 mm", "648 mm")
    loop = ls.ChainLoop("520", 13, 50)
    drawn = plots.chain_loop(loop, "615 mm", adjuster=adjuster)
    assert [x for x, _ in points(drawn["adjuster"])] == pytest.approx([-612, -648])
    assert drawn["room"].get_text() == "room: 3.0 mm forward,\n33.0 mm to the rear"
    assert "not reach" in plots.chain_loop(loop, "611 mm", adjuster=adjuster)["room"].get_text()
    assert plots.chain_loop(loop, "611 mm")["room"] is None
    us = plots.chain_loop(loop, "615 mm", adjuster=adjuster, links=110, units="us")["room"].get_text()
    assert "room: 0.12 in forward" in us and "110 links taut: axle at 24.25 in" in us


@pytest.mark.parametrize(
    ("call", "error", "words"),
    [
        (lambda loop: plots.chain_loop("520", "615 mm"), TypeError, "loop: expected a ChainLoop"),
        (lambda loop: plots.chain_loop(loop, 615), TypeError, "Length"),
        (lambda loop: plots.chain_loop(loop, "15 mm"), ls.RangeError, "centre distance is 15 mm"),
        (lambda loop: plots.chain_loop(loop, "615 mm", links=110.5), TypeError, "links: expected a whole number"),
        (lambda loop: plots.chain_loop(loop, "615 mm", links=True), TypeError, "links: expected a whole number"),
        (lambda loop: plots.chain_loop(loop, "615 mm", links=20), ls.RangeError, "20"),
        (lambda loop: plots.chain_loop(loop, "615 mm", adjuster="36 mm"), TypeError, "adjuster: expected an Adjuster"),
    ],
)  # fmt: skip
def test_the_loop_refuses_what_is_none(call: Callable[[ls.ChainLoop], Any], error: type[Exception], words: str) -> None:
    with pytest.raises(error, match=words):
        call(ls.ChainLoop("520", 13, 50))
    assert plt.get_fignums() == []


# --- The flow ----------------------------------------------------------------------------------------------------------


def heights(bands: list[Any]) -> list[float]:
    found = []
    for band in bands:
        y = [float(y) for _, y in band.get_xy()]
        found.append(max(y) - min(y))
    return found


def test_without_losses_torque_times_speed_stays() -> None:
    drawn = plots.drivetrain(PLAIN, gear=1, engine_speed="6300 rpm")
    torque, speed = heights(drawn["torque bands"]), heights(drawn["speed bands"])
    assert max(torque) == pytest.approx(max(speed)) == pytest.approx(1.0)
    assert [t * s / (torque[0] * speed[0]) for t, s in zip(torque, speed, strict=True)] == pytest.approx([1.0] * 4)
    assert [t / torque[0] for t in torque] == pytest.approx([1, 3, 9, 27])
    assert len(set(texts(drawn["powers"]))) == 1


def test_the_flows_numbers_are_those_of_pint() -> None:
    for units in ("metric", "us"):
        drawn = plots.drivetrain(PLAIN, gear=2, engine_speed="6300 rpm", torque="22 Nm", units=units)
        engine = 6300 * U.rpm
        speeds = [engine / over for over in (1, 3, 6, 18)]
        assert texts(drawn["speeds"]) == [f"{one.m_as('rpm'):.0f} rpm" for one in speeds]
        torque = "N m" if units == "metric" else "lbf foot"
        assert [float(text.split()[0]) for text in texts(drawn["torques"])] == pytest.approx(
            [(22 * U.newton * U.meter * over).m_as(torque) for over in (1, 3, 6, 18)], abs=0.051
        )
        power = (22 * U.newton * U.meter * engine).m_as("kilowatt" if units == "metric" else "horsepower")
        assert {text.split()[0] for text in texts(drawn["powers"])} == {f"{power:.1f}"}
        thrust = (22 * U.newton * U.meter * 18 * 2 * math.pi / (2 * U.meter)).m_as(
            "newton" if units == "metric" else "lbf"
        )
        speed = (6300 / 18 / U.minute * 2 * U.meter).m_as("km/hour" if units == "metric" else "mile/hour")
        road = [float(text.split()[0]) for text in texts(drawn["road"])]
        assert road == pytest.approx([speed, thrust], abs=0.51)
        assert [text.split("× ")[1] for text in texts(drawn["ratios"])] == ["3", "2", "3"]
        assert "60:20" in texts(drawn["ratios"])[0] and "45:15" in texts(drawn["ratios"])[2]


@pytest.mark.parametrize("machine", MACHINES)
def test_what_the_flow_loses_is_what_the_thrust_loses(machine: str) -> None:
    own = MACHINES[machine]
    at = 0.7 * own.gearbox.rev_limit
    drawn = plots.drivetrain(own, gear=1, engine_speed=at)
    powers = [t * s for t, s in zip(heights(drawn["torque bands"]), heights(drawn["speed bands"]), strict=True)]
    speed = ls.appraise(own, own.stock).speed_at(at, 1).nominal
    curve = own.engine.curve
    thrust = ls.thrust(own, own.stock, 1, speed).nominal
    arrives = thrust * speed / (getattr(curve, "nominal", curve).torque(at) * at)
    assert powers[-1] / powers[0] == pytest.approx(arrives, rel=1e-9)
    lost = [1 - float(text.strip("−% ")) / 100 for text in texts(drawn["losses"])]
    assert math.prod(lost) == pytest.approx(arrives, abs=0.001)
    assert drawn["boxes"][0].get_text() == ("crank" if own.kind == "cycle" else "engine")
    # The curve's own torque, given, loses as much.
    given = plots.drivetrain(own, gear=1, engine_speed=at, torque=getattr(curve, "nominal", curve).torque(at))
    assert heights(given["torque bands"]) == pytest.approx(heights(drawn["torque bands"]), rel=1e-9)


def test_without_an_engine_only_speeds_flow() -> None:
    bare = ls.Machine(name="Bare", gearbox=BOX, adjuster=PLAIN.adjuster, chain="520", speedometer="front wheel", stock=PLAIN.stock)  # fmt: skip
    drawn = plots.drivetrain(bare, gear=1, engine_speed="6300 rpm")
    assert drawn["torque bands"] == drawn["powers"] == drawn["losses"] == [] and len(drawn["road"]) == 1
    assert [one / heights(drawn["speed bands"])[-1] for one in heights(drawn["speed bands"])] == pytest.approx(
        [27, 9, 3, 1]
    )
    with_torque = plots.drivetrain(bare, gear=1, engine_speed="6300 rpm", torque="20 Nm")
    assert len(with_torque["torques"]) == 4 and len(with_torque["losses"]) == 2  # what the library takes for losses


@pytest.mark.parametrize(
    ("arguments", "error", "words"),
    [
        ({"gear": 4, "engine_speed": "6000 rpm"}, ls.RangeError, "gear is 4; expected 1 to 3"),
        ({"gear": 0, "engine_speed": "6000 rpm"}, ls.RangeError, "gear"),
        ({"gear": 1, "engine_speed": 6000}, TypeError, "AngularSpeed"),
        ({"gear": 1, "engine_speed": "0 rpm"}, ls.RangeError, "engine"),
        ({"gear": 1, "engine_speed": "9900 rpm"}, ls.RangeError, "9000"),
        ({"gear": 1, "engine_speed": "9900 rpm", "torque": "20 Nm"}, ls.RangeError, "9000|speed in gear"),
        ({"gear": 1, "engine_speed": "6000 rpm", "torque": "0 Nm"}, ls.RangeError, "torque is 0.0 Nm; expected more than 0"),
        ({"gear": 1, "engine_speed": "6000 rpm", "setup": "15/45"}, TypeError, "setup: expected a Setup"),
    ],
)  # fmt: skip
def test_the_flow_refuses_what_is_none(arguments: dict[str, Any], error: type[Exception], words: str) -> None:
    with pytest.raises(error, match=words):
        plots.drivetrain(PLAIN, **arguments)
    assert plt.get_fignums() == []


# --- Four small pictures -----------------------------------------------------------------------------------------------


def draw_square(value: float, ax: Axes) -> list[Any]:
    return ax.plot([0, value], [value, value**2], label="square")


def test_four_values_share_their_limits() -> None:
    drawn = plots.what_if(draw_square, [1, 2, 3, 4], label=lambda value: f"up to {value}")
    assert texts(drawn["titles"]) == ["up to 1", "up to 2", "up to 3", "up to 4"]
    assert len({ax.get_xlim() for ax in drawn["axes"]}) == len({ax.get_ylim() for ax in drawn["axes"]}) == 1
    assert drawn["axes"][0].get_ylim()[1] > 16
    assert [float(lines[0].get_xdata()[1]) for lines in drawn["drawn"]] == [1, 2, 3, 4]
    apart = plots.what_if(draw_square, [1, 2, 3, 4], share=False)
    assert texts(apart["titles"]) == ["1", "2", "3", "4"]
    assert len({ax.get_ylim() for ax in apart["axes"]}) == 4


def test_four_small_pictures_keep_to_the_axes_they_are_given() -> None:
    own = Figure().subplots(1, 4)
    drawn = plots.what_if(draw_square, [1, 2, 3, 4], axes=own)
    assert drawn["axes"] == list(own) and plt.get_fignums() == []
    turned = plots.what_if(lambda value, ax: (ax.plot([0, value], [0, 1]), ax.invert_xaxis()), [1, 2, 3, 4])
    assert all(ax.xaxis_inverted() for ax in turned["axes"])


def test_a_legend_that_all_share_is_said_once() -> None:
    def draw(value: float, ax: Axes) -> None:
        draw_square(value, ax)
        ax.set_xlabel("value")
        ax.legend()

    axes = plots.what_if(draw, [1, 2, 3, 4])["axes"]
    assert [ax.get_legend() is not None for ax in axes] == [True, False, False, False]
    assert [ax.get_xlabel() for ax in axes] == ["", "", "value", "value"]


def test_four_are_asked_for() -> None:
    for values in ([], [1, 2, 3], range(5)):
        with pytest.raises(ls.RangeError, match=f"values are {len(values)}; expected exactly four"):
            plots.what_if(draw_square, values)
    with pytest.raises(ls.RangeError, match="axes are 2; expected exactly four"):
        plots.what_if(draw_square, [1, 2, 3, 4], axes=Figure().subplots(1, 2))
    with pytest.raises(TypeError, match="draw: expected a function"):
        plots.what_if([1, 2, 3, 4], draw_square)  # type: ignore[arg-type]
    assert plt.get_fignums() == []


# --- The road ----------------------------------------------------------------------------------------------------------


def test_thrust_and_speed_of_each_gear_are_those_of_pint() -> None:
    road = ls.RoadLoad(quadratic="0.4 kg/m", mass="300 kg")
    drawn = plots.thrust_diagram(PLAIN, road=road, slopes=[0.0, 0.1, 2.0])
    for line, gear in zip(drawn["thrusts"][0], (3.0, 2.0, 1.5), strict=True):
        over = 3 * gear * 3
        for speed, thrust in points(line):
            revs = (speed * U.km / U.hour / (2 * U.meter)).m_as("1/minute") * over
            torque = 20 + (revs - 2000) / 7000 * 4
            assert thrust == pytest.approx(torque * over * math.pi, rel=1e-9)
        assert points(line)[-1][0] == pytest.approx(9000 / over * 2 * 60 / 1000)
    for line, slope in zip(drawn["resistances"], (0.0, 0.1, 2.0), strict=True):
        for speed, force in points(line):
            steep = math.sin(math.atan(slope))
            assert force == pytest.approx(0.4 * (speed / 3.6) ** 2 + 300 * 9.80665 * steep, abs=1e-6)
    assert texts(drawn["slopes"]) == ["level", "10 % uphill"]
    assert drawn["beyond"].get_text() == "beyond:\n200 % uphill" and texts(drawn["gears"]) == ["1", "2", "3"]


def test_lines_of_thrust_and_resistance_cross_at_the_top_speed() -> None:
    own = MACHINES["cargo_cycle"]
    top = ls.top_speed(own, own.stock, own.road_load, 0.02)
    drawn = plots.thrust_diagram(own, slopes=[0.02])
    thrust = shapely.LineString(points(drawn["thrusts"][0][top.gear - 1]))
    where = thrust.intersection(shapely.LineString(points(drawn["resistances"][0])))
    assert where.x == pytest.approx(top.speed.nominal / ls.kmh, rel=2e-3)


def test_us_units_scale_every_line() -> None:
    metric, us = (plots.thrust_diagram(TRAIL, slopes=[0.1], units=units) for units in ("metric", "us"))
    for one, other in zip(
        (*metric["thrusts"][0], *metric["resistances"]), (*us["thrusts"][0], *us["resistances"]), strict=True
    ):
        for (v, f), (mph, lbf) in zip(points(one), points(other), strict=True):
            assert (mph, lbf) == pytest.approx((v / 1.609344, f / 4.4482216152605), rel=1e-9)
    assert us["limit"].get_ydata()[0] == pytest.approx(metric["limit"].get_ydata()[0] / 4.4482216152605)
    labels = (us["title"].axes.get_xlabel(), us["title"].axes.get_ylabel())
    assert labels == ("road speed, mph", "at the ground, lbf")


def test_the_front_wheel_lifts_where_the_weight_tips() -> None:
    """The thrust whose moment about the rear contact is that of the weight; the trail bike's centre in its file."""
    limit = plots.thrust_diagram(TRAIL)["limit"].get_ydata()[0]
    assert limit == pytest.approx(229 * 9.80665 * 665 / 880, rel=1e-9)
    assert plots.thrust_diagram(PLAIN)["limit"] is None


def test_what_a_picture_of_the_road_refuses() -> None:
    bare = ls.Machine(name="Bare", gearbox=BOX, adjuster=PLAIN.adjuster, chain="520", speedometer="front wheel", stock=PLAIN.stock)  # fmt: skip
    with pytest.raises(ls.Error, match="Bare states no road load"):
        plots.thrust_diagram(bare)
    with pytest.raises(ls.Error, match="engine"):
        plots.thrust_diagram(bare, road=PLAIN.road_load)
    with pytest.raises(ls.RangeError, match="set-ups are 5; expected at most 4"):
        plots.gear_ranges(PLAIN, *[PLAIN.stock] * 5)
    with pytest.raises(ls.RangeError, match="labels is 'one'; expected one for each of 1"):
        plots.gear_ranges(PLAIN, PLAIN.stock, labels="one")
    with pytest.raises(ls.RangeError, match="expected one for each of 2"):
        plots.thrust_diagram(PLAIN, PLAIN.stock, PLAIN.stock, labels=["one"])
    with pytest.raises(TypeError, match="set-up 2: expected a Setup"):
        plots.slack_over_travel(PLAIN, PLAIN.stock, "15/45")  # type: ignore[arg-type]
    with pytest.raises(TypeError, match="machine: expected a Machine"):
        plots.speed_over_engine_speed(PLAIN.stock)  # type: ignore[arg-type]
    with pytest.raises(ls.RangeError, match="slopes are 7; expected at most 6"):
        plots.thrust_diagram(PLAIN, slopes=[0.01 * i for i in range(7)])
    with pytest.raises(ls.Error, match="states no suspension"):
        plots.slack_over_travel(PLAIN)
    assert plt.get_fignums() == []


def test_gears_cover_what_pint_says() -> None:
    lowest = BOX.lowest_pull / ls.rpm
    for units, unit in (("metric", "km/hour"), ("us", "mile/hour")):
        drawn = plots.gear_ranges(PLAIN, PLAIN.stock, on(PLAIN, rear=50), cruise="60 km/h", units=units)
        for bars, rear in zip(drawn["bars"], (45, 50), strict=True):
            for bar, gear in zip(bars, (3.0, 2.0, 1.5), strict=True):
                ends = [(n / U.minute / (3 * gear * rear / 15) * 2 * U.meter).m_as(unit) for n in (lowest, 9000)]
                assert [bar.get_x(), bar.get_x() + bar.get_width()] == pytest.approx(ends, rel=1e-9)
        assert drawn["cruise"].get_xdata()[0] == pytest.approx((60 * U.km / U.hour).m_as(unit))
        assert [text.get_text() for text in drawn["legend"].get_texts()] == ["as made, 15/45", "15/50"]


def test_the_tyres_band_is_at_the_top_of_each_gear() -> None:
    drawn = plots.gear_ranges(TRAIL)
    band = ls.rolling_circumference(TRAIL.stock.tyre)
    for bar, line in zip(drawn["bars"][0], drawn["tyre"][0], strict=True):
        top = bar.get_x() + bar.get_width()
        (low, y), (high, _) = points(line)
        assert (low / top, high / top) == pytest.approx((band.low / band.nominal, band.high / band.nominal))
        assert bar.get_y() < y < bar.get_y() + bar.get_height()


def test_shifting_up_drops_engine_speed_by_the_ratio_of_two_gears() -> None:
    drawn = plots.speed_over_engine_speed(PLAIN)
    for line, gear in zip(drawn["lines"], (3.0, 2.0, 1.5), strict=True):
        for revs, speed in points(line):
            assert speed == pytest.approx((revs / U.minute / (9 * gear) * 2 * U.meter).m_as("km/hour"))
    assert [points(one)[1][0] for one in drawn["shifts"]] == pytest.approx([6000, 6750])
    assert all(points(one)[0][1] == points(one)[1][1] for one in drawn["shifts"])


def test_slack_is_what_was_set_where_it_was_set() -> None:
    for units, scale in (("metric", 1.0), ("us", 25.4)):
        drawn = plots.slack_over_travel(TRAIL, TRAIL.stock, on(TRAIL, rear=50), slack="40 mm", units=units)
        rest = float(drawn["rest"].get_xdata()[0])
        assert rest == 14
        for line, dot in zip(drawn["lines"], drawn["tight points"], strict=True):
            data = sorted(points(line))
            (below, at), (above, then) = (
                max(one for one in data if one[0] <= rest),
                min(one for one in data if one[0] > rest),
            )
            assert (at + (then - at) * (rest - below) / (above - below)) * scale == pytest.approx(40, abs=0.01)
            assert points(dot)[0][1] == pytest.approx(min(y for _, y in data), abs=0.01)
    kept = plots.slack_over_travel(TRAIL, TRAIL.stock, on(TRAIL, rear=50))["tight points"]
    assert points(kept[1])[0][1] == pytest.approx(points(kept[0])[0][1], abs=0.01)  # as tight as the stock parts


# --- What wears --------------------------------------------------------------------------------------------------------


def test_the_circumference_falls_by_a_turn_of_what_wears_off() -> None:
    tread = ls.Tread(new_depth="10 mm", depth="6 mm", least="1 mm")
    drawn = plots.circumference_over_wear("120/90-18", tread)
    (new, first), (worn, last) = points(drawn["line"])[0], points(drawn["line"])[-1]
    assert (new, worn) == pytest.approx((10, 1))
    assert first == pytest.approx(math.pi * 0.98 * (457 + 2 * 108), rel=1e-3)
    assert first - last == pytest.approx(2 * math.pi * 9 * 0.98, rel=1e-3)
    assert f"worn: thrust +{100 * (first / last - 1):.1f} %" in texts(drawn["ends"])
    (now, rolled) = points(drawn["now"])[0]
    assert now == pytest.approx(6) and rolled == pytest.approx(first + (last - first) * 4 / 9)
    assert drawn["against"] is None
    us = plots.circumference_over_wear("120/90-18", tread, units="us", against=ls.Length("2 m"))
    assert points(us["line"])[0] == pytest.approx((10 / 25.4, first / 25.4))
    assert us["against"].get_ydata()[0] == pytest.approx(2000 / 25.4)
    assert f"new: thrust {100 * (2000 / first - 1):.1f} %" in texts(us["ends"])


@pytest.mark.parametrize("against", [None, "120/80-18", ls.Length("2 m")])
@pytest.mark.parametrize(("tyre", "construction"), [("120/90-18", None), (ls.Length("2055 mm"), "diagonal")])
def test_words_at_a_treads_ends_lie_within_the_axes(tyre: Any, construction: Any, against: Any) -> None:
    tread = ls.Tread(new_depth="12 mm", depth="12 mm", least="1 mm")
    drawn = plots.circumference_over_wear(tyre, tread, against=against, construction=construction)
    figure = drawn["title"].figure
    figure.canvas.draw()
    frame = drawn["line"].axes.get_window_extent()
    for words in drawn["ends"]:
        box = words.get_window_extent()
        assert frame.y0 < box.y0 and box.y1 < frame.y1, words.get_text()


def test_a_circumference_needs_the_tyres_construction() -> None:
    tread = ls.Tread(new_depth="10 mm", depth="6 mm")
    with pytest.raises(ls.Error, match="construction is missing"):
        plots.circumference_over_wear(ls.Length("2 m"), tread)
    drawn = plots.circumference_over_wear(ls.Length("2 m"), tread, construction="radial")
    assert points(drawn["now"])[0] == pytest.approx((6, 2000)) and points(drawn["line"])[-1][0] == pytest.approx(
        0, abs=1e-9
    )
    with pytest.raises(TypeError, match="tread: expected a Tread"):
        plots.circumference_over_wear("120/90-18", "6 mm")  # type: ignore[arg-type]
    with pytest.raises(ls.ParseError):
        plots.circumference_over_wear("120/9O-18", tread)


def test_a_smaller_rear_sprocket_makes_the_chain_pull_more() -> None:
    comparison = ls.compare(TRAIL, on(TRAIL, 13, 52), on(TRAIL, 12, 48))
    drawn = plots.wear_weights(comparison)
    pull = dict(zip(drawn["parts"], drawn["after"], strict=True))["chain's pull"].get_width()
    assert pull == pytest.approx(math.sin(math.pi / 48) / math.sin(math.pi / 52), rel=1e-9)  # over pitch diameters
    assert {bar.get_width() for bar in drawn["before"]} == {1.0}
    change = comparison.wear.front_tooth_change
    segment = drawn["bands"].get_segments()[drawn["parts"].index("front tooth wears")]
    assert [float(x) for x, _ in segment] == pytest.approx([1 + change.low, 1 + change.high])
    with pytest.raises(ls.RangeError, match="expected two, before and after"):
        plots.wear_weights(comparison, labels=["one"])


@pytest.mark.parametrize(("teeth", "links"), [(13, 110), (12, 110), (14, 112), (15, 45 * 2), (10, 100)])
def test_the_contact_map_is_what_turning_the_sprocket_gives(teeth: int, links: int) -> None:
    drawn = plots.contact_map(teeth, links)
    met: set[tuple[int, int]] = set()
    link, tooth = 0, 0
    while (link, tooth) not in met:
        met.add((link, tooth))
        link, tooth = (link + 1) % links, (tooth + 1) % teeth
    for key, kind in (("inner links", 0), ("outer links", 1)):
        shown = {(int(x) - 1, int(y) - 1) for x, y in drawn[key].get_offsets()}
        assert shown == {(link, tooth) for link, tooth in met if link % 2 == kind}
    rows = {tooth: sum(one == tooth for _, one in met) for tooth in range(teeth)}
    assert f"Each of {teeth} teeth meets {rows[0]} of {links} links" in drawn["title"].get_text()


def test_a_contact_map_that_nobody_could_read_is_refused() -> None:
    with pytest.raises(ls.RangeError, match="expected at most 20000 to draw"):
        plots.contact_map(599, 1000)
    with pytest.raises(ls.RangeError):
        plots.contact_map(2, 110)


def test_growth_is_per_cent_over_distance_and_the_limits_words_lie_beside_it() -> None:
    outlook, measured = ls.wear_outlook(TRAIL, TRAIL.stock), grown(TRAIL)
    fit = ls.fit_stretch(TRAIL.chain.pitch, measured)
    for units, km in (("metric", 1.0), ("us", 1.609344)):
        drawn = plots.stretch(outlook, fit, measurements=measured, pitch=TRAIL.chain.pitch, units=units)
        (_, start), (far, end) = points(drawn["table"])[0], points(drawn["table"])[-1]
        assert start == 0 and end == pytest.approx(100 * outlook.stretch_per_1000_km.nominal * far * km / 1000)
        assert points(drawn["dots"]) == [pytest.approx((at / km, at * 7e-5)) for at in (1000, 4000, 7000, 9000)]
        assert points(drawn["measured"])[0][0] == pytest.approx(9000 / km)
        for at, growth in points(drawn["measured"]):  # the invented rider's chain grows evenly
            assert growth == pytest.approx(at * km * 7e-5, rel=1e-3)
        axes = drawn["title"].axes
        axes.figure.canvas.draw()
        assert drawn["limit label"].get_window_extent().x0 >= axes.bbox.x1
        assert drawn["limit"].get_ydata()[0] == pytest.approx(100 * outlook.limit.elongation)
    assert plots.stretch(outlook)["measured"] is None
    with pytest.raises(ls.Error, match="pitch"):
        plots.stretch(outlook, fit, measurements=measured)
    with pytest.raises(TypeError, match="fit: expected a StretchFit"):
        plots.stretch(outlook, measured)  # type: ignore[arg-type]


# --- What there is to choose from --------------------------------------------------------------------------------------


def test_each_cell_has_what_rules_it_out() -> None:
    drawn = plots.space(TRAIL, SPACE, GOALS, CHOICE)
    lying: dict[tuple[Any, ...], list[studies.Looked]] = {}
    for one in LOOKED:
        setup = one.setup
        lying.setdefault((setup.tyre, setup.circumference, setup.front, setup.rear, setup.links), []).append(one)
    assert set(drawn["cells"]) == set(lying)
    pale = to_rgb(next(iter(drawn["cells"].values())).get_facecolor())
    for spot, found in lying.items():
        letter = drawn["words"][spot].get_text()
        if any(not one.broken for one in found):
            assert letter == "" or letter[0].isdigit()
        else:
            fewest = min(len(one.broken) for one in found)
            assert letter in {"ABCDEFGHI"[one.broken[0]] for one in found if len(one.broken) == fewest}
            assert (
                f"\n{letter}  {studies.limit_in_words(GOALS.limits['ABCDEFGHI'.index(letter)])}"
                in drawn["key"].get_text()
            )
    ranked = [
        (one.setup.tyre, one.setup.circumference, one.setup.front, one.setup.rear, one.setup.links)
        for one in CHOICE.ranked
    ]
    assert drawn["words"][ranked[0]].get_text().startswith("1")
    assert drawn["outline"].get_xy() == drawn["cells"][ranked[0]].get_xy()
    darkest = min(drawn["cells"], key=lambda spot: luminance(linear(drawn["cells"][spot].get_facecolor())))
    assert darkest == ranked[0] and len(pale) == 3


def test_words_in_cells_are_readable_on_their_shade() -> None:
    drawn = plots.space(TRAIL, SPACE, GOALS, CHOICE, looked=LOOKED)
    for spot, text in drawn["words"].items():
        if text.get_text():
            assert contrast(text.get_color(), drawn["cells"][spot].get_facecolor()) >= 4.1, text.get_text()


def test_where_nothing_keeps_the_limits_the_nearest_is_dotted() -> None:
    goals = ls.Goals(limits=[ls.Limit("rear teeth", least=55)], wishes=GOALS.wishes)
    drawn = plots.space(TRAIL, SPACE, goals)
    assert drawn["outline"].get_linestyle() == ":" and set(texts(list(drawn["words"].values()))) == {"A"}
    with pytest.raises(ls.Error, match="nothing keeps all limits"):
        plots.trade_off(ls.choose(TRAIL, SPACE, goals, progress=False), goals)


def test_the_trade_off_shows_what_nothing_else_beats() -> None:
    drawn = plots.trade_off(CHOICE, GOALS, present=SPACE.present)
    dots = [tuple(map(float, one)) for one in drawn["dots"].get_offsets()]
    told = [one.wishes for one in CHOICE.front]
    assert dots == [pytest.approx((100 * wishes[0].nominal, wishes[1].nominal)) for wishes in told]
    assert [float(one) for one in drawn["dots"].get_array()] == pytest.approx(
        [100 * wishes[2].nominal for wishes in told]
    )
    assert tuple(map(float, drawn["ring"].get_offsets()[0])) == dots[0]
    assert [float(line.get_xdata()[0]) for line in drawn["wished"]] == pytest.approx([2.0])
    numbered = {int(rank) for text in texts(drawn["ranks"]) for rank in text.split(", ")}
    assert numbered == set(range(1, len(CHOICE.front) + 1))
    names = "\n".join(texts(drawn["names"]))
    assert f"1  {studies.short_name(CHOICE.front[0].setup, SPACE.present)}" in names
    without = plots.trade_off(CHOICE, ls.Goals(wishes=GOALS.wishes[:2]))
    assert without["bar"] is None and "13/50, 110 links" in "\n".join(texts(without["names"]))
    with pytest.raises(ls.Error, match="one wish"):
        plots.trade_off(CHOICE, ls.Goals(wishes=GOALS.wishes[:1]))


def test_what_is_looked_at_is_scored_as_the_choice_scores() -> None:
    scores = {one.setup: one.score for one in LOOKED}
    for one in CHOICE.front:
        assert scores[one.setup] == pytest.approx(one.score, abs=1e-9)
    kept = [one for one in LOOKED if not one.broken]
    assert len(kept) == CHOICE.kept and min(one.score for one in kept) == pytest.approx(CHOICE.ranked[0].score)
    with pytest.raises(ls.RangeError, match="expected 0 to 51"):
        studies.letter(52)

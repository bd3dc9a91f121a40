# SPDX-License-Identifier: MIT
"""Right and wrong calls in pairs: a type checker passes the one and refuses the other, and so does the library when
they are run. So the stubs neither refuse what works nor let pass what cannot."""

from __future__ import annotations

import importlib.util
import json
import subprocess
import sys
from pathlib import Path

import layshaft as ls
import pytest

TOP = Path(__file__).resolve().parents[2]

# What all pairs stand behind.
BEFORE = f"""
from fractions import Fraction
from pathlib import Path
from typing_extensions import assert_type
import numpy as np
import layshaft as ls

machine = ls.Machine.from_json(Path({str(TOP / "examples/machines/trail_bike.json")!r}).read_text(encoding="utf-8"))
trial = ls.Setup(front=13, rear=50, tyre="120/90-18")
loop = ls.ChainLoop("520", 13, 50)
tyre = ls.TyreSize("120/90-18 M/C 65R")
tread = ls.Tread(new_depth="9 mm", depth="5 mm")
comparison = ls.compare(machine, machine.stock, trial)
road = ls.RoadLoad.by_mass("230 kg")
space = ls.Space(fronts=[13], rears=[48, 50], tyres=["120/90-18"])
goals = ls.Goals(wishes=[ls.Wish("links", "less")])
"""

PAIRS = [
    # Arithmetic: what two quantities make, and what they do not.
    ("assert_type(ls.m * ls.m, ls.Area)", "ls.m * ls.kg"),
    ("assert_type(ls.N * ls.m, ls.Energy)", "ls.Nm * ls.m"),
    ("assert_type(ls.Nm / ls.m, ls.Force)", "ls.m / ls.Nm"),
    ("assert_type(ls.rpm * ls.m, ls.Speed)", "ls.rpm * ls.kg"),
    ("assert_type(ls.kW / ls.rpm, ls.Torque)", "ls.kW / ls.kg"),
    ("assert_type(ls.J / ls.s, ls.Power)", "ls.J * ls.s"),
    ("assert_type(2 * ls.mm, ls.Length)", "'2' * ls.mm"),
    ("assert_type(ls.mm * Fraction(1, 2), ls.Length)", "ls.mm * None"),
    ("assert_type(ls.mm * np.float64(2.0), ls.Length)", "ls.mm ** 2"),
    ("assert_type(ls.mm / 2, ls.Length)", "2 / ls.mm"),
    ("assert_type(ls.mm / ls.inch, float)", "ls.mm // ls.inch"),
    ("assert_type(ls.mm - ls.inch, ls.Length)", "ls.mm - 1"),
    ("assert_type(-ls.mm, ls.Length)", "~ls.mm"),
    ("assert_type(abs(-ls.mm), ls.Length)", "float(ls.mm)"),
    ("assert_type(ls.mm < ls.inch, bool)", "ls.mm < ls.kg"),
    ("assert_type(f'{ls.mm:.1f inch}', str)", "round(ls.mm)"),
    ("assert_type(sum([ls.mm, ls.cm], 0 * ls.mm), ls.Length)", "sum([ls.mm, ls.cm])"),
    ("assert_type(max(ls.mm, ls.inch), ls.Length)", "ls.mm > 1.0"),
    # Bands hold numbers or one kind of quantity.
    ("assert_type(ls.Band(1, 2.0, 3.0), ls.Band[float])", "ls.Band('1 mm', '2 mm', '3 mm')"),
    ("assert_type(ls.Band(ls.mm, ls.cm, ls.m).width, ls.Length)", "ls.Band(ls.mm, ls.cm)"),
    ("assert_type(ls.Band(ls.mm, ls.cm, ls.m).low / ls.mm, float)", "ls.Band(ls.mm, ls.cm, ls.m) / ls.mm"),
    ("assert_type(ls.mm in ls.Band(ls.mm, ls.cm, ls.m), bool)", "ls.Band(ls.mm, ls.cm, ls.m).mean"),
    ("ls.Speedometer('rear wheel', reading_error=ls.Band(0.02, 0.04, 0.05))", "ls.Speedometer('rear wheel', 4 * ls.kmh)"),
    # What may be missing is said to be.
    ("assert_type(tyre.load_index, int | None)", "tyre.load_index = 66"),
    ("assert_type(tyre.aspect_ratio, float | None)", "tyre.aspect"),
    ("assert_type(loop.series.pin_diameter, ls.Length | None)", "loop.series.pin_diameter()"),
    ("assert_type(machine.stock.links, int | None)", "machine.stock.links = 110"),
    ("assert_type(comparison.trial.road, ls.OnRoad | None)", "comparison.trial.road.gears[99]"),
    ("assert_type(ls.greatest_section_width('120/90-18'), ls.Length | None)", "ls.greatest_section_width(None)"),
    ("assert_type(tread.distance_left, ls.Length | None)", "ls.Tread('9 mm', '5 mm')"),
    # By position, by name, and how many.
    ("ls.ChainLoop('520', front=13, rear=50)", "ls.ChainLoop('520', 13)"),
    ("ls.ChainLoop(series='520', front=13, rear=50)", "ls.ChainLoop(chain='520', front=13, rear=50)"),
    ("ls.road_speed(engine_speed='6000 rpm', overall_ratio=20, circumference='2 m')", "ls.road_speed('6000 rpm', ratio=20)"),
    ("ls.explain(machine, trial, 'road speed', gear=3, engine_speed='5000 rpm')", "ls.explain(machine, trial, 'road speed', 3)"),
    ("ls.Setup(front=13, rear=50, tyre=tyre)", "ls.Setup(13, 50, tyre)"),
    ("ls.closest_sizes('120/90-18', 0.01, rim_code=17)", "ls.closest_sizes('120/90-18', 0.01, 17)"),
    ("ls.measured_circumference('20.55 m', 10, rider_aboard=False)", "ls.measured_circumference('20.55 m', 10, False)"),
    ("ls.RoadLoad.by_mass('230 kg', head_wind='10 km/h')", "ls.RoadLoad.by_mass('230 kg', '10 km/h')"),
    ("ls.choose(machine, space, goals, shortlist=2, progress=False)", "ls.choose(machine, space, goals, 2)"),
    ("ls.choose(machine, space, goals, progress=lambda done, there: None)", "ls.choose(machine, space, goals, progress=3)"),
    # More than one way to call.
    ("assert_type(ls.survey(machine, space, goals, lambda *told: None), int)", "ls.survey(machine, space, goals, 3)"),
    ("assert_type(len(ls.survey(machine, space, goals)), int)", "ls.survey(machine, space)"),
    (
        "assert_type(ls.circumference_at_depth('120/90-18', tread, '4 mm'), ls.Band[ls.Length])",
        "ls.circumference_at_depth(2 * ls.m, tread, '4 mm')",
    ),
    (
        "assert_type(ls.circumference_at_depth('2 m', tread, '4 mm', 'radial'), ls.Band[ls.Length])",
        "ls.circumference_at_depth(tyre, tread, '4 mm', 'radial')",
    ),
    # Words.
    ("comparison.cautions[0].sentence('us')", "comparison.cautions[0].sentence('imperial')"),
    ("comparison.explain('thrust').to_html(units='us', decimal=',')", "comparison.explain('thrust').to_html(decimal=';')"),
    ("ls.TyreSize('120/90-18', use='special')", "ls.TyreSize('120/90-18', use='knobbly')"),
    ("ls.rolling_factor('radial', 'light truck')", "ls.rolling_factor('radial', 'truck')"),
    ("ls.Limit('top speed', least='100 km/h')", "ls.Limit('topspeed', least='100 km/h')"),
    ("ls.Wish('thrust change', 0.1, weight=2)", "ls.Wish('thrust change', None)"),
    ("assert_type(ls.measures()['links'], str)", "ls.measures()['teeth']"),
    ("road.explain('resistance', speed='50 km/h')", "road.explain('resistance', speed=50)"),
    # Numbers want a unit, counts are whole, and text is text.
    ("loop.links('615 mm')", "loop.links(615.0)"),
    ("loop.centre(109.5)", "loop.centre('110 links')"),
    ("ls.gear_ratio(20, 48)", "ls.gear_ratio(20, 48.5)"),
    ("ls.load_capacity(65)", "ls.load_capacity('65')"),
    ("ls.rated_speed('R')", "ls.rated_speed(170)"),
    ("ls.show(ls.Band(ls.mm, ls.cm, ls.m), 'us')", "ls.show(3.0)"),
    ("road.resistance('50 km/h', 3 * ls.deg)", "road.resistance('50 km/h', 3 * ls.m)"),
    ("ls.Space(fronts=range(12, 15), rears=[48])", "ls.Space(fronts=13, rears=[48])"),
    ("ls.RideLog(time_s=[0, 1.5], speed_kmh=np.array([20.0, 21.0]).tolist())", "ls.RideLog(time_s=None, speed_kmh=[20, 21])"),
    ("ls.Gearbox(gears=[ls.GearPair(13, 36), 1.5], idle='1400 rpm', rev_limit='9000 rpm')",
     "ls.Gearbox(gears=[2.5, '1.5'], idle='1400 rpm', rev_limit='9000 rpm')"),
    ("assert_type(machine.to_json(), str)", "ls.Machine.from_json(Path('machine.json'))"),
    ("assert_type(hash(tyre), int)", "ls.Working(tyre)"),
]  # fmt: skip


def _program(tmp_path: Path) -> tuple[Path, int]:
    path = tmp_path / "program.py"
    before = BEFORE.strip().splitlines()
    path.write_text("\n".join([*before, *(line for pair in PAIRS for line in pair)]) + "\n", encoding="utf-8")
    return path, len(before)


def _refused(checker: str, path: Path) -> set[int]:
    """The lines that the checker refuses."""
    if checker == "mypy":
        told = subprocess.run(
            [sys.executable, "-m", "mypy", "--strict", "--no-error-summary", "--hide-error-context", "--cache-dir",
             str(TOP / "build/mypy"), str(path)],
            capture_output=True, text=True, cwd=path.parent,
        )  # fmt: skip
        return {int(line.split(":")[1]) for line in told.stdout.splitlines() if ": error:" in line}
    (path.parent / "pyrightconfig.json").write_text(
        json.dumps({"typeCheckingMode": "standard", "include": [path.name]})
    )
    told = subprocess.run(
        [sys.executable, "-m", "basedpyright", "--outputjson", "--pythonpath", sys.executable],
        capture_output=True, text=True, cwd=path.parent,
    )  # fmt: skip
    found = json.loads(told.stdout)["generalDiagnostics"]
    return {one["range"]["start"]["line"] + 1 for one in found if one["severity"] == "error"}


# The second is there in the long run alone.
CHECKERS = [name for name in ("mypy", "basedpyright") if importlib.util.find_spec(name)]


@pytest.mark.parametrize("checker", CHECKERS)
def test_a_checker_passes_the_right_half_of_each_pair_and_refuses_the_wrong_one(checker: str, tmp_path: Path) -> None:
    path, first = _program(tmp_path)
    refused = _refused(checker, path)
    lines = path.read_text(encoding="utf-8").splitlines()
    assert not [lines[number - 1] for number in sorted(refused) if (number - first) % 2 == 1 or number <= first]
    passed = set(range(first + 2, len(lines) + 1, 2)) - refused
    assert not [lines[number - 1] for number in sorted(passed)], "should have been refused"


@pytest.fixture(scope="module")
def names() -> dict[str, object]:
    names: dict[str, object] = {}
    exec(BEFORE, names)
    return names


@pytest.mark.parametrize(("right", "wrong"), PAIRS)
def test_the_library_does_the_right_half_and_refuses_the_wrong_one(
    right: str, wrong: str, names: dict[str, object]
) -> None:
    exec(right, dict(names))
    with pytest.raises((TypeError, ls.Error, AttributeError, KeyError, IndexError)):
        exec(wrong, dict(names))

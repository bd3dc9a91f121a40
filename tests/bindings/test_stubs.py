# SPDX-License-Identifier: MIT
"""The type stubs: they name what there is at run time, and tell right from wrong."""

from __future__ import annotations

import inspect
import subprocess
import sys
from pathlib import Path

import layshaft as ls
import pytest

TOP = Path(__file__).resolve().parents[2]
# What the stub checker may not hold against us, as patterns of names.
ALLOWED = r"""
layshaft\._core\.[A-Z]\w+                     # pybind11 gives its classes a metaclass of its own
layshaft\._core\.(Appraisal|Caution|ChainListing|Choice|Chosen|CoastDownFit|Comparison|DragArea|FitnessCheck|Formula|LegalTread|Relaxation|RideUse|Source|Step|Surface|TyreFitness|Working)\.__init__  # made by functions alone
layshaft\._core\.\w+\.__rtruediv__            # there to say why not: nothing may be divided by a quantity of another kind
layshaft(\.arrays)?\.__all__
layshaft(\._plots\.common|\.report|\.testing)\._?(Artists|Kind|Notation|Picture|Units|Use)  # an alias of Literal, which stubtest takes for a Union
"""

RIGHT = """
from typing import Any

import numpy as np
import pint
from numpy.typing import NDArray
from typing_extensions import assert_type

import layshaft as ls
from layshaft import adapters, arrays, gpx

class AnswersForItself:
    def __array_ufunc__(self, ufunc: Any, method: Any, *inputs: Any, **kwargs: Any) -> Any: ...

assert_type(110 * ls.mm, ls.Length)
assert_type(ls.mm * 110, ls.Length)
assert_type(ls.m / ls.inch, float)
assert_type(ls.m / ls.s, ls.Speed)
assert_type(ls.Nm * (3 * ls.rpm), ls.Power)
assert_type(ls.Nm / ls.m, ls.Force)
assert_type(-ls.kg + ls.lb, ls.Mass)
assert_type(ls.Band(1.0, 2.0, 3.0), ls.Band[float])
assert_type(ls.Band(ls.mm, ls.mm, ls.cm).low, ls.Length)
assert_type(ls.road_speed("9000 rpm", 12.0, 2 * ls.m), ls.Speed)
assert_type(ls.TyreSize("110/90-18").overall_diameter, ls.Band[ls.Length])
assert_type(arrays.road_speed_kmh([9000, 9100], 12.0, 2000.0), NDArray[np.float64])
assert_type(arrays.road_speed_kmh(9000, 12.0, np.float64(2000)), np.float64)
assert_type(arrays.road_speed_kmh(9000, np.linspace(10, 12), 2000), NDArray[np.float64])
assert_type(arrays.road_speed_kmh(AnswersForItself(), 12.0, 2000.0), Any)
assert_type(arrays.parse_tyres(["110/90-18", None], "null", use="special"), NDArray[np.void])
with adapters.enable_pint(pint.UnitRegistry()) as adapter:
    adapter.disable()
setup = ls.Setup(front=13, rear=50, tyre="120/90-18", links=110)
machine = ls.Machine.from_json("{}")
assert_type(ls.compare(machine, machine.stock, setup).thrust_change.nominal, float)
assert_type(ls.compare(machine, machine.stock, setup).contributions("thrust")["wear"].nominal, float)
assert_type(ls.compare(machine, machine.stock, setup).explain("thrust"), ls.Working)
assert_type(ls.explain(machine, setup, "road speed", gear=3, engine_speed="5000 rpm").result, ls.Step)
assert_type(ls.ChainLoop("520", 13, 50).explain("centre", links=110).to_text(units="us", decimal=","), str)
assert_type([step.formula for step in ls.TyreSize("110/90-18").explain("circumference").steps], list[ls.Formula | None])
assert_type(ls.static_radius("110/90-18", "light truck"), ls.Band[ls.Length])
goals = ls.Goals(wishes=[ls.Wish("thrust change", 0.1)])
choice = ls.choose(machine, ls.Space(fronts=[13], rears=range(44, 50), tyres=["120/90-18"]), goals, threads=2)
assert_type(choice.ranked[0].reason, str)
assert_type(choice.relaxations, tuple[ls.Relaxation, ...])
assert_type(ls.survey(machine, ls.Space(fronts=[13], rears=[44]), goals, lambda *told: None), int)
assert_type([one.circumference_change.nominal for one in ls.closest_sizes("110/90-18", 0.01)], list[float])
fitness = ls.tyre_fitness("110/90-18", ls.TyreAsked(), tread_depth="4 mm", tread_rule=ls.legal_tread("DE", "car"))
assert_type(fitness.checks, tuple[ls.FitnessCheck, ...])
assert_type(ls.TyreSize("110/90-18").undated(), ls.TyreSize)
assert_type(ls.chains_for_sprockets("520"), tuple[ls.ChainSeries, ...])
assert_type(ls.Interchange("530", "520").side_play.low, ls.Length)
assert_type(ls.chain_listings("08B")[0].mass_per_length, ls.LinearDensity | None)
assert_type(ls.Sprocket("520", 13).seating_angle.nominal, ls.Angle)
assert_type(ls.worn_circumference("2 m", 0.98, "4 mm", "1 mm") / ls.mm, float)
assert_type(arrays.worn_circumference_mm(2000.0, 0.98, 4.0, [1, 2]), NDArray[np.float64])
assert_type(arrays.passes(14, [106, 108]), NDArray[np.float64])
assert_type(ls.appraise(machine, setup).speed_range(1).highest.nominal / ls.mph, float)
curve = ls.EngineCurve(["3000 rpm", 6000 * ls.rpm], ["15 Nm", 21 * ls.Nm], measured_at="rear wheel")
assert_type(curve.peak_power.power / ls.kW, float)
road = ls.RoadLoad.from_parts(mass="220 kg", surface="gravel", machine="motorcycle")
assert_type(road.resistance("50 km/h", 0.1), ls.Force)
assert_type(ls.RoadLoad(constant="40 N", quadratic=0.02 * ls.N_per_kmh2).resistance_band("50 km/h", "3 deg"), ls.Band[ls.Force])
assert_type(ls.coast_down_time(ls.RoadLoad.by_mass("200 kg"), "200 kg", "70 km/h", "60 km/h"), ls.Duration)
assert_type(ls.N / ls.mps, ls.ForcePerSpeed)
assert_type(2 * ls.mps * ls.N_per_kmh2, ls.ForcePerSpeed)
log = ls.RideLog(time_s=[0, 1], speed_kmh=[20, 21], engine_rpm=[4000, 4100], indicated_kmh=[21, 22], odometer_km=[3.1, 3.1])
assert_type(ls.machine_of_log(log, gears=5).gears[0].overall_ratio("2 m"), ls.Band[float])
assert_type(ls.instrument_error(log).odometer, float | None)
assert_type(ls.ride_use(log, [9.0], "2 m", ls.ShiftRule([], []), load=ls.RideLoad(road=road, mass="220 kg")).wheel_work, ls.Energy | None)
assert_type(gpx.read_gpx("<gpx/>", gap="5 s"), ls.RideLog)
assert_type(ls.thrust_limit(ls.Body(mass="220 kg"), ls.surface("sand"), -0.1).thrust.low, ls.Force)
"""
WRONG = """
ls.mm + ls.kg
ls.mm < 3
ls.mm + 1
1 / ls.mm
ls.kg * ls.kg
ls.Length(612.0)
ls.Length(ls.kg)
ls.road_speed(9000, 12.0, "2 m")
ls.road_speed("9000 rpm", 12.0)
ls.Setup(13, 50)
ls.Setup(front=13.5, rear=50)
ls.TyreSize("110/90-18", use="mud")
ls.static_radius("110/90-18", "car")
ls.tyre_fitness("110/90-18")
fitness.check("weight")
ls.legal_tread("DE", "boat")
ls.Speedometer("nose")
ls.appraise(machine, setup).speed_at(9000, 1)
ls.Setup(front=13, rear=50, tyre="120/90-18", tread_worn=3.0)
ls.compare(machine, setup, setup).contributions("thrust")["rider"]
ls.explain(machine, setup, "road speed", 3)
ls.explain(machine, setup, "road speed", gear="third")
ls.Sprocket("520", 13).explain("tip diameter").to_html(units="imperial")
ls.ChainLoop("520", 13, 50).explain("links", centre=610.0)
ls.EngineCurve([3000, 6000], ["15 Nm", "21 Nm"])
ls.EngineCurve(["3000 rpm"], ["15 Nm"], measured_at="clutch")
ls.RoadLoad(constant=40.0)
ls.RoadLoad.from_parts(mass="220 kg", surface="mud")
road.resistance("50 km/h", 3 * ls.m)
ls.ShiftRule("20 km/h", ["10 km/h"]).gear_at(30)
ls.RideLoad(road=road)
gpx.read_gpx(3)
arrays.road_speed_kmh(9000, 12.0)
arrays.road_speed_kmh(engine_rpm=9000, overall_ratio=12.0, circumference_mm=2000)
arrays.parse_tyres(["110/90-18"], errors="ignore")
arrays.no_such_formula(1.0)
"""


def test_the_stubs_name_what_there_is_at_run_time(tmp_path: Path) -> None:
    allowed = tmp_path / "allowed"
    allowed.write_text(ALLOWED)
    told = subprocess.run(
        [sys.executable, "-m", "mypy.stubtest", "layshaft", "--concise", "--allowlist", str(allowed)],
        capture_output=True, text=True, cwd=tmp_path,
    )  # fmt: skip
    assert told.returncode == 0, told.stdout + told.stderr


def test_a_type_checker_passes_what_is_right_and_refuses_each_line_that_is_wrong(tmp_path: Path) -> None:
    program = tmp_path / "program.py"
    right = RIGHT.strip().splitlines()
    wrong = WRONG.strip().splitlines()
    program.write_text("\n".join(right + wrong) + "\n")
    told = subprocess.run(
        [sys.executable, "-m", "mypy", "--strict", "--no-error-summary", "--hide-error-context",
         "--cache-dir", str(TOP / "build/mypy"), str(program)],
        capture_output=True, text=True, cwd=tmp_path,
    )  # fmt: skip
    lines = {int(line.split(":")[1]) for line in told.stdout.splitlines() if ": error:" in line}
    assert lines == set(range(len(right) + 1, len(right) + len(wrong) + 1)), told.stdout + told.stderr


@pytest.mark.parametrize("name", [name for name in ls.__all__ if callable(getattr(ls, name))])
def test_whatever_can_be_called_has_a_signature_and_a_docstring(name: str) -> None:
    member = getattr(ls, name)
    assert member.__doc__ and len(member.__doc__) > 10
    if isinstance(member, type) and issubclass(member, Exception):
        return
    if isinstance(member, type):
        for part, value in vars(member).items():
            if not part.startswith("_"):
                assert value.__doc__, f"{name}.{part}"
    made_by_functions = "Appraisal Caution ChainListing Choice Chosen CoastDownFit Comparison DragArea FitnessCheck Formula LegalTread Relaxation RideUse Source Step Surface TyreFitness Working"
    if name not in made_by_functions.split():
        assert "args" not in inspect.signature(member).parameters


def test_the_package_says_that_it_is_typed() -> None:
    assert (Path(ls.__file__).parent / "py.typed").exists()

# SPDX-License-Identifier: MIT
"""Every value: equality, hash, a repr that evaluates back, pickling, and doors that name what is wrong."""

from __future__ import annotations

import datetime
import inspect
import pickle
import subprocess
import sys
from pathlib import Path

import layshaft as ls
import pytest

MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"


def machine(name: str = "trail_bike") -> ls.Machine:
    return ls.Machine.from_json((MACHINES / f"{name}.json").read_text(encoding="utf-8"))


def costs() -> ls.DriveCosts:
    part = ls.CostPart(price=20.0, life=ls.Band(9000 * ls.km, 12000 * ls.km, 15000 * ls.km))
    return ls.DriveCosts(chain=part, front=part, rear=part)


def values() -> list[object]:
    trail = machine()
    trial = ls.Setup(front=13, rear=50, tyre=ls.TyreSize("120/90-18 M/C 65R", use="special"))
    comparison = ls.compare(trail, trail.stock, trial)
    return [
        ls.TyreSize("110/90-18 M/C 61R TL"),
        ls.Tread(new_depth="12 mm", depth="4 mm", least="1 mm"),
        ls.TyreAsked(axle_load="205 kg", tyres_on_axle=2, top_speed="128 km/h"),
        ls.TyreSize("MT90B16", use="special"),
        ls.ChainSeries("08B"),
        ls.Sprocket("520", 14),
        ls.ChainSeries("08B narrow"),
        *ls.chain_listings("08B"),
        ls.Interchange("530", "520"),
        ls.AnsiToothForm(ls.Sprocket("40", 17)),
        ls.ChainLoop("520", 14, 40),
        ls.Adjuster("600 mm", "640 mm", slack="30 mm"),
        ls.GearPair(20, 61),
        trail.gearbox,
        ls.Speedometer("rear wheel", reading_error=ls.Band(0.01, 0.03, 0.05)),
        ls.Speedometer("front wheel"),
        ls.hunting(14, 106),
        ls.wear_outlook(trail, trial),
        ls.replace_by(ls.Band(1 * ls.km, 2 * ls.km, 3 * ls.km), datetime.date(2026, 11, 26), "2 km"),
        ls.costs_after(comparison, costs()),
        trail.stock,
        trial,
        ls.Setup(front=38, rear=19, circumference=ls.Band(1555 * ls.mm, 1560 * ls.mm, 1565 * ls.mm)),
        trail,
        machine("farm_bike"),
        machine("cargo_cycle"),
        comparison.trial.chain,
        comparison.trial.wear,
        comparison.trial.speedometer,
        comparison.trial.speed_range(2),
        comparison.wear,
        comparison.rule_of_thumb,
        ls.Setup(front=13, rear=50, tyre="120/90-18", tread_worn="3.25 mm", drive_efficiency=0.96),
        ls.Setup(front=13, rear=50, tyre="120/90-18", tread=ls.Tread(new_depth="12 mm", depth="4 mm", least="1 mm")),
        ls.Suspension(
            layshaft_ahead="75 mm",
            layshaft_above="10 mm",
            arm=("555 mm", "585 mm"),
            droop="18 deg",
            rest="12 deg",
            bump="-6 deg",
        ),
        ls.Slack("30 mm"),
        ls.Slack("12 mm", "sag of both runs"),
        ls.Obstacle("-100 mm", "20 mm", "15 mm", on_arm=True),
        ls.ChainMade(seal="O-ring", pin_diameter="5.1 mm", seal_drag=ls.Band(0.01 * ls.Nm, 0.02 * ls.Nm, 0.05 * ls.Nm)),
        ls.ChainDuty(torque="50 Nm", shaft_speed="1000 rpm", spike=1.5),
        ls.tooth_shares(15, 5),
        ls.power_ratings("40", 15, "1200 rpm"),
        ls.Setup(front=13, rear=50, circumference="2 m", drive_efficiency=ls.Band(0.93, 0.95, 0.98)),
        ls.EngineCurve(["3000 rpm", "6000 rpm"], ["15 Nm", "21 Nm"], measured_at="gearbox output").scaled(0.9),
        ls.EngineCurve(["3000 rpm", "6000 rpm"], ["15 Nm", "21 Nm"]).peak_power,
        ls.EngineCurve.electric("60 Nm", "11 kW", "8000 rpm"),
        ls.estimate_engine(
            torque="21 Nm",
            torque_speed="6500 rpm",
            power="16.5 kW",
            power_speed="8500 rpm",
            lowest="1500 rpm",
            highest="9800 rpm",
        ),
        ls.SmoothCurve(ls.EngineCurve([i * 1000 * ls.rpm for i in range(1, 6)], [i * ls.Nm for i in (3, 5, 6, 6, 4)])),
        ls.air_at("1500 m", "300 K"),
        ls.surface("loose gravel"),
        ls.drag_area("scooter"),
        ls.RoadLoad(
            constant="40 N", linear="1.5 N s/m", quadratic=0.02 * ls.N_per_kmh2, mass="200 kg", head_wind="-5 km/h"
        ),
        ls.RoadLoad(constant="40 N", kind="coast-down"),
        ls.RoadLoad.by_mass("180 kg").in_wind("10 km/h"),
        ls.RoadLoad.from_parts(mass="220 kg", surface="sand", machine="motorcycle", air_density="1.1 kg/m3"),
        ls.RoadLoad.from_parts(mass="220 kg", rolling_coefficient=0.02, drag_area="0.5 m2"),
        ls.RoadLoad.from_parts(
            mass="220 kg",
            rolling_coefficient=ls.Band(0.01, 0.02, 0.04),
            drag_area=ls.Band(0.4 * ls.m2, 0.5 * ls.m2, 0.6 * ls.m2),
        ),
        ls.Body(mass="220 kg", wheelbase="1.45 m", centre_ahead="0.68 m", centre_height="0.72 m"),
        ls.thrust_limit(
            ls.Body(mass="220 kg", wheelbase="1.45 m", centre_ahead="0.68 m", centre_height="0.72 m"), 0.6, "5 deg"
        ),
        ls.ShiftRule(["20 km/h", "40 km/h"], ["10 km/h", "25 km/h"]),
        ls.RideShare("technical", 0.25, "8 km/h", slope="6 deg", gear=1),
        ls.RideProfile([ls.RideShare("trail", 0.5, "30 km/h", slope=0.02), ls.RideShare("highway", 0.5, "90 km/h")]),
        ls.ShiftRule.world_cycle(
            rated_power="15 kW",
            unladen_mass="130 kg",
            idle="1400 rpm",
            rated_speed="8500 rpm",
            overall_ratios=[30, 20, 15],
            circumference="2 m",
        ),
        ls.Band(1.0, 2.0, 3.0),
        ls.Band(1 * ls.m, 2 * ls.m, 3 * ls.m),
    ]


@pytest.mark.parametrize("value", values(), ids=lambda value: type(value).__name__)
def test_a_value_evaluates_back_pickles_and_hashes(value: object) -> None:
    assert eval(repr(value), {**vars(ls), "datetime": datetime}) == value
    again = pickle.loads(pickle.dumps(value))
    assert again == value and hash(again) == hash(value)
    assert value != "something else" and value is not again
    with pytest.raises(AttributeError):
        value.anything_new = 1


def test_a_parse_error_points_at_the_place() -> None:
    with pytest.raises(ls.ParseError) as error:
        ls.TyreSize("110/90-1B")
    assert error.value.caret == "110/90-1B\n       ^"


def test_answers_pickle_by_asking_again() -> None:
    trail = machine()
    comparison = ls.compare(trail, trail.stock, ls.Setup(front=12, rear=46, tyre="120/90-18"))
    for answer in (comparison, comparison.trial, comparison.base, *comparison.cautions):
        again = pickle.loads(pickle.dumps(answer))
        assert again == answer and hash(again) == hash(answer)
    assert "12" in repr(comparison) and trail.name in repr(comparison.trial)


def test_json_reads_back() -> None:
    for name in ("trail_bike", "farm_bike", "cargo_cycle"):
        one = machine(name)
        assert ls.Machine.from_json(one.to_json()) == one
        assert ls.Setup.from_json(one.stock.to_json()) == one.stock
    worn = ls.Setup(
        front=13, rear=50, tyre="120/90-18", tread_worn="3.25 mm", drive_efficiency=ls.Band(0.93, 0.95, 0.98)
    )
    assert ls.Setup.from_json(worn.to_json()) == worn
    assert '"tread_worn": "3.25 mm"' in worn.to_json() and '"high": 0.98' in worn.to_json()
    new = ls.Setup(front=13, rear=50, tyre="120/90-18")
    assert "tread_worn" not in new.to_json() and "drive_efficiency" not in new.to_json()
    assert new.tread_worn == 0.0 * ls.mm and new.drive_efficiency is None
    assert ls.Setup(front=13, rear=50, tyre="120/90-18", drive_efficiency=0.96).drive_efficiency == ls.Band(
        0.96, 0.96, 0.96
    )


def test_half_a_file_is_an_error_that_says_where() -> None:
    text = machine().to_json()
    for end in range(0, len(text) - 2, 37):
        with pytest.raises(ls.Error) as caught:
            ls.Machine.from_json(text[:end])
        assert str(caught.value)


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (lambda t: t.replace('"9300 rpm"', '"9300 mm"'), ["$.gearbox.rev_limit", "unknown unit"]),
        (lambda t: t.replace('"gears"', '"geers"'), ["$.gearbox", 'missing key "gears"']),
        (lambda t: t.replace('"links": 110', '"lynx": 110'), ["$.stock", 'unknown key "lynx"']),
        (lambda t: t.replace('"layshaft": 1', '"layshaft": 2'), ["$.layshaft", "the version 1"]),
        (lambda t: t.replace("120/80-18", "12O/80-18"), ["$.stock.tyre", "position 2"]),
        (lambda t: t.replace('"links": 110', '"tread_worn": 3'), ["$.stock.tread_worn", "text with a unit"]),
        (
            lambda t: t.replace('"links": 110', '"drive_efficiency": 96'),
            ["$.stock", "drive_efficiency is 96", "0.5 to 1"],
        ),
        (lambda t: t.replace('"front": 13', '"front": 2'), ["$.stock.front", "4 to 1000"]),
        (
            lambda t: t.replace('"layshaft",', '"gearbox",', 1).replace('"sensor": "layshaft"', '"sensor": "nose"'),
            ["sensor"],
        ),
    ],
)
def test_a_wrong_file_names_the_path_to_the_place(spoil: object, words: list[str]) -> None:
    with pytest.raises(ls.Error) as caught:
        ls.Machine.from_json(spoil(machine().to_json()))
    for word in words:
        assert word in str(caught.value)


def test_wrong_arguments_are_named() -> None:
    cases = [
        (lambda: ls.Setup(front=13.5, rear=50, tyre="120/90-18"), TypeError, "front: expected a number of teeth, an int, got float 13.5"),
        (lambda: ls.Setup(front=True, rear=50, tyre="120/90-18"), TypeError, "front: expected"),
        (lambda: ls.Setup(front=3, rear=50, tyre="120/90-18"), ls.RangeError, "4 to 1000"),
        (lambda: ls.Setup(front=13, rear=50), ls.Error, "needs a tyre"),
        (lambda: ls.Setup(13, 50), TypeError, "no positional arguments"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90"), ls.ParseError, "tyre: "),
        (lambda: ls.Setup(front=13, rear=50, tyre=120), TypeError, "tyre: expected a TyreSize or a marking"),
        (lambda: ls.Setup(front=13, rear=50, circumference="6 m"), ls.RangeError, "circumference is 6000 mm"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90-18", tread_worn=3), TypeError, "tread_worn: expected a Length such as 612 * mm"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90-18", tread_worn=None), TypeError, "tread_worn: expected a Length"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90-18", tread_worn="-1 mm"), ls.RangeError, "tread_worn is -1 mm; expected 0 mm to 52.3"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90-18", tread_worn="53 mm"), ls.RangeError, "tread_worn is 53 mm"),
        (lambda: ls.Setup(front=13, rear=50, circumference="2 m", tread_worn="1 mm"), ls.Error, "state no tread_worn beside it"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90-18", drive_efficiency=1.1), ls.RangeError, "drive_efficiency is 1.1; expected 0.5 to 1"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90-18", drive_efficiency="0.9"), TypeError, "drive_efficiency: expected a number, got str '0.9'"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90-18", drive_efficiency=ls.Band(1 * ls.mm, 1 * ls.mm, 1 * ls.mm)), TypeError, "drive_efficiency: expected a number"),
        (lambda: ls.Setup(front=13, rear=50, tyre="120/90-18", drive_efficiency=float("nan")), ls.RangeError, "drive_efficiency is not a number"),
        (lambda: ls.Machine(name="x"), TypeError, "missing 'gearbox'"),
        (lambda: ls.ChainSeries("521"), ls.ParseError, "520 or 525 (the nearest)"),
        (lambda: ls.ChainLoop("520", 13, 50).links("100 mm"), ls.RangeError, "sprockets of 13 and 50 teeth touch"),
        (lambda: ls.ChainLoop("520", 13, 50).centre(20), ls.RangeError, "20"),
        (lambda: ls.shortest_links(ls.ChainLoop("520", 13, 50), 20), TypeError, "adjuster: expected an Adjuster, got int 20"),
        (lambda: ls.appraise(machine(), machine().stock).speed_at("9000 rpm", 7), ls.RangeError, "gear is 7; expected 1 to 6"),
        (lambda: ls.Speedometer("nose"), ls.RangeError, "'layshaft', 'rear wheel', 'front wheel'"),
        (lambda: ls.Gearbox(gears=[1.0] * 17, idle="1 rpm", rev_limit="2 rpm"), ls.RangeError, "number of gears is 17"),
        (lambda: ls.Gearbox(gears=[], idle="1 rpm", rev_limit="2 rpm"), ls.RangeError, "number of gears"),
        (lambda: ls.Gearbox(gears="123", idle="1 rpm", rev_limit="2 rpm"), TypeError, "gears: expected a list or tuple"),
        (lambda: ls.TyreSize("110/90-18", use="mud"), ls.RangeError, "'road', 'special'"),
        (lambda: ls.Band(2.0, 1.0, 3.0), ls.RangeError, "rising order"),
        (lambda: ls.Band(1 * ls.m, 2.0, "3 m"), TypeError, "nominal: expected a Length"),
        (lambda: ls.load_capacity(500), ls.RangeError, "load index"),
        (lambda: ls.rated_speed("I"), ls.Error, "speed symbol"),
        (lambda: ls.links_to_cut(108, 110), ls.RangeError, "2 are missing"),
        (lambda: ls.EngineCurve(["3000 rpm"], ["15 Nm"]), ls.RangeError, "number of points is 1; expected 2 to 64"),
        (lambda: ls.EngineCurve([3000, 6000], ["15 Nm", "21 Nm"]), TypeError, "speeds[0]: expected an AngularSpeed"),
        (lambda: ls.EngineCurve(["3 rpm", "2 rpm"], ["1 Nm", "1 Nm"]), ls.RangeError, "speed 2 is 2 rpm; expected more than"),
        (lambda: ls.EngineCurve(["3 rpm", "4 rpm"], ["1 Nm", "1 Nm"], measured_at="clutch"), ls.RangeError, "'crank', 'gearbox output', 'rear wheel'"),
        (lambda: ls.EngineCurve(["3 rpm", "4 rpm"], ["1 Nm", "1 Nm"]).torque("5 rpm"), ls.RangeError, "engine_speed is 5 rpm; expected 3 rpm to 4 rpm"),
        (lambda: ls.RoadLoad(constant="40 N").resistance("30 km/h", 0.1), ls.Error, "needs the mass"),
        (lambda: ls.RoadLoad(constant="40 N").resistance("30 km/h", "95 deg"), ls.RangeError, "short of the vertical"),
        (lambda: ls.RoadLoad(constant="40 N").resistance("30 km/h", 3 * ls.m), TypeError, "slope: expected a slope: rise over run"),
        (lambda: ls.RoadLoad(constant="40 N", kind="parts"), ls.RangeError, "'stated', 'coast-down'"),
        (lambda: ls.RoadLoad.from_parts(mass="200 kg", surface="sand"), ls.Error, "either drag_area or machine"),
        (lambda: ls.RoadLoad.from_parts(mass="0 kg", surface="sand", machine="scooter"), ls.RangeError, "mass is 0 kg"),
        (lambda: ls.RoadLoad.by_mass("20 kg"), ls.RangeError, "mass is 20 kg"),
        (lambda: ls.fit_coast_down(["0 s"], ["3 m/s", "2 m/s"], "200 kg"), ls.RangeError, "number of speeds is 2; expected 1"),
        (lambda: ls.surface("mud"), ls.RangeError, "'asphalt', 'gravel', 'loose gravel', 'field', 'sand'"),
        (lambda: ls.thrust_limit(ls.Body(mass="200 kg"), 0.5), ls.Error, "needs wheelbase"),
        (lambda: ls.Body(mass="0 kg"), ls.RangeError, "mass is 0 kg"),
        (lambda: ls.best_ratio_for(mass="200 kg", torque="20 Nm", circumference="2 m"), ls.RangeError, "engine_inertia is 0"),
        (lambda: ls.ShiftRule(["20 km/h"], ["30 km/h"]), ls.RangeError, "shift down 1 is 30 km/h"),
    ]  # fmt: skip
    for call, kind, words in cases:
        with pytest.raises(kind) as caught:
            call()
        assert words in str(caught.value)


def test_no_even_chain_that_fits_is_told_with_what_would() -> None:
    adjuster = ls.Adjuster("630 mm", "634 mm", slack="30 mm")
    with pytest.raises(ls.Error, match=r"short of its front end.*past its rear end.*the nearest sprockets that close"):
        ls.shortest_links(ls.ChainLoop("520", 13, 48), adjuster)


def test_every_public_name_says_what_it_is() -> None:
    for name in ls.__all__:
        member = getattr(ls, name)
        if inspect.isclass(member) or callable(member):
            assert member.__doc__, name
            if not inspect.isclass(member):
                assert inspect.signature(member) is not None, name


def test_formulas_know_their_text_and_source() -> None:
    formulas = {formula.name: formula for formula in ls.formulas()}
    assert formulas["road_speed"].body == "engine_speed / turn * circumference / overall_ratio"
    assert len(formulas) > 30
    assert all(formula.source.document and formula.source.certainty for formula in formulas.values())


def test_what_comes_from_memory_says_so() -> None:
    assert ls.TyreSize("4.10-18").source.certainty == "from memory"
    assert ls.ChainSeries("520").sources["pitch"].certainty == "secondary"
    assert ls.ChainSeries("520").tensile_strength is None
    assert ls.ChainSeries("08B").sources["pitch"].certainty == "published"


def test_pages_are_loaded_when_they_are_first_asked_for() -> None:
    code = "import layshaft, sys; assert 'layshaft.report' not in sys.modules; assert layshaft.report.Page('x').html()"
    subprocess.run([sys.executable, "-c", code], check=True)
    with pytest.raises(AttributeError, match="no attribute 'reports'"):
        _ = ls.reports


def test_a_measured_rollout_and_a_tread_answer() -> None:
    measured = ls.measured_circumference("20.55 m", 10)
    assert measured.nominal / ls.mm == pytest.approx(2055.0) and measured.low / ls.mm == pytest.approx(2054.5)
    pushed = ls.measured_circumference("20.55 m", 10, rider_aboard=False)
    assert pushed.high < measured.low and pushed.width > measured.width
    tread = ls.Tread(new_depth="12 mm", depth="4 mm", least="1 mm", distance="6000 km")
    assert tread.worn == ls.Length("8 mm") and tread.left == pytest.approx(3 / 11)
    assert tread.distance_left is not None and tread.distance_left / ls.km == pytest.approx(2250.0)
    assert ls.circumference_at_depth("120/90-18", tread, "12 mm") == ls.rolling_circumference("120/90-18")
    worn = ls.circumference_at_depth(measured, tread, "1 mm", construction="diagonal")
    assert worn.high < measured.low
    assert ls.legal_tread("GB").depth == ls.Length("1 mm") and ls.legal_tread("US-MD").rule == "in use"
    with pytest.raises(ls.ParseError, match="one of DE"):
        ls.legal_tread("XX")
    with pytest.raises(ls.RangeError, match="turns"):
        ls.measured_circumference("2 m", 0)


def test_the_new_notations_are_read() -> None:
    assert ls.TyreSize("37-622").notation == "cycle" and ls.TyreSize("37-622").rim_code is None
    assert ls.TyreSize("31x10.50R15LT").notation == "flotation"
    assert ls.TyreSize("110/90-18 61R DOT 2319").made == (23, 2019)
    with pytest.raises(ls.ParseError) as error:
        ls.TyreSize("120/9O-18")
    assert "120/90-18" in str(error.value) and error.value.caret.endswith("     ^")

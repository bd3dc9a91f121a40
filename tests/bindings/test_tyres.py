# SPDX-License-Identifier: MIT
"""Tyres from Python: what a marking says, its radii, its tread, and a tyre held against what is asked of it."""

from __future__ import annotations

import itertools
import math
import pickle
from pathlib import Path

import layshaft as ls
import pytest

ASKED = ls.TyreAsked(axle_load="205 kg", top_speed="128 km/h", radius_clearance="15 mm", width_clearance="20 mm")
FITNESS = ls.tyre_fitness(
    "110/90-18 M/C 61R", ASKED, stock="120/80-18", tread_depth="1.2 mm", tread_rule=ls.legal_tread("DE")
)


def test_every_mark_is_told() -> None:
    tyre = ls.TyreSize("190/50ZR17 M/C (73W) TL REINF M+S MST NHS DOT 2319")
    assert tyre.zr and tyre.motorcycle and tyre.reinforced and tyre.beyond_symbol
    assert tyre.winter and tyre.multi_service and tyre.not_for_highway
    assert (tyre.tube, tyre.vehicle, tyre.made) == ("tubeless", "unmarked", (23, 2019))
    plain = ls.TyreSize("190/50R17")
    assert not any((plain.zr, plain.motorcycle, plain.reinforced, plain.beyond_symbol))
    assert not any((plain.winter, plain.multi_service, plain.not_for_highway))
    assert (plain.tube, plain.made, plain.ply_rating, plain.second_load_index) == ("unmarked", None, None, None)
    assert ls.TyreSize("110/90-18 TT").tube == "tube"


@pytest.mark.parametrize(
    ("text", "vehicle"),
    [
        ("P205/55R16 91V", "passenger"),
        ("LT245/75R16 120/116Q", "light truck"),
        ("205/65R16C 107/105T", "commercial"),
        ("AT25x8-12", "all-terrain"),
    ],
)
def test_letters_say_what_it_is_made_for(text: str, vehicle: str) -> None:
    assert ls.TyreSize(text).vehicle == vehicle


def test_twins_and_plies_are_told() -> None:
    twins = ls.TyreSize("LT245/75R16 120/116Q")
    assert (twins.load_index, twins.second_load_index, twins.speed_symbol) == (120, 116, "Q")
    assert ls.TyreSize("4.00-8 71J 6PR").ply_rating == 6


def test_a_tyre_without_its_week_is_the_same_tyre() -> None:
    dated = ls.TyreSize("110/90-18 61R DOT 2319", use="special")
    assert dated.undated() == ls.TyreSize("110/90-18 61R", use="special") != dated
    assert dated.undated().undated() == dated.undated()


def test_a_cycle_tyre_sits_on_its_bead_seat() -> None:
    """37-622 and 700x28C: both bead seats are 622 mm (ISO 5775)."""
    for text, width in (("37-622", 37), ("700x28C", 28)):
        tyre = ls.TyreSize(text)
        assert tyre.rim_diameter == 622 * ls.mm and tyre.section_width == width * ls.mm
        assert tyre.rim_code is None and tyre.aspect_ratio is None


@pytest.mark.parametrize(
    ("text", "position", "nearest"),
    [
        ("120/9O-18", 5, "120/90-18"),
        ("110/90-1B", 7, "110/90-18"),
        ("120/90-81", 7, "120/90-18"),
        ("\uff11\uff12\uff10/9O-18", 5, "120/90-18"),
    ],
)
def test_a_mistyped_marking_is_shown_with_the_nearest(text: str, position: int, nearest: str) -> None:
    with pytest.raises(ls.ParseError) as caught:
        ls.TyreSize(text)
    error = caught.value
    assert error.position == position and nearest in str(error) and nearest in error.expected
    assert error.caret.splitlines()[0] == text and error.caret.splitlines()[1].endswith("^")
    with pytest.raises(ls.ParseError, match=nearest):
        ls.rolling_circumference(text)


def test_the_radii_lie_in_order_and_roll_as_far_as_the_tyre() -> None:
    for text in ("110/90-18", "150/70R17", "MT90B16", "4.10-18", "31x10.50R15LT", "37-622"):
        for deflection in ("motorcycle", "light truck"):
            free, rest = ls.free_radius(text), ls.static_radius(text, deflection)
            rolls = ls.effective_radius(text, deflection)
            assert rest.nominal < rolls.nominal < free.nominal
            assert free.nominal == ls.TyreSize(text).overall_diameter.nominal / 2.0
            assert rolls.nominal / ls.mm == pytest.approx((2 * free.nominal + rest.nominal) / ls.mm / 3, rel=1e-14)
            rolled = ls.rolling_circumference(text, deflection).nominal
            assert rolled / ls.mm == pytest.approx(2 * math.pi * rolls.nominal / ls.mm, rel=1e-12)
    assert ls.rolling_circumference("110/90-18") == ls.rolling_circumference("110/90-18", "motorcycle")
    assert ls.rolling_factor("radial", "light truck").nominal < ls.rolling_factor("radial").nominal
    assert ls.static_share("radial", "light truck") == ls.Band(0.909, 0.9245, 0.940)


def test_an_axle_height_follows_from_a_rollout() -> None:
    free = 325 * ls.mm
    height = ls.static_radius_from(ls.circumference_of_radius("318 mm"), free)
    assert height / ls.mm == pytest.approx(3 * 318 - 2 * 325, rel=1e-12)
    assert ls.radius_of_circumference(ls.circumference_of_radius("318 mm")) / ls.mm == pytest.approx(318, rel=1e-15)
    assert ls.share_of_factor(ls.factor_of_share(0.94)) == pytest.approx(0.94, rel=1e-14)


def test_a_tread_that_says_less_answers_less() -> None:
    assert ls.Tread(new_depth="12 mm", depth="4 mm").left is None
    assert ls.Tread(new_depth="12 mm", depth="4 mm", least="1 mm").distance_left is None
    assert ls.Tread(new_depth="12 mm", depth="12 mm", least="1 mm", distance="10 km").distance_left is None
    past = ls.Tread(new_depth="12 mm", depth="1 mm", least="2 mm", distance="11000 km")
    assert past.left == pytest.approx(-0.1) and past.distance_left / ls.km == pytest.approx(-1000)
    assert ls.tread_worn("12 mm", "4 mm") == 8 * ls.mm
    assert ls.tread_left("12 mm", "1 mm", "2 mm") == past.left


def test_a_tread_in_a_set_up_wears_the_tyre_down_and_warns_below_the_least() -> None:
    trail = ls.Machine.from_json((Path(__file__).parents[2] / "examples/machines/trail_bike.json").read_text())

    def on(depth: str) -> ls.Appraisal:
        tread = ls.Tread(new_depth="12 mm", depth=depth, least=ls.legal_tread("GB").depth)
        return ls.appraise(trail, ls.Setup(front=13, rear=47, tyre="120/90-18", tread=tread))

    worn = ls.appraise(trail, ls.Setup(front=13, rear=47, tyre="120/90-18", tread_worn="4 mm"))
    assert on("8 mm").circumference == worn.circumference
    below = [c for c in on("0.9 mm").cautions if c.code == "tread_below_least"]
    assert below and "0.9 mm" in below[0].sentence("metric") and "1.0 mm" in below[0].sentence("metric")
    assert not [c for c in on("1 mm").cautions if c.code == "tread_below_least"]
    with pytest.raises(ls.Error, match="state no tread_worn beside it"):
        ls.Setup(front=13, rear=47, tyre="120/90-18", tread_worn="4 mm", tread=ls.Tread(new_depth="9 mm", depth="5 mm"))


def test_a_snow_tyre_may_be_a_hundredth_taller() -> None:
    road, snow = ls.TyreSize("110/90-18"), ls.TyreSize("110/90-18", use="snow")
    assert snow.overall_diameter.high / road.overall_diameter.high == pytest.approx(1.01, rel=1e-15)
    assert snow.overall_diameter.low == road.overall_diameter.low
    assert snow.overall_diameter.nominal == road.overall_diameter.nominal
    assert snow.use == "snow" and eval(repr(snow), vars(ls)) == snow


def test_growth_with_speed_rises_with_its_square() -> None:
    full, half = ls.speed_growth("110/90-18 61S", "180 km/h"), ls.speed_growth("110/90-18 61S", "90 km/h")
    assert full.low == 0 * ls.mm and half.high / full.high == pytest.approx(0.25, rel=1e-14)
    assert full.nominal == ls.radius_growth_at_speed("655 mm", 0.015, "180 km/h", "180 km/h")
    with pytest.raises(ls.RangeError, match="road_speed is 200 km/h"):
        ls.speed_growth("110/90-18 61S", "200 km/h")


def test_nearest_markings_are_those_the_error_names() -> None:
    near = ls.nearest_markings("110/90-108")
    with pytest.raises(ls.ParseError) as caught:
        ls.TyreSize("110/90-108")
    assert near and all(marking in caught.value.expected for marking in near)
    assert ls.nearest_markings("no tyre at all") == ()


def test_tread_and_rollout_explain_themselves() -> None:
    tread = ls.Tread(new_depth="12 mm", depth="8 mm", least="2 mm", distance="3000 km")
    assert tread.explain("distance left").result.result == tread.distance_left
    working = ls.explain_measured_circumference("20.5 m", 10, rider_aboard=False)
    measured = ls.measured_circumference("20.5 m", 10, rider_aboard=False)
    assert working.result.result == measured
    assert pickle.loads(pickle.dumps(working)).to_text() == working.to_text()
    with pytest.raises(ls.Error, match="say the least depth as well"):
        ls.Tread(new_depth="12 mm", depth="8 mm").explain("left")


def test_rules_on_tread_are_listed_and_found_again() -> None:
    rules = ls.legal_treads()
    assert len(set(rules)) == len(rules) > 10
    for rule in rules:
        assert rule.vehicles and rule.source.document and rule.rule in ("in use", "wear indicator", "handbook")
        for vehicle in rule.vehicles:
            assert ls.legal_tread(rule.region, vehicle) == rule
        assert eval(repr(rule), vars(ls)) == rule
        assert pickle.loads(pickle.dumps(rule)) == rule
        assert hash(pickle.loads(pickle.dumps(rule))) == hash(rule)
    assert ls.legal_tread("GB", "moped").depth is None
    assert ls.legal_tread("JP", "car").source.certainty == "from memory"
    assert ls.legal_tread("DE", "car") == ls.legal_tread("DE") != ls.legal_tread("DE", "moped")


def test_a_tyre_is_held_against_what_is_asked() -> None:
    """Load index 61 carries 257 kg and R is 170 km/h: ISO 4223-1 and the symbols of UN tyre regulations."""
    load = FITNESS.check("load")
    assert load is not None and (load.asked, load.has, load.verdict) == (205 * ls.kg, 257 * ls.kg, "enough")
    assert load.margin / ls.kg == pytest.approx(52) and load.rule.document
    speed = FITNESS.check("speed")
    assert speed is not None and speed.has == 170 * ls.kmh and speed.margin / ls.kmh == pytest.approx(42)
    tread = FITNESS.check("tread")
    assert tread is not None and tread.verdict == "short" and tread.margin / ls.mm == pytest.approx(-0.4)
    assert tread.rule == ls.legal_tread("DE").source
    growth = ls.greatest_radius_growth("110/90-18", "120/80-18")
    radius = FITNESS.check("radius")
    assert radius is not None and radius.has == growth
    assert radius.margin / ls.mm == pytest.approx(15 - growth / ls.mm, rel=1e-12)
    assert [check.what for check in FITNESS.checks] == ["load", "speed", "radius", "width", "tread"]
    rise = FITNESS.ride_height_change
    assert rise is not None and rise.low < rise.nominal < rise.high
    nominal = ls.static_radius("110/90-18").nominal - ls.static_radius("120/80-18").nominal
    assert rise.nominal / ls.mm == pytest.approx(nominal / ls.mm, rel=1e-9)


def test_what_a_machine_asks_goes_through_json() -> None:
    machine = ls.Machine(
        name="asks", gearbox=ls.Gearbox(gears=[2.5, 1.0], idle="1200 rpm", rev_limit="9000 rpm"),
        adjuster=ls.Adjuster("600 mm", "640 mm", slack="30 mm"), chain="520", speedometer="layshaft",
        stock=ls.Setup(front=13, rear=50, tyre="110/90-18 M/C 61R TL M+S DOT 2319"), tyre_asked=ASKED,
    )  # fmt: skip
    again = ls.Machine.from_json(machine.to_json())
    assert again == machine and again.tyre_asked == ASKED
    assert again.stock.tyre is not None and again.stock.tyre.made == (23, 2019)
    cycle = ls.Setup(front=38, rear=19, tyre="37-622")
    assert ls.Setup.from_json(cycle.to_json()) == cycle


def test_what_cannot_be_told_is_unknown() -> None:
    told = ls.tyre_fitness("110/90-18", ASKED)
    assert {check.verdict for check in told.checks} == {"unknown"}
    assert all(check.has is None and check.margin is None for check in told.checks)
    assert told.check("tread") is None and told.ride_height_change is None
    assert ls.tyre_fitness("110/90-18", ls.TyreAsked()).checks == ()
    assert ls.greatest_section_width("37-622") is None and ls.greatest_width_growth("37-622", "37-622") is None


def test_a_greatest_width_is_known_of_metric_sizes() -> None:
    """1.10 of 110 mm on a rim above code 12 (from memory)."""
    width = ls.greatest_section_width("110/90-18")
    assert width is not None and width / ls.mm == pytest.approx(121)
    growth = ls.greatest_width_growth("110/90-18", "100/90-18")
    assert growth is not None and growth / ls.mm == pytest.approx(21)
    assert ls.section_width_limit("110 mm", 1.1) == width


@pytest.mark.parametrize("answer", [FITNESS, *FITNESS.checks], ids=lambda one: type(one).__name__)
def test_answers_pickle_by_asking_again(answer: object) -> None:
    again = pickle.loads(pickle.dumps(answer))
    assert again == answer and hash(again) == hash(answer) and answer != "something else"


def test_a_fitness_evaluates_back_and_a_check_is_told() -> None:
    assert eval(repr(FITNESS), vars(ls)) == FITNESS
    assert "load enough: asked Mass('205 kg'), has Mass('257 kg')" in repr(FITNESS.checks[0])


def test_sizes_near_the_stock_tyre_are_ranked() -> None:
    found = ls.closest_sizes("110/90-18", 0.01)
    assert found[0] == ls.CloseSize(tyre="110/90-18", circumference_change=0.0)
    near = [abs(one.circumference_change.nominal) for one in found]
    assert max(near) <= 0.01 and all(a <= b + 1e-12 for a, b in itertools.pairwise(near))
    assert {one.tyre.rim_code for one in found} == {18.0}
    other = ls.closest_sizes("110/90-18", 0.02, rim_code=17)
    assert other and {one.tyre.rim_code for one in other} == {17.0}
    before, after = (ls.rolling_circumference(tyre).nominal for tyre in ("110/90-18", other[0].tyre))
    assert ls.circumference_change(before, after) == pytest.approx(other[0].circumference_change.nominal, abs=1e-12)
    for one in found[:3]:
        assert eval(repr(one), vars(ls)) == one and pickle.loads(pickle.dumps(one)) == one


def test_wrong_arguments_are_named() -> None:
    rule = ls.legal_tread("DE")
    cases = [
        (lambda: ls.static_radius("110/90-18", "car"), ls.RangeError, "deflection is 'car'; expected one of 'motorcycle', 'light truck'"),
        (lambda: ls.static_radius(110), TypeError, "tyre: expected a TyreSize or a marking such as '110/90-18', got int 110"),
        (lambda: ls.static_radius_from("3 m", "325 mm"), ls.RangeError, "circumference is 3000 mm; expected more than two thirds"),
        (lambda: ls.static_radius_from("2 m", "2 mm"), ls.RangeError, "free_radius is 2 mm"),
        (lambda: ls.measured_circumference("20 m", 10.0), TypeError, "turns: expected an int, got float 10.0"),
        (lambda: ls.measured_circumference("20 m", 10, False), TypeError, "at most 2 positional arguments"),
        (lambda: ls.measured_circumference("20 m", 10, rider_aboard=1), TypeError, "rider_aboard: expected True or False"),
        (lambda: ls.measured_circumference("20 m", 10, tape_error="3 m"), ls.RangeError, "tape_error is 3000 mm"),
        (lambda: ls.Tread(new_depth="4 mm", depth="5 mm"), ls.RangeError, "depth is 5 mm"),
        (lambda: ls.Tread(new_depth=4, depth="4 mm"), TypeError, "new_depth: expected a Length"),
        (lambda: ls.Tread("4 mm", "3 mm"), TypeError, "no positional arguments"),
        (lambda: ls.legal_tread("DE", "boat"), ls.RangeError, "vehicle is 'boat'; expected one of 'moped'"),
        (lambda: ls.legal_tread("JP", "moped"), ls.Error, "no rule on the tread of a moped is known in JP"),
        (lambda: ls.legal_tread(49), TypeError, "region: expected an ISO 3166 code such as 'DE', got int 49"),
        (lambda: ls.tyre_fitness("110/90-18"), TypeError, "missing 'asked'"),
        (lambda: ls.tyre_fitness("110/90-18", "205 kg"), TypeError, "asked: expected a TyreAsked, got str '205 kg'"),
        (lambda: ls.tyre_fitness("110/90-18", ASKED, stock="110/9O-18"), ls.ParseError, "stock: "),
        (lambda: ls.tyre_fitness("110/90-18", ls.TyreAsked(tyres_on_axle=3)), ls.RangeError, "tyres_on_axle is 3; expected 1, 2 or 4"),
        (lambda: ls.tyre_fitness("110/90-18", ls.TyreAsked(top_speed="0 km/h")), ls.RangeError, "top_speed is 0 km/h"),
        (lambda: ls.tyre_fitness("110/90-18", ls.TyreAsked(least_tread_depth="1 mm"), tread_rule=rule), ls.Error, "state one of them"),
        (lambda: ls.tyre_fitness("110/90-18", ASKED, tread_rule="DE"), TypeError, "tread_rule: expected a LegalTread, got str 'DE'"),
        (lambda: FITNESS.check("weight"), ls.RangeError, "what is 'weight'; expected one of 'load', 'speed'"),
        (lambda: ls.closest_sizes("110/90-18", 0.6), ls.RangeError, "within is 0.6"),
        (lambda: ls.closest_sizes("110/90-18", "1 %"), TypeError, "within: expected a number"),
        (lambda: ls.closest_sizes("37-622", 0.01), ls.Error, "a cycle tyre's rim has no code"),
        (lambda: ls.closest_sizes("110/90-18", 0.01, rim_code=99), ls.RangeError, "99"),
        (lambda: ls.worn_circumference("2 m", 0, "4 mm", "1 mm"), ls.RangeError, "rolling_factor is 0; expected a value above 0"),
        (lambda: ls.worn_circumference("2 m", 0.98, "4 mm", "-1 mm"), ls.Error, "worn_circumference does not hold"),
    ]  # fmt: skip
    for call, kind, words in cases:
        with pytest.raises(kind) as caught:
            call()
        assert words in str(caught.value)

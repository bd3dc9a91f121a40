# SPDX-License-Identifier: MIT
"""Workings as data: what the steps say, that they are the numbers the rest of layshaft gives, and doors that tell."""

from __future__ import annotations

import copy
import json
import pickle
from pathlib import Path
from typing import Any

import layshaft as ls
import pytest

MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"
MACHINE = ls.Machine.from_json((MACHINES / "trail_bike.json").read_text(encoding="utf-8"))
BASE = ls.Setup(front=13, rear=48, tyre="120/80-18", drive_efficiency=0.96)
TRIAL = ls.Setup(
    front=13, rear=50, tyre=ls.TyreSize("120/90-18", use="special"), tread_worn="3 mm", drive_efficiency=ls.Band(0.93, 0.95, 0.97)
)  # fmt: skip
NARROW = ls.Machine(
    name="narrow", gearbox=MACHINE.gearbox, adjuster=ls.Adjuster("631 mm", "633 mm"), chain="520", speedometer="layshaft",
    stock=BASE,
)  # fmt: skip
COMPARISON = ls.compare(MACHINE, BASE, TRIAL)
LOOP = ls.ChainLoop("520", 13, 50)
TREAD = ls.Tread(new_depth="12 mm", depth="8 mm", least="2 mm", distance="3000 km")
CERTAINTIES = {"published", "secondary", "derived", "common practice, no source", "from memory", "stated"}

OF_A_SETUP = [
    "overall ratio", "road speed", "lowest speed", "highest speed", "engine speed",
    "engine turns", "thrust", "steepest slope", "top speed", "circumference", "links", "centre", "adjuster forward", "adjuster rearward", "wear room", "front contacts", "rear contacts", "front passes", "rear passes",
    "front distinct links", "rear distinct links", "indicated ratio", "correction factor", "odometer drift",
    "indicated speed", "highest lawful reading",
]  # fmt: skip
CAUSES = ["tyre", "front sprocket", "rear sprocket", "wear"]
OF_A_COMPARISON = [
    "thrust", "speed", "engine speed",
    *(f"thrust by {cause}" for cause in [*CAUSES, "drive loss"]),
    *(f"speed by {cause}" for cause in CAUSES),
    *(f"engine speed by {cause}" for cause in CAUSES),
    "indicated ratio", "chain tension", "chain stretch", "front tooth", "rear tooth", "front life", "rear life", "loss", "front contacts", "rear contacts",
]  # fmt: skip
OF_A_LOOP = [
    "links", "links approximate", "run length", "wrap front", "wrap rear", "centre", "centre approximate",
    "teeth in mesh front", "teeth in mesh rear", "smallest centre",
]  # fmt: skip
OF_A_SPROCKET = [
    "pitch diameter", "root diameter", "tip diameter", "ansi outside diameter", "over pins", "tooth width",
    "seating radius", "seating angle", "flank radius", "tooth side relief",
]  # fmt: skip
OF_AN_INTERCHANGE = ["tooth width", "side play"]
OF_AN_ANSI_TOOTH = [
    "seating diameter", "seating angle", "working angle", "working distance", "working along", "working across", "working radius", "working chord", "flat", "topping distance", "topping across", "topping along", "topping radius", "topping offset", "topping height", "tip distance",
]  # fmt: skip
OF_A_TYRE = ["overall diameter", "circumference", "free radius", "static radius", "effective radius"]


def of_setup(what: str) -> ls.Working:
    return ls.explain(MACHINE, TRIAL, what, gear=4, engine_speed="5000 rpm", speed=80 * ls.kmh)


WORKINGS = {
    **{f"set-up, {what}": of_setup(what) for what in OF_A_SETUP},
    **{f"comparison, {what}": COMPARISON.explain(what) for what in OF_A_COMPARISON},
    **{f"loop, {what}": LOOP.explain(what, centre="610 mm", links=108) for what in OF_A_LOOP},
    **{f"sprocket, {what}": ls.Sprocket("520", 13).explain(what) for what in OF_A_SPROCKET},
    **{f"ANSI tooth, {what}": ls.AnsiToothForm(ls.Sprocket("40", 17)).explain(what) for what in OF_AN_ANSI_TOOTH},
    **{f"interchange, {what}": ls.Interchange("530", "520").explain(what) for what in OF_AN_INTERCHANGE},
    **{f"tyre, {what}": ls.TyreSize("110/90-18").explain(what) for what in OF_A_TYRE},
    **{f"tread, {what}": TREAD.explain(what) for what in ("worn", "left", "distance left")},
    "measured circumference": ls.explain_measured_circumference("20.5 m", 10, rider_aboard=False),
}


@pytest.fixture(params=WORKINGS)
def working(request: pytest.FixtureRequest) -> ls.Working:
    return WORKINGS[request.param]


def in_si(value: object) -> float | None:
    """A quantity's, a count's or a number's size in SI."""
    if value is None or isinstance(value, (int, float)):
        return value
    units: dict[str, Any] = {
        "Length": ls.m, "Speed": ls.mps, "AngularSpeed": ls.radps, "Angle": ls.rad, "Force": ls.N, "Mass": ls.kg,
        "Torque": ls.Nm, "Area": ls.Area("1 m2"), "Acceleration": ls.Acceleration("1 m/s2"),
        "Density": ls.Density("1 kg/m3"), "LinearDensity": ls.LinearDensity("1 kg/m"), "Pressure": ls.Pa,
    }  # fmt: skip
    return value / units[type(value).__name__]


def by_name(working: ls.Working) -> dict[str, ls.Step]:
    return {step.name: step for step in working.steps}


# --- What the steps say -------------------------------------------------------------------------------------------------


def test_the_names_are_those_that_an_unknown_one_lists() -> None:
    for explain, names in (
        (lambda what: ls.explain(MACHINE, TRIAL, what), OF_A_SETUP),
        (COMPARISON.explain, OF_A_COMPARISON),
        (LOOP.explain, OF_A_LOOP),
        (ls.Sprocket("520", 13).explain, OF_A_SPROCKET),
        (ls.Interchange("530", "520").explain, OF_AN_INTERCHANGE),
        (ls.AnsiToothForm(ls.Sprocket("40", 17)).explain, OF_AN_ANSI_TOOTH),
        (ls.TyreSize("110/90-18").explain, OF_A_TYRE),
        (COMPARISON.contributions, ["thrust", "speed", "engine speed"]),
    ):
        with pytest.raises(ls.ParseError) as caught:
            explain("no_such number")
        listed = ", ".join(f'"{name}"' for name in names)
        assert caught.value.expected == f"one of {listed}"
        assert caught.value.text == "no_such number" and listed in str(caught.value)


def test_a_working_is_a_tuple_of_steps_in_order(working: ls.Working) -> None:
    steps = working.steps
    assert isinstance(steps, tuple) and all(isinstance(step, ls.Step) for step in steps)
    assert len({step.name for step in steps}) == len(steps)
    assert working.result in steps
    for place, step in enumerate(steps):
        assert step.kind in ("given", "computed", "looked up", "solved", "chosen")
        assert step.name and step.symbol and step.certainty in CERTAINTIES
        assert isinstance(step.from_steps, tuple) and all(0 <= one < place for one in step.from_steps)
        assert isinstance(step.source, ls.Source) and step.source.document
        # From memory is never hidden by what stands on it.
        if any(steps[one].certainty == "from memory" for one in step.from_steps):
            assert step.certainty == "from memory"


def test_each_kind_of_step_says_what_is_its_own(working: ls.Working) -> None:
    for step in working.steps:
        if step.kind in ("given", "looked up"):
            assert step.from_steps == () and step.formula is None
        if step.kind == "computed":
            assert step.from_steps and step.formula.source == step.source
            assert len(step.from_steps) == step.formula.parameters.count(",") + 1
        assert bool(step.detail) == (step.kind in ("looked up", "chosen"))
        if step.kind != "chosen":
            assert step.others == ()
        if step.kind == "solved":
            assert working.steps[step.reached].formula == step.formula
            assert abs(step.residual) < 1e-10 and step.reached > working.steps.index(step)
        else:
            assert step.reached is None and step.residual is None


def test_every_computed_step_is_its_formula_of_the_steps_it_is_from(working: ls.Working) -> None:
    for step in working.steps:
        if step.kind != "computed" or step.runs["nominal"] is None:
            continue
        numbers = [in_si(working.steps[one].runs["nominal"]) for one in step.from_steps]
        assert step.formula.evaluate(*numbers) == in_si(step.runs["nominal"])  # to the bit


def test_the_result_is_a_band_only_where_the_runs_differ(working: ls.Working) -> None:
    low, nominal, high = (working.result.runs[corner] for corner in ("low", "nominal", "high"))
    if low == nominal == high:
        assert working.result.result == nominal
    else:
        assert working.result.result == ls.Band(low, nominal, high)
    for step in working.steps:
        assert list(step.runs) == ["low", "nominal", "high"]
        if step != working.result:
            assert not isinstance(step.result, ls.Band)
            assert step.result == next(
                step.runs[one] for one in ("nominal", "high", "low") if step.runs[one] is not None
            )


def test_the_results_are_the_numbers_that_are_shown_elsewhere_to_the_bit() -> None:
    appraisal = ls.appraise(MACHINE, TRIAL)
    fit, wear, reading = appraisal.chain, appraisal.wear, appraisal.speedometer
    expected = {
        "overall ratio": appraisal.overall_ratios[3],
        "road speed": appraisal.speed_at("5000 rpm", 4),
        "lowest speed": appraisal.speed_range(4).lowest,
        "highest speed": appraisal.speed_range(4).highest,
        "engine speed": appraisal.engine_speed_at("80 km/h", 4),
        "engine turns": appraisal.road.gears[3].engine_turns,  # type: ignore[union-attr]
        "thrust": ls.thrust(MACHINE, TRIAL, 4, "80 km/h"),
        "steepest slope": ls.steepest_slope(MACHINE, TRIAL, MACHINE.road_load, 4, "80 km/h"),  # type: ignore[arg-type]
        "top speed": appraisal.road.top_speed.speed,  # type: ignore[union-attr]
        "circumference": appraisal.circumference,
        "links": fit.links,
        "centre": fit.centre,
        "adjuster forward": fit.adjuster_forward,
        "adjuster rearward": fit.adjuster_rearward,
        "wear room": fit.wear_room,
        "front contacts": wear.front_contacts_per_km,
        "rear contacts": wear.rear_contacts_per_km,
        "front passes": float(wear.front_hunting.passes),
        "rear passes": float(wear.rear_hunting.passes),
        "front distinct links": float(wear.front_hunting.distinct_links),
        "rear distinct links": float(wear.rear_hunting.distinct_links),
        "indicated ratio": reading.indicated_ratio,
        "correction factor": reading.correction_factor,
        "odometer drift": reading.odometer_drift,
        "indicated speed": reading.indicated("80 km/h"),
        "highest lawful reading": ls.highest_lawful_reading("80 km/h"),
    }
    assert {what: WORKINGS[f"set-up, {what}"].result.result for what in OF_A_SETUP} == expected
    changes = {
        "thrust": COMPARISON.thrust_change,
        "speed": COMPARISON.speed_change,
        "engine speed": COMPARISON.engine_speed_change,
        "indicated ratio": COMPARISON.indicated_ratio,
        "chain tension": COMPARISON.wear.chain_tension_change,
        "chain stretch": COMPARISON.wear.chain_stretch_change,
        "front tooth": COMPARISON.wear.front_tooth_change,
        "rear tooth": COMPARISON.wear.rear_tooth_change,
        "front life": COMPARISON.wear.front_life_change,
        "rear life": COMPARISON.wear.rear_life_change,
        "loss": COMPARISON.wear.loss_change,
        "front contacts": COMPARISON.wear.front_contacts_change,
        "rear contacts": COMPARISON.wear.rear_contacts_change,
    }
    for what in ("thrust", "speed", "engine speed"):
        changes |= {f"{what} by {cause}": points for cause, points in COMPARISON.contributions(what).items()}
    results = {what: WORKINGS[f"comparison, {what}"].result for what in OF_A_COMPARISON}
    # A part that is none at every corner is the number 0.
    assert {
        what: one.result if isinstance(one.result, ls.Band) else ls.Band(one.result, one.result, one.result)
        for what, one in results.items()
    } == changes
    loops = {
        "links": LOOP.links("610 mm"),
        "links approximate": LOOP.links_approximate("610 mm"),
        "run length": LOOP.run_length("610 mm"),
        "wrap front": LOOP.wrap_front("610 mm"),
        "wrap rear": LOOP.wrap_rear("610 mm"),
        "centre": LOOP.centre(108),
        "smallest centre": LOOP.smallest_centre,
    }
    assert {what: WORKINGS[f"loop, {what}"].result.result for what in loops} == loops
    sprocket = ls.Sprocket("520", 13)
    assert WORKINGS["sprocket, pitch diameter"].result.result == sprocket.pitch_diameter
    assert WORKINGS["sprocket, root diameter"].result.result == sprocket.root_diameter
    assert WORKINGS["sprocket, tip diameter"].result.result == sprocket.tip_diameter
    tyre = ls.TyreSize("110/90-18")
    assert WORKINGS["tyre, overall diameter"].result.result == tyre.overall_diameter
    assert WORKINGS["tyre, circumference"].result.result == ls.rolling_circumference(tyre)


def test_a_working_tells_its_corners_side_by_side() -> None:
    working = WORKINGS["set-up, engine speed"]
    # A larger tyre turns the engine slower: the low engine speed is of the tyre at its largest.
    diameter = by_name(working)["overall diameter"].runs
    assert diameter["low"] > diameter["nominal"] > diameter["high"]
    assert working.result.runs["low"] < working.result.runs["nominal"] < working.result.runs["high"]


def test_a_step_that_a_run_did_without_is_none_there() -> None:
    steps = by_name(WORKINGS["sprocket, tip diameter"])
    assert steps["tip diameter least"].runs["low"] is None
    assert steps["tip diameter least"].runs["nominal"] == steps["tip diameter"].runs["low"]
    assert steps["tip diameter least"].result == steps["tip diameter"].result.low


def test_symbols_and_names_tell_apart_what_there_are_several_of() -> None:
    steps = by_name(WORKINGS["comparison, thrust"])
    assert (steps["base circumference"].symbol, steps["trial circumference"].symbol) == ("U0", "U1")
    assert (steps["base rear"].symbol, steps["trial rear"].symbol) == ("z2,0", "z2,1")
    assert by_name(WORKINGS["set-up, overall ratio"])["gear 4"].symbol == "i_g,4"


def test_what_was_chosen_names_the_rule_and_what_else_there_was() -> None:
    chosen = by_name(of_setup("links"))["links"]
    assert chosen.kind == "chosen" and "even" in chosen.detail and isinstance(chosen.result, int)
    assert chosen == of_setup("links").result
    for other in chosen.others:
        assert isinstance(other, int) and other != chosen.result and other % 2 == 0
        assert ls.fit_links(LOOP, other, MACHINE.adjuster).fits
    stated = ls.Setup(front=13, rear=50, tyre="120/90-18", links=110)
    assert ls.explain(MACHINE, stated, "links").result.kind == "given"


def test_the_causes_of_a_change_are_its_steps() -> None:
    for what in ("thrust", "speed", "engine speed"):
        steps = by_name(WORKINGS[f"comparison, {what}"])
        for cause, points in COMPARISON.contributions(what).items():
            word = {"drive loss": "loss"}.get(cause, cause.removesuffix(" sprocket"))
            assert steps[f"{word} contribution"].runs["nominal"] == points.nominal
    assert list(COMPARISON.contributions("thrust")) == [*CAUSES, "drive loss"]
    assert list(COMPARISON.contributions("engine_speed")) == CAUSES
    assert all(isinstance(points, ls.Band) for points in COMPARISON.contributions("speed").values())


def test_underscores_count_as_spaces() -> None:
    assert ls.explain(MACHINE, TRIAL, "wear_room") == ls.explain(MACHINE, TRIAL, "wear room")
    assert COMPARISON.explain("engine_speed") == COMPARISON.explain("engine speed")
    assert COMPARISON.contributions("engine_speed") == COMPARISON.contributions("engine speed")
    assert ls.Sprocket("520", 13).explain("tip_diameter").title == "tip diameter"


# --- As values ----------------------------------------------------------------------------------------------------------


def test_workings_and_steps_compare_hash_copy_and_pickle(working: ls.Working) -> None:
    for again in (pickle.loads(pickle.dumps(working)), copy.copy(working), copy.deepcopy(working)):
        assert again == working and hash(again) == hash(working)
        assert again.steps == working.steps and again.to_json() == working.to_json()
    for step in working.steps:
        again = pickle.loads(pickle.dumps(step))
        assert again == step and hash(again) == hash(step)
    assert len(set(working.steps)) == len(working.steps)
    assert working != working.title and working.steps[0] != working.steps[0].name
    assert repr(working) == f"<Working: {working.title}>"
    assert repr(working.result) == f"<Step: {working.result.name} = {working.result.result!r}>"
    assert str(working) == working.to_text()
    for value in (working, working.result):
        with pytest.raises(AttributeError):
            value.anything_new = 1
        with pytest.raises(TypeError):
            type(value)()


def test_other_questions_have_other_workings() -> None:
    assert of_setup("road speed") != of_setup("highest speed")
    slower = ls.explain(MACHINE, TRIAL, "road speed", gear=3, engine_speed="4999 rpm")
    assert slower != ls.explain(MACHINE, TRIAL, "road speed", gear=3, engine_speed="5000 rpm")
    assert slower.steps[0] == of_setup("road speed").steps[0]  # the same rim, whoever asks
    assert LOOP.explain("centre", links=108) != LOOP.explain("centre", links=110)
    assert ls.ChainLoop("525", 13, 50).explain("centre", links=108) != LOOP.explain("centre", links=108)


def test_a_step_outlives_its_working() -> None:
    step = LOOP.explain("centre", links=108).result
    assert step.result == LOOP.centre(108) and step.symbol == "C"


def test_formulas_are_equal_by_their_name() -> None:
    formulas = {formula.name: formula for formula in ls.formulas()}
    step = of_setup("road speed").result
    assert step.formula == formulas["road_speed"] and hash(step.formula) == hash(formulas["road_speed"])
    assert step.formula != formulas["engine_speed"] and step.formula != "road_speed"


# --- As text and JSON ---------------------------------------------------------------------------------------------------


def test_json_says_what_the_steps_say(working: ls.Working) -> None:
    data = json.loads(working.to_json())
    assert list(data) == ["layshaft", "title", "result", "steps"]
    assert (data["layshaft"], data["title"]) == (1, working.title)
    assert working.steps[data["result"]] == working.result and len(data["steps"]) == len(working.steps)
    for one, step in zip(data["steps"], working.steps, strict=True):
        assert (one["name"], one["kind"], one["certainty"]) == (step.name, step.kind, step.certainty)
        assert one["result"] == {corner: in_si(value) for corner, value in step.runs.items()}  # to the bit
        assert one["source"] == {"document": step.source.document, "certainty": step.source.certainty}
        assert tuple(one["from_steps"]) == step.from_steps
        assert one.get("detail", "") == step.detail
        assert tuple(one.get("others", ())) == tuple(in_si(other) for other in step.others)
        assert (one.get("reached"), one.get("residual")) == (step.reached, step.residual)
        if step.formula is None:
            assert "formula" not in one
        else:
            assert one["formula"]["name"] == step.formula.name and one["formula"]["body"] == step.formula.body
            assert one["formula"]["parameters"] == step.formula.parameters
            assert one["formula"]["source"]["document"] == step.formula.source.document
        unit = "1" if isinstance(step.result, float) else "m" if isinstance(step.result, ls.Length) else one["unit"]
        assert one["unit"] == unit and (unit in ("teeth", "links")) == isinstance(step.result, int)
        if "scope" not in one and "index" not in one:
            assert one["symbol"] == step.symbol


def test_json_keeps_any_name() -> None:
    name = '"</script>\\ Wühlmaus \U0001f6f5 {0}'
    named = ls.Machine(
        name=name, gearbox=MACHINE.gearbox, adjuster=MACHINE.adjuster, chain=MACHINE.chain, speedometer="layshaft", stock=BASE
    )  # fmt: skip
    assert json.loads(ls.explain(named, BASE, "links").to_json())["title"] == f"links, {name}"
    assert name in ls.explain(named, BASE, "links").title and name in repr(ls.explain(named, BASE, "links"))


def test_every_form_takes_units_a_decimal_mark_and_whether_to_fold(working: ls.Working) -> None:
    for render in (working.to_text, working.to_markdown, working.to_latex, working.to_html, working.steps_to_html):
        folded, open_ = render(fold=True), render(fold=False)
        assert folded and open_ and folded != open_ and render() in (folded, open_)
        assert render(units="metric", decimal=".", fold=None) == render()
        assert isinstance(render(units="us"), str) and isinstance(render(decimal=","), str)
    assert working.sentence() and working.sentence(units="us", decimal=",")
    assert working._repr_markdown_() == working.to_markdown()
    assert working._repr_html_() == working.to_html()
    assert working._repr_latex_().startswith("$$") and working._repr_latex_().endswith("$$")


def test_the_options_do_what_they_say() -> None:
    working = WORKINGS["set-up, road speed"]
    assert (
        "km/h" in working.sentence()
        and "mph" in working.sentence(units="us")
        and "km/h" not in working.sentence(units="us")
    )
    nominal = working.result.result.nominal
    assert f"{nominal / ls.kmh:.1f}" in working.to_text() and f"{nominal / ls.mph:.1f}" in working.to_text(units="us")
    assert f"{nominal / ls.kmh:.1f}".replace(".", ",") in working.sentence(decimal=",")
    assert len(working.to_text(fold=True).splitlines()) < len(working.to_text(fold=False).splitlines())
    assert "<details>" in working.to_html(fold=True) and "<details>" not in working.to_html(fold=False)


# --- Wrong arguments ----------------------------------------------------------------------------------------------------


def test_wrong_arguments_are_named() -> None:
    working = WORKINGS["loop, links"]
    explain = ls.explain
    cases = [
        (lambda: explain(MACHINE, TRIAL), TypeError, "explain() is missing 'what'"),
        (lambda: explain(MACHINE, TRIAL, 3), TypeError, "what: expected the name of a number, a str, got int 3"),
        (lambda: explain(TRIAL, MACHINE, "links"), TypeError, "machine: expected a Machine, got Setup(front=13"),
        (lambda: explain(MACHINE, "stock", "links"), TypeError, "setup: expected a Setup, got str 'stock'"),
        (lambda: explain(MACHINE, TRIAL, "links", 3), TypeError, "at most 3 positional arguments (4 given)"),
        (lambda: explain(MACHINE, TRIAL, "links", rider=3), TypeError, "has no parameter 'rider'"),
        (lambda: explain(MACHINE, TRIAL, "road speed"), ls.Error, "to explain the road speed, say the engine speed as well"),
        (lambda: explain(MACHINE, TRIAL, "road speed", engine_speed="5000 rpm"), ls.Error, "say the gear as well"),
        (lambda: explain(MACHINE, TRIAL, "engine speed", gear=3), ls.Error, "to explain the engine speed, say the speed as well"),
        (lambda: explain(MACHINE, TRIAL, "road speed", gear=9, engine_speed="5000 rpm"), ls.RangeError, "gear is 9; expected 1 to 6"),
        (lambda: explain(MACHINE, TRIAL, "road speed", gear=3.0, engine_speed="5000 rpm"), TypeError, "gear: expected an int, got float 3.0"),
        (lambda: explain(MACHINE, TRIAL, "road speed", gear=3, engine_speed=5000), TypeError, "engine_speed: expected an AngularSpeed such as 9500 * rpm"),
        (lambda: explain(MACHINE, TRIAL, "road speed", gear=3, engine_speed="-1 rpm"), ls.RangeError, "engine_speed is -1 rpm"),
        (lambda: explain(MACHINE, TRIAL, "indicated speed", speed="-1 km/h"), ls.RangeError, "speed is -1 km/h"),
        (lambda: explain(MACHINE, TRIAL, "indicated speed", speed="80 rpm"), ls.ParseError, "speed: unknown unit"),
        (lambda: explain(NARROW, TRIAL, "centre"), ls.Error, "no even number of links fits"),
        (lambda: ls.compare(MACHINE, BASE, BASE).explain("thrust by wear"), ls.Error, "the wear has no part in this change of thrust"),
        (lambda: COMPARISON.explain(), TypeError, "explain() is missing 'what'"),
        (lambda: COMPARISON.explain("torque"), ls.ParseError, 'no number of this name to explain at position 0 of "torque"'),
        (lambda: COMPARISON.contributions("links"), ls.ParseError, 'no change of this name to share out at position 0 of "links"; expected one of "thrust", "speed", "engine speed"'),
        (lambda: COMPARISON.contributions(None), TypeError, "what: expected the name of a number, a str, got None"),
        (lambda: LOOP.explain("links"), ls.Error, "to explain the links, say the centre distance as well"),
        (lambda: LOOP.explain("centre"), ls.Error, "to explain the centre, say the number of links as well"),
        (lambda: LOOP.explain("links", centre="100 mm"), ls.RangeError, "sprockets of 13 and 50 teeth touch"),
        (lambda: LOOP.explain("links", centre=610.0), TypeError, "centre: expected a Length such as 612 * mm"),
        (lambda: LOOP.explain("centre", links=20), ls.RangeError, "number of links is 20"),
        (lambda: LOOP.explain("centre", links="108"), TypeError, "links: expected a number, got str '108'"),
        (lambda: LOOP.explain("centre", links=float("nan")), ls.RangeError, "links is not a number"),
        (lambda: LOOP.explain("links", "610 mm"), TypeError, "at most 1 positional argument (2 given)"),
        (lambda: ls.Sprocket("520", 13).explain("pitch"), ls.ParseError, 'expected one of "pitch diameter", "root diameter", "tip diameter", "ansi'),
        (lambda: ls.TyreSize("110/90-18").explain(""), ls.ParseError, 'expected one of "overall diameter", "circumference"'),
        (lambda: working.to_text("us"), TypeError, "to_text() takes no positional arguments (1 given); it is called as to_text(*, units='metric', decimal='.', fold=None)"),
        (lambda: working.to_html(units="imperial"), ls.RangeError, "units is 'imperial'; expected 'metric' or 'us'"),
        (lambda: working.to_latex(decimal=";"), ls.RangeError, "decimal is ';'; expected '.' or ','"),
        (lambda: working.to_latex(decimal=1), TypeError, "decimal: expected '.' or ',', got int 1"),
        (lambda: working.to_markdown(fold=1), TypeError, "fold: expected True or False, got int 1"),
        (lambda: working.sentence(fold=True), TypeError, "sentence() has no parameter 'fold'"),
        (lambda: working.to_json(units="us"), TypeError, "to_json() has no parameter 'units'"),
    ]  # fmt: skip
    for call, kind, words in cases:
        with pytest.raises(kind) as caught:
            call()
        assert words in str(caught.value)


def test_a_name_with_letters_of_any_alphabet_is_told_as_it_came() -> None:
    with pytest.raises(ls.ParseError) as caught:
        COMPARISON.explain("ヤマ\n")
    assert caught.value.text == "ヤマ\n" and caught.value.position == 0 and '"ヤマ\\x0a"' in str(caught.value)

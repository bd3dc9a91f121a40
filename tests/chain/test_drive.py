# SPDX-License-Identifier: MIT
"""The chain drive from Python: slack through the travel, loads and losses, teeth and polygons, fitting."""

from __future__ import annotations

import itertools
import math
import pickle
from pathlib import Path

import layshaft as ls
import mpmath
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from layshaft import arrays

ARM = ls.Suspension(
    layshaft_ahead="75 mm", layshaft_above="10 mm", arm="565 mm", droop="18 deg", rest="12 deg", bump="-6 deg"
)
LOOP = ls.ChainLoop("520", 16, 43)


def mm(length: ls.Length) -> float:
    return length / ls.mm


# Worked by hand from the coordinates of layshaft and axle, and a chain just tight at the tight point.
@pytest.mark.parametrize(
    ("angle", "centre", "spare", "hand"),
    [
        (18, 639.565, 2.1841, 52.71),
        (12, 640.467, 0.3921, 22.35),
        (6, 640.638, 0.0514, 8.09),
        (0, 640.078, 1.1646, 38.50),
        (-6, 638.791, 3.7231, 68.77),
    ],
)
def test_slack_through_the_travel(angle: float, centre: float, spare: float, hand: float) -> None:
    tight_angle, tight_centre = ARM.tight_point()
    assert tight_angle / ls.deg == pytest.approx(7.595, abs=5e-4)
    assert mm(tight_centre) == pytest.approx(640.664, abs=5e-4)
    travel = ls.slack_through_travel(ARM, LOOP, LOOP.links(tight_centre))
    point = travel.at(angle * ls.deg)
    assert mm(ARM.centre(angle * ls.deg)) == pytest.approx(centre, abs=5e-4)
    assert mm(point.spare_length) == pytest.approx(spare, abs=5e-5)
    assert mm(point.slack) == pytest.approx(hand, abs=5e-3)
    assert not travel.too_tight


def test_what_is_set_at_rest_leaves_the_least_at_the_tight_point() -> None:
    to_set = ls.slack_to_set(ARM, LOOP, 110, "15 mm")
    travel = ls.slack_through_travel(ARM, LOOP, 110, slack=to_set)
    assert mm(travel.tight_point().slack) == pytest.approx(15, abs=1e-6)
    assert ls.slack_through_travel(ARM, LOOP, 110, slack="5 mm").too_tight
    assert mm(ls.carried_slack(ARM, LOOP, 110, "30 mm", LOOP, 110)) == pytest.approx(30, abs=1e-6)
    assert pickle.loads(pickle.dumps(travel)) == travel and eval(repr(travel), vars(ls)) == travel


@settings(deadline=None, max_examples=60)
@given(
    ahead=st.floats(-50, 140),
    above=st.floats(-60, 60),
    arm=st.floats(450, 700),
    front=st.integers(11, 17),
    rear=st.integers(36, 54),
    slack=st.floats(0, 40),
)
def test_the_tight_point_is_the_tightest(
    ahead: float, above: float, arm: float, front: int, rear: int, slack: float
) -> None:
    swingarm = ls.Suspension(
        layshaft_ahead=ahead * ls.mm,
        layshaft_above=above * ls.mm,
        arm=arm * ls.mm,
        droop="20 deg",
        rest="11 deg",
        bump="-8 deg",
    )
    loop = ls.ChainLoop("520", front, rear)
    links = loop.links(swingarm.centre("11 deg"))
    travel = ls.slack_through_travel(swingarm, loop, links, slack=slack * ls.mm)
    tight = travel.tight_point()
    for step in range(57):
        point = travel.at((-8 + 0.5 * step) * ls.deg)
        assert point.spare_length / ls.mm >= tight.spare_length / ls.mm - 1e-6
        # The chain is as long as its taut loop and what is to spare, at every angle.
        assert loop.links(point.centre) + point.spare_length / ls.ChainSeries("520").pitch == pytest.approx(
            links, abs=1e-9
        )


@pytest.mark.parametrize(("name", "rear"), [("trail_bike", 50), ("farm_bike", 47), ("cargo_cycle", 21)])
def test_every_example_machine_answers(name: str, rear: int) -> None:
    text = (Path(__file__).parents[2] / f"examples/machines/{name}.json").read_text(encoding="utf-8")
    machine = ls.Machine.from_json(text)
    stock = machine.stock
    trial = ls.Setup(
        front=stock.front, rear=rear, tyre=stock.tyre, circumference=stock.circumference, chain_made=stock.chain_made
    )
    appraisal = ls.appraise(machine, trial)
    chain, drive = appraisal.chain, appraisal.drive
    assert chain.fits and chain.stretch_left.low > 0
    assert drive.engagement == ls.engagement(ls.ChainLoop(machine.chain, stock.front, rear), chain.centre.nominal)
    # The pull by hand: torque through primary drive and first gear, over the front sprocket's radius.
    gearbox = machine.gearbox
    ratio = ls.appraise(machine, stock).overall_ratios[0] / (stock.rear / stock.front)
    torque = machine.peak_torque.torque / ls.Nm * ratio
    radius = ls.Sprocket(machine.chain, stock.front).pitch_diameter / ls.m / 2
    assert drive.loads.pull / ls.N == pytest.approx(torque / radius, rel=1e-12)
    assert drive.loads.safety is not None and drive.stock_safety == pytest.approx(drive.loads.safety, rel=1e-12)
    assert 0.97 < drive.loads.efficiency.low < drive.loads.efficiency.high < 1
    if machine.suspension is None:
        assert machine.kind == "cycle" and drive.slack is None
        return
    assert not drive.slack.too_tight and gearbox.gears
    travel = ls.slack_through_travel(
        machine.suspension, ls.ChainLoop(machine.chain, stock.front, rear), chain.links, slack=drive.slack.slack_to_set
    )
    assert travel.tight_point().slack / ls.mm == pytest.approx(drive.slack.stock_least_slack / ls.mm, rel=1e-9)
    assert pickle.loads(pickle.dumps(appraisal)).drive == drive and eval(repr(drive), vars(ls)) == drive


def test_a_gap_is_not_guessed() -> None:
    assert mm(ls.Slack("15.5 mm", "sag of one run").measured_as("by hand", "640 mm").movement) == pytest.approx(
        35.8, abs=0.05
    )
    with pytest.raises(ls.Error, match="geometry alone does not tell"):
        ls.Slack("50 mm", "gap").measured_as("by hand", "640 mm")


def test_squat() -> None:
    squat = ls.squat(ARM, LOOP, "12 deg", wheel_radius="315 mm", mass_centre_height="620 mm", wheelbase="1400 mm")
    assert squat.transfer_angle / ls.deg == pytest.approx(23.8865, abs=5e-5)
    assert squat.squat_angle / ls.deg == pytest.approx(28.98417, abs=5e-6)
    assert squat.ratio == pytest.approx(0.799456, abs=5e-7)
    at = {"wheel_radius": "315 mm", "mass_centre_height": "620 mm", "wheelbase": "1400 mm"}
    assert ls.squat_ratio(ARM, LOOP, "12 deg", **at) == squat.ratio


def test_room_beside_the_chain() -> None:
    room = ls.chain_clearance(ARM, LOOP, "565 mm", ls.Obstacle("0 mm", "0 mm", "10 mm"), "15 mm")
    assert room.least > 0 * ls.mm and ls.Angle("-6 deg") <= room.angle <= ls.Angle("18 deg")
    outside = ls.chain_outside_radius(ls.Sprocket("520", 16).pitch_diameter, "15 mm")
    assert mm(ls.wall_clearance("52 mm", outside)) == pytest.approx(
        52 - (mm(ls.Sprocket("520", 16).pitch_diameter) + 15) / 2
    )


# Worked by hand: pi 0.1 5.08/15.875 (1/15 + 1/45) = 0.008936.
def test_loss_of_the_joints() -> None:
    made = ls.ChainMade(pin_diameter="5.08 mm", joint_friction=0.1)
    loads = ls.chain_loads(ls.ChainLoop("520", 15, 45), ls.ChainDuty(torque="50 Nm", shaft_speed="1000 rpm"), made=made)
    assert loads.efficiency.nominal == pytest.approx(0.991064, abs=5e-7)
    assert loads.safety is None and loads.centrifugal_tension is None
    bare = ls.chain_loads(ls.ChainLoop("520", 15, 45), ls.ChainDuty(torque="50 Nm", shaft_speed="1000 rpm"))
    assert bare.efficiency is None
    with pytest.raises(ls.Error, match="say the chain's pin diameter as well"):
        ls.explain_chain_loads(
            ls.ChainLoop("520", 15, 45), ls.ChainDuty(torque="50 Nm", shaft_speed="1 rpm"), "efficiency"
        )


@given(teeth=st.integers(4, 64), engaged=st.integers(1, 64))
def test_drops_in_tension_and_the_rest_add_up(teeth: int, engaged: int) -> None:
    if engaged > teeth:
        with pytest.raises(ls.RangeError):
            ls.tooth_shares(teeth, engaged)
        return
    shares = ls.tooth_shares(teeth, engaged)
    pulls = [share.tension.nominal for share in shares.teeth] + [shares.rest.nominal]
    assert pulls[0] == 1.0 and all(a > b for a, b in itertools.pairwise(pulls))
    assert sum(a - b for a, b in itertools.pairwise(pulls)) + shares.rest.nominal == pytest.approx(1.0, rel=1e-14)


def test_ratings_are_those_of_the_formula() -> None:
    # ANSI B29.1, chain 40, 11 teeth: 5.22 hp at 1,600 rpm by the plates, 4.66 at 1,800 rpm by rollers and bushes.
    assert ls.power_rating("40", 11, "1600 rpm") / ls.hp == pytest.approx(5.22, abs=0.005)
    assert ls.power_ratings("40", 11, "1800 rpm").governed_by == "rollers and bushes"
    hp = arrays.chain_power_rating_hp(0.5, 11, np.array([1600.0, 1800.0]))
    assert hp == pytest.approx([5.2230, 4.6645], abs=5e-5)
    assert math.isnan(arrays.chain_power_rating_hp(0.5, 11, 0.0))
    assert arrays.chain_speed_variation(10) == pytest.approx(0.0489, abs=5e-5)


def test_polygons_swing_as_the_hull_of_their_pins_does() -> None:
    centre = 38.5 * ls.ChainSeries("520").pitch
    for front, pitches in ((13, 0.0004), (14, 0.0062)):
        ripple = ls.polygon_ripple(ls.ChainLoop("520", front, 40), centre)
        assert ripple.loop_length / ls.ChainSeries("520").pitch == pytest.approx(pitches, abs=5e-5)


def test_every_chain_that_closes_is_found() -> None:
    fits = ls.fit_chain(ls.ChainLoop("520", 13, 50), "590 mm", "650 mm", slack="20 mm")
    assert [fit.links for fit in fits] == sorted(fit.links for fit in fits) and all(fit.fits for fit in fits)
    for fit in fits:
        assert fit.stretch_left == fit.wear_room and not fit.offset_link
    odd = ls.fit_chain(ls.ChainLoop("520", 13, 50), "590 mm", "650 mm", slack="20 mm", offset_links=True)
    assert {fit.links for fit in fits} == {fit.links for fit in odd if fit.links % 2 == 0}
    pairs = ls.pairs_for_chain(ls.ChainLoop("520", 13, 50), 110, ls.Adjuster("590 mm", "650 mm", slack="20 mm"))
    assert pairs and abs(pairs[0].ratio_change) <= abs(pairs[-1].ratio_change)


def test_every_way_to_a_centre_distance() -> None:
    methods = ls.centre_methods(LOOP, 110)
    pitch = ls.ChainSeries("520").pitch
    assert abs(methods.f4_error / pitch) < 2e-5 and abs(methods.handbook_error / pitch) < 0.01
    with pytest.raises(ls.RangeError, match="ratio is 1; expected above 1"):
        ls.f4(1)
    at = ls.engagement(ls.ChainLoop("520", 13, 46), "600 mm")
    assert at.front == pytest.approx(5.9, abs=0.05)


def test_ten_thousand_loops_against_forty_digits() -> None:
    """The exact loop by mpmath, 40 digits; the largest error is told in the docs of chain_links."""
    rows = np.random.default_rng(20261125)
    count = 10_000
    front, rear = rows.integers(8, 31, count), rows.integers(8, 91, count)
    centre = (front + rear) * (0.2 + 2.0 * rows.random(count))  # in pitches, and never touching
    links = arrays.chain_links(1.0, front.astype(float), rear.astype(float), centre)
    back = arrays.chain_centre_mm(1.0, front.astype(float), rear.astype(float), links)
    worst_links = worst_centre = 0.0
    with mpmath.workdps(40):
        half = {z: 1 / (2 * mpmath.sin(mpmath.pi / z)) for z in {*front.tolist(), *rear.tolist()}}
        for z1, z2, c, x, c_back in zip(
            front.tolist(), rear.tolist(), centre.tolist(), links.tolist(), back.tolist(), strict=True
        ):
            c = mpmath.mpf(c)
            phi = mpmath.asin((half[z2] - half[z1]) / c)
            exact = 2 * c * mpmath.cos(phi) + mpmath.mpf(z1 + z2) / 2 + phi * (z2 - z1) / mpmath.pi
            worst_links = max(worst_links, abs(float((x - exact) / exact)) * 2.0**52)
            worst_centre = max(worst_centre, abs(float((c_back - c) / c)) * 2.0**52)
    assert 0.0 < worst_links <= 4.0, worst_links
    assert 0.0 < worst_centre <= 8.0, worst_centre

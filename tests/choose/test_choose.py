# SPDX-License-Identifier: MIT
"""Choosing: the trade-off against a general library, the ranking by brute force, and what must hold whatever is asked."""

from __future__ import annotations

import itertools
import json
import math
import pickle
from pathlib import Path
from typing import Any

import layshaft as ls
import moocore
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"


def machine(name: str = "trail_bike") -> ls.Machine:
    return ls.Machine.from_json((MACHINES / f"{name}.json").read_text(encoding="utf-8"))


TRAIL = machine()
# Invented prices.
SPACE = ls.Space(
    fronts=[ls.SprocketOffer(t, price=10.0 + t) for t in range(11, 16)],
    rears=[ls.SprocketOffer(t, price=30.0 + t) for t in range(42, 56)],
    tyres=[
        ls.TyreOffer("120/80-18 M/C 62R TT", price=80.0),
        ls.TyreOffer(ls.TyreSize("120/90-18 M/C 65R TT", "special"), price=95.0),
    ],
    chains=[ls.ChainOffer(made=TRAIL.stock.chain_made, price=70.0)],
)
MEASURES = {
    "thrust change": lambda c: c.thrust_change, "speed change": lambda c: c.speed_change,
    "chain stretch change": lambda c: c.wear.chain_stretch_change, "front life change": lambda c: c.wear.front_life_change,
    "rear life change": lambda c: c.wear.rear_life_change, "loss change": lambda c: c.wear.loss_change,
    "wear room": lambda c: c.trial.chain.wear_room, "top speed": lambda c: c.trial.road.top_speed.speed,
    "climb": lambda c: c.trial.road.gears[0].climb.slope,
    "chain safety": lambda c: ls.Band(*[c.trial.drive.loads.safety] * 3),
    "teeth in mesh": lambda c: ls.Band(*[c.trial.drive.engagement.front] * 3),
    "tight point slack": lambda c: c.trial.drive.slack.least_slack,
    "chain pull change": lambda c: c.wear.chain_tension_change,
    "front contacts change": lambda c: c.wear.front_contacts_change,
    "rear contacts change": lambda c: c.wear.rear_contacts_change,
    "walking pace": lambda c: c.trial.road.walking_pace,
}  # fmt: skip
changes = st.sampled_from(list(MEASURES)[:6])


def same(a: Any, b: Any) -> bool:
    return all(
        math.isclose(float(x / y) if y else float(x) + 1, 1, rel_tol=1e-12)
        for x, y in zip((a.low, a.nominal, a.high), (b.low, b.nominal, b.high), strict=True)
    )


def key(setup: ls.Setup) -> tuple[Any, ...]:
    return setup.front, setup.rear, setup.links, str(setup.tyre)


def test_every_measure_is_what_a_comparison_tells() -> None:
    goals = ls.Goals(wishes=[ls.Wish(name, "more") for name in MEASURES])
    seen = 0
    for setup, wishes, _, _ in ls.survey(TRAIL, SPACE, goals):
        seen += 1
        if seen % 5:
            continue
        comparison = ls.compare(TRAIL, TRAIL.stock, setup)
        for (name, told), value in zip(MEASURES.items(), wishes, strict=True):
            assert same(told(comparison), value), (name, key(setup))
    assert seen > 100


def test_speedometer_and_engine_speed_are_those_of_an_appraisal() -> None:
    goals = ls.Goals(
        wishes=[
            ls.Wish("engine speed", "less", speed="90 km/h"),
            ls.Wish("engine speed", "less", speed="25 km/h", gear=2),
            ls.Wish("speedometer beyond rule", "less"),
        ]
    )
    for setup, wishes, _, _ in ls.survey(TRAIL, SPACE, goals):
        appraisal = ls.appraise(TRAIL, setup)
        assert same(wishes[0], appraisal.engine_speed_at("90 km/h", 6))
        assert same(wishes[1], appraisal.engine_speed_at("25 km/h", 2))
        verdicts = {appraisal.speedometer.verdict(f"{v} km/h") for v in (40, 80, 120)}
        assert (wishes[2].high == 0) == (verdicts == {"lawful"})
        assert (wishes[2].low > 0) == bool(verdicts & {"too low", "too high"})


@settings(max_examples=30, deadline=None)
@given(
    st.lists(changes, min_size=1, max_size=4, unique=True),
    st.lists(st.sampled_from(["less", "more", 0.05]), min_size=4, max_size=4),
)
def test_the_front_is_that_of_a_general_library(names: list[str], wants: list[Any]) -> None:
    goals = ls.Goals(wishes=[ls.Wish(name, want) for name, want in zip(names, wants, strict=False)])
    setups, rows = [], []
    for setup, wishes, _, _ in ls.survey(TRAIL, SPACE, goals):
        setups.append(key(setup))
        rows.append(
            [
                value.nominal if want == "less" else -value.nominal if want == "more" else abs(value.nominal - want)
                for value, want in zip(wishes, wants, strict=False)
            ]
        )
    nothing_beats = moocore.is_nondominated(np.array(rows), keep_weakly=True)
    choice = ls.choose(TRAIL, SPACE, goals)
    assert sorted(key(c.setup) for c in choice.front) == sorted(
        s for s, n in zip(setups, nothing_beats, strict=True) if n
    )


@settings(max_examples=30, deadline=None)
@given(
    st.lists(changes, min_size=2, max_size=3, unique=True), st.lists(st.floats(0.1, 5), min_size=3, max_size=3),
    st.floats(-0.1, 0.1), st.floats(0.01, 100),
)  # fmt: skip
def test_the_ranking_is_that_of_brute_force(names: list[str], weights: list[float], least: float, scale: float) -> None:
    def goals(by: float) -> ls.Goals:
        return ls.Goals(
            limits=[ls.Limit("thrust change", least=least)],
            wishes=[ls.Wish(n, "more", weight=w * by) for n, w in zip(names, weights, strict=False)],
        )

    kept = [
        (key(setup), [-value.nominal for value in wishes])
        for setup, wishes, _, broken in ls.survey(TRAIL, SPACE, goals(1))
        if not broken
    ]
    front = [
        (name, losses)
        for name, losses in kept
        if not any(all(a <= b for a, b in zip(other, losses, strict=True)) and other != losses for _, other in kept)
    ]
    low = [min(losses[i] for _, losses in front) for i in range(len(names))]
    high = [max(losses[i] for _, losses in front) for i in range(len(names))]
    used = weights[: len(names)]

    def score(losses: list[float]) -> float:
        return sum(
            w / sum(used) * (own - a) / (b - a) if b > a else 0
            for w, own, a, b in zip(used, losses, low, high, strict=True)
        )

    scores = {name: score(losses) for name, losses in front}
    choice = ls.choose(TRAIL, SPACE, goals(1))
    assert {key(c.setup) for c in choice.front} == set(scores)
    for chosen in choice.front:
        assert chosen.score == pytest.approx(scores[key(chosen.setup)], abs=1e-9)
    assert all(a.score <= b.score + 1e-12 for a, b in itertools.pairwise(choice.front))
    again = ls.choose(TRAIL, SPACE, goals(scale), threads=2)
    assert [key(c.setup) for c in again.front] == [key(c.setup) for c in choice.front]


def test_the_order_of_the_lists_means_nothing() -> None:
    goals = ls.Goals(
        wishes=[ls.Wish("thrust change", 0.0), ls.Wish("cost", "less"), ls.Wish("rear life change", "more")]
    )
    choice = ls.choose(TRAIL, SPACE, goals)
    other = ls.Space(fronts=SPACE.fronts[::-1], rears=SPACE.rears[::-1] + SPACE.rears[:2], tyres=SPACE.tyres[::-1], chains=SPACE.chains)  # fmt: skip
    assert [key(c.setup) for c in ls.choose(TRAIL, other, goals).front] == [key(c.setup) for c in choice.front]


@settings(max_examples=20, deadline=None)
@given(st.floats(-0.2, 0.2), st.floats(0, 0.1))
def test_a_tighter_limit_never_adds_a_set_up(least: float, more: float) -> None:
    def kept(at_least: float) -> set[Any]:
        goals = ls.Goals(limits=[ls.Limit("thrust change", least=at_least)], wishes=[ls.Wish("cost", "less")])
        return {key(setup) for setup, _, _, broken in ls.survey(TRAIL, SPACE, goals) if not broken}

    assert kept(least + more) <= kept(least)


def test_tyres_within_a_share_of_the_circumference_make_a_space() -> None:
    tyres = [near.tyre for near in ls.closest_sizes("120/90-18", 0.02)]
    space = ls.Space(fronts=[13], rears=range(46, 53), tyres=tyres, chains=SPACE.chains)
    choice = ls.choose(TRAIL, space, ls.Goals(wishes=[ls.Wish("thrust change", 0.0)]))
    assert len(tyres) > 3 and choice.examined == 7 * len({str(t) for t in tyres})


def test_the_chain_on_the_machine_can_be_kept_or_shortened_but_not_made_longer() -> None:
    stock = TRAIL.stock
    keep = ls.ChainOffer(made=stock.chain_made, longest=stock.links, price=0.0, labour=5.0)
    new = ls.ChainOffer(made=stock.chain_made, price=70.0)
    space = ls.Space(fronts=[13], rears=range(40, 56), tyres=SPACE.tyres[:1], chains=[keep, new])
    goals = ls.Goals(wishes=[ls.Wish("chain changed", "less")])
    rows = {(s.rear, s.links): [] for s, *_ in ls.survey(TRAIL, space, goals)}
    priced = ls.Goals(wishes=[ls.Wish("cost", "less")])
    rears = [ls.SprocketOffer(t, price=0.0) for t in range(40, 56)]
    for setup, (cost,), _, _ in ls.survey(
        TRAIL, ls.Space(fronts=[13], rears=rears, tyres=SPACE.tyres[:1], chains=[keep, new]), priced
    ):
        rows[setup.rear, setup.links].append(cost.nominal)
    for (_, links), costs in rows.items():
        assert sorted(costs) == ([70.0] if links > stock.links else [0.0, 0.0] if links == stock.links else [5.0, 70.0])
    assert {links for _, links in rows} >= {stock.links - 2, stock.links, stock.links + 2}


def test_robust_judges_by_the_worse_end() -> None:
    limit = ls.Limit("thrust change", least=0.0)
    goals = ls.Goals(limits=[limit], wishes=[ls.Wish("speed change", "more")], robust=True)
    choice = ls.choose(TRAIL, SPACE, goals)
    likely = ls.choose(TRAIL, SPACE, ls.Goals(limits=[limit], wishes=goals.wishes))
    assert choice.kept < likely.kept
    for chosen in choice.front:
        change = ls.compare(TRAIL, TRAIL.stock, chosen.setup).thrust_change
        assert change.low >= -1e-12 and chosen.sure and same(chosen.limits[0], change)


def test_when_nothing_keeps_all_limits_it_says_what_would_have_to_give_way() -> None:
    limits = [
        ls.Limit("thrust change", least=0.25), ls.Limit("top speed", least="118 km/h"), ls.Limit("front teeth", least=12),
    ]  # fmt: skip
    choice = ls.choose(TRAIL, SPACE, ls.Goals(limits=limits, wishes=[ls.Wish("cost", "less")]))
    assert choice.kept == 0 and not choice.ranked and choice.relaxations
    every = [
        broken for *_, broken in ls.survey(TRAIL, SPACE, ls.Goals(limits=limits, wishes=[ls.Wish("cost", "less")]))
    ]
    fewest = {frozenset(b) for b in every if not any(set(o) < set(b) for o in every)}
    assert {frozenset(r.limits) for r in choice.relaxations} == fewest
    for relaxation in choice.relaxations:
        assert relaxation.reason.startswith("Let ") and "instead of at least" in relaxation.reason
        eased = []
        for place, limit in enumerate(limits):
            by = relaxation.limits.get(place)
            eased.append(limit if by is None else ls.Limit(limit.measure, least=limit.least - by))
        assert ls.choose(TRAIL, SPACE, ls.Goals(limits=eased, wishes=[ls.Wish("cost", "less")])).kept >= 1


def test_the_reason_says_what_is_gained_and_given_up() -> None:
    goals = ls.Goals(
        wishes=[ls.Wish("thrust change", 0.05), ls.Wish("cost", "less"), ls.Wish("rear life change", "more")]
    )
    choice = ls.choose(TRAIL, SPACE, goals, shortlist=3)
    assert len(choice.ranked) == 3
    best = choice.ranked[0]
    assert (
        "thrust change" in best.reason and "for a wished +5.0 %" in best.reason and "Against the next it" in best.reason
    )
    assert best.reason == best.tell("metric")
    assert any("the least of all" in c.reason for c in choice.front)


def test_progress_is_told_and_stops() -> None:
    goals = ls.Goals(wishes=[ls.Wish("cost", "less")])
    told: list[tuple[int, int]] = []
    done = ls.choose(TRAIL, SPACE, goals, progress=lambda *at: told.append(at))
    assert done.complete and told[-1][0] == told[-1][1] and [a for a, _ in told] == sorted(a for a, _ in told)
    assert not ls.choose(TRAIL, SPACE, goals, progress=lambda *_: False).complete

    def breaks(*_: int) -> bool:
        raise KeyError("mine")

    with pytest.raises(KeyError, match="mine"):
        ls.choose(TRAIL, SPACE, goals, progress=breaks)
    visited: list[int] = []

    def visit(*_: Any) -> bool:
        visited.append(1)
        return len(visited) < 7

    assert ls.survey(TRAIL, SPACE, goals, visit) == 7 == len(visited)


def test_a_bar_shows_when_it_takes_long(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    from layshaft import choosing

    monkeypatch.setattr(choosing, "BAR_AFTER", -1.0)
    ls.choose(TRAIL, SPACE, ls.Goals(wishes=[ls.Wish("cost", "less")]))
    assert "set-ups" in capsys.readouterr().err
    ls.choose(TRAIL, SPACE, ls.Goals(wishes=[ls.Wish("cost", "less")]), progress=False)
    assert capsys.readouterr().err == ""


def test_questions_and_answers_pickle() -> None:
    goals = ls.Goals(
        limits=[ls.Limit("engine speed", most="7000 rpm", speed="90 km/h"), ls.Limit("wear room", least=0.01)],
        wishes=[ls.Wish("thrust change", 0.1, weight=2), ls.Wish("cost", "less")], robust=True,
    )  # fmt: skip
    for value in (SPACE, goals, *goals.limits, *goals.wishes, *SPACE.fronts[:1], *SPACE.tyres, *SPACE.chains):
        assert pickle.loads(pickle.dumps(value)) == value and eval(repr(value), vars(ls)) == value
    choice = ls.choose(TRAIL, SPACE, goals)
    again = pickle.loads(pickle.dumps(choice))
    assert [(key(c.setup), c.score, c.reason, c.wishes, c.limits, c.cautions) for c in again.front] == [
        (key(c.setup), c.score, c.reason, c.wishes, c.limits, c.cautions) for c in choice.front
    ]
    assert (again.examined, again.kept, again.ruled_out) == (choice.examined, choice.kept, choice.ruled_out)


QUESTION = {
    "layshaft": 1,
    "space": {
        "fronts": [12, {"teeth": 13, "material": "steel", "price": 20}], "rears": [48, 50],
        "tyres": ["120/80-18", {"tyre": "120/90-18", "tyre_use": "special", "price": 95, "labour": 25}],
        "chains": [{"chain": "520", "longest": 120, "price": {"low": 60, "nominal": 70, "high": 80}}], "links": [108, 110],
    },
    "goals": {
        "limits": [{"measure": "engine speed", "speed": "90 km/h", "gear": 6, "most": "6900 rpm"}],
        "wishes": [{"measure": "thrust change", "target": 0.1, "weight": 2}, {"measure": "cost", "want": "less"}],
        "robust": True,
    },
}  # fmt: skip


def test_a_question_is_read_from_json() -> None:
    space, goals = ls.question_from_json(json.dumps(QUESTION))
    assert space == ls.Space(
        fronts=[12, ls.SprocketOffer(13, material="steel", price=20)], rears=[48, 50],
        tyres=["120/80-18", ls.TyreOffer(ls.TyreSize("120/90-18", "special"), price=95, labour=25)],
        chains=[ls.ChainOffer(series="520", longest=120, price=ls.Band(60.0, 70.0, 80.0))], links=[108, 110],
    )  # fmt: skip
    assert goals == ls.Goals(
        limits=[ls.Limit("engine speed", most="6900 rpm", speed="90 km/h", gear=6)],
        wishes=[ls.Wish("thrust change", 0.1, weight=2), ls.Wish("cost", "less")], robust=True,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        (("space", "fronts"), [], "fronts: none was given"),
        (("space", "rears", 0), "48", "$.space.rears[0]"),
        (("space", "chains", 0, "price", "low"), -1, "price"),
        (("goals", "limits", 0, "measure"), "engine sped", 'one of "thrust change"'),
        (("goals", "limits", 0, "most"), "6900 mm", "unknown unit"),
        (("goals", "wishes", 1, "want"), "least", "$.goals.wishes[1].want"),
        (("goals", "wishes", 0, "want"), "less", 'or else a "target"'),
        (("goals", "colour"), "red", 'unknown key "colour"'),
    ],
)
def test_a_spoilt_question_says_where(path: tuple[Any, ...], value: object, words: str) -> None:
    spoilt = json.loads(json.dumps(QUESTION))
    at = spoilt
    for step in path[:-1]:
        at = at[step]
    at[path[-1]] = value
    with pytest.raises(ls.Error) as told:
        ls.question_from_json(json.dumps(spoilt))
    assert words in str(told.value)


@pytest.mark.parametrize(
    ("call", "kind", "words"),
    [
        (lambda: ls.Limit("thrust", least=0.0), ls.RangeError, "measure is 'thrust'; expected one of 'thrust change'"),
        (lambda: ls.Limit("thrust change"), ls.Error, "least, most, or both"),
        (lambda: ls.Limit("top speed", least=100), TypeError, "least: expected a Speed"),
        (lambda: ls.Limit("cost", most="12 km/h"), TypeError, "most"),
        (lambda: ls.Limit("engine speed", most="6000 rpm"), ls.Error, "needs the road speed"),
        (lambda: ls.Wish("cost", "fewer"), TypeError, "want"),
        (lambda: ls.Wish("cost", "less", weight=0), ls.RangeError, "weight"),
        (lambda: ls.Wish("cost", float("nan")), ls.RangeError, "want is not a number"),
        (lambda: ls.Goals(wishes=[]), ls.RangeError, "number of wishes is 0; expected 1 to 16"),
        (lambda: ls.Space(fronts=[13], rears=[]), ls.Error, "rears: none was given"),
        (lambda: ls.Space(fronts=[13], rears=["48"]), TypeError, "rears[0]"),
        (lambda: ls.TyreOffer(), ls.Error, "neither was stated"),
        (lambda: ls.SprocketOffer(13, price=-1), ls.RangeError, "price is -1"),
        (lambda: ls.choose(machine("cargo_cycle"), SPACE, ls.Goals(limits=[ls.Limit("tight point slack", least="5 mm")], wishes=[ls.Wish("cost", "less")])), ls.Error, '"tight point slack" needs'),
        (lambda: ls.choose(TRAIL, SPACE, ls.Goals(wishes=[ls.Wish("cost", "less")]), threads=-1), ls.RangeError, "threads"),
        (lambda: ls.choose(TRAIL, SPACE, ls.Goals(wishes=[ls.Wish("cost", "less")]), shortlist=0), ls.RangeError, "shortlist"),
    ],
)  # fmt: skip
def test_a_wrong_call_is_told_what_was_expected(call: Any, kind: type[Exception], words: str) -> None:
    with pytest.raises(kind) as told:
        call()
    assert words in str(told.value)


def test_sensitivity_says_where_the_decision_changes() -> None:
    wishes = [ls.Wish("rear life change", "more"), ls.Wish("cost", "less", weight=0.1)]
    cost = ls.choose(TRAIL, SPACE, ls.Goals(wishes=wishes)).ranked[0].wishes[1].nominal
    goals = ls.Goals(limits=[ls.Limit("cost", most=1.02 * cost)], wishes=wishes)  # so that money is short
    before = key(ls.choose(TRAIL, SPACE, goals).ranked[0].setup)
    told = {one.input: one for one in ls.sensitivity(TRAIL, SPACE, goals)}
    assert {"tyre size", "torque", "drag", "mass", "front price", "rear price", "chain price", "tyre price"} == set(
        told
    )
    price = told["rear price"]
    flips = [flip for flip in (price.below, price.above) if flip is not None]
    assert flips, "a decision about money hangs on a price"

    def at(factor: float) -> Any:
        rears = [ls.SprocketOffer(r.teeth, price=factor * r.price.nominal) for r in SPACE.rears]
        space = ls.Space(fronts=SPACE.fronts, rears=rears, tyres=SPACE.tyres, chains=SPACE.chains)
        return key(ls.choose(TRAIL, space, goals).ranked[0].setup)

    for flip in flips:
        less = 1 + (flip.factor - 1) * 0.999
        assert at(less) == before and at(flip.factor) == key(flip.best) != before
    with pytest.raises(ls.RangeError, match="span is 5"):
        ls.sensitivity(TRAIL, SPACE, goals, span=5)


def test_every_measure_can_be_asked_of_the_trail_bike() -> None:
    at = {"engine speed": {"speed": "80 km/h"}}
    for name, meaning in ls.measures().items():
        goals = ls.Goals(wishes=[ls.Wish(name, "more", **at.get(name, {}))])
        choice = ls.choose(TRAIL, SPACE, goals)
        assert choice.front and meaning, name
        for value in itertools.chain.from_iterable(c.wishes for c in choice.front):
            assert value.low <= value.nominal <= value.high

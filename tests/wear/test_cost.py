# SPDX-License-Identifier: MIT
"""What parts cost on the road: against riding the distance part by part, and what must always hold."""

from __future__ import annotations

import datetime
import math
import pickle
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from pathlib import Path

import layshaft as ls
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"
Money = st.integers(0, 500)


def bands(values: st.SearchStrategy[int]) -> st.SearchStrategy[tuple[int, int, int]]:
    return st.tuples(values, values, values).map(lambda three: tuple(sorted(three)))  # type: ignore[arg-type]


@dataclass(frozen=True)
class Part:
    price: tuple[int, int, int]
    labour: tuple[int, int, int]
    life: tuple[int, int, int]  # km

    def bound(self, factor: float = 1.0, unit: ls.Length = ls.km) -> ls.CostPart:
        return ls.CostPart(
            price=ls.Band(*(factor * p for p in self.price)),
            labour=ls.Band(*(factor * p for p in self.labour)),
            life=ls.Band(*(km * (ls.km / unit) * unit for km in self.life)),
        )


def parts(shortest: int = 10, longest: int = 4000) -> st.SearchStrategy[Part]:
    tens = st.integers(shortest, longest).map(lambda n: 10 * n)
    return st.builds(Part, bands(Money), bands(Money), bands(tens))


LOW, NOMINAL, HIGH = 0, 1, 2


# --- Running cost ---------------------------------------------------------------------------------------------------------


@given(several=st.lists(parts(), min_size=1, max_size=16))
def test_running_cost_is_the_money_of_a_million_kilometres(several: list[Part]) -> None:
    cost = ls.running_cost([one.bound() for one in several])
    for corner, life_corner in ((LOW, HIGH), (NOMINAL, NOMINAL), (HIGH, LOW)):
        each = [Fraction(1000, one.life[life_corner]) * (one.price[corner] + one.labour[corner]) for one in several]
        attribute = ("low", "nominal", "high")[corner]
        assert getattr(cost.per_1000_km, attribute) == pytest.approx(float(sum(each)), rel=1e-12)
        for told, exact in zip(cost.parts, each, strict=True):
            assert getattr(told.per_1000_km, attribute) == pytest.approx(float(exact), rel=1e-12)


@given(one=parts(), other=parts(), power=st.integers(-20, 20))
def test_costs_scale_with_prices(one: Part, other: Part, power: int) -> None:
    factor = 2.0**power  # exact, so that it must hold to the bit
    before, after = (
        ls.running_cost([one.bound(), other.bound()]),
        ls.running_cost([one.bound(factor), other.bound(factor)]),
    )
    even, later = ls.break_even(one.bound(), other.bound()), ls.break_even(one.bound(factor), other.bound(factor))
    for attribute in ("low", "nominal", "high"):
        assert getattr(after.per_1000_km, attribute) == factor * getattr(before.per_1000_km, attribute)
        assert getattr(later.difference, attribute) == factor * getattr(even.difference, attribute)
        assert getattr(later.price, attribute) == factor * getattr(even.price, attribute)
        if even.life_ratio and later.life_ratio:
            assert getattr(later.life_ratio, attribute) == getattr(even.life_ratio, attribute)
    assert (even.cheaper, even.certain) == (later.cheaper, later.certain)


@given(one=parts())
def test_units_cancel(one: Part) -> None:
    by_km, by_mile = ls.running_cost([one.bound()]), ls.running_cost([one.bound(unit=ls.mile)])
    assert by_mile.per_1000_km.high == pytest.approx(by_km.per_1000_km.high, rel=1e-14)
    assert by_mile.per_1000_km.low == pytest.approx(by_km.per_1000_km.low, rel=1e-14)


# --- Break-even -----------------------------------------------------------------------------------------------------------


@given(base=parts(), trial=parts())
def test_break_even_is_certain_where_the_bands_do_not_meet(base: Part, trial: Part) -> None:
    told = ls.break_even(base.bound(), trial.bound())
    first, second = told.base_per_1000_km, told.trial_per_1000_km
    assert told.certain == (first.high < second.low or second.high < first.low)
    assert told.cheaper == (
        "base" if first.nominal < second.nominal else "trial" if second.nominal < first.nominal else "alike"
    )
    assert told.difference.nominal == second.nominal - first.nominal
    # Whatever prices and lives within the bands: the difference lies within its own.
    for corners in product((LOW, NOMINAL, HIGH), repeat=4):
        money, life, other_money, other_life = corners
        difference = Fraction(1000, trial.life[other_life]) * (trial.price[other_money] + trial.labour[other_money])
        difference -= Fraction(1000, base.life[life]) * (base.price[money] + base.labour[money])
        slack = 1e-9 * (1.0 + abs(float(difference)))
        assert told.difference.low - slack <= difference <= told.difference.high + slack


@given(base=parts(), trial=parts())
def test_both_cost_alike_at_the_price_and_at_the_lives_that_are_told(base: Part, trial: Part) -> None:
    told = ls.break_even(base.bound(), trial.bound())
    scale = told.base_per_1000_km.nominal + told.trial_per_1000_km.nominal
    if told.price.nominal >= 0.0:
        cheap = ls.CostPart(price=told.price.nominal, labour=trial.bound().labour, life=trial.bound().life)
        assert ls.break_even(base.bound(), cheap).difference.nominal == pytest.approx(0.0, abs=1e-9 * (1.0 + scale))
    if told.life_ratio and 100 <= told.life_ratio.nominal * base.life[NOMINAL] <= 1e6:
        life = told.life_ratio.nominal * base.bound().life.nominal
        lasting = ls.CostPart(price=trial.bound().price, labour=trial.bound().labour, life=life)
        assert ls.break_even(base.bound(), lasting).difference.nominal == pytest.approx(0.0, abs=1e-9 * (1.0 + scale))


# --- Replacement, by riding the distance -----------------------------------------------------------------------------------


@dataclass
class Fitted:
    """A part from its fitting to when it is due, and whether it was taken off before the end of the ride."""

    name: str
    at: float
    due: float
    labour: float
    off: bool = False


class Borderline(Exception):
    """Two dates that rounding alone can tell apart."""


def within(a: float, b: float, distance: int) -> bool:
    """Whether a lies before b or at most so far behind it."""
    if abs(a - b - distance) < 1e-6:
        raise Borderline
    return a <= b + distance


def ride(
    chain_life: int, front_life: int, rear_life: int, mismatch: float, labour: dict[str, int], set_labour: int,
    plan: int, end: int,
) -> list[Fitted]:  # fmt: skip
    """All parts that are bought over the distance under a plan: so many chains a set, or each by itself for 0."""
    lives = {"front": float(front_life), "rear": float(rear_life)}
    names = ("chain", "front", "rear")
    history: list[Fitted] = []
    on: dict[str, Fitted] = {}
    chains_of_set = 0

    def fit(which: tuple[str, ...], now: float) -> None:
        nonlocal chains_of_set
        single = sum(labour.values())
        whole = len(which) == 3
        for name in (*(n for n in which if n != "chain"), *(n for n in which if n == "chain")):
            cost = float(labour[name])
            if whole:
                cost = set_labour * labour[name] / single if single else set_labour / 3
            if name == "chain":
                run = max((now - on[other].at) / lives[other] for other in ("front", "rear"))
                due = now + chain_life / (1 + (mismatch - 1) * run)
            else:
                due = now + lives[name]
            if name in on:
                on[name].off = True
            on[name] = Fitted(name, now, due, cost)
            history.append(on[name])
        chains_of_set = 1 if whole else chains_of_set + ("chain" in which)

    fit(names, 0.0)
    while True:
        due = min(one.due for one in on.values())
        if within(end, due, 1):
            break
        if plan == 0:
            fit(tuple(name for name in names if within(on[name].due, due, 1)), due)
        elif chains_of_set >= plan or any(within(on[name].due, due, 1) for name in ("front", "rear")):
            fit(names, due)
        else:
            fit(("chain",), due)
    if plan:
        # Sprockets of the last set would come off with its last chain: that is the time they are used up over.
        sprockets, now = min(on["front"].due, on["rear"].due), on["chain"].due
        born = on["front"].at
        for _ in range(chains_of_set, plan):
            if within(sprockets, now, 1):
                break
            now += chain_life / (1 + (mismatch - 1) * max((now - born) / life for life in lives.values()))
        on["chain"].due = min(on["chain"].due, sprockets)
        on["front"].due = on["rear"].due = min(now, sprockets)
    return history


@settings(deadline=None, max_examples=60)
@given(
    chain=parts(50, 2000), front=parts(50, 4000), rear=parts(50, 4000), set_labour=bands(Money),
    tenths=bands(st.integers(10, 40)), stretch=st.integers(1, 40),
)  # fmt: skip
def test_the_plans_cost_what_riding_part_by_part_does(
    chain: Part, front: Part, rear: Part, set_labour: tuple[int, int, int], tenths: tuple[int, int, int], stretch: int
) -> None:
    end = 10 + stretch * min(chain.life[LOW], front.life[LOW], rear.life[LOW]) // 4
    drive = ls.DriveCosts(
        chain=chain.bound(), front=front.bound(), rear=rear.bound(),
        set_labour=ls.Band(*map(float, set_labour)), mismatch=ls.Band(*(tenth / 10 for tenth in tenths)),
    )  # fmt: skip
    told = ls.replacement_plans(end * ls.km, drive)
    assert [plan.chains_per_set for plan in told.plans] == [1, 2, 3, 4, 5, 6, 0]
    by_name = {"chain": chain, "front": front, "rear": rear}

    def price_of(
        plan: int, money: int, lives: tuple[int, int, int], mismatch: int
    ) -> tuple[float, float, list[Fitted]]:
        labour = {name: part.labour[money] for name, part in by_name.items()}
        history = ride(*lives, tenths[mismatch] / 10, labour, set_labour[money], plan, end)
        bought, used_up = 0.0, 0.0
        for one in history:
            cost = by_name[one.name].price[money] + one.labour
            bought += cost
            used_up += cost if one.off else cost * min(1.0, (end - one.at) / (one.due - one.at))
        return bought, used_up, history

    corners = [(NOMINAL,) * 5, *product((LOW, HIGH), repeat=5)]
    cheapest: set[int] = set()
    sums: dict[int, list[tuple[float, float]]] = {plan.chains_per_set: [] for plan in told.plans}
    try:
        for money, c, f, r, m in corners:
            lives = (chain.life[c], front.life[f], rear.life[r])
            for plan in told.plans:
                bought, used_up, history = price_of(plan.chains_per_set, money, lives, m)
                sums[plan.chains_per_set].append((bought, used_up))
                if (money, c, f, r, m) == corners[0]:
                    counts = [sum(one.name == name for one in history) for name in by_name]
                    assert counts == [plan.chains, plan.fronts, plan.rears]
            costs = [sums[plan.chains_per_set][-1][1] for plan in told.plans]
            ranked = sorted(costs)
            # Plans that come to the same but for rounding: the first of them, if the library's own rule can tell.
            if any(1e-12 < (cost - ranked[0]) / (ranked[0] or 1.0) < 1e-7 for cost in costs):
                raise Borderline
            cheapest.add(next(i for i, cost in enumerate(costs) if cost <= ranked[0] * (1.0 + 1e-12)))
    except Borderline:
        assume(False)
    for plan in told.plans:
        for which, band in enumerate((plan.bought, plan.used_up)):
            results = [one[which] for one in sums[plan.chains_per_set]]
            assert band.nominal == pytest.approx(results[0], rel=1e-9, abs=1e-9)
            assert band.low == pytest.approx(min(results), rel=1e-9, abs=1e-9)
            assert band.high == pytest.approx(max(results), rel=1e-9, abs=1e-9)
    assert {i for i, plan in enumerate(told.plans) if plan.can_be_cheapest} == cheapest
    assert told.flips == (len(cheapest) > 1)
    assert told.cheapest in told.plans
    assert told.cheapest.used_up.nominal <= min(plan.used_up.nominal for plan in told.plans) * (1.0 + 1e-8)


@given(
    chain=parts(), front=parts(), rear=parts(), set_labour=Money, power=st.integers(-10, 10), stretch=st.integers(1, 9)
)
def test_plans_scale_with_prices(
    chain: Part, front: Part, rear: Part, set_labour: int, power: int, stretch: int
) -> None:
    def told(factor: float) -> ls.ReplacementPlans:
        drive = ls.DriveCosts(
            chain=chain.bound(factor),
            front=front.bound(factor),
            rear=rear.bound(factor),
            set_labour=factor * set_labour,
        )
        return ls.replacement_plans(stretch * 5000 * ls.km, drive)

    before, after = told(1.0), told(2.0**power)
    assert before.cheapest.chains_per_set == after.cheapest.chains_per_set and before.flips == after.flips
    for one, other in zip(before.plans, after.plans, strict=True):
        assert other.bought.high == 2.0**power * one.bought.high
        assert other.used_up.low == 2.0**power * one.used_up.low


# --- The rate of wear of a tread -------------------------------------------------------------------------------------------


@given(
    depth=st.integers(20, 200), worn=st.integers(1, 200), ridden=st.integers(1, 30000), error=st.integers(0, 10),
    least=st.integers(0, 199), odometer=bands(st.integers(90, 110)),
)  # fmt: skip
def test_the_treads_rate_holds_whatever_the_errors_within_their_bounds(
    depth: int, worn: int, ridden: int, error: int, least: int, odometer: tuple[int, int, int]
) -> None:
    assume(worn <= depth and least < depth)
    # Tenths of a millimetre and hundredths of the odometer's factor.
    tenth = 0.1 * ls.mm
    rate = ls.tread_rate(
        ls.DepthReading(depth=depth * tenth, odometer="1000 km"),
        ls.DepthReading(depth=(depth - worn) * tenth, odometer=(1000 + ridden) * ls.km),
        depth_error=error * tenth,
        odometer_factor=ls.Band(*(part / 100 for part in odometer)),
        least=least * tenth,
        per_day="50 km",
    )
    results, lefts = [], []
    for first, second, factor in product((-error, 0, error), (-error, 0, error), odometer):
        before = max(depth + first, 0)
        after = min(max(depth - worn + second, 0), before)
        true = Fraction(100 * ridden, factor)
        results.append(Fraction(before - after, 10) / true * 1000)
        if before > after:
            lefts.append(Fraction(after - least) / (before - after) * true)
    assert rate.per_1000_km.low / ls.mm == pytest.approx(float(min(results)), rel=1e-9, abs=1e-9)
    assert rate.per_1000_km.high / ls.mm == pytest.approx(float(max(results)), rel=1e-9)
    assert rate.per_1000_km.nominal / ls.mm == pytest.approx(worn / 10 / (100 * ridden / odometer[1]) * 1000, rel=1e-9)
    assert rate.measure_again is not None
    assert (rate.distance_left is None) == (worn <= 2 * error and depth - worn + error > 0)
    if rate.distance_left is None:
        assert rate.days_left is None
        return
    assert rate.distance_left.low / ls.km == pytest.approx(float(min(lefts)), rel=1e-6, abs=1e-6)
    assert rate.distance_left.high / ls.km == pytest.approx(float(max(lefts)), rel=1e-6, abs=1e-6)
    assert rate.days_left is not None
    assert rate.days_left.nominal == pytest.approx(rate.distance_left.nominal / (50 * ls.km), rel=1e-12)
    assert rate.measure_again / ls.km == pytest.approx(max(0.0, rate.distance_left.low / ls.km), rel=1e-9, abs=1e-9)


def test_the_rate_agrees_with_the_tread_and_marks_what_is_from_memory() -> None:
    first, second = (
        ls.DepthReading(depth="12 mm", odometer="1000 km"),
        ls.DepthReading(depth="8 mm", odometer="5000 km"),
    )
    rate = ls.tread_rate(first, second, depth_error="0 mm", least="2 mm")
    assert rate.distance_left is not None
    assert (
        rate.distance_left.nominal
        == ls.Tread(new_depth="12 mm", depth="8 mm", least="2 mm", distance="4000 km").distance_left
    )
    assert rate.certainty == "common practice, no source"
    by_hand = ls.tread_rate(first, second, least="2 mm")
    assert by_hand.certainty == "from memory"
    assert by_hand == ls.tread_rate(first, second, least="2 mm", depth_error=None)
    assert by_hand.worn.width / ls.mm == pytest.approx(1.0)  # a quarter of a millimetre, twice, either way


# --- Values and doors ------------------------------------------------------------------------------------------------------

CHAIN = ls.CostPart(
    price=ls.Band(60.0, 80.0, 100.0),
    labour=20.0,
    life=ls.Band(8000 * ls.km, 20000 * ls.km, 40000 * ls.km),
    kind="chain",
)
FRONT = ls.CostPart(price=20, life="20000 km", kind="front sprocket")
REAR = ls.CostPart(price=40, life="30000 km", kind="rear sprocket")
DRIVE = ls.DriveCosts(chain=CHAIN, front=FRONT, rear=REAR)


@pytest.mark.parametrize(
    "value",
    [
        CHAIN,
        FRONT,
        DRIVE,
        ls.DriveCosts(chain=CHAIN, front=FRONT, rear=REAR, set_labour=30, mismatch=1.2),
        ls.running_cost([CHAIN, FRONT, REAR]),
        ls.running_cost([CHAIN]).parts[0],
        ls.break_even(CHAIN, REAR),
        ls.break_even(ls.CostPart(price=0, life="500 km"), REAR),
        ls.replacement_plans("40000 km", DRIVE),
        ls.replacement_plans("40000 km", DRIVE).cheapest,
        ls.DepthReading(depth="12 mm", odometer="1000 km"),
        ls.tread_rate(ls.DepthReading(depth="9 mm", odometer="0 km"), ls.DepthReading(depth="7 mm", odometer="900 km")),
        ls.tread_rate(
            ls.DepthReading(depth="9 mm", odometer="0 km"),
            ls.DepthReading(depth="7 mm", odometer="900 km"),
            least="2 mm",
            per_day="30 km",
        ),
    ],
    ids=lambda value: type(value).__name__,
)
def test_values_come_back_from_their_repr_and_from_pickles(value: object) -> None:
    names = {name: getattr(ls, name) for name in ls.__all__}
    assert eval(repr(value), names) == value
    assert pickle.loads(pickle.dumps(value)) == value
    assert hash(eval(repr(value), names)) == hash(value)


READING = ls.DepthReading(depth="9 mm", odometer="100 km")


@pytest.mark.parametrize(
    ("call", "kind", "words"),
    [
        (lambda: ls.CostPart(price=-1, life="500 km"), ls.RangeError, "price is -1; expected 0 to 1000000000000"),
        (lambda: ls.CostPart(price=1, life="50 km"), ls.RangeError, "life is 50 km; expected 100 km to 1000000 km"),
        (lambda: ls.CostPart(price=1, life="500 km", labour=float("nan")), ls.RangeError, "labour"),
        (lambda: ls.CostPart(price="80", life="500 km"), TypeError, "price"),
        (lambda: ls.CostPart(price=1, life=500), TypeError, "life"),
        (lambda: ls.CostPart(price=1, life="500 km", kind="tire"), ls.RangeError, "kind is 'tire'; expected one of 'chain', "),
        (lambda: ls.running_cost([]), ls.Error, "parts: none was given; expected 1 to 16"),
        (lambda: ls.running_cost([CHAIN] * 17), ls.Error, "parts: more than 16 were given"),
        (lambda: ls.running_cost([CHAIN, 3]), TypeError, "parts[1]: expected a CostPart"),
        (lambda: ls.break_even(CHAIN, None), TypeError, "trial: expected a CostPart"),
        (lambda: ls.replacement_plans("5 km", DRIVE), ls.RangeError, "distance is 5 km; expected 10 km to 1000000 km"),
        (lambda: ls.replacement_plans("500 km", ls.DriveCosts(chain=CHAIN, front=FRONT, rear=REAR, mismatch=0.5)), ls.RangeError, "mismatch is 0.5; expected 1 to 10"),
        (lambda: ls.tread_rate(READING, READING), ls.RangeError, "second.odometer is 100 km; expected at least 1 km more"),
        (lambda: ls.tread_rate(READING, ls.DepthReading(depth="10 mm", odometer="200 km")), ls.RangeError, "second.depth is 10 mm; expected 0 mm to 9 mm"),
        (lambda: ls.life_on_worn_sprockets("9000 km", 0.9, 0.5), ls.Error, "life_on_worn_sprockets does not hold"),
    ],
)  # fmt: skip
def test_a_wrong_call_is_told_what_was_expected(call, kind: type[Exception], words: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(kind) as told:
        call()
    assert words in str(told.value)


def test_costs_are_shown_as_bands_that_may_be_given_as_numbers() -> None:
    assert FRONT.price == ls.Band(20.0, 20.0, 20.0) and FRONT.labour == ls.Band(0.0, 0.0, 0.0)
    cost = ls.running_cost([CHAIN])
    assert cost.per_1000_km == ls.Band(2.0, 5.0, 15.0)
    assert cost.parts[0].kind == "chain"


MACHINE = ls.Machine.from_json((MACHINES / "trail_bike.json").read_text(encoding="utf-8"))


def two_ways() -> ls.Comparison:
    """One tooth fewer in front against more behind: 12/48 and 13/52 are one ratio."""
    stock = MACHINE.stock
    return ls.compare(
        MACHINE,
        ls.Setup(front=13, rear=52, tyre=stock.tyre, chain_made=stock.chain_made),
        ls.Setup(front=12, rear=48, tyre=stock.tyre, chain_made=stock.chain_made),
    )


def test_costs_after_scale_lives_as_the_comparison_says() -> None:
    comparison = two_ways()
    told = ls.costs_after(comparison, DRIVE)
    wear = comparison.wear
    assert told.trial.front.life.nominal / DRIVE.front.life.nominal == pytest.approx(1 + wear.front_life_change.nominal)
    assert told.trial.rear.life.low / DRIVE.rear.life.low == pytest.approx(1 + wear.rear_life_change.low)
    assert 1 + told.chain_life_change.nominal == pytest.approx(1 / (1 + wear.chain_stretch_change.nominal))
    parts = [DRIVE.chain, DRIVE.front, DRIVE.rear]
    assert told.base_per_1000_km == ls.running_cost(parts).per_1000_km
    assert told.difference.low > 0  # for sure, though both costs are bands that overlap
    assert told.trial_per_1000_km.low < told.base_per_1000_km.high
    dearer = ls.costs_after(comparison, DRIVE, rear_price=ls.Band(70.0, 80.0, 90.0))
    assert dearer.trial.rear.price == ls.Band(70.0, 80.0, 90.0)
    assert dearer.difference.nominal > told.difference.nominal


def test_costs_after_refuse_what_no_part_costs_or_lives() -> None:
    comparison = two_ways()
    with pytest.raises(ls.RangeError, match="trial: rear: price is -1"):
        ls.costs_after(comparison, DRIVE, rear_price=-1)
    long = ls.CostPart(price=1, life="110 km")
    with pytest.raises(ls.RangeError, match="trial: front: life is"):
        ls.costs_after(comparison, ls.DriveCosts(chain=CHAIN, front=long, rear=REAR))
    with pytest.raises(TypeError, match="base: expected a DriveCosts"):
        ls.costs_after(comparison, CHAIN)


@given(st.integers(0, 36525), st.integers(1, 5000), st.dates(datetime.date(1900, 1, 1), datetime.date(2200, 1, 1)))
def test_replace_by_counts_days_as_datetime_does(days: int, per_day: int, measured: datetime.date) -> None:
    left = (days + 0.5) * per_day * ls.km if days < 36525 else 36525 * per_day * ls.km
    if left > 1e7 * ls.km:
        left = 1e7 * ls.km
        days = math.floor(1e7 / per_day)
    by = ls.replace_by(left, measured, per_day * ls.km)
    assert by.expected == (measured + datetime.timedelta(days) if days <= 36525 else None)
    assert by.earliest == by.latest == by.expected


def test_replace_by_takes_what_a_fit_or_a_tread_tells() -> None:
    day = datetime.date(2026, 5, 30)
    left = ls.DistanceLeft(low="100 km", nominal="250 km", high=None)
    told = ls.replace_by(left, day, "10 km")
    assert told == ls.ReplaceBy(earliest=datetime.date(2026, 6, 9), expected=datetime.date(2026, 6, 24), latest=None)
    past = ls.Band(-50 * ls.km, -10 * ls.km, 30 * ls.km)
    assert ls.replace_by(past, day, "10 km").earliest == day
    with pytest.raises(TypeError, match=r"measured: expected a datetime\.date"):
        ls.replace_by(left, datetime.datetime(2026, 5, 30), "10 km")
    with pytest.raises(TypeError, match=r"measured: expected a datetime\.date"):
        ls.replace_by(left, "2026-05-30", "10 km")  # type: ignore[arg-type]
    with pytest.raises(ls.RangeError, match="per_day is 0 m"):
        ls.replace_by(left, day, "0 km")


@given(
    st.lists(st.floats(0.001, 1.0), min_size=3, max_size=3).map(sorted),
    st.lists(st.floats(-0.1, 1.1), min_size=3, max_size=3).map(sorted),
)
def test_tightened_is_what_both_allow(assumed: list[float], measured: list[float]) -> None:
    a, m = ls.Band(*assumed), ls.Band(*measured)
    told = ls.tightened(a, m)
    assert told.low <= told.nominal <= told.high
    if max(a.low, m.low) <= min(a.high, m.high):
        assert (told.low, told.high) == (max(a.low, m.low), min(a.high, m.high))
    else:
        assert told == m


def test_a_wear_outlook_is_tightened_by_a_fit() -> None:
    assumed = ls.wear_outlook(MACHINE, MACHINE.stock)
    grows = assumed.stretch_per_1000_km
    measured = ls.Band(0.9 * grows.nominal, grows.nominal, 1.2 * grows.nominal)
    told = ls.wear_outlook(MACHINE, MACHINE.stock, measured=measured)
    assert told.stretch_per_1000_km == measured
    assert told.chain_life.high / told.chain_life.low == pytest.approx(1.2 / 0.9)
    with pytest.raises(ls.RangeError, match="measured"):
        ls.wear_outlook(MACHINE, MACHINE.stock, measured=0.2)


def test_a_sprocket_is_worn_out_within_its_tooth() -> None:
    for teeth in (11, 15, 48):
        sprocket = ls.Sprocket("520", teeth)
        thick = ls.tooth_thickness(sprocket.pitch_diameter, sprocket.series.roller_diameter, teeth)
        deep = ls.flank_wear_limit(sprocket)
        assert 0 * ls.mm < deep.low < deep.nominal < deep.high < 0.5 * thick
        assert deep.high / thick == pytest.approx(0.35)

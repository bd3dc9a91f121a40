# SPDX-License-Identifier: MIT
"""The strategies that are shipped for others' tests: what they give is valid, as varied as they say, and reproducible."""

from __future__ import annotations

import doctest
from typing import Any

import layshaft as ls
import pytest
from hypothesis import Phase, find, given, settings
from hypothesis import strategies as st
from layshaft import testing


@given(testing.machines())
def test_machines_go_round_by_json_and_close_their_stock_chain(machine: ls.Machine) -> None:
    assert ls.Machine.from_json(machine.to_json()) == machine
    assert ls.appraise(machine, machine.stock).chain.fits


@given(testing.machines_with_setups(engine=True))
def test_a_setup_can_be_appraised_compared_and_asked_for_its_road(pair: tuple[ls.Machine, ls.Setup]) -> None:
    machine, setup = pair
    comparison = ls.compare(machine, machine.stock, setup)
    assert comparison.trial.chain.links % 2 == 0 and comparison.trial.road is not None
    lowest = comparison.trial.speed_range(1).lowest
    assert 0 * ls.kmh < lowest.low <= lowest.nominal <= lowest.high


@pytest.mark.parametrize("notation", testing.NOTATIONS)
def test_a_notation_gives_markings_of_its_own(notation: Any) -> None:
    @settings(max_examples=30, database=None)
    @given(testing.designations(notations=notation), testing.designations(notations=notation, marks=False))
    def all_are(marked: str, bare: str) -> None:
        assert ls.TyreSize(marked).notation == ls.TyreSize(bare).notation == notation
        assert ls.TyreSize(bare).load_index is None

    all_are()


def test_what_is_asked_for_comes() -> None:
    # The simplest one takes long to find, and is not asked for.
    quick = settings(phases=[Phase.generate], database=None)
    cycle = find(testing.machines(kinds=["cycle"]), lambda machine: len(machine.gearbox.gears) > 2, settings=quick)
    assert cycle.kind == "cycle"
    bare = find(testing.machines(engine=False), lambda machine: machine.kind == "motorcycle", settings=quick)
    assert bare.engine is None
    great = testing.tyres(notations="metric", uses=["snow"])
    snow = find(great, lambda tyre: tyre.rim_diameter > 400 * ls.mm, settings=quick)
    assert snow.use == "snow"
    other = find(testing.machines(), lambda machine: machine.stock.front > 12, settings=quick)
    setups = testing.setups(other, tyres=st.just(snow))
    fitted = find(setups, lambda setup: setup.front != other.stock.front, settings=quick)
    assert fitted.tyre == snow


def test_an_unknown_notation_lists_those_there_are() -> None:
    with pytest.raises(ValueError, match="expected some of 'metric', 'code', 'lettered', 'flotation', 'cycle'"):
        testing.designations(notations="roman")
    with pytest.raises(ValueError, match="notations: none"):
        testing.designations(notations=[])


def test_the_example_of_the_docs_runs() -> None:
    assert doctest.testmod(testing).failed == 0

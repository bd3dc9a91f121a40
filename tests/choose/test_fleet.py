# SPDX-License-Identifier: MIT
"""Many machines: in this process, in others, and on a cluster of Dask, all with the same answers."""

from __future__ import annotations

from pathlib import Path

import dask
import layshaft as ls
import pytest
from dask.distributed import Client, LocalCluster
from layshaft import fleet

MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"
GOALS = ls.Goals(wishes=[ls.Wish("thrust change", 0.05), ls.Wish("rear life change", "more")])


def questions() -> list[fleet.Question]:
    asked = []
    for name in ("trail_bike", "farm_bike", "cargo_cycle"):
        machine = ls.Machine.from_json((MACHINES / f"{name}.json").read_text(encoding="utf-8"))
        stock = machine.stock
        for more in range(4):
            space = ls.Space(
                fronts=range(stock.front - 1, stock.front + 2), rears=range(stock.rear, stock.rear + 3 + more)
            )
            asked.append((machine, space, GOALS))
    return asked


def told(answers: list[fleet.Answer]) -> list[object]:
    return [str(a) if isinstance(a, ls.Error) else [(c.setup, c.score, c.reason) for c in a.front] for a in answers]


def test_two_processes_and_a_cluster_of_two_workers_answer_alike() -> None:
    asked = questions()
    alone = told(fleet.choose_each(asked))
    assert alone == [[(c.setup, c.score, c.reason) for c in ls.choose(*one).front] for one in asked]
    assert told(fleet.choose_each(asked, processes=2, chunk=5)) == alone
    # Any free port for its pages: the usual one may be in use.
    with (
        LocalCluster(n_workers=2, threads_per_worker=1, processes=True, dashboard_address=":0") as cluster,
        Client(cluster),
    ):
        parts = dask.compute(*fleet.delayed(asked, chunk=3))
    assert len(parts) == 4
    assert told([answer for part in parts for answer in part]) == alone


def test_one_bad_question_does_not_kill_the_rest() -> None:
    asked = questions()[:3]
    machine, space, _ = asked[1]
    asked[1] = (
        machine,
        space,
        ls.Goals(limits=[ls.Limit("chain mass", most="5 kg")], wishes=[ls.Wish("cost", "less")]),
    )
    bare = ls.Machine.from_json((MACHINES / "cargo_cycle.json").read_text(encoding="utf-8"))
    asked.append((bare, ls.Space(fronts=[38], rears=[19]), ls.Goals(wishes=[ls.Wish("tight point slack", "more")])))
    answers = fleet.choose_each(asked, errors="keep")
    assert isinstance(answers[3], ls.Error) and "needs the machine's suspension" in str(answers[3])
    assert all(isinstance(answer, ls.Choice) for answer in answers[:3])
    assert told(fleet.choose_each(asked, processes=2, chunk=2, errors="keep")) == told(answers)
    with pytest.raises(ls.Error, match="needs the machine's suspension"):
        fleet.choose_each(asked)
    with pytest.raises(ls.Error, match="needs the machine's suspension"):
        fleet.choose_each(asked, processes=2, chunk=2)


def test_a_wrong_call_says_so() -> None:
    with pytest.raises(ValueError, match="chunk is 0"):
        fleet.choose_each(questions(), chunk=0)
    with pytest.raises(ValueError, match="processes is 0"):
        fleet.choose_each(questions(), processes=0)
    with pytest.raises(ValueError, match="errors is 'ignore'"):
        fleet.delayed(questions(), errors="ignore")  # type: ignore[arg-type]

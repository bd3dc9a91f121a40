# SPDX-License-Identifier: MIT
"""For whoever looks after many machines: one study over a small fleet, in two processes and on a cluster of Dask.

Three invented machines, each once as made and once with two more teeth behind, as someone may have left it. All are
asked for a tenth more pull than they have, with sprockets that last. A study that outgrows one computer goes to a real
cluster in the same way: its Client in place of the local one.
"""

from __future__ import annotations

import json
from pathlib import Path

import layshaft as ls
from layshaft import fleet

MACHINES = Path(__file__).resolve().parent / "machines"
GOALS = ls.Goals(
    limits=[ls.Limit("wear room", least=0.01), ls.Limit("front teeth", least=11)],
    wishes=[
        ls.Wish("thrust change", 0.10, weight=3),
        ls.Wish("front life change", "more"),
        ls.Wish("rear life change", "more"),
        ls.Wish("parts changed", "less"),
    ],
)


def fleet_of_six() -> list[ls.Machine]:
    machines = []
    for name in ("trail_bike", "farm_bike", "cargo_cycle"):
        made = json.loads((MACHINES / f"{name}.json").read_text(encoding="utf-8"))
        machines.append(ls.Machine.from_json(json.dumps(made)))
        made["name"] += ", two more behind"
        made["stock"]["rear"] += 2
        made["stock"].pop("links", None)
        machines.append(ls.Machine.from_json(json.dumps(made)))
    return machines


def question(machine: ls.Machine) -> fleet.Question:
    stock = machine.stock
    space = ls.Space(
        fronts=range(stock.front - 2, stock.front + 2),
        rears=range(stock.rear - 2, stock.rear + 8),
        chains=[ls.ChainOffer(made=stock.chain_made)],
    )
    return machine, space, GOALS


def on_a_cluster(questions: list[fleet.Question]) -> list[fleet.Answer] | None:
    try:
        import dask
        from dask.distributed import Client, LocalCluster
    except ImportError:
        return None
    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=":0") as cluster, Client(cluster):
        parts = dask.compute(*fleet.delayed(questions, chunk=2))
    return [answer for part in parts for answer in part]


def advice(answer: fleet.Answer) -> str:
    if isinstance(answer, ls.Error):
        return str(answer)
    if not answer.ranked:
        return answer.relaxations[0].reason if answer.relaxations else "nothing closes"
    best = answer.ranked[0]
    thrust = ls.show_percent(best.wishes[0])
    return f"{best.setup.front}/{best.setup.rear} with {best.setup.links} links, thrust {thrust}"


def main() -> None:
    machines = fleet_of_six()
    questions = [question(machine) for machine in machines]
    answers = [advice(answer) for answer in fleet.choose_each(questions, processes=2, chunk=2, errors="keep")]
    for machine, text in zip(machines, answers, strict=True):
        stock = machine.stock
        print(f"{machine.name:<42}{stock.front}/{stock.rear}: {text}")
    clustered = on_a_cluster(questions)
    if clustered is None:
        print("\nDask is not installed: answered by two processes only")
    elif [advice(answer) for answer in clustered] == answers:
        print("\nTwo processes and a cluster of two workers give the same answers.")
    else:
        raise SystemExit("fleet.py: two processes and the cluster do not agree")


if __name__ == "__main__":
    main()

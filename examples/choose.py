# SPDX-License-Identifier: MIT
"""Which whole set-up suits what a rider wants: the decision, a shortlist with reasons, and pictures of all there is.

choose.py [QUESTION.json] [--machine MACHINE.json] [--shortlist 3] [--threads N] [--units metric|us]
          [--pictures FOLDER]

Without a question it asks that of the demo rider. choose.cpp asks the same and gives the same set-ups and reasons.
"""

from __future__ import annotations

import argparse
import sys
import textwrap
from pathlib import Path

import layshaft as ls
from drawing import HERE, save_and_say
from layshaft import plots
from layshaft.studies import Looked, letter, limit_in_words, look_at_all, open_limits, what_differs


def options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Choose a whole set-up by what a rider wants.")
    parser.add_argument("question", type=Path, nargs="?", default=HERE / "questions/trail_bike.json")
    parser.add_argument("--machine", type=Path, default=HERE / "machines/trail_bike.json")
    parser.add_argument("--shortlist", type=int, default=3, help="how many set-ups to rank")
    parser.add_argument("--threads", type=int, default=1, help="0: as many as there are cores")
    parser.add_argument("--units", choices=["metric", "us"], default="metric")
    parser.add_argument("--pictures", type=Path, default=HERE.parent / "build/examples")
    return parser.parse_args()


def teeth(setup: ls.Setup) -> str:
    return f"{setup.front}/{setup.rear}"


def say(text: str, first: str = "   ") -> None:
    print(textwrap.fill(text, 118, initial_indent=first, subsequent_indent=" " * len(first), break_on_hyphens=False))


def price_of(one: Looked) -> str:
    return "price not known" if one.price is None else f"price {ls.show_number(one.price, 0)}"


def print_decision(choice: ls.Choice, present: ls.Setup, looked: dict[ls.Setup, Looked]) -> None:
    if not choice.ranked:
        print(f"Nothing of the {choice.examined} set-ups keeps all limits.\n\nThe least that would have to give way")
        for relaxation in choice.relaxations:
            parts = what_differs(relaxation.setup, present)
            say(f"{relaxation.reason} Then {' and '.join(parts) or 'what is fitted'} will do.", "  - ")
        return
    best = choice.ranked[0].setup
    parts = what_differs(best, present)
    does = f"Fit {' and '.join(parts)}, and keep the rest" if parts else "Keep what is fitted"
    say(f"{does}: of {choice.kept} set-ups that keep all limits, this one serves the wishes best; "
        f"{price_of(looked[best])}.", "")  # fmt: skip


def print_shortlist(
    asked: argparse.Namespace, choice: ls.Choice, goals: ls.Goals, present: ls.Setup, looked: dict[ls.Setup, Looked]
) -> None:
    if choice.ranked:
        print("\nThe shortlist")
    for place, one in enumerate(choice.ranked, 1):
        print(f"{place}. {teeth(one.setup)} with {one.setup.links} links")
        new = "; ".join(what_differs(one.setup, present)) or "nothing"
        say(f"new: {new}; {price_of(looked[one.setup])}")
        say(one.tell(asked.units))
        if one.sure:
            say("Sure: the limits are kept over the whole of every band.")
        else:
            at_ends = open_limits(goals, looked[one.setup].limits)
            limits = ", ".join(limit_in_words(goals.limits[i], asked.units) for i in at_ends)
            say(f"Not sure: at an end of its band it breaks {limits}.")


def print_flips(choice: ls.Choice, present: ls.Setup) -> None:
    if not choice.ranked:
        return
    print("\nWhere the bands' ends would choose otherwise")
    for end, other in (("low", choice.best_at_low), ("high", choice.best_at_high)):
        if other is None:
            say(f"at the {end} end: the same", "  ")
        else:
            say(
                f"at the {end} end: {teeth(other)}, with {' and '.join(what_differs(other, present)) or 'no change'}",
                "  ",
            )


def print_count(asked: argparse.Namespace, choice: ls.Choice, goals: ls.Goals) -> None:
    print(f"\n{choice.examined} set-ups examined, {choice.kept} keep all limits, {len(choice.front)} of them make the "
          f"trade-off{'; ruled out first by' if goals.limits else ''}")  # fmt: skip
    for place, (limit, count) in enumerate(zip(goals.limits, choice.ruled_out, strict=True)):
        print(f"  {letter(place)}  {limit_in_words(limit, asked.units):<56}{count:>6}")
    if choice.untold:
        print(f"  ?  {'a wish that cannot be told':<56}{choice.untold:>6}")


def print_comparison(asked: argparse.Namespace, machine: ls.Machine, setup: ls.Setup) -> None:
    comparison = ls.compare(machine, machine.stock, setup)
    print(f"\n{teeth(setup)} against {teeth(machine.stock)} as made")
    print(f"  thrust in every gear    {ls.show_percent(comparison.thrust_change)}")
    print(f"  axle                    {ls.show(comparison.trial.chain.centre, asked.units)} from the front sprocket")
    print(f"  it can still wear by    {100 * comparison.trial.chain.wear_room.nominal:.1f} % of its length")
    cautions = dict.fromkeys((*ls.appraise(machine, setup).cautions, *comparison.cautions))
    print("\nBefore you ride")
    for caution in cautions:
        say(caution.sentence(asked.units), "- ")


def main() -> None:
    asked = options()
    machine = ls.Machine.from_json(asked.machine.read_text(encoding="utf-8"))
    space, goals = ls.question_from_json(asked.question.read_text(encoding="utf-8"))
    choice = ls.choose(machine, space, goals, shortlist=asked.shortlist, threads=asked.threads)

    present = space.present or machine.stock
    everything = look_at_all(machine, space, goals, choice)
    looked = {one.setup: one for one in everything}
    print(f"{machine.name}, asked by {asked.question.name}\n")
    print_decision(choice, present, looked)
    print_shortlist(asked, choice, goals, present, looked)
    print_flips(choice, present)
    print_count(asked, choice, goals)
    advised = choice.ranked or choice.relaxations
    if advised:
        print_comparison(asked, machine, advised[0].setup)
    print()
    name = asked.machine.stem
    if choice.front and len(goals.wishes) > 1:
        drawn = plots.trade_off(choice, goals, present=present, units=asked.units)
        save_and_say(asked.pictures, f"{name}_trade_off", drawn)
    drawn = plots.space(machine, space, goals, choice, looked=everything, units=asked.units)
    save_and_say(asked.pictures, f"{name}_space", drawn)


if __name__ == "__main__":
    try:
        main()
    except (ls.Error, OSError) as error:
        sys.exit(f"choose.py: {error}")

# SPDX-License-Identifier: MIT
"""For an analyst: a thousand set-ups of one machine compared, and the dozen that bring the old pull back.

The loop asks for everything an appraisal knows; where only one figure is wanted, layshaft.arrays is the quick way, and
the last lines show it on the same set-ups.
"""

from __future__ import annotations

from pathlib import Path

import layshaft as ls
import numpy as np

TYRES = ["120/80-18", "120/90-18", "130/80-18", "110/100-18", "4.10-18"]


def main() -> None:
    text = (Path(__file__).resolve().parent / "machines" / "trail_bike.json").read_text(encoding="utf-8")
    machine = ls.Machine.from_json(text)
    stock = machine.stock
    compared, refused = [], 0
    for front in range(11, 16):
        for rear in range(40, 60):
            for tyre in TYRES:
                for use in ("road", "special"):
                    setup = ls.Setup(front=front, rear=rear, tyre=ls.TyreSize(tyre, use))
                    try:
                        compared.append((setup, ls.compare(machine, stock, setup)))
                    except ls.Error:  # no even chain closes in the adjuster
                        refused += 1
    print(f"{len(compared) + refused} set-ups, {refused} of them with no chain that closes")

    near = [(s, c) for s, c in compared if abs(c.thrust_change.nominal) < 0.005 and s.tyre.use == "special"]
    near.sort(key=lambda pair: pair[1].wear.chain_tension_change.nominal)
    print("\nwithin half a per cent of the old pull on knobs, gentlest on the chain first")
    for setup, comparison in near[:12]:
        pull = comparison.wear.chain_tension_change.nominal
        print(
            f"  {setup.front}/{setup.rear} on {setup.tyre.designation:<11} {comparison.trial.chain.links} links"
            f"   thrust {ls.show_percent(comparison.thrust_change):<24} pull {ls.show_percent(pull)}"
        )

    # The same change of thrust for all set-ups at once, as plain numbers in the units that the function names.
    ratios = np.array([s.rear / s.front for s, _ in compared])
    rolled = np.array([c.trial.circumference.nominal / ls.mm for _, c in compared])
    base = compared[0][1].base.circumference.nominal / ls.mm
    change = ls.arrays.thrust_change(stock.rear / stock.front, base, ratios, rolled)
    assert np.allclose(change, [c.thrust_change.nominal for _, c in compared], rtol=0.0, atol=1e-15)
    print(f"\nin one array call: from {100 * change.min():+.1f} to {100 * change.max():+.1f} % of thrust")


if __name__ == "__main__":
    main()

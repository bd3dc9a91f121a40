# SPDX-License-Identifier: MIT
"""Centre distances of many chains at once, against 40 digits."""

from __future__ import annotations

import layshaft as ls
import numpy as np
from layshaft import arrays
from mpmath import mp, mpf


def true_centre(pitch: float, front: int, rear: int, links: float, near: float) -> mpf:
    """By Newton's steps in 40 digits, on the straight run."""
    radii = (1 / mp.sin(mp.pi / rear) - 1 / mp.sin(mp.pi / front)) / 2
    arc, straight = (rear - front) / mp.pi, mpf(links) - mpf(front + rear) / 2
    run = mp.sqrt((mpf(near) / mpf(pitch)) ** 2 - radii**2)
    for _ in range(4):
        run -= (2 * run - straight + arc * mp.atan(radii / run)) / (2 - arc * radii / (run**2 + radii**2))
    return mpf(pitch) * mp.sqrt(run**2 + radii**2)


def test_ten_thousand_drives_are_within_two_ulp_of_forty_digits() -> None:
    numbers, size = np.random.default_rng(40), 10_000
    front, rear = numbers.integers(8, 91, size), numbers.integers(8, 91, size)
    touching = 0.5 / np.sin(np.pi / front) + 0.5 / np.sin(np.pi / rear)
    # From teeth that all but touch on: nearer there is no chain.
    links = arrays.chain_links(1.0, front, rear, touching + 0.6 + 100.0 * numbers.random(size) ** 2)
    told = arrays.chain_centre_mm(1.0, front, rear, links)
    with mp.workdps(40):
        errors = [
            abs(mpf(float(one)) - true_centre(1.0, int(f), int(r), float(x), float(one))) / mpf(float(np.spacing(one)))
            for one, f, r, x in zip(told, front, rear, links, strict=True)
        ]
    assert max(errors) <= 2.0
    assert max(errors) > 0.4  # the yardstick is finer than what it measures


def test_they_are_those_of_a_loop_alone() -> None:
    """A ChainLoop counts in metres: to millimetres and back it rounds twice more, and may end up to four ulp away."""
    numbers, size = np.random.default_rng(41), 2_000
    off = []
    for name in ("415", "420", "520", "530"):
        pitch = ls.ChainSeries(name).pitch / ls.mm
        front, rear = numbers.integers(8, 60, size), numbers.integers(8, 90, size)
        links = (front + rear) // 2 * 2 + numbers.integers(10, 60, size) * 2
        told = arrays.chain_centre_mm(pitch, front, rear, links)
        alone = np.array(
            [
                ls.ChainLoop(name, int(f), int(r)).centre(int(x)) / ls.mm
                for f, r, x in zip(front, rear, links, strict=True)
            ]
        )
        off.append(np.abs(told - alone) / np.spacing(alone))
    assert np.max(off) <= 4.0 and np.mean(np.array(off) > 2.0) < 0.001


def test_a_number_is_the_same_wherever_it_stands() -> None:
    numbers = np.random.default_rng(3)
    front, rear, links = (numbers.integers(a, b, 600).astype(float) for a, b in ((9, 20), (30, 60), (96, 130)))
    all_at_once = arrays.chain_centre_mm(15.875, front, rear, links)
    one_by_one = [arrays.chain_centre_mm(15.875, f, r, x) for f, r, x in zip(front, rear, links, strict=True)]
    np.testing.assert_array_equal(one_by_one, all_at_once)
    np.testing.assert_array_equal(arrays.chain_centre_mm(15.875, front[::3], rear[::3], links[::3]), all_at_once[::3])
    out = links.copy()
    np.testing.assert_array_equal(arrays.chain_centre_mm(15.875, front, rear, out, out=out), all_at_once)

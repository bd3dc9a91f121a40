# SPDX-License-Identifier: MIT
"""The loop against geometry and arithmetic that nobody here wrote: shapely's hull, mpmath's solve at 50 digits."""

from __future__ import annotations

import math
import random

import layshaft as ls
import mpmath
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

PITCH = 15.875
teeth_in_front = st.integers(9, 24)
teeth_behind = st.integers(24, 70)
pitches = st.floats(30.0, 80.0)


def hull_length(front: int, rear: int, centre: float, sides: int) -> float:
    """The length in pitches of the hull of two circles of circumference z p, as regular polygons around them.

    A polygon with this many sides to the quarter is short by a part of one in sides squared; two numbers of sides give
    the limit (Richardson).
    """

    def length(quarter: int) -> float:
        circles = [
            shapely.Point(at, 0.0).buffer(z / (2.0 * math.pi), quad_segs=quarter)
            for at, z in ((0.0, front), (centre, rear))
        ]
        return float(shapely.union_all(circles).convex_hull.length)

    coarse, fine = length(sides), length(2 * sides)
    return fine + (fine - coarse) / 3.0


@pytest.mark.parametrize(("front", "rear"), [(12, 44), (13, 40), (14, 43), (13, 50), (15, 45), (16, 43), (17, 38)])
@pytest.mark.parametrize("centre", [36.0, 38.5, 41.25, 60.0])
def test_the_loop_is_the_hull_of_two_circles_of_circumference_z_p(front: int, rear: int, centre: float) -> None:
    links = ls.ChainLoop("520", front, rear).links(centre * PITCH * ls.mm)
    assert links == pytest.approx(hull_length(front, rear, centre, 4096), rel=0.0, abs=1e-5)
    # Circles through the joints would be pi^2/12 (1/z1 + 1/z2) of a pitch too long, which is why the loop is no arc.
    on_joints = links + math.pi**2 / 12.0 * (1.0 / front + 1.0 / rear)
    assert on_joints - links > 0.05


def exact_links(front: int, rear: int, centre: mpmath.mpf) -> mpmath.mpf:
    radii = [1 / (2 * mpmath.sin(mpmath.pi / z)) for z in (front, rear)]
    phi = mpmath.asin((radii[1] - radii[0]) / centre)
    return 2 * centre * mpmath.cos(phi) + mpmath.mpf(front + rear) / 2 + phi * (rear - front) / mpmath.pi


def test_the_loop_agrees_with_fifty_digits() -> None:
    random.seed(42)
    with mpmath.workdps(50):
        worst_links = worst_centre = 0.0
        for _ in range(400):
            front, rear = random.randint(9, 24), random.randint(24, 70)
            pitch = mpmath.mpf(float(PITCH * ls.mm / ls.m))
            loop = ls.ChainLoop("520", front, rear)
            centre = random.uniform(480.0, 900.0) * ls.mm
            exact = exact_links(front, rear, mpmath.mpf(centre / ls.m) / pitch)
            worst_links = max(worst_links, abs(float((loop.links(centre) - exact) / math.ulp(float(exact)))))
            links = random.randint(90, 130)
            if links < loop.fewest_links:
                continue
            root = mpmath.findroot(lambda c, f=front, r=rear, x=links: exact_links(f, r, c) - x, links / 4)
            metres = float(root * pitch)
            worst_centre = max(worst_centre, abs(float((loop.centre(links) / ls.m - root * pitch) / math.ulp(metres))))
        assert worst_links <= 4.0 and worst_centre <= 8.0, (worst_links, worst_centre)


@given(front=teeth_in_front, rear=teeth_behind, links=st.integers(80, 180))
def test_links_of_the_centre_are_the_links(front: int, rear: int, links: int) -> None:
    loop = ls.ChainLoop("520", front, rear)
    if links < loop.fewest_links:
        with pytest.raises(ls.RangeError):
            loop.centre(links)
    else:
        assert loop.links(loop.centre(links)) == pytest.approx(links, rel=1e-14)


@given(front=teeth_in_front, rear=teeth_behind, centre=pitches, more=st.floats(0.01, 5.0))
def test_more_teeth_or_distance_take_more_links_and_a_larger_pitch_fewer(
    front: int, rear: int, centre: float, more: float
) -> None:
    at = centre * PITCH * ls.mm
    links = ls.ChainLoop("520", front, rear).links(at)
    assert ls.ChainLoop("520", front + 1, rear).links(at) > links
    assert ls.ChainLoop("520", front, rear + 1).links(at) > links
    assert ls.ChainLoop("520", front, rear).links(at + more * ls.mm) > links
    assert ls.ChainLoop("630", front, rear).links(at) < links


@given(front=teeth_in_front, rear=teeth_behind, centre=pitches)
def test_the_loop_has_no_scale(front: int, rear: int, centre: float) -> None:
    small = ls.ChainLoop("04C", front, rear)
    large = ls.ChainLoop("16A", front, rear)
    links = small.links(centre * small.series.pitch)
    assert large.links(centre * large.series.pitch) == pytest.approx(links, rel=1e-14)
    wrap = small.wrap_front(centre * small.series.pitch) + small.wrap_rear(centre * small.series.pitch)
    assert wrap / ls.deg == pytest.approx(360.0, rel=1e-14)

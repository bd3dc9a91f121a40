# SPDX-License-Identifier: MIT
from typing import Any, type_check_only

import numpy as np
from numpy.typing import ArrayLike, NDArray

# Every function is a real numpy.ufunc of one output, named by its numbers' units. Arguments go by position; whatever
# NumPy's own ufuncs take by keyword (out, where, casting, order, dtype, subok) these take too.
@type_check_only
class _Ufunc1(np.ufunc):  # type: ignore[misc]
    def __call__(
        self, a: ArrayLike, /, out: Any = None, *, where: ArrayLike = True, **options: Any
    ) -> NDArray[np.float64]: ...

@type_check_only
class _Ufunc2(np.ufunc):  # type: ignore[misc]
    def __call__(
        self, a: ArrayLike, b: ArrayLike, /, out: Any = None, *, where: ArrayLike = True, **options: Any
    ) -> NDArray[np.float64]: ...

@type_check_only
class _Ufunc3(np.ufunc):  # type: ignore[misc]
    def __call__(
        self, a: ArrayLike, b: ArrayLike, c: ArrayLike, /, out: Any = None, *, where: ArrayLike = True, **options: Any
    ) -> NDArray[np.float64]: ...

@type_check_only
class _Ufunc4(np.ufunc):  # type: ignore[misc]
    def __call__(
        self,
        a: ArrayLike,
        b: ArrayLike,
        c: ArrayLike,
        d: ArrayLike,
        /,
        out: Any = None,
        *,
        where: ArrayLike = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...

@type_check_only
class _Ufunc6(np.ufunc):  # type: ignore[misc]
    def __call__(
        self,
        a: ArrayLike,
        b: ArrayLike,
        c: ArrayLike,
        d: ArrayLike,
        e: ArrayLike,
        f: ArrayLike,
        /,
        out: Any = None,
        *,
        where: ArrayLike = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...

overall_ratio: _Ufunc4  # primary, gear, front, rear
road_speed_kmh: _Ufunc3  # engine_rpm, overall_ratio, circumference_mm
engine_rpm: _Ufunc3  # speed_kmh, overall_ratio, circumference_mm
thrust_change: _Ufunc4  # base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm
# base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm, base_efficiency, trial_efficiency
thrust_change_with_loss: _Ufunc6
speed_change: _Ufunc4  # base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm
contribution: _Ufunc2  # ratio, factor
worn_diameter_mm: _Ufunc2  # overall_diameter_mm, tread_worn_mm
rolling_circumference_mm: _Ufunc2  # overall_diameter_mm, rolling_factor
worn_circumference_mm: _Ufunc4  # circumference_mm, rolling_factor, measured_tread_depth_mm, tread_depth_mm
tread_left: _Ufunc3  # new_tread_depth_mm, tread_depth_mm, least_tread_depth_mm
distance_left_km: _Ufunc4  # distance_km, new_tread_depth_mm, tread_depth_mm, least_tread_depth_mm
static_radius_mm: _Ufunc2  # free_radius_mm, static_share
effective_radius_mm: _Ufunc2  # free_radius_mm, static_radius_mm
circumference_of_radius_mm: _Ufunc1  # effective_radius_mm
circumference_change: _Ufunc2  # base_circumference_mm, trial_circumference_mm
sprocket_pitch_diameter_mm: _Ufunc2  # pitch_mm, teeth
chain_speed_variation: _Ufunc1  # teeth
chain_power_rating_hp: _Ufunc3  # pitch_in, teeth, shaft_rpm
chain_links: _Ufunc4  # pitch_mm, front, rear, centre_mm
chain_centre_mm: _Ufunc4  # pitch_mm, front, rear, links
front_contacts: _Ufunc4  # distance_km, circumference_mm, front, rear
rear_contacts: _Ufunc2  # distance_km, circumference_mm
passes: _Ufunc2  # teeth, links
distinct_links: _Ufunc2  # teeth, links
highest_lawful_reading_kmh: _Ufunc1  # true_speed_kmh

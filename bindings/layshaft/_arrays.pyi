# SPDX-License-Identifier: MIT
# Made by tests/bindings/array_stubs.py of the list in bindings/array_formulas.cpp.
# NumPy says of its ufunc that it is final; and one number is one of the sequences' cases too, with another result.
# mypy: disable-error-code="overload-overlap"
# pyright: reportGeneralTypeIssues=false, reportIncompatibleMethodOverride=false, reportOverlappingOverload=false
from collections.abc import Callable, Sequence
from typing import Any, Final, Protocol, TypeAlias, overload, type_check_only

import numpy as np
from numpy.typing import ArrayLike, NDArray

@type_check_only
class _TakesUfuncs(Protocol):
    def __array_ufunc__(self, ufunc: Any, method: Any, /, *inputs: Any, **kwargs: Any) -> Any: ...

_Number: TypeAlias = float | np.bool | np.integer[Any] | np.floating[Any]
_Plain: TypeAlias = (
    _Number
    | NDArray[np.bool | np.integer[Any] | np.floating[Any]]
    | Sequence[_Number]
    | Sequence[Sequence[_Number]]
    | Sequence[Sequence[Sequence[_Number]]]
)
_Other: TypeAlias = ArrayLike | _TakesUfuncs

# Every function is a real numpy.ufunc of one output. Arguments go by position; whatever NumPy's own ufuncs take by
# keyword (out, where, casting, order, dtype, subok) these take too. Numbers give a number, arrays and sequences an array,
# and whatever answers for itself (a Series, a lazy array, an expression) what it likes.

@type_check_only
class _Ufunc1(np.ufunc):  # type: ignore[misc]
    @overload
    def __call__(
        self,
        a: _Number,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> np.float64: ...
    @overload
    def __call__(
        self,
        a: _Plain,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...
    @overload
    def __call__(
        self,
        a: _Other,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> Any: ...

@type_check_only
class _Ufunc2(np.ufunc):  # type: ignore[misc]
    @overload
    def __call__(
        self,
        a: _Number,
        b: _Number,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> np.float64: ...
    @overload
    def __call__(
        self,
        a: _Plain,
        b: _Plain,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...
    @overload
    def __call__(
        self,
        a: _Other,
        b: _Other,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> Any: ...

@type_check_only
class _Ufunc3(np.ufunc):  # type: ignore[misc]
    @overload
    def __call__(
        self,
        a: _Number,
        b: _Number,
        c: _Number,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> np.float64: ...
    @overload
    def __call__(
        self,
        a: _Plain,
        b: _Plain,
        c: _Plain,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...
    @overload
    def __call__(
        self,
        a: _Other,
        b: _Other,
        c: _Other,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> Any: ...

@type_check_only
class _Ufunc4(np.ufunc):  # type: ignore[misc]
    @overload
    def __call__(
        self,
        a: _Number,
        b: _Number,
        c: _Number,
        d: _Number,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> np.float64: ...
    @overload
    def __call__(
        self,
        a: _Plain,
        b: _Plain,
        c: _Plain,
        d: _Plain,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...
    @overload
    def __call__(
        self,
        a: _Other,
        b: _Other,
        c: _Other,
        d: _Other,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> Any: ...

@type_check_only
class _Ufunc5(np.ufunc):  # type: ignore[misc]
    @overload
    def __call__(
        self,
        a: _Number,
        b: _Number,
        c: _Number,
        d: _Number,
        e: _Number,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> np.float64: ...
    @overload
    def __call__(
        self,
        a: _Plain,
        b: _Plain,
        c: _Plain,
        d: _Plain,
        e: _Plain,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...
    @overload
    def __call__(
        self,
        a: _Other,
        b: _Other,
        c: _Other,
        d: _Other,
        e: _Other,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> Any: ...

@type_check_only
class _Ufunc6(np.ufunc):  # type: ignore[misc]
    @overload
    def __call__(
        self,
        a: _Number,
        b: _Number,
        c: _Number,
        d: _Number,
        e: _Number,
        f: _Number,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> np.float64: ...
    @overload
    def __call__(
        self,
        a: _Plain,
        b: _Plain,
        c: _Plain,
        d: _Plain,
        e: _Plain,
        f: _Plain,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...
    @overload
    def __call__(
        self,
        a: _Other,
        b: _Other,
        c: _Other,
        d: _Other,
        e: _Other,
        f: _Other,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> Any: ...

@type_check_only
class _Ufunc7(np.ufunc):  # type: ignore[misc]
    @overload
    def __call__(
        self,
        a: _Number,
        b: _Number,
        c: _Number,
        d: _Number,
        e: _Number,
        f: _Number,
        g: _Number,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> np.float64: ...
    @overload
    def __call__(
        self,
        a: _Plain,
        b: _Plain,
        c: _Plain,
        d: _Plain,
        e: _Plain,
        f: _Plain,
        g: _Plain,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> NDArray[np.float64]: ...
    @overload
    def __call__(
        self,
        a: _Other,
        b: _Other,
        c: _Other,
        d: _Other,
        e: _Other,
        f: _Other,
        g: _Other,
        /,
        out: Any = None,
        *,
        where: Any = True,
        **options: Any,
    ) -> Any: ...

acceleration_mps2: Final[_Ufunc3]
"""acceleration_mps2(thrust_N, resistance_N, equivalent_mass_kg): how fast the machine gains speed, in m/s2."""
adjuster_forward_mm: Final[_Ufunc2]
"""adjuster_forward_mm(centre_mm, centre_min_mm): room of the axle to move forward, in mm."""
adjuster_rearward_mm: Final[_Ufunc2]
"""adjuster_rearward_mm(centre_mm, centre_max_mm): room of the axle to move back, in mm."""
adjuster_turns: Final[_Ufunc2]
"""adjuster_turns(adjuster_way_mm, thread_pitch_mm): turns of the adjuster's screw."""
air_density_kg_per_m3: Final[_Ufunc5]
"""air_density_kg_per_m3(sea_level_density_kg_per_m3, air_pressure_Pa, sea_level_pressure_Pa, sea_level_temperature_K, air_temperature_K): density of the air, in kg/m3."""
air_drag_N: Final[_Ufunc2]
"""air_drag_N(quadratic_resistance_kg_per_m, air_speed_kmh): what the air resists with, in N."""
air_pressure_Pa: Final[_Ufunc4]
"""air_pressure_Pa(sea_level_pressure_Pa, sea_level_temperature_K, standard_temperature_K, pressure_exponent): pressure of the air, in Pa."""
air_speed_kmh: Final[_Ufunc2]
"""air_speed_kmh(road_speed_kmh, head_wind_kmh): speed through the air, in km/h."""
angle_of_slope_deg: Final[_Ufunc1]
"""angle_of_slope_deg(slope): angle whose tangent the slope is, in deg."""
ansi_flat_mm: Final[_Ufunc2]
"""ansi_flat_mm(roller_diameter_mm, teeth): length of the ANSI flank's straight piece, in mm."""
ansi_outside_diameter_mm: Final[_Ufunc2]
"""ansi_outside_diameter_mm(pitch_mm, teeth): diameter over the tips to ANSI, in mm."""
ansi_seating_angle_deg: Final[_Ufunc1]
"""ansi_seating_angle_deg(teeth): reach of the ANSI seating curve to one side, in deg."""
ansi_seating_diameter_mm: Final[_Ufunc1]
"""ansi_seating_diameter_mm(roller_diameter_mm): diameter of the ANSI seating curve, in mm."""
ansi_tip_distance_mm: Final[_Ufunc3]
"""ansi_tip_distance_mm(pitch_mm, ansi_topping_height_mm, teeth): distance of the ANSI tooth's point from the gap's line, in mm."""
ansi_topping_across_mm: Final[_Ufunc2]
"""ansi_topping_across_mm(ansi_topping_distance_mm, teeth): distance of the ANSI tip curve's centre across the gap's line, in mm."""
ansi_topping_along_mm: Final[_Ufunc2]
"""ansi_topping_along_mm(ansi_topping_distance_mm, teeth): distance of the ANSI tip curve's centre along the gap's line, in mm."""
ansi_topping_distance_mm: Final[_Ufunc1]
"""ansi_topping_distance_mm(roller_diameter_mm): distance of the ANSI tip curve's centre from the roller's, in mm."""
ansi_topping_height_mm: Final[_Ufunc2]
"""ansi_topping_height_mm(ansi_topping_radius_mm, ansi_topping_offset_mm): height of the ANSI tooth's point above the chain's polygon, in mm."""
ansi_topping_offset_mm: Final[_Ufunc2]
"""ansi_topping_offset_mm(ansi_topping_distance_mm, pitch_mm): distance of the ANSI tip curve's centre from the middle of the pitch, in mm."""
ansi_topping_radius_mm: Final[_Ufunc2]
"""ansi_topping_radius_mm(roller_diameter_mm, teeth): radius of the ANSI tip curve, in mm."""
ansi_working_across_mm: Final[_Ufunc2]
"""ansi_working_across_mm(ansi_working_distance_mm, ansi_seating_angle_deg): distance of the ANSI working curve's centre across the gap's line, in mm."""
ansi_working_along_mm: Final[_Ufunc2]
"""ansi_working_along_mm(ansi_working_distance_mm, ansi_seating_angle_deg): distance of the ANSI working curve's centre along the gap's line, in mm."""
ansi_working_angle_deg: Final[_Ufunc1]
"""ansi_working_angle_deg(teeth): angle of the ANSI working curve, in deg."""
ansi_working_chord_mm: Final[_Ufunc2]
"""ansi_working_chord_mm(roller_diameter_mm, teeth): chord of the ANSI working curve, in mm."""
ansi_working_distance_mm: Final[_Ufunc1]
"""ansi_working_distance_mm(roller_diameter_mm): distance of the ANSI working curve's centre from the roller's, in mm."""
ansi_working_radius_mm: Final[_Ufunc1]
"""ansi_working_radius_mm(roller_diameter_mm): radius of the ANSI working curve, in mm."""
arm_of_centre_mm: Final[_Ufunc4]
"""arm_of_centre_mm(layshaft_ahead_mm, layshaft_above_mm, centre_mm, arm_angle_deg): swingarm from pivot to axle, in mm."""
bearing_pressure_MPa: Final[_Ufunc3]
"""bearing_pressure_MPa(tight_tension_N, pin_diameter_mm, bush_length_mm): pressure in a joint, in MPa."""
bends: Final[_Ufunc2]
"""bends(front, rear): bends of a joint a pass, in turns."""
best_ratio: Final[_Ufunc3]
"""best_ratio(holding_ratio, moved_mass_kg, engine_mass_of_one_kg): overall ratio that speeds up most."""
break_even_life_ratio: Final[_Ufunc4]
"""break_even_life_ratio(base_price, base_labour, trial_price, trial_labour): life, trial over base, at which both cost alike."""
break_even_price: Final[_Ufunc5]
"""break_even_price(base_price, base_labour, base_life_km, trial_labour, trial_life_km): price of the part after at which both cost alike."""
centre_approximate_mm: Final[_Ufunc4]
"""centre_approximate_mm(pitch_mm, front, rear, links): centre distance by the handbook's formula, in mm."""
centre_f4_mm: Final[_Ufunc5]
"""centre_f4_mm(f4, pitch_mm, links, front, rear): centre distance by the standard's factor, in mm."""
centrifugal_tension_N: Final[_Ufunc2]
"""centrifugal_tension_N(mass_per_length_kg_per_m, chain_speed_kmh): pull that bends the chain's mass round the sprockets, in N."""
chain_centre_mm: Final[_Ufunc4]
"""chain_centre_mm(pitch_mm, front, rear, links): centre distance of a closed loop of so many links, whole or real, exactly: the inverse of chain_links, in mm."""
chain_efficiency: Final[_Ufunc3]
"""chain_efficiency(chain_pull_N, joint_friction_pull_N, seal_drag_pull_N): power out of the chain over power in."""
chain_efficiency_approximate: Final[_Ufunc5]
"""chain_efficiency_approximate(joint_friction, pin_diameter_mm, pitch_mm, front, rear): power out of the chain over power in, by the short rule."""
chain_links: Final[_Ufunc4]
"""chain_links(pitch_mm, front, rear, centre_mm): links of the closed loop over two sprockets, a real number, exactly."""
chain_outside_radius_mm: Final[_Ufunc2]
"""chain_outside_radius_mm(pitch_diameter_mm, plate_height_mm): radius outside which no plate of the chain stands, in mm."""
chain_passes: Final[_Ufunc4]
"""chain_passes(distance_km, circumference_mm, rear, links): passes of the whole chain."""
chain_power_kW: Final[_Ufunc2]
"""chain_power_kW(chain_pull_N, chain_speed_kmh): power that the chain carries, in kW."""
chain_power_rating_hp: Final[_Ufunc3]
"""chain_power_rating_hp(pitch_in, teeth, shaft_rpm): power that the standard chain of a pitch is rated for, one strand, by the lower of its two branches; context, never a verdict, in hp."""
chain_pull_N: Final[_Ufunc2]
"""chain_pull_N(torque_Nm, pitch_diameter_mm): pull of the tight run over the slack one, in N."""
chain_safety: Final[_Ufunc2]
"""chain_safety(tensile_strength_kN, greatest_tension_N): strength of the chain over its greatest pull."""
chain_speed_kmh: Final[_Ufunc3]
"""chain_speed_kmh(pitch_mm, teeth, shaft_rpm): speed of the chain, in km/h."""
chain_speed_variation: Final[_Ufunc1]
"""chain_speed_variation(teeth): how much slower the chain runs on a flat than on a corner."""
chain_tension_N: Final[_Ufunc3]
"""chain_tension_N(thrust_N, circumference_mm, rear_pitch_diameter_mm): pull of the chain's tight run, in N."""
chain_tension_change: Final[_Ufunc4]
"""chain_tension_change(base_circumference_mm, base_rear_pitch_diameter_mm, trial_circumference_mm, trial_rear_pitch_diameter_mm): change of the chain's pull."""
circumference_change: Final[_Ufunc2]
"""circumference_change(base_circumference_mm, trial_circumference_mm): change of the rolling circumference."""
circumference_of_radius_mm: Final[_Ufunc1]
"""circumference_of_radius_mm(effective_radius_mm): distance rolled in one turn of the wheel, in mm."""
climb_resistance_N: Final[_Ufunc3]
"""climb_resistance_N(mass_kg, gravity_mps2, slope_angle_deg): weight along the slope, in N."""
clutch_heat_J: Final[_Ufunc3]
"""clutch_heat_J(engine_torque_Nm, engine_rpm, slip_time_s): heat in the slipping clutch, in J."""
coasting_bend: Final[_Ufunc6]
"""coasting_bend(constant_resistance_N, linear_resistance_N_per_mps, quadratic_resistance_kg_per_m, start_speed_kmh, end_speed_kmh, coasting_force_N): how much the resistance bends between two speeds."""
coasting_force_N: Final[_Ufunc5]
"""coasting_force_N(constant_resistance_N, linear_resistance_N_per_mps, quadratic_resistance_kg_per_m, start_speed_kmh, end_speed_kmh): force that stands for those between two speeds, in N."""
coasting_time_s: Final[_Ufunc5]
"""coasting_time_s(equivalent_mass_kg, start_speed_kmh, end_speed_kmh, coasting_force_N, coasting_bend): time from one speed down to another, in s."""
constant_in_wind_N: Final[_Ufunc3]
"""constant_in_wind_N(constant_resistance_N, quadratic_resistance_kg_per_m, head_wind_kmh): constant part of the resistance in the wind, in N."""
constant_on_slope_N: Final[_Ufunc2]
"""constant_on_slope_N(rolling_on_slope_N, climb_resistance_N): constant part of the resistance on the slope, in N."""
constant_resistance_N: Final[_Ufunc3]
"""constant_resistance_N(rolling_coefficient, mass_kg, gravity_mps2): constant part of the resistance, on the level, in N."""
contacts_change: Final[_Ufunc1]
"""contacts_change(turns_ratio): change of a tooth's meetings with the chain."""
contribution: Final[_Ufunc2]
"""contribution(ratio, factor): part of a change that one factor makes."""
correction_factor: Final[_Ufunc1]
"""correction_factor(indicated_ratio): factor that brings the speedometer back."""
cost_difference: Final[_Ufunc2]
"""cost_difference(base_cost, trial_cost): how much more the part after costs."""
cost_per_distance: Final[_Ufunc4]
"""cost_per_distance(price, labour, distance_km, life_km): cost over the distance."""
cycle_diameter_mm: Final[_Ufunc3]
"""cycle_diameter_mm(rim_diameter_mm, section_width_mm, height_factor): overall diameter of a cycle tyre, in mm."""
days_left: Final[_Ufunc2]
"""days_left(distance_left_km, daily_distance_km): days until the tread is down to its minimum."""
density_ratio: Final[_Ufunc2]
"""density_ratio(air_density_kg_per_m3, sea_level_density_kg_per_m3): density of the air over that at sea level."""
distance_left_km: Final[_Ufunc4]
"""distance_left_km(distance_km, new_tread_depth_mm, tread_depth_mm, least_tread_depth_mm): distance until the tread is down to its minimum, in km."""
distinct_links: Final[_Ufunc2]
"""distinct_links(teeth, links): different links that each tooth meets."""
drive_thrust_N: Final[_Ufunc4]
"""drive_thrust_N(engine_torque_Nm, overall_ratio, drive_efficiency, circumference_mm): drive force at the contact patch, in N."""
effective_links: Final[_Ufunc2]
"""effective_links(links, elongation): links of nominal length that the chain counts as."""
effective_radius_mm: Final[_Ufunc2]
"""effective_radius_mm(free_radius_mm, static_radius_mm): radius of the circle that rolls as far as the tyre, in mm."""
engine_mass_kg: Final[_Ufunc4]
"""engine_mass_kg(engine_inertia_kg_m2, overall_ratio, drive_efficiency, circumference_mm): mass that the engine's turning counts as, in kg."""
engine_power_kW: Final[_Ufunc2]
"""engine_power_kW(engine_torque_Nm, engine_rpm): power of the engine, in kW."""
engine_rpm: Final[_Ufunc3]
"""engine_rpm(speed_kmh, overall_ratio, circumference_mm): engine speed, in rpm."""
engine_speed_change: Final[_Ufunc1]
"""engine_speed_change(speed_change): change of engine speed."""
engine_turns: Final[_Ufunc2]
"""engine_turns(overall_ratio, circumference_mm): turns of the engine in a kilometre."""
equivalent_mass_kg: Final[_Ufunc3]
"""equivalent_mass_kg(mass_kg, wheel_mass_kg, engine_mass_kg): mass with all that turns, in kg."""
equivalent_rear: Final[_Ufunc3]
"""equivalent_rear(front, rear, trial_front): rear teeth for the same final ratio, a real number."""
evenness: Final[_Ufunc3]
"""evenness(distinct_links, links, link_kinds): how evenly the teeth share the links."""
f4_of_angle: Final[_Ufunc1]
"""f4_of_angle(run_angle_deg): factor of the standard's centre distance."""
factor_of_share: Final[_Ufunc1]
"""factor_of_share(static_share): rolling circumference over that of the free tyre."""
final_ratio: Final[_Ufunc2]
"""final_ratio(front, rear): ratio of the chain drive."""
first_shift_share: Final[_Ufunc1]
"""first_shift_share(shift_share): how far the engine is revved in first gear, of the way to rated speed."""
flank_depth_worn_mm: Final[_Ufunc4]
"""flank_depth_worn_mm(tooth_wear_weight, pitch_mm, tooth_width_mm, roller_diameter_mm): depth that a flank loses, but for a factor that cancels, in mm."""
flank_radius_greatest_mm: Final[_Ufunc2]
"""flank_radius_greatest_mm(roller_diameter_mm, teeth): greatest radius of the tooth flank, in mm."""
flank_radius_least_mm: Final[_Ufunc2]
"""flank_radius_least_mm(roller_diameter_mm, teeth): least radius of the tooth flank, in mm."""
flank_radius_mm: Final[_Ufunc2]
"""flank_radius_mm(flank_radius_least_mm, flank_radius_greatest_mm): radius of the tooth flank, in mm."""
flank_sliding_mm: Final[_Ufunc2]
"""flank_sliding_mm(roller_diameter_mm, teeth): sliding of a roller on the flank, in mm."""
flotation_diameter_mm: Final[_Ufunc2]
"""flotation_diameter_mm(marked_diameter_mm, undersize_mm): diameter that the flotation marking comes to, in mm."""
free_radius_mm: Final[_Ufunc1]
"""free_radius_mm(overall_diameter_mm): radius of the tyre free of load, in mm."""
front_contacts: Final[_Ufunc4]
"""front_contacts(distance_km, circumference_mm, front, rear): meetings of a front tooth with the chain."""
front_factor: Final[_Ufunc2]
"""front_factor(base_front, trial_front): what the front sprocket multiplies by."""
front_removed: Final[_Ufunc2]
"""front_removed(base_front, trial_front): teeth fewer in front."""
gear_ratio: Final[_Ufunc2]
"""gear_ratio(driving, driven): ratio of a pair of gears."""
gear_step: Final[_Ufunc2]
"""gear_step(lower_gear, upper_gear): engine speed before a shift up over that after it."""
geometric_step: Final[_Ufunc3]
"""geometric_step(first_gear, last_gear, step_count): step of an evenly stepped gearbox."""
geopotential_height_km: Final[_Ufunc2]
"""geopotential_height_km(altitude_km, earth_radius_km): height by weakening gravity, in km."""
hanging_sag_mm: Final[_Ufunc2]
"""hanging_sag_mm(spare_length_mm, run_length_mm): how far the middle of a run hangs, in mm."""
highest_lawful_reading_kmh: Final[_Ufunc1]
"""highest_lawful_reading_kmh(true_speed_kmh): highest reading that the rule allows, in km/h."""
holding_force_N: Final[_Ufunc2]
"""holding_force_N(overrun_thrust_N, speed_resistance_N): what engine and air hold back, in N."""
holding_ratio: Final[_Ufunc4]
"""holding_ratio(resistance_N, engine_torque_Nm, drive_efficiency, circumference_mm): overall ratio that just holds the resistance."""
indicated_speed_kmh: Final[_Ufunc2]
"""indicated_speed_kmh(stock_reading_kmh, indicated_ratio): speed that the speedometer shows, in km/h."""
joint_centre_mm: Final[_Ufunc4]
"""joint_centre_mm(mass_kg, mass_place_mm, added_mass_kg, added_place_mm): place of the joint centre of mass, in mm."""
joint_efficiency: Final[_Ufunc2]
"""joint_efficiency(gearbox_efficiency, chain_efficiency): power out of the drive over power in."""
joint_friction_pull_N: Final[_Ufunc7]
"""joint_friction_pull_N(joint_friction, pin_diameter_mm, pitch_mm, front, rear, tight_tension_N, slack_tension_N): pull that the joints' friction takes, in N."""
joint_wear_mm: Final[_Ufunc6]
"""joint_wear_mm(tight_tension_N, slack_tension_N, front, rear, bush_length_mm, wear_resistance_MPa): how much deeper a pass wears a joint, in mm."""
kinetic_energy_J: Final[_Ufunc3]
"""kinetic_energy_J(equivalent_mass_kg, start_speed_kmh, end_speed_kmh): kinetic energy gained, in J."""
laden_circumference_mm: Final[_Ufunc2]
"""laden_circumference_mm(rollout_per_turn_mm, unladen_excess): distance rolled in one turn with the rider aboard, in mm."""
level_resistance_N: Final[_Ufunc2]
"""level_resistance_N(rolling_resistance_N, air_drag_N): all that resists, on the level, in N."""
life_change: Final[_Ufunc2]
"""life_change(base_life_weight, trial_life_weight): change of how far a part lasts."""
life_on_worn_sprockets_km: Final[_Ufunc3]
"""life_on_worn_sprockets_km(life_km, mismatch, life_run): distance for which a new chain lasts on worn sprockets, in km."""
line_angle_deg: Final[_Ufunc4]
"""line_angle_deg(layshaft_ahead_mm, layshaft_above_mm, arm_mm, arm_angle_deg): slope of the line of centres, in deg."""
linear_in_wind_N_per_mps: Final[_Ufunc3]
"""linear_in_wind_N_per_mps(linear_resistance_N_per_mps, quadratic_resistance_kg_per_m, head_wind_kmh): part of the resistance that goes with speed, in the wind, in N s/m."""
linear_part_N: Final[_Ufunc2]
"""linear_part_N(linear_resistance_N_per_mps, road_speed_kmh): resistance that goes with speed, in N."""
links_approximate: Final[_Ufunc4]
"""links_approximate(pitch_mm, front, rear, centre_mm): links by the handbook's formula, a real number."""
links_with_slack: Final[_Ufunc3]
"""links_with_slack(loop_links, spare_length_mm, pitch_mm): links of the loop with its slack, a real number."""
load_margin_kg: Final[_Ufunc3]
"""load_margin_kg(load_capacity_kg, tyres_on_axle, axle_load_kg): what the axle's tyres may carry over what they must, in kg."""
loop_links: Final[_Ufunc5]
"""loop_links(pitch_mm, front, rear, centre_mm, run_angle_deg): links of the closed loop, a real number."""
loss_factor: Final[_Ufunc2]
"""loss_factor(base_efficiency, trial_efficiency): what the drive's efficiency multiplies by."""
moved_mass_kg: Final[_Ufunc2]
"""moved_mass_kg(mass_kg, wheel_mass_kg): mass with its wheels' turning, in kg."""
odometer_drift: Final[_Ufunc1]
"""odometer_drift(indicated_ratio): what the odometer counts more than before."""
over_pins_even_mm: Final[_Ufunc2]
"""over_pins_even_mm(pitch_diameter_mm, measuring_pin_mm): size over two measuring pins, even number of teeth, in mm."""
over_pins_odd_mm: Final[_Ufunc3]
"""over_pins_odd_mm(pitch_diameter_mm, teeth, measuring_pin_mm): size over two measuring pins, odd number of teeth, in mm."""
overall_diameter_limit_mm: Final[_Ufunc3]
"""overall_diameter_limit_mm(rim_diameter_mm, section_height_mm, height_factor): limit of the overall diameter, in mm."""
overall_diameter_mm: Final[_Ufunc2]
"""overall_diameter_mm(rim_diameter_mm, section_height_mm): overall diameter of the tyre, in mm."""
overall_diameter_on_another_rim_mm: Final[_Ufunc3]
"""overall_diameter_on_another_rim_mm(listed_diameter_mm, listed_rim_diameter_mm, rim_diameter_mm): overall diameter on another rim, in mm."""
overall_ratio: Final[_Ufunc4]
"""overall_ratio(primary, gear, front, rear): engine turns per turn of the wheel."""
overrun_engine_mass_kg: Final[_Ufunc4]
"""overrun_engine_mass_kg(engine_inertia_kg_m2, overall_ratio, drive_efficiency, circumference_mm): mass that the engine's turning counts as on overrun, in kg."""
overrun_thrust_N: Final[_Ufunc4]
"""overrun_thrust_N(drag_torque_Nm, overall_ratio, drive_efficiency, circumference_mm): what the engine holds back at the contact patch, in N."""
overtaken_kg_per_m: Final[_Ufunc1]
"""overtaken_kg_per_m(quadratic_resistance_kg_per_m): quadratic part where a tail wind overtakes the machine, in kg/m."""
passes: Final[_Ufunc2]
"""passes(teeth, links): passes of the chain until a tooth meets the same link."""
pitch_climb_mm: Final[_Ufunc2]
"""pitch_climb_mm(pitch_diameter_mm, elongation): how far a worn chain climbs on its teeth, in mm."""
plate_rating_kW: Final[_Ufunc4]
"""plate_rating_kW(plate_constant, pitch_mm, teeth, shaft_rpm): rated power by the plates, in kW."""
pressure_angle_least_deg: Final[_Ufunc1]
"""pressure_angle_least_deg(teeth): least angle at which a roller presses on a tooth, in deg."""
pressure_angle_most_deg: Final[_Ufunc1]
"""pressure_angle_most_deg(teeth): greatest angle at which a roller presses on a tooth, in deg."""
progressive_step: Final[_Ufunc4]
"""progressive_step(first_gear, last_gear, step_count, step_progression): last step of a progressively stepped gearbox."""
quadratic_resistance_kg_per_m: Final[_Ufunc2]
"""quadratic_resistance_kg_per_m(air_density_kg_per_m3, drag_area_m2): resistance over the square of speed, of the part that goes with it, in kg/m."""
radius_growth_at_speed_mm: Final[_Ufunc4]
"""radius_growth_at_speed_mm(overall_diameter_mm, growth_at_rated_speed, road_speed_kmh, rated_speed_kmh): how much the radius grows with speed, in mm."""
radius_growth_mm: Final[_Ufunc2]
"""radius_growth_mm(base_overall_diameter_mm, trial_overall_diameter_mm): how much more radius the tyre may have, in mm."""
radius_margin_mm: Final[_Ufunc2]
"""radius_margin_mm(radius_clearance_mm, radius_growth_mm): room that is left above the tyre, in mm."""
radius_of_circumference_mm: Final[_Ufunc1]
"""radius_of_circumference_mm(circumference_mm): radius of the circle that rolls as far as the tyre, in mm."""
ratio_of_slopes: Final[_Ufunc2]
"""ratio_of_slopes(transfer_slope, squat_slope): squat ratio."""
rear_added: Final[_Ufunc2]
"""rear_added(base_rear, trial_rear): teeth more behind."""
rear_contacts: Final[_Ufunc2]
"""rear_contacts(distance_km, circumference_mm): meetings of a rear tooth with the chain."""
rear_factor: Final[_Ufunc2]
"""rear_factor(base_rear, trial_rear): what the rear sprocket multiplies by."""
resistance_N: Final[_Ufunc3]
"""resistance_N(rolling_resistance_N, air_drag_N, climb_resistance_N): all that resists, in N."""
ride_height_change_mm: Final[_Ufunc2]
"""ride_height_change_mm(base_static_radius_mm, trial_static_radius_mm): how much higher the axle stands, in mm."""
road_speed_kmh: Final[_Ufunc3]
"""road_speed_kmh(engine_rpm, overall_ratio, circumference_mm): road speed, in km/h."""
roller_rating_kW: Final[_Ufunc4]
"""roller_rating_kW(roller_constant, pitch_mm, teeth, shaft_rpm): rated power by rollers and bushes, in kW."""
rolling_circumference_mm: Final[_Ufunc2]
"""rolling_circumference_mm(overall_diameter_mm, rolling_factor): distance rolled in one turn of the wheel, in mm."""
rolling_on_slope_N: Final[_Ufunc2]
"""rolling_on_slope_N(constant_resistance_N, slope_angle_deg): rolling resistance on the slope, in N."""
rolling_resistance_N: Final[_Ufunc2]
"""rolling_resistance_N(constant_resistance_N, linear_part_N): what the wheels meet, in N."""
rollout_per_turn_mm: Final[_Ufunc3]
"""rollout_per_turn_mm(rollout_mm, tape_error_mm, turns): distance measured, over one turn, in mm."""
root_diameter_mm: Final[_Ufunc2]
"""root_diameter_mm(pitch_diameter_mm, roller_diameter_mm): root diameter of the sprocket, in mm."""
run_angle_deg: Final[_Ufunc3]
"""run_angle_deg(front_pitch_diameter_mm, rear_pitch_diameter_mm, centre_mm): angle of the straight runs to the line of centres, in deg."""
run_length_mm: Final[_Ufunc2]
"""run_length_mm(centre_mm, run_angle_deg): length of a straight run, in mm."""
scaled_torque_Nm: Final[_Ufunc2]
"""scaled_torque_Nm(engine_torque_Nm, torque_factor): torque that is left, in Nm."""
seal_drag_pull_N: Final[_Ufunc4]
"""seal_drag_pull_N(seal_drag_Nm, pitch_mm, front, rear): pull that the seals take, in N."""
seat_least_mm: Final[_Ufunc1]
"""seat_least_mm(roller_diameter_mm): diameter of the least seat of a roller, in mm."""
seating_angle_deg: Final[_Ufunc2]
"""seating_angle_deg(seating_angle_least_deg, seating_angle_greatest_deg): angle over which a roller is seated, in deg."""
seating_angle_greatest_deg: Final[_Ufunc1]
"""seating_angle_greatest_deg(teeth): greatest angle over which a roller is seated, in deg."""
seating_angle_least_deg: Final[_Ufunc1]
"""seating_angle_least_deg(teeth): least angle over which a roller is seated, in deg."""
seating_radius_greatest_mm: Final[_Ufunc1]
"""seating_radius_greatest_mm(roller_diameter_mm): greatest radius on which a roller is seated, in mm."""
seating_radius_least_mm: Final[_Ufunc1]
"""seating_radius_least_mm(roller_diameter_mm): least radius on which a roller is seated, in mm."""
seating_radius_mm: Final[_Ufunc2]
"""seating_radius_mm(seating_radius_least_mm, seating_radius_greatest_mm): radius on which a roller is seated, in mm."""
section_height_mm: Final[_Ufunc2]
"""section_height_mm(section_width_mm, aspect_ratio): section height of the tyre, in mm."""
section_height_of_diameter_mm: Final[_Ufunc2]
"""section_height_of_diameter_mm(overall_diameter_mm, rim_diameter_mm): section height of the tyre, in mm."""
section_width_limit_mm: Final[_Ufunc2]
"""section_width_limit_mm(section_width_mm, width_factor): greatest section width of the marking, in mm."""
section_width_on_another_rim_mm: Final[_Ufunc3]
"""section_width_on_another_rim_mm(section_width_mm, rim_width_mm, measuring_rim_width_mm): section width on a rim of another width, in mm."""
share_of_factor: Final[_Ufunc1]
"""share_of_factor(rolling_factor): static over free radius."""
share_of_weight: Final[_Ufunc3]
"""share_of_weight(road_force_N, mass_kg, gravity_mps2): force along the road over the weight."""
shift_engine_rpm: Final[_Ufunc3]
"""shift_engine_rpm(idle_rpm, rated_engine_rpm, shift_share): engine speed of the shift, in rpm."""
shift_share: Final[_Ufunc2]
"""shift_share(rated_power_kW, unladen_mass_kg): how far the engine is revved, of the way from idle to rated speed."""
side_play_mm: Final[_Ufunc2]
"""side_play_mm(chain_inner_width_mm, tooth_width_mm): play of the chain on the tooth, both sides together, in mm."""
slack_by_hand_mm: Final[_Ufunc2]
"""slack_by_hand_mm(spare_length_mm, run_length_mm): hand movement at mid-span, up plus down, in mm."""
slack_tension_N: Final[_Ufunc2]
"""slack_tension_N(stated_slack_tension_N, centrifugal_tension_N): pull of the slack run, in N."""
slip_distance_m: Final[_Ufunc2]
"""slip_distance_m(road_speed_kmh, slip_time_s): way while the clutch slips, in m."""
slip_time_s: Final[_Ufunc2]
"""slip_time_s(road_speed_kmh, acceleration_mps2): time for which the clutch slips, in s."""
slipping_speed_kmh: Final[_Ufunc2]
"""slipping_speed_kmh(wheel_speed_kmh, driving_slip): road speed with the driven wheel slipping, in km/h."""
slipping_wheel_speed_kmh: Final[_Ufunc2]
"""slipping_wheel_speed_kmh(road_speed_kmh, driving_slip): speed at which the driven wheel rolls, in km/h."""
slope_held_back_deg: Final[_Ufunc2]
"""slope_held_back_deg(climb_share, rolling_share): slope down which the machine is just held back, in deg."""
slope_held_deg: Final[_Ufunc2]
"""slope_held_deg(climb_share, rolling_share): slope that is just held, in deg."""
smallest_centre_mm: Final[_Ufunc2]
"""smallest_centre_mm(front_tip_diameter_mm, rear_tip_diameter_mm): centre distance at which the teeth touch, in mm."""
snow_diameter_limit_mm: Final[_Ufunc2]
"""snow_diameter_limit_mm(overall_diameter_limit_mm, snow_allowance): limit of a snow tyre's overall diameter, in mm."""
spare_length_mm: Final[_Ufunc2]
"""spare_length_mm(slack_mm, run_length_mm): chain length beyond that of the tight loop, in mm."""
spare_length_of_links_mm: Final[_Ufunc3]
"""spare_length_of_links_mm(links, loop_links, pitch_mm): chain length beyond that of the tight loop, in mm."""
spare_length_of_sag_mm: Final[_Ufunc2]
"""spare_length_of_sag_mm(hanging_sag_mm, run_length_mm): chain length beyond that of the tight loop, in mm."""
spare_thrust_N: Final[_Ufunc2]
"""spare_thrust_N(thrust_N, speed_resistance_N): thrust that is left for the hill, in N."""
speed_change: Final[_Ufunc4]
"""speed_change(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm): change of road speed."""
speed_factor: Final[_Ufunc1]
"""speed_factor(factor): what one cause multiplies road speed by."""
speed_margin_kmh: Final[_Ufunc2]
"""speed_margin_kmh(rated_speed_kmh, top_speed_kmh): rated speed over top speed, in km/h."""
speed_resistance_N: Final[_Ufunc2]
"""speed_resistance_N(air_drag_N, linear_part_N): resistance that comes with speed, in N."""
sprocket_life_weight: Final[_Ufunc2]
"""sprocket_life_weight(worn_out_depth_mm, flank_depth_worn_mm): weight of how far a sprocket lasts."""
sprocket_pitch_diameter_mm: Final[_Ufunc2]
"""sprocket_pitch_diameter_mm(pitch_mm, teeth): pitch diameter of the sprocket, in mm."""
squat_slope: Final[_Ufunc4]
"""squat_slope(arm_angle_deg, tight_run_angle_deg, wheel_radius_mm, rear_pitch_diameter_mm): slope to where tight run and swingarm meet."""
standard_temperature_K: Final[_Ufunc3]
"""standard_temperature_K(sea_level_temperature_K, geopotential_height_km, lapse_height_km): standard temperature at the altitude, in K."""
static_radius_mm: Final[_Ufunc2]
"""static_radius_mm(free_radius_mm, static_share): height of the axle above the ground, in mm."""
static_radius_of_effective_mm: Final[_Ufunc2]
"""static_radius_of_effective_mm(effective_radius_mm, free_radius_mm): height of the axle above the ground, in mm."""
stock_reading_kmh: Final[_Ufunc2]
"""stock_reading_kmh(true_speed_kmh, reading_error): reading with the stock parts, in km/h."""
stretch_left_approximate: Final[_Ufunc4]
"""stretch_left_approximate(adjuster_rearward_mm, run_angle_deg, links, pitch_mm): how far the chain can wear, by the handbook."""
stretch_limit_of_sprocket: Final[_Ufunc1]
"""stretch_limit_of_sprocket(teeth): growth at which the chain climbs off a sprocket."""
stretch_of_wear: Final[_Ufunc3]
"""stretch_of_wear(chain_passes, joint_wear_mm, pitch_mm): growth of the chain by wear."""
summed_time_s: Final[_Ufunc2]
"""summed_time_s(coasting_time_s, coasting_time_after_s): time of several stretches of a coast-down, in s."""
suspension_centre_mm: Final[_Ufunc4]
"""suspension_centre_mm(layshaft_ahead_mm, layshaft_above_mm, arm_mm, arm_angle_deg): centre distance of the two sprockets, in mm."""
teeth_in_mesh: Final[_Ufunc2]
"""teeth_in_mesh(teeth, wrap_deg): teeth that hold the chain."""
tension_left: Final[_Ufunc2]
"""tension_left(pressure_angle_deg, teeth): pull left for the next link, over that of the link before."""
thrust_balance: Final[_Ufunc2]
"""thrust_balance(thrust_N, resistance_N): thrust over what resists."""
thrust_change: Final[_Ufunc4]
"""thrust_change(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm): change of thrust."""
thrust_change_by_thumb: Final[_Ufunc3]
"""thrust_change_by_thumb(rear_added, front_removed, tyre_growth): change of thrust by the trade's rule."""
thrust_change_with_loss: Final[_Ufunc6]
"""thrust_change_with_loss(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm, base_efficiency, trial_efficiency): change of thrust."""
thrust_ratio: Final[_Ufunc2]
"""thrust_ratio(turns_ratio, loss_factor): thrust, trial over base."""
tight_angle_deg: Final[_Ufunc2]
"""tight_angle_deg(layshaft_ahead_mm, layshaft_above_mm): angle of the swingarm at which the chain is tightest, in deg."""
tight_run_angle_deg: Final[_Ufunc2]
"""tight_run_angle_deg(line_angle_deg, run_angle_deg): slope of the tight run, in deg."""
tight_tension_N: Final[_Ufunc2]
"""tight_tension_N(chain_pull_N, slack_tension_N): pull of the tight run, all told, in N."""
tip_diameter_greatest_mm: Final[_Ufunc3]
"""tip_diameter_greatest_mm(pitch_diameter_mm, pitch_mm, roller_diameter_mm): greatest tip diameter of the sprocket, in mm."""
tip_diameter_least_mm: Final[_Ufunc4]
"""tip_diameter_least_mm(pitch_diameter_mm, pitch_mm, teeth, roller_diameter_mm): least tip diameter of the sprocket, in mm."""
tip_diameter_mm: Final[_Ufunc2]
"""tip_diameter_mm(tip_diameter_least_mm, tip_diameter_greatest_mm): tip diameter of the sprocket, in mm."""
tooth_force_N: Final[_Ufunc2]
"""tooth_force_N(tight_tension_N, tooth_force_share): force on the tooth that takes most, in N."""
tooth_force_share: Final[_Ufunc2]
"""tooth_force_share(pressure_angle_deg, teeth): force on a tooth, over the pull of its link."""
tooth_side_relief_mm: Final[_Ufunc1]
"""tooth_side_relief_mm(pitch_mm): depth of the rounded edge of a tooth, in mm."""
tooth_thickness_mm: Final[_Ufunc3]
"""tooth_thickness_mm(pitch_diameter_mm, roller_diameter_mm, teeth): thickness of a tooth at the pitch circle, in mm."""
tooth_wear_weight: Final[_Ufunc5]
"""tooth_wear_weight(contacts, tooth_force_N, flank_sliding_mm, hardness_MPa, pitch_mm): weight of a tooth's wear."""
tooth_width_least_mm: Final[_Ufunc2]
"""tooth_width_least_mm(tooth_width_mm, width_tolerance_mm): least width of a tooth, in mm."""
tooth_width_of_large_pitch_mm: Final[_Ufunc1]
"""tooth_width_of_large_pitch_mm(inner_width_mm): greatest width of a tooth, pitch above 12.7 mm, in mm."""
tooth_width_of_small_pitch_mm: Final[_Ufunc1]
"""tooth_width_of_small_pitch_mm(inner_width_mm): greatest width of a tooth, pitch to 12.7 mm, in mm."""
torque_between_Nm: Final[_Ufunc5]
"""torque_between_Nm(engine_rpm, lower_rpm, lower_torque_Nm, upper_rpm, upper_torque_Nm): torque of the engine, in Nm."""
torque_of_power_Nm: Final[_Ufunc2]
"""torque_of_power_Nm(power_kW, engine_rpm): torque of the engine, in Nm."""
traction_thrust_N: Final[_Ufunc7]
"""traction_thrust_N(grip, mass_kg, gravity_mps2, slope_angle_deg, wheelbase_mm, centre_ahead_mm, centre_height_mm): thrust at which the rear wheel spins, in N."""
transfer_slope: Final[_Ufunc2]
"""transfer_slope(mass_centre_height_mm, wheelbase_mm): slope of the load transfer."""
tread_left: Final[_Ufunc3]
"""tread_left(new_tread_depth_mm, tread_depth_mm, least_tread_depth_mm): share of the usable tread that is left."""
tread_margin_mm: Final[_Ufunc2]
"""tread_margin_mm(tread_depth_mm, least_tread_depth_mm): tread depth over the least asked for, in mm."""
tread_worn_mm: Final[_Ufunc2]
"""tread_worn_mm(new_tread_depth_mm, tread_depth_mm): height worn off the tread, in mm."""
tread_worn_over_mm: Final[_Ufunc3]
"""tread_worn_over_mm(tread_worn_mm, true_distance_km, distance_km): height that the tread loses over the distance, in mm."""
true_distance_km: Final[_Ufunc2]
"""true_distance_km(odometer_distance_km, odometer_factor): distance truly ridden, in km."""
turning_energy_J: Final[_Ufunc3]
"""turning_energy_J(engine_inertia_kg_m2, lower_rpm, upper_rpm): kinetic energy gained by what turns, in J."""
turns_ratio: Final[_Ufunc4]
"""turns_ratio(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm): turns over a distance, trial over base."""
tyre_factor: Final[_Ufunc2]
"""tyre_factor(base_circumference_mm, trial_circumference_mm): what the tyre multiplies by."""
wall_clearance_mm: Final[_Ufunc2]
"""wall_clearance_mm(wall_distance_mm, chain_outside_radius_mm): room between chain and wall, in mm."""
wear_factor: Final[_Ufunc4]
"""wear_factor(base_circumference_mm, base_new_circumference_mm, trial_circumference_mm, trial_new_circumference_mm): what the tread's wear multiplies by."""
wear_rate_change: Final[_Ufunc2]
"""wear_rate_change(base_wear, trial_wear): change of how fast it wears."""
wear_room: Final[_Ufunc3]
"""wear_room(links_at_end, links, elongation): how far the chain can wear until the adjuster ends."""
wheel_indicated_ratio: Final[_Ufunc2]
"""wheel_indicated_ratio(base_circumference_mm, trial_circumference_mm): speedometer reading after over before."""
wheel_mass_kg: Final[_Ufunc2]
"""wheel_mass_kg(wheel_inertia_kg_m2, circumference_mm): mass that the wheels' turning counts as, in kg."""
wheelie_acceleration_mps2: Final[_Ufunc3]
"""wheelie_acceleration_mps2(gravity_mps2, centre_ahead_mm, centre_height_mm): acceleration at which the front wheel lifts, in m/s2."""
wheelie_thrust_N: Final[_Ufunc5]
"""wheelie_thrust_N(mass_kg, gravity_mps2, slope_angle_deg, centre_ahead_mm, centre_height_mm): thrust at which the front wheel lifts, in N."""
width_growth_mm: Final[_Ufunc2]
"""width_growth_mm(base_section_width_mm, trial_section_width_mm): how much wider the tyre may be, in mm."""
width_margin_mm: Final[_Ufunc2]
"""width_margin_mm(width_clearance_mm, width_growth_mm): room that is left beside the tyre, in mm."""
worn_circumference_mm: Final[_Ufunc4]
"""worn_circumference_mm(circumference_mm, rolling_factor, measured_tread_depth_mm, tread_depth_mm): rolling circumference at another depth of the tread, in mm."""
worn_diameter_mm: Final[_Ufunc2]
"""worn_diameter_mm(overall_diameter_mm, tread_worn_mm): overall diameter with the tread worn down, in mm."""
worn_out_depth_mm: Final[_Ufunc2]
"""worn_out_depth_mm(tooth_thickness_mm, worn_out_share): depth down to which a flank may be worn, in mm."""
wrap_front_deg: Final[_Ufunc1]
"""wrap_front_deg(run_angle_deg): angle over which the chain wraps the front sprocket, in deg."""
wrap_rear_deg: Final[_Ufunc1]
"""wrap_rear_deg(run_angle_deg): angle over which the chain wraps the rear sprocket, in deg."""

def _formulas() -> list[tuple[str, str, tuple[tuple[str, str, str, str], ...], tuple[str, str, str, str]]]: ...
def _left_out() -> list[str]: ...
def _mind(looks_before: Callable[..., Any], looks_after: Callable[..., Any], /) -> None: ...

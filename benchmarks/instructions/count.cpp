// SPDX-License-Identifier: MIT
// Runs every kernel on both sides, over the same input, once for 1000 and once for 2000 elements. Under callgrind,
// which counts only inside of the sides' namespaces (--toggle-collect), each run leaves one file of counts. Fails where
// the two sides do not give the same bits.
#include "kernels.hpp"

#include <valgrind/callgrind.h>

#include <cstdio>
#include <cstring>
#include <vector>

namespace {

constexpr int most = 2000;
int failures = 0;

/// One value for each element.
template <class Each>
auto fill(Each each) {
  std::vector<decltype(each(0))> all;
  for (int i = 0; i < most; ++i) all.push_back(each(i));
  return all;
}
/// The same values in another type.
template <class Value, class As>
auto fill(const std::vector<Value>& values, As as) {
  std::vector<decltype(as(values[0]))> all;
  for (const Value value : values) all.push_back(as(value));
  return all;
}

/// Runs a kernel for 1000 and for 2000 elements, and has the counts of each run written down under its name.
template <class Out, class Kernel>
std::vector<Out> run(const char* name, const char* side, Kernel kernel) {
  std::vector<Out> out(most);
  for (const int count : {most / 2, most}) {
    char label[80];
    std::snprintf(label, sizeof label, "%s %s %d", name, side, count);
    CALLGRIND_ZERO_STATS;
    kernel(out.data(), count);
    CALLGRIND_DUMP_STATS_AT(label);
  }
  return out;
}

template <class OurOut, class TheirOut, class Ours, class Theirs>
void compare(const char* name, const char* our_side, Ours our_kernel, const char* their_side, Theirs their_kernel) {
  const std::vector<OurOut> ours = run<OurOut>(name, our_side, our_kernel);
  const std::vector<TheirOut> theirs = run<TheirOut>(name, their_side, their_kernel);
  static_assert(sizeof(OurOut) == sizeof(TheirOut));
  if (std::memcmp(ours.data(), theirs.data(), most * sizeof(TheirOut)) != 0) {
    std::fprintf(stderr, "%s: %s and %s do not give the same bits\n", name, our_side, their_side);
    ++failures;
  }
}
template <class TypedOut, class PlainOut, class Typed, class Plain>
void compare(const char* name, Typed typed_kernel, Plain plain_kernel) {
  compare<TypedOut, PlainOut>(name, "typed", typed_kernel, "plain", plain_kernel);
}
/// A calculation that can be watched against plain calls of its formulas: kernels that take the same.
template <class Out, class Unwatched, class Direct, class... Inputs>
void compare_calls(const char* name, Unwatched unwatched_kernel, Direct direct_kernel, const Inputs&... inputs) {
  const auto with = [&](auto kernel) { return [&, kernel](Out* out, int n) { kernel(inputs.data()..., out, n); }; };
  compare<Out, Out>(name, "unwatched", with(unwatched_kernel), "direct", with(direct_kernel));
}

void compare_types() {
  using layshaft::AngularSpeed, layshaft::Length, layshaft::Speed, layshaft::Teeth;

  const auto front = fill([](int i) { return 11 + i % 7; });
  const auto rear = fill([](int i) { return 34 + i % 19; });
  const auto ratio = fill([](int i) { return 5.0 + 0.013 * i; });
  const auto trial_ratio = fill([](int i) { return 5.2 + 0.012 * i; });
  const auto primary = fill([](int i) { return 2.0 + 0.001 * i; });
  const auto engine_speed = fill([](int i) { return 100.0 + i; });
  const auto circumference = fill([](int i) { return 1.8 + 0.0003 * i; });
  const auto trial_circumference = fill([](int i) { return 1.9 + 0.0002 * i; });
  const auto pitch = fill([](int i) { return i % 2 == 0 ? 0.015875 : 0.0127; });
  const auto centre = fill([](int i) { return 0.55 + 0.0001 * i; });
  const auto links = fill([](int i) { return 100.0 + 2.0 * (i % 20); });

  const auto to_teeth = [](int value) { return Teeth(value); };
  const auto to_length = [](double value) { return value * layshaft::units::m; };
  const auto to_speed = [](double value) { return value * layshaft::units::radps; };
  const auto front_t = fill(front, to_teeth), rear_t = fill(rear, to_teeth);
  const auto circumference_t = fill(circumference, to_length);
  const auto trial_circumference_t = fill(trial_circumference, to_length);
  const auto pitch_t = fill(pitch, to_length), centre_t = fill(centre, to_length);
  const auto engine_speed_t = fill(engine_speed, to_speed);

  const auto setups = fill([&](int i) {
    const auto at = static_cast<std::size_t>(i);
    return plain::Setups{primary[at],     1.9, front[at], rear[at], 13, 45, circumference[at], trial_circumference[at],
                         engine_speed[at]};
  });
  const auto setups_t = fill(setups, [&](const plain::Setups& in) {
    return typed::Setups{in.primary,
                         in.gear,
                         to_teeth(in.base_front),
                         to_teeth(in.base_rear),
                         to_teeth(in.trial_front),
                         to_teeth(in.trial_rear),
                         to_length(in.base_circumference),
                         to_length(in.trial_circumference),
                         to_speed(in.engine_speed)};
  });

  compare<typed::Answer, plain::Answer>(
      "one set-up",
      [&](typed::Answer* out, int n) {
        for (int i = 0; i < n; ++i) typed::one_setup(setups_t[static_cast<std::size_t>(i)], out[i]);
      },
      [&](plain::Answer* out, int n) {
        for (int i = 0; i < n; ++i) plain::one_setup(setups[static_cast<std::size_t>(i)], out[i]);
      });
  compare<typed::BothChanges, plain::BothChanges>(
      "one set-up, both changes",
      [&](typed::BothChanges* out, int n) {
        for (int i = 0; i < n; ++i) typed::one_setup_both_changes(setups_t[static_cast<std::size_t>(i)], out[i]);
      },
      [&](plain::BothChanges* out, int n) {
        for (int i = 0; i < n; ++i) plain::one_setup_both_changes(setups[static_cast<std::size_t>(i)], out[i]);
      });
  compare<double, double>(
      "overall_ratio",
      [&](double* out, int n) {
        typed::overall_ratio(primary.data(), ratio.data(), front_t.data(), rear_t.data(), out, n);
      },
      [&](double* out, int n) {
        plain::overall_ratio(primary.data(), ratio.data(), front.data(), rear.data(), out, n);
      });
  compare<Speed, double>(
      "road_speed",
      [&](Speed* out, int n) {
        typed::road_speed(engine_speed_t.data(), ratio.data(), circumference_t.data(), out, n);
      },
      [&](double* out, int n) { plain::road_speed(engine_speed.data(), ratio.data(), circumference.data(), out, n); });
  compare<Speed, double>(
      "road_speed, one tyre",
      [&](Speed* out, int n) {
        typed::road_speed_of_one_tyre(engine_speed_t.data(), ratio.data(), circumference_t[0], out, n);
      },
      [&](double* out, int n) {
        plain::road_speed_of_one_tyre(engine_speed.data(), ratio.data(), circumference[0], out, n);
      });
  compare<double, double>(
      "thrust_change",
      [&](double* out, int n) {
        typed::thrust_change(ratio.data(), circumference_t.data(), trial_ratio.data(), trial_circumference_t.data(),
                             out, n);
      },
      [&](double* out, int n) {
        plain::thrust_change(ratio.data(), circumference.data(), trial_ratio.data(), trial_circumference.data(), out,
                             n);
      });
  compare<Length, double>(
      "pitch_diameter", [&](Length* out, int n) { typed::pitch_diameter(pitch_t.data(), rear_t.data(), out, n); },
      [&](double* out, int n) { plain::pitch_diameter(pitch.data(), rear.data(), out, n); });
  compare<double, double>(
      "chain_links",
      [&](double* out, int n) {
        typed::chain_links(pitch_t.data(), front_t.data(), rear_t.data(), centre_t.data(), out, n);
      },
      [&](double* out, int n) { plain::chain_links(pitch.data(), front.data(), rear.data(), centre.data(), out, n); });
  compare<Length, double>(
      "chain_centre",
      [&](Length* out, int n) {
        typed::chain_centre(pitch_t.data(), front_t.data(), rear_t.data(), links.data(), out, n);
      },
      [&](double* out, int n) { plain::chain_centre(pitch.data(), front.data(), rear.data(), links.data(), out, n); });
}

void compare_watches() {
  using namespace layshaft;

  const auto corner = [](int i) { return corners[i % 3]; };
  const auto front = fill([](int i) { return Teeth(11 + i % 7); }),
             rear = fill([](int i) { return Teeth(34 + i % 19); });
  const auto circumference = fill([](int i) { return (1.8 + 0.0003 * i) * units::m; });
  const auto engine_speed = fill([](int i) { return (1000.0 + i) * units::rpm; });
  const auto gear = fill([](int i) { return 1 + i % 5; });
  const auto size = fill(corner), rolling = fill([&](int i) { return corner(i / 3); });
  constexpr TyreSize markings[] = {"110/90-18"_tyre, "120/80-18"_tyre, "120/90-18"_tyre, "140/80-17"_tyre};
  const auto tyre = fill([&](int i) { return markings[i % 4]; });
  const auto worn = fill([](int i) { return 1.0 * (i % 5) * units::mm; });
  const auto loop = fill([](int i) { return ChainLoop(ChainSeries("520"), Teeth(11 + i % 7), Teeth(34 + i % 19)); });
  const auto centre = fill([](int i) { return (0.55 + 0.0001 * i) * units::m; });
  const auto slack = fill([](int i) { return (20.0 + i % 20) * units::mm; });

  // the stock machine as the base, and one that changed everything
  const auto setup = [&](int i, Length tread_worn, std::optional<Band<double>> efficiency) {
    return layshaft::Setup({.front = Teeth(11 + i % 7),
                            .rear = Teeth(34 + i % 19),
                            .tyre = markings[i % 4],
                            .tread_worn = tread_worn,
                            .drive_efficiency = efficiency});
  };
  const auto base = fill([&](int) { return setup(2, Length(), {}); });
  const auto trial = fill([&](int i) { return setup(i, Length(), {}); });
  const auto base_loss = fill([&](int) { return setup(2, Length(), Band<double>{0.95, 0.96, 0.97}); });
  const auto trial_loss = fill([&](int i) { return setup(i, Length(), Band<double>{0.90, 0.92, 0.94 + 1e-6 * i}); });
  const auto trial_worn = fill([&](int i) { return setup(i, (1.0 + i % 4) * units::mm, {}); });
  const auto at = fill([&](int i) {
    return ThrustCorners{{corner(i), corner(i / 3), corner(i / 9), corner(i / 27)}, corner(i / 2), corner(i / 5)};
  });
  const auto wheels_at = fill([&](int i) { return WheelCorners{at[static_cast<std::size_t>(i)]}; });
  const auto setups = fill([&](int i) {
    return ComparedSetups{base[0], trial[static_cast<std::size_t>(i)], ChainSeries("520"), SpeedometerSensor::layshaft};
  });

  const auto in_gear = [&](const char* name, const Gearbox& gearbox) {
    const auto with = [&](auto kernel) {
      return [&, kernel](Speed* out, int n) {
        kernel(gearbox, gear.data(), front.data(), rear.data(), engine_speed.data(), circumference.data(), out, n);
      };
    };
    compare<Speed, Speed>(name, "unwatched", with(unwatched::road_speed_in_gear), "direct",
                          with(direct::road_speed_in_gear));
  };
  in_gear("speed in gear, ratios",
          Gearbox({.primary = 3.05, .gears = {2.75, 1.9, 1.4, 1.1, 0.9}, .idle = 1500_rpm, .rev_limit = 9500_rpm}));
  in_gear("speed in gear, pairs",
          Gearbox({.primary = GearPair{20_teeth, 61_teeth},
                   .gears = {GearPair{12_teeth, 33_teeth}, GearPair{16_teeth, 31_teeth}, GearPair{19_teeth, 27_teeth},
                             GearPair{22_teeth, 25_teeth}, GearPair{25_teeth, 23_teeth}},
                   .idle = 1500_rpm,
                   .rev_limit = 9500_rpm}));
  compare_calls<Length>("circumference", unwatched::tyre_circumference, direct::tyre_circumference, tyre, size,
                        rolling);
  compare_calls<Length>("circumference, worn", unwatched::worn_circumference, direct::worn_circumference, tyre, worn,
                        size, rolling);
  compare_calls<double>("links with slack", unwatched::links_with_slack, direct::links_with_slack, loop, centre, slack);
  compare_calls<double>("change of thrust", unwatched::thrust_change, direct::thrust_change, base, trial, at);
  compare_calls<double>("the same with loss", unwatched::thrust_change, direct::thrust_change, base_loss, trial_loss,
                        at);
  compare_calls<double>("change of pull", unwatched::tension_change, direct::tension_change, setups, wheels_at);
  const auto shares = [&](const char* name, const auto& before, const auto& after) {
    compare<unwatched::Points, direct::Points>(
        name, "unwatched",
        [&](unwatched::Points* out, int n) {
          unwatched::contributions(before.data(), after.data(), at.data(), out, n);
        },
        "direct",
        [&](direct::Points* out, int n) { direct::contributions(before.data(), after.data(), at.data(), out, n); });
  };
  shares("contributions", base, trial);
  shares("contributions, worn", base, trial_worn);
  shares("contributions, loss", base_loss, trial_loss);
}

}  // namespace

int main() {
  compare_types();
  compare_watches();
  return failures == 0 ? 0 : 1;
}

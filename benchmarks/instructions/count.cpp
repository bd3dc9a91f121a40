// SPDX-License-Identifier: MIT
// Runs every kernel on both sides, over the same input, once for 1000 and once for 2000 elements. Under callgrind,
// which counts only inside of `typed::` and `plain::` (--toggle-collect), each run leaves one file of counts. Fails
// where the two sides do not give the same bits.
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

template <class TypedOut, class PlainOut, class Typed, class Plain>
void compare(const char* name, Typed typed_kernel, Plain plain_kernel) {
  const std::vector<TypedOut> typed = run<TypedOut>(name, "typed", typed_kernel);
  const std::vector<PlainOut> plain = run<PlainOut>(name, "plain", plain_kernel);
  static_assert(sizeof(TypedOut) == sizeof(PlainOut));
  if (std::memcmp(typed.data(), plain.data(), most * sizeof(PlainOut)) != 0) {
    std::fprintf(stderr, "%s: typed and plain do not give the same bits\n", name);
    ++failures;
  }
}

}  // namespace

int main() {
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
  return failures == 0 ? 0 : 1;
}

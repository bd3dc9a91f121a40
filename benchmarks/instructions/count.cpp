// SPDX-License-Identifier: MIT
// Runs every kernel of both sides on the same input. Under callgrind, which counts inside `typed::` and `plain::` only
// (--toggle-collect), it leaves one file of counts a kernel and side. Fails where the two sides do not give the same
// bits.
#include "kernels.hpp"

#include <valgrind/callgrind.h>

#include <cstdio>
#include <cstring>
#include <vector>

namespace {

constexpr int count = 1000;
int failures = 0;

template <class T, class Each>
std::vector<T> fill(Each each) {
  std::vector<T> all;
  for (int i = 0; i < count; ++i) all.push_back(each(i));
  return all;
}

/// Anything whose bytes are those of a few doubles.
template <class Out>
std::vector<unsigned char> bytes(const std::vector<Out>& out) {
  std::vector<unsigned char> raw(out.size() * sizeof(Out));
  std::memcpy(raw.data(), static_cast<const void*>(out.data()), raw.size());
  return raw;
}

/// Runs one kernel on both sides. `Run(out)` calls the kernel, which the linker bound before the program started.
template <class TypedOut, class PlainOut, class Typed, class Plain>
void compare(const char* name, int size, Typed run_typed, Plain run_plain) {
  std::vector<TypedOut> typed(static_cast<std::size_t>(size));
  std::vector<PlainOut> plain(static_cast<std::size_t>(size));
  char label[64];
  CALLGRIND_ZERO_STATS;
  run_typed(typed.data());
  std::snprintf(label, sizeof label, "%s typed", name);
  CALLGRIND_DUMP_STATS_AT(label);
  CALLGRIND_ZERO_STATS;
  run_plain(plain.data());
  std::snprintf(label, sizeof label, "%s plain", name);
  CALLGRIND_DUMP_STATS_AT(label);
  if (bytes(typed) != bytes(plain)) {
    std::fprintf(stderr, "%s: typed and plain do not give the same bits\n", name);
    ++failures;
  }
}

}  // namespace

int main() {
  using layshaft::Teeth;
  namespace units = layshaft::units;

  const auto front = fill<int>([](int i) { return 11 + i % 7; });
  const auto rear = fill<int>([](int i) { return 34 + i % 19; });
  const auto ratio = fill<double>([](int i) { return 5.0 + 0.013 * i; });
  const auto trial_ratio = fill<double>([](int i) { return 5.2 + 0.012 * i; });
  const auto primary = fill<double>([](int i) { return 2.0 + 0.001 * i; });
  const auto engine_speed = fill<double>([](int i) { return 100.0 + i; });
  const auto circumference = fill<double>([](int i) { return 1.8 + 0.0003 * i; });
  const auto trial_circumference = fill<double>([](int i) { return 1.9 + 0.0002 * i; });
  const auto pitch = fill<double>([](int i) { return i % 2 == 0 ? 0.015875 : 0.0127; });
  const auto centre = fill<double>([](int i) { return 0.55 + 0.0001 * i; });
  const auto links = fill<double>([](int i) { return 100.0 + 2.0 * (i % 20); });

  const auto teeth = [](const std::vector<int>& all) {
    return fill<Teeth>([&](int i) { return Teeth(all[static_cast<std::size_t>(i)]); });
  };
  const auto typed_front = teeth(front), typed_rear = teeth(rear);
  const auto lengths = [](const std::vector<double>& all) {
    return fill<layshaft::Length>([&](int i) { return all[static_cast<std::size_t>(i)] * units::m; });
  };
  const auto typed_circumference = lengths(circumference), typed_trial_circumference = lengths(trial_circumference);
  const auto typed_pitch = lengths(pitch), typed_centre = lengths(centre);
  const auto typed_engine_speed =
      fill<layshaft::AngularSpeed>([&](int i) { return engine_speed[static_cast<std::size_t>(i)] * units::radps; });

  const plain::Setups plain_setups{2.75, 1.9, 14, 40, 13, 45, 1.9, 2.014, 900.0};
  const typed::Setups typed_setups{2.75,         1.9,          Teeth(14),         Teeth(40),     Teeth(13),
                                   Teeth(45),    1.9 * units::m, 2.014 * units::m, 900.0 * units::radps};

  compare<typed::Answer, plain::Answer>(
      "one_setup", 1, [&](typed::Answer* out) { typed::one_setup(typed_setups, *out); },
      [&](plain::Answer* out) { plain::one_setup(plain_setups, *out); });
  compare<typed::Speed, double>(
      "road_speed", count,
      [&](typed::Speed* out) {
        typed::road_speed(typed_engine_speed.data(), ratio.data(), typed_circumference.data(), out, count);
      },
      [&](double* out) { plain::road_speed(engine_speed.data(), ratio.data(), circumference.data(), out, count); });
  compare<typed::Speed, double>(
      "road_speed_of_one_tyre", count,
      [&](typed::Speed* out) {
        typed::road_speed_of_one_tyre(typed_engine_speed.data(), ratio.data(), typed_circumference[0], out, count);
      },
      [&](double* out) {
        plain::road_speed_of_one_tyre(engine_speed.data(), ratio.data(), circumference[0], out, count);
      });
  compare<double, double>(
      "overall_ratio", count,
      [&](double* out) {
        typed::overall_ratio(primary.data(), ratio.data(), typed_front.data(), typed_rear.data(), out, count);
      },
      [&](double* out) {
        plain::overall_ratio(primary.data(), ratio.data(), front.data(), rear.data(), out, count);
      });
  compare<double, double>(
      "thrust_change", count,
      [&](double* out) {
        typed::thrust_change(ratio.data(), typed_circumference.data(), trial_ratio.data(),
                             typed_trial_circumference.data(), out, count);
      },
      [&](double* out) {
        plain::thrust_change(ratio.data(), circumference.data(), trial_ratio.data(), trial_circumference.data(), out,
                             count);
      });
  compare<typed::Length, double>(
      "pitch_diameter", count,
      [&](typed::Length* out) { typed::pitch_diameter(typed_pitch.data(), typed_rear.data(), out, count); },
      [&](double* out) { plain::pitch_diameter(pitch.data(), rear.data(), out, count); });
  compare<double, double>(
      "chain_links", count,
      [&](double* out) {
        typed::chain_links(typed_pitch.data(), typed_front.data(), typed_rear.data(), typed_centre.data(), out, count);
      },
      [&](double* out) {
        plain::chain_links(pitch.data(), front.data(), rear.data(), centre.data(), out, count);
      });
  compare<typed::Length, double>(
      "chain_centre", count,
      [&](typed::Length* out) {
        typed::chain_centre(typed_pitch.data(), typed_front.data(), typed_rear.data(), links.data(), out, count);
      },
      [&](double* out) {
        plain::chain_centre(pitch.data(), front.data(), rear.data(), links.data(), out, count);
      });
  compare<typed::Speed, double>(
      "road_speed_uncopied", count,
      [&](typed::Speed* out) {
        typed::road_speed_uncopied(typed_engine_speed.data(), ratio.data(), typed_circumference[0], out, count);
      },
      [&](double* out) {
        plain::road_speed_uncopied(engine_speed.data(), ratio.data(), circumference[0], out, count);
      });
  return failures == 0 ? 0 : 1;
}

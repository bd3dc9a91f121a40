// SPDX-License-Identifier: MIT
// Any text as a ride log: what is read has rising times and finite numbers; what is not says which line.
#include "must.hpp"

#include <layshaft/io/ride_log.hpp>

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace layshaft;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto log = try_read_ride_log(text);
  if (!log) {
    const std::string_view sentence = log.error().what();
    MUST(!sentence.empty() && sentence.size() < 2000);
    MUST(detail::first_steering(sentence) == sentence.size());
    return 0;
  }
  const RideColumns& columns = log->columns();
  MUST(columns.times.size() >= 2 && columns.times.size() == columns.speeds.size());
  for (std::size_t i = 1; i < columns.times.size(); ++i) MUST(columns.times[i] > columns.times[i - 1]);
  for (const auto* column : {&columns.times, &columns.speeds, &columns.heights, &columns.engine_speeds,
                             &columns.indicated_speeds, &columns.odometers}) {
    MUST(column->empty() || column->size() == columns.times.size());
    for (const double number : *column) MUST(is_finite(number));
  }
  return 0;
}

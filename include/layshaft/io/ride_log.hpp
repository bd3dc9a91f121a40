// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/decimal.hpp>
#include <layshaft/road/ride_log.hpp>

#include <algorithm>  // min
#include <array>
#include <cstddef>
#include <limits>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// @file
/// Ride logs as comma-separated values. Opt-in.
///
/// The first line names the columns, in any order: `time_s`; `speed_kmh`, `speed_mps` or `speed_mph`; and, if they were
/// recorded, `height_m`, `engine_rpm`, `indicated_kmh` or `indicated_mph` (what the speedometer shows), `odometer_km`
/// or `odometer_mile`. Others are passed over. Columns are parted by commas, semicolons or tabs, as the first line has
/// it; decimals by a point. Lines that are empty or begin with # are passed over, and so is a byte order mark.
///
///     LEGAL    time_s,speed_kmh\n0,12.5\n1,13.1\n
///     LEGAL    speed_mps;time_s;height_m\r\n3.4;0;612\r\n
///     ILLEGAL  0,12.5 at the top: no names of columns
///     ILLEGAL  12,5: a decimal comma parts columns
///     ILLEGAL  a cell that is empty in a column that is read: a sample without it cannot be told
namespace layshaft {

namespace detail {

/// What a column of a log can be called, and the size of its unit.
struct LogColumn {
  std::string_view name;
  int place;  ///< 0 time, 1 speed, 2 height, 3 engine speed, 4 indicated speed, 5 odometer
  double unit;
};
// clang-format off
inline constexpr LogColumn log_columns[] = {
    {"time_s", 0, 1.0},
    {"speed_kmh", 1, units::kmh.value()},
    {"speed_mps", 1, 1.0},
    {"speed_mph", 1, units::mph.value()},
    {"height_m", 2, 1.0},
    {"engine_rpm", 3, units::rpm.value()},
    {"indicated_kmh", 4, units::kmh.value()},
    {"indicated_mph", 4, units::mph.value()},
    {"odometer_km", 5, units::km.value()},
    {"odometer_mile", 5, units::mile.value()},
};
// clang-format on

/// The most samples that are read: a hundred a second for more than a day.
inline constexpr std::size_t most_samples = 10'000'000;

[[nodiscard]] constexpr std::string_view trimmed(std::string_view text) noexcept {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t' || text.front() == '"')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '"' || text.back() == '\r'))
    text.remove_suffix(1);
  return text;
}

class LogReader {
 public:
  explicit LogReader(std::string_view text, std::size_t most = most_samples) : text_(text), most_(most) {
    if (text_.starts_with("\xEF\xBB\xBF")) text_.remove_prefix(3);
  }

  [[nodiscard]] Result<RideColumns> read() {
    std::string_view line;
    if (!next(line)) return Error::value("the ride log is empty; expected a line that names its columns");
    if (auto error = read_names(line)) return *std::move(error);
    RideColumns columns;
    std::vector<double>* const into[] = {&columns.times,         &columns.speeds,           &columns.heights,
                                         &columns.engine_speeds, &columns.indicated_speeds, &columns.odometers};
    while (next(line)) {
      if (columns.times.size() == most_)
        return Error::range("number of samples in the ride log", "more", "at most " + std::to_string(most_));
      const char* at = line.data();
      const char* const end = at + line.size();
      for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
        const char* stop = at;
        while (stop != end && *stop != separator_) ++stop;
        if (const LogColumn* column = cells_[cell]) {
          double number = 0.0;
          const char* begin = at;
          while (begin != stop && (*begin == ' ' || *begin == '"')) ++begin;
          const auto [read, problem] = read_decimal(begin, stop, number);
          const char* rest = read;
          while (rest != stop && (*rest == ' ' || *rest == '"' || *rest == '\r')) ++rest;
          if (problem != std::errc() || rest != stop || !is_finite(number))
            return bad_cell(*column, trimmed(std::string_view(at, static_cast<std::size_t>(stop - at))));
          into[column->place]->push_back(number * column->unit);
        }
        if (cell + 1 == cells_.size()) {
          if (stop != end) return Error::value(place() + " has more cells than the first line; expected " + count());
        } else if (stop == end) {
          return Error::value(place() + " has fewer cells than the first line; expected " + count());
        }
        at = stop == end ? end : stop + 1;
      }
    }
    return columns;
  }

 private:
  /// The next line that says something.
  [[nodiscard]] bool next(std::string_view& line) {
    while (!text_.empty()) {
      const std::size_t end = std::min(text_.find('\n'), text_.size());
      line = text_.substr(0, end);
      text_.remove_prefix(std::min(end + 1, text_.size()));
      ++line_;
      if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
      if (!trimmed(line).empty() && line.front() != '#') return true;
    }
    return false;
  }
  [[nodiscard]] std::optional<Error> read_names(std::string_view line) {
    separator_ = line.find(';') != line.npos ? ';' : line.find('\t') != line.npos ? '\t' : ',';
    std::array<bool, 6> found{};
    constexpr std::size_t most = 1000;
    while (true) {
      const std::size_t end = std::min(line.find(separator_), line.size());
      const std::string_view name = trimmed(line.substr(0, end));
      const LogColumn* known = nullptr;
      for (const LogColumn& column : log_columns)
        if (column.name == name) known = &column;
      if (known && found[static_cast<std::size_t>(known->place)])
        return Error::value(place() + " names the column " + std::string(name) + ", or another of the same, twice");
      if (known) found[static_cast<std::size_t>(known->place)] = true;
      cells_.push_back(known);
      if (cells_.size() > most) return Error::value(place() + " names more than 1000 columns");
      if (end == line.size()) break;
      line.remove_prefix(end + 1);
    }
    if (!found[0])
      return Error::value(place() + " names no column time_s; expected names such as \"time_s,speed_kmh\"");
    if (!found[1]) return Error::value(place() + " names no column of speeds: speed_kmh, speed_mps or speed_mph");
    return std::nullopt;
  }
  [[nodiscard]] Error bad_cell(const LogColumn& column, std::string_view cell) const {
    std::string sentence = place();
    sentence.append(", ").append(column.name).append(cell.empty() ? ": the cell is empty" : ": no number, \"");
    if (!cell.empty()) {
      append_printable(sentence, cell);
      sentence.append("\"");
    }
    return Error::value(sentence.append("; expected a number with a decimal point"));
  }
  [[nodiscard]] std::string place() const { return "line " + std::to_string(line_); }
  [[nodiscard]] std::string count() const { return std::to_string(cells_.size()); }

  std::string_view text_;
  std::size_t most_;
  std::size_t line_ = 0;
  char separator_ = ',';
  std::vector<const LogColumn*> cells_;
};

}  // namespace detail

/// Reads a ride log from comma-separated values; or an Error that names the line and the column, or a RangeError as
/// RideLog::make says.
[[nodiscard]] inline Result<RideLog> try_read_ride_log(std::string_view text, Duration gap = RideLog::usual_gap) {
  auto columns = detail::LogReader(text).read();
  if (!columns) return columns.error();
  return RideLog::make(*columns, gap);
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error as `try_read_ride_log` says.
[[nodiscard]] inline RideLog read_ride_log(std::string_view text, Duration gap = RideLog::usual_gap) {
  return try_read_ride_log(text, gap).value();
}
#endif

}  // namespace layshaft

// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/quantity_text.hpp>

#include <boost/json.hpp>

#include <string>

/// @file
/// Writes JSON for people to read and edit: two spaces a level, short objects and lists on one line, numbers in the
/// fewest digits that read back as the same value.
namespace layshaft::detail {

inline void write_json(std::string& out, const boost::json::value& value, std::size_t indent = 0);

/// A list or an object: `write` writes each of its parts; on one line when short. (What has a part on several lines is
/// no short line: that part alone is longer.)
template <class Parts, class Write>
void write_json_parts(std::string& out, const Parts& parts, char open, char close, std::size_t indent, Write write) {
  constexpr std::size_t longest_line = 80;
  std::string line(1, open);
  bool first = true;
  for (const auto& part : parts) {
    if (!first) line.append(", ");
    write(line, part, indent);
    first = false;
  }
  line.push_back(close);
  if (indent > 0 && line.size() <= longest_line) {
    out.append(line);
    return;
  }
  out.push_back(open);
  first = true;
  for (const auto& part : parts) {
    out.append(first ? "\n" : ",\n").append(indent + 2, ' ');
    write(out, part, indent + 2);
    first = false;
  }
  out.append("\n").append(indent, ' ').push_back(close);
}

inline void write_json(std::string& out, const boost::json::value& value, std::size_t indent) {
  if (value.is_object()) {
    write_json_parts(out, value.get_object(), '{', '}', indent,
                     [](std::string& to, const auto& member, std::size_t level) {
                       to.append(boost::json::serialize(boost::json::value(member.key()))).append(": ");
                       write_json(to, member.value(), level);
                     });
  } else if (value.is_array()) {
    write_json_parts(out, value.get_array(), '[', ']', indent,
                     [](std::string& to, const auto& element, std::size_t level) { write_json(to, element, level); });
  } else if (value.is_double()) {
    out.append(to_text(value.get_double()));
  } else {
    out.append(boost::json::serialize(value));
  }
}

/// A number, or a quantity as text with its unit.
[[nodiscard]] inline boost::json::value json_of_one(double value) { return value; }
template <class Quantity>
[[nodiscard]] boost::json::value json_of_one(const Quantity& value) {
  return boost::json::value(to_text(value));
}
template <class Quantity>
[[nodiscard]] boost::json::value json_of(const Band<Quantity>& band) {
  if (band == Band<Quantity>::exactly(band.nominal)) return json_of_one(band.nominal);
  return {{"low", json_of_one(band.low)}, {"nominal", json_of_one(band.nominal)}, {"high", json_of_one(band.high)}};
}

}  // namespace layshaft::detail

// SPDX-License-Identifier: MIT
#pragma once

#include <reference/csv.hpp>

#include <cstdlib>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace layshaft_test {

/// The n-th number that an example of road_worked_examples.csv printed, from 0.
inline double printed_number(std::string_view id, int which) {
  for (const Row& row : read_csv("road_worked_examples.csv")) {
    if (row.at("id") != id) continue;
    if (row.at("certainty") != "published") throw std::runtime_error("example is not published: " + std::string(id));
    const std::string& text = row.at("printed");
    std::size_t at = 0;
    for (int seen = 0;; ++seen) {
      at = text.find_first_of("0123456789", at);
      if (at == std::string::npos) throw std::runtime_error("no such number in example " + std::string(id));
      const std::size_t end = text.find_first_not_of("0123456789.", at);
      if (seen == which) return number(text.substr(at, end - at));
      at = end;
    }
  }
  throw std::runtime_error("no example " + std::string(id));
}

}  // namespace layshaft_test

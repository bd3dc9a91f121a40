// SPDX-License-Identifier: MIT
#pragma once

#include <reference/csv.hpp>

#include <stdexcept>
#include <string>
#include <string_view>

namespace layshaft_test {

/// The row of chain_worked_examples.csv.
inline Row chain_example(std::string_view id) {
  for (const Row& row : read_csv("chain_worked_examples.csv"))
    if (row.at("id") == id) return row;
  throw std::runtime_error("no example " + std::string(id));
}
/// What the book printed, before an arrow where there is one.
inline double printed_first(std::string_view id) {
  const Row row = chain_example(id);
  if (row.at("certainty") != "published") throw std::runtime_error("example is not published: " + std::string(id));
  const std::string& cell = row.at("printed");
  return number(cell.substr(0, cell.find(' ')));
}

}  // namespace layshaft_test

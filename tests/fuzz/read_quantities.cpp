// SPDX-License-Identifier: MIT
// Reads texts, one a line, from standard input: the name of a kind of quantity, a tab, a text. Answers each with a
// line: the quantity in SI as a hexadecimal float, or `!`.
#include <layshaft/core/core.hpp>

#include <cstdio>
#include <iostream>
#include <string>
#include <string_view>

namespace {

using namespace layshaft;

template <class Quantity>
bool answer(std::string_view kind, std::string_view text) {
  if (kind != QuantityNames<Quantity>::name) return false;
  const auto read = try_parse_quantity<Quantity>(text);
  if (read)
    std::printf("%a\n", read->value());
  else
    std::puts("!");
  return true;
}
template <class... Quantities>
bool answer_one_of(std::string_view kind, std::string_view text) {
  return (answer<Quantities>(kind, text) || ...);
}

}  // namespace

int main() {
  for (std::string line; std::getline(std::cin, line);) {
    const std::size_t tab = line.find('\t');
    const std::string_view all = line, kind = all.substr(0, tab);
    if (tab == std::string::npos ||
        !answer_one_of<Length, Speed, Mass, Torque, AngularSpeed>(kind, all.substr(tab + 1)))
      return std::fprintf(stderr, "no kind of quantity: %s\n", line.c_str()), 1;
  }
  return 0;
}

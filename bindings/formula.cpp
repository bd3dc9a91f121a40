// SPDX-License-Identifier: MIT
#include "formula.hpp"

namespace layshaft::python::detail {

std::vector<std::string> parameter_names(std::string_view parameters) {
  std::vector<std::string> names;
  std::string word;
  for (const char c : parameters.substr(1)) {
    if (c == ',' || c == ')') {
      names.push_back(word);
      word.clear();
    } else if (c == ' ' || c == '\n') {
      word.clear();
    } else {
      word += c;
    }
  }
  return names;
}

bool asks_positive(std::string_view range, std::string_view name) {
  return range.find("positive(" + std::string(name) + ")") != range.npos;
}

}  // namespace layshaft::python::detail

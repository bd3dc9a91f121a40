// SPDX-License-Identifier: MIT
#pragma once

#include <fstream>
#include <string>
#include <string_view>
#include <vector>

/// @file
/// The LEGAL and ILLEGAL lists of designation.hpp as they stand in the header's own documentation, so that they are the
/// first test and never grow stale.
namespace layshaft_test {

/// One line of a list: the text, and what stands behind it.
struct Example {
  std::string text;
  std::string outcome;
};

inline std::string unescaped(std::string_view text) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i, 2) == "\\n") {
      plain += '\n';
      i += 1;
    } else if (text.substr(i, 4) == "\\x00") {
      plain += '\0';
      i += 3;
    } else {
      plain += text[i];
    }
  }
  return plain;
}

inline std::vector<Example> examples(std::string_view heading) {
  std::ifstream header(LAYSHAFT_INCLUDE_DIR "/layshaft/tyre/designation.hpp");
  std::vector<Example> found;
  std::string line;
  while (std::getline(header, line) && !line.starts_with("/// " + std::string(heading) + ",")) {
  }
  std::getline(header, line);  // the empty line behind the heading
  while (std::getline(header, line) && line.starts_with("///     ")) {
    const std::string_view example = std::string_view(line).substr(8);
    const bool quoted = example.starts_with('"');
    const std::size_t end = quoted ? example.find('"', 1) : example.find("  ");
    const std::string_view text = quoted ? example.substr(1, end - 1) : example.substr(0, end);
    std::string_view rest = example.substr(quoted ? end + 1 : end);
    rest.remove_prefix(rest.find_first_not_of(' '));
    found.push_back({unescaped(text), std::string(rest.substr(0, rest.find("  ")))});
  }
  return found;
}

}  // namespace layshaft_test

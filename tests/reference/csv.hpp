// SPDX-License-Identifier: MIT
#pragma once

#include <charconv>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

/// @file
/// Reads the tables of tests/reference for the tests.
namespace layshaft_test {

using Row = std::map<std::string, std::string>;

/// The cells of one CSV text, line by line. A cell in quotes may hold commas, line ends and doubled quotes; lines
/// that are empty or start with '#' are left out.
inline std::vector<std::vector<std::string>> csv_cells(std::string_view text) {
  std::vector<std::vector<std::string>> lines;
  std::size_t at = 0;
  while (at < text.size()) {
    if (text[at] == '#' || text[at] == '\n' || text[at] == '\r') {
      const std::size_t end = text.find('\n', at);
      at = end == text.npos ? text.size() : end + 1;
      continue;
    }
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (; at < text.size(); ++at) {
      const char c = text[at];
      if (quoted) {
        if (c != '"') {
          cells.back() += c;
        } else if (at + 1 < text.size() && text[at + 1] == '"') {
          cells.back() += text[++at];
        } else {
          quoted = false;
        }
      } else if (c == '"') {
        quoted = true;
      } else if (c == ',') {
        cells.emplace_back();
      } else if (c == '\n') {
        ++at;
        break;
      } else if (c != '\r') {
        cells.back() += c;
      }
    }
    if (quoted) throw std::runtime_error("a quoted cell is not closed");
    lines.push_back(std::move(cells));
  }
  return lines;
}

/// The rows of tests/reference/FILE, each a map from the heading to the cell.
/// @throws std::runtime_error when the file is missing, holds no row, or a row has not as many cells as the headings.
inline std::vector<Row> read_csv(const char* file) {
  std::ifstream stream(std::string(LAYSHAFT_REFERENCE_DIR) + "/" + file, std::ios::binary);
  if (!stream) throw std::runtime_error(std::string(file) + ": not found in " LAYSHAFT_REFERENCE_DIR);
  std::ostringstream text;
  text << stream.rdbuf();
  const auto lines = csv_cells(text.str());
  if (lines.size() < 2) throw std::runtime_error(std::string(file) + ": no rows");
  std::vector<Row> rows;
  for (std::size_t line = 1; line < lines.size(); ++line) {
    if (lines[line].size() != lines[0].size())
      throw std::runtime_error(std::string(file) + ": row " + std::to_string(line) + " has " +
                               std::to_string(lines[line].size()) + " cells, the headings " +
                               std::to_string(lines[0].size()));
    Row row;
    for (std::size_t cell = 0; cell < lines[0].size(); ++cell) row[lines[0][cell]] = lines[line][cell];
    rows.push_back(std::move(row));
  }
  return rows;
}

/// The number that a cell holds, and nothing else in it.
/// @throws std::runtime_error for any other text.
inline double number(std::string_view text) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto [stopped, problem] = std::from_chars(text.data(), end, value);
  if (problem != std::errc() || stopped != end) throw std::runtime_error("not a number: \"" + std::string(text) + "\"");
  return value;
}

}  // namespace layshaft_test

// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/recorder.hpp>
#include <layshaft/core/result.hpp>

#include <cstddef>
#include <string>
#include <string_view>

/// @file
/// Asking for a working by the name of the number. Opt-in.
namespace layshaft::detail {

/// A number that can be explained, and how.
template <class Question>
struct Explained {
  std::string_view what;
  Result<Working> (*working)(const Question&);
};

/// Whether both are the same name; underscores count as spaces.
[[nodiscard]] constexpr bool same_name(std::string_view a, std::string_view b) noexcept {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if ((a[i] == '_' ? ' ' : a[i]) != (b[i] == '_' ? ' ' : b[i])) return false;
  return true;
}

/// The working of the number of that name; or a parse error that lists the names there are.
template <class Question, std::size_t N>
[[nodiscard]] Result<Working> explain_by_name(const Explained<Question> (&all)[N], std::string_view what,
                                              const Question& question) {
  std::string names;
  for (const Explained<Question>& one : all) {
    if (same_name(one.what, what)) return one.working(question);
    names.append(names.empty() ? "\"" : ", \"").append(one.what).append("\"");
  }
  return Error::parse(what, 0, "no number of this name to explain", "one of " + names);
}

/// The error of a question that leaves open what the number depends on.
[[nodiscard]] inline Error left_open(std::string_view what, std::string_view needed) {
  return Error::value(
      std::string("to explain the ").append(what).append(", say the ").append(needed).append(" as well"));
}

}  // namespace layshaft::detail

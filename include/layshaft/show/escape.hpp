// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/utf8.hpp>

#include <algorithm>  // max
#include <string>
#include <string_view>

/// @file
/// Text from outside made harmless for what it is written into. Opt-in.
namespace layshaft {

namespace detail {
/// The text with each byte that `replace` has an answer for replaced, and each character that could steer a terminal or
/// a page (utf8_steers) as a space.
template <class Replace>
[[nodiscard]] std::string escaped(std::string_view text, Replace replace) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t bytes = std::max<std::size_t>(utf8_bytes(text, i), 1);
    const std::string_view instead = replace(text[i]);
    if (!instead.empty())
      out.append(instead);
    else if (utf8_steers(text, i))
      out.push_back(' ');
    else
      out.append(text.substr(i, bytes));
    i += bytes;
  }
  return out;
}
}  // namespace detail

/// For plain text on a terminal.
[[nodiscard]] inline std::string escape_text(std::string_view text) {
  return detail::escaped(text, [](char) { return std::string_view(); });
}
/// For HTML and MathML, in text and in quoted attributes.
[[nodiscard]] inline std::string escape_html(std::string_view text) {
  return detail::escaped(text, [](char c) -> std::string_view {
    switch (c) {
      case '&': return "&amp;";
      case '<': return "&lt;";
      case '>': return "&gt;";
      case '"': return "&quot;";
      case '\'': return "&#39;";
      default: return {};
    }
  });
}
/// For LaTeX, outside of mathematics.
[[nodiscard]] inline std::string escape_latex(std::string_view text) {
  return detail::escaped(text, [](char c) -> std::string_view {
    switch (c) {
      case '\\': return "\\textbackslash{}";
      case '{': return "\\{";
      case '}': return "\\}";
      case '$': return "\\$";
      case '&': return "\\&";
      case '#': return "\\#";
      case '%': return "\\%";
      case '_': return "\\_";
      case '^': return "\\textasciicircum{}";
      case '~': return "\\textasciitilde{}";
      case '<': return "\\textless{}";
      case '>': return "\\textgreater{}";
      default: return {};
    }
  });
}
/// For Markdown, which also lets HTML through.
[[nodiscard]] inline std::string escape_markdown(std::string_view text) {
  return detail::escaped(text, [](char c) -> std::string_view {
    switch (c) {
      case '&': return "&amp;";
      case '<': return "&lt;";
      case '>': return "&gt;";
      case '\\': return "\\\\";
      case '`': return "\\`";
      case '*': return "\\*";
      case '_': return "\\_";
      case '[': return "\\[";
      case ']': return "\\]";
      case '#': return "\\#";
      case '|': return "\\|";
      case '$': return "\\$";
      case '~': return "\\~";
      case '!': return "\\!";
      default: return {};
    }
  });
}

}  // namespace layshaft

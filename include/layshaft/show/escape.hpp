// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

/// @file
/// Text from outside made harmless for what it is written into. Opt-in.
namespace layshaft {

namespace detail {
/// Whether a byte could steer a terminal or a page instead of standing in it. (Bytes above 127 are parts of UTF-8.)
[[nodiscard]] constexpr bool is_control(char c) noexcept { return (c >= 0 && c < 0x20) || c == 0x7f; }

/// The text with each byte that `replace` has an answer for replaced, and control characters as spaces.
template <class Replace>
[[nodiscard]] std::string escaped(std::string_view text, Replace replace) {
  std::string out;
  for (const char c : text) {
    const std::string_view instead = replace(c);
    if (!instead.empty())
      out.append(instead);
    else
      out.push_back(is_control(c) ? ' ' : c);
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

// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/glossary.hpp>
#include <layshaft/core/working.hpp>

#include <string>
#include <string_view>
#include <utility>

/// @file
/// The symbols that steps are written with. Opt-in.
namespace layshaft {

/// A symbol in plain text and in TeX: "d_a,max" and "d_{a,\max}". MathML is made of the plain one.
struct Symbol {
  std::string text;
  std::string tex;
};

namespace detail {

/// An index put behind a symbol: z1 and 0 make z1,0; U and 0 make U0.
[[nodiscard]] inline Symbol with_index(Symbol symbol, std::string_view index) {
  const bool bare =
      symbol.text.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string::npos;
  symbol.text.append(bare && index.size() == 1 ? "" : bare ? "_" : ",").append(index);
  const std::string set = index.size() == 1 ? std::string(index) : "\\mathrm{" + std::string(index) + "}";
  const std::size_t low = symbol.tex.find('_');
  if (low == std::string::npos) {
    symbol.tex.append("_{").append(set).append("}");
  } else if (symbol.tex[low + 1] == '{') {
    symbol.tex.insert(symbol.tex.rfind('}'), "," + set);
  } else {
    symbol.tex.insert(low + 1, "{");
    symbol.tex.insert(low + 3, "," + set + "}");
  }
  return symbol;
}

}  // namespace detail

/// The symbol of a step's result: its word's, with an index for gear 3, for before and after, for the ends of an
/// adjuster.
[[nodiscard]] inline Symbol symbol_of(const Step& step) {
  const Word* word = find_word(step.identity().name.word);
  Symbol symbol = word ? Symbol{std::string(word->symbol), std::string(word->tex)} : Symbol{step.name(), step.name()};
  if (step.identity().name.index > 0)
    symbol = detail::with_index(std::move(symbol), std::to_string(step.identity().name.index));
  switch (step.identity().scope) {
    case Scope::none: return symbol;
    case Scope::base: return detail::with_index(std::move(symbol), "0");
    case Scope::trial: return detail::with_index(std::move(symbol), "1");
    case Scope::front_end: return detail::with_index(std::move(symbol), "fore");
    case Scope::rear_end: return detail::with_index(std::move(symbol), "aft");
  }
  return symbol;
}
[[nodiscard]] inline std::string symbol_text(const Step& step) { return symbol_of(step).text; }

}  // namespace layshaft

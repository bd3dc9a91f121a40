// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/glyph.hpp>
#include <layshaft/tyre/canonical.hpp>
#include <layshaft/tyre/designation.hpp>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// @file
/// The markings that a mistyped one may have meant, and the whole of what there is to say of it.
namespace layshaft {

namespace detail {

/// Looks for markings one slip away from a text that is none, near the place of its fault. Of the kinds of slip, in
/// this order, only the first that leads to a marking counts: letters typed for the digits they look like, as many as
/// there are; two neighbours swapped; a character left out, or another sign or space typed for one; a character too
/// many, or a digit for a digit or a letter for a letter; any other character. A text that only ends too soon lacks a
/// sign or a letter, if it lacks but one character; which digit it would be, nobody knows.
class NearestMarkings {
 public:
  static constexpr std::size_t most = 3;
  static constexpr std::size_t longest = 80;

  explicit NearestMarkings(std::string_view text) {
    if (text.size() > longest || !spell_out(text)) return;
    DesignationReader reader(text_);
    if (reader.read() || !reader.fault().slip) return;
    from_ = std::max<std::size_t>(reader.fault().position, 1) - 1;
    to_ = std::min(reader.reach() + 1, text_.size());
    const bool cut_off = reader.fault().position == text_.size();
    if (cut_off) {
      add_at(text_.size(), signs_and_letters);
    } else if (!replace_look_alikes(reader.reach())) {
      swap_neighbours();
      if (found_.empty()) put_in_what_lacks();
      if (found_.empty()) take_out_or_correct();
      if (found_.empty()) change_any();
    }
    if (found_.size() > most) found_.clear();  // so many are no hint
  }

  [[nodiscard]] std::vector<std::string> found() && { return std::move(found_); }

 private:
  /// The text in the characters it is read as; false if one of them is none that people type.
  bool spell_out(std::string_view text) {
    constexpr std::string_view fractions[] = {" 1/8", " 1/4", " 3/8", " 1/2", " 5/8", " 3/4", " 7/8"};
    for (Cursor cursor(text); !cursor.at_end(); cursor.advance()) {
      if (cursor.character() == Glyph::control) return false;
      if (const int eighths = cursor.glyph().eighths(); eighths > 0)
        text_.append(fractions[eighths - 1]);
      else
        text_.push_back(cursor.character() == Glyph::unknown ? '?' : cursor.character());
    }
    return true;
  }

  bool attempt(std::string_view text) {
    DesignationReader reader(text);
    if (!reader.read()) return false;
    std::string marking = canonical(reader.designation());
    if (std::find(found_.begin(), found_.end(), marking) == found_.end()) found_.push_back(std::move(marking));
    return true;
  }

  bool replace_look_alikes(std::size_t place) {
    constexpr std::string_view look_alikes = "OQDILSBZGT", meant = "0001158267";
    std::string text = text_;
    while (place < text.size()) {
      const std::size_t which = look_alikes.find(text[place]);
      if (which == std::string_view::npos) return false;
      text[place] = meant[which];
      if (attempt(text)) return true;
      DesignationReader reader(text);
      static_cast<void>(reader.read());
      if (reader.reach() <= place) return false;
      place = reader.reach();
    }
    return false;
  }

  enum class Class { digit, letter, sign };
  [[nodiscard]] static Class class_of(char character) {
    return character >= '0' && character <= '9'   ? Class::digit
           : character >= 'A' && character <= 'Z' ? Class::letter
                                                  : Class::sign;
  }

  void swap_neighbours() {
    std::string text = text_;
    for (std::size_t i = from_; i + 1 < to_; ++i) {
      const Class one = class_of(text[i]), other = class_of(text[i + 1]);
      if (one != other && one != Class::sign && other != Class::sign) continue;
      std::swap(text[i], text[i + 1]);
      attempt(text);
      std::swap(text[i], text[i + 1]);
    }
  }

  void add_at(std::size_t place, std::string_view characters) {
    std::string text = text_;
    text.insert(place, 1, ' ');
    for (const char character : characters) {
      if (found_.size() > most) return;
      text[place] = character;
      attempt(text);
    }
  }

  void put_in_what_lacks() {
    for (std::size_t i = from_; i < to_; ++i)
      if (class_of(text_[i]) == Class::sign) change_at(i, "-BR/.X+()");
    for (std::size_t i = from_; i <= to_; ++i) {
      add_at(i, signs_and_letters);
      add_at(i, digits);
    }
  }

  void take_out_or_correct() {
    for (std::size_t i = from_; i < to_; ++i) {
      const Class here = class_of(text_[i]);
      if (here != Class::sign) change_at(i, here == Class::digit ? digits : letters);
      std::string text = text_;
      attempt(text.erase(i, 1));
    }
  }

  void change_any() {
    for (std::size_t i = from_; i < to_; ++i) {
      change_at(i, signs_and_letters);
      change_at(i, digits);
    }
  }

  void change_at(std::size_t place, std::string_view characters) {
    std::string text = text_;
    for (const char character : characters) {
      if (found_.size() > most) return;
      text[place] = character;
      if (character != text_[place]) attempt(text);
    }
  }

  static constexpr std::string_view digits = "0123456789";
  static constexpr std::string_view signs_and_letters = "-/.X BRZMTCLPSNHDOEIFAVWY+()";
  static constexpr std::string_view letters = "BRZMTCLPSNHDOEIFAVWYX";

  std::string text_;
  std::size_t from_ = 0, to_ = 0;
  std::vector<std::string> found_;
};

/// A phrase that names one, two or more: `a, b or c`.
inline void append_choice(std::string& text, const std::vector<std::string>& choice) {
  for (std::size_t i = 0; i < choice.size(); ++i) {
    if (i > 0) text.append(i + 1 == choice.size() ? " or " : ", ");
    text.append(choice[i]);
  }
}

/// What was expected where a text is no designation: the forms, what the tables have next to it, the ISO markings that
/// a cycle's name may stand for, and the markings that may have been meant.
[[nodiscard]] inline std::string expected_in_words(const DesignationFault& fault, std::string_view text) {
  std::string words = fault.nearest.behind(fault.expected);
  std::vector<std::string> choice;
  if (fault.name.naming != CycleNaming::iso) {
    CycleReadings readings = cycle_rims_named(fault.name);
    const bool others = readings.count == 1;
    if (readings.count == 0) readings = cycle_rims_called(fault.name);
    const std::string width = std::to_string(cycle_width_in_millimetres(fault.name.naming, fault.name.width)) + "-";
    for (int i = 0; i < readings.count; ++i) choice.push_back(width + std::to_string(readings.bead_seats[i]));
    if (others) choice.emplace_back("another");
    append_choice(words.append(", "), choice);
    return words;
  }
  choice = NearestMarkings(text).found();
  if (!choice.empty()) {
    append_choice(words.append("; perhaps "), choice);
    words.append(" is meant");
  }
  return words;
}

}  // namespace detail

/// The markings, at most three, that are one slip of the finger away from a text that is none; empty where there are
/// none or more. What a ParseError says at its end.
[[nodiscard]] inline std::vector<std::string> nearest_markings(std::string_view text) {
  return detail::NearestMarkings(text).found();
}

}  // namespace layshaft

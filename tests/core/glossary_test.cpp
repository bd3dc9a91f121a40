// SPDX-License-Identifier: MIT
#include <layshaft/core/glossary.hpp>

#include <layshaft/core/unit_names.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <set>
#include <string_view>

namespace {
using namespace layshaft;

TEST(Glossary, IsInOrderAndHasEachWordOnce) {
  EXPECT_TRUE(std::ranges::is_sorted(glossary, {}, &Word::word));
  EXPECT_EQ(std::ranges::adjacent_find(glossary, {}, &Word::word), std::end(glossary));
  for (const Word& word : glossary) {
    EXPECT_FALSE(word.symbol.empty() || word.tex.empty() || word.meaning.empty()) << word.word;
  }
  EXPECT_EQ(find_word("no such word"), nullptr);
}

TEST(Glossary, FindsEachOfItsWordsAndNoOther) {
  for (const Word& word : glossary) {
    EXPECT_EQ(find_word(word.word), &word) << word.word;
    EXPECT_EQ(find_word(word.word.substr(1)), nullptr) << word.word;
  }
  static_assert(find_word("pitch")->symbol == "p");
  static_assert(find_word("") == nullptr && find_word("Pitch") == nullptr);
}

template <class Quantity>
void add_units(std::set<std::string_view>& known) {
  for (const UnitName& unit : QuantityNames<Quantity>::units) known.insert(unit.name);
}

TEST(Glossary, ShowsValuesInUnitsThatTextIsReadInOrInPerCent) {
  std::set<std::string_view> known{"", "%"};
  add_units<Length>(known);
  add_units<Speed>(known);
  add_units<AngularSpeed>(known);
  add_units<Force>(known);
  add_units<Torque>(known);
  add_units<Energy>(known);
  add_units<Power>(known);
  add_units<Mass>(known);
  add_units<Angle>(known);
  add_units<Duration>(known);
  add_units<Acceleration>(known);
  add_units<Area>(known);
  add_units<Pressure>(known);
  add_units<Density>(known);
  add_units<LinearDensity>(known);
  add_units<ForcePerSpeed>(known);
  add_units<MomentOfInertia>(known);
  add_units<Temperature>(known);
  for (const Word& word : glossary) EXPECT_TRUE(known.contains(word.unit)) << word.word << ": " << word.unit;
}

}  // namespace

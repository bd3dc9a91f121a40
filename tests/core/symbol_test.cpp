// SPDX-License-Identifier: MIT
#include <layshaft/core/symbol.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;

Symbol symbol_at(ValueName name, Scope scope) {
  return symbol_of(Step(StepKind::given, {name, scope}, sources::stated, {}));
}
std::string text_of(ValueName name, Scope scope = Scope::none) { return symbol_at(name, scope).text; }
std::string tex_of(ValueName name, Scope scope = Scope::none) { return symbol_at(name, scope).tex; }

TEST(Symbol, IsThatOfTheGlossary) {
  for (const char* name : {"circumference", "front", "rear", "final_ratio"}) {
    const Word* word = find_word(name);
    ASSERT_NE(word, nullptr) << name;
    EXPECT_EQ(text_of(name), word->symbol);
    EXPECT_EQ(tex_of(name), word->tex);
  }
  EXPECT_EQ(text_of("no_word_of_ours"), "no word of ours");  // without a word, its name
}

// U, z1 and d_a: a bare letter, one with an index of its own, and one with a stroke.
TEST(Symbol, HasAnIndexForTheGearAndThePart) {
  EXPECT_EQ(detail::with_index({"U", "U"}, "0").text, "U0");
  EXPECT_EQ(detail::with_index({"U", "U"}, "0").tex, "U_{0}");
  EXPECT_EQ(detail::with_index({"U", "U"}, "aft").text, "U_aft");
  EXPECT_EQ(detail::with_index({"U", "U"}, "aft").tex, "U_{\\mathrm{aft}}");
  EXPECT_EQ(detail::with_index({"z1", "z_1"}, "0").text, "z1,0");
  EXPECT_EQ(detail::with_index({"z1", "z_1"}, "0").tex, "z_{1,0}");
  EXPECT_EQ(detail::with_index({"d_a", "d_{a}"}, "3").text, "d_a,3");
  EXPECT_EQ(detail::with_index({"d_a", "d_{a}"}, "3").tex, "d_{a,3}");
  const Symbol bare{text_of("circumference"), tex_of("circumference")};
  EXPECT_EQ(text_of("circumference", Scope::base), detail::with_index(bare, "0").text);
  EXPECT_EQ(text_of("circumference", Scope::trial), detail::with_index(bare, "1").text);
  EXPECT_EQ(tex_of("circumference", Scope::front_end), detail::with_index(bare, "fore").tex);
  EXPECT_EQ(tex_of("circumference", Scope::rear_end), detail::with_index(bare, "aft").tex);
  EXPECT_EQ(text_of({"circumference", 3}), detail::with_index(bare, "3").text);
}

// A number that was cast without a look names no part.
TEST(Symbol, HasNoIndexForAPartThatIsNone) {
  EXPECT_EQ(text_of("circumference", static_cast<Scope>(99)), text_of("circumference"));
}

}  // namespace

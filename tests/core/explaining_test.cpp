// SPDX-License-Identifier: MIT
#include <layshaft/core/explaining.hpp>

#include <layshaft/gearing/ratio.hpp>

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace {
using namespace layshaft;

struct Pair {
  Teeth front, rear;
};
constexpr detail::Explained<Pair> explained[] = {
    {"final ratio",
     [](const Pair& pair) -> Result<Working> {
       return explain_over("final ratio", std::array{Corner::nominal}, [&](Recorder::Watch watch, Corner) {
         return watch.step(formula::final_ratio{}, watch.given("front", pair.front), watch.given("rear", pair.rear));
       });
     }},
    {"rear teeth", [](const Pair&) -> Result<Working> { return detail::left_open("rear teeth", "final ratio"); }},
};

TEST(ExplainByName, FindsTheNumber) {
  const Pair pair{14_teeth, 42_teeth};
  for (const char* name : {"final ratio", "final_ratio"}) {  // as it is said, and as it is written in code
    const auto working = detail::explain_by_name(explained, name, pair);
    ASSERT_TRUE(working) << name;
    EXPECT_EQ(working->result().result(), Amount::number(3.0));
  }
}

TEST(ExplainByName, ListsTheNamesWhereThereIsNoneOfThat) {
  for (const char* name : {"", "final", "final ratio ", "Final ratio", "final-ratio", "final  ratio", "ratio final"}) {
    const auto working = detail::explain_by_name(explained, name, Pair{14_teeth, 42_teeth});
    ASSERT_FALSE(working) << name;
    EXPECT_EQ(working.error().kind(), ErrorKind::parse);
    EXPECT_EQ(working.error().text(), name);
    EXPECT_EQ(working.error().position(), 0u);
    EXPECT_EQ(working.error().expected(), "one of \"final ratio\", \"rear teeth\"");
  }
  EXPECT_STREQ(detail::explain_by_name(explained, "<b>", Pair{14_teeth, 42_teeth}).error().what(),
               "no number of this name to explain at position 0 of \"<b>\"; expected one of \"final ratio\", "
               "\"rear teeth\"");
}

TEST(ExplainByName, HandsTheErrorOfTheNumberThrough) {
  const auto working = detail::explain_by_name(explained, "rear teeth", Pair{14_teeth, 42_teeth});
  ASSERT_FALSE(working);
  EXPECT_EQ(working.error().kind(), ErrorKind::value);
  EXPECT_STREQ(working.error().what(), "to explain the rear teeth, say the final ratio as well");
}

TEST(SameName, TakesAnUnderscoreForASpace) {
  static_assert(detail::same_name("road speed", "road_speed") && detail::same_name("road_speed", "road speed"));
  static_assert(detail::same_name("", "") && !detail::same_name("", " "));
  static_assert(!detail::same_name("road speed", "road speeds") && !detail::same_name("road speed", "road-speed"));
  static_assert(!detail::same_name("road speed", "Road speed"));
  for (const std::string written : {"top_speed", "top speed"})
    for (const std::string asked : {"top_speed", "top speed"}) EXPECT_TRUE(detail::same_name(written, asked));
}

}  // namespace

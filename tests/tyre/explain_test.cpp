// SPDX-License-Identifier: MIT
#include <layshaft/tyre/explain.hpp>

#include <gtest/gtest.h>
#include <core/workings.hpp>
#include <setup/plain_numbers.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_no_idle_step;
using layshaft_test::expect_sound;
using layshaft_test::names_of;
using layshaft_test::plain_number;
using layshaft_test::step_named;
using Names = std::vector<std::string>;

constexpr std::string_view markings[] = {"110/90-18 M/C 61R TL",
                                         "190/55ZR17",
                                         "120/70B16",
                                         "2.75-17 41P",
                                         "2.00-18",
                                         "4.10-18",
                                         "4.60-20",
                                         "2 1/2-8",
                                         "3.50-10",
                                         "5.4-14",
                                         "MT90B16",
                                         "MT90-15"};

TEST(TyreSize, ExplainsEachOfItsNumbersToTheBit) {
  for (const std::string_view marking : markings)
    for (const TyreUse use : tyre_uses)
      for (const auto& one : layshaft::detail::explained_of_tyre) {
        const TyreSize tyre(marking, use);
        const Working working = tyre.explain(one.what);
        expect_sound(working);
        expect_no_idle_step(working);
        for (const Corner corner : corners)
          EXPECT_EQ(working.result().result(corner), plain_number(tyre, one.what).at(corner)) << marking << one.what;
        EXPECT_EQ(working.title(), std::string(one.what) + " of " + tyre.designation());
        EXPECT_EQ(to_string(working.result().certainty()), "from memory");  // as every rim diameter and limit is
      }
}

TEST(TyreSize, ExplainsAMetricDiameterFromItsMarking) {
  const Working working = "110/90-18"_tyre.explain("circumference");
  EXPECT_EQ(names_of(working), (Names{"rim diameter", "section width", "aspect ratio", "section height",
                                      "height factor", "overall diameter", "rolling factor", "circumference"}));
  EXPECT_EQ(step_named(working, "rim diameter").detail(), "18");
  EXPECT_EQ(step_named(working, "section width").source(), sources::marking);
  EXPECT_EQ(to_string(step_named(working, "section width").certainty()), "stated");
  EXPECT_EQ(to_string(step_named(working, "section height").certainty()), "from memory");  // ISO 5751 is not at hand
  EXPECT_NEAR(step_named(working, "section height").result().value, 0.099, 1e-15);
  const Step& factor = step_named(working, "height factor");
  EXPECT_EQ(factor.result(Corner::low).value, 0.97);
  EXPECT_EQ(factor.result().value, 1.0);
  EXPECT_EQ(factor.result(Corner::high).value, 1.07);
  EXPECT_EQ(factor.detail(), "road");
  // 457 + 2 · 99 mm, and what the limits of the section height leave of it.
  const Step& diameter = step_named(working, "overall diameter");
  EXPECT_NEAR(diameter.result(Corner::low).value, 0.64906, 1e-15);
  EXPECT_NEAR(diameter.result().value, 0.655, 1e-15);
  EXPECT_NEAR(diameter.result(Corner::high).value, 0.66886, 1e-15);
  EXPECT_EQ(diameter.formula(), &formula::overall_diameter_limit::about);
  EXPECT_EQ(step_named(working, "rolling factor").detail(), "diagonal");
}

TEST(TyreSize, ExplainsAListedDiameterFromTheTable) {
  const Working working = "4.60-20"_tyre.explain("overall diameter");  // listed up to rim code 18
  EXPECT_EQ(names_of(working), (Names{"listed diameter", "listed rim diameter", "rim diameter", "overall diameter"}));
  EXPECT_EQ(step_named(working, "listed diameter").detail(), "4.60");
  EXPECT_EQ(step_named(working, "listed rim diameter").detail(), "18");
  EXPECT_EQ(step_named(working, "rim diameter").detail(), "20");
  EXPECT_EQ(working.result().result(), Amount(654_mm + (508_mm - 457_mm)));
  for (const Step& step : working.steps()) EXPECT_EQ(to_string(step.certainty()), "from memory") << step.name();
}

// A special use tyre with a limit of its own in the table takes that from it; one without is limited as metric sizes
// are, by its section height, and these steps only the high run has.
TEST(TyreSize, ExplainsASpecialTyresLimitByTheTableOrByItsSection) {
  const Working listed = TyreSize("4.10-18", TyreUse::special).explain("overall diameter");
  EXPECT_EQ(names_of(listed), (Names{"listed diameter", "listed rim diameter", "rim diameter", "overall diameter"}));
  EXPECT_EQ(step_named(listed, "listed diameter").result(Corner::high), Amount(663_mm));

  const Working working = TyreSize("2.00-18", TyreUse::special).explain("circumference");
  EXPECT_EQ(names_of(working),
            (Names{"listed diameter", "listed rim diameter", "rim diameter", "design diameter", "section height",
                   "height factor", "overall diameter", "rolling factor", "circumference"}));
  for (const char* only_high : {"design diameter", "section height", "height factor"}) {
    const Step& step = step_named(working, only_high);
    EXPECT_FALSE(step.run(Corner::low)) << only_high;
    EXPECT_FALSE(step.run(Corner::nominal)) << only_high;
    EXPECT_TRUE(step.run(Corner::high)) << only_high;
  }
  EXPECT_EQ(step_named(working, "height factor").result().value, 1.12);
  EXPECT_EQ(step_named(working, "height factor").detail(), "special");
  const Step& diameter = step_named(working, "overall diameter");
  EXPECT_EQ(diameter.run(Corner::low)->formula, &formula::overall_diameter_on_another_rim::about);
  EXPECT_EQ(diameter.run(Corner::nominal)->formula, &formula::overall_diameter_on_another_rim::about);
  EXPECT_EQ(diameter.run(Corner::high)->formula, &formula::overall_diameter_limit::about);
  EXPECT_EQ(diameter.run(Corner::low)->from, (std::vector<int>{0, 1, 2}));
  EXPECT_EQ(diameter.run(Corner::high)->from, (std::vector<int>{2, 4, 5}));
  // 457 + 2 · 1.12 · 55 mm: rim, and section height of the design diameter.
  EXPECT_NEAR(diameter.result(Corner::high).value, 0.457 + 2.0 * 1.12 * 0.055, 1e-15);
}

// A snow tyre's limit is 1.01 of the road tyre's, and the working has both.
TEST(TyreSize, ExplainsTheLimitOfASnowTyre) {
  const Working working = TyreSize("110/90-18", TyreUse::snow).explain("overall diameter");
  const Step& diameter = step_named(working, "overall diameter");
  EXPECT_EQ(diameter.run(Corner::high)->formula, &formula::snow_diameter_limit::about);
  EXPECT_EQ(diameter.run(Corner::low)->formula, &formula::overall_diameter_limit::about);
  EXPECT_EQ(Length::from_value(diameter.result(Corner::high).value),
            TyreSize("110/90-18", TyreUse::snow).overall_diameter().high);
}

TEST(TyreSize, ExplainsItsRadii) {
  const TyreSize tyre("110/90-18");
  const auto same = [&](std::string_view what, const Band<Length>& band) {
    const Working working = tyre.explain(what);
    for (const Corner at : {Corner::low, Corner::nominal, Corner::high})
      EXPECT_EQ(working.steps().back().result(at).value, band.at(at).value()) << what;
  };
  same("free radius", free_radius(tyre));
  same("static radius", static_radius(tyre));
  same("effective radius", effective_radius(tyre));
}

TEST(Tread, ExplainsWhatItTells) {
  const Tread tread({.new_depth = 12_mm, .depth = 8_mm, .least = 2_mm, .distance = 3000.0 * units::km});
  const auto value = [&](std::string_view what) {
    return tread.explain(what).steps().back().result(Corner::nominal).value;
  };
  EXPECT_EQ(value("worn"), tread.worn().value());
  EXPECT_EQ(value("left"), *tread.left());
  EXPECT_EQ(value("distance left"), tread.distance_left()->value());
  const Tread bare({.new_depth = 12_mm, .depth = 8_mm});
  EXPECT_EQ(std::string(bare.try_explain("left").error().what()), "to explain the left, say the least depth as well");
  EXPECT_FALSE(bare.try_explain("distance left"));
  EXPECT_EQ(tread.try_explain("depth").error().expected(), "one of \"worn\", \"left\", \"distance left\"");
}

TEST(MeasuredRollout, ExplainsItsCircumference) {
  const RolloutMeasurement measured{.distance = 20.5_m, .turns = 10, .rider_aboard = false};
  const Working working = explain_measured_circumference(measured);
  const Band<Length> band = measured_circumference(measured);
  for (const Corner at : {Corner::low, Corner::nominal, Corner::high})
    EXPECT_EQ(working.steps().back().result(at).value, band.at(at).value());
  EXPECT_FALSE(try_explain_measured_circumference({.distance = 20.5_m, .turns = 0}));
}

TEST(TyreSize, ListsTheNamesItCanExplain) {
  const auto unknown = "110/90-18"_tyre.try_explain("width");
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.error().kind(), ErrorKind::parse);
  EXPECT_EQ(unknown.error().expected(),
            "one of \"overall diameter\", \"circumference\", \"free radius\", \"static radius\", \"effective radius\"");
  EXPECT_THROW((void)"110/90-18"_tyre.explain("width"), ParseError);
  EXPECT_TRUE("110/90-18"_tyre.try_explain("overall_diameter"));
}

}  // namespace

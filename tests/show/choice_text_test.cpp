// SPDX-License-Identifier: MIT
#include <layshaft/show/choice_text.hpp>

#include <setup/machines.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

WishTold told(Measure what, Want want, Band<double> value, std::optional<double> next, bool best,
              std::optional<Amount> target = {}) {
  return {{{what}, want, target}, value, next, best};
}

TEST(ReasonText, SaysHowEachWishFaresAndWhatTheNextOneGives) {
  Reason reason{{told(Measure::thrust_change, Want::target, {-0.01, 0.005, 0.02}, 0.04, true, Amount::fraction(0.0)),
                 told(Measure::cost, Want::less, {40.0, 45.0, 50.5}, 30.0, false),
                 told(Measure::front_teeth, Want::more, Band<double>::exactly(13.0), 13.0, false)}};
  EXPECT_EQ(sentence(reason),
            "thrust change +0.5 (-1.0 to +2.0) % for a wished 0.0 %, the nearest of all; cost 45.00 (40.00 to 50.50); "
            "front teeth 13. Against the next it gains in thrust change (+0.5 % against +4.0 %), and gives up in cost "
            "(45 against 30).");
  reason.wishes.erase(reason.wishes.begin() + 1);
  EXPECT_EQ(sentence(reason),
            "thrust change +0.5 (-1.0 to +2.0) % for a wished 0.0 %, the nearest of all; front teeth 13. Against the "
            "next it gains in thrust change (+0.5 % against +4.0 %).");
  for (WishTold& one : reason.wishes) one.next.reset();
  EXPECT_EQ(sentence(reason),
            "thrust change +0.5 (-1.0 to +2.0) % for a wished 0.0 %, the nearest of all; front teeth 13.");
}

TEST(ReasonText, SaysWhatIsGivenUpWhereNothingIsGained) {
  const Reason worse{{told(Measure::cost, Want::less, Band<double>::exactly(45.0), 30.0, false)}};
  EXPECT_EQ(sentence(worse), "cost 45. Against the next it gives up in cost (45 against 30).");
  const Reason alike{{told(Measure::cost, Want::less, Band<double>::exactly(45.0), 45.0, true)}};
  EXPECT_EQ(sentence(alike), "cost 45, the least of all.");
  EXPECT_EQ(sentence(Reason{}), "");
}

TEST(ReasonText, HasDecimalsWhereAnyEndOfABandIsNotWhole) {
  const auto cost = [](Band<double> value) {
    return sentence(Reason{{told(Measure::cost, Want::more, value, {}, true)}});
  };
  EXPECT_EQ(cost({40.0, 45.0, 50.0}), "cost 45 (40 to 50), the most of all.");
  EXPECT_EQ(cost({40.5, 45.0, 50.0}), "cost 45.00 (40.50 to 50.00), the most of all.");
  EXPECT_EQ(cost({40.0, 45.5, 50.0}), "cost 45.50 (40.00 to 50.00), the most of all.");
  EXPECT_EQ(cost({40.0, 45.0, 50.5}), "cost 45.00 (40.00 to 50.50), the most of all.");
}

TEST(ReasonText, NamesTheGearAlone) {
  const Reason reason{{{{{Measure::climb, 2}, Want::more}, Band<double>::exactly((12.34_deg).value()), {}, false}}};
  EXPECT_EQ(sentence(reason), "climb in gear 2: 12.3 deg.");
}

TEST(ReasonText, ShowsQuantitiesInTheReadersUnits) {
  const Reason reason{{{{{Measure::engine_speed, 6, 90_kmh}, Want::less},
                        {in(6000_rpm, units::rpm) * (1_rpm).value(), (6100_rpm).value(), (6200_rpm).value()},
                        {},
                        true}}};
  EXPECT_EQ(sentence(reason), "engine speed at 90.0 km/h in gear 6: 6100 (6000 to 6200) rpm, the least of all.");
  EXPECT_EQ(sentence(reason, UnitSystem::us),
            "engine speed at 55.9 mph in gear 6: 6100 (6000 to 6200) rpm, the least of all.");
}

TEST(RelaxationText, SaysHowFarEachLimitWouldHaveToGo) {
  const layshaft::Setup setup({.front = 13_teeth, .rear = 48_teeth, .circumference = Band<Length>::exactly(2_m)});
  const Relaxation one{{{0, {{Measure::rear_teeth}, {}, Amount::number(48.0)}, 4.0}}, setup};
  EXPECT_EQ(sentence(one), "Let rear teeth be up to 52 instead of at most 48.");
  const Relaxation two{{{0, {{Measure::top_speed}, 120_kmh, {}}, (5_kmh).value()},
                        {1, {{Measure::wear_room}, Amount::fraction(0.02), {}}, 0.005}},
                       setup};
  EXPECT_EQ(
      sentence(two),
      "Let top speed be down to 115.0 km/h instead of at least 120.0 km/h, and wear room be down to 1.5 % instead "
      "of at least 2.0 %.");
  const Relaxation both{{{0, {{Measure::rear_teeth}, Amount::number(46.0), Amount::number(48.0)}, 4.0}}, setup};
  EXPECT_EQ(sentence(both), "Let rear teeth be down to 42 instead of at least 46, or up to 52 instead of at most 48.");
}

}  // namespace

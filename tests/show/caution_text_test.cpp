// SPDX-License-Identifier: MIT
#include <layshaft/show/caution_text.hpp>

#include "setup/machines.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <utility>

namespace {
using namespace layshaft;
constexpr UnitSystem systems[] = {UnitSystem::metric, UnitSystem::us};

Caution of(CautionCode code, Amount first = {}, Amount second = {}) { return {code, {first, second}}; }

TEST(CautionText, IsAWholeSentenceForEveryCode) {
  std::set<std::string> sentences;
  for (std::size_t i = 0; i < Cautions::capacity; ++i)
    for (const UnitSystem system : systems) {
      const auto code = static_cast<CautionCode>(i);
      const std::string text = sentence(of(code, 12.5_mm, 15.9_mm), system);
      EXPECT_GT(text.size(), 40u) << to_string(code);
      EXPECT_TRUE(text.ends_with('.')) << text;
      EXPECT_EQ(text.find_first_of("{}"), std::string::npos) << text;
      EXPECT_EQ(text.find("  "), std::string::npos) << text;
      if (system == UnitSystem::metric) {
        EXPECT_TRUE(sentences.insert(text).second) << text;  // no two say the same
      }
    }
}

TEST(CautionText, IsNoneForANumberThatNamesNoCode) {
  for (const int outside : {int(Cautions::capacity), 99, -1})
    EXPECT_EQ(sentence(of(static_cast<CautionCode>(outside), 12.5_mm, 15.9_mm), UnitSystem::metric), "") << outside;
}

TEST(CautionText, PutsTheNumbersIn) {
  EXPECT_EQ(
      sentence(of(CautionCode::offset_link, 109_links), UnitSystem::metric),
      "109 links is an odd count and needs an offset link, the weakest part a chain can have: do not use one on a "
      "motorcycle. Choose an even count.");
  const auto has = [](const Caution& caution, UnitSystem system, const char* words) {
    const std::string text = sentence(caution, system);
    EXPECT_NE(text.find(words), std::string::npos) << text;
  };
  has(of(CautionCode::chain_ahead_of_adjuster, 3.21_mm), UnitSystem::metric, "would stand 3.2 mm ahead of");
  has(of(CautionCode::chain_ahead_of_adjuster, 3.21_mm), UnitSystem::us, "would stand 0.13 in ahead of");
  has(of(CautionCode::front_sprocket_smaller, 11_teeth, 12_teeth), UnitSystem::us, "of 11 teeth (stock 12)");
  has(of(CautionCode::tyre_load_below_stock, 250_kg, 280_kg), UnitSystem::metric,
      "carries 250 kg; the stock tyre carried 280 kg");
  has(of(CautionCode::tyre_load_below_stock, 250_kg, 280_kg), UnitSystem::us,
      "carries 551 lb; the stock tyre carried 617 lb");
  has(of(CautionCode::tyre_speed_below_stock, 100_kmh, 130_kmh), UnitSystem::us,
      "rated to 62.1 mph; the stock tyre to 80.8 mph");
  has(of(CautionCode::chain_wear_room_small, Amount::fraction(0.011), Amount::fraction(0.02)), UnitSystem::metric,
      "is 1.1 % longer than new, before the 2.0 %");
  has(of(CautionCode::over_rev_on_downshift, Amount::fraction(0.043)), UnitSystem::metric, "turns 4.3 % faster");
  has(of(CautionCode::speedometer_may_read_low, Amount::fraction(0.021)), UnitSystem::metric, "2.1 %");
}

// Every number a caution brings is told, and every place of the text gets one.
TEST(CautionText, TellsAllThatTheCautionsOfASetupCarry) {
  const Machine machine = layshaft_test::trail_bike();
  for (const int links : {106, 109, 110, 112})
    for (const std::pair<int, int>& sprockets : {std::pair{11, 50}, {12, 46}, {13, 47}})
      for (const char* tyre : {"110/100-18", "120/100-18 60J", "110/100R17 64M", "100/100-18 64M"}) {
        const auto setup = layshaft_test::with(machine.stock(), [&](SetupParts& parts) {
          parts.front = Teeth(sprockets.first);
          parts.rear = Teeth(sprockets.second);
          parts.links = Links(links);
          parts.tyre = TyreSize(tyre);
          parts.chain = ChainSeries(links == 110 ? "525" : "520");
        });
        for (const Caution& caution : appraise(machine, setup).cautions())
          for (const UnitSystem system : systems) {
            const std::string text = sentence(caution, system);
            EXPECT_EQ(text.find_first_of("{}"), std::string::npos) << text;
            EXPECT_EQ(text.find("-0.0 "), std::string::npos) << text;
            EXPECT_EQ(text.find("-0.00 "), std::string::npos) << text;
            EXPECT_EQ(text.find("nan"), std::string::npos) << text;
            EXPECT_EQ(text.find("( "), std::string::npos) << text;
            for (const Amount& amount : caution.amounts)
              EXPECT_NE(text.find(show(amount, system)), std::string::npos) << to_string(caution.code) << ": " << text;
          }
      }
}

}  // namespace

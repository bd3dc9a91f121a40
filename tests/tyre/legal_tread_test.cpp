// SPDX-License-Identifier: MIT
#include <layshaft/tyre/legal_tread.hpp>

#include "../reference/csv.hpp"

#include <gtest/gtest.h>

#include <iterator>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace {
using namespace layshaft;

/// Which rows of the table a row of the reference stands for; none of those that are no rule on worn tyres.
const std::map<std::pair<std::string, std::string>, std::vector<int>> rows_of{
    {{"Germany StVZO s.36(3)", "all motor vehicles"}, {0}},
    {{"Germany StVZO s.36(3)", "mopeds, small and light motorcycles"}, {1}},
    {{"UK (Ask the Police)", "cars, goods vehicles <= 3500 kg"}, {2}},
    {{"UK (Ask the Police)", "motorcycles over 50 cc"}, {3}},
    {{"UK (Ask the Police)", "mopeds/motorcycles <= 50 cc"}, {4}},
    {{"USA FMVSS 119 S6.4", "motorcycle tyres, wear indicators"}, {5}},
    {{"USA Maryland COMAR 11.14.03.05", "motorcycles in inspection"}, {6}},
    {{"USPS handbook PO-515 ss.452, 462", "trucks/buses front / other"}, {7, 8}},
    {{"Brazil Inmetro 083/2008", "motorcycle wear indicators"}, {9}},
    {{"Brazil Inmetro 005/2000 / Contran 558/80", "car wear indicators"}, {10}},
    {{"Japan", "motorcycles / cars"}, {11, 12}},
    {{"FMI (Italy) enduro rules 2020 art.188.7", "NEW rear enduro tyre, maximum"}, {}},
    {{"UK club trials rule", "trials tyre, maximum"}, {}},
    {{"Typical new motocross tyre", "front / rear"}, {}},
    {{"Typical new road motorcycle tyre (forum)", "front / rear"}, {}},
};

// Source: the rules named in tests/reference/tread_depth.csv; the rows marked published were seen.
TEST(LegalTread, HasTheDepthsOfTheReference) {
  std::set<int> seen;
  for (const auto& row : layshaft_test::read_csv("tread_depth.csv")) {
    const auto found = rows_of.find({row.at("source"), row.at("applies_to")});
    ASSERT_NE(found, rows_of.end()) << row.at("source") << ", " << row.at("applies_to");
    std::string depths = row.at("depth_mm");
    if (const auto more = depths.find(" ("); more != depths.npos) depths.erase(more);  // 1.6 (+0.6/-0)
    for (const int at : found->second) {
      const LegalTread& rule = legal_treads[at];
      const std::string depth = depths.substr(0, depths.find(" / "));
      if (depth == "pattern visible") {
        EXPECT_FALSE(rule.depth);
      } else {
        EXPECT_EQ(rule.depth, layshaft_test::number(depth) * units::mm) << at;
      }
      if (const auto next = depths.find(" / "); next != depths.npos) depths.erase(0, next + 3);
      EXPECT_EQ(to_string(rule.source.certainty), row.at("certainty")) << at;
      EXPECT_TRUE(seen.insert(at).second) << at;
    }
  }
  EXPECT_EQ(seen.size(), std::size(legal_treads));
}

TEST(LegalTread, HasOneRuleAtMostForAVehicleInARegion) {
  for (const LegalTread& one : legal_treads)
    for (const LegalTread& other : legal_treads)
      for (const VehicleClass vehicle : vehicle_classes)
        if (&one != &other && one.region == other.region) {
          EXPECT_FALSE(one.applies_to(vehicle) && other.applies_to(vehicle)) << one.region << to_string(vehicle);
        }
}

TEST(LegalTread, IsFoundByRegionAndVehicle) {
  EXPECT_EQ(find_legal_tread("DE", VehicleClass::motorcycle)->depth, 1.6_mm);
  EXPECT_EQ(find_legal_tread("DE", VehicleClass::light_motorcycle)->depth, 1.0_mm);
  EXPECT_EQ(find_legal_tread("GB", VehicleClass::motorcycle)->depth, 1.0_mm);
  EXPECT_EQ(find_legal_tread("US", VehicleClass::motorcycle)->rule, TreadRule::indicator);
  EXPECT_EQ(find_legal_tread("JP", VehicleClass::motorcycle)->source.certainty, Certainty::from_memory);
  static_assert(find_legal_tread("GB", VehicleClass::car)->depth == 1.6_mm);
}

TEST(LegalTread, MayAskForAVisiblePatternOnly) {
  const LegalTread moped = legal_tread("GB", VehicleClass::moped);
  EXPECT_FALSE(moped.depth);
  EXPECT_EQ(moped.condition, "pattern visible");
}

TEST(LegalTread, OfAPartOfACountryIsItsOwnOrTheCountrys) {
  EXPECT_EQ(find_legal_tread("US-MD", VehicleClass::motorcycle)->rule, TreadRule::in_use);
  EXPECT_EQ(find_legal_tread("US-MD", VehicleClass::heavy_other), find_legal_tread("US", VehicleClass::heavy_other));
  EXPECT_EQ(find_legal_tread("US-CA", VehicleClass::motorcycle), find_legal_tread("US", VehicleClass::motorcycle));
  EXPECT_EQ(find_legal_tread("DE-BY", VehicleClass::car), find_legal_tread("DE", VehicleClass::car));
}

TEST(LegalTread, SaysWhatIsKnownWhereThereIsNoRule) {
  const auto nowhere = try_legal_tread("XX", VehicleClass::car);
  ASSERT_FALSE(nowhere);
  EXPECT_EQ(nowhere.error().kind(), ErrorKind::parse);
  EXPECT_STREQ(nowhere.error().what(),
               "no region whose rule on tread is known at position 0 of \"XX\"; expected one of DE, GB, US, US-MD, BR, "
               "JP");
  const auto no_moped = try_legal_tread("US", VehicleClass::moped);
  ASSERT_FALSE(no_moped);
  EXPECT_EQ(no_moped.error().kind(), ErrorKind::value);
  EXPECT_STREQ(no_moped.error().what(),
               "no rule on the tread of a moped is known in US; there are those for light motorcycle; motorcycle; "
               "truck or bus, front axle; truck or bus, other axles");
  for (const char* bad : {"", "de", "U", "USA", "-", "-MD", "DE "})
    EXPECT_THROW(static_cast<void>(legal_tread(bad, VehicleClass::car)), ParseError) << bad;
}

TEST(LegalTread, HasAWordForEveryKind) {
  std::set<std::string_view> words;
  for (const VehicleClass vehicle : vehicle_classes) words.insert(to_string(vehicle));
  EXPECT_EQ(words.size(), 7u);
  EXPECT_FALSE(words.contains(""));
  static_assert(to_string(TreadRule::in_use) == "in use");
  static_assert(to_string(TreadRule::indicator) == "wear indicator");
  static_assert(to_string(TreadRule::handbook) == "handbook");
}

/// The numbers in a text, in order, a leading "s." or "ss." aside.
std::vector<std::string> numbers_in_text(std::string_view text) {
  std::vector<std::string> numbers;
  bool inside = false;
  for (const char c : text) {
    const bool digit = c >= '0' && c <= '9';
    if (digit && !inside) numbers.emplace_back();
    if (digit) numbers.back() += c;
    inside = digit;
  }
  return numbers;
}

// Clauses, regulations and fractions of an inch are data as well: each number of a row's source stands in that of the
// reference (tests/reference/tread_depth.csv), and those of its condition are held against a copy.
TEST(LegalTread, NamesTheClausesOfTheReference) {
  for (const auto& [of, rows] : rows_of)
    for (const int at : rows)
      EXPECT_EQ(numbers_in_text(legal_treads[at].source.document), numbers_in_text(of.first)) << of.first;
  const std::vector<std::pair<int, std::vector<std::string>>> conditions{
      {5, {"1", "32"}}, {6, {"1", "32"}}, {7, {"4", "32"}}, {8, {"2", "32"}}, {10, {"0", "6"}}};
  for (const auto& [at, numbers] : conditions) EXPECT_EQ(numbers_in_text(legal_treads[at].condition), numbers) << at;
}

}  // namespace

// SPDX-License-Identifier: MIT
#include <layshaft/choose/space.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;

std::string space_fault(const Space& space) {
  const auto error = detail::outside(space);
  return error ? std::string(error->what()) : std::string();
}
Space small_space() { return {.fronts = {{12_teeth}}, .rears = {{47_teeth}}}; }

TEST(Space, HasPartsAndNotTooManyOfThem) {
  EXPECT_EQ(space_fault(small_space()), "");
  Space space = small_space();
  space.fronts.assign(200, {12_teeth});
  space.rears.assign(200, {47_teeth});
  space.tyres.assign(10000, {.circumference = Band<Length>::exactly(2_m)});
  space.chains.assign(100, {});
  EXPECT_EQ(space_fault(space), "");
  space.chains.emplace_back();
  EXPECT_EQ(space_fault(space), "number of chains is 101; expected at most 100");
  space.tyres.push_back(space.tyres.front());
  EXPECT_EQ(space_fault(space), "number of tyres is 10001; expected at most 10000");
  space.rears.push_back({47_teeth});
  EXPECT_EQ(space_fault(space), "number of rears is 201; expected at most 200");
  space.fronts.push_back({12_teeth});
  EXPECT_EQ(space_fault(space), "number of fronts is 201; expected at most 200");
  space.rears.clear();
  EXPECT_EQ(space_fault(space), "rears: none was given; expected 1 to 200 sprockets");
  space.fronts.clear();
  EXPECT_EQ(space_fault(space), "fronts: none was given; expected 1 to 200 sprockets");
}

TEST(Space, NamesTheOfferThatIsWrong) {
  Space space = small_space();
  space.tyres = {{.tyre = TyreSize("120/90-18 65M")}, {}};
  EXPECT_EQ(space_fault(space),
            "tyres[1]: a tyre needs a marking, or a measured circumference in its place; neither was "
            "stated");
  space.tyres[1].circumference = Band<Length>::exactly(6_m);
  EXPECT_EQ(space_fault(space), "tyres[1]: circumference is 6000 mm; expected 200 mm to 5000 mm");
  space.tyres[1].circumference = Band<Length>::exactly(2_m);
  EXPECT_EQ(space_fault(space), "");
  space.chains = {{}, {}, {.made = {.tensile_strength = 1_N}}};
  EXPECT_EQ(space_fault(space), "chains[2]: tensile_strength is 1 N; expected 100 N to 10000000 N");
  space.chains[2].made.tensile_strength = 30_kN;
  space.chains[1].offer.labour = Band<double>::exactly(-1.0);
  EXPECT_EQ(space_fault(space), "chains[1]: labour is -1; expected 0 to 1000000000000");
}

TEST(Space, AndItsPartsAreEqualByWhatTheyAre) {
  const Space one = small_space();
  Space other = one;
  EXPECT_EQ(other, one);
  other.chains.emplace_back();
  EXPECT_NE(other, one);
  EXPECT_EQ(ChainOffer{.longest = Links(104)}, ChainOffer{.longest = Links(104)});
  EXPECT_NE(ChainOffer{.longest = Links(104)}, ChainOffer{.longest = Links(106)});
}

}  // namespace

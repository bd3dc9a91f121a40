// SPDX-License-Identifier: MIT
#include <layshaft/chain/loop_bulk.hpp>

#include <gtest/gtest.h>

#include <bit>
#include <cfloat>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>
#include <random>
#include <string>
#include <thread>
#include <utility>
#include <vector>

namespace {

using namespace layshaft;

/// Drives by columns, in pitches: the pitch is 1 mm.
struct ManyDrives {
  std::vector<double> front, rear, centre, links;

  /// 8 to 90 teeth, from pitch circles that touch to 120 pitches of clear run.
  explicit ManyDrives(std::size_t size, unsigned seed = 20260101) {
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> teeth(8, 90);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    for (std::size_t i = 0; i < size; ++i) {
      front.push_back(teeth(random));
      rear.push_back(teeth(random));
      const double touching = 0.5 / std::sin(pi / front[i]) + 0.5 / std::sin(pi / rear[i]), gap = share(random);
      centre.push_back(touching * (1.0 + 1e-6) + 120.0 * gap * gap);
      const double taut = chain_links(1_mm, *Teeth::make(static_cast<int>(front[i])),
                                      *Teeth::make(static_cast<int>(rear[i])), centre[i] * units::mm);
      links.push_back(i % 3 == 0 ? std::ceil(taut) : taut);
    }
  }
  [[nodiscard]] Teeth front_at(std::size_t i) const { return Teeth(static_cast<int>(front[i])); }
  [[nodiscard]] Teeth rear_at(std::size_t i) const { return Teeth(static_cast<int>(rear[i])); }
};
const std::vector<double> one_mm{1.0};

std::vector<double> centres(const std::vector<double>& pitch_mm, const std::vector<double>& front,
                            const std::vector<double>& rear, const std::vector<double>& links) {
  std::vector<double> centre_mm(std::max(front.size(), links.size()));
  chain_centres_mm(pitch_mm, front, rear, links, centre_mm);
  return centre_mm;
}
std::vector<double> links_of(const std::vector<double>& pitch_mm, const std::vector<double>& front,
                             const std::vector<double>& rear, const std::vector<double>& centre_mm) {
  std::vector<double> links(std::max(front.size(), centre_mm.size()));
  chain_links_of_mm(pitch_mm, front, rear, centre_mm, links);
  return links;
}
double bulk_ulps(double a, double b) {
  return std::fabs(a - b) / (std::nextafter(std::fabs(b), DBL_MAX) - std::fabs(b));
}
bool same_bits(const std::vector<double>& a, const std::vector<double>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (std::bit_cast<std::uint64_t>(a[i]) != std::bit_cast<std::uint64_t>(b[i]) && !(a[i] != a[i] && b[i] != b[i]))
      return false;
  return true;
}

TEST(ChainCentresInBulk, AreThoseOfOneDriveWithinTwoUlp) {
  const ManyDrives drives(10000);
  const std::vector<double> told = centres(one_mm, drives.front, drives.rear, drives.links);
  int differ = 0;
  for (std::size_t i = 0; i < told.size(); ++i) {
    const double one =
        chain_centre(Length::from_value(1.0), drives.front_at(i), drives.rear_at(i), drives.links[i]).value();
    ASSERT_LE(bulk_ulps(told[i], one), 2.0) << drives.front[i] << "/" << drives.rear[i] << " " << drives.links[i];
    differ += told[i] != one;
  }
  EXPECT_GT(differ, 100);  // it is not the same code
}

TEST(ChainLinksInBulk, AreThoseOfOneDriveWithinTwoUlp) {
  const ManyDrives drives(10000);
  const std::vector<double> told = links_of(one_mm, drives.front, drives.rear, drives.centre);
  int differ = 0;
  for (std::size_t i = 0; i < told.size(); ++i) {
    const double one = chain_links(Length::from_value(1.0), drives.front_at(i), drives.rear_at(i),
                                   Length::from_value(drives.centre[i]));
    ASSERT_LE(bulk_ulps(told[i], one), 2.0) << drives.front[i] << "/" << drives.rear[i] << " " << drives.centre[i];
    differ += told[i] != one;
  }
  EXPECT_GT(differ, 100);  // it is not the same code
}

TEST(ChainCentresInBulk, LeadBackToTheirLinks) {
  const ManyDrives drives(10000, 7);
  const std::vector<double> pitch{15.875};
  const std::vector<double> told =
      links_of(pitch, drives.front, drives.rear, centres(pitch, drives.front, drives.rear, drives.links));
  for (std::size_t i = 0; i < told.size(); ++i)
    ASSERT_NEAR(told[i], drives.links[i], 6.0 * DBL_EPSILON * drives.links[i]);
}

TEST(ChainCentresInBulk, AreTheSameToTheBitWhateverTheLengthAndThePlace) {
  const ManyDrives drives(1000);
  const std::vector<double> all = centres(one_mm, drives.front, drives.rear, drives.links);
  const auto part = [](const std::vector<double>& from, std::size_t first, std::size_t size) {
    const auto begin = from.begin() + static_cast<std::ptrdiff_t>(first);
    return std::vector<double>(begin, begin + static_cast<std::ptrdiff_t>(size));
  };
  for (const std::size_t size : {0u, 1u, 2u, 3u, 7u, 8u, 9u, 255u, 256u, 257u})
    for (const std::size_t first : {0u, 1u, 5u, 300u})
      EXPECT_TRUE(same_bits(centres(one_mm, part(drives.front, first, size), part(drives.rear, first, size),
                                    part(drives.links, first, size)),
                            part(all, first, size)))
          << size << " from " << first;
}

TEST(ChainCentresInBulk, AreTheSameInSeveralThreads) {
  const ManyDrives drives(4000);
  const std::vector<double> all = centres(one_mm, drives.front, drives.rear, drives.links);
  std::vector<double> parts(all.size());
  {
    std::vector<std::jthread> threads;
    for (std::size_t first = 0; first < all.size(); first += 1000)
      threads.emplace_back([&, first] {
        const auto at = [&](const std::vector<double>& column) { return std::span(column).subspan(first, 1000); };
        chain_centres_mm(one_mm, at(drives.front), at(drives.rear), at(drives.links),
                         std::span(parts).subspan(first, 1000));
      });
  }
  EXPECT_TRUE(same_bits(parts, all));
}

TEST(ChainCentresInBulk, TakeOneNumberForAllAndMayStandWhereTheLinksDo) {
  const ManyDrives drives(600);
  const std::vector<double> pitches(600, 15.875), fronts(600, 14.0);
  const std::vector<double> all = centres(pitches, fronts, drives.rear, drives.links);
  EXPECT_TRUE(same_bits(centres({15.875}, {14.0}, drives.rear, drives.links), all));
  std::vector<double> in_place = drives.links;
  chain_centres_mm(std::vector{15.875}, fronts, drives.rear, in_place, in_place);
  EXPECT_TRUE(same_bits(in_place, all));
}

// As arrays of another language do: several columns in one row of numbers, results among other numbers, or backwards.
TEST(ChainCentresInBulk, MayLieWhereverTheyAreToldTo) {
  const std::size_t size = 600;
  const ManyDrives drives(size);
  const std::vector<double> pitches(size, 1.0);
  const std::vector<double> all = centres(one_mm, drives.front, drives.rear, drives.links);
  std::vector<double> table;  // front, rear, links, and room for a centre distance
  for (std::size_t i = 0; i < size; ++i)
    table.insert(table.end(), {drives.front[i], drives.rear[i], drives.links[i], -7.0});
  constexpr std::ptrdiff_t next = sizeof(double), row = 4 * next;
  detail::centres_mm({{{pitches.data(), next}, {&table[0], row}, {&table[1], row}, {&table[2], row}}}, &table[3], row,
                     size);
  std::vector<double> told;
  for (std::size_t i = 0; i < size; ++i) {
    told.push_back(table[4 * i + 3]);
    EXPECT_EQ(table[4 * i], drives.front[i]);
    EXPECT_EQ(table[4 * i + 1], drives.rear[i]);
    EXPECT_EQ(table[4 * i + 2], drives.links[i]);
  }
  EXPECT_TRUE(same_bits(told, all));
  std::vector<double> backwards(size);
  detail::centres_mm(
      {{{one_mm.data(), 0}, {drives.front.data(), next}, {drives.rear.data(), next}, {drives.links.data(), next}}},
      &backwards[size - 1], -next, size);
  EXPECT_TRUE(same_bits({backwards.rbegin(), backwards.rend()}, all));
}

TEST(ChainCentresInBulk, AreNaNForWhatIsOutOfRangeAndNowhereElse) {
  constexpr double inf = std::numeric_limits<double>::infinity(), nan = std::numeric_limits<double>::quiet_NaN();
  struct Case {
    double pitch, front, rear, links;
  };
  for (const Case& c :
       {Case{nan, 14, 43, 110}, {0, 14, 43, 110},  {-1, 14, 43, 110},   {inf, 14, 43, 110},     {1, nan, 43, 110},
        {1, 14.5, 43, 110},     {1, 3, 43, 110},   {1, 14, 1001, 2000}, {1, 14, 1028, 2000},    {1, -1010, 43, 110},
        {1, 14, -43, 110},      {1, 14, inf, 110}, {1, 14, -inf, 110},  {1, 1e300, 43, 110},    {1, 14, 4.0e15, 110},
        {1, 14, 43, nan},       {1, 14, 43, inf},  {1, 14, 43, -110},   {1, 14, 43, 0},         {1, 14, 43, 28.5},
        {1, 14, 43, 40},        {1, 0, 0, 110},    {1, 8, 90, 60},      {1e300, 14, 43, 1e100}, {1, 14, 43, 1e308}}) {
    SCOPED_TRACE(std::to_string(c.pitch) + " " + std::to_string(c.front) + "/" + std::to_string(c.rear) + " " +
                 std::to_string(c.links));
    const std::vector<double> told =
        centres({15.875, c.pitch, 15.875}, {14, c.front, 14}, {43, c.rear, 43}, {110, c.links, 110});
    EXPECT_EQ(told[0], told[2]);
    EXPECT_GT(told[0], 0.0);
    if (c.links < 1e300)
      EXPECT_TRUE(std::isnan(told[1])) << told[1];
    else
      EXPECT_FALSE(told[1] < 1e300 && told[1] > 0.0) << told[1];
  }
}

TEST(ChainLinksInBulk, AreNaNWhereThePitchCirclesOverlap) {
  const std::vector<double> told = links_of({1.0}, {14, 14, 14, 14, 14.5}, {43, 43, 43, 43, 43},
                                            {8.0, 0.0, -40.0, std::numeric_limits<double>::quiet_NaN(), 40.0});
  for (const double links : told) EXPECT_TRUE(std::isnan(links));
  for (const double pitch : {0.0, -1.0, std::numeric_limits<double>::infinity()})
    EXPECT_TRUE(std::isnan(links_of({pitch}, {14}, {43}, {640})[0])) << pitch;
}

// The edge itself is told as by `chain_centre`: so many links as make the pitch circles touch, and a little fewer.
TEST(ChainCentresInBulk, EndWhereThoseOfOneDriveEnd) {
  for (const int front : {4, 9, 14, 43, 200})
    for (const int rear : {4, 14, 43, 90, 1000}) {
      const double touching = 0.5 / std::sin(pi / front) + 0.5 / std::sin(pi / rear);
      const double links = chain_links(1_mm, Teeth(front), Teeth(rear), (touching * (1.0 + 1e-15)) * units::mm);
      for (const double share : {1.0 - 1e-6, 1.0 - 1e-12, 1.0 - 1e-15, 1.0, 1.0 + 1e-15, 1.0 + 1e-9}) {
        const double one = chain_centre(Length::from_value(1.0), Teeth(front), Teeth(rear), links * share).value();
        const double told = centres(one_mm, {double(front)}, {double(rear)}, {links * share})[0];
        EXPECT_TRUE(told == one || (std::isnan(told) && std::isnan(one)) || bulk_ulps(told, one) <= 2.0)
            << front << "/" << rear << " " << share << ": " << told << " and " << one;
      }
    }
}

TEST(ChainCentresInBulk, HaveADoorWithUnits) {
  const std::vector<Teeth> front{14_teeth, 13_teeth}, rear{43_teeth, 50_teeth};
  const std::vector<Links> links{110_links};
  std::vector<Length> centre(2);
  chain_centres(15.875_mm, front, rear, links, centre);
  EXPECT_NEAR(centre[0] / units::mm, chain_centre(15.875_mm, 14_teeth, 43_teeth, 110.0) / units::mm, 1e-12);
  EXPECT_NEAR(centre[1] / units::mm, chain_centre(15.875_mm, 13_teeth, 50_teeth, 110.0) / units::mm, 1e-12);
}

TEST(ChainCentresInBulk, NameTheColumnOfAnotherLength) {
  std::vector<double> three(3), two(2), none;
  const auto error = try_chain_centres_mm(three, three, two, three, three);
  ASSERT_TRUE(error);
  EXPECT_STREQ(error->what(), "length of rear is 2; expected 1 or 3, as many as there are results");
  const std::vector<double> one{14.0};
  std::vector<double> result(1);
  EXPECT_STREQ(try_chain_centres_mm(one_mm, one, two, one, result)->what(), "length of rear is 2; expected 1");
  EXPECT_THROW(chain_links_of_mm(three, three, three, two, three), RangeError);
  EXPECT_TRUE(try_chain_links_of_mm(one_mm, none, one_mm, none, two));
  EXPECT_FALSE(try_chain_centres_mm(one_mm, none, one_mm, none, none));
}

TEST(ChainCentresInBulk, NameEachColumnOfAnotherLength) {
  const std::vector<double> three(3, 14.0), two(2, 14.0);
  std::vector<double> told(3);
  const auto name = [](const std::optional<Error>& error) {
    return error ? std::string(error->what()).substr(0, std::string(error->what()).find(" is 2;")) : std::string();
  };
  EXPECT_EQ(name(try_chain_centres_mm(two, three, three, three, told)), "length of pitch_mm");
  EXPECT_EQ(name(try_chain_centres_mm(three, two, three, three, told)), "length of front");
  EXPECT_EQ(name(try_chain_centres_mm(three, three, two, three, told)), "length of rear");
  EXPECT_EQ(name(try_chain_centres_mm(three, three, three, two, told)), "length of links");
  EXPECT_EQ(name(try_chain_links_of_mm(three, three, three, two, told)), "length of centre_mm");
  EXPECT_THROW(chain_centres_mm(three, three, three, two, told), RangeError);
  const std::vector<Teeth> three_teeth(3, 14_teeth), two_teeth(2, 14_teeth);
  const std::vector<Links> three_links(3, 110_links), two_links(2, 110_links);
  std::vector<Length> centre(3);
  EXPECT_EQ(name(try_chain_centres(15.875_mm, two_teeth, three_teeth, three_links, centre)), "length of front");
  EXPECT_EQ(name(try_chain_centres(15.875_mm, three_teeth, two_teeth, three_links, centre)), "length of rear");
  EXPECT_EQ(name(try_chain_centres(15.875_mm, three_teeth, three_teeth, two_links, centre)), "length of links");
  EXPECT_EQ(centre, std::vector<Length>(3));  // nothing was written
  EXPECT_THROW(chain_centres(15.875_mm, three_teeth, three_teeth, two_links, centre), RangeError);
  EXPECT_NO_THROW(chain_centres(15.875_mm, three_teeth, three_teeth, three_links, centre));
  EXPECT_NEAR(in(centre[2], units::mm), (110.0 - 14.0) / 2.0 * 15.875, 1e-9);  // equal sprockets, by hand
}

}  // namespace

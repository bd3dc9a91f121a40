// SPDX-License-Identifier: MIT
#include <layshaft/tyre/nearest_markings.hpp>
#include <layshaft/tyre/size.hpp>

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "designation_lists.hpp"

namespace {
using namespace layshaft;

using Markings = std::vector<std::string>;

TEST(NearestMarkings, AreWhatARiderMistyped) {
  const struct {
    std::string_view typed;
    Markings meant;
  } table[] = {
      {"120/90-81", {"120/90-18"}},                            // neighbours swapped
      {"12/90-18", {"120/90-18", "125/90-18"}},                // a digit left out
      {"120/90 18", {"120/90-18", "120/90B18", "120/90R18"}},  // a space for the construction
      {"3.OO-18", {"3.00-18"}},                                // letters that look like digits
      {"l1O/9O-l8 TL", {"110/90-18 TL"}},                      // as many as there are
      {"110/90-1B", {"110/90-18"}},
      {"11090-18", {"110/90-18"}},  // a stroke left out
      {"110/9018", {"110/90-18", "110/90B18", "110/90R18"}},
      {"110/90--18", {"110/90-18"}},  // a character too many
      {"0110/90-18", {"110/90-18"}},
      {"110x90-18", {"110/90-18"}},  // another sign
      {"110-90-18", {"110/90-18"}},
      {"113/90-18", {"110/90-18", "115/90-18"}},  // a digit for another
      {"4.1-18", {"4.10-18"}},
      {"NT90-16", {"MT90-16"}},  // a letter for another
      {"37-623", {"37-622"}},
      {"25x8 12", {"25x8-12", "25x8B12", "25x8R12"}},
      {"750x28C", {"650x28C", "700x28C"}},
      {"110/90-18 REIN", {"110/90-18 REINF"}},
      {"190/50ZR17 (73W", {"190/50ZR17 (73W)"}},
      {"110/90－81", {"110/90-18"}},  // full-width forms, too
      {"2½ 8", {"2 1/2-8", "2 1/2B8", "2 1/2R8"}},
  };
  for (const auto& [typed, meant] : table) {
    EXPECT_EQ(nearest_markings(typed), meant) << typed;
    const Result<TyreSize> size = TyreSize::make(typed);
    ASSERT_FALSE(size) << typed;
    EXPECT_TRUE(
        size.error().expected().ends_with("perhaps " +
                                          (meant.size() == 1   ? meant[0]
                                           : meant.size() == 2 ? meant[0] + " or " + meant[1]
                                                               : meant[0] + ", " + meant[1] + " or " + meant[2]) +
                                          " is meant"))
        << size.error().what();
  }
}

TEST(NearestMarkings, AreNoneWhereNothingIsNearOrTooMuch) {
  for (const std::string_view typed : {
           "110/90-18",                       // a marking itself
           "", "110", "110/90-", "26x", "P",  // cut off: which digit comes next, nobody knows
           "110/90-1 9x", "what is this",     // more than one slip
           "110/20-18",                       // one slip from more than three markings
           "110/90-18\n",                     // nobody types a control character
       })
    EXPECT_EQ(nearest_markings(typed), Markings()) << typed;
  EXPECT_EQ(nearest_markings("110/90-81" + std::string(72, ' ')), Markings());  // longer than anybody types
}

// What would change the load, the speed or the age of a tyre is no matter of spelling; nor is which rim a name means.
TEST(NearestMarkings, AreNeverGuessesOfARatingOrAWeekOrARim) {
  for (const std::string_view typed :
       {"110/90-18 151R", "110/90-18 61I", "110/90-18 (61R)", "110/90-18 61R 61R", "110/90-18 DOT 5419",
        "110/90-18 1PR", "26x1 3/8", "26x2", "26x2.00 61R", "LT245/75R16 120/151Q"})
    EXPECT_EQ(nearest_markings(typed), Markings()) << typed;
}

TEST(NearestMarkings, AreMarkingsInTheirCanonicalForm) {
  int proposed = 0;
  for (const char* list : {"LEGAL", "ILLEGAL"})
    for (const layshaft_test::Example& example : layshaft_test::examples(list))
      for (std::size_t place = 0; place < example.text.size(); ++place) {
        std::string text = example.text;
        text.erase(place, 1);
        const Markings nearest = nearest_markings(text);
        EXPECT_LE(nearest.size(), 3u) << text;
        for (const std::string& marking : nearest) {
          ++proposed;
          const Result<TyreSize> size = TyreSize::make(marking);
          ASSERT_TRUE(size) << text;
          EXPECT_EQ(size->designation(), marking) << text;
        }
      }
  EXPECT_GT(proposed, 300);
}

}  // namespace

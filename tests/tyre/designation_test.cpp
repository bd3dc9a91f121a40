// SPDX-License-Identifier: MIT
#include <layshaft/tyre/size.hpp>

#include <gtest/gtest.h>

#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "designation_lists.hpp"

namespace {
using namespace layshaft;
using layshaft_test::Example;
using layshaft_test::examples;

TEST(Designation, PrintsTheLegalListAsItSays) {
  const std::vector<Example> legal = examples("LEGAL");
  ASSERT_EQ(legal.size(), 69u);
  for (const Example& example : legal) {
    const Result<TyreSize> size = TyreSize::make(example.text);
    ASSERT_TRUE(size) << size.error().what();
    EXPECT_EQ(size->designation(), example.outcome) << example.text;
    EXPECT_EQ(TyreSize(example.outcome), *size) << example.text;
  }
}

TEST(Designation, RefusesTheIllegalListAtTheByteItSays) {
  const std::vector<Example> illegal = examples("ILLEGAL");
  ASSERT_EQ(illegal.size(), 109u);
  for (const Example& example : illegal) {
    const std::string text = example.text == "more than 256 bytes" ? "110/90-18" + std::string(248, ' ') : example.text;
    const Result<TyreSize> size = TyreSize::make(text);
    ASSERT_FALSE(size) << text;
    EXPECT_EQ(size.error().kind(), ErrorKind::parse) << text;
    EXPECT_EQ(std::to_string(size.error().position()), example.outcome) << size.error().what();
    EXPECT_EQ(size.error().text(), text);
    EXPECT_FALSE(size.error().expected().empty()) << text;
    EXPECT_THROW(static_cast<void>(TyreSize(text)), ParseError) << text;
  }
}

TEST(Designation, SaysInWordsWhatIsWrong) {
  const struct {
    std::string_view text, sentence;
  } table[] = {
      {"",
       "the text is empty at position 0 of \"\"; expected a tyre size such as 110/90-18, 4.10-18, MT90B16, 25x8-12 or "
       "37-622"},
      {"110/90-", "the designation ends too soon at position 7 of \"110/90-\"; expected a rim code such as 18"},
      {"11O/90-18",
       "the letter O, perhaps for the digit 0 at position 2 of \"11O/90-18\"; expected digits; perhaps 110/90-18 is "
       "meant"},
      {"9990/90-18",
       "a section width that no tyre has at position 0 of \"9990/90-18\"; expected a section width of 50 to 400 mm in "
       "steps of 5"},
      {"110/90-18.5",
       "a rim code that does not exist at position 7 of \"110/90-18.5\"; expected a rim code in use; the nearest are "
       "18 and 19"},
      {"120/90-81",
       "a rim code that does not exist at position 7 of \"120/90-81\"; expected a rim code in use; the nearest is 30; "
       "perhaps 120/90-18 is meant"},
      {"12/90-18",
       "a section width that no tyre has at position 0 of \"12/90-18\"; expected a section width of 50 to 400 mm in "
       "steps of 5; perhaps 120/90-18 or 125/90-18 is meant"},
      {"120/90 18",
       "an unexpected character at position 7 of \"120/90 18\"; expected -, B, R or ZR, then the rim code; perhaps "
       "120/90-18, 120/90B18 or 120/90R18 is meant"},
      {"3.OO-18",
       "the letter O, perhaps for the digit 0 at position 2 of \"3.OO-18\"; expected the decimals of the number; "
       "perhaps 3.00-18 is meant"},
      {"4.1-18",
       "a section that the table does not have for this rim code at position 0 of \"4.1-18\"; expected a section of "
       "the table; the nearest is 4.10; perhaps 4.10-18 is meant"},
      {"650B",
       "the designation ends too soon at position 4 of \"650B\"; expected x and the width in millimetres, as in "
       "650x38B; the diameter depends on it"},
      {"700x28",
       "a rim's name without its letter at position 0 of \"700x28\"; expected the letter, as in 700x28C, or the ISO "
       "marking, 28-642, 28-635, 28-622 or 28-587"},
      {"26x1 3/8",
       "a name that several rims go by at position 0 of \"26x1 3/8\"; expected the ISO marking, 35-590 or 35-565"},
      {"20x1 1/4",
       "a name that more rims go by than the table has at position 0 of \"20x1 1/4\"; expected the ISO marking, 32-432 "
       "or another"},
      {"24x1.00",
       "a name that the table of cycle rims does not have at position 0 of \"24x1.00\"; expected the ISO marking, "
       "25-507, 25-547, 25-540 or 25-520"},
      {"37-623",
       "a bead seat diameter that does not exist at position 3 of \"37-623\"; expected a bead seat diameter in use; "
       "the nearest are 622 and 630; perhaps 37-622 is meant"},
      {"110/90-18\n",
       "a control character at position 9 of \"110/90-18\\x0a\"; expected M/C, a service description such as 61R, 6PR, "
       "TL, TT, REINF, M+S, MST, NHS, DOT with its week, or the end"},
      {"110/90-18 61",
       "a load index without a speed symbol at position 12 of \"110/90-18 61\"; expected a speed symbol: A1 to A8, B "
       "to H, J to N, P to W, or Y"},
      {"110/90-18 DOT 231",
       "a week code of three digits, from before 2000, which does not tell the decade at position 14 of \"110/90-18 "
       "DOT 231\"; expected two digits of the week, 01 to 53, and two of the year, as in DOT 2319"},
  };
  for (const auto& [text, sentence] : table) EXPECT_EQ(TyreSize::make(text).error().what(), sentence);
}

TEST(Designation, IsReadUpToTheLongestText) {
  EXPECT_TRUE(TyreSize::make("110/90-18" + std::string(247, ' ')));
  EXPECT_FALSE(TyreSize::make("110/90-18" + std::string(248, ' ')));
  EXPECT_FALSE(TyreSize::make(std::string(1000000, '1')));
  EXPECT_FALSE(TyreSize::make(std::string(256, '1')));
  EXPECT_FALSE(TyreSize::make("110/90-" + std::string(249, '9')));
}

TEST(Designation, TakesTheMetricSizesInTheirRangeAndNoOthers) {
  for (int width = 0; width <= 1000; ++width) {
    const bool legal = width >= 50 && width <= 400 && width % 5 == 0;
    EXPECT_EQ(TyreSize::make(std::to_string(width) + "/90-18").operator bool(), legal) << width;
  }
  for (int aspect = 0; aspect <= 1000; ++aspect)
    EXPECT_EQ(TyreSize::make("110/" + std::to_string(aspect) + "-18").operator bool(), aspect >= 25 && aspect <= 110)
        << aspect;
  for (int halves = 0; halves <= 100; ++halves) {
    const std::string code = std::to_string(halves / 2) + (halves % 2 ? ".5" : "");
    EXPECT_EQ(TyreSize::make("110/90-" + code).operator bool(), find_rim_code(halves / 2.0) != nullptr) << code;
  }
}

/// Reads what it prints, for one text that is canonical already.
void round_trip(const std::string& text) {
  for (const TyreUse use : {TyreUse::road, TyreUse::special, TyreUse::snow}) {
    const Result<TyreSize> size = TyreSize::make(text, use);
    ASSERT_TRUE(size) << size.error().what();
    ASSERT_EQ(size->designation(), text);
    ASSERT_EQ(*TyreSize::make(size->designation(), use), *size);
  }
}

// Every section width of 50 to 330 mm, every aspect ratio, every rim code and every construction: 627,456 sizes.
TEST(Designation, GoesRoundForEveryMetricSize) {
  std::size_t tried = 0, wrong = 0;
  for (int width = 50; width <= 330; width += 5)
    for (int aspect = 25; aspect <= 110; ++aspect)
      for (const std::string_view construction : {"-", "B", "R", "ZR"})
        for (const RimCode& rim : rim_codes) {
          std::string text = std::to_string(width);
          text.append("/").append(std::to_string(aspect)).append(construction).append(rim.name);
          detail::DesignationReader reader(text);
          const bool read = reader.read();
          const detail::Designation& size = reader.designation();
          const std::string printed = read ? detail::canonical(size) : "";
          const bool same = read && size.width == width && size.aspect == aspect &&
                            rim_codes[size.rim].code == rim.code && printed == text;
          detail::DesignationReader again(printed);
          wrong += !(same && again.read() && again.designation() == size);
          ++tried;
        }
  EXPECT_EQ(tried, 627456u);
  EXPECT_EQ(wrong, 0u);
  for (const std::string_view text : {"335/25-4", "400/110ZR30", "365/80R20"}) round_trip(std::string(text));
}

TEST(Designation, GoesRoundForEveryListedSectionOnEveryRimItServes) {
  for (const CodeDesignatedTyre& tyre : code_designated_tyres)
    for (const RimCode& rim : rim_codes)
      for (const std::string_view construction : {"-", "B", "R", "ZR"})
        if (detail::serves(tyre.family, rim.code))
          round_trip(std::string(tyre.section) + std::string(construction) + std::string(rim.name));
}

TEST(Designation, GoesRoundForEveryServiceDescription) {
  for (const LoadIndex& load : load_indices)
    for (const SpeedSymbol& speed : speed_symbols)
      round_trip("110/90-18 " + std::to_string(load.index) + std::string(speed.name));
  for (int first = 0; first <= greatest_load_index; ++first)
    for (int second = 0; second <= greatest_load_index; ++second)
      round_trip("LT245/75R16 " + std::to_string(first) + "/" + std::to_string(second) + "Q");
  for (const std::string_view symbol : {"V", "W", "Y"}) round_trip("190/50ZR17 M/C (73" + std::string(symbol) + ") TL");
}

TEST(Designation, GoesRoundForEverySetOfMarks) {
  for (const std::string size : {"110/90-18", "P205/55R16", "205/65R16C", "4.10-18", "2 1/2-8", "MT90B16",
                                 "31x10.50R15LT", "37-622", "26x2.00", "8x2"})
    for (const std::string motorcycle : {"", " M/C"})
      for (const std::string service : {"", " 61R", " 20A8", " 0A1", " 121/118Q", " 6P", " (73W)"})
        for (const std::string ply : {"", " 6PR"})
          for (const std::string tube : {"", " TL", " TT"})
            for (const std::string reinforced : {"", " REINF"})
              for (const std::string service_use : {"", " M+S", " MST", " M+S MST", " NHS", " M+S NHS", " M+S MST NHS"})
                for (const std::string made : {"", " DOT 2319"}) {
                  const bool cycle = size == "37-622" || size == "26x2.00" || size == "8x2";
                  const std::string text = size + motorcycle + service + ply + tube + reinforced + service_use + made;
                  if (cycle && !service.empty())
                    ASSERT_FALSE(TyreSize::make(text)) << text;
                  else
                    ASSERT_NO_FATAL_FAILURE(round_trip(text)) << text;
                }
  for (int ply = 2; ply <= 40; ++ply) round_trip("4.00-8 " + std::to_string(ply) + "PR");
  for (int week = 1; week <= 53; ++week)
    for (int year = 0; year <= 99; ++year)
      round_trip("110/90-18 DOT " + std::to_string(10000 + week * 100 + year).substr(1));
}

TEST(Designation, GoesRoundForEveryFlotationSize) {
  std::size_t legal = 0;
  for (int diameter = 80; diameter <= 600; diameter += 5)
    for (int width = 200; width <= 3000; width += 25)
      for (const RimCode& rim : rim_codes) {
        std::string text = std::to_string(diameter / 10);
        if (diameter % 10 != 0) text += ".5";
        text += "x" + std::to_string(width / 100);
        if (width % 100 != 0) text += "." + std::to_string(100 + width % 100).substr(1);
        text += (legal % 2 == 0 ? "R" : "-") + std::string(rim.name) + (legal % 3 == 0 ? "LT" : "");
        detail::DesignationReader reader(text);
        const bool fits = rim.code + 2.0 <= diameter / 10.0;
        ASSERT_EQ(reader.read(), fits) << text;
        if (!fits) continue;
        ++legal;
        ASSERT_EQ(detail::canonical(reader.designation()), text);
      }
  EXPECT_GT(legal, 200000u);
}

TEST(Designation, GoesRoundForEveryCycleSize) {
  for (const CycleBeadSeat& seat : cycle_bead_seats)
    for (int width = 15; width <= 130; ++width) round_trip(std::to_string(width) + "-" + std::string(seat.name));
  for (const CycleRimName& name : cycle_rim_names)
    if (name.naming == CycleNaming::french && name.letter != 0)
      for (int width = 15; width <= 130; ++width)
        round_trip(std::string(name.diameter_name) + "x" + std::to_string(width) + name.letter);
  for (int thousandths = 600; thousandths <= 5100; ++thousandths) {
    std::string text = "29x" + std::to_string(thousandths / 1000) + ".";
    text += std::to_string(1000 + thousandths % 1000).substr(1, thousandths % 10 == 0 ? 2 : 3);
    round_trip(text);
  }
}

TEST(Designation, ReadsMarksInEveryOrderAndWithoutSpaces) {
  const TyreSize size("110/90-18 M/C 61R TL REINF");
  for (const std::string_view text :
       {"110/90-18 REINF TL 61R M/C", "110/90-18TL61RM/CREINF", "110/90-18M/C61RTLREINF", "110/90-18 REINF61RMCTL"})
    EXPECT_EQ(TyreSize(text), size) << text;
}

TEST(Designation, KeepsAPlyRatingApartFromTheSpeedSymbolP) {
  EXPECT_EQ(TyreSize("4.00-8 6PR").ply_rating(), 6);
  EXPECT_EQ(TyreSize("4.00-8 6PR").load_index(), std::nullopt);
  EXPECT_EQ(TyreSize("4.00-8 6P REINF").load_index(), 6);
  EXPECT_EQ(TyreSize("4.00-8 6PREINF"), TyreSize("4.00-8 6P REINF"));
  EXPECT_EQ(TyreSize("4.00-8 6PRREINF"), TyreSize("4.00-8 6PR REINF"));
}

TEST(Designation, ReadsNoMarkBeforeTheSize) {
  for (const std::string_view text : {"TL 110/90-18", "M/C 110/90-18", "61R 110/90-18", "DOT 2319 110/90-18", "(73W)"})
    EXPECT_FALSE(TyreSize::make(text)) << text;
}

// Whatever one byte is put in, left out or changed, the answer is a size that prints and reads back, or an error whose
// place lies in the text.
TEST(Designation, SurvivesEveryChangeOfOneByte) {
  int read = 0, refused = 0;
  const auto attempt = [&](const std::string& text) {
    detail::DesignationReader reader(text);
    if (reader.read()) {
      ++read;
      const TyreSize size(text);
      ASSERT_EQ(TyreSize(size.designation()), size) << text;
      ASSERT_TRUE(well_formed(size.overall_diameter())) << text;
      ASSERT_GT(size.overall_diameter().low, size.rim_diameter()) << text;
    } else {
      ++refused;
      ASSERT_LE(reader.fault().position, reader.reach()) << text;
      ASSERT_LE(reader.reach(), text.size()) << text;
      ASSERT_FALSE(reader.fault().expected.empty()) << text;
      if (refused % 50 != 0) return;  // the words cost more than the reading
      const Error error = TyreSize::make(text).error();
      ASSERT_EQ(error.kind(), ErrorKind::parse);
      ASSERT_EQ(error.position(), reader.fault().position);
    }
  };
  for (const Example& example : examples("LEGAL")) {
    for (std::size_t place = 0; place <= example.text.size(); ++place) {
      attempt(example.text.substr(0, place));
      attempt(example.text.substr(place));
      for (int byte = 0; byte < 256; ++byte) {
        std::string changed = example.text;
        changed.insert(place, 1, static_cast<char>(byte));
        attempt(changed);
        if (place < example.text.size()) changed.erase(place + 1, 1);
        attempt(changed);
      }
    }
  }
  EXPECT_GT(read, 5000);
  EXPECT_GT(refused, 400000);
}

}  // namespace

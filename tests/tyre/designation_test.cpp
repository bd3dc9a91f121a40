// SPDX-License-Identifier: MIT
#include <layshaft/tyre/size.hpp>

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace {
using namespace layshaft;

/// One line of the LEGAL or ILLEGAL list: the text, and what stands behind it.
struct Example {
  std::string text;
  std::string outcome;
};

std::string unescaped(std::string_view text) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i, 2) == "\\n") {
      plain += '\n';
      i += 1;
    } else if (text.substr(i, 4) == "\\x00") {
      plain += '\0';
      i += 3;
    } else {
      plain += text[i];
    }
  }
  return plain;
}

/// The lists as they stand in the header's own documentation, so that they are the first test and never grow stale.
std::vector<Example> examples(std::string_view heading) {
  std::ifstream header(LAYSHAFT_REFERENCE_DIR "/../../include/layshaft/tyre/designation.hpp");
  std::vector<Example> found;
  std::string line;
  while (std::getline(header, line) && !line.starts_with("/// " + std::string(heading) + ",")) {
  }
  std::getline(header, line);  // the empty line behind the heading
  while (std::getline(header, line) && line.starts_with("///     ")) {
    const std::string_view example = std::string_view(line).substr(8);
    const bool quoted = example.starts_with('"');
    const std::size_t end = quoted ? example.find('"', 1) : example.find("  ");
    const std::string_view text = quoted ? example.substr(1, end - 1) : example.substr(0, end);
    std::string_view rest = example.substr(quoted ? end + 1 : end);
    rest.remove_prefix(rest.find_first_not_of(' '));
    found.push_back({unescaped(text), std::string(rest.substr(0, rest.find("  ")))});
  }
  return found;
}

TEST(Designation, PrintsTheLegalListAsItSays) {
  const std::vector<Example> legal = examples("LEGAL");
  ASSERT_EQ(legal.size(), 23u);
  for (const Example& example : legal) {
    const Result<TyreSize> size = TyreSize::make(example.text);
    ASSERT_TRUE(size) << size.error().what();
    EXPECT_EQ(size->designation(), example.outcome) << example.text;
    EXPECT_EQ(TyreSize(example.outcome), *size) << example.text;
  }
}

TEST(Designation, RefusesTheIllegalListAtTheByteItSays) {
  const std::vector<Example> illegal = examples("ILLEGAL");
  ASSERT_EQ(illegal.size(), 44u);
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
      {"", "the text is empty at position 0 of \"\"; expected a tyre size such as 110/90-18, 4.10-18 or MT90B16"},
      {"110/90-", "the designation ends too soon at position 7 of \"110/90-\"; expected a rim code such as 18"},
      {"11O/90-18", "the letter O, perhaps for the digit 0 at position 2 of \"11O/90-18\"; expected digits"},
      {"9990/90-18",
       "a section width that no tyre has at position 0 of \"9990/90-18\"; expected a section width of 50 "
       "to 400 mm in steps of 5"},
      {"110/90-37",
       "a rim code that does not exist at position 7 of \"110/90-37\"; expected a rim code in use; the "
       "nearest is 30"},
      {"110/90-18.5",
       "a rim code that does not exist at position 7 of \"110/90-18.5\"; expected a rim code in use; the "
       "nearest are 18 and 19"},
      {"4.20-18",
       "a section that the table does not have for this rim code at position 0 of \"4.20-18\"; expected a "
       "section of the table; the nearest are 4.10 and 4.60"},
      {"4.1-18",
       "a section that the table does not have for this rim code at position 0 of \"4.1-18\"; expected a "
       "section of the table; the nearest is 4.10"},
      {"110/90-18\n",
       "a control character at position 9 of \"110/90-18\\x0a\"; expected M/C, a service description "
       "such as 61R, TL, TT, REINF or the end"},
      {"110/90-18 61",
       "a load index without a speed symbol at position 12 of \"110/90-18 61\"; expected a speed symbol: "
       "A1 to A8, B to H, J to N, P to W, or Y"},
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
  for (const TyreUse use : {TyreUse::road, TyreUse::special}) {
    const Result<TyreSize> size = TyreSize::make(text, use);
    ASSERT_TRUE(size) << size.error().what();
    ASSERT_EQ(size->designation(), text);
    ASSERT_EQ(*TyreSize::make(size->designation(), use), *size);
  }
}

TEST(Designation, GoesRoundForEveryMetricSize) {
  std::size_t next = 0;
  const std::string_view constructions[] = {"-", "B", "R", "ZR"};
  for (int width = 50; width <= 400; width += 5)
    for (int aspect = 25; aspect <= 110; ++aspect, ++next)
      round_trip(std::to_string(width) + "/" + std::to_string(aspect) +
                 std::string(constructions[next % std::size(constructions)]) +
                 std::string(rim_codes[next % std::size(rim_codes)].name));
  for (const RimCode& rim : rim_codes)
    for (const std::string_view construction : constructions)
      round_trip("110/90" + std::string(construction) + std::string(rim.name));
}

TEST(Designation, GoesRoundForEveryListedSectionOnEveryRimItServes) {
  for (const CodeDesignatedTyre& tyre : code_designated_tyres)
    for (const RimCode& rim : rim_codes)
      for (const std::string_view construction : {"-", "B", "R", "ZR"})
        if (detail::serves(tyre.family, rim.code))
          round_trip(std::string(tyre.section) + std::string(construction) + std::string(rim.name));
}

TEST(Designation, GoesRoundForEveryServiceDescriptionAndMark) {
  for (const LoadIndex& load : load_indices)
    for (const SpeedSymbol& speed : speed_symbols)
      round_trip("110/90-18 " + std::to_string(load.index) + std::string(speed.name));
  for (const std::string motorcycle : {"", " M/C"})
    for (const std::string service : {"", " 61R", " 20A8", " 0A1", " 100M", " 61T"})
      for (const std::string tube : {"", " TL", " TT"})
        for (const std::string reinforced : {"", " REINF"})
          for (const std::string size : {"110/90-18", "120/80R14.5", "4.10-18", "2 1/2-8", "MT90B16"})
            round_trip(size + motorcycle + service + tube + reinforced);
}

TEST(Designation, ReadsMarksInEveryOrderAndWithoutSpaces) {
  const TyreSize size("110/90-18 M/C 61R TL REINF");
  for (const std::string_view text :
       {"110/90-18 REINF TL 61R M/C", "110/90-18TL61RM/CREINF", "110/90-18M/C61RTLREINF", "110/90-18 REINF61RMCTL"})
    EXPECT_EQ(TyreSize(text), size) << text;
}

// Whatever one byte is put in, left out or changed, the answer is a size that prints and reads back, or an error whose
// place lies in the text.
TEST(Designation, SurvivesEveryChangeOfOneByte) {
  int read = 0, refused = 0;
  const auto attempt = [&](const std::string& text) {
    const Result<TyreSize> size = TyreSize::make(text);
    if (size) {
      ++read;
      ASSERT_EQ(TyreSize(size->designation()), *size) << text;
      ASSERT_TRUE(well_formed(size->overall_diameter())) << text;
      ASSERT_GT(size->overall_diameter().low, size->rim_diameter()) << text;
    } else {
      ++refused;
      ASSERT_EQ(size.error().kind(), ErrorKind::parse);
      ASSERT_LE(size.error().position(), text.size()) << text;
      ASSERT_FALSE(size.error().expected().empty()) << text;
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
  EXPECT_GT(read, 1000);
  EXPECT_GT(refused, 100000);
}

}  // namespace

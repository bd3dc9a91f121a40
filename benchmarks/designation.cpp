// SPDX-License-Identifier: MIT
// Reading a tyre's designation: layshaft against one std::regex with its numbers taken out. The rival has the easier
// task: it reads canonical spelling only, looks nothing up in a table, and has no words for what is wrong. Beside them
// the time it takes to look at each byte once, which no reader can beat.
#include <layshaft/tyre/tyre.hpp>

#include <charconv>
#include <regex>
#include <string>
#include <string_view>
#include <vector>

#include "ratios.hpp"

namespace {

/// Sizes whose numbers are the tyre's own, and sizes that layshaft must find in a table before it can give any.
const std::vector<std::string> metric = {
    "110/90-18",      "120/90-18 M/C 65R TT",   "110/90-18 M/C 61R TL", "150/70R17",   "140/80B17",
    "150/70ZR17 69W", "130/80-17 65S TT REINF", "90/90-21 54S",         "120/80-14.5",
};
const std::vector<std::string> listed = {"4.10-18 59P", "3.00-21 M/C 51P TT", "2 1/2-8", "MT90B16 M/C 74H",
                                         "3.00-10 20A8"};

/// What there is to be read; -1 and empty where the text does not say it.
struct Read {
  int width = -1, aspect = -1, load_index = -1;
  double rim_code = 0.0;
  std::string_view section, construction, speed_symbol, tube;
  bool motorcycle = false, reinforced = false;
};

const std::regex& pattern() {
  static const std::regex made(R"((?:(\d{2,3})/(\d{2,3})|(\d+\.\d+|\d+(?: \d/\d)?)|(M[A-Z](\d{2,3})))(-|B|ZR|R))"
                               R"((\d{1,2}(?:\.5)?)(?: (M/C))?(?: (\d{1,3})([A-Z]\d?))?(?: (TL|TT))?(?: (REINF))?)",
                               std::regex::ECMAScript | std::regex::optimize);
  return made;
}

using Match = std::match_results<std::string_view::const_iterator>;

std::string_view text(const Match& match, std::size_t group) {
  return match[group].matched ? std::string_view(match[group].first, match[group].second) : std::string_view();
}
template <class Number>
Number number(std::string_view text, Number otherwise) {
  std::from_chars(text.data(), text.data() + text.size(), otherwise);
  return otherwise;
}

bool by_regex(std::string_view designation, Read& read) {
  Match match;
  if (!std::regex_match(designation.begin(), designation.end(), match, pattern())) return false;
  const std::string_view lettered = text(match, 5);
  read.width = number(text(match, 1), -1);
  read.aspect = number(lettered.empty() ? text(match, 2) : lettered, -1);
  read.section = lettered.empty() ? text(match, 3) : text(match, 4);
  read.construction = text(match, 6);
  read.rim_code = number(text(match, 7), 0.0);
  read.motorcycle = !text(match, 8).empty();
  read.load_index = number(text(match, 9), -1);
  read.speed_symbol = text(match, 10);
  read.tube = text(match, 11);
  read.reinforced = !text(match, 12).empty();
  return true;
}

/// Whether both say the same of one tyre.
bool same(const layshaft::TyreSize& ours, const Read& theirs) {
  using enum layshaft::TyreConstruction;
  const auto construction = ours.construction() == diagonal ? "-" : ours.construction() == bias_belted ? "B" : "R";
  const bool metric = ours.notation() == layshaft::TyreNotation::metric;
  const auto tube = ours.tube();
  const auto symbol = ours.speed_symbol();
  return (!metric || ours.section_width() == theirs.width * 1.0 * layshaft::units::mm) &&
         (metric || ours.designation().starts_with(theirs.section)) &&
         ours.aspect_ratio().value_or(-1.0) == theirs.aspect && ours.rim_code() == theirs.rim_code &&
         (ours.zr() ? "ZR" : construction) == theirs.construction && ours.motorcycle() == theirs.motorcycle &&
         ours.load_index().value_or(-1) == theirs.load_index &&
         (symbol ? symbol->name : std::string_view()) == theirs.speed_symbol &&
         (tube == layshaft::TyreTube::tubeless ? "TL"
          : tube == layshaft::TyreTube::tube   ? "TT"
                                               : "") == theirs.tube &&
         ours.reinforced() == theirs.reinforced;
}

void compare(const char* subject, const std::vector<std::string>& designations) {
  for (const std::string& designation : designations) {
    const auto ours = layshaft::TyreSize::make(designation);
    Read theirs;
    if (ours && by_regex(designation, theirs) && same(*ours, theirs)) continue;
    std::fprintf(stderr, "%s: layshaft and the regular expression do not read the same\n", designation.c_str());
    std::exit(1);
  }
  ratios::add(subject, "layshaft::TyreSize::make", [&] {
    double sum = 0.0;
    for (const std::string& designation : designations) sum += *layshaft::TyreSize::make(designation)->rim_code();
    return sum;
  });
  ratios::add(subject, "std::regex, compiled once, and std::from_chars", [&] {
    double sum = 0.0;
    for (const std::string& designation : designations) {
      Read read;
      by_regex(designation, read);
      sum += read.rim_code;
      benchmark::DoNotOptimize(read);
    }
    return sum;
  });
  ratios::add(subject, "merely scanning the bytes", [&] {
    unsigned sum = 0;
    for (const std::string& designation : designations)
      for (const char byte : designation) {
        sum += static_cast<unsigned char>(byte);
        benchmark::DoNotOptimize(sum);  // one byte at a time, as any reader must
      }
    return double(sum);
  });
}

}  // namespace

int main(int count, char** arguments) {
  compare("reading metric designations", metric);
  compare("reading code and lettered designations", listed);
  return ratios::run(count, arguments);
}

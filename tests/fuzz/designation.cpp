// SPDX-License-Identifier: MIT
// What holds for every text whatever, as a function that libFuzzer calls:
//
//     clang++ -std=c++20 -O2 -g -fsanitize=fuzzer,address,undefined -I include -isystem BOOST
//     tests/fuzz/designation.cpp
//
// A text that fails is put into designation_failures/, from where the ordinary tests replay it.
#include <layshaft/tyre/size.hpp>

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

namespace {

void must(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %s\n", what);
  std::abort();
}
#define MUST(...) must(__VA_ARGS__, #__VA_ARGS__)

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace layshaft;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const Result<TyreSize> read = TyreSize::make(text);
  if (read) {
    const std::string printed = read->designation();
    const Result<TyreSize> again = TyreSize::make(printed);
    MUST(again.has_value());
    MUST(*again == *read);
    MUST(again->designation() == printed);
    const Band<Length> diameter = read->overall_diameter();
    MUST(well_formed(diameter));
    MUST(diameter.low > read->rim_diameter());
    MUST(positive(read->section_width()));
  } else {
    const Error& error = read.error();
    MUST(error.position() <= text.size());
    MUST(error.text() == text);
    MUST(!error.expected().empty());
    if (size % 16 != 0) return 0;  // what follows takes long
    for (const std::string& marking : nearest_markings(text)) {
      const Result<TyreSize> proposed = TyreSize::make(marking);
      MUST(proposed && proposed->designation() == marking);
    }
  }
  return 0;
}

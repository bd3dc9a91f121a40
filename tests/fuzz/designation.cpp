// SPDX-License-Identifier: MIT
// Any text as a marking: what is read prints as what reads back alike, and has dimensions; what is not says where and
// why, and the markings that are proposed instead are some.
#include "must.hpp"

#include <layshaft/tyre/size.hpp>

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

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

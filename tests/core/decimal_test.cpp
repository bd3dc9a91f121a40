// SPDX-License-Identifier: MIT
#include <layshaft/core/decimal.hpp>
#include <layshaft/core/decimal_by_strtod.hpp>

#include <gtest/gtest.h>

#include <bit>
#include <charconv>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>

namespace {

#if !defined(_LIBCPP_VERSION) || _LIBCPP_VERSION >= 200000

/// Both readers of one text, held against std::from_chars.
void expect_read_alike(std::string_view text) {
  SCOPED_TRACE(text);
  double expected = 42.0, told = 42.0, by_strtod = 42.0;
  const char* const end = text.data() + text.size();
  const auto one = std::from_chars(text.data(), end, expected);
  for (auto [read, number] :
       {std::pair(layshaft::detail::read_decimal(text.data(), end, told), &told),
        std::pair(layshaft::detail::decimal_by_strtod(text.data(), end, by_strtod), &by_strtod)}) {
    EXPECT_EQ(read.ec, one.ec);
    EXPECT_EQ(read.ptr - text.data(), one.ptr - text.data());
    EXPECT_EQ(std::bit_cast<std::uint64_t>(*number), std::bit_cast<std::uint64_t>(expected));
  }
}

TEST(Decimal, IsReadWithAndWithoutFromChars) {
  for (const std::string_view text : {"",
                                      "-",
                                      "+1",
                                      "1",
                                      "-1",
                                      "00012",
                                      "1.",
                                      ".5",
                                      ".",
                                      "-.",
                                      "1.5.5",
                                      "1e3",
                                      "1e",
                                      "1e+",
                                      "1e-",
                                      "1E5x",
                                      "1.e2",
                                      "12 mm",
                                      " 12",
                                      "0x10",
                                      "1e999",
                                      "-1e999",
                                      "1e-999",
                                      "0e999",
                                      "-0.0",
                                      "0.000e-400",
                                      "4.9e-324",
                                      "2.4e-324",
                                      "2.2250738585072011e-308",
                                      "1.7976931348623157e308",
                                      "1.7976931348623159e308",
                                      "inf",
                                      "INF",
                                      "-Infinity",
                                      "infinit",
                                      "nan",
                                      "-nan",
                                      "in",
                                      "9007199254740993",
                                      "0.1",
                                      "e5",
                                      "1,5",
                                      "1_000"})
    expect_read_alike(text);
}

TEST(Decimal, IsTheNearestDoubleOfWhateverIsPrinted) {
  std::mt19937_64 random(20261126);
  for (int i = 0; i < 20000; ++i) {
    const auto number = std::bit_cast<double>(random());
    if (number - number != 0.0) continue;
    char text[64];
    const int digits = static_cast<int>(random() % 25);
    const auto [end, error] = std::to_chars(text, text + sizeof text, number, std::chars_format::scientific, digits);
    ASSERT_EQ(error, std::errc());
    expect_read_alike(std::string_view(text, static_cast<std::size_t>(end - text)));
  }
}

TEST(Decimal, OfRandomLettersIsReadAlike) {
  constexpr std::string_view letters = "0123456789.eE+-infa ";
  std::mt19937_64 random(7);
  for (int i = 0; i < 50000; ++i) {
    std::string text(random() % 9, ' ');
    for (char& c : text) c = letters[random() % letters.size()];
    expect_read_alike(text);
  }
}

#endif

}  // namespace

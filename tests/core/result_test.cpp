// SPDX-License-Identifier: MIT
#include <layshaft/core/result.hpp>

#include <gtest/gtest.h>

#include <memory>
#include <string>

namespace {
using namespace layshaft;

TEST(Result, HoldsAValueOrAnError) {
  const Result<int> good = 3;
  ASSERT_TRUE(good);
  EXPECT_EQ(*good, 3);
  EXPECT_EQ(Result<int>(4).value(), 4);
  const Result<int> bad = Error::range("n", "1", "2 to 3");
  ASSERT_FALSE(bad);
  EXPECT_STREQ(bad.error().what(), "n is 1; expected 2 to 3");
  EXPECT_THROW(static_cast<void>(Result<int>(bad).value()), RangeError);
}

TEST(Result, OfAConstantIsLookedIntoWithoutACopy) {
  const Result<std::string> text = std::string("110/90-18");
  EXPECT_EQ(text->size(), 9u);
  EXPECT_EQ(&*text, &*text);
  const Result<std::unique_ptr<int>> only_moved = std::make_unique<int>(7);
  EXPECT_EQ(**only_moved, 7);
}

TEST(Result, GivesItsValueAwayWhenItIsMovedFrom) {
  Result<std::unique_ptr<int>> result = std::make_unique<int>(7);
  EXPECT_EQ(*std::move(result).value(), 7);
}

TEST(Result, ThrowsTheExceptionOfItsErrorsKind) {
  EXPECT_THROW(static_cast<void>(Result<int>(Error::parse("x", 0, "p", "e")).value()), ParseError);
  EXPECT_THROW(static_cast<void>(Result<int>(Error::range("n", "1", "2")).value()), RangeError);
  try {
    static_cast<void>(Result<int>(Error::value("parts")).value());
    FAIL();
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::value);
    EXPECT_STREQ(error.what(), "parts");
  }
}

#if !defined(NDEBUG)
TEST(ResultDeathTest, AssertsThatThereIsWhatIsAskedFor) {
  const Result<int> good = 1, bad = Error::value("parts");
  EXPECT_DEATH(static_cast<void>(*bad), "has_value");
  EXPECT_DEATH(static_cast<void>(good.error()), "has_value");
}
#endif

}  // namespace

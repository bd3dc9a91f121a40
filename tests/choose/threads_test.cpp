// SPDX-License-Identifier: MIT
#include <layshaft/choose/threads.hpp>

#include <gtest/gtest.h>

#include <atomic>
#include <latch>
#include <stdexcept>
#include <string>

namespace {

TEST(RunTogether, WorksInSoManyThreadsAndWaitsForAll) {
  for (const std::size_t threads : {1u, 2u, 5u}) {
    std::atomic<std::size_t> worked{0}, stopped{0};
    layshaft::detail::run_together(
        threads, [&] { ++worked; }, [&]() noexcept { ++stopped; });
    EXPECT_EQ(worked, threads);
    EXPECT_EQ(stopped, 0u);
  }
}

TEST(RunTogether, BringsOutTheFirstThatIsThrown) {
  constexpr std::size_t threads = 3;
  std::latch all_there(threads);
  std::atomic<int> stopped{0};
  const auto throwing = [&] {
    all_there.arrive_and_wait();
    throw std::runtime_error("no memory");
  };
  try {
    layshaft::detail::run_together(threads, throwing, [&]() noexcept { ++stopped; });
    FAIL() << "nothing was thrown";
  } catch (const std::runtime_error& error) {
    EXPECT_STREQ(error.what(), "no memory");
  }
  EXPECT_EQ(stopped, 3);
}

}  // namespace

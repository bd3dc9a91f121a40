// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/error.hpp>

#include <cstddef>
#include <exception>  // exception_ptr
#include <mutex>
#include <thread>
#include <vector>

/// @file
/// Several threads at one piece of work.
namespace layshaft::detail {

/// Runs `work` in so many threads, this one among them, and waits for all. Where one throws, for want of memory say, or
/// where no thread can be had, `stop` is called, which should let the others end soon, and the first that was thrown
/// comes out here: out of a thread it would end the program.
template <class Work, class Stop>
void run_together(std::size_t threads, const Work& work, [[maybe_unused]] const Stop& stop) {
#if LAYSHAFT_EXCEPTIONS
  std::mutex one_at_a_time;
  std::exception_ptr thrown;
  const auto guarded = [&](const auto& part) noexcept {
    try {
      part();
    } catch (...) {
      stop();
      const std::lock_guard lock(one_at_a_time);
      if (!thrown) thrown = std::current_exception();
    }
  };
  {
    std::vector<std::jthread> others;
    guarded([&] {
      for (std::size_t i = 1; i < threads; ++i) others.emplace_back([&] { guarded(work); });
      work();
    });
  }  // waits for them
  if (thrown) std::rethrow_exception(thrown);
#else
  std::vector<std::jthread> others;
  for (std::size_t i = 1; i < threads; ++i) others.emplace_back(work);
  work();
#endif
}

}  // namespace layshaft::detail

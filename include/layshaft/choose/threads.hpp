// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/error.hpp>

#include <cstddef>
#include <exception>  // exception_ptr
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

/// @file
/// Several threads at one piece of work.
namespace layshaft::detail {

/// A thread that is waited for at the end of its life, as std::jthread does, which libc++ has from version 20 on alone.
class JoiningThread {
 public:
  template <class Work>
  explicit JoiningThread(Work work) : thread_(std::move(work)) {}
  JoiningThread(JoiningThread&&) noexcept = default;
  JoiningThread& operator=(JoiningThread&&) = delete;
  ~JoiningThread() {
    if (thread_.joinable()) thread_.join();
  }

 private:
  std::thread thread_;
};

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
    std::vector<JoiningThread> others;
    guarded([&] {
      for (std::size_t i = 1; i < threads; ++i) others.emplace_back([&] { guarded(work); });
      work();
    });
  }  // waits for them
  if (thrown) std::rethrow_exception(thrown);
#else
  std::vector<JoiningThread> others;
  for (std::size_t i = 1; i < threads; ++i) others.emplace_back(work);
  work();
#endif
}

}  // namespace layshaft::detail

// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <new>
#include <string>

/// @file
/// This program's operator new counts what is asked for, and refuses it when it is told to.
namespace layshaft_test {

/// How often this program has asked for memory so far.
std::size_t allocations() noexcept;
/// How many of these it has not given back.
std::size_t held() noexcept;

/// As long as it lives, the `number`th request from now on, counted from 1, is refused.
class RefusedRequest {
 public:
  explicit RefusedRequest(std::size_t number) noexcept;
  ~RefusedRequest();
  RefusedRequest(const RefusedRequest&) = delete;
  RefusedRequest& operator=(const RefusedRequest&) = delete;

  /// Whether so many requests came.
  [[nodiscard]] bool came() const noexcept;

 private:
  std::size_t number_;
};

/// What came of running out of memory at every place of a piece of work.
struct RanOut {
  std::size_t requests = 0;  ///< that were refused, each in a run of its own
  std::string trouble = {};  ///< empty where each run ended well
};

/// Runs the work again and again: its first request for memory is refused, then its second, until it needs no more.
/// Each time bad_alloc must come out, or the work must tell that it did all the same, and nothing may be left behind.
/// @param work returns whether what it did is right, and keeps nothing.
template <class Work>
[[nodiscard]] RanOut run_out_of_memory(const Work& work) {
  RanOut ran;
  if (!work()) return {0, "it went wrong with all the memory there is"};  // and what is made once is made
  while (ran.trouble.empty()) {
    const std::size_t before = held();
    bool came = false, right = true, other = false;
    {
      const RefusedRequest refused(ran.requests + 1);
      try {
        right = work();
      } catch (const std::bad_alloc&) {
      } catch (...) {
        other = true;
      }
      came = refused.came();
    }
    const bool left_behind = held() != before;
    if (!right) ran.trouble = "it went wrong";
    if (other) ran.trouble = "something else than bad_alloc came out";
    if (left_behind) ran.trouble = "memory was left behind";
    if (!ran.trouble.empty()) ran.trouble += " with request " + std::to_string(ran.requests + 1) + " refused";
    if (!came) break;
    ++ran.requests;
  }
  return ran;
}

}  // namespace layshaft_test

// SPDX-License-Identifier: MIT
#include "threads/allocations.hpp"

#include <atomic>
#include <cstdlib>

namespace {

std::atomic<std::size_t> asked{0}, given{0}, taken_back{0};
std::atomic<std::size_t> refused{0};  // by its number; 0: none

bool refuse() noexcept { return ++asked == refused.load(); }

void* memory_or_null(std::size_t size, std::size_t alignment) noexcept {
  if (refuse()) return nullptr;
  void* const memory = alignment <= alignof(std::max_align_t)
                           ? std::malloc(size == 0 ? 1 : size)
                           : std::aligned_alloc(alignment, (size + alignment - 1) / alignment * alignment);
  if (memory) ++given;
  return memory;
}
void* memory_or_throw(std::size_t size, std::size_t alignment) {
  if (void* const memory = memory_or_null(size, alignment)) return memory;
  throw std::bad_alloc();
}
void take_back(void* memory) noexcept {
  if (memory) ++taken_back;
  std::free(memory);
}

constexpr std::size_t usual = alignof(std::max_align_t);
constexpr std::size_t number_of(std::align_val_t alignment) { return static_cast<std::size_t>(alignment); }

}  // namespace

std::size_t layshaft_test::allocations() noexcept { return asked.load(); }
std::size_t layshaft_test::held() noexcept { return given.load() - taken_back.load(); }

layshaft_test::RefusedRequest::RefusedRequest(std::size_t number) noexcept : number_(asked.load() + number) {
  refused = number_;
}
layshaft_test::RefusedRequest::~RefusedRequest() { refused = 0; }
bool layshaft_test::RefusedRequest::came() const noexcept { return asked.load() >= number_; }

// All forms, also those that would call these: a sanitizer has forms of its own, which must not be mixed with ours.
// clang-format off
void* operator new(std::size_t size) { return memory_or_throw(size, usual); }
void* operator new[](std::size_t size) { return memory_or_throw(size, usual); }
void* operator new(std::size_t size, std::align_val_t to) { return memory_or_throw(size, number_of(to)); }
void* operator new[](std::size_t size, std::align_val_t to) { return memory_or_throw(size, number_of(to)); }
void* operator new(std::size_t size, const std::nothrow_t&) noexcept { return memory_or_null(size, usual); }
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept { return memory_or_null(size, usual); }
void operator delete(void* memory) noexcept { take_back(memory); }
void operator delete[](void* memory) noexcept { take_back(memory); }
void operator delete(void* memory, std::size_t) noexcept { take_back(memory); }
void operator delete[](void* memory, std::size_t) noexcept { take_back(memory); }
void operator delete(void* memory, std::align_val_t) noexcept { take_back(memory); }
void operator delete[](void* memory, std::align_val_t) noexcept { take_back(memory); }
void operator delete(void* memory, std::size_t, std::align_val_t) noexcept { take_back(memory); }
void operator delete[](void* memory, std::size_t, std::align_val_t) noexcept { take_back(memory); }
void operator delete(void* memory, const std::nothrow_t&) noexcept { take_back(memory); }
void operator delete[](void* memory, const std::nothrow_t&) noexcept { take_back(memory); }
// clang-format on

// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cassert>
#include <cstddef>
#include <initializer_list>

/// @file
/// A short list that lives in place, so that nothing on the way from a set-up to its appraisal allocates.
namespace layshaft {

/// Up to `Capacity` values in the order they were added. (std::inplace_vector comes with C++26.)
template <class T, std::size_t Capacity>
class FixedList {
 public:
  static constexpr std::size_t capacity = Capacity;

  constexpr FixedList() noexcept = default;
  /// The values in order, as far as there is room.
  constexpr FixedList(std::initializer_list<T> values) noexcept {
    for (const T& value : values) push_back(value);
  }

  /// Adds a value; one too many is left out, and the list remembers that it was asked to hold it.
  constexpr void push_back(const T& value) noexcept {
    if (size_ < Capacity)
      items_[size_++] = value;
    else
      overfull_ = true;
  }
  /// Whether values were left out for want of room, which every door that takes a list asks.
  [[nodiscard]] constexpr bool overfull() const noexcept { return overfull_; }
  [[nodiscard]] constexpr std::size_t size() const noexcept { return size_; }
  [[nodiscard]] constexpr bool empty() const noexcept { return size_ == 0; }
  [[nodiscard]] constexpr const T& operator[](std::size_t index) const noexcept {
    assert(index < size_);
    return items_[index];
  }
  [[nodiscard]] constexpr const T* begin() const noexcept { return items_.data(); }
  [[nodiscard]] constexpr const T* end() const noexcept { return items_.data() + size_; }

  friend constexpr bool operator==(const FixedList& a, const FixedList& b) noexcept {
    if (a.size_ != b.size_ || a.overfull_ != b.overfull_) return false;
    for (std::size_t i = 0; i < a.size_; ++i)
      if (!(a.items_[i] == b.items_[i])) return false;
    return true;
  }

 private:
  std::array<T, Capacity> items_{};
  std::size_t size_ = 0;
  bool overfull_ = false;
};

}  // namespace layshaft

// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>

#include <cstddef>
#include <utility>
#include <vector>

/// @file
/// The trade-off among things that are judged by several numbers at once: those that nothing else beats in all of them.
namespace layshaft {

/// How far something is from what is wished for, wish by wish; less is better.
using Losses = FixedList<double, 16>;

/// Whether the first is nowhere worse than the second, and somewhere better (Pareto).
[[nodiscard]] constexpr bool dominates(const Losses& first, const Losses& second) noexcept {
  bool better = false;
  for (std::size_t i = 0; i < first.size(); ++i) {
    if (second[i] < first[i]) return false;
    better = better || first[i] < second[i];
  }
  return better;
}

/// Keeps of all that is added what nothing dominates; equals stay beside each other.
template <class Item>
class TradeOff {
 public:
  struct Member {
    Losses losses;
    Item item;
  };

  /// Whether one that is in dominates such losses.
  [[nodiscard]] bool beats(const Losses& losses) {
    for (std::size_t i = 0; i < members_.size(); ++i) {
      if (!dominates(members_[i].losses, losses)) continue;
      // What has just beaten one is likely to beat the next: it is asked first.
      if (i > 0) std::swap(members_[i], members_[i / 2]);
      return true;
    }
    return false;
  }
  /// Adds an item, unless one that is in already dominates it; out goes what it dominates.
  void add(const Losses& losses, const Item& item) {
    if (beats(losses)) return;
    std::erase_if(members_, [&](const Member& member) { return dominates(losses, member.losses); });
    members_.push_back({losses, item});
    std::swap(members_.front(), members_.back());
  }
  void add(const TradeOff& other) {
    for (const Member& member : other.members_) add(member.losses, member.item);
  }

  /// In no order that means anything.
  [[nodiscard]] const std::vector<Member>& members() const noexcept { return members_; }

 private:
  std::vector<Member> members_;
};

}  // namespace layshaft

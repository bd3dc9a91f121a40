// SPDX-License-Identifier: MIT
// Any text as a kind of quantity: what is read is finite and prints as what reads back to the bit; what is not says
// where and why, in words that steer no terminal.
#include "must.hpp"

#include <layshaft/core/core.hpp>

#include <bit>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace {

using namespace layshaft;

template <class Quantity>
void read_as(std::string_view text) {
  const Result<Quantity> read = try_parse_quantity<Quantity>(text);
  if (!read) {
    const Error& error = read.error();
    MUST(error.position() <= text.size());
    MUST(!error.expected().empty());
    const std::string_view sentence = error.what();
    MUST(detail::first_steering(sentence) == sentence.size());
    return;
  }
  MUST(is_finite(*read));
  const Result<Quantity> again = try_parse_quantity<Quantity>(to_text(*read));
  MUST(again.has_value());
  MUST(std::bit_cast<std::uint64_t>(again->value()) == std::bit_cast<std::uint64_t>(read->value()));
}
/// As one kind, by the text's length: all of them would take as many times as long.
template <class... Quantities>
void read_as_one_of(std::string_view text) {
  std::size_t kind = text.size() % sizeof...(Quantities);
  static_cast<void>(((kind-- == 0 ? (read_as<Quantities>(text), true) : false) || ...));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  read_as_one_of<Length, Speed, Mass, Force, Torque, AngularSpeed, Angle, Power, Pressure, Temperature>(
      std::string_view(reinterpret_cast<const char*>(data), size));
  return 0;
}

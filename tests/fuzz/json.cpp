// SPDX-License-Identifier: MIT
// Any text as JSON of a machine, a set-up or a question: what is read, writes as what reads back alike; what is not is
// refused in words.
#include "must.hpp"

#include <layshaft/io/json.hpp>
#include <layshaft/io/question_json.hpp>

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace {

using namespace layshaft;

void must_be_in_words(const Error& error) {
  const std::string_view sentence = error.what();
  MUST(!sentence.empty() && sentence.size() < 2000);
  MUST(detail::first_steering(sentence) == sentence.size());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  if (const auto machine = try_machine_from_json(text)) {
    const std::string written = to_json(*machine);
    const auto again = try_machine_from_json(written);
    MUST(again.has_value());
    MUST(to_json(*again) == written);
  } else {
    must_be_in_words(machine.error());
  }
  if (const auto setup = try_setup_from_json(text)) {
    const auto again = try_setup_from_json(to_json(*setup));
    MUST(again && *again == *setup);
  } else {
    must_be_in_words(setup.error());
  }
  if (const auto question = try_question_from_json(text); !question) must_be_in_words(question.error());
  return 0;
}

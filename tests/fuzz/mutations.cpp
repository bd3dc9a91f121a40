// SPDX-License-Identifier: MIT
// The fuzzer for compilers without libFuzzer: mutates the LEGAL and ILLEGAL lists, and what it finds legal on the way,
// with a fixed seed.
//
//     fuzz_designation --executions N | --seconds N
#include <chrono>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include <layshaft/tyre/designation.hpp>
#include <tyre/designation_lists.hpp>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

void attempt(const std::string& text) {
  static_cast<void>(LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), text.size()));
}

class Mutations {
  [[nodiscard]] std::size_t below(std::size_t count) { return static_cast<std::size_t>(random_() % count); }
  template <class List>
  [[nodiscard]] const auto& any(const List& list) {
    return list[below(std::size(list))];
  }

 public:
  Mutations() {
    for (const char* list : {"LEGAL", "ILLEGAL"})
      for (const layshaft_test::Example& example : layshaft_test::examples(list)) texts_.push_back(example.text);
    lists_ = texts_.size();
  }

  /// How many of the texts were markings.
  [[nodiscard]] long legal() const { return legal_; }

  [[nodiscard]] std::string next() {
    std::string text = any(texts_);
    for (std::size_t changes = 1 + below(4); changes > 0; --changes) change(text);
    layshaft::detail::DesignationReader reader(text);
    const bool legal = reader.read();
    legal_ += legal;
    if (legal && text.size() <= 64) {  // a place to go on from
      if (texts_.size() < lists_ + 4096)
        texts_.push_back(text);
      else
        texts_[lists_ + below(4096)] = text;
    }
    return text;
  }

 private:
  void change(std::string& text) {
    static constexpr std::string_view characters = "0123456789-/.,xX* ()+&BRZMTCLPSNHDOEIFAVWY";
    static const std::string words[] = {"LT",     "AT",     "ZR",  " M/C",      " M+S",      " MST", " NHS",
                                        " REINF", " TL",    " TT", " 6PR",      " 61R",      "/",    "-",
                                        "x",      " 1 3/8", "1/2", "½",         "⅜",         "×",    "–",
                                        "／",     "４",     " ",   " DOT 2319", "121/118Q",  "622",  " (73W)",
                                        "700",    "650B",   "26",  "27.5",      "28x1 5/8x", "\x80", "\xef\xbc"};
    const std::size_t place = below(text.size() + 1);
    switch (below(8)) {
      case 0: text.insert(place, 1, any(characters)); break;
      case 1: text.insert(place, any(words)); break;
      case 2: text.insert(place, 1, static_cast<char>(below(256))); break;
      case 3: text.erase(place, 1 + below(3)); break;
      case 4: text = text.substr(0, place) + any(texts_).substr(0, 256); break;
      case 5:
        if (place < text.size()) text[place] = any(characters);
        break;
      case 6:
        if (place + 1 < text.size()) std::swap(text[place], text[place + 1]);
        break;
      default: {
        const std::string other = any(texts_);
        const std::size_t from = below(other.size() + 1);
        text.replace(place, below(4), other.substr(from, 1 + below(8)));
      }
    }
  }

  long legal_ = 0;
  std::mt19937_64 random_{20240229};
  std::vector<std::string> texts_;
  std::size_t lists_ = 0;
};

int mutate(long executions, double seconds) {
  using Clock = std::chrono::steady_clock;
  const auto began = Clock::now();
  const auto passed = [&] { return std::chrono::duration<double>(Clock::now() - began).count(); };
  Mutations mutations;
  long done = 0;
  for (; done < executions; ++done) {
    if (done % 1024 == 0 && passed() > seconds) break;
    attempt(mutations.next());
  }
  std::printf("%ld executions in %.1f s, %ld of them of markings\n", done, passed(), mutations.legal());
  return mutations.legal() > done / 50 ? 0 : 1;  // texts that are all refused would prove little
}

}  // namespace

int main(int count, char** arguments) {
  const std::string_view what = count == 3 ? arguments[1] : "";
  if (what == "--executions") return mutate(std::atol(arguments[2]), 1e9);
  if (what == "--seconds") return mutate(1000000000000, std::atof(arguments[2]));
  std::fputs("fuzz_designation --executions N | --seconds N\n", stderr);
  return 2;
}

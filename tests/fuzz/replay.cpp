// SPDX-License-Identifier: MIT
// Hands a fuzzer's function every text of a corpus, and every file that once made it fail:
//
//     replay_NAME CORPUS FOLDER
//
// A corpus has a text a line; \n, \\ and \xNN stand for what a line cannot hold.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

void attempt(const std::string& text) {
  static_cast<void>(LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), text.size()));
}
std::string plain(const std::string& line) {
  std::string text;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] != '\\' || i + 1 == line.size()) {
      text.push_back(line[i]);
    } else if (line[++i] == 'x' && i + 2 < line.size()) {
      text.push_back(static_cast<char>(std::strtol(line.substr(i + 1, 2).c_str(), nullptr, 16)));
      i += 2;
    } else {
      text.push_back(line[i] == 'n' ? '\n' : line[i]);
    }
  }
  return text;
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 3) return std::fputs("replay_NAME CORPUS FOLDER\n", stderr), 2;
  int texts = 0, failures = 0;
  std::ifstream corpus(arguments[1], std::ios::binary);
  for (std::string line; std::getline(corpus, line); ++texts) attempt(plain(line));
  if (std::filesystem::is_directory(arguments[2]))
    for (const auto& entry : std::filesystem::directory_iterator(arguments[2])) {
      std::ifstream file(entry.path(), std::ios::binary);
      attempt(std::string(std::istreambuf_iterator<char>(file), {}));
      ++failures;
    }
  std::printf("%d texts, and %d that once failed\n", texts, failures);
  return texts > 0 ? 0 : 1;
}

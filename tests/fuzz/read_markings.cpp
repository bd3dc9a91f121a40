// SPDX-License-Identifier: MIT
// Reads markings, one a line, from standard input, and answers each with a line: its canonical form, or `!` and the
// byte at which it is refused.
#include <layshaft/tyre/canonical.hpp>
#include <layshaft/tyre/designation.hpp>

#include <cstdio>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

int main() {
  std::string in, out;
  std::vector<char> buffer(1 << 20);
  while (const std::size_t bytes = std::fread(buffer.data(), 1, buffer.size(), stdin)) in.append(buffer.data(), bytes);
  std::string_view rest = in;
  while (!rest.empty()) {
    const std::size_t end = rest.find('\n');
    layshaft::detail::DesignationReader reader(rest.substr(0, end));
    if (reader.read())
      out.append(layshaft::detail::canonical(reader.designation()));
    else
      out.append("!").append(std::to_string(reader.fault().position));
    out.push_back('\n');
    rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + 1);
  }
  return std::fwrite(out.data(), 1, out.size(), stdout) == out.size() ? 0 : 1;
}

// SPDX-License-Identifier: MIT
// The demo rider's question in C++: choose [QUESTION.json] prints the shortlist with its reasons, as choose.py does.
#include <layshaft/choose/choose.hpp>
#include <layshaft/io/json.hpp>
#include <layshaft/io/question_json.hpp>
#include <layshaft/show/choice_text.hpp>

#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

namespace {

std::string text_of(const std::string& path) {
  std::ifstream file(path);
  if (!file) throw layshaft::Error::value("cannot read " + path);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

int main(int count, char** arguments) try {
  using namespace layshaft;
  const std::string machines = LAYSHAFT_MACHINES_DIR;
  const Machine machine = machine_from_json(text_of(machines + "/trail_bike.json"));
  const std::string question = count > 1 ? arguments[1] : machines + "/../questions/trail_bike.json";
  const auto [space, goals] = question_from_json(text_of(question));
  const Choice choice = choose(machine, space, goals);
  int place = 0;
  for (const Chosen& one : choice.ranked)
    std::cout << ++place << ". " << one.setup.front().count() << '/' << one.setup.rear().count() << " with "
              << one.setup.links()->count() << " links\n   " << sentence(one.reason) << '\n';
  for (const Relaxation& one : choice.relaxations) std::cout << "- " << sentence(one) << '\n';
} catch (const layshaft::Error& error) {
  std::cerr << "choose: " << error.what() << '\n';
  return 1;
}

// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/io/json.hpp>

#include <fstream>
#include <iterator>
#include <string>

/// The invented machine of that name in examples/machines.
inline layshaft::Machine machine_called(const std::string& name) {
  const std::string path = LAYSHAFT_MACHINES_DIR "/" + name + ".json";
  std::ifstream file(path);
  if (!file) layshaft::raise(layshaft::Error::value("cannot read " + path));
  return layshaft::machine_from_json(std::string(std::istreambuf_iterator<char>(file), {}));
}

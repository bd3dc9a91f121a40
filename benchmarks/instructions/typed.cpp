// SPDX-License-Identifier: MIT
// The kernels by layshaft, as a user would write them.
#include "kernels.hpp"

#include <layshaft/chain/loop.hpp>
#include <layshaft/gearing/change.hpp>
#include <layshaft/gearing/ratio.hpp>
#include <layshaft/gearing/speed.hpp>

namespace typed {
namespace ls = layshaft;

namespace {
ls::Length metres(double value) { return value * ls::units::m; }
ls::AngularSpeed radps(double value) { return value * ls::units::radps; }
/// Teeth that were checked when they came in.
const ls::Teeth* teeth(const int* counts) {
  static_assert(sizeof(ls::Teeth) == sizeof(int));
  return reinterpret_cast<const ls::Teeth*>(counts);
}
}  // namespace

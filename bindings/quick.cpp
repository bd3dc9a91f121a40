// SPDX-License-Identifier: MIT
#include "quick.hpp"

namespace layshaft::python::quick {

Result<Appraisal> appraise(const Machine& machine, const Setup& base, const Setup& setup) {
  return layshaft::detail::appraise_against(machine, base, setup);
}
Result<Comparison> compare(const Machine& machine, const Setup& base, const Setup& trial) {
  return try_compare(machine, base, trial);
}
Result<Choice> choose(const Machine& machine, const Space& space, const Goals& goals, const ChooseOptions& options) {
  return try_choose(machine, space, goals, options);
}
Result<std::uint64_t> survey(const Machine& machine, const Space& space, const Goals& goals,
                             const std::function<bool(const Surveyed&)>& visit) {
  return try_survey(machine, space, goals, visit);
}
Result<std::vector<Sensitivity>> sensitivity(const Machine& machine, const Space& space, const Goals& goals,
                                             const SensitivityOptions& options) {
  return try_sensitivity(machine, space, goals, options);
}

}  // namespace layshaft::python::quick

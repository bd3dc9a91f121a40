// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/sensitivity.hpp>
#include <layshaft/choose/survey.hpp>
#include <layshaft/setup/comparison.hpp>

#include <functional>

/// @file
/// What works long for one call. It is compiled apart, to be fast, and knows nothing of Python; all else is to be
/// small.
namespace layshaft::python::quick {

[[nodiscard]] Result<Appraisal> appraise(const Machine& machine, const Setup& base, const Setup& setup);
[[nodiscard]] Result<Comparison> compare(const Machine& machine, const Setup& base, const Setup& trial);
[[nodiscard]] Result<Choice> choose(const Machine& machine, const Space& space, const Goals& goals,
                                    const ChooseOptions& options);
[[nodiscard]] Result<std::uint64_t> survey(const Machine& machine, const Space& space, const Goals& goals,
                                           const std::function<bool(const Surveyed&)>& visit);
[[nodiscard]] Result<std::vector<Sensitivity>> sensitivity(const Machine& machine, const Space& space,
                                                           const Goals& goals, const SensitivityOptions& options);

}  // namespace layshaft::python::quick

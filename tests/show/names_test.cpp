// SPDX-License-Identifier: MIT
#include <layshaft/choose/choose.hpp>
#include <layshaft/choose/sensitivity.hpp>
#include <layshaft/core/working.hpp>
#include <layshaft/layshaft.hpp>

#include <gtest/gtest.h>

#include <set>
#include <string_view>

namespace {
using namespace layshaft;

/// An enumeration that has names, and how many enumerators it has.
template <class Enumeration, int Count>
struct Named {
  using Type = Enumeration;
  static constexpr int count = Count;
};

template <class Enumeration>
class NamesOfEnumerators : public testing::Test {};

using Looked = testing::Types<Named<CautionCode, 39>, Named<MachineKind, 2>, Named<Measure, 37>, Named<StartLimit, 2>,
                              Named<ThrustLimitKind, 2>>;
using Switched =
    testing::Types<Named<Certainty, 6>, Named<ChainProperty, 11>, Named<ChainSeal, 3>, Named<Change, 3>,
                   Named<CheaperPart, 3>, Named<ContributionCause, 5>, Named<DecisionInput, 8>, Named<DragKind, 3>,
                   Named<FitnessCode, 5>, Named<FitnessVerdict, 3>, Named<InterchangeReason, 5>, Named<LinkRounding, 4>,
                   Named<MeasuredAt, 3>, Named<PartKind, 5>, Named<PlanKind, 3>, Named<RideKind, 4>,
                   Named<RoadLoadKind, 4>, Named<SlackMethod, 4>, Named<SpeedometerSensor, 3>,
                   Named<SpeedometerVerdict, 4>, Named<SprocketMaterial, 4>, Named<StepKind, 5>,
                   Named<StretchLimitKind, 3>, Named<SurfaceKind, 5>, Named<ThrustFrom, 3>, Named<TopSpeedLimit, 3>,
                   Named<TreadRule, 3>, Named<TyreConstruction, 3>, Named<TyreDeflection, 2>, Named<TyreFamily, 5>,
                   Named<TyreNotation, 5>, Named<TyreTube, 3>, Named<TyreUse, 3>, Named<TyreVehicle, 5>,
                   Named<VehicleClass, 7>, Named<Want, 3>>;

template <class Enumeration>
class NamesOfEnumeratorsInAList : public NamesOfEnumerators<Enumeration> {};
TYPED_TEST_SUITE(NamesOfEnumerators, Switched);
TYPED_TEST_SUITE(NamesOfEnumeratorsInAList, Looked);

/// Whether a name may stand as one word, or some, in a listing, a log or a page.
bool reads_well(std::string_view name) {
  for (const char c : name)
    if (!((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' ' || c == '_' ||
          c == '-' || c == ',' || c == '\'' || c == '.' || c == '/' || c == '(' || c == ')'))
      return false;
  return !name.empty() && name.front() != ' ' && name.back() != ' ';
}

template <class Of>
void expect_one_for_each() {
  std::set<std::string_view> names;
  for (int i = 0; i < Of::count; ++i) {
    const std::string_view name = to_string(static_cast<typename Of::Type>(i));
    EXPECT_TRUE(reads_well(name)) << i << ": \"" << name << '"';
    EXPECT_TRUE(names.insert(name).second) << name;
  }
}

TYPED_TEST(NamesOfEnumerators, AreOneForEachAndDiffer) { expect_one_for_each<TypeParam>(); }
TYPED_TEST(NamesOfEnumeratorsInAList, AreOneForEachAndDiffer) { expect_one_for_each<TypeParam>(); }

// A number that was cast without a look names nothing.
TYPED_TEST(NamesOfEnumerators, AreNoneForANumberThatNamesNone) {
  using Type = typename TypeParam::Type;
  for (const int outside : {TypeParam::count, 99, -1}) EXPECT_EQ(to_string(static_cast<Type>(outside)), "") << outside;
}

}  // namespace

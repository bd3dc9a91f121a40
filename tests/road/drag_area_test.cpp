// SPDX-License-Identifier: MIT
#include <layshaft/road/drag_area.hpp>

#include <gtest/gtest.h>
#include <reference/csv.hpp>

#include <stdexcept>
#include <string>
#include <string_view>

namespace {
using namespace layshaft;

layshaft_test::Row row_of(std::string_view what, std::string_view quantity) {
  for (const auto& row : layshaft_test::read_csv("drag_area.csv"))
    if (row.at("what") == what && row.at("quantity") == quantity) return row;
  throw std::runtime_error("no such row");
}

TEST(DragArea, IsThatOfTheCollectedTables) {
  const auto low = [](std::string_view what, std::string_view quantity) {
    return layshaft_test::number(row_of(what, quantity).at("lo_or_first"));
  };
  const auto high = [](std::string_view what, std::string_view quantity) {
    return layshaft_test::number(row_of(what, quantity).at("hi_or_second"));
  };
  const auto mode = [](std::string_view what, std::string_view quantity) {  // "a model (mode 0.6)"
    const std::string source = row_of(what, quantity).at("source");
    return std::stod(source.substr(source.find("mode ") + 5));
  };
  const Band<Area>& motorcycle = drag_area(DragKind::motorcycle).area;
  EXPECT_EQ(motorcycle.low, low("motorcycles, whole range", "Cx*A m2") * units::m2);
  EXPECT_EQ(motorcycle.high, high("motorcycles, whole range", "Cx*A m2") * units::m2);
  EXPECT_NEAR(in(motorcycle.nominal, units::m2),
              0.5 * (low("various motorcycles", "Cd*A m2") + high("various motorcycles", "Cd*A m2")), 1e-15);
  for (const auto& [kind, name] : {std::pair{DragKind::scooter, "moped/scooter life-cycle model"},
                                   std::pair{DragKind::bicycle, "bicycle life-cycle model"}}) {
    EXPECT_NEAR(in(drag_area(kind).area.low, units::m2), low(name, "Cd") * low(name, "A m2"), 1e-15);
    EXPECT_NEAR(in(drag_area(kind).area.high, units::m2), high(name, "Cd") * high(name, "A m2"), 1e-15);
    EXPECT_NEAR(in(drag_area(kind).area.nominal, units::m2), mode(name, "Cd") * mode(name, "A m2"), 1e-15);
  }
}

TEST(DragArea, HasARowForEachKindInRisingOrder) {
  for (const DragKind kind : {DragKind::motorcycle, DragKind::scooter, DragKind::bicycle}) {
    EXPECT_EQ(drag_area(kind).kind, kind);
    EXPECT_TRUE(well_formed(drag_area(kind).area));
    EXPECT_FALSE(to_string(kind).empty());
    EXPECT_NE(drag_area(kind).source.certainty, Certainty::published);
  }
}

}  // namespace

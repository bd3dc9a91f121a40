// SPDX-License-Identifier: MIT
#include <layshaft/wear/material.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;

// By Vickers, from memory, at 9.81 MPa a point; to half of the last digit that the table keeps.
TEST(Material, IsAsHardAsItsVickersNumbersSay) {
  const struct {
    SprocketMaterial kind;
    Band<double> vickers;
    const char* family;
  } table[] = {{SprocketMaterial::steel, {160.0, 190.0, 220.0}, "medium-carbon"},
               {SprocketMaterial::hardened_steel, {400.0, 550.0, 700.0}, "case-hardened"},
               {SprocketMaterial::aluminium_6000, {95.0, 107.5, 120.0}, " 6000 "},
               {SprocketMaterial::aluminium_7000, {150.0, 170.0, 190.0}, " 7000 "}};
  for (const auto& [kind, vickers, family] : table) {
    for (const Corner corner : corners)
      EXPECT_NEAR(material(kind).hardness.at(corner) / units::MPa, 9.81 * vickers.at(corner), 5.0) << to_string(kind);
    EXPECT_NE(std::string(material(kind).source.document).find(family), std::string::npos) << family;
  }
}

TEST(Material, StandsForEachWord) {
  for (const SprocketMaterial kind : sprocket_materials) {
    EXPECT_EQ(material(kind).kind, kind);
    EXPECT_TRUE(well_formed(material(kind).hardness));
    EXPECT_EQ(material(kind).source.certainty, Certainty::from_memory);
    EXPECT_FALSE(to_string(kind).empty());
  }
}

}  // namespace

// SPDX-License-Identifier: MIT
#include <layshaft/wear/material.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(Material, StandsForEachWord) {
  for (const SprocketMaterial kind : sprocket_materials) {
    EXPECT_EQ(material(kind).kind, kind);
    EXPECT_TRUE(well_formed(material(kind).hardness));
    EXPECT_EQ(material(kind).source.certainty, Certainty::from_memory);
    EXPECT_FALSE(to_string(kind).empty());
  }
}

}  // namespace

// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

/// @file
/// The words that formulas name their parameters with: one symbol, one meaning, one display unit each. Opt-in: nothing
/// that computes includes it.
namespace layshaft {

/// One word of the glossary.
struct Word {
  std::string_view word;    ///< as it stands in the code
  std::string_view symbol;  ///< in plain text
  std::string_view tex;     ///< in TeX
  std::string_view meaning;
  std::string_view unit;  ///< display unit; empty for a pure number or a count
};

// clang-format off
/// Every word that a formula's parameter or result may be called, in alphabetical order.
inline constexpr Word glossary[] = {
  {"aspect_ratio",              "a",      "a",                      "section height as a percentage of section width", ""},
  {"base_circumference",        "U0",     "U_0",                    "rolling circumference before", "mm"},
  {"base_ratio",                "i0",     "i_0",                    "ratio before", ""},
  {"base_rear_pitch_diameter",  "d2,0",   "d_{2,0}",                "pitch diameter of the rear sprocket before", "mm"},
  {"centre",                    "C",      "C",                      "distance from the front sprocket's axis to the rear's", "mm"},
  {"centre_approximate",        "C_approx",     "C_{\\mathrm{approx}}",              "centre distance by the handbook's formula", "mm"},
  {"chain_tension",             "T",      "T",                      "pull of the chain's tight run", "N"},
  {"chain_tension_change",      "delta_T",   "\\delta_T",            "change of the chain's pull", ""},
  {"circumference",             "U",      "U",                      "distance rolled in one turn of the wheel", "mm"},
  {"contribution",              "c",      "c",                      "part of a change that one factor makes", ""},
  {"correction_factor",         "k",      "k",                      "factor that brings the speedometer back", ""},
  {"distance",                  "s",      "s",                      "distance ridden", "km"},
  {"driven",                    "z_b",    "z_b",                    "teeth of the driven gear", ""},
  {"driving",                   "z_a",    "z_a",                    "teeth of the driving gear", ""},
  {"engine_speed",              "n",      "n",                      "engine speed", "rpm"},
  {"engine_speed_change",       "delta_n",   "\\delta_n",            "change of engine speed", ""},
  {"equivalent_rear",           "z2'",    "z_2'",                   "rear teeth for the same final ratio, a real number", ""},
  {"factor",                    "f",      "f",                      "what one cause multiplies by", ""},
  {"final_ratio",               "i_f",    "i_f",                    "ratio of the chain drive", ""},
  {"front",                     "z1",     "z_1",                    "teeth of the front sprocket", ""},
  {"front_contacts",            "N1",     "N_1",                    "meetings of a front tooth with the chain", ""},
  {"front_pitch_diameter",      "d1",     "d_1",                    "pitch diameter of the front sprocket", "mm"},
  {"front_removed",             "Delta_1",   "\\Delta_1",           "teeth fewer in front", ""},
  {"gear",                      "i_g",    "i_g",                    "ratio of the gear", ""},
  {"gear_ratio",                "i_ab",   "i_{ab}",                 "ratio of a pair of gears", ""},
  {"height_factor",             "b",      "b",                      "section height over its nominal value", ""},
  {"highest_lawful_reading",    "V1,max", "V_{1,\\max}",            "highest reading that the rule allows", "km/h"},
  {"indicated_ratio",           "q",      "q",                      "speedometer reading after over before", ""},
  {"indicated_speed",           "V1",     "V_1",                    "speed that the speedometer shows", "km/h"},
  {"links",                     "X",      "X",                      "links of the chain", ""},
  {"links_approximate",         "X_approx",     "X_{\\mathrm{approx}}",              "links by the handbook's formula, a real number", ""},
  {"listed_diameter",           "D'",     "D'",                     "overall diameter of the listed tyre", "mm"},
  {"listed_rim_diameter",       "d'",     "d'",                     "rim diameter of the listed tyre", "mm"},
  {"loop_links",                "X",      "X",                      "links of the closed loop, a real number", ""},
  {"overall_diameter",          "D",      "D",                      "overall diameter of the tyre", "mm"},
  {"overall_diameter_limit",    "D_lim",  "D_{\\mathrm{lim}}",      "limit of the overall diameter", "mm"},
  {"overall_diameter_on_another_rim", "D", "D",                     "overall diameter on another rim", "mm"},
  {"overall_ratio",             "i",      "i",                      "engine turns per turn of the wheel", ""},
  {"pitch",                     "p",      "p",                      "pitch of the chain", "mm"},
  {"pitch_diameter",            "d",      "d",                      "pitch diameter of the sprocket", "mm"},
  {"primary",                   "i_p",    "i_p",                    "ratio of the primary drive", ""},
  {"ratio",                     "F",      "F",                      "trial over base, all factors together", ""},
  {"reading_error",             "e",      "e",                      "stock reading over true speed, less one", ""},
  {"rear",                      "z2",     "z_2",                    "teeth of the rear sprocket", ""},
  {"rear_added",                "Delta_2",    "\\Delta_2",            "teeth more behind", ""},
  {"rear_contacts",             "N2",     "N_2",                    "meetings of a rear tooth with the chain", ""},
  {"rear_pitch_diameter",       "d2",     "d_2",                    "pitch diameter of the rear sprocket", "mm"},
  {"rim_diameter",              "d_r",    "d_r",                    "nominal rim diameter", "mm"},
  {"road_speed",                "v",      "v",                      "road speed", "km/h"},
  {"roller_diameter",           "d_roller",    "d_{\\mathrm{roller}}",   "roller diameter of the chain", "mm"},
  {"rolling_circumference",     "U",      "U",                      "distance rolled in one turn of the wheel", "mm"},
  {"rolling_factor",            "k_r",    "k_r",                    "rolling circumference over that of the free tyre", ""},
  {"root_diameter",             "d_f",    "d_f",                    "root diameter of the sprocket", "mm"},
  {"run_angle",                 "phi",    "\\varphi",               "angle of the straight runs to the line of centres", "deg"},
  {"run_length",                "l",      "l",                      "length of a straight run", "mm"},
  {"section_height",            "H",      "H",                      "section height of the tyre", "mm"},
  {"section_height_of_diameter", "H",     "H",                      "section height of the tyre", "mm"},
  {"section_width",             "S",      "S",                      "section width of the tyre", "mm"},
  {"slack",                     "h",      "h",                      "hand movement at mid-span, up plus down", "mm"},
  {"slack_by_hand",             "h",      "h",                      "hand movement at mid-span, up plus down", "mm"},
  {"spare_length",              "S",      "S",                      "chain length beyond that of the tight loop", "mm"},
  {"speed_change",              "delta_v",   "\\delta_v",            "change of road speed", ""},
  {"stock_reading",             "V1,0",   "V_{1,0}",                "reading with the stock parts", "km/h"},
  {"teeth",                     "z",      "z",                      "teeth of the sprocket", ""},
  {"thrust",                    "F_t",    "F_t",                    "drive force at the contact patch", "N"},
  {"thrust_change",             "delta_F",   "\\delta_F",            "change of thrust", ""},
  {"thrust_change_by_thumb",    "delta_F,thumb",  "\\delta_{F,\\mathrm{thumb}}", "change of thrust by the trade's rule", ""},
  {"tip_diameter_greatest",     "d_a,max", "d_{a,\\max}",           "greatest tip diameter of the sprocket", "mm"},
  {"tip_diameter_least",        "d_a,min", "d_{a,\\min}",           "least tip diameter of the sprocket", "mm"},
  {"trial_circumference",       "U1",     "U_1",                    "rolling circumference after", "mm"},
  {"trial_front",               "z1'",    "z_1'",                   "teeth of the front sprocket after", ""},
  {"trial_ratio",               "i1",     "i_1",                    "ratio after", ""},
  {"trial_rear_pitch_diameter", "d2,1",   "d_{2,1}",                "pitch diameter of the rear sprocket after", "mm"},
  {"true_speed",                "V2",     "V_2",                    "true speed", "km/h"},
  {"turns_ratio",               "F",      "F",                      "turns over a distance, trial over base", ""},
  {"tyre_growth",               "delta_U",   "\\delta_U",            "how much taller the tyre is", ""},
  {"wheel_indicated_ratio",     "q",      "q",                      "speedometer reading after over before", ""},
  {"wrap_front",                "theta1", "\\theta_1",              "angle over which the chain wraps the front sprocket", "deg"},
  {"wrap_rear",                 "theta2", "\\theta_2",              "angle over which the chain wraps the rear sprocket", "deg"},
};
// clang-format on

/// The entry of a word; null where the glossary has none.
[[nodiscard]] constexpr const Word* find_word(std::string_view word) noexcept {
  for (const Word& entry : glossary)
    if (entry.word == word) return &entry;
  return nullptr;
}

}  // namespace layshaft

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
  std::string_view unit;  ///< metric display unit, "%" for a part of one; empty for a pure number or a count
};

// clang-format off
/// Every word that a formula's parameter or result may be called, in alphabetical order.
inline constexpr Word glossary[] = {
  {"adjuster_forward",                "R_f",             "R_{\\mathrm{f}}",                 "room of the axle to move forward", "mm"},
  {"adjuster_rearward",               "R_r",             "R_{\\mathrm{r}}",                 "room of the axle to move back", "mm"},
  {"aspect_ratio",                    "a",               "a",                               "section height as a percentage of section width", ""},
  {"base_circumference",              "U0",              "U_0",                             "rolling circumference before", "mm"},
  {"base_efficiency",                 "eta0",            "\\eta_0",                         "efficiency of the drive before", ""},
  {"base_front",                      "z1,0",            "z_{1,0}",                         "teeth of the front sprocket before", ""},
  {"base_new_circumference",          "U_new,0",         "U_{\\mathrm{new},0}",             "rolling circumference before, with all its tread", "mm"},
  {"base_ratio",                      "i0",              "i_0",                             "ratio before", ""},
  {"base_rear",                       "z2,0",            "z_{2,0}",                         "teeth of the rear sprocket before", ""},
  {"base_rear_pitch_diameter",        "d2,0",            "d_{2,0}",                         "pitch diameter of the rear sprocket before", "mm"},
  {"centre",                          "C",               "C",                               "centre distance of the two sprockets", "mm"},
  {"centre_approximate",              "C_approx",        "C_{\\mathrm{approx}}",            "centre distance by the handbook's formula", "mm"},
  {"centre_max",                      "C_max",           "C_{\\max}",                       "centre distance at the rear end of the adjuster", "mm"},
  {"centre_min",                      "C_min",           "C_{\\min}",                       "centre distance at the front end of the adjuster", "mm"},
  {"chain_tension",                   "T",               "T",                               "pull of the chain's tight run", "N"},
  {"chain_tension_change",            "delta_T",         "\\delta_T",                       "change of the chain's pull", "%"},
  {"circumference",                   "U",               "U",                               "distance rolled in one turn of the wheel", "mm"},
  {"contribution",                    "c",               "c",                               "part of a change that one factor makes", "%"},
  {"correction_factor",               "k",               "k",                               "factor that brings the speedometer back", ""},
  {"design_diameter",                 "D_design",        "D_{\\mathrm{design}}",            "overall diameter that the table is made for", "mm"},
  {"distance",                        "s",               "s",                               "distance ridden", "km"},
  {"distinct_links",                  "m",               "m",                               "different links that each tooth meets", ""},
  {"drive_efficiency",                "eta",             "\\eta",                           "power out of the chain drive over power in", "%"},
  {"driven",                          "z_b",             "z_b",                             "teeth of the driven gear", ""},
  {"driving",                         "z_a",             "z_a",                             "teeth of the driving gear", ""},
  {"effective_links",                "x_e",             "x_{\\mathrm{e}}",                 "links of nominal length that the chain counts as", ""},
  {"elongation",                      "epsilon",         "\\varepsilon",                    "how much longer the chain is than nominal", "%"},
  {"engine_speed",                    "n",               "n",                               "engine speed", "rpm"},
  {"engine_speed_change",             "delta_n",         "\\delta_n",                       "change of engine speed", "%"},
  {"equivalent_rear",                 "z2'",             "z_2'",                            "rear teeth for the same final ratio, a real number", ""},
  {"factor",                          "f",               "f",                               "what one cause multiplies by", ""},
  {"final_ratio",                     "i_f",             "i_f",                             "ratio of the chain drive", ""},
  {"foremost_centre",                 "C_f",             "C_{\\mathrm{f}}",                 "centre distance with the axle at its foremost place", "mm"},
  {"front",                           "z1",              "z_1",                             "teeth of the front sprocket", ""},
  {"front_contacts",                  "N1",              "N_1",                             "meetings of a front tooth with the chain", ""},
  {"front_contacts_change",           "delta_N1",        "\\delta_{N1}",                    "change of the front teeth's meetings", "%"},
  {"front_contribution",              "c_front",         "c_{\\mathrm{front}}",             "part of the change that the front sprocket makes", "%"},
  {"front_factor",                    "f_front",         "f_{\\mathrm{front}}",             "what the front sprocket multiplies by", ""},
  {"front_pitch_diameter",            "d1",              "d_1",                             "pitch diameter of the front sprocket", "mm"},
  {"front_removed",                   "Delta_1",         "\\Delta_1",                       "teeth fewer in front", ""},
  {"front_speed_factor",              "g_front",         "g_{\\mathrm{front}}",             "what the front sprocket multiplies road speed by", ""},
  {"front_tip_diameter",              "d_a1",            "d_{a1}",                          "greatest tip diameter of the front sprocket", "mm"},
  {"gear",                            "i_g",             "i_g",                             "ratio of the gear", ""},
  {"gear_ratio",                      "i_ab",            "i_{ab}",                          "ratio of a pair of gears", ""},
  {"height_factor",                   "b",               "b",                               "section height over its nominal value", ""},
  {"highest_lawful_reading",          "V1,max",          "V_{1,\\max}",                     "highest reading that the rule allows", "km/h"},
  {"indicated_ratio",                 "q",               "q",                               "speedometer reading after over before", ""},
  {"indicated_speed",                 "V1",              "V_1",                             "speed that the speedometer shows", "km/h"},
  {"links",                           "X",               "X",                               "links of the chain", ""},
  {"links_approximate",              "x_approx",        "x_{\\mathrm{approx}}",            "links by the handbook's formula, a real number", ""},
  {"links_at_end",                   "x_end",           "x_{\\mathrm{end}}",               "links of a loop with the axle at the rear end", ""},
  {"links_with_slack",               "x_s",             "x_{\\mathrm{s}}",                 "links of the loop with its slack, a real number", ""},
  {"listed_diameter",                 "D'",              "D'",                              "overall diameter of the listed tyre", "mm"},
  {"listed_rim_diameter",             "d'",              "d'",                              "rim diameter of the listed tyre", "mm"},
  {"loop_links",                     "x",               "x",                               "links of the closed loop, a real number", ""},
  {"loss_contribution",               "c_loss",          "c_{\\mathrm{loss}}",              "part of the change that the drive's loss makes", "%"},
  {"loss_factor",                     "f_loss",          "f_{\\mathrm{loss}}",              "what the drive's efficiency multiplies by", ""},
  {"new_circumference",               "U_new",           "U_{\\mathrm{new}}",               "rolling circumference with all its tread", "mm"},
  {"odometer_drift",                  "delta_s",         "\\delta_s",                       "what the odometer counts more than before", "%"},
  {"overall_diameter",                "D",               "D",                               "overall diameter of the tyre", "mm"},
  {"overall_diameter_limit",          "D_lim",           "D_{\\mathrm{lim}}",               "limit of the overall diameter", "mm"},
  {"overall_diameter_on_another_rim", "D",               "D",                               "overall diameter on another rim", "mm"},
  {"overall_ratio",                   "i",               "i",                               "engine turns per turn of the wheel", ""},
  {"passes",                         "j",               "j",                               "passes of the chain until a tooth meets the same link", ""},
  {"pitch",                           "p",               "p",                               "pitch of the chain", "mm"},
  {"pitch_diameter",                  "d",               "d",                               "pitch diameter of the sprocket", "mm"},
  {"primary",                         "i_p",             "i_p",                             "ratio of the primary drive", ""},
  {"ratio",                           "F",               "F",                               "trial over base, all factors together", ""},
  {"reading_error",                   "e",               "e",                               "stock reading over true speed, less one", "%"},
  {"rear",                            "z2",              "z_2",                             "teeth of the rear sprocket", ""},
  {"rear_added",                      "Delta_2",         "\\Delta_2",                       "teeth more behind", ""},
  {"rear_contacts",                   "N2",              "N_2",                             "meetings of a rear tooth with the chain", ""},
  {"rear_contacts_change",            "delta_N2",        "\\delta_{N2}",                    "change of the rear teeth's meetings", "%"},
  {"rear_contribution",               "c_rear",          "c_{\\mathrm{rear}}",              "part of the change that the rear sprocket makes", "%"},
  {"rear_factor",                     "f_rear",          "f_{\\mathrm{rear}}",              "what the rear sprocket multiplies by", ""},
  {"rear_pitch_diameter",             "d2",              "d_2",                             "pitch diameter of the rear sprocket", "mm"},
  {"rear_speed_factor",               "g_rear",          "g_{\\mathrm{rear}}",              "what the rear sprocket multiplies road speed by", ""},
  {"rear_tip_diameter",               "d_a2",            "d_{a2}",                          "greatest tip diameter of the rear sprocket", "mm"},
  {"rim_diameter",                    "d_r",             "d_r",                             "nominal rim diameter", "mm"},
  {"road_speed",                      "v",               "v",                               "road speed", "km/h"},
  {"roller_diameter",                 "d_roller",        "d_{\\mathrm{roller}}",            "roller diameter of the chain", "mm"},
  {"rolling_circumference",           "U",               "U",                               "distance rolled in one turn of the wheel", "mm"},
  {"rolling_factor",                  "k_r",             "k_r",                             "rolling circumference over that of the free tyre", ""},
  {"root_diameter",                   "d_f",             "d_f",                             "root diameter of the sprocket", "mm"},
  {"run_angle",                       "phi",             "\\varphi",                        "angle of the straight runs to the line of centres", "deg"},
  {"run_length",                      "l",               "l",                               "length of a straight run", "mm"},
  {"section_height",                  "H",               "H",                               "section height of the tyre", "mm"},
  {"section_height_of_diameter",      "H",               "H",                               "section height of the tyre", "mm"},
  {"section_width",                   "S",               "S",                               "section width of the tyre", "mm"},
  {"slack",                           "h",               "h",                               "hand movement at mid-span, up plus down", "mm"},
  {"slack_by_hand",                   "h",               "h",                               "hand movement at mid-span, up plus down", "mm"},
  {"smallest_centre",                 "C_touch",         "C_{\\mathrm{touch}}",             "centre distance at which the teeth touch", "mm"},
  {"spare_length",                   "u",               "u",                               "chain length beyond that of the tight loop", "mm"},
  {"speed_change",                    "delta_v",         "\\delta_v",                       "change of road speed", "%"},
  {"speed_factor",                    "g",               "g",                               "what one cause multiplies road speed by", ""},
  {"speed_ratio",                     "G",               "G",                               "road speed at equal engine speed, trial over base", ""},
  {"stock_reading",                   "V1,0",            "V_{1,0}",                         "reading with the stock parts", "km/h"},
  {"teeth",                           "z",               "z",                               "teeth of the sprocket", ""},
  {"thrust",                          "F_t",             "F_t",                             "drive force at the contact patch", "N"},
  {"thrust_change",                   "delta_F",         "\\delta_F",                       "change of thrust", "%"},
  {"thrust_change_by_thumb",          "delta_F,thumb",   "\\delta_{F,\\mathrm{thumb}}",     "change of thrust by the trade's rule", "%"},
  {"thrust_change_with_loss",         "delta_F",         "\\delta_F",                       "change of thrust", "%"},
  {"thrust_ratio",                    "F_F",             "F_F",                             "thrust, trial over base", ""},
  {"tip_diameter",                    "d_a",             "d_a",                             "tip diameter of the sprocket", "mm"},
  {"tip_diameter_greatest",           "d_a,max",         "d_{a,\\max}",                     "greatest tip diameter of the sprocket", "mm"},
  {"tip_diameter_least",              "d_a,min",         "d_{a,\\min}",                     "least tip diameter of the sprocket", "mm"},
  {"tread_worn",                      "w",               "w",                               "height worn off the tread", "mm"},
  {"trial_circumference",             "U1",              "U_1",                             "rolling circumference after", "mm"},
  {"trial_efficiency",                "eta1",            "\\eta_1",                         "efficiency of the drive after", ""},
  {"trial_front",                     "z1,1",            "z_{1,1}",                         "teeth of the front sprocket after", ""},
  {"trial_new_circumference",         "U_new,1",         "U_{\\mathrm{new},1}",             "rolling circumference after, with all its tread", "mm"},
  {"trial_ratio",                     "i1",              "i_1",                             "ratio after", ""},
  {"trial_rear",                      "z2,1",            "z_{2,1}",                         "teeth of the rear sprocket after", ""},
  {"trial_rear_pitch_diameter",       "d2,1",            "d_{2,1}",                         "pitch diameter of the rear sprocket after", "mm"},
  {"true_speed",                      "V2",              "V_2",                             "true speed", "km/h"},
  {"turns_ratio",                     "F",               "F",                               "turns over a distance, trial over base", ""},
  {"tyre_contribution",               "c_tyre",          "c_{\\mathrm{tyre}}",              "part of the change that the tyre makes", "%"},
  {"tyre_factor",                     "f_tyre",          "f_{\\mathrm{tyre}}",              "what the tyre multiplies by", ""},
  {"tyre_growth",                     "delta_U",         "\\delta_U",                       "how much taller the tyre is", "%"},
  {"tyre_speed_factor",               "g_tyre",          "g_{\\mathrm{tyre}}",              "what the tyre multiplies road speed by", ""},
  {"wear_contribution",               "c_wear",          "c_{\\mathrm{wear}}",              "part of the change that wear makes", "%"},
  {"wear_factor",                     "f_wear",          "f_{\\mathrm{wear}}",              "what the tread's wear multiplies by", ""},
  {"wear_room",                       "r",               "r",                               "how far the chain can wear until the adjuster ends", "%"},
  {"wear_speed_factor",               "g_wear",          "g_{\\mathrm{wear}}",              "what the tread's wear multiplies road speed by", ""},
  {"wheel_indicated_ratio",           "q",               "q",                               "speedometer reading after over before", ""},
  {"worn_diameter",                   "D_w",             "D_{\\mathrm{w}}",                 "overall diameter with the tread worn down", "mm"},
  {"wrap_front",                      "theta1",          "\\theta_1",                       "angle over which the chain wraps the front sprocket", "deg"},
  {"wrap_rear",                       "theta2",          "\\theta_2",                       "angle over which the chain wraps the rear sprocket", "deg"},
};
// clang-format on

/// The entry of a word; null where the glossary has none.
[[nodiscard]] constexpr const Word* find_word(std::string_view word) noexcept {
  for (const Word& entry : glossary)
    if (entry.word == word) return &entry;
  return nullptr;
}

}  // namespace layshaft

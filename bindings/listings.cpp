// SPDX-License-Identifier: MIT
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/chain/listings.hpp>

namespace layshaft::python {
namespace {

/// The series of a listing and its place there, from 0.
py::tuple key_of(const ChainListing& listing) {
  int place = 0;
  for (const ChainListing& other : chain_listings(ChainSeries(listing.series))) {
    if (other == listing) break;
    ++place;
  }
  return tuple_of(give(listing.series), place);
}

}  // namespace

void register_listings(py::module_& module) {
  Class<ChainListing> type(module, "ChainListing",
                           "What one source prints of one chain, single strand; made by chain_listings().");
  def_property(type, "designation", "The name, as the source prints it.",
               [](const ChainListing& l) { return l.designation; });
  def_property(type, "series", "The ChainSeries that it is a listing of.",
               [](const ChainListing& l) { return ChainSeries(l.series); });
  def_property(type, "pitch", "Pitch.", [](const ChainListing& l) { return l.pitch; });
  def_property(type, "roller_diameter", "Greatest roller diameter.",
               [](const ChainListing& l) { return l.roller_diameter; });
  def_property(type, "inner_width", "Least width between the inner plates.",
               [](const ChainListing& l) { return l.inner_width; });
  def_property(type, "pin_diameter", "Greatest pin diameter, or None.",
               [](const ChainListing& l) { return l.pin_diameter; });
  def_property(type, "inner_plate_height", "Greatest height of the inner plates, or None.",
               [](const ChainListing& l) { return l.inner_plate_height; });
  def_property(type, "tensile_strength", "The least that this source promises, a Force, or None.",
               [](const ChainListing& l) { return l.tensile_strength; });
  def_property(type, "mass_per_length", "A LinearDensity, or None.",
               [](const ChainListing& l) { return l.mass_per_length; });
  def_property(type, "source", "The Source.", [](const ChainListing& l) { return l.source; });
  def_special(type, "__repr__", [](const ChainListing& l) {
    const py::tuple key = key_of(l);
    return "chain_listings(" + py::repr(key[0]).cast<std::string>() + ")[" + py::repr(key[1]).cast<std::string>() + "]";
  });
  def_special(type, "__eq__", [](const ChainListing& l, const py::object& other) {
    return is<ChainListing>(other) && l == as<ChainListing>(other);
  });
  def_special(type, "__hash__", [](const ChainListing& l) { return py::hash(key_of(l)); });
  def_special(type, "__reduce__", [](const ChainListing& l) {
    return tuple_of(py::module_::import("layshaft._core").attr("_chain_listing"), key_of(l));
  });

  def(module, "chain_listings(series)",
      "What every source at hand prints of a chain series: a tuple of ChainListing, the source that counts first at "
      "the front. The series itself has one figure of each.",
      [](const Arguments& given) { return py::object(give_list(chain_listings(given.want<ChainSeries>("series")))); });
  def(module, "_chain_listing(series, place)", "For pickles.", [](const Arguments& given) {
    const auto listings = chain_listings(given.want<ChainSeries>("series"));
    const int place = given.want<int>("place");
    if (place < 0 || static_cast<std::size_t>(place) >= listings.size())
      raise(Error::range("place", std::to_string(place), "0 to " + std::to_string(listings.size() - 1)));
    return py::cast(listings[static_cast<std::size_t>(place)]);
  });
}

}  // namespace layshaft::python

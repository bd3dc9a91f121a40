// SPDX-License-Identifier: MIT
// What works somewhat longer than a call from Python takes. The functions are called where they are bound; here they
// are only compiled, to be fast, ahead of the copies that are small. Workings are not among them: at a few microseconds
// more for each they spare 45 kB of a wheel.
#include <layshaft/io/json.hpp>
#include <layshaft/io/ride_log.hpp>
#include <layshaft/road/coast_down_fit.hpp>
#include <layshaft/road/log_machine.hpp>
#include <layshaft/road/log_use.hpp>
#include <layshaft/tyre/closeness.hpp>

namespace layshaft::python::quick {

using Any = void (*)();
template <class Function>
Any any(Function* function) {
  return reinterpret_cast<Any>(function);
}

extern const Any compiled_here[];
const Any compiled_here[] = {
    any<Result<std::vector<CloseSize>>(const TyreSize&, double, double)>(try_closest_sizes),
    any(try_machine_from_json),
    any<std::string(const Machine&)>(to_json),
    any(try_read_ride_log),
    any<Result<RideUse>(const RideLog&, const RideDrive&)>(try_ride_use),
    any(try_machine_of_log),
    any(try_fit_coast_down),
};

}  // namespace layshaft::python::quick

// SPDX-License-Identifier: MIT
#include <layshaft/layshaft.hpp>

#if LAYSHAFT_EXCEPTIONS
#error "this unit is meant to be built without exceptions"
#endif

int main() {
  const auto good = layshaft::Teeth::make(14);
  const auto bad = layshaft::Teeth::make(0);
  return good && !bad && bad.error().kind() == layshaft::ErrorKind::range ? 0 : 1;
}

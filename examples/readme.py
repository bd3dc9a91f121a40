# SPDX-License-Identifier: MIT
# The README's Python program, line for line; a test holds them together.
import layshaft as ls

before, after = ls.rolling_circumference("120/80-18"), ls.rolling_circumference(ls.TyreSize("120/90-18", use="special"))
loop = ls.ChainLoop("520", front=13, rear=50)
print(f"one turn rolls {after.low / ls.mm:.0f} to {after.high / ls.mm:.0f} mm")
print(f"thrust {100 * ls.thrust_change(48 / 13, before.nominal, 50 / 13, after.nominal):+.1f} %")
print(f"{loop.links('615 mm'):.2f} links at 615 mm")
print(f"axle at {loop.centre(110) / ls.mm:.2f} mm with 110 links")

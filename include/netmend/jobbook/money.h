#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "netmend/base/error.h"

namespace netmend {

/// An exact decimal with four places: an amount of money, or a quantity such as 1.5 hours.
struct Decimal {
  std::int64_t units = 0; ///< of 1/10000

  friend constexpr auto operator<=>(Decimal, Decimal) = default;
};

/// Reads `12`, `12.5`, `0,75`, `-3.10`. Refuses more than four places, anything above 10^12, and all else.
[[nodiscard]] Result<Decimal> parseDecimal(std::string_view text);

/// At least `places` decimal places (0 to 4), more only where the value needs them: 12.50, 0.0125.
[[nodiscard]] std::string toText(Decimal value, int places);

/// Sum, exact; fails where it would leave the range.
[[nodiscard]] Result<Decimal> sum(Decimal a, Decimal b);

/// Product, rounded once to hundredths, halves away from zero, as on an invoice line.
[[nodiscard]] Result<Decimal> product(Decimal quantity, Decimal price);

} // namespace netmend

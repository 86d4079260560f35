#include "netmend/jobbook/money.h"

#include <cctype>

namespace netmend {

namespace {

__extension__ using Wide = __int128;

constexpr std::int64_t unit = 10000;
constexpr std::int64_t largest = 1'000'000'000'000 * unit;

Result<Decimal> inRange(Wide units) {
  if (units > largest || units < -static_cast<Wide>(largest))
    return failure({pattern("core", "amount is too large"), "", "", {}, pattern("core", "less than 10^12")});
  return Decimal{static_cast<std::int64_t>(units)};
}

} // namespace

Result<Decimal> parseDecimal(std::string_view text) {
  const auto refuse = [&] {
    return failure({pattern("core", "not an amount"), "", "", "\"" + std::string(text) + "\"",
                    pattern("core", "a number such as 12.50, with at most four places")});
  };
  std::string_view rest = text;
  const bool negative = rest.starts_with('-');
  if (negative) rest.remove_prefix(1);
  std::int64_t units = 0;
  int places = -1; // none before the point
  bool digits = false;
  for (const char c : rest) {
    if ((c == '.' || c == ',') && places < 0) {
      places = 0;
    } else if (std::isdigit(static_cast<unsigned char>(c)) && places < 4 && units <= largest) {
      units = units * 10 + (c - '0');
      digits = true;
      if (places >= 0) ++places;
    } else {
      return refuse();
    }
  }
  if (!digits) return refuse();
  Wide scaled = units;
  for (int i = places < 0 ? 0 : places; i < 4; ++i)
    scaled *= 10;
  return inRange(negative ? -scaled : scaled);
}

std::string toText(Decimal value, int places) {
  const std::int64_t magnitude = value.units < 0 ? -value.units : value.units;
  std::string fraction = std::to_string(unit + magnitude % unit).substr(1);
  while (static_cast<int>(fraction.size()) > places && fraction.back() == '0')
    fraction.pop_back();
  std::string out = (value.units < 0 ? "-" : "") + std::to_string(magnitude / unit);
  return fraction.empty() ? out : out + "." + fraction;
}

Result<Decimal> sum(Decimal a, Decimal b) {
  return inRange(static_cast<Wide>(a.units) + b.units);
}

Result<Decimal> product(Decimal quantity, Decimal price) {
  const Wide exact = static_cast<Wide>(quantity.units) * price.units; // of 1e-8
  constexpr std::int64_t hundredth = 1'000'000;
  const auto half = exact < 0 ? -hundredth / 2 : hundredth / 2;
  return inRange((exact + half) / hundredth * 100);
}

} // namespace netmend

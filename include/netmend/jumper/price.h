#pragma once

#include <string>

#include "netmend/base/quantity.h"

namespace netmend {

/// What a choice costs, in millimetres of wire laid over free board: a landing of price 5 is worth a detour
/// of 5 mm.
using Price = Quantity<struct PriceTag>;

/// One line of a score: what was counted, in words and numbers, and what it adds.
struct ScoreTerm {
  std::string name; ///< "length", "bends", "landing C12.1" …
  std::string text; ///< "14.2 mm of wire"
  Price price;
  friend bool operator==(const ScoreTerm&, const ScoreTerm&) = default;
};

} // namespace netmend

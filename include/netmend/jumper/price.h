#pragma once

#include "netmend/base/quantity.h"

namespace netmend {

/// What a choice costs, in millimetres of wire laid over free board: a landing of price 5 is worth a detour
/// of 5 mm.
using Price = Quantity<struct PriceTag>;

} // namespace netmend

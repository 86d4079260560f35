#pragma once

#include <nlohmann/json.hpp>

#include "netmend/netgraph/place_name.h"

namespace netmend {

/// A place's name as the book keeps it.
[[nodiscard]] nlohmann::json placeJson(const PlaceName& name);
/// Throws what nlohmann_json or SOCI throw for a damaged entry.
[[nodiscard]] PlaceName placeFrom(const nlohmann::json& in);

} // namespace netmend

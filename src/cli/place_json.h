#pragma once

#include <nlohmann/json.hpp>

#include "netmend/casework/fault_case.h"
#include "netmend/isolation/short_places.h"
#include "netmend/jumper/landing.h"

/// Places in answers: a name for people, and for scripts a handle, the object, its layer and position, so
/// that nobody has to read the name.
namespace netmend {

[[nodiscard]] nlohmann::json placeJson(const FaultCase& fault, std::size_t probePlace);
[[nodiscard]] nlohmann::json placeJson(const Board& board, const FaultCase& fault, const FaultPlace& place);
/// Where a lead can be held, and where a short may be.
[[nodiscard]] nlohmann::json placeJson(const ProbePlace& point, const PlaceNames& places);
[[nodiscard]] nlohmann::json placeJson(const ShortPlace& place, const PlaceNames& places);
[[nodiscard]] nlohmann::json placeJson(const Landing& landing, const PlaceNames& places);

} // namespace netmend

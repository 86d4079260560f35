#pragma once

#include <nlohmann/json.hpp>

#include "netmend/casework/fault_case.h"
#include "netmend/jumper/landing.h"

/// Places in answers: a name for people, and for scripts a handle, the object, its layer and position, so
/// that nobody has to read the name.
namespace netmend {

[[nodiscard]] nlohmann::json placeJson(const FaultCase& fault, std::size_t probePlace);
[[nodiscard]] nlohmann::json placeJson(const Board& board, const FaultCase& fault, const FaultPlace& place);
[[nodiscard]] nlohmann::json placeJson(const Landing& landing, const PlaceNames& places);

} // namespace netmend

#pragma once

#include <variant>

#include "netmend/board/ids.h"

namespace netmend {

/// What a piece of copper belongs to.
using CopperObject = std::variant<std::monostate, PinId, PadId, TrackId, ViaId, AreaId, PartId>;

} // namespace netmend

#pragma once

#include "netmend/base/id.h"

namespace netmend {

using LayerId = Id<struct LayerTag>;
using PartId = Id<struct PartTag>;
using PinId = Id<struct PinTag>;
using PadId = Id<struct PadTag>;
using NetId = Id<struct NetTag>;
using TrackId = Id<struct TrackTag>;
using ViaId = Id<struct ViaTag>;
using AreaId = Id<struct AreaTag>;
using ZoneId = Id<struct ZoneTag>;
using UnderlayId = Id<struct UnderlayTag>;

/// Ids stay within what every JSON reader keeps exactly (2^53 - 1, RFC 8259 section 6).
inline constexpr std::uint64_t largestId = (std::uint64_t{1} << 53) - 1;

} // namespace netmend

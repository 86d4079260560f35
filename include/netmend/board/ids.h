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

} // namespace netmend

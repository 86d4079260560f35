#pragma once

#include <vector>

#include <QPointF>
#include <QString>

#include "netmend/board/lookup.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// Where the points of a walk lie beside each other, y down: as on the board (seen from its side) where the
/// board knows, else in rows by the letters of their names. Parallel to `points`.
[[nodiscard]] std::vector<QPointF> connectorPlaces(const Lookup* lookup,
                                                   const std::vector<ProbePoint>& points);

/// "J4 pin 11", as one would say it.
[[nodiscard]] QString spokenPoint(const ProbePoint& point);

} // namespace netmend

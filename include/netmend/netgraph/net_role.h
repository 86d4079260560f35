#pragma once

#include <string_view>

#include "netmend/board/board.h"

namespace netmend {

/// What a net is for: as the board says; otherwise guessed from its name, and marked so. A name that tells
/// nothing (`Net-(R5-Pad2)`, `KEY_COL3`, none) leaves the role unknown.
[[nodiscard]] Fact<NetRole> roleOf(const Net& net);

/// The guess alone. Only the name's last step counts in names with a path (`/power/+3V3`). Ground: `GND`,
/// `AGND`, `GND_PWR`, `VSS`, `0V`, `EARTH`; supply: `VCC`, `VDD_IO`, `+3V3`, `-12V`, `1V8`, `VBAT`, `5V_USB`.
/// Common practice, no source.
[[nodiscard]] Fact<NetRole> roleFromName(std::string_view name);

} // namespace netmend

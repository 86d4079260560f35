#pragma once

namespace netmend {

enum class LandingKind { testPad, partTerminal, via, tentedVia, outerTrack, connectorPin };

} // namespace netmend

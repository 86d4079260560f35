#pragma once

#include <string>

#include "fault_case.h"
#include "netmend/casework/short_case.h"

namespace netmend {

/// The board with the line lit, the suspects of the reported set marked, as PNG.
[[nodiscard]] Result<void> drawSuspects(const std::string& file, const Board& board, const FaultCase& fault);

/// The board with the drop predicted along a shorted line, as PNG.
[[nodiscard]] Result<void> drawDrop(const std::string& file, const PlaceNames& places, const ShortCase& found,
                                    const DropPattern& pattern);

/// The board with the line lit, the break, landings and the jumper's way, as PNG.
[[nodiscard]] Result<void> drawJumper(const std::string& file, const PlaceNames& places,
                                      const FaultCase& fault, const JumperProposal& proposal);

} // namespace netmend

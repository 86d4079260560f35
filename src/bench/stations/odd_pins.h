#pragma once

#include <optional>
#include <vector>

#include "bench/widgets/odd_strip.h"
#include "station.h"

/// Which pins the strip of odd ones shows.
namespace netmend {

/// All pins of the job that read odd when they were walked, in the order they were first read, so that each
/// keeps its key; what the proof read since says whether it is mended.
[[nodiscard]] std::vector<OddPin> oddPins(const Desk& desk);
/// The one whose line is looked at.
[[nodiscard]] std::optional<std::size_t> chosenOddPin(const Desk& desk, const std::vector<OddPin>& pins);
/// Both into the strip.
void fillOddStrip(OddStrip& strip, const Desk& desk);
/// Chooses the line of this odd pin.
void chooseOddPin(const Desk& desk, const OddPin& pin);

} // namespace netmend

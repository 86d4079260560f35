#pragma once

#include <span>

#include "netmend/probing/verdict.h"

namespace netmend {

/// Expected values from known-good walks: at each point the boards' mean with a spread that points of the
/// same kind lend each other (docs/methods/probing.md), and what was entered by hand, which wins. Rising
/// readings and walks not marked good do not count. `lookup` (may be null) tells kinds; walks must have been
/// matched to its board (`matchToBoard`) for pins to be matched by id.
///
/// A walk that is said to be of a good board and is not like the others, where three others at least were
/// read at the same points, is set aside (`ExpectedTable::setAside`). Where only two or three boards were
/// read and one of them reads as no good board beside the others does, none is believed alone
/// (`Expected::disagree`).
[[nodiscard]] ExpectedTable expectedFromWalks(std::span<const Walk> walks, const Lookup* lookup,
                                              const ProbingData& data);

} // namespace netmend

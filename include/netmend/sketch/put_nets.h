#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "netmend/board/edit.h"
#include "netmend/board/lookup.h"

/// Edits that say which pins are of one net, and what the net is.
namespace netmend {

/// What joining did to nets that were there.
struct Joined {
  Edit edit;
  NetId net;
  std::vector<std::string> swallowed; ///< names of other nets that are of this one now
  bool groundToSupply = false;        ///< nets of these two roles have become one
};

/// All of them are of one net: the first one's that has a net, whose name stays unless it has none. `origin`:
/// said by a person, or measured. Of fewer than two pins that are on the board nothing.
[[nodiscard]] Joined joinPins(const Lookup& lookup, const std::vector<PinId>& pins, Origin origin);
/// The same with nets, of which only copper may be known; a single pin without a net gets one.
[[nodiscard]] Joined joinAll(const Lookup& lookup, const std::vector<PinId>& pins,
                             const std::vector<NetId>& nets, Origin origin);

/// Nobody knows any more what the pin is joined to. A net that nothing is left of goes.
[[nodiscard]] Edit separatePin(const Lookup& lookup, PinId pin);

/// Gives the net this name; where another one has it, both become one.
[[nodiscard]] Joined nameNet(const Lookup& lookup, NetId net, const std::string& name);
/// The same for a pin, which gets a net if it has none.
[[nodiscard]] Joined nameNet(const Lookup& lookup, PinId pin, const std::string& name);

[[nodiscard]] Edit setRole(const Board& board, NetId net, NetRole role);

/// What a pasted list says: pins with the names of their nets.
struct PinNames {
  std::vector<std::pair<PinId, std::string>> named;
  std::vector<std::string> unknown; ///< lines whose pin is not on the board, as they were written
};
/// One pin a line, `J4.3` or, of `part`, `3`, then the net's name, after spaces, tab, comma or semicolon. A
/// line without a name, and a first line of headings, are left out; `-` and `NC` are joined to nothing, with
/// an empty name.
[[nodiscard]] PinNames readPinNames(const Lookup& lookup, PartId part, std::string_view text);
/// As the list says, over what was there.
[[nodiscard]] Edit putPinNames(const Lookup& lookup, const PinNames& names);

/// What the next ones of a row look like: from two groups of pins that were joined, how each pin's part and
/// number go on, until a pin is not there, or has a net. `R21.2 U1.5` and `R22.2 U1.6` are followed by
/// `R23.2 U1.7`. Nothing where the groups have no such step in common.
[[nodiscard]] std::vector<std::vector<PinId>>
seriesAfter(const Lookup& lookup, const std::vector<PinId>& before, const std::vector<PinId>& last);

} // namespace netmend

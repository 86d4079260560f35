#pragma once

#include <string>
#include <string_view>

#include "netmend/board/edit.h"
#include "netmend/board/lookup.h"
#include "netmend/sketch/chip_sizes.h"
#include "netmend/sketch/pin_array.h"

/// Edits that put parts on a board, move them and take them off. What a person says or clicks is of origin
/// `user`; what follows from what is usual is `guessed`.
namespace netmend {

/// What a part is called, and what it is.
struct PartLabel {
  std::string reference;
  PartKind kind = PartKind::other;
  std::string value; ///< empty: not known
  friend bool operator==(const PartLabel&, const PartLabel&) = default;
};

struct PartPut {
  PartId part;
  Edit edit;
};

/// `R28` is a resistor; nothing for letters that stand for no kind. Reference designators of IEEE 315 and
/// IEC 81346-2 as boards print them (common practice, no source, where they differ).
[[nodiscard]] std::optional<PartKind> kindOfPrefix(std::string_view letters);
/// `R` and 28; the number is none where none stands at the end, or one of more than nine digits.
struct ReferenceParts {
  std::string letters;
  std::optional<unsigned long> number;
};
[[nodiscard]] ReferenceParts partsOfReference(std::string_view reference);
/// The letters with the next number that no part has: after the highest, or from `from` on.
[[nodiscard]] std::string nextReference(const Board& board, std::string_view letters,
                                        std::optional<unsigned long> from = {});

/// A connector or chip. A part of this reference that has pins and no pads (a list of pins that was typed)
/// gets its places and keeps its pins. Fails where such a part has other pins, or has places already.
[[nodiscard]] Result<PartPut> putArray(const Lookup& lookup, const PartLabel& label, const PinArray& array,
                                       const PlacedArray& placed, Side side);

/// A part of two terminals by the places of its ends, `first` being pin 1. `size` is of the code that was
/// named, or a guess from how far apart the ends are. Fails where both ends are the same place, or the
/// reference is on the board.
struct TwoEnds {
  Point first;
  Point second;
  Side side = Side::top;
};
[[nodiscard]] Result<PartPut> putTwoTerminal(const Board& board, const PartLabel& label, const ChipSize& size,
                                             bool sizeGuessed, const TwoEnds& ends);

/// A ring with a lid: its outline and, if known, how high the lid lies. Parts within are under it.
struct ShieldFrame {
  Ring outline;
  std::optional<Length> height;
  Side side = Side::top;
};
[[nodiscard]] Result<PartPut> putShield(const Board& board, const std::string& reference,
                                        const ShieldFrame& frame);

/// Any other part, by its outline.
[[nodiscard]] Result<PartPut> putBody(const Board& board, const PartLabel& label, const Ring& outline,
                                      Side side);

/// A round pad of no part, which is found by its name. Fails where a free point has it.
[[nodiscard]] Result<Edit> putTestPad(const Lookup& lookup, const std::string& name, Point at,
                                      Length diameter, Side side);

/// The part with all that it has, its zones too. Empty for a part that is not there.
[[nodiscard]] Edit removePart(const Lookup& lookup, PartId part);
/// Moves it with its pads and body; tracks stay.
[[nodiscard]] Edit movePart(const Lookup& lookup, PartId part, Point by);
/// Whether it is on the board, or missing.
[[nodiscard]] Edit setFitted(const Board& board, PartId part, bool fitted);
/// Whether the pin's pads are torn off.
[[nodiscard]] Edit setGone(const Lookup& lookup, PinId pin, bool gone);

} // namespace netmend

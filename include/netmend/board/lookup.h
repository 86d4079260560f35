#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "netmend/board/board.h"

namespace netmend {

/// Answers "which pads has this pin, which pins has this part or net" in O(log n) for one state of a board
/// (finding an id's place; the answer itself is stored). An id that is not on the board has an empty list.
/// Dense: vectors run parallel to the tables. The board must outlive it and stay unchanged.
class Lookup {
public:
  explicit Lookup(const Board& board);
  /// Refused: the board would be gone before the first question.
  explicit Lookup(Board&&) = delete;

  [[nodiscard]] const std::vector<PadId>& padsOf(PinId pin) const;
  [[nodiscard]] const std::vector<PinId>& pinsOf(PartId part) const;
  [[nodiscard]] const std::vector<PinId>& pinsOf(NetId net) const;
  /// All nets with this name (labels may repeat), in the order of their ids.
  [[nodiscard]] std::vector<NetId> netsNamed(std::string_view name) const;
  /// Pins written `J4.11` (reference, point, pin name); a lone name finds free points.
  /// References and names may repeat and contain points, hence a list, in the order of their ids.
  [[nodiscard]] std::vector<PinId> pinsLabelled(std::string_view label) const;
  [[nodiscard]] const Board& board() const { return *board_; }

private:
  const Board* board_;
  std::vector<std::vector<PadId>> padsByPin_;
  std::vector<std::vector<PinId>> pinsByPart_;
  std::vector<std::vector<PinId>> pinsByNet_;
  // Keys are the board's own strings.
  std::unordered_map<std::string_view, std::vector<NetId>> netsByName_;
  std::unordered_map<std::string_view, std::vector<PartId>> partsByReference_;
  std::unordered_map<std::string_view, std::vector<PinId>> freePinsByName_;
};

/// `J4.11`, or the bare name of a free point; empty for a pin that is not on the board.
[[nodiscard]] std::string pinLabel(const Board& board, PinId pin);
/// The middle of the pin's first pad with a known position.
[[nodiscard]] Fact<Point> positionOf(const Lookup& lookup, PinId pin);

} // namespace netmend

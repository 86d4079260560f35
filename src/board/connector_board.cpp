#include "netmend/board/connector_board.h"

#include <string_view>

namespace netmend {

Result<Board> makeConnectorBoard(std::string reference, std::size_t pins, std::size_t rows) {
  constexpr std::string_view letters = "ABCDEFGHJKLMNPRTUVWY";
  constexpr std::size_t mostPins = 10'000;
  if (pins == 0 || pins > mostPins)
    return failure({"a connector has from 1 to 10000 pins", "", "", std::to_string(pins)});
  if (rows == 0 || rows > letters.size())
    return failure({"a connector has from 1 to " + std::to_string(letters.size()) + " rows", "", "",
                    std::to_string(rows)});
  if (pins % rows != 0) {
    return failure({"the pins do not fill the rows", "", "",
                    std::to_string(pins) + " pins in " + std::to_string(rows) + " rows"});
  }
  Board board;
  Part part;
  part.id = board.newId<PartId>();
  part.reference = std::move(reference);
  part.kind = fromUser(PartKind::connector);
  part.origin = Origin::user;
  const std::size_t perRow = pins / rows;
  for (std::size_t i = 0; i < pins; ++i) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = part.id;
    pin.name =
        (rows > 1 ? std::string(1, letters[i / perRow]) : std::string()) + std::to_string(i % perRow + 1);
    pin.origin = Origin::user;
    board.pins.put(std::move(pin));
  }
  board.parts.put(std::move(part));
  return board;
}

} // namespace netmend

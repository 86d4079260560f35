#include "netmend/board/connector_board.h"

#include <algorithm>
#include <string_view>

#include "netmend/board/edit.h"

namespace netmend {

Result<Board> makeConnectorBoard(std::string reference, std::size_t pins, std::size_t rows) {
  Board board;
  if (auto added = addConnector(board, std::move(reference), pins, rows); !added)
    return failure(added.error());
  return board;
}

Result<void> addConnector(Board& board, std::string reference, std::size_t pins, std::size_t rows) {
  constexpr std::string_view letters = "ABCDEFGHJKLMNPRTUVWY";
  constexpr std::size_t mostPins = 10'000;
  if (pins == 0 || pins > mostPins)
    return failure({pattern("core", "a connector has from 1 to 10000 pins"), "", "", std::to_string(pins)});
  if (rows == 0 || rows > letters.size())
    return failure({said(pattern("core", "a connector has from 1 to {} rows"), letters.size()), "", "",
                    std::to_string(rows)});
  if (pins % rows != 0) {
    return failure({pattern("core", "the pins do not fill the rows"), "", "",
                    said(pattern("core", "{} pins in {} rows"), pins, rows)});
  }
  const auto named = [&](const Part& part) { return part.reference == reference; };
  if (std::any_of(board.parts.begin(), board.parts.end(), named))
    return failure({pattern("core", "is on this board already"), "", "", reference,
                    pattern("core", "a reference that no part has yet")});
  Board after = board;
  Edit edit;
  Part part;
  part.id = after.newId<PartId>();
  part.reference = std::move(reference);
  part.kind = fromUser(PartKind::connector);
  part.origin = Origin::user;
  const std::size_t perRow = pins / rows;
  for (std::size_t i = 0; i < pins; ++i) {
    Pin pin;
    pin.id = after.newId<PinId>();
    pin.part = part.id;
    pin.name =
        (rows > 1 ? std::string(1, letters[i / perRow]) : std::string()) + std::to_string(i % perRow + 1);
    pin.origin = Origin::user;
    edit.put(std::move(pin));
  }
  edit.put(std::move(part));
  if (auto done = apply(after, edit); !done) return failure(done.error());
  board = std::move(after);
  return {};
}

} // namespace netmend

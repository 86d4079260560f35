#include "netmend/casework/loaded_board.h"

#include "netmend/board/exchange/import.h"

namespace netmend {

LoadedBoard loadedBoard(Board board) {
  LoadedBoard out;
  out.board = std::make_unique<const Board>(std::move(board));
  out.lookup = std::make_unique<const Lookup>(*out.board);
  return out;
}

Result<LoadedBoard> loadBoard(const std::filesystem::path& file, const std::string& inArchive) {
  ImportOptions options;
  options.inArchive = inArchive;
  auto imported = importBoard(file, options);
  if (!imported) return failure(imported.error());
  LoadedBoard out = loadedBoard(std::move(imported->board));
  out.notices = std::move(imported->notices);
  return out;
}

Result<PinId> pinLabelled(const Lookup& lookup, const std::string& label) {
  const auto pins = lookup.pinsLabelled(label);
  if (pins.empty())
    return failure(
        {pattern("core", "no such pin on this board"), "", "", label, pattern("core", "for example J4.11")});
  if (pins.size() > 1) {
    return failure({pattern("core", "pin label is not unique on this board"), "", "",
                    said(pattern("core", "{}, {} times"), label, pins.size()),
                    pattern("core", "a label that stands once")});
  }
  return pins.front();
}

Result<NetId> netNamed(const Lookup& lookup, const std::string& name) {
  const auto nets = lookup.netsNamed(name);
  if (nets.empty())
    return failure({pattern("core", "no such net on this board"), "", "", name,
                    pattern("core", "a name that board summary shows")});
  if (nets.size() > 1)
    return failure({pattern("core", "net name is not unique on this board"), "", "", name,
                    pattern("core", "a name that stands once")});
  return nets.front();
}

} // namespace netmend

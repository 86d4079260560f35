#include "netmend/casework/board_under_work.h"

#include "netmend/board/exchange/import.h"

namespace netmend {

namespace {

constexpr double readShare = 0.4; ///< of the time that opening a board takes

Error stopped(const std::filesystem::path& file) {
  return {pattern("core", "reading was stopped"), file.string()};
}

} // namespace

BoardUnderWork underWork(Board board, const Progress& progress) {
  return underWork(std::make_shared<const Board>(std::move(board)), progress);
}

BoardUnderWork underWork(std::shared_ptr<const Board> board, const Progress& progress) {
  BoardUnderWork out;
  out.board = std::move(board);
  out.lookup = std::make_shared<const Lookup>(*out.board);
  out.places = std::make_shared<const PlaceNames>(*out.lookup);
  out.graph = std::make_shared<const BoardGraph>(buildBoardGraph(*out.board, progress.part(readShare, 1.0)));
  return out;
}

Result<BoardUnderWork> openBoard(const std::filesystem::path& file, const std::string& inArchive,
                                 const Progress& progress) {
  ImportOptions options;
  options.inArchive = inArchive;
  options.progress = progress.part(0.0, readShare);
  auto imported = importBoard(file, options);
  if (!imported) return failure(imported.error());
  BoardUnderWork out = underWork(std::move(imported->board), progress);
  if (progress.stopped()) return failure(stopped(file));
  out.file = file;
  out.digest = std::move(imported->digest);
  out.formerUuid = std::move(imported->formerUuid);
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

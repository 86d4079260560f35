#include "opened_file.h"

#include <array>
#include <fstream>
#include <utility>

#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/exchange/zip.h"
#include "netmend/board/kept_board.h"

namespace netmend {

namespace {

bool beginsLikeZip(const std::filesystem::path& file) {
  std::array<char, 4> beginning{};
  std::ifstream in(file, std::ios::binary);
  in.read(beginning.data(), beginning.size());
  return looksLikeZip({beginning.data(), static_cast<std::size_t>(in.gcount())});
}

} // namespace

Result<OpenedFile> openFile(const std::filesystem::path& file, const std::string& inArchive,
                            const std::filesystem::path& folder, const Progress& progress) {
  const auto opened = [](Result<BoardUnderWork> board) -> Result<OpenedFile> {
    if (!board) return failure(std::move(board.error()));
    return OpenedFile{std::move(*board), {}};
  };
  // What was drawn and not saved when the program was killed.
  std::error_code ignored;
  if (std::filesystem::exists(journalOf(file), ignored))
    if (auto kept = KeptBoard::open(file)) (void)kept->save();
  if (!beginsLikeZip(file)) return opened(openBoard(file, {}, progress));
  progress(pattern("core", "reading"), 0.1);
  const auto content = readFile(file);
  if (!content) return failure(content.error());
  if (inArchive.empty()) {
    const auto listing = boardsInZip(*content, file.string());
    if (!listing) return failure(listing.error());
    OpenedFile choice;
    for (const ZippedBoard& board : listing->boards)
      choice.offered.push_back(board.name);
    if (choice.offered.size() > 1) return choice;
  }
  ImportOptions options;
  options.inArchive = inArchive;
  options.progress = progress;
  const auto imported = importBoard(ImportSource{*content, file.string(), options});
  if (!imported) return failure(imported.error());
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) return failure({said(pattern("core", "cannot be made: {}"), error.message()), folder.string()});
  // The same board of the same archive is the same file, also one that was taken out under its former uuid.
  const auto named = [&](const std::string& uuid) {
    return folder / (file.stem().string() + "-" + uuid.substr(0, 8) + ".netmend-board.json");
  };
  auto out = named(imported->formerUuid);
  if (imported->formerUuid.empty() || !std::filesystem::exists(out, error)) {
    out = named(imported->board.info.uuid);
    if (auto written = writeBoardFile(out, imported->board); !written) return failure(written.error());
  }
  auto board = openBoard(out, {}, progress);
  if (board) board->notices = imported->notices;
  return opened(std::move(board));
}

} // namespace netmend

#include "netmend/board/exchange/import.h"

#include <algorithm>
#include <array>
#include <cctype>

#include <fmt/format.h>

#include "csv_board.h"
#include "ipc_board.h"
#include "kicad_board.h"
#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "netmend/board/edit.h"
#include "text.h"

namespace netmend {

namespace {

constexpr std::size_t mostNotices = 100;

Result<Imported> readOwnBoard(const ImportSource& source) {
  auto board = boardFromText(source.content, source.file);
  if (!board) return failure(board.error());
  return Imported{std::move(*board), {}};
}

constexpr std::array formats{
    BoardFormat{"netmend", "Netmend board", ".json", looksLikeBoardFile, readOwnBoard},
    BoardFormat{"kicad", "KiCad board, version 3 on", ".kicad_pcb", looksLikeKicadBoard, readKicadBoard},
    BoardFormat{"ipc-d-356a", "IPC-D-356A electrical test data", ".ipc .d356 .356 .net", looksLikeTestData,
                readTestData},
    BoardFormat{"csv", "table of pins (CSV)", ".csv .tsv .txt", looksLikePinTable, readPinTable},
};

std::string extensionOf(const std::string& file) {
  std::string extension = std::filesystem::path(file).extension().string();
  std::transform(extension.begin(), extension.end(), extension.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return extension;
}

bool hasWord(std::string_view words, std::string_view word) {
  while (!words.empty()) {
    const std::size_t end = std::min(words.find(' '), words.size());
    if (words.substr(0, end) == word) return true;
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return false;
}

std::string formatNames() {
  std::string names;
  for (const BoardFormat& f : formats)
    names += (names.empty() ? "" : ", ") + std::string(f.name);
  return names;
}

Result<const BoardFormat*> chosenFormat(const ImportSource& source) {
  const std::string& wanted = source.options.format;
  if (!wanted.empty()) {
    const auto found =
        std::find_if(formats.begin(), formats.end(), [&](const BoardFormat& f) { return f.name == wanted; });
    if (found != formats.end()) return &*found;
    return failure({"unknown board format", source.file, "", wanted, formatNames()});
  }
  const std::string_view content = withoutMark(source.content);
  for (const BoardFormat& f : formats)
    if (f.recognises(content)) return &f;
  const std::string extension = extensionOf(source.file);
  for (const BoardFormat& f : formats)
    if (!extension.empty() && hasWord(f.extensions, extension)) return &f;
  return failure({"not a board file of a known format", source.file, "", "", formatNames()});
}

std::uint64_t mixed(std::uint64_t x) { // finaliser of splitmix64 (Steele, Lea, Flood 2014)
  x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9U;
  x = (x ^ (x >> 27)) * 0x94D049BB133111EBU;
  return x ^ (x >> 31);
}

/// The same file gives the same identifier: a version 8 UUID (RFC 9562) from a hash of the content.
std::string uuidFrom(std::string_view content) {
  const std::uint64_t a = mixed(std::hash<std::string_view>{}(content));
  const std::uint64_t b = mixed(a ^ content.size());
  return fmt::format("{:08x}-{:04x}-8{:03x}-{:04x}-{:012x}", a >> 32, (a >> 16) & 0xFFFF, a & 0xFFF,
                     0x8000 | ((b >> 48) & 0x3FFF), b & 0xFFFFFFFFFFFF);
}

void complete(Imported& imported, const ImportSource& source) {
  BoardInfo& info = imported.board.info;
  if (info.uuid.empty()) info.uuid = uuidFrom(source.content);
  if (!info.name.known() && !source.file.empty())
    info.name = guessed(std::filesystem::path(source.file).stem().string());
  if (imported.notices.size() <= mostNotices) return;
  const std::size_t more = imported.notices.size() - mostNotices;
  imported.notices.resize(mostNotices);
  imported.notices.push_back(fmt::format("and {} more notices", more));
}

} // namespace

std::span<const BoardFormat> boardFormats() {
  return formats;
}

Result<Imported> importBoard(const ImportSource& source) {
  if (source.content.empty()) return failure({"the file is empty", source.file});
  if (source.content.starts_with("\xFF\xFE") || source.content.starts_with("\xFE\xFF"))
    return failure({"is UTF-16 text", source.file, "", "", "text in UTF-8"});
  const auto format = chosenFormat(source);
  if (!format) return failure(format.error());
  if (auto fault = textFault(source.content, source.file)) return failure(std::move(*fault));
  ImportSource text = source;
  text.content = withoutMark(source.content);
  auto imported = (*format)->read(text);
  if (!imported) return imported;
  complete(*imported, source);
  if (auto sound = checkReferences(imported->board); !sound) {
    Error error = sound.error();
    error.file = source.file;
    return failure(std::move(error));
  }
  return imported;
}

Result<Imported> importBoard(const std::filesystem::path& path, const ImportOptions& options) {
  const auto content = readFile(path);
  if (!content) return failure(content.error());
  return importBoard(ImportSource{*content, path.string(), options});
}

} // namespace netmend

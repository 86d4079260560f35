#include "netmend/board/exchange/import.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <fstream>
#include <optional>

#include <fmt/format.h>

#include "csv_board.h"
#include "formats.h"
#include "ipc_board.h"
#include "kicad_board.h"
#include "netmend/base/digest.h"
#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "netmend/board/exchange/zip.h"
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
                readTestData, true},
    BoardFormat{"csv", "table of pins (CSV)", ".csv .tsv .txt", looksLikePinTable, readPinTable},
};

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

const BoardFormat* formatByExtension(const std::string& file) {
  const std::string extension = lastExtension(file);
  const auto found = std::find_if(formats.begin(), formats.end(), [&](const BoardFormat& f) {
    return !extension.empty() && hasWord(f.extensions, extension);
  });
  return found != formats.end() ? &*found : nullptr;
}

Result<const BoardFormat*> chosenFormat(const ImportSource& source) {
  const std::string& wanted = source.options.format;
  if (!wanted.empty()) {
    const auto found =
        std::find_if(formats.begin(), formats.end(), [&](const BoardFormat& f) { return f.name == wanted; });
    if (found != formats.end()) return &*found;
    return failure({pattern("core", "unknown board format"), source.file, "", wanted, formatNames()});
  }
  if (const BoardFormat* found = formatByContent(source.content)) return found;
  if (const BoardFormat* found = formatByExtension(source.file)) return found;
  return failure({pattern("core", "not a board file of a known format"), source.file, "", {}, formatNames()});
}

/// The same file gives the same identifier: a version 8 UUID (RFC 9562) from a hash of the content.
std::string uuidFrom(std::string_view content) {
  const std::string hash = sha256(content);
  const auto part = [&](std::size_t from, std::size_t digits) { return hash.substr(from, digits); };
  // The variant's two bits are 1 and 0.
  const int variant = std::stoi(part(16, 1), nullptr, 16);
  return fmt::format("{}-{}-8{}-{:x}{}-{}", part(0, 8), part(8, 4), part(13, 3), 8 | (variant & 3),
                     part(17, 3), part(20, 12));
}

std::uint64_t mixed(std::uint64_t x) { // finaliser of splitmix64 (Steele, Lea, Flood 2014)
  x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9U;
  x = (x ^ (x >> 27)) * 0x94D049BB133111EBU;
  return x ^ (x >> 31);
}

/// As it was until 2026-11: from a hash that another standard library would make differently.
std::string formerUuidFrom(std::string_view content) {
  const std::uint64_t a = mixed(std::hash<std::string_view>{}(content));
  const std::uint64_t b = mixed(a ^ content.size());
  return fmt::format("{:08x}-{:04x}-8{:03x}-{:04x}-{:012x}", a >> 32, (a >> 16) & 0xFFFF, a & 0xFFF,
                     0x8000 | ((b >> 48) & 0x3FFF), b & 0xFFFFFFFFFFFF);
}

void complete(Imported& imported, const ImportSource& source) {
  BoardInfo& info = imported.board.info;
  if (info.uuid.empty()) {
    info.uuid = uuidFrom(source.content);
    imported.formerUuid = formerUuidFrom(source.content);
  }
  if (const std::string stem = std::filesystem::path(source.file).stem().string();
      !info.name.known() && !stem.empty() && !textFault(stem, {}))
    info.name = guessed(stem);
  if (imported.notices.size() <= mostNotices) return;
  const std::size_t more = imported.notices.size() - mostNotices;
  imported.notices.resize(mostNotices);
  imported.notices.push_back(said(pattern("core", "and {} more notices"), more));
}

/// A table that is too large is refused by its beginning, before it is in memory.
std::optional<Error> largeTable(const std::filesystem::path& path, const ImportOptions& options) {
  std::error_code ignored;
  const auto size = std::filesystem::file_size(path, ignored);
  if (ignored || size <= mostTableBytes) return std::nullopt;
  std::ifstream in(path, std::ios::binary);
  std::string beginning(64u << 10, '\0');
  in.read(beginning.data(), static_cast<std::streamsize>(beginning.size()));
  beginning.resize(static_cast<std::size_t>(in.gcount()));
  const auto format = chosenFormat({beginning, path.string(), options});
  const bool table = (format && (*format)->read == readPinTable) || isUtf16(beginning);
  if (!table) return std::nullopt;
  return tableTooLarge(path.string(), size);
}

Result<Imported> importZipped(const ImportSource& source) {
  const auto inside = boardFileInZip(source.content, source.file, source.options.inArchive);
  if (!inside) return failure(inside.error());
  auto imported = importBoard(ImportSource{inside->content, inside->name, source.options});
  if (!imported) {
    Error& error = imported.error();
    error.place.inside = inside->name;
    error.file = source.file;
    return imported;
  }
  imported->notices.insert(imported->notices.begin(),
                           said(pattern("core", "read from the archive: {}"), inside->name));
  return imported;
}

} // namespace

const BoardFormat* formatByContent(std::string_view content) {
  std::string utf8;
  if (isUtf16(content)) {
    auto converted = utf8FromUtf16(content, {});
    if (!converted) return nullptr;
    utf8 = std::move(*converted);
    content = utf8;
  }
  content = withoutMark(content);
  const auto found = std::find_if(formats.begin(), formats.end(),
                                  [&](const BoardFormat& f) { return f.recognises(content); });
  return found != formats.end() ? &*found : nullptr;
}

std::string lastExtension(const std::string& file) {
  std::string extension = std::filesystem::path(file).extension().string();
  std::transform(extension.begin(), extension.end(), extension.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return extension;
}

bool hasBoardExtension(const std::string& file) {
  return formatByExtension(file) != nullptr;
}

Result<Imported> importBoard(const ImportSource& source) {
  if (source.content.empty()) return failure({pattern("core", "the file is empty"), source.file});
  if (source.options.progress.stopped())
    return failure({pattern("core", "reading was stopped"), source.file});
  if (looksLikeZip(source.content)) {
    auto imported = importZipped(source);
    if (imported) imported->digest = sha256(source.content);
    return imported;
  }
  ImportSource text = source;
  std::string utf8;
  const bool utf16 = isUtf16(source.content);
  if (utf16) {
    auto converted = utf8FromUtf16(source.content, source.file);
    if (!converted) return failure(std::move(converted.error()));
    utf8 = std::move(*converted);
    text.content = utf8;
  }
  const auto format = chosenFormat(text);
  if (!format) return failure(format.error());
  // Spreadsheets write their tables so; of no other format there is a writer that does.
  if (utf16 && (*format)->read != readPinTable)
    return failure(
        {pattern("core", "is UTF-16 text"), source.file, "", {}, pattern("core", "text in UTF-8")});
  if (!(*format)->mendsText)
    if (auto fault = textFault(text.content, source.file)) return failure(std::move(*fault));
  text.content = withoutMark(text.content);
  auto imported = (*format)->read(text);
  if (!imported) return imported;
  complete(*imported, source);
  imported->digest = sha256(source.content);
  // Own files hold what can be written: they are spared the time.
  const bool own = (*format)->read == readOwnBoard;
  if (auto sound = own ? Result<void>{} : checkWritable(imported->board); !sound) {
    sound.error().file = source.file;
    return failure(std::move(sound.error()));
  }
  return imported;
}

Result<Imported> importBoard(const std::filesystem::path& path, const ImportOptions& options) {
  if (auto tooLarge = largeTable(path, options)) return failure(std::move(*tooLarge));
  const auto content = readFile(path);
  if (!content) return failure(content.error());
  return importBoard(ImportSource{*content, path.string(), options});
}

} // namespace netmend

#include "netmend/board/exchange/zip.h"

#include <algorithm>
#include <array>
#include <memory>
#include <optional>

#include <zip.h>

#include "folded_notices.h"
#include "formats.h"
#include "text.h"

namespace netmend {

namespace {

struct ArchiveEnd {
  void operator()(zip_t* archive) const { zip_discard(archive); }
};
using Archive = std::unique_ptr<zip_t, ArchiveEnd>;

struct FileEnd {
  void operator()(zip_file_t* file) const { zip_fclose(file); }
};

Result<Archive> opened(std::string_view content, const std::string& file) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* source = zip_source_buffer_create(content.data(), content.size(), 0, &error);
  zip_t* archive = source != nullptr ? zip_open_from_source(source, ZIP_RDONLY, &error) : nullptr;
  if (archive == nullptr) {
    zip_source_free(source);
    Error failed{pattern("core", "is no archive that can be read"), file, "",
                 asItIs(zip_error_strerror(&error)), pattern("core", "a ZIP archive")};
    zip_error_fini(&error);
    return failure(std::move(failed));
  }
  zip_error_fini(&error);
  return Archive(archive);
}

std::string shownName(const char* name) {
  std::string out(name);
  for (char& c : out)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = '?';
  return textFault(out, {}) ? std::string("?") : out;
}

/// One archive while it is looked through: what has been inflated so far counts against the limits.
class Reader {
public:
  Reader(zip_t* archive, const ZipLimits& limits) : archive_(archive), limits_(limits) {}

  /// The entry's content, or why there is none.
  tl::expected<std::string, Said> inflate(std::uint64_t index, const zip_stat_t& entry) {
    constexpr zip_uint64_t needed = ZIP_STAT_SIZE | ZIP_STAT_COMP_METHOD | ZIP_STAT_ENCRYPTION_METHOD;
    if ((entry.valid & needed) != needed) return tl::unexpected(Said(pattern("core", "without a size")));
    if (entry.encryption_method != ZIP_EM_NONE) return tl::unexpected(Said(pattern("core", "encrypted")));
    if (entry.size > limits_.fileBytes) return tl::unexpected(tooLarge());
    if (inflated_ + entry.size > limits_.allBytes) return tl::unexpected(tooMuch());
    const std::unique_ptr<zip_file_t, FileEnd> file(zip_fopen_index(archive_, index, 0));
    if (!file) return tl::unexpected(Said(pattern("core", "damaged or packed in an unknown way")));
    std::string content;
    std::array<char, 64 << 10> part{};
    while (true) {
      const zip_int64_t got = zip_fread(file.get(), part.data(), part.size());
      if (got < 0) return tl::unexpected(Said(pattern("core", "damaged")));
      if (got == 0) break;
      content.append(part.data(), static_cast<std::size_t>(got));
      inflated_ += static_cast<std::uint64_t>(got);
      // The archive may say anything: what counts is what comes out.
      if (content.size() > entry.size)
        return tl::unexpected(Said(pattern("core", "larger than the archive says")));
    }
    if (content.size() < entry.size)
      return tl::unexpected(Said(pattern("core", "shorter than the archive says")));
    return content;
  }

private:
  [[nodiscard]] Said tooLarge() const {
    return said(pattern("core", "above {} MiB"), limits_.fileBytes >> 20);
  }
  [[nodiscard]] Said tooMuch() const {
    return said(pattern("core", "beyond {} MiB of the archive"), limits_.allBytes >> 20);
  }

  zip_t* archive_;
  ZipLimits limits_;
  std::uint64_t inflated_ = 0;
};

bool isArchive(const std::string& name) {
  return lastExtension(name) == ".zip";
}

/// Calls `use(board, content)` for each board, and gives what was left out.
template <class Use>
Result<std::vector<Said>> forEachBoard(std::string_view content, const std::string& file,
                                       const ZipLimits& limits, Use use) {
  const auto archive = opened(content, file);
  if (!archive) return failure(archive.error());
  const zip_int64_t count = zip_get_num_entries(archive->get(), 0);
  if (count < 0 || static_cast<std::uint64_t>(count) > limits.entries) {
    return failure({pattern("core", "the archive has too many entries"), file, "", std::to_string(count),
                    said(pattern("core", "at most {}"), limits.entries)});
  }
  Reader reader(archive->get(), limits);
  FoldedNotices leftOut;
  for (std::uint64_t i = 0; i < static_cast<std::uint64_t>(count); ++i) {
    zip_stat_t entry;
    zip_stat_init(&entry);
    if (zip_stat_index(archive->get(), i, 0, &entry) != 0 || (entry.valid & ZIP_STAT_NAME) == 0) continue;
    const std::string name = shownName(entry.name);
    if (isArchive(name)) leftOut.add(pattern("core", "archives inside the archive, not opened"), name);
    if (!hasBoardExtension(name)) continue;
    auto text = reader.inflate(i, entry);
    if (!text) {
      leftOut.add(said(pattern("core", "files in the archive that are not read: {}"), text.error()), name);
      continue;
    }
    if (looksLikeZip(*text)) {
      leftOut.add(pattern("core", "archives inside the archive, not opened"), name);
      continue;
    }
    if (const BoardFormat* format = formatByContent(*text))
      use(ZippedBoard{name, format->name, text->size()}, std::move(*text));
  }
  std::vector<Said> notices;
  leftOut.moveTo(notices);
  return notices;
}

Error noBoard(const std::string& file, const std::vector<Said>& notices) {
  return {pattern("core", "there is no board file in this archive"), file, "",
          notices.empty() ? Said() : notices.front(),
          pattern("core", "a board in one of the formats that can be read")};
}

std::string_view withoutFolders(std::string_view name) {
  const std::size_t slash = name.find_last_of("/\\");
  return slash == std::string_view::npos ? name : name.substr(slash + 1);
}

} // namespace

bool looksLikeZip(std::string_view content) {
  return content.starts_with("PK\x03\x04") || content.starts_with("PK\x05\x06");
}

Result<ZipListing> boardsInZip(std::string_view content, const std::string& file, const ZipLimits& limits) {
  ZipListing out;
  auto notices = forEachBoard(content, file, limits, [&](ZippedBoard board, std::string&&) {
    out.boards.push_back(std::move(board));
  });
  if (!notices) return failure(notices.error());
  if (out.boards.empty()) return failure(noBoard(file, *notices));
  out.notices = std::move(*notices);
  return out;
}

Result<ZippedFile> boardFileInZip(std::string_view content, const std::string& file, const std::string& name,
                                  const ZipLimits& limits) {
  std::vector<std::string> names;
  std::optional<ZippedFile> whole, part;
  std::size_t wholes = 0, parts = 0;
  const auto notices = forEachBoard(content, file, limits, [&](const ZippedBoard& board, std::string&& text) {
    names.push_back(board.name);
    if (name.empty() || board.name == name) {
      if (++wholes == 1) whole = ZippedFile{board.name, std::move(text)};
    } else if (withoutFolders(board.name) == name && ++parts == 1) {
      part = ZippedFile{board.name, std::move(text)};
    }
  });
  if (!notices) return failure(notices.error());
  if (names.empty()) return failure(noBoard(file, *notices));
  if (wholes == 1) return std::move(*whole);
  if (wholes == 0 && parts == 1) return std::move(*part);
  constexpr std::size_t mostNames = 20;
  SaidList all{
      {names.begin(), names.begin() + static_cast<std::ptrdiff_t>(std::min(names.size(), mostNames))},
      SaidList::Last::none};
  Said wanted = said(pattern("core", "one of {}"), std::move(all));
  if (names.size() > mostNames)
    wanted = said(pattern("core", "{} and {} more"), wanted, std::to_string(names.size() - mostNames));
  if (wholes + parts > 1)
    return failure({said(pattern("core", "there are several boards in this archive")), file, "", name, wanted,
                    ErrorCause::severalInArchive});
  return failure({said(pattern("core", "no such board in this archive")), file, "", name, wanted});
}

} // namespace netmend

#include "netmend/board/journal.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include "edit_json.h"
#include "netmend/base/file.h"

namespace netmend {

using nlohmann::json;
namespace fs = std::filesystem;

namespace {

constexpr std::string_view journalName = "netmend-journal";
constexpr int journalVersion = 1;
constexpr std::uintmax_t mostBytes = 512u << 20;

Error systemError(const fs::path& path, const char* what) {
  return {std::string(what) + ": " + std::strerror(errno), path.string()};
}

std::string headerLine(const std::string& key) {
  return json{{"format", journalName}, {"version", journalVersion}, {"board", key}}.dump(
             -1, ' ', false, json::error_handler_t::replace) +
         "\n";
}

bool writeAll(int fd, std::string_view content, std::uintmax_t offset) {
  while (!content.empty()) {
    const ssize_t n = ::pwrite(fd, content.data(), content.size(), static_cast<off_t>(offset));
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return false;
    content.remove_prefix(static_cast<std::size_t>(n));
    offset += static_cast<std::uintmax_t>(n);
  }
  return true;
}

Error inLine(Error error, const fs::path& path, std::size_t line) {
  error.file = path.string();
  // Each edit is one line: a line and column within it would mislead.
  error.place.line = line;
  error.place.column = 0;
  return error;
}

Result<void> checkHeader(std::string_view line, const std::string& key) {
  const auto header = parseJson(line);
  const auto is = [&](const char* name, const json& value) {
    return header->contains(name) && (*header)[name] == value;
  };
  if (!header || !header->is_object() || !is("format", journalName))
    return failure({pattern("core", "is no journal of a board")});
  const auto version = header->find("version");
  if (version == header->end() || !version->is_number_unsigned())
    return failure({pattern("core", "has no version")});
  if (*version > journalVersion) {
    return failure(
        {said(pattern("core", "written by a newer Netmend: journal format {}, this one reads up to {}"),
              shortText(*version), journalVersion)});
  }
  if (headerLine(key) != std::string(line) + "\n")
    return failure({pattern("core", "belongs to another board or another state of it"), "", "",
                    header->contains("board") ? shortText((*header)["board"]) : "", json(key).dump()});
  return {};
}

/// How much of the file is whole lines. A last line with zeros in it is torn even if its end is there:
/// after a power cut later blocks may have reached the disk before earlier ones.
std::size_t wholeLines(std::string_view content) {
  const auto end = content.rfind('\n');
  if (end == std::string_view::npos) return 0;
  const auto before = end == 0 ? std::string_view::npos : content.rfind('\n', end - 1);
  const std::size_t lastLine = before == std::string_view::npos ? 0 : before + 1;
  const bool torn = content.substr(lastLine, end - lastLine).find('\0') != std::string_view::npos;
  return torn ? lastLine : end + 1;
}

struct Content {
  std::vector<Edit> edits;
  std::size_t length = 0;
};

Result<Content> readContent(std::string_view content, const std::string& key, const fs::path& path) {
  Content out;
  out.length = wholeLines(content);
  if (out.length == 0) {
    // A header cut short by a kill is begun again; anything else is not ours to overwrite.
    if (!headerLine(key).starts_with(content) && content.find_first_not_of('\0') != std::string_view::npos)
      return failure(inLine({pattern("core", "is no journal of a board")}, path, 1));
    return out;
  }
  std::size_t line = 0;
  for (std::size_t start = 0; start < out.length;) {
    const auto end = content.find('\n', start);
    const auto text = content.substr(start, end - start);
    if (++line == 1) {
      if (auto sound = checkHeader(text, key); !sound)
        return failure(inLine(std::move(sound.error()), path, line));
    } else {
      auto edit = editFromText(text);
      if (!edit) return failure(inLine(std::move(edit.error()), path, line));
      out.edits.push_back(std::move(*edit));
    }
    start = end + 1;
  }
  return out;
}

void syncFolder(const fs::path& path) {
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  const int fd = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0) return;
  ::fsync(fd);
  ::close(fd);
}

} // namespace

struct JournalAccess {
  static Journal make(int fd, const fs::path& path) { return {fd, path, 0}; }
  static void setLength(Journal& journal, std::uintmax_t length) { journal.length_ = length; }
};

Journal::Journal(int fd, fs::path path, std::uintmax_t length)
    : fd_(fd), path_(std::move(path)), length_(length) {}

Journal::Journal(Journal&& other) noexcept
    : fd_(std::exchange(other.fd_, -1)), path_(std::move(other.path_)), length_(other.length_),
      broken_(other.broken_) {}

Journal& Journal::operator=(Journal&& other) noexcept {
  std::swap(fd_, other.fd_);
  std::swap(path_, other.path_);
  std::swap(length_, other.length_);
  std::swap(broken_, other.broken_);
  return *this;
}

Journal::~Journal() {
  if (fd_ >= 0) ::close(fd_);
}

Result<void> Journal::append(const Edit& edit) {
  if (fd_ < 0 || broken_)
    return failure({pattern("core", "the journal cannot be written any more"), path_.string()});
  Encoder encoder;
  const json document = encodeEdit(encoder, edit);
  std::string line;
  try {
    line = document.dump() + "\n";
  } catch (const json::exception&) {
    encoder.refuse(pattern("core", "an edit holds a text that is not UTF-8"), Place(), {});
  }
  if (encoder.problem) {
    encoder.problem->file = path_.string();
    return failure(std::move(*encoder.problem));
  }
  if (length_ + line.size() > mostBytes)
    return failure({pattern("core", "the journal is full: save the board"), path_.string()});
  if (writeAll(fd_, line, length_) && ::fdatasync(fd_) == 0) {
    length_ += line.size();
    return {};
  }
  auto error = systemError(path_, "cannot be written");
  broken_ = ::ftruncate(fd_, static_cast<off_t>(length_)) != 0;
  return failure(std::move(error));
}

Result<void> Journal::restart(const std::string& key) {
  if (fd_ < 0 || broken_)
    return failure({pattern("core", "the journal cannot be written any more"), path_.string()});
  const std::string header = headerLine(key);
  length_ = 0;
  if (::ftruncate(fd_, 0) != 0 || !writeAll(fd_, header, 0) || ::fdatasync(fd_) != 0) {
    broken_ = true;
    return failure(systemError(path_, "cannot be written"));
  }
  length_ = header.size();
  return {};
}

Result<Edit> editFromText(std::string_view text) {
  const auto document = parseJson(text);
  if (!document) return failure(document.error());
  Decoder decoder;
  Edit edit = decodeEdit(decoder, *document);
  if (decoder.problem) return failure(std::move(*decoder.problem));
  return edit;
}

Result<OpenedJournal> openJournal(const fs::path& path, const std::string& key) {
  std::error_code ignored;
  if (fs::exists(path, ignored) && !fs::is_regular_file(path, ignored))
    return failure({pattern("core", "is not a regular file"), path.string()});
  const int fd = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0644);
  if (fd < 0) return failure(systemError(path, "cannot be opened"));
  OpenedJournal opened{JournalAccess::make(fd, path), {}, false};
  if (::flock(fd, LOCK_EX | LOCK_NB) != 0)
    return failure({pattern("core", "is open in another program"), path.string()});
  const auto text = readFile(path, mostBytes);
  if (!text) return failure(text.error());
  auto content = readContent(*text, key, path);
  if (!content) return failure(std::move(content.error()));
  opened.droppedTorn = content->length < text->size();
  opened.edits = std::move(content->edits);
  if (content->length == 0) {
    if (auto begun = opened.journal.restart(key); !begun) return failure(std::move(begun.error()));
    syncFolder(path);
    return opened;
  }
  JournalAccess::setLength(opened.journal, content->length);
  if (opened.droppedTorn && ::ftruncate(fd, static_cast<off_t>(content->length)) != 0)
    return failure(systemError(path, "cannot be written"));
  return opened;
}

Result<void> replay(Board& board, const std::vector<Edit>& edits) {
  for (std::size_t i = 0; i < edits.size(); ++i) {
    auto done = apply(board, edits[i]);
    // The first line is the header.
    if (!done) return failure(inLine(std::move(done.error()), {}, i + 2));
  }
  return {};
}

} // namespace netmend

#include "netmend/board/kept_board.h"

#include <optional>
#include <utility>

#include "netmend/base/digest.h"
#include "netmend/base/file.h"
#include "netmend/base/json_text.h"
#include "netmend/board/board_file.h"

namespace netmend {

namespace fs = std::filesystem;

namespace {

/// The file as it is about to be; once the journal starts from it, it takes the file's place.
fs::path nextOf(const fs::path& file) {
  return file.string() + ".next";
}

bool isThere(const fs::path& file) {
  std::error_code ignored;
  return fs::exists(file, ignored);
}

Result<void> moveFile(const fs::path& from, const fs::path& to) {
  std::error_code error;
  fs::rename(from, to, error);
  if (error) return failure({said(pattern("core", "cannot be replaced: {}"), error.message()), to.string()});
  return {};
}

/// The journal's first line; nothing while it has no whole one.
std::optional<std::string> headOf(const fs::path& journal) {
  const auto text = readFile(journal);
  const auto end = text ? text->find('\n') : std::string::npos;
  return end == std::string::npos ? std::nullopt : std::optional(text->substr(0, end));
}

bool startsFrom(const std::string& head, const std::string& digest) {
  const auto header = parseJson(head);
  return header && header->is_object() && header->value("board", "") == digest;
}

/// Killed between the journal's new beginning and the file's: the file that the journal starts from, or was
/// about to, takes its place now. Else a next file is one that nobody had got to.
Result<void> finishSaving(const fs::path& file) {
  const fs::path next = nextOf(file);
  if (!isThere(next)) return {};
  const auto text = readFile(next);
  if (!text) return failure(text.error());
  const auto head = headOf(journalOf(file));
  if (isThere(journalOf(file)) && (!head || startsFrom(*head, sha256(*text)))) return moveFile(next, file);
  std::error_code ignored;
  fs::remove(next, ignored);
  return {};
}

} // namespace

fs::path journalOf(const fs::path& boardFile) {
  return boardFile.string() + ".journal";
}

KeptBoard::KeptBoard(KeptBoard&& other) noexcept
    : file_(std::exchange(other.file_, {})), journal_(std::move(other.journal_)),
      board_(std::move(other.board_)), digest_(std::move(other.digest_)), unsaved_(other.unsaved_) {}

KeptBoard& KeptBoard::operator=(KeptBoard&& other) noexcept {
  std::swap(file_, other.file_);
  std::swap(journal_, other.journal_);
  std::swap(board_, other.board_);
  std::swap(digest_, other.digest_);
  std::swap(unsaved_, other.unsaved_);
  return *this;
}

KeptBoard::~KeptBoard() {
  std::error_code ignored;
  if (!file_.empty() && board_ && !unsaved_) fs::remove(journalOf(file_), ignored);
}

Result<KeptBoard> KeptBoard::open(const fs::path& file) {
  if (auto finished = finishSaving(file); !finished) return failure(finished.error());
  const auto text = readFile(file);
  if (!text) return failure(text.error());
  const std::string digest = sha256(*text);
  const auto head = headOf(journalOf(file));
  if (head && !startsFrom(*head, digest))
    if (auto aside = moveFile(journalOf(file), journalOf(file).string() + "-old"); !aside)
      return failure(aside.error());
  auto opened = openJournal(journalOf(file), digest);
  if (!opened) return failure(opened.error());
  auto board = boardFromText(*text, file.string());
  if (!board) return failure(board.error());
  if (auto replayed = replay(*board, opened->edits); !replayed) {
    Error error = replayed.error();
    error.file = journalOf(file).string();
    return failure(std::move(error));
  }
  KeptBoard out(file, std::move(opened->journal));
  out.board_ = std::make_shared<const Board>(std::move(*board));
  out.digest_ = digest;
  out.unsaved_ = !opened->edits.empty();
  return out;
}

Result<KeptBoard> KeptBoard::create(const fs::path& file, std::shared_ptr<const Board> board) {
  std::error_code ignored;
  for (const fs::path& former : {journalOf(file), nextOf(file)})
    fs::remove(former, ignored);
  auto text = boardToText(*board);
  if (!text) {
    text.error().file = file.string();
    return failure(text.error());
  }
  if (auto written = writeFileAtomically(file, *text); !written) return failure(written.error());
  std::string digest = sha256(*text);
  auto opened = openJournal(journalOf(file), digest);
  if (!opened) return failure(opened.error());
  KeptBoard out(file, std::move(opened->journal));
  out.board_ = std::move(board);
  out.digest_ = std::move(digest);
  return out;
}

Result<Edit> KeptBoard::apply(const Edit& edit) {
  // The board that is given out stays as it is; and nothing is in the journal that cannot be done.
  auto after = std::make_shared<Board>(*board_);
  auto inverse = netmend::apply(*after, edit);
  if (!inverse) return inverse;
  if (auto kept = journal_.append(edit); !kept) return failure(kept.error());
  board_ = std::move(after);
  unsaved_ = true;
  return inverse;
}

Result<void> KeptBoard::save() {
  if (!unsaved_) return {};
  auto text = boardToText(*board_);
  if (!text) {
    text.error().file = file_.string();
    return failure(text.error());
  }
  std::string digest = sha256(*text);
  if (auto written = writeFileAtomically(nextOf(file_), *text); !written) return written;
  if (auto begun = journal_.restart(digest); !begun) return begun;
  if (auto renamed = moveFile(nextOf(file_), file_); !renamed) return renamed;
  digest_ = std::move(digest);
  unsaved_ = false;
  return {};
}

} // namespace netmend

// The board of the job: which one it is, and what becomes of the job when it is another.
#include <utility>

#include <QFileInfo>

#include "bench_job.h"
#include "board_note.h"
#include "netmend/board/board_file.h"

namespace netmend {

void BenchJob::closeBoard() {
  board_.reset();
  good_.clear();
  underWay_ = {};
  weighGoodWalks();
  Q_EMIT boardChanged();
  Q_EMIT goodWalksChanged();
}

bool BenchJob::isOfAnotherJob(const std::filesystem::path& file) const {
  if (!job_ || job_->readings.empty() || job_->boardFile.empty()) return false;
  const std::filesystem::path own(job_->boardFile);
  // Of a connector that was only typed a better description may come.
  return std::filesystem::absolute(file) != own &&
         own.parent_path() != std::filesystem::absolute(boardsFolder());
}

void BenchJob::openBoardFile(const std::filesystem::path& file, const std::string& inArchive) {
  if (putOff_) {
    waiting_ = file;
    Q_EMIT openingChanged(tr("reading"), 0.0);
    return;
  }
  const JobId job = job_ ? job_->id : JobId{};
  opening_.run<Result<OpenedFile>>(
      [this, file, inArchive](const std::stop_token& stop) {
        Progress progress;
        progress.stop = stop;
        progress.report = [this, stop](const Pattern& what, double share) {
          QMetaObject::invokeMethod(
              this,
              [this, stop, text = shown(Said(what)), share] {
                if (!stop.stop_requested()) Q_EMIT openingChanged(text, share);
              },
              Qt::QueuedConnection);
        };
        return openFile(file, inArchive, archivedFolder(), progress);
      },
      [this, job, file](Result<OpenedFile> opened) {
        Q_EMIT openingChanged({}, 1.0);
        if (!opened) return fail(opened.error());
        const QString name = QString::fromStdU16String(file.u16string());
        if (!opened->board) {
          QStringList names;
          for (const std::string& board : opened->offered)
            names << QString::fromStdString(board);
          Q_EMIT boardsOffered(name, names);
          Q_EMIT fileOpened(name);
          return;
        }
        const BoardUnderWork& board = *opened->board;
        const auto use = [this, job, name, board] {
          // Also of a job that was booked in meanwhile.
          boardOpened(board, job_ && (job_->id == job || !job));
          Q_EMIT fileOpened(name);
        };
        if (isOfAnotherJob(board.file)) return askOtherBoard(QFileInfo(name).fileName(), use);
        use();
      });
  Q_EMIT openingChanged(tr("reading"), 0.0);
}

void BenchJob::askOtherBoard(const QString& name, std::function<void()> open) {
  other_ = std::move(open);
  Q_EMIT otherBoardAsked(name);
}

void BenchJob::answerOtherBoard(bool open) {
  const auto other = std::exchange(other_, nullptr);
  Q_EMIT otherBoardAsked({});
  if (!open || !other) return;
  if (const Job* left = job()) {
    const JobId id = left->id;
    closeJob();
    const auto nothing = []() -> Result<void> { return {}; };
    done(tr("another board"), nothing, [this, id]() -> Result<void> {
      // Another job clears what can be undone: not before this has been.
      QMetaObject::invokeMethod(
          this, [this, id] { openJob(id); }, Qt::QueuedConnection);
      return {};
    });
    Q_EMIT noticed(tr("The job is closed, with its board: it stands in the list, and Undo opens it again."));
  }
  other();
}

void BenchJob::readBoardsNow() {
  putOff_ = false;
  if (const auto file = std::exchange(waiting_, std::nullopt)) openBoardFile(*file);
}

void BenchJob::cancelOpening() {
  opening_.cancel();
  waiting_.reset();
  Q_EMIT openingChanged({}, 1.0);
}

bool BenchJob::useConnector(const std::string& text) {
  const auto connector = parseConnector(text);
  if (!connector) {
    fail(connector.error());
    return false;
  }
  const bool typed = board_ && board_->file.parent_path() == boardsFolder();
  if (typed) return joinConnector(*connector);
  const auto open = [this, connector = *connector] {
    auto made = makeConnectorFile(connector, boardsFolder());
    if (!made) return fail(made.error());
    boardOpened(std::move(*made), job_.has_value());
  };
  if (board_ && isOfAnotherJob(boardsFolder() / connector->reference)) {
    askOtherBoard(QString::fromStdString(connector->reference), open);
    return false;
  }
  const auto before = board_ ? board_->digest : std::string();
  open();
  return board_ && board_->digest != before;
}

bool BenchJob::joinConnector(const TypedConnector& connector) {
  auto after = withConnector(*board_->board, connector);
  if (!after) {
    fail(after.error());
    return false;
  }
  const auto become = [this, file = board_->file](std::shared_ptr<const Board> board) {
    return [this, file, board]() -> Result<void> {
      if (auto written = writeBoardFile(file, *board); !written) return written;
      auto opened = openBoard(file);
      if (!opened) return failure(opened.error());
      show(std::move(*opened));
      if (job_) {
        if (auto kept = put(noted(*job_, noteOf(*board_))); !kept) return kept;
      }
      Q_EMIT boardChanged();
      Q_EMIT goodWalksChanged();
      return {};
    };
  };
  return done(tr("connector %1").arg(QString::fromStdString(connector.reference)),
              become(std::make_shared<const Board>(std::move(*after))), become(board_->board));
}

void BenchJob::boardDrawn(BoardUnderWork board) {
  show(std::move(board));
  if (job_) {
    if (auto kept = put(noted(*job_, noteOf(*board_))); !kept) fail(kept.error());
  }
  Q_EMIT boardChanged();
  Q_EMIT goodWalksChanged();
}

void BenchJob::show(BoardUnderWork board) {
  board_ = std::move(board);
  underWay_ = {};
  readGoodWalks();
}

void BenchJob::followNote() {
  if (job_->boardFile.empty()) return closeBoard();
  if (!board_ || board_->digest != job_->boardDigest) openBoardFile(job_->boardFile);
}

void BenchJob::boardOpened(BoardUnderWork board, bool forJob) {
  show(std::move(board));
  if (forJob && job_->boardDigest != board_->digest) {
    const auto becomes = [this](const BoardNote& note) {
      return [this, note]() -> Result<void> {
        if (auto kept = put(noted(*job_, note)); !kept) return kept;
        followNote();
        return {};
      };
    };
    done(tr("board of the job"), becomes(noteOf(*board_)), becomes(noteIn(*job_)));
  }
  Q_EMIT boardChanged();
  Q_EMIT goodWalksChanged();
}

} // namespace netmend

#include "netmend/bench/session/bench_job.h"

#include <algorithm>
#include <utility>

#include <QFileInfo>

#include "netmend/board/board_file.h"
#include "netmend/drawing/shown.h"
#include "netmend/repair/good_walks.h"

namespace netmend {

namespace {

/// A step of the undo stack that may fail: then it is as if it had never been.
class BookCommand : public QUndoCommand {
public:
  using Act = std::function<Result<void>()>;
  BookCommand(const QString& what, Act redo, Act undo, std::function<void(const Error&)> failed)
      : QUndoCommand(what), redo_(std::move(redo)), undo_(std::move(undo)), failed_(std::move(failed)) {}
  void redo() override { act(redo_); }
  void undo() override { act(undo_); }

private:
  void act(const Act& what) {
    if (const auto done = what(); !done) {
      setObsolete(true);
      failed_(done.error());
    }
  }
  Act redo_;
  Act undo_;
  std::function<void(const Error&)> failed_;
};

/// What a job says of its board.
struct BoardNote {
  std::string uuid;
  std::string name;
  std::string revision;
  std::string file;
  std::string digest;
};

BoardNote noteOf(const OpenBoard& board) {
  const BoardInfo& info = board.board->info;
  return {info.uuid, info.name.valueOr(""), info.revision.valueOr(""),
          std::filesystem::absolute(board.file).string(), board.digest};
}

BoardNote noteIn(const Job& job) {
  return {job.boardUuid, job.boardName, job.boardRevision, job.boardFile, job.boardDigest};
}

void put(const BoardNote& note, Job& job) {
  job.boardUuid = note.uuid;
  job.boardName = note.name;
  job.boardRevision = note.revision;
  job.boardFile = note.file;
  job.boardDigest = note.digest;
}

} // namespace

BenchJob::BenchJob(BenchFolders folders, RepairData data, JobBook book)
    : folders_(std::move(folders)), data_(std::move(data)), book_(std::move(book)), opening_(this),
      weighing_(this), storing_(this) {}

Result<std::unique_ptr<BenchJob>> BenchJob::open(const BenchFolders& folders) {
  auto data = loadRepairData(folders.data);
  if (!data) return failure(data.error());
  return open(folders, std::move(*data));
}

Result<std::unique_ptr<BenchJob>> BenchJob::open(const BenchFolders& folders, RepairData data) {
  std::error_code error;
  std::filesystem::create_directories(folders.store, error);
  if (error) return failure({"cannot be made: " + error.message(), folders.store.string()});
  auto book = JobBook::open(bookFile(folders), BookUse::make);
  if (!book) return failure(book.error());
  return std::unique_ptr<BenchJob>(new BenchJob(folders, std::move(data), std::move(*book)));
}

bool BenchJob::perform(const QString& what, std::function<Result<void>()> redo,
                       std::function<Result<void>()> undo) {
  // The command outlives this call: undone later it may fail again.
  const auto good = std::make_shared<bool>(true);
  undo_.push(new BookCommand(what, std::move(redo), std::move(undo), [this, good](const Error& error) {
    *good = false;
    fail(error);
  }));
  return *good;
}

bool BenchJob::reload(std::vector<Photo> known) {
  known.insert(known.end(), job_->photos.begin(), job_->photos.end());
  auto job = book_.job(job_->id, known);
  if (!job) {
    fail(job.error());
    return false;
  }
  job_ = std::move(*job);
  return true;
}

bool BenchJob::bookIn(Job job) {
  if (board_) netmend::put(noteOf(*board_), job);
  const auto id = book_.addOpenJob(job);
  if (!id) {
    fail(id.error());
    return false;
  }
  auto kept = book_.job(*id);
  if (!kept) {
    fail(kept.error());
    return false;
  }
  job_ = std::move(*kept);
  tellOfOtherJob();
  return true;
}

bool BenchJob::openJob(JobId id) {
  auto job = book_.job(id);
  if (!job) {
    fail(job.error());
    return false;
  }
  openJob(std::move(*job));
  return true;
}

void BenchJob::openJob(Job job) {
  cancelOpening();
  const bool sameBoard = board_ && board_->digest == job.boardDigest && !job.boardDigest.empty();
  job_ = std::move(job);
  if (!sameBoard) closeBoard();
  tellOfOtherJob();
  if (!sameBoard && !job_->boardFile.empty()) openBoardFile(job_->boardFile);
}

void BenchJob::closeBoard() {
  board_.reset();
  good_.clear();
  weighing_.cancel();
  expected_ = std::make_shared<const ExpectedTable>();
  Q_EMIT boardChanged();
  Q_EMIT goodWalksChanged();
}

void BenchJob::tellOfOtherJob() {
  undo_.clear();
  Q_EMIT jobOpened();
  Q_EMIT jobChanged();
  Q_EMIT readingsChanged();
  Q_EMIT actionsChanged();
  Q_EMIT papersChanged();
}

void BenchJob::closeJob() {
  job_.reset();
  tellOfOtherJob();
}

bool BenchJob::leaveOpen(const LeftOpen& left) {
  const auto kept = book_.leaveOpen(left);
  if (!kept) fail(kept.error());
  return kept.has_value();
}

Result<void> BenchJob::put(Job job) {
  if (auto kept = book_.updateJob(job); !kept) return kept;
  // Lists may have grown since: only what stands in the job itself is taken over.
  job.readings = std::move(job_->readings);
  job.suspects = std::move(job_->suspects);
  job.actions = std::move(job_->actions);
  job.photos = std::move(job_->photos);
  job.charges = std::move(job_->charges);
  job_ = std::move(job);
  Q_EMIT jobChanged();
  return {};
}

bool BenchJob::edit(const QString& what, const Change& change, const Change& back) {
  if (!job_) return false;
  // Each is made in the job as it is by then: what was typed in between stays.
  const auto making = [this](const Change& make) {
    return [this, make] {
      Job job = *job_;
      make(job);
      return put(std::move(job));
    };
  };
  return perform(what, making(change), making(back));
}

bool BenchJob::keep(const Change& change) {
  Job after = job_ ? *job_ : Job{};
  change(after);
  if (!job_) return bookIn(std::move(after));
  const auto kept = put(std::move(after));
  if (!kept) fail(kept.error());
  return kept.has_value();
}

bool BenchJob::setState(JobState state) {
  if (!job_) return false;
  if (job_->state == state) return true;
  return edit(
      tr("state of the job"), [state](Job& job) { job.state = state; },
      [before = job_->state](Job& job) { job.state = before; });
}

void BenchJob::reached(JobState state) {
  if (!job_ || job_->state >= state) return;
  if (auto set = book_.setState(job_->id, state); !set) {
    fail(set.error());
    return;
  }
  job_->state = state;
  Q_EMIT jobChanged();
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
        progress.report = [this, stop](std::string_view what, double share) {
          QMetaObject::invokeMethod(
              this,
              [this, stop, text = shown(what), share] {
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
        const OpenBoard& board = *opened->board;
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
    perform(tr("another board"), nothing, [this, id]() -> Result<void> {
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
        Job job = *job_;
        netmend::put(noteOf(*board_), job);
        if (auto kept = put(std::move(job)); !kept) return kept;
      }
      Q_EMIT boardChanged();
      Q_EMIT goodWalksChanged();
      return {};
    };
  };
  return perform(tr("connector %1").arg(QString::fromStdString(connector.reference)),
                 become(std::make_shared<const Board>(std::move(*after))), become(board_->board));
}

void BenchJob::show(OpenBoard board) {
  board_ = std::move(board);
  readGoodWalks();
}

void BenchJob::followNote() {
  if (job_->boardFile.empty()) return closeBoard();
  if (!board_ || board_->digest != job_->boardDigest) openBoardFile(job_->boardFile);
}

void BenchJob::boardOpened(OpenBoard board, bool forJob) {
  show(std::move(board));
  if (forJob && job_->boardDigest != board_->digest) {
    const auto becomes = [this](const BoardNote& note) {
      return [this, note]() -> Result<void> {
        Job job = *job_;
        netmend::put(note, job);
        if (auto kept = put(std::move(job)); !kept) return kept;
        followNote();
        return {};
      };
    };
    perform(tr("board of the job"), becomes(noteOf(*board_)), becomes(noteIn(*job_)));
  }
  Q_EMIT boardChanged();
  Q_EMIT goodWalksChanged();
}

void BenchJob::readGoodWalks() {
  good_.clear();
  auto kept = keptGoodWalks(book_, *board_->lookup);
  if (!kept)
    fail(kept.error());
  else
    good_ = std::move(*kept);
  if (good_.empty()) {
    weighing_.cancel();
    expected_ = std::make_shared<const ExpectedTable>();
    return;
  }
  weighing_.run<ExpectedTable>(
      [good = good_, lookup = board_->lookup, board = board_->board, data = &data_](const std::stop_token&) {
        return expectedValues(good, lookup.get(), data->probing);
      },
      [this](ExpectedTable table) {
        expected_ = std::make_shared<const ExpectedTable>(std::move(table));
        Q_EMIT goodWalksChanged();
      });
}

bool BenchJob::keepGoodWalk(const Walk& walk) {
  if (!board_) return false;
  if (auto kept = book_.addKnownGoodWalk(walk); !kept) {
    fail(kept.error());
    return false;
  }
  readGoodWalks();
  Q_EMIT goodWalksChanged();
  return true;
}

Result<void> BenchJob::takeBackGoodWalk(const Walk& walk) {
  if (!board_) return failure({"no board is open"});
  if (auto taken = book_.takeBackKnownGoodWalk(walk); !taken) return taken;
  readGoodWalks();
  Q_EMIT goodWalksChanged();
  return {};
}

Result<JobReadingId> BenchJob::addReading(const JobReading& reading) {
  if (!job_) return failure({"no job is open"});
  auto id = book_.addReading(job_->id, reading);
  if (!id) return id;
  job_->readings.push_back(reading);
  job_->readings.back().id = *id;
  Q_EMIT readingsChanged();
  return id;
}

Result<void> BenchJob::takeBackReading(JobReadingId id) {
  if (!job_) return failure({"no job is open"});
  if (auto taken = book_.takeBack(job_->id, id); !taken) return taken;
  std::erase_if(job_->readings, [id](const JobReading& reading) { return reading.id == id; });
  Q_EMIT readingsChanged();
  return {};
}

bool BenchJob::rejudge(const std::vector<JobReading>& readings) {
  if (!job_) return false;
  if (auto kept = book_.rejudge(job_->id, readings); !kept) {
    fail(kept.error());
    return false;
  }
  for (const JobReading& judged : readings)
    for (JobReading& reading : job_->readings)
      if (reading.id == judged.id) reading = judged;
  Q_EMIT readingsChanged();
  return true;
}

bool BenchJob::setSuspects(const std::vector<JobSuspect>& suspects) {
  if (!job_) return false;
  if (suspects == job_->suspects) return true;
  if (auto kept = book_.setSuspects(job_->id, suspects); !kept) {
    fail(kept.error());
    return false;
  }
  job_->suspects = suspects;
  return true;
}

} // namespace netmend

#include "bench_job.h"

#include <algorithm>
#include <utility>

#include "board_note.h"
#include "netmend/drawing/shown.h"

namespace netmend {

namespace {

/// A step of the history that may fail: then it is as if it had never been.
class BookCommand : public QUndoCommand {
public:
  using Act = std::function<Result<void>()>;
  enum class Is { toDo, done };
  BookCommand(const QString& what, Act redo, Act undo, std::function<void(const Error&)> failed, Is is)
      : QUndoCommand(what), redo_(std::move(redo)), undo_(std::move(undo)), failed_(std::move(failed)),
        done_(is == Is::done) {}
  void redo() override {
    if (!std::exchange(done_, false)) act(redo_);
  }
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
  bool done_;
};

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
  if (error)
    return failure({said(pattern("core", "cannot be made: {}"), error.message()), folders.store.string()});
  auto book = JobBook::open(bookFile(folders), BookUse::make);
  if (!book) return failure(book.error());
  return std::unique_ptr<BenchJob>(new BenchJob(folders, std::move(data), std::move(*book)));
}

Result<void> BenchJob::perform(const QString& what, Act redo, Act undo) {
  // The command outlives this call: later it may fail again.
  const auto first = std::make_shared<Result<void>>();
  const auto calling = std::make_shared<bool>(true);
  undo_.push(new BookCommand(
      what, std::move(redo), std::move(undo),
      [this, first, calling](const Error& error) {
        if (*calling)
          *first = failure(Error(error));
        else
          fail(error);
      },
      BookCommand::Is::toDo));
  *calling = false;
  return *first;
}

bool BenchJob::done(const QString& what, Act redo, Act undo) {
  const auto performed = perform(what, std::move(redo), std::move(undo));
  if (!performed) fail(performed.error());
  return performed.has_value();
}

void BenchJob::remember(const QString& what, Act redo, Act undo) {
  if (undo_.canRedo()) return; // what was taken back just now is worth more
  undo_.push(new BookCommand(
      what, std::move(redo), std::move(undo), [this](const Error& error) { fail(error); },
      BookCommand::Is::done));
}

Result<void> BenchJob::undo() {
  if (!undo_.canUndo()) return failure({pattern("core", "nothing to take back")});
  const QString what = undo_.undoText();
  undo_.undo();
  Q_EMIT noticed(tr("Taken back: %1").arg(what));
  return {};
}

Result<void> BenchJob::redo() {
  if (!undo_.canRedo()) return failure({pattern("core", "nothing was taken back")});
  const QString what = undo_.redoText();
  undo_.redo();
  Q_EMIT noticed(tr("Done again: %1").arg(what));
  return {};
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
  if (board_) job = noted(std::move(job), noteOf(*board_));
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
  // What was done before the first job was booked in belongs to it: the good boards walked.
  const bool another = job_.has_value();
  job_ = std::move(*kept);
  if (another) beginHistory();
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
  beginHistory();
  tellOfOtherJob();
  if (!sameBoard && !job_->boardFile.empty()) openBoardFile(job_->boardFile);
}

void BenchJob::beginHistory() {
  undo_.clear();
  rememberReadings();
  Q_EMIT historyBegun();
}

void BenchJob::tellOfOtherJob() {
  Q_EMIT jobOpened();
  Q_EMIT jobChanged();
  Q_EMIT readingsChanged();
  Q_EMIT actionsChanged();
  Q_EMIT papersChanged();
}

void BenchJob::closeJob() {
  job_.reset();
  beginHistory();
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
  return done(what, making(change), making(back));
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

#include "bench_job.h"

#include <algorithm>
#include <utility>

#include "board_note.h"
#include "netmend/casework/good_walks.h"
#include "netmend/drawing/shown.h"

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
  if (!board_) return failure({pattern("core", "no board is open")});
  if (auto taken = book_.takeBackKnownGoodWalk(walk); !taken) return taken;
  readGoodWalks();
  Q_EMIT goodWalksChanged();
  return {};
}

Result<JobReadingId> BenchJob::addReading(const JobReading& reading) {
  if (!job_) return failure({pattern("core", "no job is open")});
  auto id = book_.addReading(job_->id, reading);
  if (!id) return id;
  job_->readings.push_back(reading);
  job_->readings.back().id = *id;
  Q_EMIT readingsChanged();
  return id;
}

Result<void> BenchJob::takeBackReading(JobReadingId id) {
  if (!job_) return failure({pattern("core", "no job is open")});
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

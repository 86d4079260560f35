#include "netmend/bench/session/bench_job.h"

#include <algorithm>
#include <utility>

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

void noteBoard(Job& job, const OpenBoard& board) {
  const BoardInfo& info = board.board->info;
  job.boardUuid = info.uuid;
  job.boardName = info.name.valueOr("");
  job.boardRevision = info.revision.valueOr("");
  job.boardFile = std::filesystem::absolute(board.file).string();
  job.boardDigest = board.digest;
}

void copyBoardNote(const Job& from, Job& to) {
  to.boardUuid = from.boardUuid;
  to.boardName = from.boardName;
  to.boardRevision = from.boardRevision;
  to.boardFile = from.boardFile;
  to.boardDigest = from.boardDigest;
}

Result<RepairActionId> addTo(JobBook& book, JobId job, const RepairAction& action) {
  return book.addAction(job, action);
}
Result<ChargeId> addTo(JobBook& book, JobId job, const Charge& charge) {
  return book.addCharge(job, charge);
}

template <class Item> const Item* findIn(const std::vector<Item>& items, decltype(Item::id) id) {
  const auto found =
      std::find_if(items.begin(), items.end(), [id](const Item& item) { return item.id == id; });
  return found == items.end() ? nullptr : &*found;
}

} // namespace

BenchJob::BenchJob(BenchFolders folders, RepairData data, JobBook book)
    : folders_(std::move(folders)), data_(std::move(data)), book_(std::move(book)), opening_(this),
      weighing_(this), storing_(this) {}

Result<std::unique_ptr<BenchJob>> BenchJob::open(const BenchFolders& folders) {
  std::error_code error;
  std::filesystem::create_directories(folders.store, error);
  if (error) return failure({"cannot be made: " + error.message(), folders.store.string()});
  auto data = loadRepairData(folders.data);
  if (!data) return failure(data.error());
  auto book = JobBook::open(bookFile(folders));
  if (!book) return failure(book.error());
  return std::unique_ptr<BenchJob>(new BenchJob(folders, std::move(*data), std::move(*book)));
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
  if (board_) noteBoard(job, *board_);
  const auto id = book_.addJob(job);
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
  if (!sameBoard) {
    board_.reset();
    good_.clear();
    weighing_.cancel();
    expected_ = std::make_shared<const ExpectedTable>();
    Q_EMIT boardChanged();
    Q_EMIT goodWalksChanged();
  }
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

void BenchJob::openBoardFile(const std::filesystem::path& file) {
  if (putOff_) {
    waiting_ = file;
    Q_EMIT openingChanged(tr("reading"), 0.0);
    return;
  }
  if (isOfAnotherJob(file)) {
    closeJob();
    Q_EMIT noticed(tr("The job is closed, with its board: it stands in the list. This is another board."));
  }
  const JobId job = job_ ? job_->id : JobId{};
  opening_.run<Result<OpenBoard>>(
      [this, file](const std::stop_token& stop) {
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
        return openBoard(file, progress);
      },
      [this, job](Result<OpenBoard> opened) {
        Q_EMIT openingChanged({}, 1.0);
        if (!opened)
          fail(opened.error());
        else
          // Also of a job that was booked in meanwhile.
          boardOpened(std::move(*opened), job_ && (job_->id == job || !job));
      });
  Q_EMIT openingChanged(tr("reading"), 0.0);
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
  auto made = makeConnectorFile(*connector, boardsFolder());
  if (!made) {
    fail(made.error());
    return false;
  }
  boardOpened(std::move(*made), job_.has_value());
  return true;
}

void BenchJob::boardOpened(OpenBoard board, bool forJob) {
  board_ = std::move(board);
  readGoodWalks();
  if (forJob && job_->boardDigest != board_->digest)
    edit(
        tr("board of the job"), [board = *board_](Job& job) { noteBoard(job, board); },
        [before = *job_](Job& job) { copyBoardNote(before, job); });
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

bool BenchJob::takeBackGoodWalk(const Walk& walk) {
  if (!board_) return false;
  if (auto taken = book_.takeBackKnownGoodWalk(walk); !taken) {
    fail(taken.error());
    return false;
  }
  readGoodWalks();
  Q_EMIT goodWalksChanged();
  return true;
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

template <class Item> bool BenchJob::list(const QString& what, const Item& item, Listing listing) {
  if (!job_) return false;
  // Put back, it is the very same: what was done with it afterwards can be done again.
  const auto id = std::make_shared<decltype(item.id)>(listing.add ? decltype(item.id){} : item.id);
  const auto told = [this, changed = listing.changed](Result<void> done) {
    if (done && reload()) (this->*changed)();
    return done;
  };
  const auto put = [this, id, item = Item(item), told]() mutable -> Result<void> {
    item.id = *id;
    if (item.id) return told(book_.putBack(job_->id, item));
    const auto added = addTo(book_, job_->id, item);
    if (!added) return failure(added.error());
    *id = *added;
    return told({});
  };
  const auto take = [this, id, told] { return told(book_.takeBack(job_->id, *id)); };
  return listing.add ? perform(what, put, take) : perform(what, take, put);
}

bool BenchJob::addAction(const RepairAction& action) {
  return list(tr("repair action"), action, {true, &BenchJob::actionsChanged});
}

bool BenchJob::addCharge(const Charge& charge) {
  return list(tr("charge"), charge, {true, &BenchJob::papersChanged});
}

bool BenchJob::removeCharge(ChargeId id) {
  const Charge* charge = job_ ? findIn(job_->charges, id) : nullptr;
  return charge != nullptr && list(tr("removal of a charge"), *charge, {false, &BenchJob::papersChanged});
}

bool BenchJob::updateAction(const QString& what, const RepairAction& action) {
  const RepairAction* found = job_ ? findIn(job_->actions, action.id) : nullptr;
  if (found == nullptr) return false;
  const auto put = [this](const RepairAction& a) -> Result<void> {
    if (auto kept = book_.updateAction(job_->id, a); !kept) return kept;
    reload();
    Q_EMIT actionsChanged();
    return {};
  };
  return perform(
      what, [put, action] { return put(action); }, [put, before = *found] { return put(before); });
}

bool BenchJob::addReadingFor(RepairActionId action, const QString& what, const JobReading& reading,
                             const ActionChange& change) {
  const RepairAction* found = job_ ? findIn(job_->actions, action) : nullptr;
  if (found == nullptr) return false;
  const auto id = std::make_shared<JobReadingId>();
  const auto told = [this] {
    reload();
    Q_EMIT readingsChanged();
    Q_EMIT actionsChanged();
  };
  const auto put = [this, id, reading = JobReading(reading), change, before = *found,
                    told]() mutable -> Result<void> {
    reading.id = *id;
    if (reading.id) {
      if (auto again = book_.putBack(job_->id, reading); !again) return again;
    } else {
      const auto added = book_.addReading(job_->id, reading);
      if (!added) return failure(added.error());
      *id = *added;
    }
    RepairAction after = before;
    change(after, *id);
    auto kept = book_.updateAction(job_->id, after);
    if (!kept) static_cast<void>(book_.takeBack(job_->id, *id)); // half of it would be worse than none
    told();
    return kept;
  };
  const auto take = [this, id, before = *found, told]() -> Result<void> {
    if (auto kept = book_.updateAction(job_->id, before); !kept) return kept;
    auto taken = book_.takeBack(job_->id, *id);
    told();
    return taken;
  };
  return perform(what, put, take);
}

} // namespace netmend

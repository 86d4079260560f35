#include "bench_walk.h"

#include <algorithm>
#include <chrono>
#include <sstream>
#include <utility>

#include <QSettings>

#include "netmend/casework/good_walks.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/walk_file.h"
#include "netmend/probing/words.h"

namespace netmend {

namespace {

QString meterKey() {
  return QStringLiteral("bench/meter");
}
QString byKey() {
  return QStringLiteral("bench/by");
}

std::chrono::sys_time<std::chrono::milliseconds> now() {
  return std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now());
}

QString fromText(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// A session that can be taken up where it was left: undo goes back through all of its readings.
WalkSession resumed(Walk walk) {
  WalkSession out{std::move(walk), 0, {}};
  const auto indexOf = [&](const ProbePoint& point) {
    const auto it = std::find(out.walk.points.begin(), out.walk.points.end(), point);
    return static_cast<std::size_t>(it - out.walk.points.begin());
  };
  for (const Reading& reading : out.walk.readings) {
    WalkSession::Step step;
    step.turnBefore = indexOf(reading.point);
    step.modeBefore = out.walk.mode;
    step.tookReading = true;
    out.steps.push_back(step);
    out.turn = std::min(step.turnBefore + 1, out.walk.points.size());
  }
  return out;
}

} // namespace

BenchWalk::BenchWalk(BenchJob& job) : job_(job), weighing_(this) {
  const QSettings settings;
  meter_ = settings.value(meterKey()).toString().toStdString();
  by_ = settings.value(byKey()).toString().toStdString();
  connect(&job, &BenchJob::boardChanged, this, &BenchWalk::startOver);
  connect(&job, &BenchJob::jobOpened, this, [this] {
    const PartId part = partOfJob();
    // Booked in with the walk already begun: what was said of its condition stays.
    if (!part && badSession_.walk.readings.empty()) return;
    if (part) part_ = part;
    fillFromJob();
  });
  connect(&job, &BenchJob::goodWalksChanged, this, [this] {
    weigh();
    judge();
    rejudgeKept();
    Q_EMIT changed();
  });
}

Walk BenchWalk::emptyWalk(bool good) const {
  Walk walk;
  const OpenBoard* board = job_.board();
  if (board == nullptr || !part_) return walk;
  const Part* part = board->board->parts.find(part_);
  if (part == nullptr) return walk;
  walk.title = part->reference;
  walk.boardUuid = board->board->info.uuid;
  walk.boardName = board->board->info.name.valueOr("");
  walk.boardRevision = board->board->info.revision.valueOr("");
  walk.specimen = good ? Specimen::good : Specimen::faulty;
  walk.meter = meter_;
  walk.by = by_;
  walk.points = pointsOf(*board->lookup, part_);
  if (!good && job_.job() != nullptr) walk.serial = job_.job()->serial;
  return walk;
}

std::filesystem::path BenchWalk::goodFile() const {
  const OpenBoard* board = job_.board();
  return job_.folders().store /
         ("good-walk-" + (board != nullptr ? board->board->info.uuid : "") + ".netmend-walk.json");
}

void BenchWalk::startOver() {
  part_ = {};
  const auto parts = partsToWalk();
  if (!parts.empty()) part_ = parts.front();
  if (const PartId part = partOfJob()) part_ = part;
  live_ = nullptr;
  resumeGood();
  weigh();
  fillFromJob();
}

void BenchWalk::resumeGood() {
  goodSession_ = {};
  keptGood_.reset();
  goodCondition_ = false;
  const OpenBoard* board = job_.board();
  if (board == nullptr) return;
  goodSession_.walk = emptyWalk(true);
  std::error_code error;
  if (!std::filesystem::exists(goodFile(), error)) return;
  auto walk = readWalkFile(goodFile());
  if (!walk || walk->boardUuid != board->board->info.uuid) return;
  matchToBoard(*walk, *board->lookup);
  // The program ended after this walk went into the book and before its file went: it counts once.
  const auto inBook = [&](const Walk& kept) { return kept.readings == walk->readings; };
  if (std::any_of(job_.goodWalks().begin(), job_.goodWalks().end(), inBook)) {
    std::filesystem::remove(goodFile(), error);
    return;
  }
  if (!walk->points.empty())
    if (const Pin* pin = board->board->pins.find(walk->points.front().pin)) part_ = pin->part;
  goodCondition_ = !walk->readings.empty();
  goodSession_ = resumed(std::move(*walk));
}

PartId BenchWalk::partOfJob() const {
  const OpenBoard* board = job_.board();
  const Job* job = job_.job();
  if (board == nullptr || job == nullptr) return {};
  for (auto entry = job->readings.rbegin(); entry != job->readings.rend(); ++entry) {
    if (entry->purpose != ReadingPurpose::fault) continue;
    if (const Pin* pin = board->board->pins.find(entry->reading.point.pin); pin != nullptr && pin->part)
      return pin->part;
  }
  return {};
}

void BenchWalk::fillFromJob() {
  Walk walk = emptyWalk(false);
  kept_.clear();
  badCondition_ = false;
  if (const Job* job = job_.job()) {
    for (const JobReading& entry : job->readings) {
      if (entry.purpose != ReadingPurpose::fault) continue;
      if (std::find(walk.points.begin(), walk.points.end(), entry.reading.point) == walk.points.end())
        continue;
      walk.readings.push_back(entry.reading);
      walk.mode = entry.reading.mode;
      walk.condition = entry.reading.condition;
      walk.other = entry.reading.other;
      kept_.push_back(entry.id);
      badCondition_ = true;
    }
  }
  badSession_ = resumed(std::move(walk));
  last_.reset();
  judge();
  Q_EMIT changed();
}

std::vector<PartId> BenchWalk::partsToWalk() const {
  const OpenBoard* board = job_.board();
  if (board == nullptr) return {};
  struct Candidate {
    bool connector;
    std::size_t pins;
    PartId id;
  };
  std::vector<Candidate> found;
  for (const Part& part : board->board->parts) {
    const std::size_t pins = board->lookup->pinsOf(part.id).size();
    if (pins == 0) continue;
    found.push_back({part.kind.known() && part.kind.value == PartKind::connector, pins, part.id});
  }
  std::stable_sort(found.begin(), found.end(), [](const Candidate& a, const Candidate& b) {
    if (a.connector != b.connector) return a.connector;
    return a.pins > b.pins;
  });
  std::vector<PartId> out;
  out.reserve(found.size());
  for (const Candidate& candidate : found)
    out.push_back(candidate.id);
  return out;
}

void BenchWalk::setPart(PartId part) {
  if (part == part_) return;
  part_ = part;
  keptGood_.reset();
  const auto condition =
      badCondition_ ? std::make_optional(badSession_.walk.condition) : std::optional<Condition>();
  // A good walk under way stays what it is about; a new one begins with its first reading.
  if (goodSession_.walk.readings.empty()) goodSession_ = WalkSession{emptyWalk(true), 0, {}};
  fillFromJob();
  // The next connector of the same board is in the same condition.
  if (condition && !badCondition_) setCondition(*condition);
}

void BenchWalk::setGood(bool good) {
  if (!good && job_.job() == nullptr && !job_.bookIn()) return;
  good_ = good;
  if (good_ && goodSession_.walk.points.empty()) goodSession_ = WalkSession{emptyWalk(true), 0, {}};
  last_.reset();
  judge();
  Q_EMIT changed();
}

std::optional<ProbePoint> BenchWalk::due() const {
  if (session().finished()) return std::nullopt;
  return session().walk.points[session().turn];
}

std::vector<PointState> BenchWalk::points() const {
  std::vector<PointState> out;
  const Walk& walk = session().walk;
  for (std::size_t i = 0; i < walk.points.size(); ++i) {
    PointState state{walk.points[i], i == session().turn, false, std::nullopt};
    state.skipped = std::find(walk.skipped.begin(), walk.skipped.end(), walk.points[i]) != walk.skipped.end();
    for (std::size_t r = 0; r < walk.readings.size(); ++r)
      if (walk.readings[r].point == walk.points[i]) state.reading = r;
    out.push_back(std::move(state));
  }
  return out;
}

void BenchWalk::setCondition(const Condition& condition) {
  session().walk.condition = condition;
  (good_ ? goodCondition_ : badCondition_) = true;
  judge();
  Q_EMIT changed();
}

void BenchWalk::setMeter(const std::string& id) {
  if (id != meter_) QSettings().setValue(meterKey(), QString::fromStdString(id));
  meter_ = id;
  goodSession_.walk.meter = id;
  badSession_.walk.meter = id;
}

void BenchWalk::setBy(const std::string& name) {
  if (name != by_) QSettings().setValue(byKey(), QString::fromStdString(name));
  by_ = name;
  goodSession_.walk.by = name;
  badSession_.walk.by = name;
}

Result<void> BenchWalk::keep(WalkSession& after, const WalkSession& before) {
  if (good_) return writeWalkFile(goodFile(), after.walk);
  const std::size_t count = after.walk.readings.size();
  if (count > before.walk.readings.size()) {
    // Judged as the whole walk is shown, so that the book says what the screen says.
    const JudgedWalk judged = judgedBy(expected(), after.walk);
    const auto id = job_.addReading(
        toJobReading(after.walk.readings.back(), ReadingPurpose::fault, &judged.verdicts.back()));
    if (!id) return failure(id.error());
    kept_.push_back(*id);
  } else if (count < before.walk.readings.size()) {
    if (auto taken = job_.takeBackReading(kept_.back()); !taken) return taken;
    kept_.pop_back();
  }
  return {};
}

Result<void> BenchWalk::take(const ReadingEvent& event) {
  if (good_ && keptGood_ && goodSession_.steps.empty() && std::holds_alternative<UndoLast>(event))
    return takeBackKeptGood();
  if (!good_ && job_.job() == nullptr && !job_.bookIn())
    return failure({pattern("core", "the job could not be booked in")});
  WalkSession after = session();
  after.walk.meter = meter_;
  after.walk.by = by_;
  if (auto done = netmend::take(after, event, now()); !done) return done;
  const std::size_t count = session().walk.readings.size();
  if (auto kept = keep(after, session()); !kept) return kept;
  session() = std::move(after);
  if (good_) weigh();
  (good_ ? goodCondition_ : badCondition_) = true;
  judge();
  last_.reset();
  const Walk& walk = session().walk;
  const bool took = walk.readings.size() > count;
  if (took) {
    if (good_) keptGood_.reset();
    last_ = judged_.verdicts.back();
    const Reading& reading = walk.readings.back();
    Q_EMIT changed();
    Q_EMIT taken(fromText(reading.point.label), fromText(readingText(reading.value, reading.mode)),
                 fromText(word(last_->kind)), isFlag(last_->kind));
  } else {
    Q_EMIT changed();
  }
  return {};
}

Result<void> BenchWalk::type(const std::string& text) {
  std::istringstream in(text + "\n");
  const auto source = makeTextSource(in, "typed", mode());
  const auto event = source->next();
  if (!event) return failure({pattern("core", "nothing was typed")});
  if (!*event) return failure((*event).error());
  return take(**event);
}

void BenchWalk::goTo(std::size_t point) {
  WalkSession& walk = session();
  if (point >= walk.walk.points.size() || point == walk.turn) return;
  WalkSession::Step step;
  step.turnBefore = walk.turn;
  step.modeBefore = walk.walk.mode;
  walk.steps.push_back(step);
  walk.turn = point;
  last_.reset();
  Q_EMIT changed();
}

bool BenchWalk::keepGood() {
  if (goodSession_.walk.readings.empty()) return false;
  Walk walk = goodSession_.walk;
  const OpenBoard* board = job_.board();
  if (board != nullptr) walk.boardUuid = board->board->info.uuid;
  // Gone from here before the book tells that it has it: else the same board would count twice.
  WalkSession before = std::exchange(goodSession_, WalkSession{emptyWalk(true), 0, {}});
  if (!job_.keepGoodWalk(walk)) {
    goodSession_ = std::move(before);
    return false;
  }
  std::error_code error;
  std::filesystem::remove(goodFile(), error);
  before.walk = std::move(walk);
  keptGood_ = std::move(before);
  goodCondition_ = false;
  judge();
  Q_EMIT changed();
  return true;
}

Result<void> BenchWalk::takeBackKeptGood() {
  // First the file: a walk that is in both counts once, one that is in neither is lost.
  if (auto written = writeWalkFile(goodFile(), keptGood_->walk); !written) return written;
  const WalkSession empty = std::exchange(goodSession_, *keptGood_);
  if (auto taken = job_.takeBackGoodWalk(goodSession_.walk); !taken) {
    goodSession_ = empty;
    std::error_code error;
    std::filesystem::remove(goodFile(), error);
    return taken;
  }
  keptGood_.reset();
  goodCondition_ = true;
  last_.reset();
  Q_EMIT changed();
  return {};
}

} // namespace netmend

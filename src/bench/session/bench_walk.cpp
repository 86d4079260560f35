#include "bench_walk.h"

#include <algorithm>
#include <sstream>
#include <utility>

#include <QSettings>

#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/walk_file.h"
#include "netmend/probing/words.h"
#include "walk_turn.h"

namespace netmend {

namespace {

QString meterKey() {
  return QStringLiteral("bench/meter");
}
QString byKey() {
  return QStringLiteral("bench/by");
}

} // namespace

BenchWalk::BenchWalk(BenchJob& job) : job_(job) {
  const QSettings settings;
  meter_ = settings.value(meterKey()).toString().toStdString();
  by_ = settings.value(byKey()).toString().toStdString();
  connect(&job, &BenchJob::boardChanged, this, &BenchWalk::startOver);
  connect(&job, &BenchJob::jobOpened, this, &BenchWalk::jobOpened);
  connect(&job, &BenchJob::historyBegun, this, [this] {
    remembered_.clear();
    rememberGood();
  });
  connect(&job, &BenchJob::readingsChanged, this, &BenchWalk::followJob);
  connect(&job, &BenchJob::goingBackTo, this, [this](const ProbePoint& point, ReadingPurpose purpose) {
    if (purpose == ReadingPurpose::fault) showPoint(point);
  });
  connect(&job, &BenchJob::goodWalksChanged, this, [this] {
    judge();
    rejudgeKept();
    Q_EMIT changed();
  });
}

Walk BenchWalk::emptyWalk(bool good) const {
  Walk walk;
  const BoardUnderWork* board = job_.board();
  if (board == nullptr) return walk;
  walk.boardUuid = board->board->info.uuid;
  walk.boardName = board->board->info.name.valueOr("");
  walk.boardRevision = board->board->info.revision.valueOr("");
  walk.specimen = good ? Specimen::good : Specimen::faulty;
  walk.meter = meter_;
  walk.by = by_;
  if (!good && job_.job() != nullptr) walk.serial = job_.job()->serial;
  // A board of which no part is known yet can be walked by points that are named.
  if (const Part* part = board->board->parts.find(part_)) {
    walk.title = part->reference;
    walk.points = pointsOf(*board->lookup, part_);
    walk.skipped = pointsWithoutNet(*board->lookup, walk.points);
  }
  return walk;
}

WalkSession BenchWalk::takenUp(Walk walk) const {
  const BoardUnderWork* board = job_.board();
  auto passedOver =
      board != nullptr ? pointsWithoutNet(*board->lookup, walk.points) : std::vector<ProbePoint>();
  return resumed(std::move(walk), std::move(passedOver));
}

std::string BenchWalk::boardUuid() const {
  return job_.board() != nullptr ? job_.board()->board->info.uuid : std::string();
}

void BenchWalk::startOver() {
  // Drawn on meanwhile it is the same board: what was going to be walked still is.
  const BoardUnderWork* board = job_.board();
  const bool same =
      board != nullptr && boardUuid() == walkedUuid_ && board->board->parts.find(part_) != nullptr;
  walkedUuid_ = boardUuid();
  if (!same) {
    part_ = {};
    const auto parts = partsToWalk();
    if (!parts.empty()) part_ = parts.front();
    if (const PartId part = partOfJob()) part_ = part;
  }
  resumeGood();
  rememberGood();
  weigh();
  fillFromJob();
}

void BenchWalk::jobOpened() {
  const PartId part = partOfJob();
  // Booked in with the walk already begun: what was said of its condition stays.
  if (!part && badSession_.walk.readings.empty()) return;
  if (part) part_ = part;
  fillFromJob();
}

PartId BenchWalk::partOfJob() const {
  const BoardUnderWork* board = job_.board();
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
  badSession_ = begun(false);
  kept_.clear();
  badCondition_ = false;
  followJob();
  badSession_ = takenUp(std::move(badSession_.walk));
  last_.reset();
  Q_EMIT changed();
}

void BenchWalk::followJob() {
  Walk& walk = badSession_.walk;
  const Walk before = walk;
  const std::vector<JobReadingId> keptBefore = std::exchange(kept_, {});
  walk.readings.clear();
  if (const Job* job = job_.job()) {
    for (const JobReading& entry : job->readings) {
      if (entry.purpose != ReadingPurpose::fault) continue;
      if (std::find(walk.points.begin(), walk.points.end(), entry.reading.point) == walk.points.end())
        continue;
      walk.readings.push_back(entry.reading);
      kept_.push_back(entry.id);
    }
  }
  const auto holds = [](const std::vector<JobReadingId>& ids, JobReadingId id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
  };
  for (std::size_t i = 0; i < kept_.size(); ++i) {
    if (holds(keptBefore, kept_[i])) continue;
    const Reading& come = walk.readings[i];
    badSession_.turn = after(badSession_, come.point);
    walk.mode = come.mode;
    walk.condition = come.condition;
    walk.other = come.other;
    badCondition_ = true;
  }
  for (std::size_t i = 0; i < keptBefore.size(); ++i)
    if (!holds(kept_, keptBefore[i])) badSession_.turn = indexOf(walk, before.readings[i].point);
  if (kept_ != keptBefore) last_.reset();
  judge();
  if (!taking_) Q_EMIT changed();
}

void BenchWalk::showPoint(const ProbePoint& point) {
  if (good_) setGood(false);
  const BoardUnderWork* board = job_.board();
  const Pin* pin = board != nullptr ? board->board->pins.find(point.pin) : nullptr;
  if (pin != nullptr && pin->part) setPart(pin->part);
}

std::vector<PartId> BenchWalk::partsToWalk() const {
  const BoardUnderWork* board = job_.board();
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
  const auto condition =
      badCondition_ ? std::make_optional(badSession_.walk.condition) : std::optional<Condition>();
  // A good walk under way stays what it is about; a new one begins with its first reading.
  if (goodSession_.walk.readings.empty()) goodSession_ = begun(true);
  fillFromJob();
  // The next connector of the same board is in the same condition.
  if (condition && !badCondition_) setCondition(*condition);
}

void BenchWalk::setGood(bool good) {
  if (!good && job_.job() == nullptr && !job_.bookIn()) return;
  good_ = good;
  if (good_ && goodSession_.walk.points.empty()) goodSession_ = begun(true);
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
    PointState state{.point = walk.points[i], .due = i == session().turn};
    state.skipped = std::find(walk.skipped.begin(), walk.skipped.end(), walk.points[i]) != walk.skipped.end();
    const auto& passed = session().passedOver;
    state.hasNet = std::find(passed.begin(), passed.end(), walk.points[i]) == passed.end();
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

Result<void> BenchWalk::takeReading(const Reading& reading) {
  Walk& walk = badSession_.walk;
  // What the list lacks is a point of the walk from now on.
  if (indexOf(walk, reading.point) == walk.points.size()) walk.points.push_back(reading.point);
  taking_ = true;
  const auto id = job_.addReading(
      netmend::judged(reading, ReadingPurpose::fault, job_.judgeBasis(), job_.job()->readings));
  taking_ = false;
  return id ? Result<void>() : failure(id.error());
}

Result<void> BenchWalk::skip() {
  const WalkSession before = session();
  const ProbePoint point = before.walk.points[before.turn];
  const auto skipped = [point](WalkSession& session) -> Result<void> {
    session.walk.skipped.push_back(point);
    session.turn = dueAfterSkipping(session, indexOf(session.walk, point));
    return {};
  };
  const auto unskipped = [point](WalkSession& session) -> Result<void> {
    const auto last = std::find(session.walk.skipped.rbegin(), session.walk.skipped.rend(), point);
    if (last != session.walk.skipped.rend()) session.walk.skipped.erase(std::next(last).base());
    session.turn = indexOf(session.walk, point);
    return {};
  };
  const auto on = [this, good = good_, uuid = boardUuid()](const SessionChange& change) {
    return [this, good, uuid, change]() -> Result<void> {
      if (good) return changeGood(uuid, change);
      if (boardUuid() != uuid) return {};
      if (auto changed = change(badSession_); !changed) return changed;
      last_.reset();
      Q_EMIT changed();
      return {};
    };
  };
  return job_.perform(tr("skipped point"), on(skipped), on(unskipped));
}

Result<void> BenchWalk::take(const ReadingEvent& event) {
  if (std::holds_alternative<UndoLast>(event)) return job_.undo();
  if (!good_ && job_.job() == nullptr && !job_.bookIn())
    return failure({pattern("core", "the job could not be booked in")});
  // What a good board reads is kept for its kind: without one nobody would ever find it again.
  if (good_ && job_.board() == nullptr) return failure({pattern("core", "no board is open")});
  WalkSession after = session();
  const auto* value = std::get_if<ValueTaken>(&event);
  if (value != nullptr && value->again && last_)
    after.turn = indexOf(after.walk, after.walk.readings.back().point);
  after.walk.meter = meter_;
  after.walk.by = by_;
  if (auto done = netmend::take(after, event, timeNow()); !done) return done;
  if (std::holds_alternative<PointSkipped>(event)) return skip();
  if (after.walk.readings.size() == session().walk.readings.size()) {
    // Going back, or another mode.
    after.steps.clear();
    if (good_ && !after.walk.readings.empty())
      if (auto written = writeWalkFile(goodFile(boardUuid()), after.walk); !written) return written;
    session() = std::move(after);
    last_.reset();
    Q_EMIT changed();
    return {};
  }
  const Reading& reading = after.walk.readings.back();
  if (auto taken = good_ ? takeGood(reading) : takeReading(reading); !taken) return taken;
  (good_ ? goodCondition_ : badCondition_) = true;
  last_ = judged_.verdicts.back();
  Q_EMIT changed();
  Q_EMIT taken();
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
  walk.turn = point;
  last_.reset();
  Q_EMIT changed();
}

} // namespace netmend

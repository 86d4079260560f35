#include "bench_fault.h"

#include <algorithm>
#include <utility>

#include "netmend/casework/take_reading.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/jumper.h"

namespace netmend {

BenchFault::BenchFault(BenchJob& job, BenchWalk& walk)
    : job_(job), walk_(walk), solving_(this), routing_(this) {
  // What was chosen, and what cannot be reached, is of this job on this board.
  for (const auto other : {&BenchJob::boardChanged, &BenchJob::jobOpened})
    connect(&job, other, this, &BenchFault::followJob);
  connect(&walk, &BenchWalk::changed, this, &BenchFault::askAgain);
}

void BenchFault::askAgain() {
  follow();
  solve();
}

void BenchFault::follow() {
  if (chosen_) return;
  const BoardUnderWork* board = job_.board();
  const auto odd = walk_.oddOnes();
  net_ = {};
  pin_ = {};
  if (board == nullptr || odd.empty()) return;
  pin_ = walk_.walk(false).readings[odd.front()].point.pin;
  if (const Pin* pin = board->board->pins.find(pin_); pin != nullptr && pin->net.known())
    net_ = pin->net.value;
}

void BenchFault::choose(NetId net) {
  chosen_ = true;
  net_ = net;
  pin_ = {};
  unreachable_.clear();
  solve();
}

void BenchFault::choose(PinId pin) {
  chosen_ = true;
  pin_ = pin;
  net_ = {};
  if (const BoardUnderWork* board = job_.board())
    if (const Pin* found = board->board->pins.find(pin); found != nullptr && found->net.known())
      net_ = found->net.value;
  unreachable_.clear();
  solve();
}

/// What was chosen, as the board is now; false: it is not there any more.
bool BenchFault::chooseAgain() {
  const BoardUnderWork* board = job_.board();
  if (!chosen_ || board == nullptr) return false;
  const Pin* pin = board->board->pins.find(pin_);
  if (pin_ && pin == nullptr) return false;
  if (pin != nullptr) net_ = pin->net.known() ? pin->net.value : NetId();
  return pin != nullptr || board->board->nets.find(net_) != nullptr;
}

void BenchFault::followJob() {
  // Drawn on meanwhile it is the same board: the line that was chosen still is.
  const BoardUnderWork* board = job_.board();
  const About now{board != nullptr ? board->board->info.uuid : std::string(),
                  job_.job() != nullptr ? job_.job()->id : JobId()};
  const bool same = std::exchange(about_, now) == now && !now.board.empty();
  if (same && chooseAgain()) return solve();
  followWalk();
}

void BenchFault::followWalk() {
  chosen_ = false;
  unreachable_.clear();
  follow();
  solve();
}

std::string BenchFault::lineName() const {
  const BoardUnderWork* board = job_.board();
  if (board == nullptr) return "";
  if (const Net* net = board->board->nets.find(net_); net != nullptr && !net->name.empty()) return net->name;
  return pin_ ? pinLabel(*board->board, pin_) : "";
}

void BenchFault::solve() {
  routing_.cancel();
  const BoardUnderWork* board = job_.board();
  if (net_ != askedNet_ || pin_ != askedPin_) {
    // Another line: nobody shall take the old one's suspects for its.
    fault_ = nullptr;
    proposals_ = nullptr;
    whyNoProposals_ = {};
  }
  askedNet_ = net_;
  askedPin_ = pin_;
  if (board == nullptr || (!net_ && !pin_)) {
    solving_.cancel();
    fault_ = nullptr;
    proposals_ = nullptr;
    whyNoProposals_ = {};
    Q_EMIT changed();
    return;
  }
  FaultQuestion question;
  question.net = net_;
  question.pin = pin_;
  if (const Job* job = job_.job()) question.readings = evidenceOf(*job);
  question.expected = job_.expected();
  question.unreachable = unreachable_;
  // Data, board and what was found before are shared with the thread; none of them changes.
  solving_.run<Result<FaultCase>>(
      [question, board = *board, before = fault_, data = &job_.data()](const std::stop_token& stop) {
        return solveFault(board, question, *data, before.get(), stop);
      },
      [this](Result<FaultCase> fault) { solved(std::move(fault)); });
  Q_EMIT changed();
}

namespace {

/// With a repair chosen, the book's suspects are those of the line that it mends: looking at another line
/// leaves them, and with them the sheet, as they are.
bool isOfRepair(const Job& job, const std::string& line) {
  const auto mends = [&](const RepairAction& action) { return action.jumper && action.jumper->net == line; };
  return std::none_of(job.actions.begin(), job.actions.end(),
                      [](const RepairAction& action) { return action.jumper.has_value(); }) ||
         std::any_of(job.actions.begin(), job.actions.end(), mends);
}

} // namespace

void BenchFault::solved(Result<FaultCase> fault) {
  proposals_ = nullptr;
  whyNoProposals_ = {};
  if (!fault) {
    fault_ = nullptr;
    job_.fail(fault.error());
  } else {
    fault_ = std::make_shared<const FaultCase>(std::move(*fault));
    // Looking at a job that is over changes nothing; nor does what is known before the good walks are
    // weighed.
    if (const Job* job = job_.job(); job != nullptr && job->state < JobState::handedOver &&
                                     !job_.weighing() && !fault_->readings.empty() &&
                                     job_.board() != nullptr &&
                                     isOfRepair(*job, netmend::lineName(*job_.board()->board, fault_->line)))
      job_.setSuspects(toJobSuspects(fault_->isolation, fault_->names, fault_->suspects));
    route();
  }
  Q_EMIT changed();
}

void BenchFault::route() {
  const auto cut = suspectedCut(*fault_);
  if (!cut) {
    whyNoProposals_ = cut.error().said();
    return;
  }
  const BoardUnderWork* board = job_.board();
  routing_.run<Result<JumperProposals>>(
      [fault = fault_, cut = *cut, lookup = board->lookup, kept = board->board,
       data = &job_.data()](const std::stop_token&) { return proposeJumpers(*lookup, *fault, cut, *data); },
      [this](Result<JumperProposals> found) {
        if (found)
          proposals_ = std::make_shared<const JumperProposals>(std::move(*found));
        else
          whyNoProposals_ = found.error().said();
        if (proposals_ && proposals_->proposals.empty()) whyNoProposals_ = whyFewer(*proposals_);
        Q_EMIT changed();
      });
}

const ProbeProposal* BenchFault::nextProbe() const {
  if (!fault_ || fault_->next.stop || fault_->next.ranked.empty()) return nullptr;
  return &fault_->next.ranked.front();
}

void BenchFault::cannotReach() {
  const ProbeProposal* probe = nextProbe();
  if (probe == nullptr || solving()) return;
  const std::string place = fault_->isolation.places[probe->place].label;
  const auto out = [this, place]() -> Result<void> {
    unreachable_.push_back(place);
    solve();
    return {};
  };
  const auto back = [this, place]() -> Result<void> {
    std::erase(unreachable_, place);
    solve();
    return {};
  };
  static_cast<void>(job_.perform(tr("%1 out of reach").arg(QString::fromStdString(place)), out, back));
}

void BenchFault::reachAll() {
  unreachable_.clear();
  solve();
}

Result<void> BenchFault::keep(const Reading& reading) {
  if (job_.job() == nullptr && !job_.bookIn()) return failure({pattern("core", "no job is open")});
  const auto id =
      job_.addReading(judged(reading, ReadingPurpose::check, job_.judgeBasis(), job_.job()->readings));
  if (!id) return failure(id.error());
  lastTaken_ = *id;
  return {};
}

const JobReading* BenchFault::lastTaken() const {
  const Job* job = job_.job();
  if (job == nullptr || job->readings.empty() || job->readings.back().id != lastTaken_) return nullptr;
  return &job->readings.back();
}

Result<void> BenchFault::take(const ValueTaken& value) {
  const JobReading* before = value.again ? lastTaken() : nullptr;
  if (before == nullptr) return take(value.value, value.settling);
  Reading reading = readingNow(walk_.walk(false), before->reading.point, value.value);
  reading.other = before->reading.other;
  reading.mode = before->reading.mode;
  reading.settling = value.settling;
  return keep(reading);
}

Result<void> BenchFault::take(const std::optional<double>& value, Settling settling) {
  if (solving()) return failure({pattern("core", "the reading before is still being weighed")});
  const ProbeProposal* probe = nextProbe();
  if (probe == nullptr) return failure({pattern("core", "no probe is due")});
  const auto pointAt = [this](std::size_t index) {
    const ProbePlace& place = fault_->isolation.places[index];
    return ProbePoint{place.pin, place.label};
  };
  Reading reading = readingNow(walk_.walk(false), pointAt(probe->place), value);
  if (probe->other) reading.other = pointAt(*probe->other);
  reading.mode = probe->mode;
  reading.settling = settling;
  return keep(reading);
}

bool BenchFault::isPlaceOfLine(const std::string& label) const {
  if (!fault_) return false;
  const auto& places = fault_->isolation.places;
  return std::any_of(places.begin(), places.end(),
                     [&](const ProbePlace& place) { return place.label == label; });
}

Result<void> BenchFault::type(const std::string& text) {
  const ProbeProposal* probe = nextProbe();
  if (probe != nullptr)
    if (const auto value = parseReadingValue(text, probe->mode)) return take(value->value);
  const BoardUnderWork* board = job_.board();
  auto reading = parseReading(text, walk_.walk(false), board != nullptr ? board->lookup.get() : nullptr);
  if (!reading) return failure(reading.error());
  if (!reading->point.pin && !isPlaceOfLine(reading->point.label))
    return failure({pattern("core", "no such pin, and no place of this line"), "", "", reading->point.label,
                    pattern("core", "a pin such as J4.11, or a place as the next probe names it")});
  return keep(*reading);
}

bool BenchFault::accept(std::size_t proposal) {
  if (!proposals_ || proposal >= proposals_->proposals.size() || job_.board() == nullptr) return false;
  return job_.addAction(actionFor(*job_.board(), *fault_, proposals_->proposals[proposal], job_.data().work));
}

ProbePoint BenchFault::oddPoint() const {
  const BoardUnderWork* board = job_.board();
  if (board == nullptr) return {};
  if (pin_) return {pin_, pinLabel(*board->board, pin_)};
  for (const std::size_t odd : walk_.oddOnes()) {
    const ProbePoint& point = walk_.walk(false).readings[odd].point;
    const Pin* pin = board->board->pins.find(point.pin);
    if (pin != nullptr && pin->net.known() && pin->net.value == net_) return point;
  }
  return {};
}

Result<std::optional<Said>> BenchFault::addAction(const HandRepair& repair) {
  const Job* job = job_.job();
  if (job == nullptr) return failure({pattern("core", "no job is open")});
  const BoardUnderWork none;
  const BoardUnderWork& board = job_.board() != nullptr ? *job_.board() : none;
  auto made = handRepair(repair, {board, job_.expected(), job->readings, job_.data().work, oddPoint()});
  if (!made) return failure(made.error());
  if (!job_.addAction(made->action)) return failure({pattern("core", "not kept")});
  return made->doubt;
}

} // namespace netmend

#include "ledger.h"

#include <algorithm>
#include <chrono>

#include <fmt/format.h>
#include <sqlite3.h>

#include "netmend/probing/reading_entry.h"
#include "netmend/probing/walk_file.h"
#include "netmend/probing/words.h"

namespace netmend::testing {

namespace {

constexpr const char* proofWord = "\n  proof ";

/// When it was taken says which one it is: a point may be called otherwise when its board has been drawn on.
std::string textOf(const Reading& reading) {
  return fmt::format("{} {} at {}", readingText(reading.value, reading.mode), word(reading.mode),
                     reading.time.time_since_epoch().count());
}

std::vector<std::string> textsOf(const Walk& walk) {
  std::vector<std::string> out;
  for (const Reading& reading : walk.readings)
    out.push_back(textOf(reading));
  return out;
}

std::string textOf(const RepairAction& action) {
  std::string out = fmt::format("{} on {}: {}", static_cast<int>(action.kind), action.target, action.reason);
  for (const WorkStep& step : action.steps)
    out += fmt::format("\n  {}{} {} [{}]", step.done ? "x" : "-", step.function ? " function" : "", step.text,
                       step.note);
  for (const JobReadingId proof : action.proof)
    out += fmt::format("{}{}", proofWord, proof.value);
  return out;
}

Ledger::KeptJob keptOf(const Job& job) {
  Ledger::KeptJob out;
  out.number = job.number;
  out.over = job.state >= JobState::handedOver;
  out.words = {job.customer,      job.customerReference, job.device,
               job.serial,        job.symptom,           job.history,
               job.condition,     job.boardUuid,         job.boardName,
               job.boardRevision, job.boardFile,         job.boardDigest,
               job.currency,      job.internalNotes,     std::to_string(static_cast<int>(job.state))};
  for (const JobReading& each : job.readings)
    out.readings[each.id.value] =
        fmt::format("{} {} for {}, verdict {}{}", each.reading.point.label, textOf(each.reading),
                    static_cast<int>(each.purpose), static_cast<int>(each.kind()),
                    each.comesAndGoes ? ", comes and goes" : "");
  for (const RepairAction& each : job.actions)
    out.actions[each.id.value] = textOf(each);
  for (const Photo& each : job.photos)
    out.photos[each.id.value] = each.caption;
  for (const Charge& each : job.charges)
    out.charges[each.id.value] = each.what;
  return out;
}

/// In the file of the good board's walk that is under way.
std::vector<std::string> underWayIn(const std::filesystem::path& store, const std::string& uuid) {
  const auto file = store / ("good-walk-" + uuid + ".netmend-walk.json");
  if (!std::filesystem::exists(file)) return {};
  const auto walk = readWalkFile(file);
  return walk ? textsOf(*walk) : std::vector{walk.error().text()};
}

/// What differs, for a person to read.
std::string difference(const Ledger::KeptJob& shown, const Ledger::KeptJob& there) {
  std::string out;
  for (std::size_t i = 0; i < std::min(shown.words.size(), there.words.size()); ++i)
    if (shown.words[i] != there.words[i])
      out += fmt::format("\n  word {}: shown '{}', there '{}'", i, shown.words[i], there.words[i]);
  for (const auto list : {&Ledger::KeptJob::readings, &Ledger::KeptJob::actions, &Ledger::KeptJob::photos,
                          &Ledger::KeptJob::charges}) {
    for (const auto& [id, text] : shown.*list)
      if (!(there.*list).contains(id))
        out += fmt::format("\n  lost: {} {}", id, text);
      else if ((there.*list).at(id) != text)
        out += fmt::format("\n  shown: {} {}\n  there: {}", id, text, (there.*list).at(id));
    for (const auto& [id, text] : there.*list)
      if (!(shown.*list).contains(id)) out += fmt::format("\n  not shown: {} {}", id, text);
  }
  return out;
}

template <class Map> void noteGone(const Map& before, const Map& now, std::vector<std::string>& gone) {
  for (const auto& [id, text] : before)
    if (!now.contains(id)) gone.push_back(fmt::format("{} {}", id, text));
}

} // namespace

void Ledger::fault(const std::string& what) {
  faults_.push_back(what);
}

void Ledger::follow(BenchWindow& window) {
  window_ = &window;
  const Desk desk = window.desk();
  for (const auto shown : {&BenchJob::jobOpened, &BenchJob::jobChanged, &BenchJob::readingsChanged,
                           &BenchJob::actionsChanged, &BenchJob::papersChanged})
    connect(&desk.job, shown, this, &Ledger::jobShown);
  connect(&desk.job, &BenchJob::noticed, this, [this] { ++words_; });
  connect(&desk.job, &BenchJob::goodWalksChanged, this, &Ledger::goodKept);
  connect(&desk.walk, &BenchWalk::changed, this, &Ledger::goodShown);
  connect(&desk.walk, &BenchWalk::taken, this, [this, walk = &desk.walk] {
    const Reading& last = walk->walk().readings.back();
    announced(QString::fromStdString(last.point.label),
              QString::fromStdString(readingText(last.value, last.mode)));
  });
  jobShown();
}

void Ledger::jobShown() {
  const Job* job = window_->desk().job.job();
  if (job == nullptr) return;
  KeptJob now = keptOf(*job);
  const auto [at, first] = jobs_.try_emplace(job->id.value);
  if (!first) {
    noteGone(at->second.readings, now.readings, gone_);
    noteGone(at->second.actions, now.actions, gone_);
  }
  at->second = std::move(now);
}

void Ledger::goodKept() {
  const BenchJob& job = window_->desk().job;
  if (job.board() == nullptr) return;
  auto& kept = boards_[job.board()->board->info.uuid].kept;
  std::vector<std::vector<std::string>> now;
  for (const Walk& walk : job.goodWalks())
    now.push_back(textsOf(walk));
  for (const auto& walk : kept)
    if (std::find(now.begin(), now.end(), walk) == now.end())
      gone_.push_back(fmt::format("a good walk of {} readings", walk.size()));
  kept = std::move(now);
}

void Ledger::goodShown() {
  const Walk& walk = window_->desk().walk.walk(true);
  if (walk.boardUuid.empty()) return;
  GoodBoards& board = boards_[walk.boardUuid];
  std::vector<std::string> now = textsOf(walk);
  const bool kept =
      now.empty() && std::find(board.kept.begin(), board.kept.end(), board.underWay) != board.kept.end();
  for (const std::string& reading : board.underWay)
    if (!kept && std::find(now.begin(), now.end(), reading) == now.end())
      gone_.push_back("of the good board " + reading);
  board.underWay = std::move(now);
}

void Ledger::announced(const QString& point, const QString& value) {
  ++taken_;
  const Desk desk = window_->desk();
  std::string last = "nothing";
  if (desk.walk.good()) {
    const auto& underWay = boards_[desk.walk.walk(true).boardUuid].underWay;
    if (!underWay.empty()) last = underWay.back();
  } else if (const Job* job = desk.job.job()) {
    const auto& readings = jobs_[job->id.value].readings;
    if (!readings.empty()) last = readings.rbegin()->second;
  }
  if (last.find(value.toStdString()) == std::string::npos)
    fault(fmt::format("{} {} was announced as taken, and the last one shown is {}", point.toStdString(),
                      value.toStdString(), last));
}

/// What is taken back may be of a board that is not open: nothing of it is shown, and its file is rewritten.
void Ledger::readOtherBoards() {
  const BenchJob& job = window_->desk().job;
  for (auto& [uuid, board] : boards_) {
    if (job.board() != nullptr && job.board()->board->info.uuid == uuid) continue;
    std::vector<std::string> now = underWayIn(job.folders().store, uuid);
    for (const std::string& reading : board.underWay)
      if (std::find(now.begin(), now.end(), reading) == now.end())
        gone_.push_back("of another good board " + reading);
    board.underWay = std::move(now);
  }
}

void Ledger::delivered(const std::string& during) {
  if (words_ > 0) readOtherBoards();
  // An undo or redo takes back one thing.
  if (gone_.size() > static_cast<std::size_t>(words_))
    for (const std::string& gone : gone_)
      fault(fmt::format("gone, and nobody took it back, during {}: {}", during, gone));
  takenBack_ += static_cast<int>(gone_.size());
  gone_.clear();
  words_ = 0;
}

Ledger::Come Ledger::come() const {
  Come out{.jobs = jobs_.size()};
  for (const auto& [id, job] : jobs_) {
    out.readings += job.readings.size();
    out.repairs += job.actions.size();
    for (const auto& action : job.actions)
      for (auto at = action.second.find(proofWord); at != std::string::npos;
           at = action.second.find(proofWord, at + 1))
        ++out.proofs;
    out.photos += job.photos.size();
    out.charges += job.charges.size();
    out.handedOver += job.over ? 1U : 0U;
  }
  for (const auto& [uuid, board] : boards_)
    out.goodWalks += board.kept.size();
  return out;
}

void Ledger::check(const std::filesystem::path& store) {
  ++checks_;
  const std::filesystem::path path = store / "jobs.netmend-book";
  if (const std::string wrong = unsound(path); !wrong.empty()) fault("the book is not sound: " + wrong);
  const auto book = JobBook::open(path, BookUse::read);
  if (!book) return fault("the book does not open: " + book.error().text());
  checkJobs(*book);
  checkGood(*book, store);
}

void Ledger::checkJobs(const JobBook& book) {
  const auto all = book.jobs();
  if (!all) return fault("the book's jobs cannot be read: " + all.error().text());
  if (all->size() != jobs_.size())
    fault(fmt::format("{} jobs were shown, the book has {}", jobs_.size(), all->size()));
  for (const auto& [id, shown] : jobs_) {
    const auto job = book.job(JobId(id));
    if (!job) {
      fault(fmt::format("job {} is lost: {}", shown.number, job.error().text()));
      continue;
    }
    if (const KeptJob there = keptOf(*job); there != shown)
      fault(fmt::format("job {} differs:{}", shown.number, difference(shown, there)));
  }
}

void Ledger::checkGood(const JobBook& book, const std::filesystem::path& store) {
  for (const auto& [uuid, shown] : boards_) {
    GoodBoards there;
    const auto walks = book.knownGoodWalks(uuid);
    if (!walks) return fault("good walks cannot be read: " + walks.error().text());
    for (const Walk& walk : *walks)
      there.kept.push_back(textsOf(walk));
    there.underWay = underWayIn(store, uuid);
    if (there.kept != shown.kept)
      fault(fmt::format("board {}: {} good walks were shown as kept, the book has {}", uuid,
                        shown.kept.size(), there.kept.size()));
    if (there.underWay != shown.underWay)
      fault(fmt::format("board {}: {} readings of a good board were shown, the file has {}", uuid,
                        shown.underWay.size(), there.underWay.size()));
  }
}

std::string unsound(const std::filesystem::path& book) {
  sqlite3* db = nullptr;
  std::string out;
  const auto row = [](void* to, int columns, char** values, char**) {
    for (int i = 0; i < columns; ++i)
      *static_cast<std::string*>(to) += values[i] == nullptr ? " null" : std::string(" ") + values[i];
    return 0;
  };
  if (sqlite3_open_v2(book.c_str(), &db, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK) {
    out = "does not open";
  } else {
    sqlite3_busy_timeout(db, 10'000);
    std::string whole;
    if (sqlite3_exec(db, "pragma integrity_check", row, &whole, nullptr) != SQLITE_OK || whole != " ok")
      out = whole.empty() ? sqlite3_errmsg(db) : whole;
    // Prints a row for each key that points nowhere.
    if (sqlite3_exec(db, "pragma foreign_key_check", row, &out, nullptr) != SQLITE_OK)
      out += sqlite3_errmsg(db);
  }
  sqlite3_close(db);
  return out;
}

} // namespace netmend::testing

#include "netmend/jobbook/job_book.h"

#include <catch2/catch.hpp>

#include "jobbook/book_file.h"

#include <csignal>
#include <fstream>
#include <sqlite3.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace fs = std::filesystem;
using namespace netmend;

namespace {

/// The value, or a failed test that says why there is none.
template <class T> T must(Result<T> result) {
  if (!result) FAIL(result.error().text());
  return std::move(*result);
}

struct TemporaryBook {
  fs::path folder = fs::temp_directory_path() / ("netmend-book-test-" + std::to_string(::getpid()));
  fs::path path = folder / "jobs.netmend-book";
  TemporaryBook() { fs::create_directories(folder); }
  ~TemporaryBook() { fs::remove_all(folder); }
  [[nodiscard]] JobBook open() const { return must(JobBook::open(path, BookUse::make)); }
};

JobReading readingOf(std::optional<double> value) {
  JobReading out;
  out.reading.point = {PinId(17), "J4.11"};
  out.reading.other = {PinId(), "GND"};
  out.reading.value = value;
  out.reading.settling = Settling::settled;
  out.reading.time = Time(std::chrono::milliseconds(1'700'000'000'123));
  out.reading.meter = "handheld";
  out.reading.by = "bench 2";
  out.reading.condition = {{"display"}, false, {"C12", "L3"}, Celsius(21.5), "pressed at U4"};
  Judged judged;
  judged.verdict.kind = VerdictKind::open;
  judged.verdict.nothing = NothingBecause::judged;
  judged.verdict.odds = std::numeric_limits<double>::infinity();
  judged.verdict.rarity = 1.0 / 3.0;
  judged.verdict.offInSpreads = -0.1;
  judged.verdict.falseAlarmRate = 0.00125;
  Expected& expected = judged.verdict.expected.emplace();
  expected.from = ExpectedFrom::pinKind;
  expected.kind = PinKind::junction;
  expected.overLimitShare = 0.1;
  expected.humps = {{0.9, 0.45, 0.01, 7.5, 8.0}};
  expected.shown = {{0.43, 0.47}};
  expected.boards = 8;
  expected.boardsOverLimit = 1;
  expected.seen = ValueInterval{0.44, 0.46};
  judged.limits = ValueInterval{0.0, 0.9};
  judged.by = ExpectedBy::sameNet;
  judged.asAt = "J4.9";
  out.judged = judged;
  out.remark = "looked at twice";
  return out;
}

/// A value in every field that a name has.
PlaceName trackName() {
  PlaceName name;
  name.sort = PlaceName::Sort::track;
  name.layer = PlaceName::Layer::inner;
  name.from = {TrackEnd::Sort::via, "", {"J4.9", Heading::left, 21, {}}};
  name.to = {TrackEnd::Sort::fork, "", {"", {}, 0, {Length(5), Length(-6)}}};
  name.stretch = PlaceName::Stretch::between;
  name.fromTenths = 30;
  name.toTenths = 75;
  name.handle = "12.00,8.00 layer 2";
  return name;
}

JobSuspect suspectOnTrack() {
  JobSuspect out;
  out.fault = {FaultKind::open, trackName(), 3};
  out.probability = 0.87;
  out.prior = 0.125;
  out.samplingError = 0.0625;
  out.more = 2;
  out.at = Point{Length(31'200'000), Length(-14'000'000)};
  out.way = {Point{Length(1), Length(2)}, Point{Length(3), Length(4)}};
  JobEvidence volts;
  volts.at.sort = PlaceName::Sort::unknownWay;
  volts.at.beyond = {"U1.1", "U1.2"};
  volts.at.before = {"J4.1"};
  volts.temperature = Celsius(31.5);
  volts.value = 0.471;
  volts.foretold = {Foretold::What::volts, {0.25, Volts(0.453), Volts(0.0085)}, {}, {}};
  volts.bits = -5.1;
  JobEvidence ohms;
  ohms.at.sort = PlaceName::Sort::pad;
  ohms.at.label = "J4.9";
  ohms.other = PlaceName{};
  ohms.other->sort = PlaceName::Sort::via;
  ohms.other->beside = {"C1.1", Heading::above, 20, {}};
  ohms.other->layer = PlaceName::Layer::bottom;
  ohms.mode = ReadingMode::continuity;
  ohms.foretold = {Foretold::What::ohms, {}, Ohms(0.21), Ohms(0.3)};
  ohms.bits = 3.25;
  out.evidence = {volts, ohms};
  return out;
}

JumperRecord jumperRecord() {
  JumperRecord out;
  out.from.kind = LandingKind::outerTrack;
  out.from.name = trackName();
  out.from.at = {Length(5), Length(6)};
  out.from.side = Side::bottom;
  out.from.point = {PinId(), "0.00,0.00 bottom"};
  out.to.label = "J4.11 (connector pin)"; // as an older book has it
  out.to.at = {Length(7), Length(8)};
  out.to.side = Side::bottom;
  out.to.point = {PinId(17), "J4.11"};
  out.way = {out.from.at, out.to.at};
  out.side = Side::bottom;
  out.wire = "enamelled copper 0.10 mm";
  out.net = "KEY_COL3";
  WireFigures figures{Length(11), Length(12), "strip it", 3, Amperes(0.125), Volts(0.5), Ohms(0.75), {}};
  figures.prediction.atFrom = ExpectedReading{true, {}, {}};
  figures.prediction.bridged = ExpectedReading{false, Volts(0.453), Volts(0.012)};
  out.figures = figures;
  return out;
}

Job fullJob() {
  Job job;
  job.customer = "Pier works";
  job.customerReference = "PW/77";
  job.device = "tide logger";
  job.serial = "000123";
  job.symptom = "keypad column dead — \"0\" and 'Enter'";
  job.history = "keypad swapped; no change";
  job.condition = "salt at the edge";
  job.boardUuid = "b-1";
  job.boardName = "logger main";
  job.boardRevision = "C";
  job.boardFile = "logger.netmend-board.json";
  job.boardDigest = "abc";
  job.internalNotes = "regular";
  job.readings = {readingOf(std::nullopt), readingOf(0.45199999999999996)};
  job.suspects = {suspectOnTrack(), {}};
  job.suspects[1].fault.kind = FaultKind::noneOfThese;
  job.suspects[1].probability = 0.13;
  RepairAction action;
  action.target = "KEY_COL3";
  action.reason = "buried break";
  action.steps.resize(2);
  action.steps[0].text = "Scrape {from}";
  action.steps[0].done = true;
  action.steps[1].text = "Touch the bare copper";
  action.steps[1].check = true;
  action.steps[1].expected = "{expected_from}";
  action.steps[1].otherwise = "Stop.";
  action.steps[1].note = "slipped once";
  action.steps[1].read = CheckRead{0.449, StepOutcome::disagrees};
  StepMeasure measure;
  measure.mode = ReadingMode::ohms;
  measure.point = {PinId(7), "C12.1"};
  measure.other = {PinId(), "shell"};
  measure.interval = ValueInterval{0.1, 0.3};
  measure.overLimit = true;
  action.steps[1].measure = measure;
  action.steps[0].function = true;
  action.because = job.suspects[0].fault;
  action.jumper = jumperRecord();
  job.actions = {action};
  job.photos = {{PhotoId(), "before", "image/png", std::string("\x89PNG\0\r\n", 7)}};
  job.charges = {{ChargeId(), "track repair", parseDecimal("1.5").value(), parseDecimal("48.40").value()}};
  return job;
}

/// What a statement gives, straight through SQLite.
std::string askSqlite(const fs::path& path, const std::string& sql) {
  sqlite3* db = nullptr;
  REQUIRE(sqlite3_open(path.c_str(), &db) == SQLITE_OK);
  std::string out;
  const auto take = [](void* to, int, char** values, char**) {
    *static_cast<std::string*>(to) += values[0] == nullptr ? "null" : values[0];
    return 0;
  };
  CHECK(sqlite3_exec(db, sql.c_str(), take, &out, nullptr) == SQLITE_OK);
  sqlite3_close(db);
  return out;
}

} // namespace

TEST_CASE("a job comes back from the book as it went in") {
  const TemporaryBook file;
  const Job in = fullJob();
  JobId id;
  {
    auto book = file.open();
    id = must(book.addJob(in));
  }
  const Job out = file.open().job(id).value();
  CHECK(out.symptom == in.symptom);
  CHECK(out.customerReference == in.customerReference);
  CHECK(out.boardDigest == in.boardDigest);
  CHECK(out.internalNotes == in.internalNotes);
  REQUIRE(out.readings.size() == 2);
  CHECK(out.readings[0].reading == in.readings[0].reading);
  CHECK(out.readings[1].reading == in.readings[1].reading); // to the last bit of the double
  Judged judged = *in.readings[0].judged;
  judged.verdict.odds = std::numeric_limits<double>::max(); // what JSON can hold of infinity
  CHECK(out.readings[0].judged == judged);
  CHECK(out.readings[0].remark == "looked at twice");
  REQUIRE(out.suspects.size() == 2);
  CHECK(out.suspects == in.suspects);
  REQUIRE(out.actions.size() == 1);
  REQUIRE(out.actions[0].jumper);
  CHECK(out.actions[0].because == in.actions[0].because);
  const JumperRecord &was = *in.actions[0].jumper, &is = *out.actions[0].jumper;
  CHECK(is.from.kind == LandingKind::outerTrack);
  CHECK(is.from.name == was.from.name);
  CHECK(is.from.point == was.from.point);
  CHECK(is.from.label.empty());
  CHECK(is.to.label == "J4.11 (connector pin)");
  CHECK(is.to.side == Side::bottom);
  CHECK(is.way == was.way);
  CHECK(is.figures == was.figures);
  REQUIRE(out.actions[0].steps.size() == 2);
  CHECK(out.actions[0].steps[0].done);
  CHECK(out.actions[0].steps[0].function);
  CHECK_FALSE(out.actions[0].steps[0].measure);
  CHECK_FALSE(out.actions[0].steps[1].function);
  CHECK(out.actions[0].steps[1].measure == in.actions[0].steps[1].measure);
  CHECK(out.actions[0].steps[1].read == in.actions[0].steps[1].read);
  CHECK_FALSE(out.actions[0].steps[0].read);
  CHECK(out.actions[0].steps[1].note == "slipped once");
  CHECK(out.actions[0].steps[1].expected == "{expected_from}");
  CHECK(out.actions[0].steps[1].otherwise == "Stop.");
  CHECK(out.actions[0].jumper->to.point == in.actions[0].jumper->to.point);
  CHECK(out.actions[0].steps[1].check);
  REQUIRE(out.photos.size() == 1);
  CHECK(out.photos[0].bytes.text() == in.photos[0].bytes.text());
  REQUIRE(out.charges.size() == 1);
  CHECK(out.charges[0].quantity == in.charges[0].quantity);
  CHECK(out.charges[0].price == in.charges[0].price);
}

TEST_CASE("job numbers count up within the year and are never given twice") {
  const TemporaryBook file;
  auto book = file.open();
  const auto first = must(book.job(must(book.addJob({})))).number;
  const auto second = must(book.job(must(book.addJob({})))).number;
  REQUIRE(first.size() == 9);
  CHECK(first.substr(4) == "-0001");
  CHECK(second.substr(4) == "-0002");
  Job again;
  again.number = second;
  CHECK(wordsOf(book.addJob(again).error().message) == "job number is already taken");
  CHECK(must(book.jobs()).size() == 2);
}

TEST_CASE("a job is found by its number and by any word of what was booked in") {
  const TemporaryBook file;
  auto book = file.open();
  Job job = fullJob();
  job.number = "X-1";
  REQUIRE(book.addJob(job));
  REQUIRE(book.addJob({}));
  CHECK(book.jobNumbered("X-1").value().device == "tide logger");
  CHECK(wordsOf(book.jobNumbered("X-2").error().message) == "no such job");
  CHECK(book.jobs("TIDE").value().size() == 1);
  CHECK(book.jobs("pw/77").value().front().readings == 2);
  CHECK(book.jobs("%").value().empty());
}

TEST_CASE("what a job is changed to is kept, and its history says so") {
  const TemporaryBook file;
  auto book = file.open();
  Job job = book.job(must(book.addJob(fullJob()))).value();
  job.symptom = "works again";
  job.state = JobState::proving;
  REQUIRE(book.updateJob(job));
  REQUIRE(book.setState(job.id, JobState::handedOver));
  const Job after = book.job(job.id).value();
  CHECK(after.symptom == "works again");
  CHECK(after.state == JobState::handedOver);
  CHECK(after.readings.size() == 2);
  const auto history = book.history(job.id).value();
  REQUIRE(history.size() == 3);
  CHECK(history[1].state == JobState::proving);
  CHECK(history[2].state == JobState::handedOver);
}

TEST_CASE("steps ticked off and proof readings stay with their repair action") {
  const TemporaryBook file;
  auto book = file.open();
  Job job = book.job(must(book.addJob(fullJob()))).value();
  RepairAction action = job.actions[0];
  JobReading proof = readingOf(0.452);
  proof.purpose = ReadingPurpose::proof;
  action.proof = {book.addReading(job.id, proof).value()};
  action.steps[1].done = true;
  REQUIRE(book.updateAction(job.id, action));
  job = book.job(job.id).value();
  CHECK(job.actions[0].proof == action.proof);
  CHECK(job.actions[0].steps[1].done);
  CHECK(job.readings.back().purpose == ReadingPurpose::proof);
}

TEST_CASE("what is added together is there together, or not at all") {
  const TemporaryBook file;
  auto book = file.open();
  Job job = must(book.job(must(book.addJob(fullJob()))));
  JobAdditions additions;
  additions.readings = {readingOf(0.452), readingOf(std::nullopt)};
  additions.proven = job.actions[0].id;
  additions.changed = job.actions;
  additions.changed[0].steps[1].done = true;
  additions.actions = {RepairAction{}};
  additions.actions[0].target = "second";
  additions.charges = {{ChargeId(), "wire", Decimal{10000}, Decimal{5000}}};
  additions.state = JobState::proving;

  JobAdditions bad = additions;
  bad.changed.push_back(job.actions[0]);
  bad.changed[1].id = RepairActionId(999);
  const auto history = must(book.history(job.id)).size();
  CHECK_FALSE(book.add(job.id, bad));
  bad = additions;
  bad.proven = RepairActionId(999);
  CHECK_FALSE(book.add(job.id, bad));
  CHECK_FALSE(book.add(JobId(999), additions));
  Job after = must(book.job(job.id));
  CHECK(after.readings.size() == job.readings.size());
  CHECK(after.actions.size() == job.actions.size());
  CHECK_FALSE(after.actions[0].steps[1].done);
  CHECK(after.charges.size() == job.charges.size());
  CHECK(after.state == job.state);
  CHECK(must(book.history(job.id)).size() == history);

  const JobAdded added = must(book.add(job.id, additions));
  after = must(book.job(job.id));
  CHECK(after.readings.size() == job.readings.size() + 2);
  CHECK(after.actions[0].proof == added.readings);
  CHECK(after.actions[0].steps[1].done);
  CHECK(after.actions.at(1).id == added.actions.at(0));
  CHECK(after.charges.back().what == "wire");
  CHECK(after.state == JobState::proving);
}

TEST_CASE("a change to a job, an action or a reading that is not there is refused") {
  const TemporaryBook file;
  auto book = file.open();
  CHECK(wordsOf(book.addReading(JobId(99), readingOf(1.0)).error().message) == "no such job");
  CHECK_FALSE(book.setState(JobId(99), JobState::probing));
  const JobId id = book.addJob({}).value();
  RepairAction action;
  action.id = RepairActionId(5);
  CHECK_FALSE(book.updateAction(id, action));
  action.proof = {JobReadingId(12345)};
  CHECK_FALSE(book.addAction(id, action)); // the foreign key holds
  CHECK(book.job(id).value().actions.empty());
}

TEST_CASE("a walk of a good board is kept for later jobs on the same board, and only there") {
  const TemporaryBook file;
  auto book = file.open();
  Walk walk;
  walk.boardUuid = "b-1";
  walk.specimen = Specimen::good;
  walk.points = {{PinId(17), "J4.11"}};
  walk.readings = {readingOf(0.452).reading};
  REQUIRE(book.addKnownGoodWalk(walk).value());
  CHECK_FALSE(book.addKnownGoodWalk(walk).value()); // it is one board, however often its walk is handed in
  REQUIRE(must(book.knownGoodWalks("b-1")).size() == 1);
  CHECK(must(book.knownGoodWalks("b-1")).front() == walk);
  CHECK(must(book.knownGoodWalks("b-2")).empty());
  walk.specimen = Specimen::faulty;
  CHECK_FALSE(book.addKnownGoodWalk(walk));
}

TEST_CASE("what a bench has open is remembered, a job that it books in from the same moment on") {
  const TemporaryBook file;
  auto book = file.open();
  CHECK(must(book.leftOpen()) == LeftOpen{});
  const LeftOpen left{JobId(7), "/boards/one.netmend-board.json", 0};
  REQUIRE(book.leaveOpen(left));
  CHECK(must(file.open().leftOpen()) == left);
  // Jobs that others book in are not the bench's.
  const JobId others = must(book.addJob(fullJob()));
  CHECK(must(book.leftOpen()) == left);
  CHECK(must(book.job(others)).readings.size() == 2);

  Job next;
  const JobId open = must(book.addOpenJob(next));
  CHECK(must(file.open().leftOpen()) == LeftOpen{open, left.board, left.station});
  CHECK(must(book.job(open)).number.ends_with("-0002"));
  // One that is not booked in is not open either.
  next.number = must(book.job(open)).number;
  CHECK(wordsOf(book.addOpenJob(next).error().message) == "job number is already taken");
  CHECK(must(book.leftOpen()).job == open);
  CHECK(must(book.jobs()).size() == 2);
}

TEST_CASE("the book keeps a write-ahead log and checks its references") {
  const TemporaryBook file;
  { (void)file.open(); }
  CHECK(askSqlite(file.path, "pragma journal_mode") == "wal");
  CHECK(askSqlite(file.path, "pragma user_version") == "9");
  CHECK(askSqlite(file.path, "pragma integrity_check") == "ok");
}

TEST_CASE("a book written by a newer program is refused by version and left alone") {
  const TemporaryBook file;
  { (void)file.open(); }
  (void)askSqlite(file.path, "pragma user_version = 99");
  const auto result = JobBook::open(file.path, BookUse::make);
  REQUIRE_FALSE(result);
  CHECK(wordsOf(result.error().message) == "job book was written by a newer Netmend");
  CHECK(wordsOf(result.error().found) == "version 99");
  CHECK(askSqlite(file.path, "pragma user_version") == "99");
}

TEST_CASE("a file that is no job book, a folder and a damaged entry are told, not crashed on") {
  const TemporaryBook file;
  std::ofstream(file.folder / "text") << std::string(5000, 'x');
  CHECK_FALSE(JobBook::open(file.folder / "text", BookUse::make));
  CHECK_FALSE(JobBook::open(file.folder, BookUse::make));
  CHECK_FALSE(JobBook::open(file.folder / "no" / "where", BookUse::make));
  auto book = file.open();
  const JobId id = must(book.addJob(fullJob()));
  (void)askSqlite(file.path, "update reading set lifted = '[[['");
  CHECK(book.job(id).error().file == file.path.string());
  (void)askSqlite(file.path, "update reading set lifted = '[]', mode = 'guess'");
  CHECK(book.job(id).error().file == file.path.string());
  for (const char* judged : {"{", "{}", "[1]", R"({"kind":"odd"})"}) {
    (void)askSqlite(file.path, std::string("update reading set mode = 'diode', judged = '") + judged + "'");
    CHECK(book.job(id).error().file == file.path.string());
  }
}

TEST_CASE("a book is only made where one is asked for") {
  const TemporaryBook file;
  for (const BookUse use : {BookUse::read, BookUse::change}) {
    CHECK(wordsOf(JobBook::open(file.path, use).error().message) == "there is no job book");
    CHECK(fs::is_empty(file.folder));
  }
  std::ofstream(file.path).close();
  for (const BookUse use : {BookUse::read, BookUse::change, BookUse::make}) {
    CHECK(wordsOf(JobBook::open(file.path, use).error().message) == "is empty, and so no job book");
    CHECK(fs::file_size(file.path) == 0);
  }
  fs::remove(file.path);
  { (void)file.open(); }
  CHECK(std::distance(fs::directory_iterator(file.folder), {}) == 1); // nothing beside it
  CHECK(JobBook::open(file.path, BookUse::read).value().jobs().value().empty());
}

TEST_CASE("somebody else's database is told and left as it is") {
  const TemporaryBook file;
  (void)askSqlite(file.path, "create table song (title text); create table job (id integer)");
  const auto size = fs::file_size(file.path);
  for (const BookUse use : {BookUse::read, BookUse::make})
    CHECK(wordsOf(JobBook::open(file.path, use).error().message) == "is a database, but not a job book");
  CHECK(fs::file_size(file.path) == size);
  CHECK(askSqlite(file.path, "pragma journal_mode") == "delete");
  CHECK(askSqlite(file.path, "select count(*) from sqlite_master") == "2");
}

TEST_CASE("a book that nobody may write can be read, photos and all, and nothing else") {
  const TemporaryBook file;
  JobId id;
  {
    auto book = file.open();
    id = must(book.addJob(fullJob()));
  }
  fs::permissions(file.path, fs::perms(0444));
  fs::permissions(file.folder, fs::perms(0555));
  const bool root = ::geteuid() == 0;
  constexpr uid_t nobody = 65534;
  if (root) REQUIRE(::seteuid(nobody) == 0); // nothing is forbidden to root
  const auto opened = JobBook::open(file.path, BookUse::read);
  const auto job = opened ? opened->job(id) : Result<Job>(failure(opened.error()));
  const std::string photo = job ? job->photos.at(0).bytes.text() : "";
  const auto changed = JobBook::open(file.path, BookUse::change);
  const auto made = JobBook::open(file.path, BookUse::make);
  if (root) REQUIRE(::seteuid(0) == 0);
  fs::permissions(file.folder, fs::perms(0700));
  if (!job) FAIL(job.error().text());
  CHECK(job->readings.size() == 2);
  CHECK(photo == fullJob().photos[0].bytes.text());
  CHECK(wordsOf(changed.error().message) == "the job book can only be read");
  CHECK(wordsOf(made.error().message) == "the job book can only be read");
  CHECK(std::distance(fs::directory_iterator(file.folder), {}) == 1);
}

TEST_CASE("what the database reports is told in words, with what to do") {
  const auto said = [](int code) { return bookError(code, "as SQLite says it", "jobs.netmend-book"); };
  CHECK(wordsOf(said(SQLITE_FULL).message) == "the disk is full, so nothing of this was kept");
  CHECK(wordsOf(said(SQLITE_CORRUPT).message) == "the job book is damaged");
  CHECK(wordsOf(said(SQLITE_NOTADB).message) == "is not a job book");
  CHECK(wordsOf(said(SQLITE_READONLY_DIRECTORY).message) == "the job book can only be read");
  CHECK(wordsOf(said(SQLITE_BUSY_SNAPSHOT).message) == "another program is writing into the job book");
  CHECK(wordsOf(said(SQLITE_CANTOPEN).message) == "the job book cannot be opened");
  CHECK(wordsOf(said(SQLITE_IOERR_WRITE).message) == "the disk of the job book cannot be read or written");
  for (const int code : {SQLITE_FULL, SQLITE_CORRUPT, SQLITE_NOTADB, SQLITE_READONLY, SQLITE_BUSY,
                         SQLITE_CANTOPEN, SQLITE_IOERR}) {
    CHECK(said(code).file == "jobs.netmend-book");
    CHECK_FALSE(said(code).expected.empty());
  }
  CHECK(wordsOf(said(SQLITE_MISUSE).message) == "job book: as SQLite says it");
}

TEST_CASE("a damaged book is told as one") {
  const TemporaryBook file;
  {
    auto book = file.open();
    for (int i = 0; i < 50; ++i)
      (void)must(book.addJob(fullJob()));
  }
  const auto size = fs::file_size(file.path);
  {
    std::fstream bytes(file.path, std::ios::in | std::ios::out | std::ios::binary);
    bytes.seekp(static_cast<std::streamoff>(size / 8));
    bytes << std::string(size / 2, '\xa5');
  }
  const auto opened = JobBook::open(file.path, BookUse::read);
  const auto jobs =
      opened ? opened->jobs("nowhere") : Result<std::vector<JobSummary>>(failure(opened.error()));
  REQUIRE_FALSE(jobs);
  CHECK(wordsOf(jobs.error().message) == "the job book is damaged");
  CHECK(jobs.error().file == file.path.string());
}

TEST_CASE("two programs add readings to one job at the same time and none is lost") {
  const TemporaryBook file;
  auto first = file.open();
  const JobId id = first.addJob({}).value();
  const auto addMany = [&] {
    auto book = file.open();
    for (int i = 0; i < 50; ++i)
      (void)book.addReading(id, readingOf(i)).value();
  };
  std::jthread other(addMany);
  addMany();
  other.join();
  CHECK(first.job(id).value().readings.size() == 100);
}

TEST_CASE("what was taken back is put back under the id that it had") {
  const TemporaryBook file;
  auto book = file.open();
  const JobId id = book.addJob({}).value();
  JobReading reading = readingOf(1);
  reading.id = book.addReading(id, reading).value();
  RepairAction action;
  action.target = "J4.9";
  action.steps = {{"Warm it", false, "", true, ""}};
  action.proof = {reading.id};
  action.id = book.addAction(id, action).value();
  REQUIRE(book.takeBack(id, action.id));
  REQUIRE(book.takeBack(id, reading.id));
  CHECK_FALSE(book.putBack(id, action)); // its proof is not there
  REQUIRE(book.putBack(id, reading));
  REQUIRE(book.putBack(id, action));
  const Job job = book.job(id).value();
  REQUIRE(job.actions.size() == 1);
  CHECK(job.actions[0].id == action.id);
  CHECK(job.actions[0].steps[0].done);
  CHECK(job.actions[0].proof == std::vector{reading.id});
  CHECK(job.readings.at(0).id == reading.id);
  CHECK_FALSE(book.putBack(id, reading)); // it is there
  CHECK_FALSE(book.putBack(id, Charge{}));
  CHECK(book.addReading(id, readingOf(2)).value() != reading.id);
}

TEST_CASE("a reading that was acknowledged is there after a kill -9 the next moment") {
  const TemporaryBook file;
  const JobId id = file.open().addJob({}).value();
  std::size_t acknowledgedInAll = 0;
  for (int round = 0; round < 5; ++round) {
    int acknowledged[2];
    REQUIRE(::pipe(acknowledged) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      auto book = JobBook::open(file.path, BookUse::make);
      for (int i = 0; book; ++i) {
        if (!book->addReading(id, readingOf(i))) break;
        if (::write(acknowledged[1], "x", 1) != 1) break;
      }
      ::_exit(1);
    }
    ::close(acknowledged[1]);
    char token = 0;
    std::size_t count = 0;
    while (count < 7 && ::read(acknowledged[0], &token, 1) == 1)
      ++count;
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    while (::read(acknowledged[0], &token, 1) == 1)
      ++count;
    ::close(acknowledged[0]);
    REQUIRE(count >= 7);
    acknowledgedInAll += count;
    CHECK(file.open().job(id).value().readings.size() >= acknowledgedInAll);
  }
}

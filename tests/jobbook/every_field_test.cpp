// A job with a value of its own in every field, compared field by field: what is forgotten on the way into
// the book or out of it shows.
#include "every_field.h"

#include <fstream>

#include <sqlite3.h>

namespace fs = std::filesystem;
using namespace netmend;
using namespace netmend::test;

TEST_CASE("every field of a job comes back as it went in, once the book is opened anew") {
  const OneBook file;
  const Job was = everyField();
  const JobId id = file.open().addJob(was).value();
  const Job is = file.open().job(id).value();
  CHECK(is.id == id);
  CHECK(is.number == "X-17");
  CHECK(is.created == was.created);
  compare(is, was);
  compareAll(is.readings, was.readings);
  CHECK(is.suspects == was.suspects);
  compareAll(is.actions, was.actions);
  comparePhotosAndCharges(is, was);
}

TEST_CASE("a job that is added to piece by piece is the same as one booked in whole") {
  const OneBook file;
  auto book = file.open();
  const Job was = everyField();
  const JobId id = book.addJob({}).value();
  for (const JobReading& reading : was.readings)
    REQUIRE(book.addReading(id, reading));
  REQUIRE(book.setSuspects(id, was.suspects));
  for (const RepairAction& one : was.actions)
    REQUIRE(book.addAction(id, one));
  for (const Photo& photo : was.photos)
    REQUIRE(book.addPhoto(id, photo));
  for (const Charge& charge : was.charges)
    REQUIRE(book.addCharge(id, charge));
  Job head = was;
  head.id = id;
  REQUIRE(book.updateJob(head));
  const Job is = book.job(id).value();
  compare(is, was);
  compareAll(is.readings, was.readings);
  CHECK(is.suspects == was.suspects);
  compareAll(is.actions, was.actions);
  comparePhotosAndCharges(is, was);

  std::vector<JobEvent> history = book.history(id).value();
  for (JobEvent& event : history)
    event.time = {};
  const auto repair = [](RepairKind kind, const char* target) {
    return JobEvent{.kind = JobEvent::Kind::repairAdded, .text = target, .repair = kind};
  };
  CHECK(history ==
        std::vector<JobEvent>{{JobEvent::Kind::bookedIn},
                              {.kind = JobEvent::Kind::suspects, .number = 12},
                              repair(RepairKind::wire, "target 1"),
                              repair(RepairKind::resolder, "target 2"),
                              repair(RepairKind::removeBridge, "target 3"),
                              repair(RepairKind::removePart, "target 4"),
                              repair(RepairKind::replacePart, "target 5"),
                              repair(RepairKind::clean, "target 6"),
                              repair(RepairKind::cutTrack, "target 7"),
                              repair(RepairKind::jumper, ""),
                              {.kind = JobEvent::Kind::state, .state = JobState::returnedUnrepaired},
                              {.kind = JobEvent::Kind::boardUsed, .text = "digest"}});
}

TEST_CASE("an action that is replaced keeps nothing of what it was") {
  const OneBook file;
  auto book = file.open();
  Job job = everyField();
  const JobId id = book.addJob(job).value();
  job = book.job(id).value();
  RepairAction other = action(4);
  other.id = job.actions[2].id;
  other.proof = {job.readings[1].id, job.readings[3].id};
  REQUIRE(book.updateAction(id, other));
  Job after = book.job(id).value();
  compare(after.actions[2], other);
  compare(after.actions[1], job.actions[1]);
  other.jumper.reset();
  other.because.reset();
  other.steps.resize(1);
  other.proof = {job.readings[2].id};
  REQUIRE(book.updateAction(id, other));
  compare(book.job(id).value().actions[2], other);
  // Of another job it is none.
  const JobId second = book.addJob({}).value();
  CHECK_FALSE(book.updateAction(second, other));
  CHECK(wordsOf(book.updateAction(second, other).error().message) == "the job has no such repair action");
  CHECK(wordsOf(book.updateAction(second, other).error().found) == std::to_string(other.id.value));
}

TEST_CASE("what is said of readings is replaced: verdict, remark, and whether it comes and goes") {
  const OneBook file;
  auto book = file.open();
  const JobId id = book.addJob(everyField()).value();
  const std::vector<JobReading> before = book.job(id).value().readings;
  JobReading one = before[0], two = before[1];
  one.judged = jobReading(6).judged;
  one.remark = "looked at again";
  one.comesAndGoes = false;
  two.judged.reset();
  two.comesAndGoes = true;
  const JobId other = book.addJob({}).value();
  REQUIRE(book.rejudge(other, {one, two})); // they are not that job's
  compareAll(book.job(id).value().readings, before);
  REQUIRE(book.rejudge(id, {one, two}));
  const std::vector<JobReading> after = book.job(id).value().readings;
  compare(after[0], one);
  compare(after[1], two);
  compare(after[2], before[2]);
}

TEST_CASE("readings are moved to other points with what they say there, and nothing else of them changes") {
  const OneBook file;
  auto book = file.open();
  const JobId id = book.addJob(everyField()).value();
  const std::vector<JobReading> before = book.job(id).value().readings;
  JobReading one = before[0], two = before[1];
  one.reading.point = {PinId(77), "J9.7"};
  one.judged = jobReading(6).judged;
  two.reading.point = {PinId{}, "J9.8"};
  two.judged.reset();
  const JobId other = book.addJob({}).value();
  REQUIRE(book.moveReadings(other, {one, two})); // they are not that job's
  compareAll(book.job(id).value().readings, before);
  JobReading asked = one;
  asked.remark = "not asked to be changed";
  asked.reading.value = 0.123;
  REQUIRE(book.moveReadings(id, {asked, two}));
  const std::vector<JobReading> after = book.job(id).value().readings;
  compare(after[0], one);
  compare(after[1], two);
  compare(after[2], before[2]);
  CHECK_FALSE(book.moveReadings(JobId(99), {one}));
}

TEST_CASE("taken back and put back is every kind of entry, and the history keeps both") {
  const OneBook file;
  auto book = file.open();
  const JobId id = book.addJob(everyField()).value();
  const JobId other = book.addJob({}).value();
  const Job was = book.job(id).value();
  const std::size_t events = book.history(id).value().size();
  for (const JobId wrong : {other, JobId(99)}) {
    CHECK_FALSE(book.takeBack(wrong, was.readings[0].id));
    CHECK_FALSE(book.takeBack(wrong, was.actions[0].id));
    CHECK_FALSE(book.takeBack(wrong, was.photos[0].id));
    CHECK_FALSE(book.takeBack(wrong, was.charges[0].id));
  }
  CHECK(wordsOf(book.takeBack(other, was.charges[0].id).error().message) == "the job has no such entry");
  CHECK(wordsOf(book.takeBack(other, was.charges[0].id).error().found) ==
        "charge " + std::to_string(was.charges[0].id.value));
  CHECK(wordsOf(book.takeBack(JobId(99), was.charges[0].id).error().message) == "no such job");
  CHECK(wordsOf(book.takeBack(JobId(99), was.charges[0].id).error().found) == "job id 99");
  CHECK(book.history(id).value().size() == events);

  REQUIRE(book.takeBack(id, was.readings[7].id));
  REQUIRE(book.takeBack(id, was.actions[6].id));
  REQUIRE(book.takeBack(id, was.photos[1].id));
  REQUIRE(book.takeBack(id, was.charges[1].id));
  const Job without = book.job(id).value();
  CHECK(without.readings.size() == was.readings.size() - 1);
  CHECK(without.actions.size() == was.actions.size() - 1);
  CHECK(without.photos.size() == 1);
  CHECK(without.charges.size() == 1);
  REQUIRE(book.putBack(id, was.readings[7]));
  REQUIRE(book.putBack(id, was.actions[6]));
  REQUIRE(book.putBack(id, was.photos[1]));
  REQUIRE(book.putBack(id, was.charges[1]));
  const Job is = book.job(id).value();
  compareAll(is.readings, was.readings);
  compareAll(is.actions, was.actions);
  comparePhotosAndCharges(is, was);
  CHECK(is.photos[1].id == was.photos[1].id);
  CHECK(is.charges[1].id == was.charges[1].id);
  const auto history = book.history(id).value();
  REQUIRE(history.size() == events + 8);
  using Event = JobEvent;
  const auto isEvent = [&](std::size_t at, Event::Kind kind, Event::Entry entry, std::uint64_t number) {
    const Event& event = history[events + at];
    CHECK(event == Event{.kind = kind, .entry = entry, .number = number, .time = event.time});
    CHECK(event.time >= history[0].time);
  };
  for (const auto& [at, kind] :
       {std::pair{std::size_t{0}, Event::Kind::takenBack}, {4, Event::Kind::putBack}}) {
    isEvent(at, kind, Event::Entry::reading, 8);
    isEvent(at + 1, kind, Event::Entry::repairAction, 7);
    isEvent(at + 2, kind, Event::Entry::photo, 2);
    isEvent(at + 3, kind, Event::Entry::charge, 2);
  }
  const auto refused = book.putBack(id, JobReading{});
  REQUIRE_FALSE(refused);
  CHECK(wordsOf(refused.error().message) == "what is put back has no id");
}

TEST_CASE("photos that are known are not read again, and those of a job gone by are empty") {
  const OneBook file;
  auto book = file.open();
  const JobId id = book.addJob(everyField()).value();
  const Job first = book.job(id).value();
  std::vector<Photo> known{first.photos[1]};
  known[0].bytes = std::string("kept in memory");
  const Job again = book.job(id, known).value();
  CHECK(again.photos[0].bytes.text() == first.photos[0].bytes.text());
  CHECK(again.photos[1].bytes.text() == "kept in memory");
}

TEST_CASE("jobs are listed newest first, with what one line of a list says") {
  const OneBook file;
  auto book = file.open();
  const Job full = everyField();
  const JobId old = book.addJob(full).value();
  Job plain;
  plain.created = full.created + std::chrono::milliseconds(1);
  plain.number = "X-18";
  const JobId newer = book.addJob(plain).value();
  plain.number = "X-19"; // of the same moment: the one booked in later comes first
  const JobId last = book.addJob(plain).value();
  const auto all = book.jobs().value();
  REQUIRE(all.size() == 3);
  CHECK(all[0].id == last);
  CHECK(all[1].id == newer);
  CHECK(all[2].id == old);
  CHECK(all[2].number == "X-17");
  CHECK(all[2].created == full.created);
  CHECK(all[2].customer == "customer");
  CHECK(all[2].device == "device");
  CHECK(all[2].symptom == "symptom");
  CHECK(all[2].state == JobState::returnedUnrepaired);
  CHECK(all[2].readings == full.readings.size());
  CHECK_FALSE(all[2].compared);
  Walk good;
  good.boardUuid = full.boardUuid;
  good.specimen = Specimen::good;
  good.readings.resize(1);
  good.readings.front().point.label = "J4.9";
  REQUIRE(book.addKnownGoodWalk(good).value());
  CHECK(book.jobs().value()[2].compared);
  for (const char* word : {"x-17", "customer", "reference", "device", "serial", "symptom", "history",
                           "condition", "board", "notes", "target 3", "reason 4", "open: via", "label 6"}) {
    INFO(word);
    const auto found = book.jobs(word).value();
    REQUIRE(found.size() == 1);
    CHECK(found[0].id == old);
  }
  CHECK(book.jobs("digest").value().empty()); // not what anybody wrote
}

TEST_CASE("a number goes on from the year's highest, over four digits too") {
  const OneBook file;
  auto book = file.open();
  const std::string year = book.job(book.addJob({}).value()).value().number.substr(0, 5);
  const auto next = [&] { return book.job(book.addJob({}).value()).value().number; };
  const auto take = [&](const std::string& number) {
    Job job;
    job.number = number;
    REQUIRE(book.addJob(job));
  };
  take(year + "0009");
  CHECK(next() == year + "0010");
  take(year + "0998");
  CHECK(next() == year + "0999");
  CHECK(next() == year + "1000");
  take(year + "9998");
  CHECK(next() == year + "9999");
  CHECK(next() == year + "10000");
  CHECK(next() == year + "10001");
  take("1999-20000"); // another year's
  take(year + "abc");
  CHECK(next() == year + "10002");
}

TEST_CASE("only what changes of a job's head is said in its history") {
  const OneBook file;
  auto book = file.open();
  Job job = book.job(book.addJob(everyField()).value()).value();
  job.customer = "somebody else";
  REQUIRE(book.updateJob(job));
  CHECK(book.history(job.id).value().size() == 1);
  job.boardDigest = "other digest";
  REQUIRE(book.updateJob(job));
  job.state = JobState::probing;
  REQUIRE(book.updateJob(job));
  const auto history = book.history(job.id).value();
  REQUIRE(history.size() == 3);
  CHECK(history[1].kind == JobEvent::Kind::boardUsed);
  CHECK(history[1].text == "other digest");
  CHECK(history[2].kind == JobEvent::Kind::state);
  CHECK(history[2].state == JobState::probing);
  CHECK(history[0].time <= history[2].time);
  job.id = JobId(99);
  CHECK(wordsOf(book.updateJob(job).error().found) == "job id 99");
  REQUIRE(book.setSuspects(JobId(1), {}));
  CHECK(book.history(JobId(1)).value().back().kind == JobEvent::Kind::suspects);
  CHECK(book.history(JobId(1)).value().back().number == 0);
  CHECK(book.job(JobId(1)).value().suspects.empty());
}

TEST_CASE("yes and no are kept as 1 and 0, and what is not known as nothing") {
  const OneBook file;
  { REQUIRE(file.open().addJob(everyField())); }
  const auto asked = [&](const std::string& question) {
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open(file.path.c_str(), &db) == SQLITE_OK);
    std::string out;
    const auto take = [](void* to, int count, char** values, char**) {
      for (int i = 0; i < count; ++i)
        *static_cast<std::string*>(to) += std::string(values[i] == nullptr ? "-" : values[i]) + " ";
      return 0;
    };
    CHECK(sqlite3_exec(db, question.c_str(), take, &out, nullptr) == SQLITE_OK);
    sqlite3_close(db);
    return out;
  };
  CHECK(asked("select powered from reading order by id") == "0 1 0 1 0 1 0 1 0 ");
  CHECK(asked("select comes_and_goes from reading order by id") == "1 0 1 0 1 0 1 0 0 ");
  CHECK(asked("select is_check, done, is_function from work_step where action = 1 order by position") ==
        "0 0 0 1 0 0 0 1 0 1 0 0 0 0 1 1 1 0 ");
  CHECK(asked("select value, temperature, injected, judged from reading where id = 9") == "- - -  ");
  CHECK(asked("select x, y, way, found != '' from suspect where id = 1") == "1 -1 [[1,1],[1,2]] 1 ");
  CHECK(asked("select x, y, way, found != '' from suspect where id = 11") == "- - [] 1 ");
  CHECK(asked("select x, y, way, found != '' from suspect where id = 12") == "- - [] 0 ");
  CHECK(asked("select jumper is null, because = '' from repair_action order by id") ==
        "0 0 0 0 0 0 0 0 0 0 0 0 0 0 1 1 ");
  CHECK(asked("select quantity, price from charge order by id") == "15000 484000 1 -2 ");
}

TEST_CASE("what is no book is told as what it is") {
  const OneBook file;
  const auto said = [&](const fs::path& path) {
    const auto opened = JobBook::open(path, BookUse::change);
    REQUIRE_FALSE(opened);
    CHECK(opened.error().file == path.string());
    CHECK_FALSE(opened.error().expected.empty());
    return wordsOf(opened.error().message);
  };
  CHECK(said(file.folder) == "is a folder");
  CHECK(said(file.folder / "none") == "there is no job book");
  const auto with = [&](const std::string& bytes) {
    std::ofstream(file.folder / "other", std::ios::binary | std::ios::trunc) << bytes;
    return said(file.folder / "other");
  };
  CHECK(with("") == "is empty, and so no job book");
  CHECK(with("S") == "is not a job book");
  CHECK(with("SQLite format 3") == "is not a job book"); // the zero is missing
  CHECK(with("SQLite format 4" + std::string(100, '\0')) == "is not a job book");
  CHECK(wordsOf(JobBook::open(file.folder / "a\"b", BookUse::make).error().message) ==
        "a job book's path cannot hold a quotation mark");
}

TEST_CASE("what is not known of a job stays unknown, each by itself") {
  const OneBook file;
  Job was;
  was.readings.resize(2);
  was.readings[0].judged = Judged{};
  was.readings[1].judged = Judged{};
  was.readings[1].judged->verdict.expected = Expected{}; // and nothing was seen
  was.suspects.resize(1);
  was.suspects[0].evidence.resize(1);
  was.actions.resize(2);
  was.actions[0].steps.resize(2);
  was.actions[0].steps[0].measure = StepMeasure{};
  was.actions[0].steps[1].read = CheckRead{};
  was.actions[0].jumper = JumperRecord{};
  was.actions[1].jumper = JumperRecord{};
  was.actions[1].jumper->figures = WireFigures{};
  auto book = file.open();
  const JobId id = book.addJob(was).value();
  const Job is = book.job(id).value();
  compareAll(is.readings, was.readings);
  CHECK(is.suspects == was.suspects);
  compareAll(is.actions, was.actions);
  CHECK(is.created != Time{}); // when it was booked in, where nobody said another time
}

TEST_CASE("a walk of a good board is taken back, the very same one and once") {
  const OneBook file;
  auto book = file.open();
  Walk first, second;
  first.boardUuid = second.boardUuid = "b-1";
  first.specimen = second.specimen = Specimen::good;
  first.title = "first";
  second.title = "second";
  REQUIRE(book.addKnownGoodWalk(first).value());
  REQUIRE(book.addKnownGoodWalk(second).value());
  REQUIRE(book.takeBackKnownGoodWalk(first));
  const auto left = book.knownGoodWalks("b-1").value();
  REQUIRE(left.size() == 1);
  CHECK(left[0] == second);
  const auto again = book.takeBackKnownGoodWalk(first);
  REQUIRE_FALSE(again);
  CHECK(wordsOf(again.error().message) == "the book has no such walk of a good board");
  CHECK(wordsOf(again.error().found) == "first");
  second.specimen = Specimen::faulty;
  CHECK(wordsOf(book.addKnownGoodWalk(second).error().message) ==
        "only the walk of a board marked good can be kept as known good");
}

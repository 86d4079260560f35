#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>

#include <sqlite3.h>
#include <unistd.h>

#include "netmend/jobbook/job_book.h"

using namespace netmend;
namespace fs = std::filesystem;

namespace {

/// A book as version 3 wrote it: the demo's job, half repaired and with first proofs (old/version-3.sql).
struct OldBook {
  fs::path folder = fs::temp_directory_path() / ("netmend-old-book-" + std::to_string(::getpid()));
  fs::path path = folder / "jobs.netmend-book";

  OldBook() {
    fs::create_directories(folder);
    std::ifstream in(fs::path(NETMEND_SOURCE_DIR) / "tests" / "jobbook" / "old" / "version-3.sql");
    std::stringstream sql;
    sql << in.rdbuf();
    change(sql.str());
  }
  OldBook(const OldBook&) = delete;
  OldBook& operator=(const OldBook&) = delete;
  ~OldBook() {
    fs::permissions(folder, fs::perms::owner_all);
    fs::remove_all(folder);
  }
  void change(const std::string& sql) const {
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &db) == SQLITE_OK);
    REQUIRE(sqlite3_exec(db, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(db);
  }
  [[nodiscard]] Job job(BookUse use) const {
    auto book = JobBook::open(path, use);
    if (!book) throw std::runtime_error(book.error().text());
    return book->jobNumbered("2026-0001").value();
  }
};

const JobReading& readingAt(const Job& job, const std::string& label, ReadingPurpose purpose) {
  for (const JobReading& entry : job.readings)
    if (entry.reading.point.label == label && entry.purpose == purpose) return entry;
  throw std::runtime_error("no reading at " + label);
}

void checkJob(const Job& job) {
  CHECK(job.history == "battery swollen"); // what was typed stays as it is
  CHECK(job.internalNotes == "short on time");
  REQUIRE(job.readings.size() == 19);

  const JobReading& open = readingAt(job, "J4.9", ReadingPurpose::fault);
  REQUIRE(open.judged);
  CHECK(open.kind() == VerdictKind::open);
  CHECK(open.judged->fromOldBook);
  REQUIRE(open.judged->verdict.expected);
  REQUIRE(open.judged->verdict.expected->shown.size() == 1);
  CHECK(open.judged->verdict.expected->shown.front().lowest == 0.619);
  CHECK(open.judged->verdict.expected->shown.front().highest == 0.669);
  CHECK_FALSE(open.judged->verdict.expected->expectsOverLimit());
  CHECK_FALSE(open.judged->verdict.expected->onlyOverLimit());
  CHECK(open.remark.starts_with("reads OL; 3 good boards read "));

  const JobReading& after = readingAt(job, "J4.9", ReadingPurpose::proof);
  CHECK(after.kind() == VerdictKind::inRange);
  CHECK(after.reading.value == 0.651);
  const JobReading& wire = readingAt(job, "via at (19.50, 9.00) mm", ReadingPurpose::proof);
  CHECK(wire.kind() == VerdictKind::inRange);
  REQUIRE(wire.judged->verdict.expected);
  CHECK(wire.judged->verdict.expected->shown.front().highest == 1.48);

  REQUIRE(job.actions.size() == 1);
  REQUIRE(job.actions[0].steps.size() > 20);
  CHECK(job.actions[0].steps[3].done);
  CHECK_FALSE(job.actions[0].steps[4].done);
  CHECK(job.actions[0].steps[3].expected.starts_with("OL in diode mode: go on."));
  const std::vector<WorkStep>& steps = job.actions[0].steps;
  REQUIRE(steps[0].measure); // 0 V across the battery contacts
  CHECK(steps[0].measure->mode == ReadingMode::volts);
  CHECK(steps[0].measure->interval == ValueInterval{-0.5, 0.5});
  CHECK_FALSE(steps[1].measure); // no check
  REQUIRE(steps[3].measure);     // touch the via
  CHECK(steps[3].measure->overLimit);
  CHECK(steps[3].measure->point.label == "via at (19.50, 9.00) mm");
  REQUIRE(steps[4].measure); // touch C28.1: 0.644 V ± 14 mV
  CHECK(steps[4].measure->point.label == "C28.1");
  REQUIRE(steps[4].measure->interval);
  CHECK(steps[4].measure->interval->lowest == Approx(0.630));
  CHECK(steps[4].measure->interval->highest == Approx(0.658));
  CHECK(steps.back().function);
  CHECK_FALSE(steps.back().measure);
  CHECK(std::count_if(steps.begin(), steps.end(), [](const WorkStep& s) { return s.function; }) == 1);
  REQUIRE(job.actions[0].jumper);
  CHECK(job.actions[0].jumper->from.point.label == "via at (19.50, 9.00) mm");
  CHECK(job.actions[0].jumper->to.point.label == "C28.1");
  CHECK(job.actions[0].proof.size() == 3);
  REQUIRE(job.charges.size() == 1);
  REQUIRE_FALSE(job.suspects.empty());
  CHECK(job.suspects[0].probability > 0.5);
}

} // namespace

TEST_CASE("A book of an older version opens with every figure, verdict, step and charge", "[jobbook]") {
  const OldBook old;
  checkJob(old.job(BookUse::change));
  checkJob(old.job(BookUse::change)); // and again, brought up to date
}

TEST_CASE("The history of an older book stays word for word, and goes on in facts", "[jobbook]") {
  const OldBook old;
  auto book = JobBook::open(old.path, BookUse::change).value();
  const JobId id = book.jobNumbered("2026-0001").value().id;
  const auto before = book.history(id).value();
  REQUIRE(before.size() > 3);
  CHECK(before[0].kind == JobEvent::Kind::asWritten);
  CHECK(before[0].text == "booked in");
  for (const JobEvent& event : before)
    CHECK_FALSE(event.text.empty());
  REQUIRE(book.setState(id, JobState::handedOver));
  const auto after = book.history(id).value();
  REQUIRE(after.size() == before.size() + 1);
  CHECK(std::equal(before.begin(), before.end(), after.begin()));
  CHECK(after.back().kind == JobEvent::Kind::state);
  CHECK(after.back().state == JobState::handedOver);
}

TEST_CASE("An older book is copied beside itself before it is brought up to date, once", "[jobbook]") {
  const OldBook old;
  const fs::path copy = old.path.string() + ".version-3";
  REQUIRE_FALSE(fs::exists(copy));
  (void)old.job(BookUse::change);
  REQUIRE(fs::exists(copy));
  sqlite3* db = nullptr;
  REQUIRE(sqlite3_open_v2(copy.c_str(), &db, SQLITE_OPEN_READONLY, nullptr) == SQLITE_OK);
  sqlite3_stmt* statement = nullptr;
  REQUIRE(sqlite3_prepare_v2(db, "select count(*) from reading where verdict = 'open'", -1, &statement,
                             nullptr) == SQLITE_OK);
  REQUIRE(sqlite3_step(statement) == SQLITE_ROW);
  CHECK(sqlite3_column_int(statement, 0) > 0);
  sqlite3_finalize(statement);
  sqlite3_close(db);
  (void)old.job(BookUse::change);
  std::size_t files = 0;
  for (const auto& entry : fs::directory_iterator(old.folder))
    files += entry.path().string().find(".version-") != std::string::npos ? 1 : 0;
  CHECK(files == 1);
}

TEST_CASE("A book of the first version is brought up to date as well", "[jobbook]") {
  const OldBook old;
  old.change("drop table left_open; drop table known_good_walk; pragma user_version = 1");
  checkJob(old.job(BookUse::make));
  CHECK(fs::exists(old.path.string() + ".version-1"));
}

TEST_CASE("An older book that can only be read is read, and not touched", "[jobbook]") {
  const OldBook old;
  const auto size = fs::file_size(old.path);
  fs::permissions(old.path, fs::perms(0444));
  fs::permissions(old.folder, fs::perms(0555));
  const bool root = ::geteuid() == 0;
  constexpr uid_t nobody = 65534;
  if (root) REQUIRE(::seteuid(nobody) == 0); // nothing is forbidden to root
  const Job job = old.job(BookUse::read);
  const bool refused = !JobBook::open(old.path, BookUse::change);
  if (root) REQUIRE(::seteuid(0) == 0);
  fs::permissions(old.folder, fs::perms::owner_all);
  checkJob(job);
  CHECK(refused);
  CHECK(fs::file_size(old.path) == size);
  CHECK(std::distance(fs::directory_iterator(old.folder), {}) == 1); // nothing beside it
}

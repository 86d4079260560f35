// A reading kept for good, against a bare insert through SQLite's own interface into the same table with the
// same settings on the same disk. A FILE names the folder to work in; default: beside the program.
#include <filesystem>
#include <iostream>

#include <fmt/format.h>
#include <sqlite3.h>

#include "netmend/jobbook/job_book.h"
#include "report.h"

using namespace netmend;
using namespace netmend::benchmarks;

namespace {

constexpr int rounds = 20;
constexpr int readingsOfRound = 25;

[[noreturn]] void stop(const std::string& why) {
  std::cerr << why << '\n';
  std::exit(3);
}

template <class T> T valueOf(Result<T> result) {
  if (!result) stop(result.error().text());
  return std::move(*result);
}

JobReading readingNumber(int i) {
  JobReading entry;
  entry.reading.point = {PinId(static_cast<std::uint64_t>(i + 1)), fmt::format("J4.{}", i + 1)};
  entry.reading.other.label = "GND";
  entry.reading.value = 0.4 + 1e-4 * i;
  entry.reading.settling = Settling::settled;
  entry.reading.meter = "handheld";
  entry.reading.by = "bench 1";
  entry.reading.time = Time(std::chrono::milliseconds(1'700'000'000'000 + i));
  Judged judged;
  judged.verdict.kind = VerdictKind::inRange;
  judged.verdict.nothing = NothingBecause::judged;
  Expected& expected = judged.verdict.expected.emplace();
  expected.humps = {{0.99, 0.453, 0.004, 7.0, 8.0}};
  expected.shown = {{0.441, 0.465}};
  expected.boards = 8;
  expected.seen = ValueInterval{0.447, 0.459};
  entry.judged = judged;
  return entry;
}

/// The same columns with the same values, prepared once.
class BareTable {
public:
  BareTable(const std::filesystem::path& path, JobId job) {
    check(sqlite3_open(path.c_str(), &db_));
    for (const char* pragma :
         {"pragma journal_mode = wal", "pragma synchronous = full", "pragma foreign_keys = on"})
      check(sqlite3_exec(db_, pragma, nullptr, nullptr, nullptr));
    const std::string insert =
        "insert into reading (job, purpose, pin, label, other_pin, other_label, mode, value, settling, time, "
        "meter, "
        "taken_by, plugged, powered, lifted, handling, judged, remark) values (" +
        std::to_string(job.value) +
        ", 'fault', ?, ?, 0, 'GND', 'diode', ?, 'settled', ?, 'handheld', 'bench 1', '[]', 0, '[]', '', ?, "
        "'')";
    check(sqlite3_prepare_v2(db_, insert.c_str(), -1, &insert_, nullptr));
  }
  BareTable(const BareTable&) = delete;
  BareTable& operator=(const BareTable&) = delete;
  ~BareTable() {
    sqlite3_finalize(insert_);
    sqlite3_close(db_);
  }

  /// As many bytes as a verdict takes in the book.
  const std::string judged_ = std::string(420, '-');

  void add(const JobReading& entry) {
    const auto& r = entry.reading;
    sqlite3_bind_int64(insert_, 1, static_cast<sqlite3_int64>(r.point.pin.value));
    sqlite3_bind_text(insert_, 2, r.point.label.c_str(), -1, SQLITE_TRANSIENT);
    sqlite3_bind_double(insert_, 3, *r.value);
    sqlite3_bind_int64(insert_, 4, r.time.time_since_epoch().count());
    sqlite3_bind_text(insert_, 5, judged_.c_str(), -1, SQLITE_TRANSIENT);
    if (sqlite3_step(insert_) != SQLITE_DONE) stop(sqlite3_errmsg(db_));
    sqlite3_reset(insert_);
  }

private:
  void check(int code) {
    if (code != SQLITE_OK) stop(db_ != nullptr ? sqlite3_errmsg(db_) : "no memory");
  }
  sqlite3* db_ = nullptr;
  sqlite3_stmt* insert_ = nullptr;
};

Job someJob() {
  Job job;
  job.customer = "benchmark";
  job.device = "tide-gauge logger";
  job.symptom = "keypad column dead";
  return job;
}

} // namespace

int main(int argc, char** argv) {
  const auto arguments = argumentsFrom(argc, argv);
  if (!arguments) return 2;
  namespace fs = std::filesystem;
  const auto beside = fs::read_symlink("/proc/self/exe").parent_path();
  const auto folder =
      (arguments->files.empty() ? beside : fs::path(arguments->files.front())) / "jobbook_benchmark.tmp";
  std::error_code error;
  fs::remove_all(folder, error);
  if (!fs::create_directories(folder, error)) stop("cannot make " + folder.string() + ": " + error.message());

  std::vector<double> ours;
  std::vector<double> bare;
  {
    auto book = valueOf(JobBook::open(folder / "book.netmend-jobs", BookUse::make));
    const auto job = valueOf(book.addJob(someJob()));
    // The bare table is the book's own, in a second file.
    JobId other;
    {
      auto second = valueOf(JobBook::open(folder / "bare.sqlite", BookUse::make));
      other = valueOf(second.addJob(someJob()));
    }
    BareTable table(folder / "bare.sqlite", other);
    for (int round = 0; round < rounds; ++round)
      for (int i = 0; i < readingsOfRound; ++i) {
        const auto entry = readingNumber(round * readingsOfRound + i);
        ours.push_back(millisecondsOf([&] { (void)valueOf(book.addReading(job, entry)); }));
        bare.push_back(millisecondsOf([&] { table.add(entry); }));
      }
    const auto kept = valueOf(book.job(job)).readings.size();
    if (kept != ours.size()) stop(fmt::format("{} of {} readings kept", kept, ours.size()));
  }
  fs::remove_all(folder, error);

  Report report(*arguments);
  report.add("commit_ms", medianOf(ours), "ms (median)");
  report.add("bare_ms", medianOf(bare), "ms (median)");
  report.add("commit_vs_bare", medianOf(ours) / medianOf(bare), "times a bare insert", 2.0);
  return report.finish();
}

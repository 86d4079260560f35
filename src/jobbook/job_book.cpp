#include "netmend/jobbook/job_book.h"

#include <ctime>

#include <soci/soci.h>
#include <soci/sqlite3/soci-sqlite3.h>

#include "book_work.h"
#include "migrations.h"
#include "reading_words.h"
#include "rows.h"
#include "transaction.h"

namespace netmend {

namespace {

/// "2026-0007": one more than the highest of the year, so that a number is never given twice.
std::string nextNumber(soci::session& sql) {
  const std::time_t seconds = std::chrono::system_clock::to_time_t(timeNow());
  std::tm local{};
  ::localtime_r(&seconds, &local);
  const std::string year = std::to_string(1900 + local.tm_year) + "-";
  // Named, since SOCI runs the statement after the temporaries of its expression are gone.
  const std::string pattern = year + "[0-9][0-9][0-9][0-9]*";
  int highest = 0;
  sql << "select coalesce(max(cast(substr(number, 6) as integer)), 0) from job where number glob :pattern",
      soci::use(pattern), soci::into(highest);
  std::string count = std::to_string(highest + 1);
  return year + std::string(count.size() < 4 ? 4 - count.size() : 0, '0') + count;
}

/// With all it holds, in a transaction of the caller's.
Result<JobId> bookIn(soci::session& sql, const std::filesystem::path& book, const Job& job) {
  const std::string number = job.number.empty() ? nextNumber(sql) : job.number;
  int taken = 0;
  sql << "select count(*) from job where number = :number", soci::use(number), soci::into(taken);
  if (taken > 0) return failure({pattern("core", "job number is already taken"), book.string(), "", number});
  insertJob(sql, job, number);
  const JobId id(static_cast<std::uint64_t>(lastInsertId(sql)));
  for (const auto& reading : job.readings)
    (void)insertReading(sql, id, reading);
  for (const auto& suspect : job.suspects)
    insertSuspect(sql, id, suspect);
  for (const auto& action : job.actions)
    (void)insertAction(sql, id, action);
  for (const auto& photo : job.photos)
    (void)insertPhoto(sql, id, photo);
  for (const auto& charge : job.charges)
    (void)insertCharge(sql, id, charge);
  note(sql, id, {JobEvent::Kind::bookedIn});
  return id;
}

Job wholeJob(soci::session& sql, const std::filesystem::path& book, Job job,
             const std::vector<Photo>& known) {
  job.readings = readingsOf(sql, job.id);
  job.suspects = suspectsOf(sql, job.id);
  job.actions = actionsOf(sql, job.id);
  job.photos = photosOf(sql, book, job.id, known);
  job.charges = chargesOf(sql, job.id);
  return job;
}

} // namespace

JobBook::JobBook(std::filesystem::path path, std::unique_ptr<soci::session> session)
    : path_(std::move(path)), session_(std::move(session)) {}
JobBook::JobBook(JobBook&&) noexcept = default;
JobBook& JobBook::operator=(JobBook&&) noexcept = default;
JobBook::~JobBook() = default;

Result<JobBook> JobBook::open(const std::filesystem::path& path, BookUse use) {
  return guarded(path, [&]() -> Result<JobBook> {
    // In the text that SOCI is told where to connect to, a quote in the path would end it.
    if (path.string().find('"') != std::string::npos)
      return failure({pattern("core", "a job book's path cannot hold a quotation mark"), path.string()});
    std::error_code unseen; // a file in a folder that may not be looked into is told of below
    if (use == BookUse::make && !std::filesystem::exists(path, unseen) && !unseen)
      if (auto made = makeBook(path); !made) return failure(made.error());
    if (auto file = checkBookFile(path); !file) return failure(file.error());
    const bool writable = canBeWritten(path);
    if (use != BookUse::read && !writable) return failure(onlyReadable(path));
    // What reads the file waits for the statements below: SOCI does not close what fails while it is being
    // opened.
    auto session = std::make_unique<soci::session>();
    connect(*session, path);
    if (auto tables = checkBookTables(*session, path); !tables) return failure(tables.error());
    if (!writable) {
      if (auto known = refuseNewer(*session, path); !known) return failure(known.error());
      if (isOlder(*session)) {
        session = inMemory(*session);
        if (auto migrated = migrate(*session); !migrated) return failure(migrated.error());
      }
      return JobBook(path, std::move(session));
    }
    std::string mode;
    *session << "pragma journal_mode = wal", soci::into(mode);
    *session << "pragma synchronous = full";
    *session << "pragma foreign_keys = on";
    if (mode != "wal")
      return failure(
          {pattern("core", "job book cannot be kept safely here: no write-ahead log"), path.string()});
    if (auto migrated = migrate(*session, path); !migrated) return failure(migrated.error());
    return JobBook(path, std::move(session));
  });
}

Result<JobId> JobBook::addJob(const Job& job) {
  return guarded(path_, [&]() -> Result<JobId> {
    WriteTransaction transaction(*session_);
    auto id = bookIn(*session_, path_, job);
    if (id) transaction.commit();
    return id;
  });
}

Result<JobId> JobBook::addOpenJob(const Job& job) {
  return guarded(path_, [&]() -> Result<JobId> {
    WriteTransaction transaction(*session_);
    auto id = bookIn(*session_, path_, job);
    if (!id) return id;
    const auto open = static_cast<long long>(id->value);
    *session_ << "update left_open set job = :job", soci::use(open);
    transaction.commit();
    return id;
  });
}

Result<void> JobBook::updateJob(const Job& job) {
  return guarded(path_, [&]() -> Result<void> {
    soci::session& sql = *session_;
    WriteTransaction transaction(sql);
    Job before;
    const auto id = static_cast<long long>(job.id.value);
    if (!selectJob(sql, id, before)) return noSuchJob(path_, job.id);
    const std::string state(wordFor(jobStateWords, job.state));
    sql << "update job set customer = :customer, customer_reference = :customer_reference, device = :device, "
           "serial = :serial, symptom = :symptom, history = :history, condition = :condition, "
           "board_uuid = :board_uuid, board_name = :board_name, board_revision = :board_revision, "
           "board_file = :board_file, board_digest = :board_digest, state = :state, currency = :currency, "
           "internal_notes = :internal_notes where id = :id",
        soci::use(job.customer), soci::use(job.customerReference), soci::use(job.device),
        soci::use(job.serial), soci::use(job.symptom), soci::use(job.history), soci::use(job.condition),
        soci::use(job.boardUuid), soci::use(job.boardName), soci::use(job.boardRevision),
        soci::use(job.boardFile), soci::use(job.boardDigest), soci::use(state), soci::use(job.currency),
        soci::use(job.internalNotes), soci::use(id);
    if (before.state != job.state) note(sql, job.id, {.kind = JobEvent::Kind::state, .state = job.state});
    if (before.boardDigest != job.boardDigest)
      note(sql, job.id, {.kind = JobEvent::Kind::boardUsed, .text = job.boardDigest});
    transaction.commit();
    return {};
  });
}

Result<Job> JobBook::job(JobId id, const std::vector<Photo>& known) const {
  return guarded(path_, [&]() -> Result<Job> {
    // One read transaction: a second program writing meanwhile does not mix two states.
    soci::transaction reading(*session_);
    Job job;
    if (!selectJob(*session_, static_cast<long long>(id.value), job)) return noSuchJob(path_, id);
    return wholeJob(*session_, path_, std::move(job), known);
  });
}

Result<Job> JobBook::jobNumbered(const std::string& number) const {
  return guarded(path_, [&]() -> Result<Job> {
    long long id = 0;
    *session_ << "select id from job where number = :number", soci::use(number), soci::into(id);
    if (!session_->got_data())
      return failure({pattern("core", "no such job"), path_.string(), "", number,
                      pattern("core", "a number that job list shows")});
    return job(JobId(static_cast<std::uint64_t>(id)));
  });
}

Result<std::vector<JobSummary>> JobBook::jobs(const std::string& text) const {
  return guarded(path_, [&]() -> Result<std::vector<JobSummary>> {
    JobSummary line;
    long long id = 0, created = 0, readings = 0;
    int compared = 0;
    std::string state;
    soci::statement rows =
        (session_->prepare
             << "select id, number, created, customer, device, symptom, state, "
                "(select count(*) from reading where job = job.id), exists (select 1 from known_good_walk "
                "where "
                "board_uuid = job.board_uuid) from job where :text = '' or "
                "instr(lower(number || char(10) || customer || char(10) || customer_reference || char(10) || "
                "device || char(10) || serial || char(10) || symptom || char(10) || history || char(10) || "
                "condition || char(10) || board_name || char(10) || internal_notes), lower(:text)) > 0 or "
                "exists (select 1 from repair_action where job = job.id and instr(lower(target || char(10) "
                "|| reason || char(10) || because), lower(:text)) > 0) or exists (select 1 from suspect "
                "where "
                "job = job.id and instr(lower(what || char(10) || found), lower(:text)) > 0) order by "
                "created "
                "desc, id desc",
         soci::use(text, "text"), soci::into(id), soci::into(line.number), soci::into(created),
         soci::into(line.customer), soci::into(line.device), soci::into(line.symptom), soci::into(state),
         soci::into(readings), soci::into(compared));
    rows.execute();
    std::vector<JobSummary> out;
    while (rows.fetch()) {
      line.id = JobId(static_cast<std::uint64_t>(id));
      line.created = Time(std::chrono::milliseconds(created));
      line.state = stored(jobStateWords, state);
      line.readings = static_cast<std::size_t>(readings);
      line.compared = compared != 0;
      out.push_back(line);
    }
    return out;
  });
}

Result<void> JobBook::leaveOpen(const LeftOpen& left) {
  return guarded(path_, [&]() -> Result<void> {
    const auto job = static_cast<long long>(left.job.value);
    const std::string board = left.board.string();
    const int station = left.station.value_or(0);
    soci::indicator known = left.station ? soci::i_ok : soci::i_null;
    *session_ << "update left_open set job = :job, board_file = :board_file, station = :station",
        soci::use(job), soci::use(board), soci::use(station, known);
    return {};
  });
}

Result<LeftOpen> JobBook::leftOpen() const {
  return guarded(path_, [&]() -> Result<LeftOpen> {
    long long job = 0;
    std::string board;
    int station = 0;
    soci::indicator known = soci::i_null;
    *session_ << "select job, board_file, station from left_open", soci::into(job), soci::into(board),
        soci::into(station, known);
    return LeftOpen{JobId(static_cast<std::uint64_t>(job)), board,
                    known == soci::i_ok ? std::optional(station) : std::nullopt};
  });
}

Result<std::vector<JobEvent>> JobBook::history(JobId id) const {
  return guarded(path_, [&]() -> Result<std::vector<JobEvent>> {
    const auto jobKey = static_cast<long long>(id.value);
    long long time = 0;
    std::string what, fact;
    soci::statement rows =
        (session_->prepare << "select time, what, fact from event where job = :job order by id",
         soci::use(jobKey), soci::into(time), soci::into(what), soci::into(fact));
    rows.execute();
    std::vector<JobEvent> out;
    while (rows.fetch()) {
      out.push_back(fact.empty() ? JobEvent{.kind = JobEvent::Kind::asWritten, .text = what}
                                 : eventFrom(fact));
      out.back().time = Time(std::chrono::milliseconds(time));
    }
    return out;
  });
}

} // namespace netmend

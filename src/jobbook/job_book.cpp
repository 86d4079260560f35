#include "netmend/jobbook/job_book.h"

#include <algorithm>
#include <ctime>

#include <nlohmann/json.hpp>
#include <soci/soci.h>
#include <soci/sqlite3/soci-sqlite3.h>

#include "migrations.h"
#include "netmend/probing/walk_file.h"
#include "reading_words.h"
#include "rows.h"
#include "transaction.h"

namespace netmend {

namespace {

/// Runs work on the book; what SOCI or a damaged entry throws becomes an Error that names the file.
template <class Work> auto guarded(const std::filesystem::path& path, Work work) -> decltype(work()) {
  try {
    return work();
  } catch (const soci::soci_error& e) {
    return failure({std::string("job book: ") + e.what(), path.string()});
  } catch (const nlohmann::json::exception& e) {
    return failure({std::string("job book holds a damaged entry: ") + e.what(), path.string()});
  }
}

void note(soci::session& sql, JobId job, const std::string& what) {
  const auto jobKey = static_cast<long long>(job.value);
  const long long time = now().time_since_epoch().count();
  sql << "insert into event (job, time, what) values (:job, :time, :what)", soci::use(jobKey),
      soci::use(time), soci::use(what);
}

bool exists(soci::session& sql, JobId job) {
  const auto jobKey = static_cast<long long>(job.value);
  int count = 0;
  sql << "select count(*) from job where id = :id", soci::use(jobKey), soci::into(count);
  return count > 0;
}

tl::unexpected<Error> noSuchJob(const std::filesystem::path& path, JobId job) {
  return failure({"no such job", path.string(), "", "job id " + std::to_string(job.value)});
}

/// Changes one job in a transaction: what `work` did is durable when this returns, or undone if it failed.
template <class Work>
auto change(soci::session& sql, const std::filesystem::path& path, JobId id, Work work) -> decltype(work()) {
  return guarded(path, [&]() -> decltype(work()) {
    WriteTransaction transaction(sql);
    if (!exists(sql, id)) return noSuchJob(path, id);
    auto out = work();
    if (out) transaction.commit();
    return out;
  });
}

struct RowOfJob {
  std::string table;
  std::uint64_t id;
};

/// Undo of an addition.
Result<void> takeOut(soci::session& sql, const std::filesystem::path& path, JobId job, const RowOfJob& row) {
  return change(sql, path, job, [&]() -> Result<void> {
    const auto jobKey = static_cast<long long>(job.value);
    const auto id = static_cast<long long>(row.id);
    soci::statement removal = (sql.prepare << "delete from " + row.table + " where job = :job and id = :id",
                               soci::use(jobKey), soci::use(id));
    removal.execute(true);
    if (removal.get_affected_rows() != 1)
      return failure({"the job has no such " + row.table, path.string(), "", std::to_string(row.id)});
    note(sql, job, row.table + " " + std::to_string(row.id) + " taken back");
    return {};
  });
}

/// And redo of it: `insert` makes the row, under the id that it had.
template <class Insert>
Result<void> putIn(soci::session& sql, const std::filesystem::path& path, JobId job, const RowOfJob& row,
                   Insert insert) {
  return change(sql, path, job, [&]() -> Result<void> {
    if (row.id == 0) return failure({"what is put back has no id", path.string(), "", row.table});
    insert();
    note(sql, job, row.table + " " + std::to_string(row.id) + " put back");
    return {};
  });
}

tl::unexpected<Error> noSuchAction(const std::filesystem::path& path, RepairActionId action) {
  return failure({"the job has no such repair action", path.string(), "", std::to_string(action.value)});
}

void noteAction(soci::session& sql, JobId job, const RepairAction& action) {
  note(sql, job,
       "repair action: " + std::string(wordFor(repairKindWords, action.kind)) + " " + action.target);
}

void updateState(soci::session& sql, JobId job, JobState state) {
  const auto jobKey = static_cast<long long>(job.value);
  const std::string word(wordFor(jobStateWords, state));
  sql << "update job set state = :state where id = :id", soci::use(word), soci::use(jobKey);
  note(sql, job, word);
}

/// Adds readings to an action's proof, as it is changed or else as it is kept. False: there is none such.
bool addProof(std::vector<RepairAction>& changed, const std::vector<RepairAction>& kept,
              RepairActionId proven, const std::vector<JobReadingId>& readings) {
  const auto isProven = [&](const RepairAction& action) { return action.id == proven; };
  auto action = std::find_if(changed.begin(), changed.end(), isProven);
  if (action == changed.end()) {
    const auto old = std::find_if(kept.begin(), kept.end(), isProven);
    if (old == kept.end()) return false;
    action = changed.insert(changed.end(), *old);
  }
  action->proof.insert(action->proof.end(), readings.begin(), readings.end());
  return true;
}

/// "2026-0007": one more than the highest of the year, so that a number is never given twice.
std::string nextNumber(soci::session& sql) {
  const std::time_t seconds = std::chrono::system_clock::to_time_t(now());
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

Job wholeJob(soci::session& sql, Job job, const std::vector<Photo>& known) {
  job.readings = readingsOf(sql, job.id);
  job.suspects = suspectsOf(sql, job.id);
  job.actions = actionsOf(sql, job.id);
  job.photos = photosOf(sql, job.id, known);
  job.charges = chargesOf(sql, job.id);
  return job;
}

} // namespace

JobBook::JobBook(std::filesystem::path path, std::unique_ptr<soci::session> session)
    : path_(std::move(path)), session_(std::move(session)) {}
JobBook::JobBook(JobBook&&) noexcept = default;
JobBook& JobBook::operator=(JobBook&&) noexcept = default;
JobBook::~JobBook() = default;

Result<JobBook> JobBook::open(const std::filesystem::path& path) {
  return guarded(path, [&]() -> Result<JobBook> {
    // SOCI takes a string of key=value pairs: a quote in the path would end it.
    if (path.string().find('"') != std::string::npos)
      return failure({"a job book's path cannot hold a quotation mark", path.string()});
    // What reads the file waits for the pragmas below: SOCI does not close what fails while it is being
    // opened.
    auto session =
        std::make_unique<soci::session>(soci::sqlite3, "dbname=\"" + path.string() + "\" timeout=10");
    *session << "pragma busy_timeout = 10000";
    std::string mode;
    *session << "pragma journal_mode = wal", soci::into(mode);
    *session << "pragma synchronous = full";
    *session << "pragma foreign_keys = on";
    if (mode != "wal")
      return failure({"job book cannot be kept safely here: no write-ahead log", path.string()});
    if (auto migrated = migrate(*session, path); !migrated) return failure(migrated.error());
    return JobBook(path, std::move(session));
  });
}

Result<JobId> JobBook::addJob(const Job& job) {
  return guarded(path_, [&]() -> Result<JobId> {
    soci::session& sql = *session_;
    WriteTransaction transaction(sql);
    const std::string number = job.number.empty() ? nextNumber(sql) : job.number;
    int taken = 0;
    sql << "select count(*) from job where number = :number", soci::use(number), soci::into(taken);
    if (taken > 0) return failure({"job number is already taken", path_.string(), "", number});
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
    note(sql, id, "booked in");
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
    if (before.state != job.state) note(sql, job.id, state);
    if (before.boardDigest != job.boardDigest) note(sql, job.id, "board revision used: " + job.boardDigest);
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
    return wholeJob(*session_, std::move(job), known);
  });
}

Result<Job> JobBook::jobNumbered(const std::string& number) const {
  return guarded(path_, [&]() -> Result<Job> {
    long long id = 0;
    *session_ << "select id from job where number = :number", soci::use(number), soci::into(id);
    if (!session_->got_data())
      return failure({"no such job", path_.string(), "", number, "a number that job list shows"});
    return job(JobId(static_cast<std::uint64_t>(id)));
  });
}

Result<std::vector<JobSummary>> JobBook::jobs(const std::string& text) const {
  return guarded(path_, [&]() -> Result<std::vector<JobSummary>> {
    JobSummary line;
    long long id = 0, created = 0, readings = 0;
    std::string state;
    soci::statement rows =
        (session_->prepare
             << "select id, number, created, customer, device, symptom, state, "
                "(select count(*) from reading where job = job.id) from job where :text = '' or "
                "instr(lower(number || char(10) || customer || char(10) || customer_reference || char(10) || "
                "device || char(10) || serial || char(10) || symptom || char(10) || history || char(10) || "
                "condition || char(10) || board_name || char(10) || internal_notes), lower(:text)) > 0 or "
                "exists (select 1 from repair_action where job = job.id and instr(lower(target || char(10) "
                "|| "
                "reason), lower(:text)) > 0) or exists (select 1 from suspect where job = job.id and "
                "instr(lower(what), lower(:text)) > 0) order by created desc, id desc",
         soci::use(text, "text"), soci::into(id), soci::into(line.number), soci::into(created),
         soci::into(line.customer), soci::into(line.device), soci::into(line.symptom), soci::into(state),
         soci::into(readings));
    rows.execute();
    std::vector<JobSummary> out;
    while (rows.fetch()) {
      line.id = JobId(static_cast<std::uint64_t>(id));
      line.created = Time(std::chrono::milliseconds(created));
      line.state = stored(jobStateWords, state);
      line.readings = static_cast<std::size_t>(readings);
      out.push_back(line);
    }
    return out;
  });
}

Result<std::vector<JobEvent>> JobBook::history(JobId id) const {
  return guarded(path_, [&]() -> Result<std::vector<JobEvent>> {
    const auto jobKey = static_cast<long long>(id.value);
    long long time = 0;
    std::string what;
    soci::statement rows = (session_->prepare << "select time, what from event where job = :job order by id",
                            soci::use(jobKey), soci::into(time), soci::into(what));
    rows.execute();
    std::vector<JobEvent> out;
    while (rows.fetch())
      out.push_back({Time(std::chrono::milliseconds(time)), what});
    return out;
  });
}

Result<JobAdded> JobBook::add(JobId id, const JobAdditions& additions) {
  return change(*session_, path_, id, [&]() -> Result<JobAdded> {
    soci::session& sql = *session_;
    JobAdded added;
    for (const JobReading& reading : additions.readings)
      added.readings.push_back(insertReading(sql, id, reading));
    std::vector<RepairAction> changed = additions.changed;
    if (additions.proven && !addProof(changed, actionsOf(sql, id), additions.proven, added.readings))
      return noSuchAction(path_, additions.proven);
    for (const RepairAction& action : changed)
      if (!replaceAction(sql, id, action)) return noSuchAction(path_, action.id);
    for (const RepairAction& action : additions.actions) {
      noteAction(sql, id, action);
      added.actions.push_back(insertAction(sql, id, action));
    }
    for (const Photo& photo : additions.photos)
      (void)insertPhoto(sql, id, photo);
    for (const Charge& charge : additions.charges)
      (void)insertCharge(sql, id, charge);
    if (additions.state) updateState(sql, id, *additions.state);
    return added;
  });
}

Result<JobReadingId> JobBook::addReading(JobId id, const JobReading& reading) {
  return change(*session_, path_, id,
                [&]() -> Result<JobReadingId> { return insertReading(*session_, id, reading); });
}

Result<void> JobBook::rejudge(JobId id, const std::vector<JobReading>& readings) {
  return change(*session_, path_, id, [&]() -> Result<void> {
    const auto jobKey = static_cast<long long>(id.value);
    for (const auto& reading : readings) {
      const auto key = static_cast<long long>(reading.id.value);
      *session_ << "update reading set verdict = :verdict, expected = :expected, explanation = :explanation "
                   "where job = :job and id = :id",
          soci::use(reading.verdict), soci::use(reading.expected), soci::use(reading.explanation),
          soci::use(jobKey), soci::use(key);
    }
    return {};
  });
}

Result<void> JobBook::setSuspects(JobId id, const std::vector<JobSuspect>& suspects) {
  return change(*session_, path_, id, [&]() -> Result<void> {
    const auto jobKey = static_cast<long long>(id.value);
    *session_ << "delete from suspect where job = :job", soci::use(jobKey);
    for (const auto& suspect : suspects)
      insertSuspect(*session_, id, suspect);
    note(*session_, id, suspects.empty() ? "suspects withdrawn" : "first suspect: " + suspects.front().what);
    return {};
  });
}

Result<RepairActionId> JobBook::addAction(JobId id, const RepairAction& action) {
  return change(*session_, path_, id, [&]() -> Result<RepairActionId> {
    noteAction(*session_, id, action);
    return insertAction(*session_, id, action);
  });
}

Result<void> JobBook::updateAction(JobId id, const RepairAction& action) {
  return change(*session_, path_, id, [&]() -> Result<void> {
    if (replaceAction(*session_, id, action)) return {};
    return noSuchAction(path_, action.id);
  });
}

Result<PhotoId> JobBook::addPhoto(JobId id, const Photo& photo) {
  return change(*session_, path_, id, [&]() -> Result<PhotoId> { return insertPhoto(*session_, id, photo); });
}

Result<ChargeId> JobBook::addCharge(JobId id, const Charge& charge) {
  return change(*session_, path_, id,
                [&]() -> Result<ChargeId> { return insertCharge(*session_, id, charge); });
}

Result<void> JobBook::takeBack(JobId id, JobReadingId reading) {
  return takeOut(*session_, path_, id, {"reading", reading.value});
}

Result<void> JobBook::takeBack(JobId id, RepairActionId action) {
  return takeOut(*session_, path_, id, {"repair_action", action.value});
}

Result<void> JobBook::takeBack(JobId id, PhotoId photo) {
  return takeOut(*session_, path_, id, {"photo", photo.value});
}

Result<void> JobBook::takeBack(JobId id, ChargeId charge) {
  return takeOut(*session_, path_, id, {"charge", charge.value});
}

Result<void> JobBook::putBack(JobId id, const JobReading& reading) {
  return putIn(*session_, path_, id, {"reading", reading.id.value},
               [&] { (void)insertReading(*session_, id, reading, reading.id); });
}

Result<void> JobBook::putBack(JobId id, const RepairAction& action) {
  return putIn(*session_, path_, id, {"repair_action", action.id.value},
               [&] { (void)insertAction(*session_, id, action, action.id); });
}

Result<void> JobBook::putBack(JobId id, const Photo& photo) {
  return putIn(*session_, path_, id, {"photo", photo.id.value},
               [&] { (void)insertPhoto(*session_, id, photo, photo.id); });
}

Result<void> JobBook::putBack(JobId id, const Charge& charge) {
  return putIn(*session_, path_, id, {"charge", charge.id.value},
               [&] { (void)insertCharge(*session_, id, charge, charge.id); });
}

Result<void> JobBook::setState(JobId id, JobState state) {
  return change(*session_, path_, id, [&]() -> Result<void> {
    updateState(*session_, id, state);
    return {};
  });
}

Result<bool> JobBook::addKnownGoodWalk(const Walk& walk) {
  return guarded(path_, [&]() -> Result<bool> {
    if (walk.specimen != Specimen::good)
      return failure(
          {"only the walk of a board marked good can be kept as known good", path_.string(), "", walk.title});
    const std::string content = walkToText(walk);
    const long long added = now().time_since_epoch().count();
    soci::statement insert =
        (session_->prepare << "insert into known_good_walk (board_uuid, added, content) "
                              "select :board_uuid, :added, :content where not exists (select 1 from "
                              "known_good_walk where board_uuid = :board_uuid and content = :content)",
         soci::use(walk.boardUuid, "board_uuid"), soci::use(added, "added"), soci::use(content, "content"));
    insert.execute(true);
    return insert.get_affected_rows() > 0;
  });
}

Result<std::vector<Walk>> JobBook::knownGoodWalks(const std::string& boardUuid) const {
  return guarded(path_, [&]() -> Result<std::vector<Walk>> {
    std::string content;
    soci::statement rows =
        (session_->prepare
             << "select content from known_good_walk where board_uuid = :board_uuid order by id",
         soci::use(boardUuid), soci::into(content));
    rows.execute();
    std::vector<Walk> out;
    while (rows.fetch()) {
      auto walk = walkFromText(content, path_.string());
      if (!walk) return failure(walk.error());
      out.push_back(std::move(*walk));
    }
    return out;
  });
}

} // namespace netmend

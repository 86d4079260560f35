// What a job holds in numbers: readings, suspects, actions, photos, charges.
#include <algorithm>

#include "book_work.h"
#include "judged_json.h"
#include "netmend/jobbook/job_book.h"
#include "netmend/jobbook/job_words.h"

namespace netmend {

namespace {

struct RowOfJob {
  JobEvent::Entry entry;
  std::uint64_t id;
  [[nodiscard]] std::string table() const { return std::string(wordFor(entryWords, entry)); }
};

/// Undo of an addition.
Result<void> takeOut(soci::session& sql, const std::filesystem::path& path, JobId job, const RowOfJob& row) {
  return change(sql, path, job, [&]() -> Result<void> {
    const auto jobKey = static_cast<long long>(job.value);
    const auto id = static_cast<long long>(row.id);
    soci::statement removal = (sql.prepare << "delete from " + row.table() + " where job = :job and id = :id",
                               soci::use(jobKey), soci::use(id));
    removal.execute(true);
    if (removal.get_affected_rows() != 1)
      return failure({pattern("core", "the job has no such entry"), path.string(), "",
                      row.table() + " " + std::to_string(row.id)});
    note(sql, job, {.kind = JobEvent::Kind::takenBack, .entry = row.entry, .number = row.id});
    return {};
  });
}

/// And redo of it: `insert` makes the row, under the id that it had.
template <class Insert>
Result<void> putIn(soci::session& sql, const std::filesystem::path& path, JobId job, const RowOfJob& row,
                   Insert insert) {
  return change(sql, path, job, [&]() -> Result<void> {
    if (row.id == 0)
      return failure({pattern("core", "what is put back has no id"), path.string(), "", row.table()});
    insert();
    note(sql, job, {.kind = JobEvent::Kind::putBack, .entry = row.entry, .number = row.id});
    return {};
  });
}

tl::unexpected<Error> noSuchAction(const std::filesystem::path& path, RepairActionId action) {
  return failure({pattern("core", "the job has no such repair action"), path.string(), "",
                  std::to_string(action.value)});
}

void noteAction(soci::session& sql, JobId job, const RepairAction& action) {
  note(sql, job, {.kind = JobEvent::Kind::repairAdded, .text = action.target, .repair = action.kind});
}

void updateState(soci::session& sql, JobId job, JobState state) {
  const auto jobKey = static_cast<long long>(job.value);
  const std::string word(wordFor(jobStateWords, state));
  sql << "update job set state = :state where id = :id", soci::use(word), soci::use(jobKey);
  note(sql, job, {.kind = JobEvent::Kind::state, .state = state});
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

} // namespace

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
      const std::string judged = judgedText(reading.judged);
      const int comesAndGoes = reading.comesAndGoes ? 1 : 0;
      *session_ << "update reading set judged = :judged, remark = :remark, comes_and_goes = :comes_and_goes "
                   "where job = :job and id = :id",
          soci::use(judged), soci::use(reading.remark), soci::use(comesAndGoes), soci::use(jobKey),
          soci::use(key);
    }
    return {};
  });
}

Result<void> JobBook::moveReadings(JobId id, const std::vector<JobReading>& readings) {
  return change(*session_, path_, id, [&]() -> Result<void> {
    const auto jobKey = static_cast<long long>(id.value);
    for (const auto& reading : readings) {
      const auto key = static_cast<long long>(reading.id.value);
      const auto pin = static_cast<long long>(reading.reading.point.pin.value);
      const std::string judged = judgedText(reading.judged);
      *session_ << "update reading set pin = :pin, label = :label, judged = :judged "
                   "where job = :job and id = :id",
          soci::use(pin), soci::use(reading.reading.point.label), soci::use(judged), soci::use(jobKey),
          soci::use(key);
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
    note(*session_, id, {.kind = JobEvent::Kind::suspects, .number = suspects.size()});
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
  return takeOut(*session_, path_, id, {JobEvent::Entry::reading, reading.value});
}

Result<void> JobBook::takeBack(JobId id, RepairActionId action) {
  return takeOut(*session_, path_, id, {JobEvent::Entry::repairAction, action.value});
}

Result<void> JobBook::takeBack(JobId id, PhotoId photo) {
  return takeOut(*session_, path_, id, {JobEvent::Entry::photo, photo.value});
}

Result<void> JobBook::takeBack(JobId id, ChargeId charge) {
  return takeOut(*session_, path_, id, {JobEvent::Entry::charge, charge.value});
}

Result<void> JobBook::putBack(JobId id, const JobReading& reading) {
  return putIn(*session_, path_, id, {JobEvent::Entry::reading, reading.id.value},
               [&] { (void)insertReading(*session_, id, reading, reading.id); });
}

Result<void> JobBook::putBack(JobId id, const RepairAction& action) {
  return putIn(*session_, path_, id, {JobEvent::Entry::repairAction, action.id.value},
               [&] { (void)insertAction(*session_, id, action, action.id); });
}

Result<void> JobBook::putBack(JobId id, const Photo& photo) {
  return putIn(*session_, path_, id, {JobEvent::Entry::photo, photo.id.value},
               [&] { (void)insertPhoto(*session_, id, photo, photo.id); });
}

Result<void> JobBook::putBack(JobId id, const Charge& charge) {
  return putIn(*session_, path_, id, {JobEvent::Entry::charge, charge.id.value},
               [&] { (void)insertCharge(*session_, id, charge, charge.id); });
}

Result<void> JobBook::setState(JobId id, JobState state) {
  return change(*session_, path_, id, [&]() -> Result<void> {
    updateState(*session_, id, state);
    return {};
  });
}

} // namespace netmend

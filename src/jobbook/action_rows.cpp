#include "rows.h"

#include "found_json.h"
#include "jumper_json.h"
#include "measure_json.h"
#include "reading_words.h"

namespace netmend {

namespace {

void insertSteps(soci::session& sql, long long action, const std::vector<WorkStep>& steps) {
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const WorkStep& step = steps[i];
    const auto position = static_cast<long long>(i);
    const int check = step.check ? 1 : 0;
    const int done = step.done ? 1 : 0;
    const int function = step.function ? 1 : 0;
    const std::string measure = measureText(step.measure);
    const std::string read = checkReadText(step.read);
    sql << "insert into work_step (action, position, text, is_check, expected, done, note, measure, "
           "is_function, read, otherwise, detail) values (:action, :position, :text, :is_check, :expected, "
           ":done, "
           ":note, "
           ":measure, :is_function, :read, :otherwise, :detail)",
        soci::use(action), soci::use(position), soci::use(step.text), soci::use(check),
        soci::use(step.expected), soci::use(done), soci::use(step.note), soci::use(measure),
        soci::use(function), soci::use(read), soci::use(step.otherwise), soci::use(step.detail);
  }
}

void insertProof(soci::session& sql, long long action, const std::vector<JobReadingId>& proof) {
  for (const JobReadingId id : proof) {
    const auto reading = static_cast<long long>(id.value);
    sql << "insert into proof (action, reading) values (:action, :reading)", soci::use(action),
        soci::use(reading);
  }
}

std::vector<WorkStep> stepsOf(soci::session& sql, long long action) {
  WorkStep step;
  int check = 0, done = 0, function = 0;
  std::string measure, read;
  soci::statement rows =
      (sql.prepare
           << "select text, is_check, expected, done, note, measure, is_function, read, otherwise, detail "
              "from work_step "
              "where action = :action order by position",
       soci::use(action), soci::into(step.text), soci::into(check), soci::into(step.expected),
       soci::into(done), soci::into(step.note), soci::into(measure), soci::into(function), soci::into(read),
       soci::into(step.otherwise), soci::into(step.detail));
  rows.execute();
  std::vector<WorkStep> out;
  while (rows.fetch()) {
    step.check = check != 0;
    step.done = done != 0;
    step.function = function != 0;
    step.measure = measureFrom(measure);
    step.read = checkReadFrom(read);
    out.push_back(step);
  }
  return out;
}

std::vector<JobReadingId> proofOf(soci::session& sql, long long action) {
  long long reading = 0;
  soci::statement rows = (sql.prepare << "select reading from proof where action = :action order by reading",
                          soci::use(action), soci::into(reading));
  rows.execute();
  std::vector<JobReadingId> out;
  while (rows.fetch())
    out.emplace_back(static_cast<std::uint64_t>(reading));
  return out;
}

} // namespace

RepairActionId insertAction(soci::session& sql, JobId job, const RepairAction& action, RepairActionId as) {
  RowId row(as.value);
  const auto jobKey = static_cast<long long>(job.value);
  const std::string kind(wordFor(repairKindWords, action.kind));
  const std::string jumper = action.jumper ? jumperText(*action.jumper) : "";
  soci::indicator hasJumper = action.jumper ? soci::i_ok : soci::i_null;
  const std::string because = foundFaultText(action.because);
  const std::string places = pointsText(action.places);
  sql << "insert into repair_action (id, job, kind, target, reason, jumper, because, places) values (:id, "
         ":job, :kind, :target, :reason, :jumper, :because, :places)",
      soci::use(row.value, row.state), soci::use(jobKey), soci::use(kind), soci::use(action.target),
      soci::use(action.reason), soci::use(jumper, hasJumper), soci::use(because), soci::use(places);
  const long long id = lastInsertId(sql);
  insertSteps(sql, id, action.steps);
  insertProof(sql, id, action.proof);
  return RepairActionId(static_cast<std::uint64_t>(id));
}

bool replaceAction(soci::session& sql, JobId job, const RepairAction& action) {
  const auto id = static_cast<long long>(action.id.value);
  const auto jobKey = static_cast<long long>(job.value);
  int there = 0;
  sql << "select count(*) from repair_action where id = :id and job = :job", soci::use(id), soci::use(jobKey),
      soci::into(there);
  if (there == 0) return false;
  const std::string kind(wordFor(repairKindWords, action.kind));
  const std::string jumper = action.jumper ? jumperText(*action.jumper) : "";
  soci::indicator hasJumper = action.jumper ? soci::i_ok : soci::i_null;
  const std::string because = foundFaultText(action.because);
  const std::string places = pointsText(action.places);
  sql << "update repair_action set kind = :kind, target = :target, reason = :reason, jumper = :jumper, "
         "because = :because, places = :places where id = :id",
      soci::use(kind), soci::use(action.target), soci::use(action.reason), soci::use(jumper, hasJumper),
      soci::use(because), soci::use(places), soci::use(id);
  sql << "delete from work_step where action = :id", soci::use(id);
  sql << "delete from proof where action = :id", soci::use(id);
  insertSteps(sql, id, action.steps);
  insertProof(sql, id, action.proof);
  return true;
}

std::vector<RepairAction> actionsOf(soci::session& sql, JobId job) {
  const auto jobKey = static_cast<long long>(job.value);
  long long id = 0;
  std::string kind, target, reason, jumper, because, places;
  soci::indicator hasJumper = soci::i_null;
  std::vector<RepairAction> out;
  {
    soci::statement rows =
        (sql.prepare << "select id, kind, target, reason, jumper, because, places from "
                        "repair_action where job = :job order by "
                        "id",
         soci::use(jobKey), soci::into(id), soci::into(kind), soci::into(target), soci::into(reason),
         soci::into(jumper, hasJumper), soci::into(because), soci::into(places));
    rows.execute();
    while (rows.fetch()) {
      RepairAction action;
      action.id = RepairActionId(static_cast<std::uint64_t>(id));
      action.kind = stored(repairKindWords, kind);
      action.target = target;
      action.reason = reason;
      action.because = foundFaultFrom(because);
      action.places = pointsFrom(places);
      if (hasJumper == soci::i_ok) action.jumper = jumperFrom(jumper);
      out.push_back(std::move(action));
    }
  }
  for (RepairAction& action : out) {
    action.steps = stepsOf(sql, static_cast<long long>(action.id.value));
    action.proof = proofOf(sql, static_cast<long long>(action.id.value));
  }
  return out;
}

} // namespace netmend

#include "reading_words.h"
#include "rows.h"

namespace netmend {

namespace {

constexpr const char* jobColumns =
    "number, created, customer, customer_reference, device, serial, symptom, history, condition, board_uuid, "
    "board_name, board_revision, board_file, board_digest, state, currency, internal_notes";

} // namespace

void insertJob(soci::session& sql, const Job& job, const std::string& number) {
  const long long created = (job.created == Time{} ? timeNow() : job.created).time_since_epoch().count();
  const std::string state(wordFor(jobStateWords, job.state));
  sql << std::string("insert into job (") + jobColumns +
             ") values (:number, :created, :customer, :customer_reference, :device, :serial, :symptom, "
             ":history, "
             ":condition, :board_uuid, :board_name, :board_revision, :board_file, :board_digest, :state, "
             ":currency, "
             ":internal_notes)",
      soci::use(number), soci::use(created), soci::use(job.customer), soci::use(job.customerReference),
      soci::use(job.device), soci::use(job.serial), soci::use(job.symptom), soci::use(job.history),
      soci::use(job.condition), soci::use(job.boardUuid), soci::use(job.boardName),
      soci::use(job.boardRevision), soci::use(job.boardFile), soci::use(job.boardDigest), soci::use(state),
      soci::use(job.currency), soci::use(job.internalNotes);
}

bool selectJob(soci::session& sql, long long id, Job& job) {
  long long created = 0;
  std::string state;
  sql << std::string("select ") + jobColumns + " from job where id = :id", soci::use(id),
      soci::into(job.number), soci::into(created), soci::into(job.customer),
      soci::into(job.customerReference), soci::into(job.device), soci::into(job.serial),
      soci::into(job.symptom), soci::into(job.history), soci::into(job.condition), soci::into(job.boardUuid),
      soci::into(job.boardName), soci::into(job.boardRevision), soci::into(job.boardFile),
      soci::into(job.boardDigest), soci::into(state), soci::into(job.currency), soci::into(job.internalNotes);
  if (!sql.got_data()) return false;
  job.id = JobId(static_cast<std::uint64_t>(id));
  job.created = Time(std::chrono::milliseconds(created));
  job.state = stored(jobStateWords, state);
  return true;
}

} // namespace netmend

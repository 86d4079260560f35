#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <soci/soci.h>

#include "netmend/jobbook/job.h"

/// A job and its lists as rows of the book. All throw soci::soci_error; JobBook turns that into an Error.
namespace netmend {

/// The id of a row to be inserted: the next one there is (0), or the one that it had before.
struct RowId {
  long long value;
  soci::indicator state;
  explicit RowId(std::uint64_t id)
      : value(static_cast<long long>(id)), state(id == 0 ? soci::i_null : soci::i_ok) {}
};

/// The job itself, without its lists.
void insertJob(soci::session& sql, const Job& job, const std::string& number);
/// False when there is no such job.
[[nodiscard]] bool selectJob(soci::session& sql, long long id, Job& job);

[[nodiscard]] JobReadingId insertReading(soci::session& sql, JobId job, const JobReading& reading,
                                         JobReadingId as = {});
[[nodiscard]] std::vector<JobReading> readingsOf(soci::session& sql, JobId job);

void insertSuspect(soci::session& sql, JobId job, const JobSuspect& suspect);
[[nodiscard]] std::vector<JobSuspect> suspectsOf(soci::session& sql, JobId job);

[[nodiscard]] RepairActionId insertAction(soci::session& sql, JobId job, const RepairAction& action,
                                          RepairActionId as = {});
/// False when the job has no such action.
[[nodiscard]] bool replaceAction(soci::session& sql, JobId job, const RepairAction& action);
[[nodiscard]] std::vector<RepairAction> actionsOf(soci::session& sql, JobId job);

[[nodiscard]] PhotoId insertPhoto(soci::session& sql, JobId job, const Photo& photo, PhotoId as = {});
/// Their bytes are read from the book when they are first wanted, those of `known` photos are taken from
/// there.
[[nodiscard]] std::vector<Photo> photosOf(soci::session& sql, const std::filesystem::path& book, JobId job,
                                          const std::vector<Photo>& known);

[[nodiscard]] ChargeId insertCharge(soci::session& sql, JobId job, const Charge& charge, ChargeId as = {});
[[nodiscard]] std::vector<Charge> chargesOf(soci::session& sql, JobId job);

[[nodiscard]] long long lastInsertId(soci::session& sql);

} // namespace netmend

#pragma once

#include <filesystem>
#include <string>

#include <nlohmann/json.hpp>
#include <soci/soci.h>

#include "book_file.h"
#include "event_json.h"
#include "netmend/base/error.h"
#include "netmend/jobbook/job.h"
#include "rows.h"
#include "transaction.h"

namespace netmend {

/// Runs work on the book; what SOCI or a damaged entry throws becomes an Error that names the file.
template <class Work> auto guarded(const std::filesystem::path& path, Work work) -> decltype(work()) {
  try {
    return work();
  } catch (const soci::soci_error& e) {
    return failure(bookError(e, path));
  } catch (const nlohmann::json::exception& e) {
    return failure({said(pattern("core", "job book holds a damaged entry: {}"), e.what()), path.string()});
  }
}

/// Into the job's history.
inline void note(soci::session& sql, JobId job, const JobEvent& event) {
  const std::string what = eventText(event);
  const auto jobKey = static_cast<long long>(job.value);
  const long long time = timeNow().time_since_epoch().count();
  sql << "insert into event (job, time, what, fact) values (:job, :time, '', :fact)", soci::use(jobKey),
      soci::use(time), soci::use(what);
}

inline bool exists(soci::session& sql, JobId job) {
  const auto jobKey = static_cast<long long>(job.value);
  int count = 0;
  sql << "select count(*) from job where id = :id", soci::use(jobKey), soci::into(count);
  return count > 0;
}

inline tl::unexpected<Error> noSuchJob(const std::filesystem::path& path, JobId job) {
  return failure(
      {pattern("core", "no such job"), path.string(), "", said(pattern("core", "job id {}"), job.value)});
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

} // namespace netmend

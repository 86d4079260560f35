#include "job_case.h"

#include "netmend/jobbook/record.h"

namespace netmend {

CLI::Option* addJobOption(CLI::App& command, std::string& job) {
  return command.add_option("--job", job, "Number of the job, for example 2026-0007")->needs("--book");
}

Result<OpenJob> openJob(const std::string& book, const std::string& number, BookUse use) {
  auto opened = JobBook::open(book, use);
  if (!opened) return failure(opened.error());
  auto job = opened->jobNumbered(number);
  if (!job) return failure(job.error());
  return OpenJob{std::move(*opened), std::move(*job)};
}

Result<void> addJobReadings(FaultOptions& options, const std::string& number) {
  if (number.empty()) return {};
  const auto open = openJob(options.book, number, BookUse::read);
  if (!open) return failure(open.error());
  options.taken = evidenceOf(open->job);
  return {};
}

Result<RepairActionId> keepAction(const std::string& book, const std::string& number,
                                  const RepairAction& action) {
  auto open = openJob(book, number, BookUse::change);
  if (!open) return failure(open.error());
  return open->book.addAction(open->job.id, action);
}

} // namespace netmend

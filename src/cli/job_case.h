#pragma once

#include <string>

#include <CLI/CLI.hpp>

#include "fault_case.h"
#include "netmend/jobbook/job_book.h"

namespace netmend {

/// `--job`, which goes with the `--book` that the command already has.
CLI::Option* addJobOption(CLI::App& command, std::string& job);

struct OpenJob {
  JobBook book;
  Job job;
};
[[nodiscard]] Result<OpenJob> openJob(const std::string& book, const std::string& number, BookUse use);

/// Gives a job's readings (but for proof) to the fault that is to be found. No job: nothing happens.
[[nodiscard]] Result<void> addJobReadings(FaultOptions& options, const std::string& job);

[[nodiscard]] Result<RepairActionId> keepAction(const std::string& book, const std::string& job,
                                                const RepairAction& action);

} // namespace netmend

#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "command.h"
#include "inputs.h"
#include "netmend/jobbook/job.h"

namespace netmend {

struct AddOptions {
  std::string book;
  std::string job;
  std::vector<std::string> walks;
  std::vector<std::string> readings;
  std::string purpose = "fault";
  std::vector<std::string> good;
  std::string meter;
  std::string by;
  std::uint64_t proofOf = 0;
  std::string action;
  std::string target;
  std::string reason;
  std::vector<std::string> tick;
  std::vector<std::string> works;
  std::string photo;
  std::string caption;
  std::string charge;
  std::string quantity = "1";
  std::string price;
  std::string state;
};

/// Adds what was named to the job. Everything is looked at first: bad input leaves the job as it was.
[[nodiscard]] Result<Answer> addToJob(const AddOptions& options);

/// Notes the very board description that a job uses: its identity and the digest (SHA-256) of the file.
void useBoard(Job& job, const BoardUnderWork& board);

} // namespace netmend

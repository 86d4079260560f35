#pragma once

#include <filesystem>
#include <string>

#include "netmend/jobbook/job.h"
#include "opened_file.h"

namespace netmend {

/// What a job says of its board.
struct BoardNote {
  std::string uuid;
  std::string name;
  std::string revision;
  std::string file;
  std::string digest;
};

inline BoardNote noteOf(const BoardUnderWork& board) {
  const BoardInfo& info = board.board->info;
  return {info.uuid, info.name.valueOr(""), info.revision.valueOr(""),
          std::filesystem::absolute(board.file).string(), board.digest};
}

inline BoardNote noteIn(const Job& job) {
  return {job.boardUuid, job.boardName, job.boardRevision, job.boardFile, job.boardDigest};
}

/// The job with this note of its board in place of its own.
inline Job noted(Job job, const BoardNote& note) {
  job.boardUuid = note.uuid;
  job.boardName = note.name;
  job.boardRevision = note.revision;
  job.boardFile = note.file;
  job.boardDigest = note.digest;
  return job;
}

} // namespace netmend

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/casework/repair_data.h"
#include "netmend/jobbook/job.h"
#include "netmend/probing/walk.h"

/// A reading's way into a job, the same at every station and on the command line.
namespace netmend {

/// What readings are held against.
struct JudgeBasis {
  const Lookup* lookup; ///< null: points are known by their labels alone
  const ExpectedTable& expected;
  const RepairData& data;
};

/// The point with its pin where only its label is known and one pin of the board is called so. `lookup` may
/// be null.
[[nodiscard]] ProbePoint withPin(ProbePoint point, const Lookup* lookup);

/// A reading taken this moment in the walk's way: its mode, other lead, meter, condition, and by whom.
[[nodiscard]] Reading readingNow(const Walk& walk, ProbePoint point, std::optional<double> value);

/// `[MODE] POINT [to POINT] VALUE`, for example `J4.7 OL` or `continuity J4.7 to C23.1 0.4`, taken this
/// moment in the walk's way. Labels may hold blanks (`pad of J4.7`). Points are matched to the board where
/// there is one.
[[nodiscard]] Result<Reading> parseReading(const std::string& text, const Walk& walk, const Lookup* lookup);

/// The reading as a job keeps it, with its verdict (`judgeWalk`). What is `already` known of its measurement
/// to come and go does so still.
[[nodiscard]] JobReading judged(const Reading& reading, ReadingPurpose purpose, const JudgeBasis& basis,
                                const std::vector<JobReading>& already);

/// The reading that was in force for this one's measurement, where the two differ by more than the same point
/// read twice does (docs/methods/probing.md): a slip, or it comes and goes. Null: none, or they agree.
/// `reading` is one of `readings`.
[[nodiscard]] const JobReading* readOtherwiseBefore(const std::vector<JobReading>& readings,
                                                    const JobReading& reading, const RepairData& data);

} // namespace netmend

#pragma once

#include <filesystem>
#include <string_view>
#include <vector>

#include "netmend/isolation/line_names.h"
#include "netmend/jobbook/job.h"
#include "netmend/jumper/work_steps.h"
#include "netmend/probing/verdict.h"

/// What the stations found, as a job keeps it.
namespace netmend {

/// The suspects of the reported set and always "none of these", likeliest first.
[[nodiscard]] std::vector<JobSuspect> toJobSuspects(const Isolation& isolation, const LineNames& names,
                                                    const Suspects& suspects);
[[nodiscard]] JobSuspect toJobSuspect(const Isolation& isolation, const LineNames& names,
                                      const Suspect& suspect);
[[nodiscard]] FoundFault toFoundFault(const FaultClass& faultClass, const LineNames& names);
[[nodiscard]] JobEvidence toJobEvidence(const Isolation& isolation, const LineNames& names,
                                        const Evidence& evidence);

/// A reading with the verdict on it, if there is one.
[[nodiscard]] JobReading toJobReading(const Reading& reading, ReadingPurpose purpose, const Verdict* verdict);

/// How the condition of a reading is handled that was taken between the steps of a repair: such a reading
/// says what the repair did to the board, so it compares with none taken before.
inline constexpr std::string_view repairUnderWay = "repair under way";

/// Whether the reading can tell where the fault is: neither a proof nor taken while a repair was under way.
[[nodiscard]] bool isEvidence(const JobReading& reading);

/// The readings that count, in the order taken: of each measurement, apart from those of its proof, the last
/// one; where it comes and goes the last odd one. A reading between the steps of a repair is a measurement
/// of its own.
[[nodiscard]] std::vector<const JobReading*> inForce(const std::vector<JobReading>& readings);
/// Those of them that are evidence; with them every OL that was read again and was OL again, each of which
/// makes a slip less likely.
[[nodiscard]] std::vector<Reading> evidenceOf(const Job& job);

[[nodiscard]] std::vector<WorkStep> toWorkSteps(const std::vector<Step>& steps);

/// A landing as a job keeps it.
[[nodiscard]] LandingPlace toLandingPlace(const Landing& landing, const PlaceNames& names);
/// A jumper proposal that was chosen, with its steps and what their texts leave open.
[[nodiscard]] RepairAction toJumperAction(const JumperProposal& proposal, const PlaceNames& names,
                                          const std::vector<Step>& steps, const WorkPrediction& prediction,
                                          const std::string& net, const std::optional<FoundFault>& because);

/// A picture as it stands in its file, which must be PNG or JPEG by its first bytes and no larger than 100
/// MB.
[[nodiscard]] Result<Photo> readPhoto(const std::filesystem::path& file);

} // namespace netmend

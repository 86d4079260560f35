#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/jumper/proposal.h"

/// What is done at the bench, in order, with the checks between.
namespace netmend {

enum class WorkKind { jumper, resolder, removePart, replacePart, clean, cutTrack, notEconomic };

struct Step {
  std::string text;
  bool check = false;   ///< a check between steps rather than work
  std::string expected; ///< check only: what to read, and what to do otherwise
  friend bool operator==(const Step&, const Step&) = default;
};

/// One line of data/work_steps.json. `{name}` in a text stands for a value that the caller gives.
struct StepTemplate {
  std::string when; ///< a flag that must be set for the step to appear; "!flag": must not be; empty: always
  std::string text;
  bool check = false;
  std::string expected;
};

struct WorkSteps {
  std::map<WorkKind, std::vector<StepTemplate>> kinds;
  std::vector<std::string> cautions; ///< for every sheet, in order
};

/// Reads data/work_steps.json. Fails naming file and JSON pointer, also for a `{name}` or flag nobody fills.
[[nodiscard]] Result<WorkSteps> loadWorkSteps(const std::filesystem::path& path);

/// What the readings at a jumper's places are expected to be, in words ("0.45 V in diode mode"). Empty:
/// unknown.
struct WorkPrediction {
  std::string atFrom;  ///< bare copper at the first landing, before the wire
  std::string atTo;    ///< the same at the second
  std::string bridged; ///< either landing once the wire is in
};

/// Uncover, touch, mask, tin, solder, fix, with the checks between them, for this very proposal.
[[nodiscard]] std::vector<Step> jumperSteps(const WorkSteps& data, const JumperProposal& proposal,
                                            const WorkPrediction& prediction = {});

struct WorkRequest {
  WorkKind kind = WorkKind::resolder;
  std::string target;   ///< the part, joint, place or track worked on
  std::string reason;   ///< why; needed for notEconomic
  std::string points;   ///< where to measure afterwards: "J4.11 and U2.7"
  std::string expected; ///< reading that proves it; empty: "the expected value"
};

/// Steps of the other repairs. Fails for `jumper`, which needs a proposal, and for an empty target.
[[nodiscard]] Result<std::vector<Step>> workSteps(const WorkSteps& data, const WorkRequest& request);

} // namespace netmend

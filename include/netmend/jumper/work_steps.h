#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/jumper/proposal.h"
#include "netmend/jumper/step.h"

/// What is done at the bench, in order, with the checks between.
namespace netmend {

/// Where a check of data/work_steps.json is measured: an end of the jumper or of another wire, or a side of a
/// solder bridge; whichever end was scraped (the first if both), the wire from end to end, what is worked on,
/// or the board's supply.
enum class MeasureAt { from, to, scraped, wire, target, supply };
/// What it must read: nothing to compare, next to no volts, the wire's resistance (at most twice), that two
/// places hang together or do not, or what the prediction says of a place.
enum class MeasureReads {
  anything,
  nothing,
  resistance,
  joined,
  parted,
  expectedFrom,
  expectedTo,
  expectedBridged
};
struct MeasureTemplate {
  MeasureAt at = MeasureAt::target;
  std::optional<MeasureAt> other; ///< none: ground
  ReadingMode mode = ReadingMode::diode;
  MeasureReads reads = MeasureReads::anything;
};

/// One line of data/work_steps.json. `{name}` in a text stands for a value that the caller gives.
struct StepTemplate {
  std::string when; ///< a flag that must be set for the step to appear; "!flag": must not be; empty: always
  std::string text;
  bool check = false;
  std::string expected;
  std::optional<MeasureTemplate> measure;
  std::string otherwise{};
  std::string detail{};
};

struct WorkSteps {
  std::map<WorkKind, std::vector<StepTemplate>> kinds;
  std::vector<std::string> cautions; ///< for every sheet, in order
};

/// Reads data/work_steps.json. Fails naming file and JSON pointer, also for a `{name}` or flag nobody fills.
[[nodiscard]] Result<WorkSteps> loadWorkSteps(const std::filesystem::path& path);

/// What its steps' texts leave open.
[[nodiscard]] WireFigures wireFigures(const JumperProposal& proposal, const WorkPrediction& prediction);

/// Uncover, touch, mask, tin, solder, fix, with the checks between them, for this very proposal.
[[nodiscard]] std::vector<Step> jumperSteps(const WorkSteps& data, const JumperProposal& proposal,
                                            const WorkPrediction& prediction = {});

struct WorkRequest {
  WorkKind kind = WorkKind::resolder;
  std::string target; ///< the part, joint, place or track worked on
  std::string reason; ///< why; needed for notEconomic
  /// Where its checks are measured: what is worked on; of a wire both ends, of a solder bridge both sides.
  std::vector<ProbePoint> places{};
};

/// Ohms up to which two places count as joined by a short wire, leads zeroed, and from which on they count as
/// parted. Common practice, no source.
inline constexpr double joinedOhms = 1.0;
inline constexpr double partedOhms = 10.0;

/// Steps of the other repairs. Fails for `jumper`, which needs a proposal, for an empty target, and for a
/// wire that has not two ends.
[[nodiscard]] Result<std::vector<Step>> workSteps(const WorkSteps& data, const WorkRequest& request);

} // namespace netmend

#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/jumper/proposal.h"
#include "netmend/probing/expected.h"

/// What is done at the bench, in order, with the checks between.
namespace netmend {

enum class WorkKind { jumper, resolder, removePart, replacePart, clean, cutTrack, notEconomic };

/// What a check wants measured, and what it must read.
struct StepMeasure {
  ReadingMode mode = ReadingMode::diode;
  ProbePoint point;
  ProbePoint other{PinId{}, "GND"};
  std::optional<ValueInterval> interval{}; ///< in the mode's unit; none, and no OL: nothing to compare with
  bool overLimit = false;                  ///< OL is what it should read
  [[nodiscard]] bool comparable() const { return interval || overLimit; }
  friend bool operator==(const StepMeasure&, const StepMeasure&) = default;
};

struct Step {
  std::string text;
  bool check = false;                   ///< a check between steps rather than work
  std::string expected;                 ///< check only: what to read, and what to do otherwise
  std::optional<StepMeasure> measure{}; ///< check only; none: by eye
  friend bool operator==(const Step&, const Step&) = default;
};

/// Where a check of data/work_steps.json is measured: an end of the jumper, whichever of them was scraped
/// (the first if both), the wire from end to end, what is worked on, or the board's supply.
enum class MeasureAt { from, to, scraped, wire, target, supply };
/// What it must read: nothing to compare, next to no volts, the wire's resistance (at most twice), or what
/// the prediction says of a place.
enum class MeasureReads { anything, nothing, resistance, expectedFrom, expectedTo, expectedBridged };
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
};

struct WorkSteps {
  std::map<WorkKind, std::vector<StepTemplate>> kinds;
  std::vector<std::string> cautions; ///< for every sheet, in order
};

/// Reads data/work_steps.json. Fails naming file and JSON pointer, also for a `{name}` or flag nobody fills.
[[nodiscard]] Result<WorkSteps> loadWorkSteps(const std::filesystem::path& path);

/// What a place should read in diode mode: OL, or a value give or take.
struct ExpectedReading {
  bool overLimit = false;
  Volts value{};
  Volts giveOrTake{};
};
/// What the readings at a jumper's places are expected to be. None: unknown.
struct WorkPrediction {
  std::optional<ExpectedReading> atFrom{};  ///< bare copper at the first landing, before the wire
  std::optional<ExpectedReading> atTo{};    ///< the same at the second
  std::optional<ExpectedReading> bridged{}; ///< either landing once the wire is in
};

/// Uncover, touch, mask, tin, solder, fix, with the checks between them, for this very proposal.
[[nodiscard]] std::vector<Step> jumperSteps(const WorkSteps& data, const JumperProposal& proposal,
                                            const WorkPrediction& prediction = {});

struct WorkRequest {
  WorkKind kind = WorkKind::resolder;
  std::string target;     ///< the part, joint, place or track worked on
  std::string reason;     ///< why; needed for notEconomic
  std::string points;     ///< where to measure afterwards: "J4.11 and U2.7"
  std::string expected;   ///< reading that proves it; empty: "the expected value"
  ProbePoint measureAt{}; ///< where its checks are measured
};

/// Steps of the other repairs. Fails for `jumper`, which needs a proposal, and for an empty target.
[[nodiscard]] Result<std::vector<Step>> workSteps(const WorkSteps& data, const WorkRequest& request);

} // namespace netmend

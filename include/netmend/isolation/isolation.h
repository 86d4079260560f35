#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "netmend/base/progress.h"
#include "netmend/board/lookup.h"
#include "netmend/isolation/fault_priors.h"
#include "netmend/isolation/foretold.h"
#include "netmend/isolation/terminations.h"
#include "netmend/netgraph/line.h"
#include "netmend/probing/expected.h"
#include "netmend/probing/meter.h"
#include "netmend/probing/reading.h"

/// Where is a line open? Hypotheses, what each says of every reading, what the readings leave of them, and
/// where to probe next. Values and functions: an `Isolation` is a value, `update` gives back another.
namespace netmend {

/// One place of one possible fault.
struct FaultPlace {
  FaultKind kind = FaultKind::open;
  double share = 1.0;               ///< of its class
  std::optional<EdgeKind> edgeKind; ///< open only
  std::optional<std::size_t>
      edge; ///< open only: `CopperEdge::index` in the line's graph; empty: inside an unknown way
  CopperObject object;
  PinId pin;               ///< dead pin, joint
  std::optional<Point> at; ///< middle of the place
  std::vector<Point> way;  ///< the suspected stretch; one point for a joint or a via; empty: nobody knows
  int layer = -1;          ///< dense; -1: does not apply, or unknown
  std::optional<Length> length; ///< of a track; empty: does not apply, or unknown
  std::vector<PinId> beyond;    ///< of an unknown way: the pins that a break in it cuts off …
  std::vector<PinId> before; ///< … and, where more than one way goes on from there, those on the other side
};

/// Faults that no reading at a reachable place can tell apart.
struct FaultClass {
  FaultKind kind = FaultKind::open; ///< of its likeliest place
  std::vector<FaultPlace> places;   ///< likeliest first; empty for sound, short and none of these
  double prior = 0.0;
};

/// A place where a lead can be held.
struct ProbePlace {
  std::string label;             ///< its handle, which a reading taken here carries: "J4.11", "via 17 top"
  CopperObject object;           ///< PinId, PadId, ViaId or TrackId
  PinId pin;                     ///< none: copper, not a pin
  std::optional<NodeIndex> node; ///< in the line's graph; empty: along a track
  std::optional<Point> at;
  int layer = -1;      ///< dense; -1: any, or unknown
  bool scrape = false; ///< mask and copper have to be laid open
  Fact<Access> access;
  std::optional<Seconds> effort; ///< empty: not reachable
};

/// What boards known to be good read on this line in diode mode at 25 °C.
struct KnownGood {
  PinId pin;
  std::optional<Volts> value{};    ///< empty: OL
  Volts spread{};                  ///< one standard deviation between boards; zero: as in the priors
  bool sometimesOverLimit = false; ///< some good boards read OL here: then OL is nothing against the line
  friend bool operator==(const KnownGood&, const KnownGood&) = default;
};

/// The expected values of a line's pins that come from boards or were entered by hand (a default of the pin's
/// kind tells nothing that the priors do not). Of a mixture the heaviest part counts.
[[nodiscard]] std::vector<KnownGood> knownGoodOf(const Lookup& lookup, const Line& line,
                                                 const ExpectedTable& expected,
                                                 const Condition& condition = {});

struct IsolationOptions {
  Condition condition; ///< readings that were taken in another condition are set aside
};

/// Everything an isolation starts from. It keeps no reference to any of it.
struct IsolationInput {
  const Lookup& lookup;
  const Line& line;
  FaultPriors priors;
  ProbeEfforts efforts;
  MeterProfile meter;
  std::vector<KnownGood> knownGood{};
  std::vector<PinTermination> terminations{}; ///< empty: `terminationsOf`
  IsolationOptions options{};
};

/// A reading that is used.
struct Observation {
  Reading reading;
  std::size_t place = 0;            ///< index into `places`
  std::optional<std::size_t> other; ///< the other lead, where it is on the line too
};

/// Why a reading was not used.
enum class SetAsideWhy {
  notANumber,
  otherCondition,     ///< than the expected values hold for
  rising,             ///< not settled yet
  notOnLine,          ///< its point
  otherLeadElsewhere, ///< neither on ground nor on the line
  diodeFromPointToPoint,
  noDiodeMode, ///< the meter has none
  negativeResistance,
  modeToGround, ///< resistance to ground in a mode that tells nothing there
  mode          ///< of no use for this question
};
struct SetAside {
  Reading reading;
  SetAsideWhy why = SetAsideWhy::mode;
};

/// What is not known of the line, and so limits what can be found.
struct LineNotice {
  enum class Kind {
    unknownWays,     ///< copper whose way nobody has seen holds `share` of the chances
    knownGoodAstray, ///< a known-good value is for a pin that is not on this line
    noKnownGood,     ///< readings are predicted to about `spread`; one value of a good board makes it
                     ///< `spreadThen`
    onePin,          ///< a break can not be placed
    noDiodeMode      ///< the meter has none
  };
  Kind kind = Kind::onePin;
  std::size_t count = 0;
  double share = 0.0;
  Volts spread{};
  Volts spreadThen{};
  friend bool operator==(const LineNotice&, const LineNotice&) = default;
};

struct IsolationModel; ///< the line as the engine sees it; does not change
struct Foreseen;       ///< what a lead would meet

struct Isolation {
  std::vector<FaultClass> classes; ///< first sound, then none of these, then short to ground, then the others
  std::vector<double> probability; ///< of each class, sums to 1; sound has none while a pin that is known to
                                   ///< read a value on good boards read OL, and no value since
  std::vector<ProbePlace> places;  ///< where a reading can be taken, reachable or not
  std::vector<Observation> observations;
  std::vector<SetAside> setAside; ///< readings that were not used, with the reason
  std::vector<LineNotice> notices;
  std::shared_ptr<const IsolationModel> model;
  std::vector<double> logMass; ///< by class: log of prior × likelihood of all readings
  std::shared_ptr<const std::vector<std::vector<Foreseen>>> foreseen; ///< by class
  std::vector<std::size_t> cellsRead;                                 ///< of the line as a tree
  double shareError = 0.0; ///< of the worst share, where a line is too large to be worked out to the end
};

/// The place where a lead is, or was: an index into `places`; also by a handle of an older job book.
[[nodiscard]] std::optional<std::size_t> probePlaceOf(const Isolation& isolation, const ProbePoint& point);

/// Builds the hypotheses and what they predict.
[[nodiscard]] Isolation makeIsolation(const IsolationInput& input);

/// After more readings (Bayes), in whatever order. A reading that the engine cannot use is set aside and
/// changes nothing. Told to stop, it gives back nothing.
[[nodiscard]] Isolation update(Isolation isolation, const Reading& reading);
[[nodiscard]] Isolation update(Isolation isolation, const std::vector<Reading>& readings);
[[nodiscard]] std::optional<Isolation> update(Isolation isolation, const std::vector<Reading>& readings,
                                              const std::stop_token& stop);

/// What one reading says for or against a suspect.
struct Evidence {
  std::size_t observation = 0;
  double bits =
      0.0; ///< log2 of its likelihood under this suspect over that under the others, all other readings given
  Foretold foretold; ///< what this suspect says of it, all other readings given
};

struct Suspect {
  std::size_t faultClass = 0;
  double probability = 0.0;
  double prior = 0.0; ///< before any reading
  std::vector<FaultPlace> places;
  std::vector<Evidence> evidence; ///< most telling first; none for suspects far down the list
};

/// OL in diode mode at a pin where good boards are known to read a value, and no value read there since.
/// While one stands the line is not called sound, however likely a slip may be.
struct StandingOverLimit {
  std::size_t observation = 0; ///< the first
  Volts good;
  bool repeated = false; ///< read once more, and OL again
};

/// A reading that the leading suspect can only explain by a slipped probe.
struct Contradiction {
  std::size_t observation = 0;
  Foretold foretold;    ///< by the leading suspect
  double slipped = 0.0; ///< probability
};

struct Suspects {
  std::vector<Suspect> ranked;
  std::size_t setSize = 0; ///< this many of them together hold at least `setMass`
  double setMass = 0.0;    ///< what they hold
  std::size_t setPlaces = 0;
  Length setLength; ///< of the tracks in that set, as far as known
  bool setHasUnknownLength = false;
  double entropyBits = 0.0;
  std::vector<Contradiction> contradictions;     ///< to be taken again
  std::optional<StandingOverLimit> againstSound; ///< alone keeps the line from being called sound
};
[[nodiscard]] Suspects suspects(const Isolation& isolation, double setMass = 0.9);

/// What the caller knows of repairs. `groupOf[c]`: classes of the same number are mended by the same repair
/// and need not be told apart; empty: each its own.
struct RepairView {
  std::vector<std::size_t> groupOf{};
  std::optional<Seconds> wrongRepair{}; ///< what a wrong repair costs; empty: as in the efforts
};

struct ProbeProposal {
  ReadingMode mode = ReadingMode::diode;
  std::size_t place = 0;
  std::optional<std::size_t> other; ///< continuity: the second lead
  Seconds effort;
  double bits = 0.0; ///< expected fall of entropy
  double bitsPerMinute = 0.0;
  double betterGuess = 0.0; ///< expected rise of the probability to pick the right repair
  bool again = false;       ///< has been read in this way before
  Prediction expected{};    ///< diode mode only
};

/// Why to probe on, or to stop.
enum class ProbeAdvice {
  nothingReachable,
  nothingTelling,
  notWorthItsTime,
  worthItsTime,
  readAgain ///< a single OL stands between a sound line and a fault
};

struct NextProbe {
  bool stop = false;
  ProbeAdvice why = ProbeAdvice::nothingReachable;
  double openBits = 0.0;                       ///< entropy of what is left to choose between
  double bestGuess = 0.0;                      ///< probability of the likeliest repair
  Seconds wrongRepair{};                       ///< what a wrong one costs
  std::optional<StandingOverLimit> standing{}; ///< `readAgain` only
  std::vector<ProbeProposal> ranked; ///< best first; the next one is the answer to "cannot reach that"
};

struct ProbeLimits {
  std::vector<std::string> unreachable{}; ///< labels of places that turned out not to be reachable
  std::size_t most = 12;                  ///< proposals wanted
};

[[nodiscard]] NextProbe nextProbe(const Isolation& isolation, const RepairView& repairs = {},
                                  const ProbeLimits& limits = {});

/// What a meter should read at a place, all hypotheses together.
[[nodiscard]] Prediction predictDiode(const Isolation& isolation, std::size_t place);
/// The same if this class were the fault.
[[nodiscard]] Prediction predictDiode(const Isolation& isolation, std::size_t place, std::size_t faultClass);

} // namespace netmend

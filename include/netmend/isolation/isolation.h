#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/progress.h"
#include "netmend/board/lookup.h"
#include "netmend/isolation/fault_priors.h"
#include "netmend/isolation/terminations.h"
#include "netmend/netgraph/line.h"
#include "netmend/probing/expected.h"
#include "netmend/probing/meter.h"
#include "netmend/probing/reading.h"

/// Where is a line open? Hypotheses, what each says of every reading, what the readings leave of them, and
/// where to probe next. Values and functions: an `Isolation` is a value, `update` gives back another.
namespace netmend {

enum class FaultKind { sound, open, deadPin, shortToGround, noneOfThese };

/// One place of one possible fault.
struct FaultPlace {
  FaultKind kind = FaultKind::open;
  std::string text; ///< "joint of U3.12", "track on layer 2 of KEY_COL3 from (3.10, 7.00) to (9.00, 7.00) mm"
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
};

/// Faults that no reading at a reachable place can tell apart.
struct FaultClass {
  FaultKind kind = FaultKind::open; ///< of its likeliest place
  std::string text;
  std::vector<FaultPlace> places; ///< likeliest first; empty for sound, short and none of these
  double prior = 0.0;
};

/// A place where a lead can be held.
struct ProbePlace {
  std::string label;             ///< what a reading taken here carries: "J4.11", "via at (12.10, 8.00) mm"
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
};

/// The expected values of a line's pins that come from boards or were entered by hand (a default of the pin's
/// kind tells nothing that the priors do not). Of a mixture the heaviest part counts.
[[nodiscard]] std::vector<KnownGood> knownGoodOf(const Lookup& lookup, const Line& line,
                                                 const ExpectedTable& expected,
                                                 const Condition& condition = {});

struct IsolationOptions {
  Condition condition; ///< readings that were taken in another condition are set aside
  /// Of what may be behind the pins, to begin with and at most: more are drawn while shares are not certain
  /// to 0.01, as far as the size of the line allows.
  std::size_t samples = 2048;
  std::size_t mostSamples = 131072;
  std::uint64_t seed = 1;
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

/// A reading and what each class said of it beforehand.
struct Observation {
  Reading reading;
  std::size_t place = 0;             ///< index into `places`
  std::optional<std::size_t> other;  ///< the other lead, where it is on the line too
  std::vector<double> logLikelihood; ///< by class, given all readings before
};

struct SetAside {
  Reading reading;
  std::string reason;
};

struct IsolationModel; ///< the line as the engine sees it; does not change

struct Isolation {
  std::vector<FaultClass> classes; ///< first sound, then none of these, then short to ground, then the others
  std::vector<double> probability; ///< of each class, sums to 1; sound has none while a pin that is known to
                                   ///< read a value on good boards read OL, and no value since
  std::vector<ProbePlace> places;  ///< where a reading can be taken, reachable or not
  std::vector<Observation> observations;
  std::vector<SetAside> setAside; ///< readings that were not used, with the reason
  std::vector<std::string>
      notices; ///< what is not known and what that means: "works between pins, not along …"
  std::shared_ptr<const IsolationModel> model;
  std::vector<double> logMass; ///< by class: log of prior × likelihood of all readings
  std::vector<double> weight;  ///< class × sample: of the samples within a class, sums to 1 there
  double samplingError = 0.0;  ///< largest standard error of a probability for want of samples
};

/// Builds the hypotheses and what they predict. Cost: an operating point for each fragment and sample.
[[nodiscard]] Isolation makeIsolation(const IsolationInput& input);

/// After one more reading (Bayes), with more samples where these are too few. A reading that the engine
/// cannot use is set aside and changes nothing.
[[nodiscard]] Isolation update(Isolation isolation, const Reading& reading);
[[nodiscard]] Isolation update(Isolation isolation, const std::vector<Reading>& readings);

/// What one reading says for or against a suspect.
struct Evidence {
  std::size_t observation = 0;
  double bits = 0.0; ///< log2 of its likelihood under this suspect over that under all the others
  std::string text;  ///< "J4.11 read 0.471 V; here 0.453 ± 0.008 V is expected: 34 times less likely"
};

struct Suspect {
  std::size_t faultClass = 0;
  double probability = 0.0;
  std::string text;
  std::vector<FaultPlace> places;
  std::vector<Evidence> evidence;
  std::string explanation;
};

struct Suspects {
  std::vector<Suspect> ranked;
  std::size_t setSize = 0; ///< this many of them together hold at least `setMass`
  double setMass = 0.0;    ///< what they hold
  std::size_t setPlaces = 0;
  Length setLength; ///< of the tracks in that set, as far as known
  bool setHasUnknownLength = false;
  double entropyBits = 0.0;
  std::vector<std::string>
      contradictions; ///< readings that do not fit the leading suspect: to be taken again
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
  std::string text;         ///< "diode mode at J4.11: narrows 8.3 possible repairs down to 4.3 in 15 s; …"
};

struct NextProbe {
  bool stop = false;
  std::string reason;                ///< why stop, or why the first proposal
  std::vector<ProbeProposal> ranked; ///< best first; the next one is the answer to "cannot reach that"
};

struct ProbeLimits {
  std::vector<std::string> unreachable{}; ///< labels of places that turned out not to be reachable
  std::size_t most = 12;                  ///< proposals wanted
};

[[nodiscard]] NextProbe nextProbe(const Isolation& isolation, const RepairView& repairs = {},
                                  const ProbeLimits& limits = {});

/// What a meter should read at a place, all hypotheses together.
struct Prediction {
  double overLimit = 0.0; ///< probability
  Volts mean;             ///< of the rest
  Volts spread;
};
[[nodiscard]] Prediction predictDiode(const Isolation& isolation, std::size_t place);
/// The same if this class were the fault.
[[nodiscard]] Prediction predictDiode(const Isolation& isolation, std::size_t place, std::size_t faultClass);

} // namespace netmend

#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "netmend/base/geometry.h"
#include "netmend/base/id.h"
#include "netmend/base/time.h"
#include "netmend/board/board.h"
#include "netmend/isolation/foretold.h"
#include "netmend/jobbook/money.h"
#include "netmend/jumper/landing_kind.h"
#include "netmend/jumper/step.h"
#include "netmend/netgraph/place_name.h"
#include "netmend/probing/verdict.h"

/// What the job book keeps of one customer's repair.
namespace netmend {

using JobId = Id<struct JobTag>;
using JobReadingId = Id<struct JobReadingTag>;
using RepairActionId = Id<struct RepairActionTag>;
using PhotoId = Id<struct PhotoTag>;
using ChargeId = Id<struct ChargeTag>;

/// Where the job stands.
enum class JobState { bookedIn, probing, suspectFound, repairing, proving, handedOver, returnedUnrepaired };

/// What a reading was taken for.
enum class ReadingPurpose { fault, check, proof };

/// What says what a reading should be.
enum class ExpectedBy { goodBoards, sameNet, workSteps, wire };

/// What a reading was judged to be at the time, and by what.
struct Judged {
  Verdict verdict;
  std::optional<ValueInterval> limits{}; ///< in the mode's unit, where no board says what to expect
  ExpectedBy by = ExpectedBy::goodBoards;
  std::string asAt{};       ///< the point on the same net whose expected value was taken
  bool fromOldBook = false; ///< only the verdict's kind and what was expected are known
  friend bool operator==(const Judged&, const Judged&) = default;
};

struct JobReading {
  JobReadingId id;
  ReadingPurpose purpose = ReadingPurpose::fault;
  Reading reading;
  std::optional<Judged> judged{}; ///< none: not judged
  std::string remark{}; ///< of a check: what the step asked for; from an older book: its explanation
  /// Read again it was something else, and no slip of the lead: somebody said so of all readings of this
  /// measurement.
  bool comesAndGoes = false;

  [[nodiscard]] VerdictKind kind() const {
    return judged ? judged->verdict.kind : VerdictKind::nothingToCompare;
  }
  /// Judged, and not as it should be, or not always.
  [[nodiscard]] bool odd() const { return comesAndGoes || isFlag(kind()); }
};

/// A fault as it was found, by its likeliest place.
struct FoundFault {
  FaultKind kind = FaultKind::open;
  PlaceName place;
  std::size_t places = 0; ///< that no reading tells apart; none for faults without a place
  friend bool operator==(const FoundFault&, const FoundFault&) = default;
};

/// What one reading said for or against a suspect.
struct JobEvidence {
  PlaceName at;
  std::optional<PlaceName> other{}; ///< the other lead, where it was on the line too
  ReadingMode mode = ReadingMode::diode;
  std::optional<double> value;          ///< in the mode's unit; none: OL
  std::optional<Celsius> temperature{}; ///< of the board
  Foretold foretold;
  double bits = 0.0;
  friend bool operator==(const JobEvidence&, const JobEvidence&) = default;
};

/// A suspect as found at the time.
struct JobSuspect {
  FoundFault fault;
  double probability = 0.0;
  double prior = 0.0;                ///< before any reading
  std::vector<JobEvidence> evidence; ///< the most telling readings, first the one that told most
  std::size_t more = 0;              ///< readings that told less
  double samplingError = 0.0;        ///< of the probability
  std::optional<Point> at;
  std::vector<Point> way; ///< the suspected stretch, for the picture
  /// Of an older book, word for word, instead of the fault and its evidence.
  std::string what{};
  std::string explanation{};

  friend bool operator==(const JobSuspect&, const JobSuspect&) = default;
};

using RepairKind = WorkKind; ///< what is done about it

enum class StepOutcome { agrees, disagrees, notCompared };
/// What a check between two steps read.
struct CheckRead {
  std::optional<double> value; ///< in the mode of its measure; none: OL
  StepOutcome outcome = StepOutcome::notCompared;
  friend bool operator==(const CheckRead&, const CheckRead&) = default;
};

struct WorkStep {
  std::string text;     ///< as of `Step`, with gaps; of a function, and of an older book, as it is read
  bool check = false;   ///< a check between steps rather than work
  std::string expected; ///< check only: what must be found; of an older book also what to do otherwise
  bool done = false;
  std::string note;                     ///< as somebody wrote it
  std::optional<StepMeasure> measure{}; ///< check only: what it wants measured; none: by eye
  std::optional<CheckRead> read{};      ///< its last reading
  bool function = false;                ///< tries what the device is for, once the work is done
  std::string otherwise{};              ///< check only: what to do if it is not found
  std::string detail{};                 ///< how it is done, and what to mind
};

/// A place where a jumper's wire is soldered.
struct LandingPlace {
  LandingKind kind = LandingKind::partTerminal;
  PlaceName name{};
  Point at;
  Side side = Side::top;
  ProbePoint point{};  ///< what a reading taken there is taken at
  std::string label{}; ///< of an older book, instead of kind and name
};

struct JumperRecord {
  LandingPlace from;
  LandingPlace to;
  std::vector<Point> way; ///< from landing to landing, both included
  Side side = Side::top;
  std::string wire; ///< its name in the wire table
  std::string net;
  std::optional<WireFigures> figures{}; ///< for the texts of its steps; none: of an older book
};

struct RepairAction {
  RepairActionId id;
  RepairKind kind = RepairKind::jumper;
  std::string target;                  ///< the part, joint or net worked on; of `other`, what is done
  std::string reason;                  ///< as somebody wrote it; from an older book: what was found
  std::optional<FoundFault> because{}; ///< the fault that a jumper is to mend; none: named by hand
  /// What was worked on, as it is measured: both ends of a wire, both sides of a solder bridge.
  std::vector<ProbePoint> places{};
  std::vector<WorkStep> steps;
  std::vector<JobReadingId> proof; ///< readings that show that the repair holds
  std::optional<JumperRecord> jumper;
};

/// The bytes of a picture's file. They never change, so that all copies of a job share them. Any thread may
/// ask for them.
class PhotoBytes {
public:
  PhotoBytes() : PhotoBytes(std::string()) {}
  PhotoBytes(std::string content) : content_(std::make_shared<Content>()) {
    content_->text = std::move(content);
  }
  /// Bytes that `read` gives when somebody first wants them: a job opens without its photos. Nothing: they
  /// could not be read this time.
  [[nodiscard]] static PhotoBytes later(std::function<std::optional<std::string>()> read) {
    PhotoBytes out;
    out.content_->read = std::move(read);
    return out;
  }
  /// Empty where they could not be read; no picture's file is.
  [[nodiscard]] const std::string& text() const {
    const std::lock_guard lock(content_->mutex);
    static const std::string none;
    if (content_->read) {
      auto bytes = content_->read();
      if (!bytes) return none;
      content_->text = std::move(*bytes);
      content_->read = nullptr;
    }
    return content_->text;
  }
  [[nodiscard]] const char* data() const { return text().data(); }
  [[nodiscard]] std::size_t size() const { return text().size(); }
  friend bool operator==(const PhotoBytes& a, const PhotoBytes& b) {
    return a.content_ == b.content_ || a.text() == b.text();
  }

private:
  struct Content {
    std::mutex mutex;
    std::function<std::optional<std::string>()> read; ///< null: they are here
    std::string text;
  };
  std::shared_ptr<Content> content_;
};

struct Photo {
  PhotoId id;
  std::string caption;
  std::string mediaType; ///< "image/png" or "image/jpeg"
  PhotoBytes bytes;
};

struct Charge {
  ChargeId id;
  std::string what;
  Decimal quantity{10000}; ///< one
  Decimal price;           ///< of one
};

struct Job {
  JobId id;
  std::string number; ///< as printed, unique: "2026-0007"
  Time created{};
  std::string customer;
  std::string customerReference;
  std::string device;
  std::string serial;
  std::string symptom;
  std::string history;
  std::string condition; ///< as received: water marks, opened before …
  std::string boardUuid;
  std::string boardName;
  std::string boardRevision; ///< as the board says
  std::string boardFile;     ///< where it was at the time
  std::string boardDigest;   ///< of the file's content: the very revision used
  JobState state = JobState::bookedIn;
  std::string currency = "EUR";
  std::vector<JobReading> readings;
  std::vector<JobSuspect> suspects;
  std::vector<RepairAction> actions;
  std::vector<Photo> photos;
  std::vector<Charge> charges;
  std::string internalNotes; ///< never on the customer's copy
};

} // namespace netmend

#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <QObject>

#include "background.h"
#include "bench_walk.h"
#include "netmend/casework/fault_case.h"
#include "netmend/casework/hand_repair.h"
#include "netmend/casework/jumper_case.h"

namespace netmend {

/// Where the line is open, what to probe next, how to bridge it: worked out again, beside the event loop,
/// whenever readings, good walks or board change.
class BenchFault : public QObject {
  Q_OBJECT

public:
  BenchFault(BenchJob& job, BenchWalk& walk);

  /// The line asked about. Follows the oddest pin of the walk until somebody chooses.
  [[nodiscard]] NetId net() const { return net_; }
  [[nodiscard]] PinId pin() const { return pin_; }
  void choose(NetId net);
  void choose(PinId pin);
  /// The oddest pin of the walk again.
  void followWalk();
  [[nodiscard]] bool chosen() const { return chosen_; } ///< by somebody, not by the walk

  /// What is known so far; null: no line, or not worked out yet.
  [[nodiscard]] std::shared_ptr<const FaultCase> fault() const { return fault_; }
  [[nodiscard]] bool working() const { return solving_.busy() || routing_.busy(); }
  /// The last reading is still being weighed: what `nextProbe` says is out of date, and a value without a
  /// point is refused, since it would be filed under the wrong one.
  [[nodiscard]] bool solving() const { return solving_.busy(); }
  [[nodiscard]] std::string lineName() const;

  /// The proposal to follow: the best that can be reached; nothing when probing should stop.
  [[nodiscard]] const ProbeProposal* nextProbe() const;
  /// "Can't reach it": the next best at once.
  void cannotReach();
  /// Everything can be reached again.
  void reachAll();
  /// Handles of the places that cannot be reached.
  [[nodiscard]] const std::vector<std::string>& unreachable() const { return unreachable_; }
  /// A reading at the next probe's place (or at `[MODE] POINT [to POINT] VALUE` when points are named), kept
  /// in the job as a check.
  [[nodiscard]] Result<void> type(const std::string& text);
  [[nodiscard]] Result<void> take(const std::optional<double>& value, Settling settling = Settling::settled);
  /// The same of a linked meter: what comes of the same touch belongs to the reading before.
  [[nodiscard]] Result<void> take(const ValueTaken& value);

  /// Ways to bridge the leading break; null until worked out, or why there are none.
  [[nodiscard]] std::shared_ptr<const JumperProposals> proposals() const { return proposals_; }
  [[nodiscard]] const Said& whyNoProposals() const { return whyNoProposals_; }
  /// Makes this proposal a repair action of the job, with steps and checks.
  bool accept(std::size_t proposal);
  /// A repair that somebody names, with its steps; what the board says against it.
  [[nodiscard]] Result<std::optional<Said>> addAction(const HandRepair& repair);

Q_SIGNALS:
  void changed();

private:
  void askAgain();
  void follow();
  void solve();
  void solved(Result<FaultCase> fault);
  void route();
  [[nodiscard]] bool isPlaceOfLine(const std::string& label) const;
  [[nodiscard]] Result<void> keep(const Reading& reading);
  /// The odd pin of the line that is looked at; of no label: there is none.
  [[nodiscard]] ProbePoint oddPoint() const;
  /// The reading that was taken here last, if nothing was read or taken back since; else null.
  [[nodiscard]] const JobReading* lastTaken() const;

  void followJob();
  [[nodiscard]] bool chooseAgain();
  /// What everything here is of.
  struct About {
    std::string board; ///< its uuid
    JobId job;
    friend bool operator==(const About&, const About&) = default;
  };

  BenchJob& job_;
  BenchWalk& walk_;
  About about_;
  NetId net_;
  PinId pin_;
  NetId askedNet_; ///< what `fault_` is, or will be, about
  PinId askedPin_;
  bool chosen_ = false;
  std::vector<std::string> unreachable_;
  JobReadingId lastTaken_;
  std::shared_ptr<const FaultCase> fault_;
  std::shared_ptr<const JumperProposals> proposals_;
  Said whyNoProposals_;
  Background solving_;
  Background routing_;
};

} // namespace netmend

#pragma once

#include <stop_token>
#include <string>
#include <vector>

#include "netmend/casework/board_under_work.h"
#include "netmend/casework/one_jumper.h"
#include "netmend/casework/repair_data.h"
#include "netmend/isolation/line_names.h"
#include "netmend/netgraph/line.h"

namespace netmend {

/// What is asked: where is this line open, given these readings of the faulty board and walks of good ones?
struct FaultQuestion {
  NetId net;                     ///< the line's net …
  PinId pin;                     ///< … or a pin on it, where the net has no name or nobody knows it
  std::vector<Reading> readings; ///< of anywhere; those on other lines are left out
  ExpectedTable expected;
  std::string meter; ///< profile id; empty: that of the first reading, or else the plainest
  std::vector<std::string> unreachable; ///< handles of places that turned out not to be reachable
};

/// What a line is solved from before its first reading.
struct FaultBasis {
  NetId net;
  PinId pin;
  std::string meter;
  Condition condition;
  std::vector<KnownGood> knownGood;
  friend bool operator==(const FaultBasis&, const FaultBasis&) = default;
};

/// One line with what its readings leave of the suspects.
struct FaultCase {
  FaultBasis basis;
  Line line;
  std::vector<Reading> readings; ///< those on the line
  Isolation isolation;
  LineNames names; ///< of its places
  Suspects suspects;
  std::vector<OneJumper> jumpers; ///< that mend more than one suspect; looked for where probing would go on
  NextProbe next;
};

/// Goes on from what was found `before` (may be null) where that was the same but for readings at its end.
/// Fails when the meter is unknown, when the question names neither net nor pin, and where it was told to
/// stop.
[[nodiscard]] Result<FaultCase> solveFault(const BoardUnderWork& board, const FaultQuestion& question,
                                           const RepairData& data, const FaultCase* before = nullptr,
                                           const std::stop_token& stop = {});

/// The line's first net by name; without one, the label of a pin on it.
[[nodiscard]] std::string lineName(const Board& board, const Line& line);

/// The leading class of breaks: the places where the line may be open. None when something else leads.
[[nodiscard]] const Suspect* leadingBreak(const FaultCase& fault);

} // namespace netmend

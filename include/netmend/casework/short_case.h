#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/casework/board_under_work.h"
#include "netmend/casework/injection.h"
#include "netmend/casework/repair_data.h"
#include "netmend/isolation/short_places.h"

namespace netmend {

/// What is asked: where is this line shorted to ground, given these readings and what was seen?
struct ShortQuestion {
  NetId net;                       ///< the line's net …
  PinId pin;                       ///< … or a pin on it
  std::vector<Reading> readings;   ///< of anywhere; what does not help is set aside with its reason
  std::string meter;               ///< profile id; empty: that of the first reading, or one with milliohms
  PinId injectedAt;                ///< where the current of drops goes in
  std::optional<Amperes> injected; ///< of drops that do not say themselves
  std::vector<ShortSign> signs;
  std::vector<std::string> unreachable;
};

struct ShortCase {
  Line line;
  ShortSearch search;
  NextShortProbe next;
  /// Only where milliohms say that the line is short.
  std::optional<InjectionProposal> injection;
};

/// The line goes on through supplies and parts of up to 10 Ω: a short behind a ferrite is a short of the rail
/// before it. Of temperatures among the readings the warmest is a sign too (`warmestOf`). Fails when the
/// meter is unknown, when the question names neither net nor pin, and where the line is ground itself.
[[nodiscard]] Result<ShortCase> solveShort(const BoardUnderWork& board, const ShortQuestion& question,
                                           const RepairData& data);

/// The part, or the place of the pin, so called: what somebody has seen there.
[[nodiscard]] Result<ShortSign> signAt(const Lookup& lookup, ShortSign::Kind kind, const std::string& label);

/// The predicted drop along the copper for the likeliest place, with the proposed current going in at the
/// first reachable point of `injectedAt`, or else of the best next probe. Empty where no place has copper.
[[nodiscard]] DropPattern dropPatternOf(const ShortCase& found, PinId injectedAt, Amperes current);

} // namespace netmend

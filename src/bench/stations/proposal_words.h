#pragma once

#include <vector>

#include <QString>

#include "netmend/jumper/proposal.h"
#include "netmend/netgraph/place_name.h"

/// What a proposal's card says in few words. No widgets here.
namespace netmend {

/// What a wire needs, or what to mind about it.
struct ProposalChip {
  QString text;
  bool caution = false; ///< look first
  friend bool operator==(const ProposalChip&, const ProposalChip&) = default;
};
[[nodiscard]] std::vector<ProposalChip> chipsOf(const JumperProposal& proposal, const PlaceNames& places);

/// One figure of a card, with what it is beneath.
struct ProposalFigure {
  QString value;
  QString unit;
  QString caption;
};
/// Length, share of the suspected breaks that it mends, least gap, time: always in this order.
[[nodiscard]] std::vector<ProposalFigure> figuresOf(const JumperProposal& proposal, double mends,
                                                    Seconds work);

/// "Via at J4.9 to C28.1".
[[nodiscard]] QString endsOf(const JumperProposal& proposal, const PlaceNames& places);
/// The name of a landing's place alone.
[[nodiscard]] QString placeOf(const Landing& landing, const PlaceNames& places);

} // namespace netmend

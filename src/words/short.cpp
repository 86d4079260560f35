#include "netmend/words/short.h"

#include <fmt/format.h>

#include "netmend/words/place.h"
#include "netmend/words/reading.h"

namespace netmend {

namespace {

std::string labelOf(const Board& board, PartId id) {
  const Part* part = board.parts.find(id);
  return part != nullptr ? part->reference : std::string();
}

std::string netName(const Board& board, NetId id) {
  const Net* net = board.nets.find(id);
  return net != nullptr ? net->name : std::string();
}

Figure volts(Volts value) {
  return {value.value, 2, "V"};
}

} // namespace

Said nameOf(const ShortPlace& place, const PlaceNames& places) {
  const Board& board = places.board();
  switch (place.kind) {
  case ShortKind::part:
    return said(pattern("core", "inside {}"), labelOf(board, place.part));
  case ShortKind::bridge:
    return said(pattern("core", "bridge from {} to {}"), pinLabel(board, place.pin),
                pinLabel(board, place.neighbour));
  case ShortKind::nearGround:
    if (std::holds_alternative<AreaId>(place.object))
      return said(pattern("core", "to ground at the edge of its copper area, {}"),
                  nameOf(places.of({}, *place.at, place.layer)));
    return said(pattern("core", "to ground beside {}, gap {}"),
                nameOf(places.of(place.object, *place.at, place.layer)), Figure{place.gap->mm(), 2, "mm"});
  case ShortKind::noneOfThese:
    break;
  }
  return pattern("core", "none of these");
}

Said nameOf(const ProbePlace& point, const PlaceNames& places) {
  if (!point.at) return asItIs(point.label);
  return nameOf(places.of(point.object, *point.at, point.layer));
}

Said setAsideSaid(const ShortAside& aside) {
  switch (aside.why) {
  case ShortAsideWhy::mode:
    break;
  case ShortAsideWhy::overLimit:
    return pattern("core", "OL: that is no short");
  case ShortAsideWhy::negative:
    return pattern("core", "a negative resistance");
  case ShortAsideWhy::rising:
    return pattern("core", "still rising: take it again when it has settled");
  case ShortAsideWhy::notOnLine:
    return said(pattern("core", "{} is not a place on this line"), aside.reading.point.label);
  case ShortAsideWhy::notToGround:
    return said(pattern("core", "the other lead is at {}, not on ground"), aside.reading.other.label);
  case ShortAsideWhy::currentUnknown:
    return pattern("core", "a drop needs the current and the pin where it goes in");
  case ShortAsideWhy::tooMuch:
    return pattern("core", "more than a short has: the line is loaded, not short");
  }
  return said(pattern("core", "readings of mode \"{}\" tell nothing of where a short is"),
              nameOf(aside.reading.mode));
}

Said probeSaid(const NextShortProbe& next, const ShortProbe& probe, const ShortSearch& search,
               const PlaceNames& places) {
  return said(pattern("core", "{} at {}: tells {} of {} bits that are open, in {} s"), nameOf(probe.mode),
              nameOf(search.points[probe.point], places), fmt::format("{:.2f}", probe.bits),
              fmt::format("{:.2f}", next.openBits), fmt::format("{:.0f}", probe.effort.value));
}

std::vector<Said> injectionSaid(const InjectionProposal& proposal, const Board& board) {
  std::vector<Said> out;
  out.push_back(
      said(pattern("core", "start at {}, never above {}"), volts(proposal.start), volts(proposal.limit)));
  if (proposal.lowest)
    out.push_back(said(pattern("core", "the limit is the rating of {}, the lowest of {} nets within reach"),
                       netName(board, proposal.lowest), proposal.nets.size()));
  if (proposal.unrated > 0 || proposal.nets.empty())
    out.push_back(saidCount(
        counted("core", "{n} net within reach has no rating entered: until it has, the limit stays here",
                "{n} nets within reach have no rating entered: until they have, the limit stays here"),
        static_cast<std::int64_t>(proposal.unrated)));
  for (const ReachedNet& net : proposal.nets) {
    const Said rating = net.rating ? said(pattern("core", "rated {}"), volts(*net.rating))
                                   : Said(pattern("core", "rating not known"));
    out.push_back(net.through ? said(pattern("core", "within reach: {} through {}, {}"),
                                     netName(board, net.net), labelOf(board, net.through), rating)
                              : said(pattern("core", "the line: {}, {}"), netName(board, net.net), rating));
  }
  out.push_back(said(pattern("core", "current limit {}"), Figure{proposal.current.value, 2, "A"}));
  out.push_back(said(pattern("core", "up by {} every {}, for {} at most, then off"), volts(proposal.step),
                     Figure{proposal.stepTime.value, 0, "s"}, Figure{proposal.duration.value, 0, "s"}));
  return out;
}

std::vector<Said> injectionCautions() {
  return {pattern("core", "battery and every assembly off the board before the supply goes on"),
          pattern("core", "shorted parts can burst: eye protection on, face away, fumes extracted"),
          pattern("core", "some good rails read almost nothing: compare milliohms with a good board first"),
          pattern("core", "lifting or isolating a part first may be cheaper than injecting")};
}

} // namespace netmend

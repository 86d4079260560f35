#include "netmend/words/jumper.h"

#include <algorithm>

#include <fmt/format.h>

#include "netmend/jobbook/record.h"
#include "netmend/words/place.h"

namespace netmend {

namespace {

std::string mm(Length length, int decimals) {
  return fmt::format("{:.{}f}", length.mm(), decimals);
}

/// "A, B, C, D and 3 more".
Said listed(const std::vector<KeepOutName>& names, std::size_t most) {
  SaidList list{{}, SaidList::Last::none};
  for (std::size_t i = 0; i < std::min(most, names.size()); ++i)
    list.parts.emplace_back(nameOf(names[i]));
  if (names.size() <= most) return said(pattern("core", "{}"), std::move(list));
  return said(pattern("core", "{} and {} more"), std::move(list), names.size() - most);
}

constexpr std::size_t mostNamed = 4;

} // namespace

Said nameOf(LandingKind kind) {
  switch (kind) {
  case LandingKind::testPad:
    return pattern("core", "test pad");
  case LandingKind::partTerminal:
    return pattern("core", "part terminal");
  case LandingKind::via:
    return pattern("core", "via");
  case LandingKind::tentedVia:
    return pattern("core", "tented via");
  case LandingKind::outerTrack:
    return pattern("core", "scraped track");
  case LandingKind::connectorPin:
    break;
  }
  return pattern("core", "connector pin");
}

Said nameOf(ZoneKind kind) {
  switch (kind) {
  case ZoneKind::connector:
    return pattern("core", "connector");
  case ZoneKind::shieldWall:
    return pattern("core", "shield wall");
  case ZoneKind::battery:
    return pattern("core", "battery");
  case ZoneKind::fastener:
    return pattern("core", "fastener");
  case ZoneKind::antenna:
    return pattern("core", "antenna");
  case ZoneKind::flex:
    return pattern("core", "flex");
  case ZoneKind::heatSensitive:
    return pattern("core", "heat-sensitive");
  case ZoneKind::tallPart:
    break;
  }
  return pattern("core", "tall part");
}

Said nameOf(Side side) {
  return side == Side::top ? pattern("core", "top") : pattern("core", "bottom");
}

Said nameOf(const LandingPlace& place) {
  if (!place.label.empty()) return asItIs(place.label);
  if (place.name.sort == PlaceName::Sort::pin)
    return said(pattern("core", "{} ({})"), nameOf(place.name), nameOf(place.kind));
  return nameOf(place.name);
}

Said nameOf(const Landing& landing, const PlaceNames& places) {
  return nameOf(toLandingPlace(landing, places));
}

Said nameOf(const KeepOutName& keepOut) {
  switch (keepOut.what) {
  case KeepOutName::What::boardEdge:
    return pattern("core", "edge of the board");
  case KeepOutName::What::joint:
    return said(pattern("core", "joint {}"), keepOut.label);
  case KeepOutName::What::hole:
    return keepOut.label.empty()
               ? said(pattern("core", "hole at ({}, {}) mm"), mm(keepOut.at.x, 2), mm(keepOut.at.y, 2))
               : said(pattern("core", "hole of {}"), keepOut.label);
  case KeepOutName::What::zone:
    return keepOut.label.empty() ? said(pattern("core", "{} zone"), nameOf(keepOut.kind))
                                 : said(pattern("core", "{} zone {}"), nameOf(keepOut.kind), keepOut.label);
  case KeepOutName::What::part:
    break;
  }
  const Said label =
      keepOut.label.empty() ? Said(pattern("core", "without reference")) : asItIs(keepOut.label);
  return keepOut.kind == ZoneKind::tallPart ? said(pattern("core", "part {}"), label)
                                            : said(pattern("core", "{} {}"), nameOf(keepOut.kind), label);
}

Said nameOf(const ScoreTerm& term, const JumperProposal& proposal, const PlaceNames& places) {
  switch (term.kind) {
  case TermKind::length:
    return pattern("core", "length");
  case TermKind::bends:
    return pattern("core", "bends");
  case TermKind::landing:
    return said(pattern("core", "landing {}"),
                nameOf(term.point == proposal.from.point ? proposal.from : proposal.to, places));
  case TermKind::underMask:
    return pattern("core", "mask");
  case TermKind::smallPart:
    return pattern("core", "small part");
  case TermKind::farSideUnknown:
    return pattern("core", "far side unknown");
  case TermKind::marginOpened:
    return pattern("core", "margin opened");
  case TermKind::tightPassage:
    return pattern("core", "tight passage");
  case TermKind::softZone:
    break;
  }
  return nameOf(term.keepOuts.front());
}

Said figuresOf(const ScoreTerm& term) {
  switch (term.kind) {
  case TermKind::length:
    return said(pattern("core", "{} mm of wire"), mm(term.length, 2));
  case TermKind::bends:
    return asItIs(std::to_string(term.count));
  case TermKind::landing:
    return nameOf(term.landing);
  case TermKind::underMask:
    return pattern("core", "mask has to be scraped off first");
  case TermKind::smallPart:
    return said(pattern("core", "{} mm wide: lifts easily"), mm(term.length, 2));
  case TermKind::farSideUnknown:
    return pattern("core", "may be a coupling capacitor");
  case TermKind::marginOpened:
    return listed(term.keepOuts, term.keepOuts.size());
  case TermKind::tightPassage:
    return said(pattern("core", "{} mm to spare beyond the margins"), mm(term.length, 3));
  case TermKind::softZone:
    break;
  }
  return said(pattern("core", "{} mm inside: {}"), mm(term.length, 2), Said(dataPattern(term.reason)));
}

Said whyExcluded(const ExcludedLanding& landing) {
  switch (landing.why) {
  case ExcludedLanding::Why::couplingCapacitor:
    return pattern("core",
                   "coupling capacitor: both of its sides are live, and the wrong one is easily taken");
  case ExcludedLanding::Why::placeUnknown:
    return pattern("core", "its place on the board is not known");
  case ExcludedLanding::Why::underLid:
    return pattern("core", "under a lid");
  case ExcludedLanding::Why::underPart:
    return pattern("core", "under a part");
  case ExcludedLanding::Why::coveredByLid:
    return said(pattern("core", "under the lid {}"), landing.cover);
  case ExcludedLanding::Why::coveredByPart:
    return said(pattern("core", "under part {}"), landing.cover);
  case ExcludedLanding::Why::keptOut:
    break;
  }
  if (landing.keepOuts.empty()) return pattern("core", "off the board");
  return said(pattern("core", "inside a keep-out, or walled in by one: {}"),
              listed(landing.keepOuts, landing.keepOuts.size()));
}

namespace {

Said noteSaid(LandingNote note, const Landing& landing, const PlaceNames& places) {
  switch (note) {
  case LandingNote::viaMaskUnknown:
    return pattern("core", "whether mask covers this via is not known");
  case LandingNote::scrapeTrack:
    return pattern("core", "scrape the mask off this track");
  case LandingNote::smallPart:
    return pattern("core", "small part: fix the wire within 2 mm of the joint before anything pulls on it");
  case LandingNote::farSideUnknown:
    return pattern("core", "the capacitor's other side is not known: make sure which end is this one");
  case LandingNote::bypass:
    return said(pattern("core", "bypass capacitor: take its live side, {}"), landing.point);
  case LandingNote::couplingAllowed:
    return said(pattern("core", "coupling capacitor, taken as right: only this end, {}"), landing.point);
  case LandingNote::legOnly:
    return pattern("core", "the leg itself, not its pad: the joint between them is part of the break");
  case LandingNote::marginOpened:
    break;
  }
  const auto opened = std::find_if(landing.terms.begin(), landing.terms.end(),
                                   [](const ScoreTerm& t) { return t.kind == TermKind::marginOpened; });
  if (opened == landing.terms.end()) return {};
  return said(pattern("core", "{}: inside the margin of {}; opened there for {} mm"), nameOf(landing, places),
              listed(opened->keepOuts, opened->keepOuts.size()), mm(opened->length, 2));
}

Said noteSaid(const ProposalNote& note, const PlaceNames& places) {
  switch (note.kind) {
  case ProposalNote::Kind::guessedBodies:
    return said(pattern("core", "passes bodies that are only guessed, look before you lay the wire: {}"),
                listed(note.keepOuts, mostNamed));
  case ProposalNote::Kind::outlineGuessed:
    return pattern("core", "the board's outline is not known: a box round everything drawn was used");
  case ProposalNote::Kind::zoneSetAside:
    return said(pattern("core", "{} set aside: {}"), nameOf(note.keepOuts.front()), note.reason);
  case ProposalNote::Kind::overHoles:
    return said(
        pattern("core", "no way keeps clear of these holes and joints, sleeve the wire over them: {}"),
        listed(note.keepOuts, note.keepOuts.size()));
  case ProposalNote::Kind::overBareCopper:
    break;
  }
  SaidList crossed{{}, SaidList::Last::none};
  for (const CrossedCopper& copper : note.copper)
    crossed.parts.emplace_back(nameOf(places.of(copper.object, copper.at, -1)));
  return said(pattern("core", "runs over bare copper of other nets, its insulation must be whole there: {}"),
              std::move(crossed));
}

} // namespace

Said whyNotStraight(const Detour& detour) {
  if (detour.straight) return pattern("core", "the way is straight between its landings");
  if (detour.near.empty())
    return said(pattern("core", "straight it would be {} mm, but too near to the rounded corner of a margin"),
                mm(detour.straightLength, 2));
  return said(pattern("core", "straight it would be {} mm, but too near to {}"), mm(detour.straightLength, 2),
              listed(detour.near, mostNamed));
}

Said differenceSaid(const JumperProposal& proposal, const PlaceNames& places) {
  const Difference& difference = proposal.difference;
  if (difference.best) return pattern("core", "the best by its score");
  if (difference.side)
    return *difference.side == Side::top ? pattern("core", "on the top side")
                                         : pattern("core", "on the bottom side");
  if (difference.from && difference.to)
    return said(pattern("core", "from {} to {}"), nameOf(proposal.from, places), nameOf(proposal.to, places));
  if (difference.from) return said(pattern("core", "from {}"), nameOf(proposal.from, places));
  if (difference.to) return said(pattern("core", "to {}"), nameOf(proposal.to, places));
  return difference.wayRound ? Said(pattern("core", "another way round")) : Said();
}

std::vector<Said> notesOn(const JumperProposal& proposal, const PlaceNames& places) {
  std::vector<Said> out;
  for (const Landing* landing : {&proposal.from, &proposal.to})
    for (const LandingNote note : landing->notes)
      out.push_back(noteSaid(note, *landing, places));
  for (const ProposalNote& note : proposal.notes)
    out.push_back(noteSaid(note, places));
  return out;
}

Said whyFewer(const JumperProposals& proposals) {
  switch (proposals.whyFewer) {
  case WhyFewer::asManyAsWanted:
    return {};
  case WhyFewer::nothingDiffersEnough:
    return pattern("core", "no further landing or way differs enough from these");
  case WhyFewer::noLanding:
    return pattern("core", "neither side of the break has a landing that can be reached; see what was left "
                           "out, and why");
  case WhyFewer::oneSideWithout:
    return pattern("core", "one side of the break has no landing that can be reached; see what was left out, "
                           "and why");
  case WhyFewer::notOnOneSide:
    return pattern("core", "the two sides of the break have no landing on the same side of the board");
  case WhyFewer::closed:
    break;
  }
  return said(pattern("core", "every way is closed; in between lie {}"),
              listed(proposals.closedBy, proposals.closedBy.size()));
}

std::vector<Said> notesOn(const JumperProposals& proposals) {
  std::vector<Said> out;
  if (proposals.onlyJoints)
    out.emplace_back(pattern("core", "the break is in a solder joint: resolder it before you bridge it"));
  if (proposals.outlineGuessed)
    out.emplace_back(
        pattern("core", "the board's outline is not known: a box round everything drawn was used"));
  return out;
}

} // namespace netmend

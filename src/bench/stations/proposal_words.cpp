#include "proposal_words.h"

#include <algorithm>
#include <cmath>

#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/words/jumper.h"
#include "netmend/words/place.h"
#include "proposal_card.h"

namespace netmend {

namespace {

void addLandingChips(std::vector<ProposalChip>& chips, const Landing& landing, const PlaceNames& places) {
  const QString at = placeOf(landing, places);
  const auto counts = [&](TermKind kind) {
    return std::any_of(landing.terms.begin(), landing.terms.end(),
                       [&](const ScoreTerm& term) { return term.kind == kind; });
  };
  if (counts(TermKind::underMask))
    chips.push_back({ProposalCard::tr("scrape the mask at %1").arg(at), false});
  for (const LandingNote note : landing.notes)
    switch (note) {
    case LandingNote::viaMaskUnknown:
      chips.push_back({ProposalCard::tr("mask over %1 not known").arg(at), false});
      break;
    case LandingNote::scrapeTrack:
      chips.push_back({ProposalCard::tr("scrape the track at %1").arg(at), false});
      break;
    case LandingNote::smallPart:
      chips.push_back({ProposalCard::tr("small part: fix the wire at %1").arg(at), false});
      break;
    case LandingNote::farSideUnknown:
      chips.push_back({ProposalCard::tr("look first: may be a coupling capacitor, %1").arg(at), true});
      break;
    case LandingNote::bypass:
      chips.push_back({ProposalCard::tr("live side of %1").arg(at), false});
      break;
    case LandingNote::couplingAllowed:
      chips.push_back({ProposalCard::tr("only this end of %1").arg(at), false});
      break;
    case LandingNote::legOnly:
      chips.push_back({ProposalCard::tr("on the leg itself: %1").arg(at), true});
      break;
    case LandingNote::marginOpened:
      chips.push_back({ProposalCard::tr("close beside a keep-out at %1").arg(at), true});
      break;
    }
}

ProposalChip chipOf(const ProposalNote& note) {
  QStringList names;
  for (const KeepOutName& each : note.keepOuts)
    names << shown(nameOf(each));
  const QString all = names.join(QStringLiteral(", "));
  switch (note.kind) {
  case ProposalNote::Kind::guessedBodies:
    return {ProposalCard::tr("look first: height of %1 is guessed").arg(all), true};
  case ProposalNote::Kind::outlineGuessed:
    return {ProposalCard::tr("outline of the board is guessed"), false};
  case ProposalNote::Kind::zoneSetAside:
    return {ProposalCard::tr("through %1: see why").arg(all), true};
  case ProposalNote::Kind::overHoles:
    return {ProposalCard::tr("over %1").arg(all), true};
  case ProposalNote::Kind::overBareCopper:
    return {ProposalCard::tr("over bare copper of other nets"), true};
  }
  return {};
}

} // namespace

QString placeOf(const Landing& landing, const PlaceNames& places) {
  return besidePicture(nameOf(toLandingPlace(landing, places).name));
}

QString endsOf(const JumperProposal& proposal, const PlaceNames& places) {
  QString text =
      ProposalCard::tr("%1 to %2").arg(placeOf(proposal.from, places), placeOf(proposal.to, places));
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

std::vector<ProposalChip> chipsOf(const JumperProposal& proposal, const PlaceNames& places) {
  std::vector<ProposalChip> chips;
  addLandingChips(chips, proposal.from, places);
  addLandingChips(chips, proposal.to, places);
  for (const ProposalNote& note : proposal.notes)
    chips.push_back(chipOf(note));
  if (!wireWarnings(proposal.wire).empty())
    chips.push_back({ProposalCard::tr("the wire has a warning: see why"), true});
  // What must be looked at first comes first.
  std::stable_sort(chips.begin(), chips.end(),
                   [](const ProposalChip& a, const ProposalChip& b) { return a.caution && !b.caution; });
  return chips;
}

std::vector<ProposalFigure> figuresOf(const JumperProposal& proposal, double mends, Seconds work) {
  const double minutes = std::max(5.0, 5.0 * std::round(work.value / 300.0));
  const bool near = proposal.leastClearance.known();
  return {{QString::number(proposal.length.mm(), 'f', 0), QStringLiteral("mm"), ProposalCard::tr("of wire")},
          {mends > 0.995 ? QStringLiteral(">99") : QString::number(std::floor(mends * 100.0), 'f', 0),
           QStringLiteral("%"), ProposalCard::tr("mends it")},
          {near ? QString::number(proposal.leastClearance.value.mm(), 'f', 1) : QStringLiteral("–"),
           near ? QStringLiteral("mm") : QString(),
           near ? ProposalCard::tr("to %1").arg(shown(nameOf(proposal.clearanceTo)))
                : ProposalCard::tr("nothing near")},
          {QString::number(minutes, 'f', 0), QStringLiteral("min"), ProposalCard::tr("of work")}};
}

} // namespace netmend

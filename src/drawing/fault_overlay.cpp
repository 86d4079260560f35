#include "netmend/drawing/fault_overlay.h"

#include <string>

#include "netmend/words/jumper.h"
#include "netmend/words/place.h"

namespace netmend {

namespace {

/// The board is shown whole: a stranger finds a connector sooner than a coordinate.
Overlay lineOverlay(const FaultCase& fault) {
  Overlay overlay;
  overlay.litNets = fault.line.nets;
  return overlay;
}

void addLettered(Overlay& overlay, const Suspect& suspect, const Said& letter) {
  bool said = letter.empty();
  for (const FaultPlace& place : suspect.places) {
    const bool isWay = place.way.size() > 1;
    if (isWay) overlay.lines.push_back({place.way, LineStyle::suspect});
    // A stretch is a band; a place needs a mark even without a letter.
    if (!place.at || (isWay && said)) continue;
    overlay.marks.push_back({*place.at, MarkShape::suspect, said ? Said() : letter});
    said = true;
  }
}

void addPlaces(Overlay& overlay, const Suspect& suspect, const Said& label) {
  for (const FaultPlace& place : suspect.places) {
    if (place.way.size() > 1) overlay.lines.push_back({place.way, LineStyle::suspect});
    if (place.at)
      overlay.marks.push_back(
          {*place.at, MarkShape::cross, &place == &suspect.places.front() ? label : Said()});
  }
}

} // namespace

Overlay suspectsOverlay(const FaultCase& fault, const std::vector<std::string>& letters) {
  Overlay overlay = lineOverlay(fault);
  for (std::size_t i = 0; i < fault.suspects.setSize && i < fault.suspects.ranked.size(); ++i) {
    const Suspect& suspect = fault.suspects.ranked[i];
    if (suspect.probability < leastDrawn) continue;
    const std::string byRank =
        i < letteredSuspects ? std::string(1, static_cast<char>('A' + i)) : std::string();
    const std::string letter = letters.empty() ? byRank : i < letters.size() ? letters[i] : std::string();
    addLettered(overlay, suspect, letter.empty() ? Said() : asItIs(letter));
  }
  if (!fault.next.stop && !fault.next.ranked.empty()) {
    const std::size_t probe = fault.next.ranked.front().place;
    const ProbePlace& place = fault.isolation.places[probe];
    if (place.at) overlay.marks.push_back({*place.at, MarkShape::probe, nameOf(fault.names.probe(probe))});
  }
  return overlay;
}

Overlay jumperOverlay(const FaultCase& fault, const JumperProposal& proposal, const PlaceNames& places) {
  Overlay overlay = lineOverlay(fault);
  if (const Suspect* suspect = leadingBreak(fault)) addPlaces(overlay, *suspect, pattern("core", "break"));
  overlay.lines.push_back({proposal.way, LineStyle::wire, pattern("core", "jumper")});
  overlay.marks.push_back({proposal.from.at, MarkShape::ring, nameOf(proposal.from, places)});
  overlay.marks.push_back({proposal.to.at, MarkShape::ring, nameOf(proposal.to, places)});
  return overlay;
}

} // namespace netmend

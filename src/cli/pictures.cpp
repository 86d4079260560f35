#include "pictures.h"

#include "gui.h"
#include "netmend/drawing/board_scene.h"

namespace netmend {

namespace {

/// The board is shown whole: a stranger finds a connector sooner than a coordinate.
Overlay lineOverlay(const FaultCase& fault) {
  Overlay overlay;
  overlay.litNets = fault.line.nets;
  return overlay;
}

void addPlaces(Overlay& overlay, const Suspect& suspect, const std::string& label) {
  for (const FaultPlace& place : suspect.places) {
    if (place.way.size() > 1) overlay.lines.push_back({place.way, LineStyle::suspect, ""});
    if (place.at)
      overlay.marks.push_back({*place.at, MarkShape::cross, &place == &suspect.places.front() ? label : ""});
  }
}

} // namespace

Result<void> drawSuspects(const std::string& file, const FaultCase& fault) {
  const QtApplication application;
  Overlay overlay = lineOverlay(fault);
  for (std::size_t i = 0; i < fault.suspects.setSize && i < fault.suspects.ranked.size(); ++i) {
    const Suspect& suspect = fault.suspects.ranked[i];
    addPlaces(overlay, suspect, std::to_string(static_cast<int>(suspect.probability * 100.0 + 0.5)) + " %");
  }
  if (!fault.next.stop && !fault.next.ranked.empty()) {
    const ProbePlace& place = fault.isolation.places[fault.next.ranked.front().place];
    if (place.at) overlay.marks.push_back({*place.at, MarkShape::probe, "next probe: " + place.label});
  }
  return renderPng(file, *fault.board.board, overlay);
}

Result<void> drawJumper(const std::string& file, const FaultCase& fault, const JumperProposal& proposal) {
  const QtApplication application;
  Overlay overlay = lineOverlay(fault);
  if (const Suspect* suspect = leadingBreak(fault)) addPlaces(overlay, *suspect, "break");
  overlay.lines.push_back({proposal.way, LineStyle::wire, "jumper"});
  overlay.marks.push_back({proposal.from.at, MarkShape::ring, proposal.from.label});
  overlay.marks.push_back({proposal.to.at, MarkShape::ring, proposal.to.label});
  PngOptions options;
  options.side = proposal.side;
  return renderPng(file, *fault.board.board, overlay, options);
}

} // namespace netmend

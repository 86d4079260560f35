#include "netmend/drawing/short_overlay.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "netmend/drawing/fault_overlay.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/short.h"

namespace netmend {

namespace {

/// A track is drawn in pieces of about this share of the whole drop.
constexpr double shareOfPiece = 0.04;
constexpr double mostPieces = 50.0;

Point between(Point a, Point b, double share) {
  const auto part = [&](Length from, Length to) {
    return from + Length(std::llround(share * static_cast<double>((to - from).nm)));
  };
  return {part(a.x, b.x), part(a.y, b.y)};
}

void addPieces(Overlay& overlay, const DropPiece& piece, Volts least, Volts most) {
  const double range = std::max(1e-12, (most - least).value);
  const auto share = [&](Volts volts) { return Share(std::clamp((volts - least).value / range, 0.0, 1.0)); };
  const Share from = share(piece.from);
  const Share to = share(piece.to);
  if (piece.way.size() < 2) {
    overlay.drops.push_back({piece.way, from});
    return;
  }
  const double count = std::clamp(std::ceil(std::abs((to - from).value) / shareOfPiece), 1.0, mostPieces);
  for (double k = 0.0; k < count; k += 1.0)
    overlay.drops.push_back({{between(piece.way[0], piece.way[1], k / count),
                              between(piece.way[0], piece.way[1], (k + 1.0) / count)},
                             from + (to - from) * ((k + 0.5) / count)});
}

Said millivolts(Volts value) {
  return asItIs(readingText(value.value, ReadingMode::dropUnderCurrent));
}

} // namespace

Overlay shortOverlay(const ShortCase& found, const DropPattern& pattern, const PlaceNames& places) {
  Overlay overlay;
  overlay.litNets = found.line.nets;
  if (!pattern.pieces.empty()) {
    Volts least = pattern.most;
    for (const DropPiece& piece : pattern.pieces)
      least = std::min({least, piece.from, piece.to});
    for (const DropPiece& piece : pattern.pieces)
      addPieces(overlay, piece, least, pattern.most);
    if (pattern.into) overlay.marks.push_back({*pattern.into, MarkShape::ring, millivolts(pattern.most)});
    if (pattern.out) overlay.marks.push_back({*pattern.out, MarkShape::cross, millivolts(least)});
  }
  const ShortSearch& search = found.search;
  for (std::size_t i = 0; i < search.suspects.size() && i < letteredSuspects; ++i) {
    const ShortSuspect& suspect = search.suspects[i];
    if (suspect.probability < leastDrawn || suspect.kind == ShortKind::noneOfThese) continue;
    if (const auto& at = search.places[suspect.places.front()].at)
      overlay.marks.push_back({*at, MarkShape::suspect, asItIs(std::string(1, static_cast<char>('A' + i)))});
  }
  if (!found.next.stop && !found.next.ranked.empty()) {
    const ProbePlace& next = search.points[found.next.ranked.front().point];
    if (next.at) overlay.marks.push_back({*next.at, MarkShape::probe, nameOf(next, places)});
  }
  return overlay;
}

} // namespace netmend

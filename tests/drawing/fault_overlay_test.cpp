#include "netmend/drawing/fault_overlay.h"

#include <catch2/catch.hpp>

#include "small_board.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

Suspect suspectAt(double probability, double x) {
  FaultPlace place;
  place.at = at(x, 20);
  Suspect suspect;
  suspect.probability = probability;
  suspect.places = {place};
  return suspect;
}

FaultCase faultWith(std::vector<Suspect> ranked) {
  FaultCase fault;
  fault.suspects.setSize = ranked.size();
  fault.suspects.ranked = std::move(ranked);
  return fault;
}

} // namespace

TEST_CASE("suspects of 1 % and more are drawn, the four likeliest with their letters") {
  const Overlay overlay =
      suspectsOverlay(faultWith({suspectAt(0.4, 1), suspectAt(0.3, 2), suspectAt(0.2, 3), suspectAt(0.05, 4),
                                 suspectAt(0.01, 5), suspectAt(0.0099, 6)}));
  REQUIRE(overlay.marks.size() == 5);
  std::string letters;
  for (const OverlayMark& mark : overlay.marks) {
    CHECK(mark.shape == MarkShape::suspect);
    letters += wordsOf(mark.label);
  }
  CHECK(letters == "ABCD");
  CHECK(overlay.marks[4].at == at(5, 20));
  CHECK(overlay.marks[4].label.empty());
}

TEST_CASE("a suspect of several places has its letter once, and a stretch is a band") {
  Suspect suspect = suspectAt(0.5, 1);
  suspect.places.push_back(suspect.places[0]);
  suspect.places[1].at = at(30, 20);
  suspect.places[1].way = {at(20, 20), at(40, 20)};
  const Overlay overlay = suspectsOverlay(faultWith({suspect}));
  REQUIRE(overlay.lines.size() == 1);
  CHECK(overlay.lines[0].style == LineStyle::suspect);
  CHECK(overlay.lines[0].points.size() == 2);
  REQUIRE(overlay.marks.size() == 1);
  CHECK(overlay.marks[0].at == at(1, 20));
}

TEST_CASE("only the reported set of suspects is drawn") {
  FaultCase fault = faultWith({suspectAt(0.5, 1), suspectAt(0.4, 2)});
  fault.suspects.setSize = 1;
  CHECK(suspectsOverlay(fault).marks.size() == 1);
}

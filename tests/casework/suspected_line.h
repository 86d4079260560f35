#pragma once

#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "jumper/bench_board.h"
#include "netmend/casework/one_jumper.h"
#include "repaired_board.h"

namespace netmend::test {

/// A line put together by hand, and what the readings are said to have left of its suspects. Its tracks run
/// inside, where no wire lands; test pads cost a wire nothing, open vias 4 mm, a scraped track 9
/// (data/landings.json).
struct SuspectedLine : BenchBoard {
  Line line;
  NetId key = net("KEY");
  LayerId inner = layer("inner");
  Isolation isolation;
  Suspects suspects;

  SuspectedLine() {
    board.info.layerOrder = {top, inner, bottom};
    board.info.outline = fromUser(std::vector<Polygon>{{box(0, 0, 80, 60), {}}});
    line.nets = {key};
    isolation.classes.resize(1); // the sound line, so that a class's number is not its rank
    isolation.probability = {0.0};
  }

  NodeIndex testPad(const std::string& name, double x, double y) {
    return joint(pin({}, name, key, mm(x, y))).first;
  }
  NodeIndex via(double x, double y) {
    Via via;
    via.position = mm(x, y);
    via.diameter = fromUser(Length::fromMm(0.5));
    via.drill = fromUser(Length::fromMm(0.25));
    via.maskOpening = fromUser(MaskOpening::both);
    via.net = fromUser(key);
    const ViaId id = put(board.vias, via);
    return boost::add_vertex({NodeKind::viaLayer, id, mm(x, y), 0}, graph);
  }
  NodeIndex corner(double x, double y) {
    return boost::add_vertex({NodeKind::joint, {}, mm(x, y), 1}, graph);
  }
  std::size_t stretch(NodeIndex a, NodeIndex b) { return track(a, b, key, inner); }

  /// One class more, less likely than those before: 1/2, 1/4 …
  std::size_t suspect(const std::vector<std::size_t>& edges, FaultKind kind = FaultKind::open) {
    FaultClass added;
    added.kind = kind;
    for (const std::size_t edge : edges) {
      FaultPlace place;
      place.kind = kind;
      place.edge = edge;
      place.edgeKind = EdgeKind::track;
      added.places.push_back(place);
    }
    const std::size_t index = isolation.classes.size();
    isolation.classes.push_back(added);
    isolation.probability.push_back(std::pow(0.5, static_cast<double>(index)));
    Suspect ranked;
    ranked.faultClass = index;
    suspects.ranked.push_back(ranked);
    suspects.setSize = suspects.ranked.size();
    return index;
  }

  [[nodiscard]] std::vector<OneJumper> shared() const {
    Line copy = line;
    copy.graph = graph;
    const Lookup lookup(board);
    return sharedJumpers(lookup, copy, isolation, suspects, repairData().jumper);
  }
  /// The classes that each wire mends.
  [[nodiscard]] std::vector<std::vector<std::size_t>> groups() const {
    std::vector<std::vector<std::size_t>> out;
    for (const OneJumper& jumper : shared())
      out.push_back(jumper.classes);
    return out;
  }
  /// The best wire across these edges.
  [[nodiscard]] JumperProposal wire(const std::vector<std::size_t>& cut) const {
    JumperRequest request;
    request.graph = &graph;
    request.cut = cut;
    request.net = key;
    request.most = 1;
    const Lookup lookup(board);
    auto found = proposeJumpers(lookup, request, repairData().jumper);
    REQUIRE(found);
    REQUIRE(found->proposals.size() == 1);
    return found->proposals.front();
  }
};

using Groups = std::vector<std::vector<std::size_t>>;

/// Two test pads with a corner between them, so that one wire always mends both stretches.
inline void addPair(SuspectedLine& line, NodeIndex from, NodeIndex to) {
  const NodeIndex middle = line.corner(40, 40);
  const std::size_t a = line.stretch(from, middle), b = line.stretch(middle, to);
  line.suspect({a});
  line.suspect({b});
}

} // namespace netmend::test

// Breaks of every kind on the boards of the Debian package kicad-demos, and what is proposed for them, judged
// by code that shares nothing with the jumper's own: own_copper.h for what hangs together, IPC-2221 written
// out once more, distances of the way from holes and pads.
#include <catch2/catch.hpp>

#include <chrono>
#include <filesystem>
#include <fmt/format.h>
#include <map>
#include <random>

#include "netmend/board/exchange/import.h"
#include "netmend/jumper/proposal.h"
#include "netmend/netgraph/line.h"
#include "netmend/netgraph/net_role.h"
#include "netmend/words/jumper.h"
#include "own_copper.h"
#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::test;

namespace {

enum class BreakKind { joint, barrel, outerTrack, innerTrack };
constexpr std::array breakKinds{BreakKind::joint, BreakKind::barrel, BreakKind::outerTrack,
                                BreakKind::innerTrack};
constexpr std::array<std::string_view, 4> breakNames{"joint", "barrel", "outer track", "inner track"};

double secondsSince(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

struct Count {
  int breaks = 0, withProposal = 0, proposals = 0, insufficient = 0, named = 0;
  int useless = 0, shorting = 0, underRated = 0, overUnsaid = 0;
  double slowest = 0; ///< s, of the proposals for one break

  Count& operator+=(const Count& more) {
    for (int Count::*member :
         {&Count::breaks, &Count::withProposal, &Count::proposals, &Count::insufficient, &Count::named,
          &Count::useless, &Count::shorting, &Count::underRated, &Count::overUnsaid})
      this->*member += more.*member;
    slowest = std::max(slowest, more.slowest);
    return *this;
  }
};

/// IPC-2221: k·ΔT^0.44·A^0.725, A in square mils.
double ampacity(double squareMm, bool inner) {
  return (inner ? 0.024 : 0.048) * std::pow(20.0, 0.44) * std::pow(squareMm / (0.0254 * 0.0254), 0.725);
}

double foil(const Board& board, int layer) {
  const auto at = static_cast<std::size_t>(layer);
  if (layer < 0 || at >= board.info.layerOrder.size()) return 0.035;
  const auto t = board.layers.find(board.info.layerOrder[at])->copperThickness;
  return t.known() && t.value.nm > 0 ? t.value.mm() : 0.035;
}

double annulus(Length drill) {
  return M_PI * 0.02 * (drill.mm() + 0.02);
}

/// What each track, via and pad of the net carries.
std::map<std::uint64_t, double> carriedBy(const Lookup& lookup, NetId net) {
  const Board& board = lookup.board();
  std::map<std::uint64_t, double> out;
  for (const Track& t : board.tracks)
    if (t.net.known() && t.net.value == net && t.layer.known()) {
      const int layer = OwnCopper::layerOf(board, t.layer.value);
      const bool inner = layer > 0 && layer + 1 < static_cast<int>(board.info.layerOrder.size());
      out[t.id.value] = ampacity(t.width.value.mm() * foil(board, layer), inner);
    }
  for (const Via& v : board.vias)
    if (v.net.known() && v.net.value == net && v.drill.known())
      out[v.id.value] = ampacity(annulus(v.drill.value), false);
  for (const PinId pin : lookup.pinsOf(net))
    for (const PadId id : lookup.padsOf(pin)) {
      const Pad& pad = *board.pads.find(id);
      const Length hole = std::min(pad.drill.value.width, pad.drill.value.height);
      Length width = std::min(pad.size.value.width, pad.size.value.height);
      if (pad.shape.value == PadShape::polygon) {
        const auto [left, right] = std::minmax_element(pad.polygon.begin(), pad.polygon.end(),
                                                       [](Point a, Point b) { return a.x < b.x; });
        const auto [low, high] = std::minmax_element(pad.polygon.begin(), pad.polygon.end(),
                                                     [](Point a, Point b) { return a.y < b.y; });
        width = std::min(right->x - left->x, high->y - low->y);
      }
      if (hole.nm > 0 && pad.plated.valueOr(true))
        out[id.value] = ampacity(annulus(hole), false);
      else if (hole.nm == 0 && width.nm > 0)
        out[id.value] =
            ampacity(width.mm() * foil(board, pad.reach.value == PadReach::bottom ? 1 : 0), false);
    }
  return out;
}

/// A signal's 0.1 A counts for every net that nobody knows as something else, unless it has wide copper.
double mostFor(const Board& board, NetId net) {
  const auto role = roleOf(*board.nets.find(net));
  if (role.known() && (role.value == NetRole::supply || role.value == NetRole::ground)) return HUGE_VAL;
  if (role.known()) return 0.1;
  for (const Track& t : board.tracks)
    if (t.net.known() && t.net.value == net && t.width.value > Length::fromMm(0.5)) return HUGE_VAL;
  for (const Area& a : board.areas)
    if (a.net.known() && a.net.value == net) return HUGE_VAL;
  return 0.1;
}

/// The edge of a graph as a break of the board's objects.
std::optional<OwnBreak> breakOf(const Board& board, const CopperGraph& graph,
                                boost::graph_traits<CopperGraph>::edge_descriptor e, NetId net,
                                BreakKind kind) {
  const CopperEdge& edge = graph[e];
  const CopperNode &a = graph[boost::source(e, graph)], &b = graph[boost::target(e, graph)];
  OwnBreak out;
  if (kind == BreakKind::joint) {
    const CopperNode& pad = a.kind == NodeKind::pad ? a : b;
    const auto* id = std::get_if<PadId>(&pad.object);
    if (edge.kind != EdgeKind::solderJoint || !id) return std::nullopt;
    const Pin* pin = board.pins.find(board.pads.find(*id)->pin);
    out.pad = *id;
    return pin->net.known() && pin->net.value == net ? std::optional(out) : std::nullopt;
  }
  if (kind == BreakKind::barrel) {
    const auto* id = std::get_if<ViaId>(&edge.object);
    if (edge.kind != EdgeKind::via || !id || board.vias.find(*id)->net.value != net) return std::nullopt;
    out.kind = OwnBreak::Kind::barrel;
    out.via = *id;
    out.above = std::min(a.layer, b.layer);
    return out;
  }
  const auto* id = std::get_if<TrackId>(&edge.object);
  const Track* track = id ? board.tracks.find(*id) : nullptr;
  if (edge.kind != EdgeKind::track || !track || track->net.value != net || track->way != TrackWay::straight)
    return std::nullopt;
  const bool inner = edge.layer > 0 && edge.layer + 1 < OwnCopper::layers(board);
  // Room for a crack between two round ends.
  if (inner != (kind == BreakKind::innerTrack) || edge.length.value < track->width.value + Length(2'000))
    return std::nullopt;
  out.kind = OwnBreak::Kind::track;
  out.track = *id;
  out.at = {(edge.from->x + edge.to->x) / 2, (edge.from->y + edge.to->y) / 2};
  return out;
}

std::optional<std::size_t> labelOf(const OwnCopper& copper, const Board& board, const Landing& landing) {
  if (const auto* pin = std::get_if<PinId>(&landing.copper)) return copper.leg(*pin);
  const std::uint64_t object = std::visit(
      [](auto id) -> std::uint64_t {
        if constexpr (std::is_same_v<decltype(id), std::monostate>)
          return 0;
        else
          return id.value;
      },
      landing.copper);
  return copper.at(object, landing.side == Side::top ? 0 : OwnCopper::layers(board) - 1, landing.at);
}

/// Whether the proposal names it, in words.
bool isNamed(const JumperProposal& p, const PlaceNames& places, const std::string& name) {
  const auto has = [&](const Said& text) { return wordsOf(text).find(name) != std::string::npos; };
  const auto notes = notesOn(p, places);
  return std::any_of(notes.begin(), notes.end(), has) ||
         std::any_of(p.terms.begin(), p.terms.end(),
                     [&](const ScoreTerm& t) { return has(nameOf(t, p, places)) || has(figuresOf(t)); });
}

/// Names of holes, joints and bare pads of other nets under the wire.
std::vector<std::string> under(const JumperProposal& p, const Board& board, NetId net) {
  std::vector<std::string> out;
  const OwnShape way = OwnShape::make({p.way}, false, p.wire.wire.outer / 2);
  for (const Pad& pad : board.pads) {
    const Pin& pin = *board.pins.find(pad.pin);
    const bool own = pin.net.known() && pin.net.value == net;
    const auto hole = drillCentre(pad);
    const bool here = pad.reach.value != (p.side == Side::top ? PadReach::bottom : PadReach::top);
    const auto shape = padShape(pad);
    if (here && shape && !own && nearer(way, OwnShape::of(*shape), 0)) {
      out.push_back(pinLabel(board, pin.id));
    } else if (hole && !(own && here && shape)) {
      const Length radius = std::min(pad.drill.value.width, pad.drill.value.height) / 2;
      const Part* part = board.parts.find(pin.part);
      if (nearer(way, OwnShape::make({{*hole}}, false, radius), 0))
        out.push_back("hole of " + (part ? part->reference : std::string("?")));
    }
  }
  return out;
}

class Judge {
public:
  Judge(const Lookup& lookup, const JumperData& data) : lookup_(lookup), data_(data) {}

  /// Counts one break of this kind on this net, if there is one that both opinions call a break.
  void tryBreak(const BoardGraph& graph, NetId net, BreakKind kind, std::mt19937& random,
                Count& count) const {
    const Board& board = lookup_.board();
    const Line line = lineOf(lookup_, graph, net);
    const auto bridge = bridges(line.graph);
    std::vector<std::pair<std::size_t, OwnBreak>> breaks;
    for (auto [e, end] = boost::edges(line.graph); e != end; ++e)
      if (std::find(bridge.begin(), bridge.end(), line.graph[*e].index) != bridge.end())
        if (const auto own = breakOf(board, line.graph, *e, net, kind))
          breaks.emplace_back(line.graph[*e].index, *own);
    std::shuffle(breaks.begin(), breaks.end(), random);
    for (const auto& [edge, own] : breaks) {
      if (!breakEnds(line.graph, {edge})) continue;
      const std::optional<OwnBreak> none, broken = own;
      const OwnCopper whole(lookup_, net, none), parted(lookup_, net, broken);
      if (!whole.onePiece() || parted.onePiece()) return;
      const auto started = std::chrono::steady_clock::now();
      const auto found = proposeJumpers(lookup_, {&line.graph, {edge}, net, {}, {}, 3}, data_);
      INFO((found ? std::string() : found.error().text()));
      REQUIRE(found);
      count.slowest = std::max(count.slowest, secondsSince(started));
      ++count.breaks;
      count.withProposal += found->proposals.empty() ? 0 : 1;
      for (const JumperProposal& p : found->proposals)
        judge(p, net, whole, parted, count);
      return;
    }
  }

private:
  void judge(const JumperProposal& p, NetId net, const OwnCopper& whole, const OwnCopper& parted,
             Count& count) const {
    const Board& board = lookup_.board();
    INFO(board.nets.find(net)->name << ": " << p.from.point << " to " << p.to.point << ", "
                                    << wordsOf(currentSaid(p.wire)));
    ++count.proposals;
    const auto from = labelOf(parted, board, p.from), to = labelOf(parted, board, p.to);
    const bool useless = !from || !to || *from == *to;
    const bool shorting = !labelOf(whole, board, p.from) || !labelOf(whole, board, p.to);
    CHECK_FALSE(useless);
    CHECK_FALSE(shorting);
    count.useless += useless ? 1 : 0;
    count.shorting += shorting ? 1 : 0;
    if (!useless) {
      const bool under = underRated(p, net, parted.legs(), *from, *to);
      CHECK_FALSE(under);
      count.underRated += under ? 1 : 0;
    }
    count.insufficient += p.wire.suffices() ? 0 : 1;
    const PlaceNames places(lookup_);
    for (const std::string& name : under(p, board, net)) {
      INFO(name);
      const bool isSaid = isNamed(p, places, name);
      CHECK(isSaid);
      count.overUnsaid += isSaid ? 0 : 1;
      count.named += isSaid ? 1 : 0;
    }
  }

  /// Whether nothing on the series way is as weak as the current that the wire was chosen for, or the wire
  /// does not carry that without a word.
  bool underRated(const JumperProposal& p, NetId net, const std::vector<std::size_t>& legs, std::size_t a,
                  std::size_t b) const {
    const double current = p.wire.current.value.value;
    const double bears =
        heatingCurrent(p.wire.wire.copper, p.wire.wire.outer, data_.wires.mostRise, data_.wires.ambient)
            .value;
    if (bears < current && !p.wire.warned()) return true;
    if (mostFor(lookup_.board(), net) <= current) return false;
    std::vector<std::pair<double, std::uint64_t>> weakEnough; // the likeliest, the strongest, first
    for (const auto& [object, carries] : carriedBy(lookup_, net))
      if (carries <= current * (1 + 1e-9)) weakEnough.emplace_back(-carries, object);
    std::sort(weakEnough.begin(), weakEnough.end());
    for (const auto& [carries, object] : weakEnough) {
      const std::optional<OwnBreak> none;
      const OwnCopper without(lookup_, net, none, object);
      const auto left = without.legs();
      bool parts = true;
      for (std::size_t i = 0; i < legs.size(); ++i)
        for (std::size_t j = 0; j < legs.size(); ++j)
          parts = parts && !(legs[i] == a && legs[j] == b && left[i] == left[j]);
      if (parts) return false;
    }
    return true;
  }

  const Lookup& lookup_;
  const JumperData& data_;
};

std::size_t objectsOf(const Lookup& lookup, NetId net) {
  const auto of = [&](const auto& table) {
    return static_cast<std::size_t>(std::count_if(table.begin(), table.end(), [&](const auto& object) {
      return object.net.known() && object.net.value == net;
    }));
  };
  const Board& board = lookup.board();
  return of(board.pins) + of(board.tracks) + of(board.vias) + of(board.areas);
}

struct BoardCount {
  std::map<std::string, Count> byKind;
  double seconds = 0;
};

/// `each` breaks of every kind on the board's supplies, and as many on its other nets.
BoardCount breakBoard(const Board& board, const JumperData& data, int each, std::size_t largest,
                      std::mt19937& random) {
  const auto started = std::chrono::steady_clock::now();
  const Lookup lookup(board);
  const BoardGraph graph = buildBoardGraph(board);
  const Judge judge(lookup, data);
  std::array<std::vector<NetId>, 2> nets; // supplies, others
  for (const Net& net : board.nets)
    if (lookup.pinsOf(net.id).size() > 1 && objectsOf(lookup, net.id) <= largest)
      nets[roleOf(net) == guessed(NetRole::supply) ? 0 : 1].push_back(net.id);
  BoardCount out;
  for (auto& group : nets)
    for (std::size_t kind = 0; kind < breakKinds.size(); ++kind) {
      Count& count = out.byKind[fmt::format("{} on a {}", breakNames[kind],
                                            &group == nets.data() ? "supply" : "signal")];
      for (int round = 0; round < 4 && count.breaks < each; ++round) {
        std::shuffle(group.begin(), group.end(), random);
        for (std::size_t i = 0; i < group.size() && count.breaks < each; ++i)
          judge.tryBreak(graph, group[i], breakKinds[kind], random, count);
      }
    }
  out.seconds = secondsSince(started);
  return out;
}

std::string told(const std::string& of, const Count& c) {
  return fmt::format("{}: {} breaks, {} with a proposal, {} proposals, {} of them short of wire, {} named "
                     "crossings; useless {}, shorting {}, under_rated {}, over_hole_or_live_pad_unsaid {}",
                     of, c.breaks, c.withProposal, c.proposals, c.insufficient, c.named, c.useless,
                     c.shorting, c.underRated, c.overUnsaid);
}

/// Breaks on the boards of these names; no names: on all of them, telling each board's figures.
void breakBoards(const std::vector<std::string>& names, int each, std::size_t largest, unsigned seed) {
  const auto data = loadJumperData(std::filesystem::path(NETMEND_SOURCE_DIR) / "data");
  REQUIRE(data);
  INFO("seed " << seed);
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator("/usr/share/kicad/demos"))
    if (entry.path().extension() == ".kicad_pcb" &&
        (names.empty() || std::find(names.begin(), names.end(), entry.path().stem().string()) != names.end()))
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  std::map<std::string, Count> byKind;
  Count all;
  for (const auto& file : files) {
    const std::string name = file.stem().string();
    INFO(name);
    const auto imported = importBoard(file);
    REQUIRE(imported);
    std::mt19937 random(seed); // so that a board alone throws what it throws among the others
    const BoardCount board = breakBoard(imported->board, *data, each, largest, random);
    Count sum;
    for (const auto& [kind, count] : board.byKind) {
      byKind[kind] += count;
      sum += count;
    }
    all += sum;
    if (names.empty())
      WARN(told(name, sum) << fmt::format(" ({:.1f} s, {:.2f} s for the slowest break)", board.seconds,
                                          sum.slowest));
  }
  std::string text;
  for (const auto& [kind, count] : byKind)
    text += "\n" + told(kind, count);
  WARN("seed " << seed << ", " << files.size() << " boards; " << told("all", all) << text);
  CHECK(all.withProposal > 2 * static_cast<int>(files.size()));
}

} // namespace

TEST_CASE("a jumper on a real board joins what was parted, carries what flowed there and keeps off holes") {
  breakBoards({"StickHub", "ecc83-pp_v2", "carte_test"}, sanitized ? 1 : 3, 80, 2027);
}

TEST_CASE("the same on all of the boards, many more breaks", "[.full]") {
  breakBoards({}, 20, 400, testSeed());
}

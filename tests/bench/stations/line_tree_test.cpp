#include "bench/widgets/line_tree.h"

#include <cstdio>
#include <ctime>
#include <random>
#include <set>

#include "bench/widgets/tree_layout.h"
#include "demo_desk.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/place.h"
#include "support/drawn_board.h"
#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

constexpr TreeMetrics metrics{8.0, 18.0};

LineTree randomTree(std::mt19937& random, std::size_t nodes) {
  const auto below = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  LineTree tree;
  for (std::size_t i = 0; i < nodes; ++i) {
    TreeNode node;
    node.key = i;
    // Deep and broad ones: a neighbour of late or of any node.
    node.parent = i == 0 ? 0 : below(2) == 0 ? i - 1 - below(std::min<std::size_t>(i, 3)) : below(i);
    if (below(3) != 0) node.label = QString(static_cast<qsizetype>(below(14)), QLatin1Char('W'));
    node.probe = below(20) == 0;
    if (below(3) == 0) node.branch.suspicion = static_cast<double>(below(100)) / 100.0;
    node.branch.text = QString(static_cast<qsizetype>(below(30)), QLatin1Char('m'));
    if (below(6) == 0) node.branch.part = QStringLiteral("R12 33");
    if (i > 0) tree.nodes[node.parent].children.push_back(i);
    tree.nodes.push_back(std::move(node));
  }
  return tree;
}

void checkNothingMeets(const LineTree& tree, const TreeLayout& layout) {
  std::vector<QRectF> boxes;
  for (std::size_t i = 0; i < tree.nodes.size(); ++i) {
    const NodePlace& place = layout.places[i];
    for (const QRectF& box : {place.label, place.text})
      if (!box.isEmpty()) boxes.push_back(box);
  }
  std::size_t meeting = 0;
  for (std::size_t a = 0; a < boxes.size(); ++a) {
    if (!QRectF(QPointF(0, 0), layout.size).contains(boxes[a])) ++meeting;
    for (std::size_t b = a + 1; b < boxes.size(); ++b)
      if (boxes[a].intersects(boxes[b])) ++meeting;
  }
  CHECK(meeting == 0);
}

/// A trunk with a pad on each of its `count` branches, and the connector that it starts from.
struct Comb : test::DrawnBoard {
  NetId line;
  PinId source;
  explicit Comb(int count) {
    const LayerId top = layer("top");
    board.info.layerOrder = {top};
    line = net("SCAN");
    Part connector;
    connector.kind = fromUser(PartKind::connector);
    const PartId j1 = part("J1", Side::top, {}, connector);
    source = pin(j1, "1", line);
    static_cast<void>(pad(source, test::mm(0, 0), PadReach::top, 1));
    Part chip;
    chip.kind = fromUser(PartKind::chip);
    const PartId u1 = part("U1", Side::top, {}, chip);
    for (int i = 1; i <= count; ++i) {
      const double x = 2.0 * i;
      static_cast<void>(track(test::mm(x - 2.0, 0), test::mm(x, 0), top, line, 0.2));
      static_cast<void>(track(test::mm(x, 0), test::mm(x, 3), top, line, 0.2));
      static_cast<void>(pad(pin(u1, std::to_string(i), line), test::mm(x, 3), PadReach::top, 0.6));
    }
  }
};

/// Pins shown or folded, each as often as it occurs.
std::multiset<std::uint64_t> pinsOf(const LineTree& tree) {
  std::multiset<std::uint64_t> out;
  for (const TreeNode& node : tree.nodes) {
    if (node.pin) out.insert(node.pin.value);
    for (const PinId pin : node.inside)
      out.insert(pin.value);
  }
  return out;
}

double suspicionOf(const LineTree& tree) {
  double sum = tree.elsewhere;
  for (const TreeNode& node : tree.nodes)
    sum += node.suspicion + node.branch.suspicion;
  return sum;
}

} // namespace

TEST_CASE("in any line tree no two texts meet, children stand right of their parent and rows in order") {
  const unsigned seed = testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  for (int round = 0; round < rounds(200, 20); ++round) {
    const LineTree tree = randomTree(random, 1 + random() % 60);
    const TreeLayout layout = layoutLineTree(tree, metrics, 200.0 + static_cast<double>(random() % 2000));
    REQUIRE(layout.places.size() == tree.nodes.size());
    checkNothingMeets(tree, layout);
    for (std::size_t i = 0; i < tree.nodes.size(); ++i) {
      const auto& children = tree.nodes[i].children;
      for (std::size_t c = 0; c < children.size(); ++c) {
        CHECK(layout.places[children[c]].at.x() > layout.places[i].at.x());
        if (c > 0) CHECK(layout.places[children[c]].at.y() > layout.places[children[c - 1]].at.y());
      }
    }
  }
}

TEST_CASE("a tree with room to spare fills the width, one without keeps its texts") {
  std::mt19937 random(testSeed());
  const LineTree tree = randomTree(random, 12);
  const double natural = layoutLineTree(tree, metrics, 0).size.width();
  CHECK(layoutLineTree(tree, metrics, natural / 2).size.width() == Approx(natural));
  const double wide = layoutLineTree(tree, metrics, natural * 1.3).size.width();
  CHECK(wide > natural * 1.2);
  CHECK(wide <= natural * 1.3 + 0.001);
}

TEST_CASE("the tree of the demo's line holds each pin once and all of the probability") {
  DemoDesk demo;
  const FaultCase& fault = *demo.fault->fault();
  const Board& board = *demo.job->board()->board;
  std::multiset<std::uint64_t> terminals;
  for (const NodeIndex node : fault.line.terminals())
    terminals.insert(std::get<PinId>(fault.line.graph[node].object).value);
  for (const std::size_t foldAbove : {std::size_t{1000}, std::size_t{0}}) {
    TreeWishes wishes;
    wishes.foldAbove = foldAbove;
    const LineTree tree = lineTree(board, fault, wishes);
    CHECK(pinsOf(tree) == terminals);
    CHECK(suspicionOf(tree) == Approx(1.0).margin(1e-9));
  }
  // Parts that the line goes through are told from copper.
  std::ptrdiff_t parts = 0;
  for (const auto e : boost::make_iterator_range(edges(fault.line.graph)))
    parts += fault.line.graph[e].kind == EdgeKind::part;
  const LineTree tree = lineTree(board, fault);
  CHECK(std::count_if(tree.nodes.begin(), tree.nodes.end(),
                      [](const TreeNode& node) { return !node.branch.part.isEmpty(); }) == parts);
}

TEST_CASE("readings and the next probe stand where they were taken") {
  DemoDesk demo(DemoDesk::Until::walked);
  const FaultCase& fault = *demo.fault->fault();
  REQUIRE(demo.fault->nextProbe() != nullptr);
  TreeWishes wishes;
  wishes.probe = demo.fault->nextProbe()->place;
  const PinId j49 = demo.job->board()->lookup->pinsLabelled("J4.9").front();
  wishes.readings = {{j49, "J4.9", MarkShape::disc, QStringLiteral("0.650 V")},
                     {j49, "J4.9", MarkShape::gap, QStringLiteral("OL")},
                     {{}, "pad of J4.9", MarkShape::hollow, QStringLiteral("OL")}};
  const LineTree tree = lineTree(*demo.job->board()->board, fault, wishes);
  const auto labelled = [&](const QString& label) {
    const auto found = std::find_if(tree.nodes.begin(), tree.nodes.end(),
                                    [&](const TreeNode& node) { return node.label == label; });
    REQUIRE(found != tree.nodes.end());
    return *found;
  };
  CHECK(labelled(QStringLiteral("J4.9")).mark == MarkShape::gap); // the last one
  CHECK(labelled(QStringLiteral("pad of J4.9")).mark == MarkShape::hollow);
  CHECK(labelled(QString::fromStdString(fault.isolation.places[*wishes.probe].label)).probe);
  // A reading of an older book, which called places by their coordinates.
  const auto& places = fault.isolation.places;
  const auto via = std::find_if(places.begin(), places.end(), [](const ProbePlace& place) {
    return std::holds_alternative<ViaId>(place.object) && place.layer == 0;
  });
  REQUIRE(via != places.end());
  char old[64];
  std::snprintf(old, sizeof old, "via at (%.2f, %.2f) mm, top", via->at->x.mm(), via->at->y.mm());
  wishes.readings = {{{}, old, MarkShape::gap, QStringLiteral("OL")}};
  const LineTree older = lineTree(*demo.job->board()->board, fault, wishes);
  const QString name = shown(nameOf(fault.names.probe(static_cast<std::size_t>(via - places.begin()))));
  CHECK(std::any_of(older.nodes.begin(), older.nodes.end(),
                    [&](const TreeNode& node) { return node.label == name && node.mark == MarkShape::gap; }));
  CHECK(tree.nodes.front().label == QStringLiteral("J4.9")); // of a connector
}

TEST_CASE(
    "a line of 500 pads is folded where nothing is suspected, opens on request, and is laid out at once") {
  const Comb comb(500);
  const Lookup lookup(comb.board);
  FaultCase fault;
  fault.line = lineOf(lookup, buildBoardGraph(comb.board), comb.line);
  TreeWishes wishes;
  wishes.source = comb.source;
  const PinId read = lookup.pinsLabelled("U1.250").front();
  wishes.readings = {{read, "U1.250", MarkShape::disc, QStringLiteral("0.450 V")}};
  const std::clock_t start = std::clock();
  const LineTree folded = lineTree(comb.board, fault, wishes);
  CHECK(pinsOf(folded).size() == 501);
  const auto folds = std::count_if(folded.nodes.begin(), folded.nodes.end(),
                                   [](const TreeNode& node) { return node.kind == TreeNodeKind::folded; });
  CHECK(folds >= 1);
  CHECK(folded.nodes.size() < 10); // the way to what was read, what lies beside it and what comes after
  for (const TreeNode& node : folded.nodes)
    if (node.kind == TreeNodeKind::folded) wishes.unfolded.insert(node.key);
  const LineTree open = lineTree(comb.board, fault, wishes);
  CHECK(pinsOf(open).size() == 501);
  CHECK(open.nodes.size() > folded.nodes.size());
  const std::clock_t made = std::clock();
  const TreeLayout layout = layoutLineTree(open, metrics, 1200);
  const double ms = 1000.0 * static_cast<double>(std::clock() - made) / CLOCKS_PER_SEC;
  WARN("500 pads: " << folded.nodes.size() << " nodes folded, " << open.nodes.size() << " open; trees "
                    << 1000.0 * static_cast<double>(made - start) / CLOCKS_PER_SEC << " ms for two, layout "
                    << ms << " ms");
  if (!sanitized) CHECK(ms < 20.0);
  CHECK(layout.places.size() == open.nodes.size());
}

TEST_CASE("copper that two ways lead to is one node, since no single break parts it") {
  Comb comb(2);
  // A second way from the first branch's pad to the second's.
  const LayerId top = comb.board.info.layerOrder.front();
  static_cast<void>(comb.track(test::mm(2, 3), test::mm(4, 3), top, comb.line, 0.2));
  const Lookup lookup(comb.board);
  FaultCase fault;
  fault.line = lineOf(lookup, buildBoardGraph(comb.board), comb.line);
  const LineTree tree = lineTree(comb.board, fault, {});
  CHECK(pinsOf(tree).size() == 3);
  const auto forks = std::count_if(tree.nodes.begin(), tree.nodes.end(),
                                   [](const TreeNode& node) { return node.kind == TreeNodeKind::fork; });
  CHECK(forks == 1);
}

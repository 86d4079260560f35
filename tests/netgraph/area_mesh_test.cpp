#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "netmend/netgraph/area_mesh.h"
#include "support/effort.h"

using namespace netmend;

namespace {

const Length foil = usualCopperThickness;

Point at(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

Ring rectangle(double x1, double y1, double x2, double y2) {
  return {at(x1, y1), at(x2, y1), at(x2, y2), at(x1, y2)};
}

RoundedShape disc(double x, double y, double radius) {
  return {{at(x, y)}, Length::fromMm(radius)};
}

RoundedShape bar(double x1, double y1, double x2, double y2) {
  return {rectangle(x1, y1, x2, y2), Length(0)};
}

Ring turned(Ring ring, double degrees) {
  const double angle = degrees * std::numbers::pi / 180;
  for (auto& p : ring)
    p = at(p.x.mm() * std::cos(angle) - p.y.mm() * std::sin(angle),
           p.x.mm() * std::sin(angle) + p.y.mm() * std::cos(angle));
  return ring;
}

double squares(const Result<Ohms>& resistance) {
  REQUIRE(resistance);
  return *resistance / sheetResistance(foil);
}

} // namespace

TEST_CASE("a strip of area between two bars across it has ρL/(wt)") {
  // 20 mm between the bars, 3 mm wide; neither is a multiple of the cells.
  const Polygon strip{rectangle(0, 0, 24, 3), {}};
  for (const double cell : {0.5, 0.37, 0.2}) {
    INFO("cell " << cell << " mm");
    const auto resistance =
        areaResistance(strip, foil, bar(-1, -1, 2, 4), bar(22, -1, 25, 4), Length::fromMm(cell));
    REQUIRE(resistance);
    CHECK(resistance->value ==
          Approx(trackResistance(Length::fromMm(20), Length::fromMm(3), foil).value).epsilon(1e-6));
  }
}

TEST_CASE("a strip that lies askew to the grid has the same resistance within a hundredth") {
  for (const double degrees : {17.0, 30.0, 45.0}) {
    INFO(degrees << " degrees");
    const Polygon strip{turned(rectangle(0, 0, 24, 3), degrees), {}};
    const RoundedShape from{turned(rectangle(-1, -1, 2, 4), degrees), Length(0)};
    const RoundedShape to{turned(rectangle(22, -1, 25, 4), degrees), Length(0)};
    CHECK(squares(areaResistance(strip, foil, from, to, Length::fromMm(0.1))) ==
          Approx(20.0 / 3).epsilon(0.01));
  }
}

TEST_CASE("two discs in a large sheet have the resistance of the closed form") {
  // Derivation: two line sources ±I at ±s in an infinite sheet give the potential ρI/(2πt)·ln(r2/r1), whose
  // lines of equal value are circles. The circle of radius a about c has c² = s² + a²; at its point c − a the
  // ratio r2/r1 is (c − a + s)/(s − c + a) = (c + s)/a. With the other disc's the negative of it, R =
  // ρ/(πt)·ln((c + s)/a), which is ρ/(πt)·acosh(d/(2a)) for d = 2c.
  const double a = 1.0;
  const double d = 5.0;
  const double c = d / 2;
  const double s = std::sqrt(c * c - a * a);
  CHECK(std::log((c + s) / a) == Approx(std::acosh(d / (2 * a))).epsilon(1e-12));

  // A sheet bounded by a circle of radius B reflects each source at B²/s with its own sign, which adds
  // ρ/(πt)·ln((B² + s²)/(B² − s²)) to first order.
  const double bound = 30.0;
  Ring circle;
  for (int i = 0; i < 720; ++i)
    circle.push_back(
        at(bound * std::cos(i * std::numbers::pi / 360), bound * std::sin(i * std::numbers::pi / 360)));
  const double reflected = std::log((bound * bound + s * s) / (bound * bound - s * s));
  const double wanted = (std::acosh(d / (2 * a)) + reflected) / std::numbers::pi;
  CHECK(reflected < 0.02);
  for (const double cell : {0.4, 0.2}) {
    if (netmend::sanitized && cell < 0.4) continue; // four times the nodes
    INFO("cell " << cell << " mm");
    const auto found =
        areaResistance({circle, {}}, foil, disc(-c, 0, a), disc(c, 0, a), Length::fromMm(cell));
    CHECK(squares(found) == Approx(wanted).epsilon(0.005));
  }
}

TEST_CASE("a ring between two circles has ln(b/a)/2π squares") {
  // Between concentric contacts: the closed form of radial flow.
  Ring outside;
  for (int i = 0; i < 360; ++i)
    outside.push_back(
        at(12 * std::cos(i * std::numbers::pi / 180), 12 * std::sin(i * std::numbers::pi / 180)));
  auto mesh = meshArea({outside, {}}, Length::fromMm(0.2), foil);
  REQUIRE(mesh);
  const auto inner = addContact(*mesh, disc(0, 0, 2));
  REQUIRE(inner);
  // Everything outside of 10 mm is one contact.
  const auto outer = mesh->nodes.size();
  mesh->nodes.push_back(at(12, 0));
  for (std::size_t i = 0; i + 2 < mesh->nodes.size(); ++i)
    if (std::hypot(mesh->nodes[i].x.mm(), mesh->nodes[i].y.mm()) >= 10)
      mesh->resistors.push_back({i, outer, Ohms(0)});
  const auto found = effectiveResistance(mesh->resistors, *inner, outer) / mesh->perSquare;
  CHECK(found == Approx(std::log(10.0 / 2) / (2 * std::numbers::pi)).epsilon(0.02));
}

TEST_CASE("a slit far narrower than the cell separates") {
  // Two halves joined only by 1 mm at the top; the slit is 1 µm wide.
  Polygon area{{at(0, 0), at(4.9995, 0), at(4.9995, 9), at(5.0005, 9), at(5.0005, 0), at(10, 0), at(10, 10),
                at(0, 10)},
               {}};
  const auto found =
      squares(areaResistance(area, foil, disc(2.5, 1, 0.8), disc(7.5, 1, 0.8), Length::fromMm(0.5)));
  // Down one side and up the other: more than a strip of 5 mm by 16 mm, where the whole square has less
  // than 2.
  CHECK(found > 3.0);
  const Polygon whole{rectangle(0, 0, 10, 10), {}};
  CHECK(squares(areaResistance(whole, foil, disc(2.5, 1, 0.8), disc(7.5, 1, 0.8), Length::fromMm(0.5))) <
        2.0);
}

TEST_CASE("a hole cut open by a keyhole is the same as a hole of its own") {
  const Polygon withHole{rectangle(0, 0, 10, 6), {rectangle(3, 2, 7, 4)}};
  // One ring that runs to the hole and back along the same way.
  const Polygon keyhole{{at(0, 0), at(10, 0), at(10, 6), at(0, 6), at(0, 3), at(3, 3), at(3, 4), at(7, 4),
                         at(7, 2), at(3, 2), at(3, 3), at(0, 3)},
                        {}};
  const auto left = disc(1, 1, 0.5);
  const auto right = disc(9, 5, 0.5);
  const auto cell = Length::fromMm(0.25);
  CHECK(squares(areaResistance(keyhole, foil, left, right, cell)) ==
        Approx(squares(areaResistance(withHole, foil, left, right, cell))).epsilon(1e-9));
  CHECK(meshArea(keyhole, cell, foil)->nodes.size() == meshArea(withHole, cell, foil)->nodes.size());
}

TEST_CASE("a neck narrower than the cell is found by refining, and a contact beside the area is an error") {
  const Polygon neck{{at(0, 0), at(4, 0), at(4, 1.9), at(6, 1.9), at(6, 0), at(10, 0), at(10, 4), at(6, 4),
                      at(6, 2.1), at(4, 2.1), at(4, 4), at(0, 4)},
                     {}};
  const auto resistance = [&](double cell) {
    return squares(areaResistance(neck, foil, disc(2, 2, 0.6), disc(8, 2, 0.6), Length::fromMm(cell)));
  };
  // The neck alone has ten squares. With six rows over the area none runs through the neck.
  CHECK(meshArea(neck, Length::fromMm(0.7), foil)->nodes.size() % 6 == 0);
  CHECK(resistance(0.7) > 10.0);
  CHECK(resistance(0.7) == Approx(resistance(0.05)).epsilon(0.2));

  const Polygon pieces{{at(0, 0), at(4, 0), at(4, 4), at(0, 4)}, {}};
  const auto beside = areaResistance(pieces, foil, disc(2, 2, 0.6), disc(8, 2, 0.6), Length::fromMm(0.5));
  REQUIRE_FALSE(beside);
  CHECK(wordsOf(beside.error().message) == "no node of the mesh lies under the contact");
}

TEST_CASE("contacts that overlap are joined") {
  const Polygon sheet{rectangle(0, 0, 10, 10), {}};
  CHECK(squares(areaResistance(sheet, foil, disc(4.5, 5, 1), disc(5.5, 5, 1), Length::fromMm(0.25))) == 0.0);
}

TEST_CASE("a mesh of no size, too fine a mesh and an area without corners are told") {
  const Polygon sheet{rectangle(0, 0, 100, 100), {}};
  CHECK_FALSE(meshArea(sheet, Length(0), foil));
  CHECK_FALSE(meshArea(sheet, Length(-5), foil));
  CHECK_FALSE(meshArea(sheet, Length(1), foil));
  CHECK_FALSE(meshArea(sheet, Length::fromMm(0.5), foil, 30'000));
  CHECK(meshArea(sheet, Length::fromMm(0.5), foil, 40'000)->nodes.size() == 40'000);
  CHECK(meshArea({}, Length(1000), foil)->nodes.empty());
}

TEST_CASE("an area in a graph resolves to its mesh between the places that met it") {
  // A pad's via, the area, another via; a strip 2 mm wide, 10 mm apart.
  CopperGraph graph(3);
  const AreaId id(7);
  graph[1] = {NodeKind::area, id, at(6, 1), 0};
  graph[0].at = at(1, 1);
  graph[2].at = at(11, 1);
  for (const NodeIndex end : {NodeIndex{0}, NodeIndex{2}}) {
    CopperEdge edge;
    edge.index = boost::num_edges(graph);
    edge.from = edge.to = graph[end].at;
    edge.width = fromFile(Length::fromMm(1));
    edge.resistance = fromFile(Ohms(0));
    boost::add_edge(end, 1, edge, graph);
  }
  CHECK(effectiveResistance(graph, 0, 2).value == 0.0);

  const Polygon strip{rectangle(0, 0, 12, 2), {}};
  const auto resolved = withAreaResolved(graph, 1, strip, foil, Length::fromMm(0.125));
  REQUIRE(resolved);
  const auto found = effectiveResistance(*resolved, 0, 2).value;
  const auto alone = areaResistance(strip, foil, disc(1, 1, 0.5), disc(11, 1, 0.5), Length::fromMm(0.125));
  CHECK(found == Approx(alone->value).epsilon(1e-9));
  // At least the strip between the discs' far sides, at most twice that of the discs' width.
  CHECK(found > sheetResistance(foil).value * 9 / 2);
  CHECK(found < sheetResistance(foil).value * 9);
  CHECK(fragments(*resolved, {}).ofNode[0] == fragments(*resolved, {}).ofNode[2]);
  std::size_t next = 0;
  for (const auto edge : boost::make_iterator_range(boost::edges(*resolved)))
    CHECK((*resolved)[edge].index == next++);
}

namespace {

struct Link {
  Point a, b;
  double squares; ///< resistance over that of a square
};

std::vector<Link> linksOf(const AreaMesh& mesh) {
  std::vector<Link> out;
  for (const Resistor& r : mesh.resistors)
    out.push_back({mesh.nodes[r.a], mesh.nodes[r.b], r.value / mesh.perSquare});
  return out;
}

AreaMesh meshOf(const Polygon& area, double cellMm) {
  const auto mesh = meshArea(area, Length::fromMm(cellMm), foil);
  REQUIRE(mesh);
  return *mesh;
}

} // namespace

TEST_CASE("a rectangle of whole cells has a node in each, and a link of one square between neighbours") {
  const AreaMesh mesh = meshOf({rectangle(10, 20, 13, 22), {}}, 1.0);
  CHECK(mesh.cell == Length(1'000'000));
  CHECK(mesh.perSquare.value == sheetResistance(foil).value);
  CHECK(mesh.nodes == std::vector<Point>{at(10.5, 20.5), at(11.5, 20.5), at(12.5, 20.5), at(10.5, 21.5),
                                         at(11.5, 21.5), at(12.5, 21.5)});
  REQUIRE(mesh.resistors.size() == 4 + 3);
  for (const Link& link : linksOf(mesh)) {
    CHECK(link.squares == Approx(1).epsilon(1e-9));
    CHECK(distance(link.a, link.b) == Length(1'000'000));
  }
}

TEST_CASE(
    "cells lie in the middle of the area's box, and links at its rim have the copper that is left or over") {
  // 2.5 mm by 3.4 mm: three columns and four rows, 0.25 mm and 0.3 mm over the rims.
  const AreaMesh mesh = meshOf({rectangle(0, 0, 2.5, 3.4), {}}, 1.0);
  REQUIRE(mesh.nodes.size() == 12);
  CHECK(mesh.nodes.front() == at(0.25, 0.2));
  CHECK(mesh.nodes.back() == at(2.25, 3.2));
  for (const Link& link : linksOf(mesh)) {
    const bool along = link.a.y == link.b.y;
    const double side = along ? link.a.y.mm() : link.a.x.mm();
    const bool atRim = along ? (side < 1 || side > 2.5) : (side < 1 || side > 2);
    // Half a cell inwards and out to the rim.
    const double width = !atRim ? 1.0 : 0.5 + (along ? 0.2 : 0.25);
    CHECK(link.squares == Approx(1 / width).epsilon(1e-6));
  }
}

TEST_CASE("a strip one cell wide, and one of a cell and a half, have all their copper in their links") {
  for (const double width : {1.0, 0.6}) {
    const auto links = linksOf(meshOf({rectangle(0, 0, 4, width), {}}, 1.0));
    REQUIRE(links.size() == 3);
    for (const Link& link : links)
      CHECK(link.squares == Approx(1 / width).epsilon(1e-6));
  }
}

TEST_CASE("a hole takes away the nodes in it and the links across it") {
  const AreaMesh mesh = meshOf({rectangle(0, 0, 5, 5), {rectangle(2, 2, 3, 3)}}, 1.0);
  CHECK(mesh.nodes.size() == 24);
  CHECK(mesh.resistors.size() == 40 - 4);
  // A slit of a nanometre between two columns takes all links across it.
  const Ring slit{
      at(2, -1), {Length(2'000'001), Length(-1'000'000)}, {Length(2'000'001), Length(4'000'000)}, at(2, 4)};
  const AreaMesh cut = meshOf({rectangle(0, 0, 5, 5), {slit}}, 1.0);
  int across = 0;
  for (const Link& link : linksOf(cut))
    across += link.a.y == link.b.y && std::min(link.a.x, link.b.x) == at(1.5, 0).x ? 1 : 0;
  CHECK(across == 1); // the one above its end
}

TEST_CASE("the most nodes are a limit on the grid and on the nodes in it, either side") {
  const Polygon sheet{rectangle(0, 0, 10, 10), {}};
  CHECK(meshArea(sheet, Length::fromMm(1), foil, 100));
  CHECK_FALSE(meshArea(sheet, Length::fromMm(1), foil, 99));
  // A frame that fills little of its box: 400 cells and 76 nodes.
  const Polygon frame{rectangle(0, 0, 20, 20), {rectangle(1, 1, 19, 19)}};
  CHECK(meshArea(frame, Length::fromMm(1), foil, 100)->nodes.size() == 76);
  const auto over = meshArea(frame, Length::fromMm(1), foil, 99);
  REQUIRE_FALSE(over);
  CHECK(wordsOf(over.error().message).find("too large") != std::string::npos);
  CHECK_FALSE(meshArea(sheet, Length(0), foil, 1));
}

TEST_CASE(
    "a contact joins the nodes under it, and links that reach into it are as long as their part outside") {
  AreaMesh mesh = meshOf({rectangle(0, 0, 5, 1), {}}, 1.0);
  REQUIRE(mesh.nodes.size() == 5);
  // Round the first two nodes: its edge is 0.25 mm beyond the second.
  const auto node = addContact(mesh, bar(0, 0, 1.75, 1));
  REQUIRE(node);
  CHECK(*node == 5);
  CHECK(mesh.nodes.back() == at(1, 0.5));
  const auto links = linksOf(mesh);
  REQUIRE(links.size() == 4 + 2);
  CHECK(links[0].squares == Approx(1)); // both under it
  CHECK(links[1].squares == Approx(0.75).epsilon(1e-6));
  CHECK(links[2].squares == Approx(1));
  CHECK(links[4].squares == 0);
  CHECK(links[5].squares == 0);
  CHECK(links[4].b == at(1, 0.5));
  // From the other end, by a disc of 0.8 mm about the last node: 0.2 mm of the last link are outside.
  REQUIRE(addContact(mesh, disc(4.5, 0.5, 0.8)));
  CHECK(linksOf(mesh)[3].squares == Approx(0.2).epsilon(1e-6));
  CHECK(effectiveResistance(mesh.resistors, 5, 6) / mesh.perSquare == Approx(0.75 + 1 + 0.2).epsilon(1e-6));
  CHECK_FALSE(addContact(mesh, disc(2, 0.5, 0.49)));
  CHECK(addContact(mesh, disc(2, 0.5, 0.5)));
}

TEST_CASE("what met an area meets its mesh in a disc of its width there, or where its other end is") {
  const Polygon strip{rectangle(0, 0, 9, 1), {}};
  const auto resolved = [&](Fact<Length> width, std::optional<Point> onArea, std::optional<Point> otherEnd,
                            bool turnedRound) {
    CopperGraph graph(3);
    graph[1] = {NodeKind::area, AreaId(7), at(4.5, 0.5), 1};
    graph[0] = {NodeKind::joint, TrackId(5), otherEnd, 1};
    graph[2] = {NodeKind::joint, TrackId(6), at(8.5, 0.5), 1};
    CopperEdge edge;
    edge.object = TrackId(5);
    edge.width = width;
    edge.resistance = fromFile(Ohms(0));
    (turnedRound ? edge.from : edge.to) = onArea;
    boost::add_edge(turnedRound ? 1 : 0, turnedRound ? 0 : 1, edge, graph);
    edge = {};
    edge.from = edge.to = at(8.5, 0.5);
    edge.width = fromFile(Length(1'000'000));
    edge.resistance = fromFile(Ohms(0));
    boost::add_edge(2, 1, edge, graph);
    boost::add_edge(1, 1, CopperEdge{}, graph); // a loop goes
    const auto found = withAreaResolved(graph, 1, strip, foil, Length::fromMm(1));
    REQUIRE(found);
    CHECK(boost::num_vertices(*found) >= 2 + 9);
    CHECK((*found)[0].object == CopperObject(TrackId(5)));
    CHECK((*found)[1].object == CopperObject(AreaId(7)));
    CHECK((*found)[1].at == at(0.5, 0.5));
    CHECK((*found)[1].kind == NodeKind::area);
    CHECK((*found)[1].layer == 1);
    CHECK((*found)[3].at == at(1.5, 0.5));
    return effectiveResistance(*found, 0, 2) / sheetResistance(foil);
  };
  for (const bool turnedRound : {false, true}) {
    // Eight squares between the first node and the last, less half a width of each disc.
    CHECK(resolved(fromFile(Length(1'000'000)), at(0.5, 0.5), at(-3, 0), turnedRound) ==
          Approx(7).epsilon(1e-6));
    CHECK(resolved(fromFile(Length(1'600'000)), at(0.5, 0.5), at(-3, 0), turnedRound) ==
          Approx(6.7).epsilon(1e-6));
    // Of unknown width as wide as a cell.
    CHECK(resolved({}, at(0.5, 0.5), {}, turnedRound) == Approx(7).epsilon(1e-6));
    CHECK(resolved({}, {}, at(2.5, 0.5), turnedRound) == Approx(5).epsilon(1e-6));
    // Too small for the mesh: at the nearest node. Without any place: at the first.
    CHECK(resolved(fromFile(Length(1000)), at(3.2, 0.1), at(-3, 0), turnedRound) ==
          Approx(4.5).epsilon(1e-6));
    CHECK(resolved({}, {}, {}, turnedRound) == Approx(7.5).epsilon(1e-6));
  }
}

TEST_CASE("the edges of a mesh in a graph say what they are") {
  CopperGraph graph(1);
  graph[0] = {NodeKind::area, AreaId(7), at(4.5, 0.5), 1};
  const auto found = withAreaResolved(graph, 0, {rectangle(0, 0, 2, 1), {}}, foil, Length::fromMm(1));
  REQUIRE(found);
  REQUIRE(boost::num_edges(*found) == 1);
  const CopperEdge& edge = (*found)[*boost::edges(*found).first];
  CHECK(edge.kind == EdgeKind::contact);
  CHECK(edge.object == CopperObject(AreaId(7)));
  CHECK(edge.from == at(0.5, 0.5));
  CHECK(edge.to == at(1.5, 0.5));
  CHECK(edge.layer == 1);
  CHECK(edge.resistance.origin == Origin::guessed);
  CHECK(edge.resistance.value / sheetResistance(foil) == Approx(1).epsilon(1e-9));
  CHECK_FALSE(withAreaResolved(graph, 0, {}, foil, Length::fromMm(1)));
  CHECK_FALSE(withAreaResolved(graph, 0, {rectangle(0, 0, 2, 1), {}}, foil, Length(0)));
}

TEST_CASE("what a mesh is refused for is said in figures") {
  const Polygon sheet{rectangle(0, 0, 10, 20), {}};
  const auto said = [](const auto& result) {
    REQUIRE_FALSE(result);
    return std::pair{wordsOf(result.error().found), wordsOf(result.error().expected)};
  };
  using Words = std::pair<std::string, std::string>;
  CHECK(said(meshArea(sheet, Length(-5), foil)) == Words{"-5 nm", ""});
  CHECK(said(meshArea(sheet, Length::fromMm(1), foil, 40)) == Words{"10 × 20 cells", "at most 160"});
  CHECK(said(meshArea(sheet, Length::fromMm(1), foil, 199)) == Words{"200 nodes", "at most 199"});
  AreaMesh mesh = meshOf(sheet, 0.5);
  CHECK(said(addContact(mesh, disc(50, 50, 1))) == Words{"a cell of 0.5 mm", ""});
  CopperGraph graph(1);
  CHECK(said(withAreaResolved(graph, 0, {}, foil, Length::fromMm(0.25))) == Words{"a cell of 0.25 mm", ""});
  // Two squares that meet in a neck of 10 µm, narrower than any cell down to an eighth of the first.
  const Polygon neck{{at(0, 0), at(4, 0), at(4, 2), at(6, 2), at(6, 0), at(10, 0), at(10, 4), at(6, 4),
                      at(6, 2.01), at(4, 2.01), at(4, 4), at(0, 4)},
                     {}};
  CHECK(wordsOf(areaResistance(neck, foil, disc(2, 2, 1), disc(8, 2, 1), Length::fromMm(1)).error().found) ==
        "necks narrower than 0.125 mm");
}

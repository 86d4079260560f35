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

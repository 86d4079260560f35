#include <cmath>
#include <limits>
#include <random>

#include <catch2/catch.hpp>

#include "netmend/netgraph/resistance.h"
#include "support/seed.h"

using namespace netmend;

namespace {

Length mm(double value) {
  return Length::fromMm(value);
}

/// A ring of n resistors of 1 Ω.
std::vector<Resistor> ring(std::size_t n) {
  std::vector<Resistor> network;
  for (std::size_t i = 0; i < n; ++i)
    network.push_back({i, (i + 1) % n, Ohms(1)});
  return network;
}

/// By Gauss on the dense matrix of node voltages, `to` held at nought: every node a row, links of nought
/// taken as a millionth of an ohm. Infinite where spreading from node to node does not get there.
double byElimination(const std::vector<Resistor>& network, std::size_t nodes, std::size_t from,
                     std::size_t to) {
  std::vector<bool> reached(nodes, false);
  reached[from] = true;
  for (std::size_t round = 0; round < nodes; ++round)
    for (const Resistor& r : network)
      if (std::isfinite(r.value.value) && (reached[r.a] || reached[r.b])) reached[r.a] = reached[r.b] = true;
  if (!reached[to]) return std::numeric_limits<double>::infinity();
  std::vector<std::vector<double>> m(nodes, std::vector<double>(nodes + 1, 0.0));
  for (const Resistor& r : network) {
    if (r.a == r.b || std::isinf(r.value.value)) continue;
    const double g = 1.0 / std::max(r.value.value, 1e-6);
    m[r.a][r.a] += g;
    m[r.b][r.b] += g;
    m[r.a][r.b] -= g;
    m[r.b][r.a] -= g;
  }
  m[from][nodes] = 1.0;
  for (std::size_t i = 0; i < nodes; ++i)
    if (i == to || !reached[i]) {
      std::fill(m[i].begin(), m[i].end(), 0.0);
      m[i][i] = 1.0;
    }
  for (std::size_t k = 0; k < nodes; ++k) {
    std::size_t best = k;
    for (std::size_t i = k; i < nodes; ++i)
      if (std::abs(m[i][k]) > std::abs(m[best][k])) best = i;
    std::swap(m[k], m[best]);
    for (std::size_t i = 0; i < nodes; ++i) {
      if (i == k) continue;
      const double share = m[i][k] / m[k][k];
      for (std::size_t j = k; j <= nodes; ++j)
        m[i][j] -= share * m[k][j];
    }
  }
  return m[from][nodes] / m[from][from];
}

} // namespace

TEST_CASE("foil of 35 µm has 0.4926 mΩ a square whatever the square's size") {
  // 1/58 Ω·mm²/m (IEC 60028:1925) over 0.035 mm.
  CHECK(sheetResistance(usualCopperThickness).value == Approx(0.4926e-3).epsilon(1e-4));
  CHECK(trackResistance(mm(3), mm(3), Length(35'000)).value == Approx(1e-3 / 58 / 0.035).epsilon(1e-12));
  CHECK(trackResistance(mm(200), mm(200), Length(35'000)).value ==
        Approx(sheetResistance(Length(35'000)).value).epsilon(1e-12));
}

TEST_CASE("copper of the section of a handbook wire has the handbook's resistance") {
  // Copper Wire Tables, NBS Handbook 100: Ω/km at 20 °C of AWG 30, 36 and 40; these figures are from memory.
  // The diameters come from the defining formula d = 0.127 mm · 92^((36−n)/39) (ASTM B258).
  struct Wire {
    int gauge;
    double ohmsPerKm;
  };
  for (const auto& wire : {Wire{30, 338.6}, Wire{36, 1361.0}, Wire{40, 3441.0}}) {
    const double diameter = 0.127 * std::pow(92.0, (36 - wire.gauge) / 39.0);
    const double section = 3.14159265358979 * diameter * diameter / 4; // mm²
    // The same section as a strip one micrometre thick.
    const auto strip = trackResistance(mm(1e6), mm(section * 1000), Length(1000));
    CHECK(strip.value == Approx(wire.ohmsPerKm).epsilon(2e-3));
  }
}

TEST_CASE("resistance grows with temperature as annealed copper does") {
  // IEC 60028:1925: 0.00393 /K at 20 °C.
  const auto cold = trackResistance(mm(10), mm(0.1), Length(35'000));
  const auto warm = trackResistance(mm(10), mm(0.1), Length(35'000), Celsius(70));
  CHECK(warm.value / cold.value == Approx(1 + 50 * 0.00393));
  CHECK(atTemperature(cold, Celsius(70)).value == Approx(warm.value));
}

TEST_CASE("a via barrel is the annulus of its plating") {
  // 0.3 mm hole, 20 µm plating, 1.6 mm: section π·(0.17² − 0.15²) mm² = 0.020106 mm², so 1.372 mΩ.
  const double section = 3.14159265358979 * (0.17 * 0.17 - 0.15 * 0.15);
  CHECK(viaResistance(mm(0.3), usualPlating, usualBoardThickness).value ==
        Approx(1e-3 / 58 * 1.6 / section).epsilon(1e-9));
  CHECK(viaResistance(mm(0.3), usualPlating, usualBoardThickness).value == Approx(1.372e-3).epsilon(1e-3));
}

TEST_CASE("copper without a cross-section does not conduct") {
  CHECK(std::isinf(trackResistance(mm(1), Length(0), Length(35'000)).value));
  CHECK(std::isinf(trackResistance(mm(1), mm(1), Length(0)).value));
  CHECK(std::isinf(viaResistance(mm(0.3), Length(0), mm(1)).value));
  CHECK(trackResistance(Length(0), mm(1), Length(35'000)).value == 0.0);
}

TEST_CASE("networks with a closed form have its resistance") {
  // Between nodes k apart on a ring of n: k and n − k in parallel.
  for (const std::size_t k : {1u, 3u, 5u})
    CHECK(effectiveResistance(ring(10), 0, k).value == Approx(static_cast<double>(k * (10 - k)) / 10.0));

  // A complete graph of n nodes: 2/n, by symmetry.
  std::vector<Resistor> complete;
  for (std::size_t a = 0; a < 7; ++a)
    for (std::size_t b = a + 1; b < 7; ++b)
      complete.push_back({a, b, Ohms(1)});
  CHECK(effectiveResistance(complete, 2, 6).value == Approx(2.0 / 7));

  // A cube's edges: 7/12 along an edge, 3/4 over a face, 5/6 through the body, by symmetry.
  std::vector<Resistor> cube;
  for (std::size_t a = 0; a < 8; ++a)
    for (const std::size_t bit : {1u, 2u, 4u})
      if ((a & bit) == 0) cube.push_back({a, a | bit, Ohms(1)});
  CHECK(effectiveResistance(cube, 0, 1).value == Approx(7.0 / 12));
  CHECK(effectiveResistance(cube, 0, 3).value == Approx(3.0 / 4));
  CHECK(effectiveResistance(cube, 0, 7).value == Approx(5.0 / 6));

  // A long ladder of 1 Ω rails and rungs tends to the golden ratio.
  std::vector<Resistor> ladder;
  for (std::size_t i = 0; i < 60; ++i) {
    ladder.push_back({i, i + 1, Ohms(1)});
    ladder.push_back({i + 1, 100, Ohms(1)});
  }
  CHECK(effectiveResistance(ladder, 0, 100).value == Approx((1 + std::sqrt(5.0)) / 2).epsilon(1e-12));
}

TEST_CASE("resistances of zero join their ends") {
  const std::vector<Resistor> network{{0, 1, Ohms(0)}, {1, 2, Ohms(5)}, {2, 3, Ohms(0)}, {1, 4, Ohms(0)}};
  CHECK(effectiveResistance(network, 0, 3).value == Approx(5));
  CHECK(effectiveResistance(network, 0, 4).value == 0.0);
  CHECK(effectiveResistance(network, 2, 2).value == 0.0);
  // A resistor across what a link joins carries nothing.
  auto shunted = network;
  shunted.push_back({0, 4, Ohms(3)});
  CHECK(effectiveResistance(shunted, 0, 3).value == Approx(5));
}

TEST_CASE("nodes that do not hang together have infinite resistance") {
  const std::vector<Resistor> network{
      {0, 1, Ohms(1)}, {2, 3, Ohms(1)}, {1, 2, Ohms(std::numeric_limits<double>::infinity())}};
  CHECK(std::isinf(effectiveResistance(network, 0, 3).value));
  CHECK(std::isinf(effectiveResistance(network, 0, 77).value));
  CHECK(effectiveResistance(network, 2, 3).value == Approx(1));
}

TEST_CASE("a resistance that is negative or not a number is refused") {
  CHECK_THROWS_AS(effectiveResistance({{0, 1, Ohms(-1)}}, 0, 1), std::invalid_argument);
  CHECK_THROWS_AS(effectiveResistance({{0, 1, Ohms(std::nan(""))}}, 0, 1), std::invalid_argument);
}

TEST_CASE("milliohms of copper in series with megohms keep their place in the sum") {
  const std::vector<Resistor> network{{0, 1, Ohms(1e-3)}, {1, 2, Ohms(1e7)}, {0, 2, Ohms(4.7e3)}};
  const double series = 1e7 + 1e-3;
  CHECK(effectiveResistance(network, 0, 2).value == Approx(series * 4.7e3 / (series + 4.7e3)).epsilon(1e-8));
  CHECK(effectiveResistance(network, 0, 1).value == Approx(1e-3).epsilon(1e-9));
}

TEST_CASE("along copper, an edge of unknown resistance counts as told") {
  CopperGraph graph(3);
  CopperEdge known;
  known.resistance = fromFile(Ohms(0.2));
  boost::add_edge(0, 1, known, graph);
  boost::add_edge(1, 2, CopperEdge{}, graph);
  CHECK(effectiveResistance(graph, 0, 2).value == Approx(0.2));
  CHECK(effectiveResistance(graph, 0, 2, Ohms(0.5)).value == Approx(0.7));
}

TEST_CASE("random networks have the resistance that elimination on the dense matrix gives") {
  const unsigned seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> ohms(0.1, 100);
  for (int round = 0; round < 60; ++round) {
    const std::size_t nodes = 3 + random() % 10;
    std::vector<Resistor> network;
    for (std::size_t i = 0; i < nodes + random() % (2 * nodes); ++i) {
      const std::size_t kind = random() % 10;
      const double value = kind == 0   ? 0.0
                           : kind == 1 ? std::numeric_limits<double>::infinity()
                                       : ohms(random);
      network.push_back({random() % nodes, random() % nodes, Ohms(value)});
    }
    const std::size_t from = random() % nodes, to = random() % nodes;
    if (from == to) continue;
    const double truth = byElimination(network, nodes, from, to);
    const double found = effectiveResistance(network, from, to).value;
    const double back = effectiveResistance(network, to, from).value;
    if (std::isinf(truth)) {
      CHECK(std::isinf(found));
      CHECK(std::isinf(back));
      continue;
    }
    CHECK(found == Approx(truth).epsilon(1e-4).margin(1e-5));
    CHECK(back == Approx(found));
  }
}

TEST_CASE("both sides of no cross-section: a nanometre conducts, nought and less do not") {
  const double inf = std::numeric_limits<double>::infinity();
  for (const std::int64_t nm : {-1, 0, 1}) {
    CHECK((trackResistance(mm(1), Length(nm), Length(35'000)).value == inf) == (nm <= 0));
    CHECK((trackResistance(mm(1), mm(1), Length(nm)).value == inf) == (nm <= 0));
    CHECK((viaResistance(mm(0.3), Length(nm), mm(1)).value == inf) == (nm <= 0));
    CHECK((viaResistance(Length(nm), Length(20'000), mm(1)).value == inf) == (nm < 0));
  }
  // A hole plated shut: a rod of 40 µm.
  CHECK(viaResistance(Length(0), Length(20'000), mm(1)).value ==
        Approx(1e-3 / 58 / (3.14159265358979 * 0.02 * 0.02)).epsilon(1e-12));
  CHECK(viaResistance(mm(0.3), Length(20'000), mm(1), Celsius(70)).value ==
        Approx(viaResistance(mm(0.3), Length(20'000), mm(1)).value * 1.1965).epsilon(1e-12));
  CHECK(sheetResistance(Length(35'000), Celsius(70)).value ==
        Approx(sheetResistance(Length(35'000)).value * 1.1965).epsilon(1e-12));
}

#include <array>
#include <cmath>
#include <map>
#include <numeric>
#include <random>
#include <sstream>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "../../src/isolation/short_model.h"
#include "../isolation/short_bench.h"
#include "netmend/base/plane.h"
#include "netmend/board/exchange/import.h"
#include "netmend/netgraph/net_role.h"
#include "support/effort.h"
#include "support/ngspice.h"
#include "support/seed.h"

/// Shorts drawn by the priors on the supplies of kicad-demos boards, read by a simulated meter: are the
/// shares that are said true? Copper graph and meshes are the program's; its resistances are drawn anew for
/// each job, and what is read of them is worked out by nodal analysis here, which is held against ngspice.
using namespace netmend;
using namespace netmend::test;

namespace {

/// One job's copper: a node for the short, resistors, and what stands where.
struct TrueCopper {
  std::vector<Resistor> resistors;
  std::size_t nodes = 0;
  std::size_t shorted = 0;
  double shortOhms = 0.0;

  [[nodiscard]] double ohmsAt(std::size_t point) const {
    if (point == shorted) return shortOhms;
    // The short's node is held at nought: what is left is positive definite.
    std::vector<std::size_t> joined(nodes);
    std::iota(joined.begin(), joined.end(), std::size_t{0});
    const auto find = [&](std::size_t i) {
      while (joined[i] != i)
        i = joined[i] = joined[joined[i]];
      return i;
    };
    for (const Resistor& r : resistors)
      if (r.value.value == 0.0) joined[find(r.a)] = find(r.b);
    const std::size_t ground = find(shorted);
    if (find(point) == ground) return shortOhms;
    std::vector<Eigen::Triplet<double>> entries;
    const auto size = static_cast<Eigen::Index>(nodes);
    for (const Resistor& r : resistors) {
      const auto a = find(r.a), b = find(r.b);
      if (r.value.value == 0.0 || a == b) continue;
      const double g = 1.0 / r.value.value;
      for (const auto& [i, j] : {std::pair(a, b), std::pair(b, a)}) {
        if (i == ground) continue;
        entries.emplace_back(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(i), g);
        if (j != ground) entries.emplace_back(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j), -g);
      }
    }
    for (std::size_t i = 0; i < nodes; ++i)
      if (find(i) != i || i == ground)
        entries.emplace_back(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(i), 1.0);
    Eigen::SparseMatrix<double> laplacian(size, size);
    laplacian.setFromTriplets(entries.begin(), entries.end());
    Eigen::VectorXd current = Eigen::VectorXd::Zero(size);
    current[static_cast<Eigen::Index>(find(point))] = 1.0;
    const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> solver(laplacian);
    return shortOhms + Eigen::VectorXd(solver.solve(current))[static_cast<Eigen::Index>(find(point))];
  }

  [[nodiscard]] double ohmsInNgspice(std::size_t point) const {
    std::ostringstream netlist;
    netlist.precision(17);
    netlist << "I1 0 n" << point << " 1\nRshort n" << shorted << " 0 " << shortOhms << '\n';
    for (std::size_t i = 0; i < resistors.size(); ++i) {
      const double ohms = std::max(1e-9, resistors[i].value.value);
      netlist << "R" << i << " n" << resistors[i].a << " n" << resistors[i].b << ' ' << ohms << '\n';
    }
    return ngspiceOperatingPoint(netlist.str()).at(fmt::format("n{}", point));
  }
};

struct Rail {
  std::string name;
  std::shared_ptr<const Board> board;
  std::shared_ptr<const Lookup> lookup;
  BoardGraph graph;
  Line line;
  ShortSearch full;
  std::shared_ptr<const Board> stripped; ///< pins and nets only
  std::shared_ptr<const Lookup> strippedLookup;
  ShortSearch pinsOnly;
};

ShortInput inputOf(const Lookup& lookup, const BoardGraph& graph, const Line& line) {
  return {lookup,
          graph,
          line,
          shortPriors(),
          readProbeEfforts(NETMEND_SOURCE_DIR "/data/efforts.json").value(),
          fourWireMeter()};
}

LineOptions throughSupplies() {
  LineOptions out;
  out.throughSupplies = true;
  out.mostSeriesResistance = Ohms(10);
  return out;
}

std::vector<Rail> railsOf(const std::string& file) {
  auto imported = importBoard(std::filesystem::path("/usr/share/kicad/demos/" + file + ".kicad_pcb"));
  REQUIRE(imported);
  const auto board = std::make_shared<const Board>(std::move(imported->board));
  const auto lookup = std::make_shared<const Lookup>(*board);
  const BoardGraph graph = buildBoardGraph(*board);
  auto bare = std::make_shared<Board>(*board);
  bare->tracks = {};
  bare->vias = {};
  bare->areas = {};
  const auto bareLookup = std::make_shared<const Lookup>(*bare);
  const BoardGraph bareGraph = buildBoardGraph(*bare);
  std::vector<Rail> out;
  for (const Net& net : board->nets) {
    const auto role = roleOf(net);
    if (role.valueOr(NetRole::signal) != NetRole::supply || lookup->pinsOf(net.id).size() < 5) continue;
    const Line line = lineOf(*lookup, graph, net.id, throughSupplies());
    if (boost::num_vertices(line.graph) > 1500) continue;
    Rail rail{file + " " + net.name,
              board,
              lookup,
              graph,
              line,
              shortHypotheses(inputOf(*lookup, graph, line)),
              bare,
              bareLookup,
              {}};
    if (rail.full.places.size() < 5) continue;
    const Line bareLine = lineOf(*bareLookup, bareGraph, net.id, throughSupplies());
    rail.pinsOnly = shortHypotheses(inputOf(*bareLookup, bareGraph, bareLine));
    out.push_back(std::move(rail));
  }
  return out;
}

class Dice {
public:
  explicit Dice(unsigned seed) : random_(seed) {}
  double normal() { return std::normal_distribution<double>()(random_); }
  double share() { return std::uniform_real_distribution<double>()(random_); }
  double about(double median, double factor) { return median * std::exp(std::log(factor) * normal()); }
  std::size_t below(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }
  std::size_t byWeight(const std::vector<double>& w) {
    return std::discrete_distribution<std::size_t>(w.begin(), w.end())(random_);
  }

private:
  std::mt19937 random_;
};

/// Resistances as the priors say they vary; the short where `place` says, or at any node.
TrueCopper drawCopper(const Rail& rail, std::size_t place, Dice& dice) {
  const ShortPriors priors = shortPriors();
  const CopperGraph& graph = rail.full.model->graph;
  TrueCopper out;
  out.nodes = boost::num_vertices(graph) + 1;
  const std::size_t spot = out.nodes - 1;
  const ShortPlace& where = rail.full.places[place];
  out.shorted = spot;
  out.shortOhms = dice.about(priors.shortResistance.value, priors.shortFactor);
  const double thickness = dice.about(1.0, priors.thicknessFactor);
  std::optional<NodeIndex> node;
  for (const auto n : boost::make_iterator_range(boost::vertices(graph))) {
    const bool pin = where.kind == ShortKind::part && graph[n].object == CopperObject(where.pin);
    const bool copper =
        where.kind != ShortKind::part && graph[n].object == where.object && graph[n].at == where.at;
    if ((pin || copper) && (where.layer < 0 || graph[n].layer == where.layer)) node = n;
  }
  if (where.kind == ShortKind::noneOfThese) node = dice.below(out.nodes - 1);
  bool placed = node.has_value();
  if (placed) out.resistors.push_back({*node, spot, Ohms(0)});
  for (const auto edge : boost::make_iterator_range(boost::edges(graph))) {
    const CopperEdge& copper = graph[edge];
    double ohms = copper.resistance.valueOr(Ohms(0)).value * thickness;
    if (copper.kind == EdgeKind::track) ohms *= dice.about(1.0, priors.trackFactor);
    if (copper.kind == EdgeKind::via) ohms *= dice.about(1.0, priors.viaFactor);
    if (copper.kind == EdgeKind::solderJoint) ohms = 0.0;
    if (copper.kind == EdgeKind::part && ohms < 0.02)
      ohms = dice.about(priors.unknownPartOhms.value, priors.unknownPartFactor);
    if (copper.kind == EdgeKind::unknownWay || (copper.kind == EdgeKind::track && !copper.resistance.known()))
      ohms = dice.about(0.01, priors.unknownWayFactor);
    const auto a = boost::source(edge, graph), b = boost::target(edge, graph);
    const auto onEdge = [&] {
      return !placed && copper.kind == EdgeKind::track && copper.object == where.object && copper.from &&
             distanceToSegment(*where.at, *copper.from, *copper.to) < 1000.0;
    };
    if (onEdge()) {
      const double share =
          distance(*copper.from, *where.at).mm() / std::max(1e-6, distance(*copper.from, *copper.to).mm());
      out.resistors.push_back({a, spot, Ohms(ohms * share)});
      out.resistors.push_back({spot, b, Ohms(ohms * (1.0 - share))});
      placed = true;
      continue;
    }
    out.resistors.push_back({a, b, Ohms(ohms)});
  }
  REQUIRE(placed);
  return out;
}

/// One meter with its own error, at one job.
class JobMeter {
public:
  explicit JobMeter(Dice& dice) : dice_(dice), share_(2.0 * dice.share() - 1.0) {}

  double read(double ohms) {
    const ShortPriors priors = shortPriors();
    if (dice_.share() < priors.slippedShare) return 1e-4 * std::pow(1e6, dice_.share());
    const auto own = uncertaintyOf(meter_, ReadingMode::milliohms, ohms);
    const double common = own ? share_ * own->calibration * std::sqrt(3.0) : 0.0;
    return std::max(1e-6, ohms + common + priors.repeatOhms.value * dice_.normal());
  }

private:
  Dice& dice_;
  MeterProfile meter_ = fourWireMeter();
  double share_; ///< of the accuracy limit
};

/// Said, and whether it was so.
struct Claim {
  double said = 0.0;
  bool right = false;
};

bool names(const ShortSearch& search, const ShortSuspect& suspect, const ShortPlace& truth) {
  const ShortPlace& place = search.places[suspect.places.front()];
  if (suspect.kind != truth.kind) return false;
  switch (truth.kind) {
  case ShortKind::part:
    return place.part == truth.part;
  case ShortKind::bridge:
    return place.pin == truth.pin && place.neighbour == truth.neighbour;
  case ShortKind::nearGround:
    return place.object == truth.object;
  case ShortKind::noneOfThese:
    return true;
  }
  return false;
}

struct Job {
  Claim claim;
  std::size_t readings = 0;
  double logLoss = 0.0; ///< of the true suspect, bits
  double priorLoss = 0.0;
};

Job play(const Rail& rail, bool pinsOnly, Dice& dice) {
  std::vector<double> weights;
  for (const ShortPlace& place : rail.full.places)
    weights.push_back(place.prior);
  const std::size_t place = dice.byWeight(weights);
  ShortPlace truth = rail.full.places[place];
  const TrueCopper copper = drawCopper(rail, place, dice);
  const ShortSearch& hypotheses = pinsOnly ? rail.pinsOnly : rail.full;
  const Lookup& lookup = pinsOnly ? *rail.strippedLookup : *rail.lookup;
  JobMeter meter(dice);
  std::vector<Reading> readings;
  ShortSearch search = weighShort(hypotheses, lookup, {}, {});
  if (std::none_of(search.suspects.begin(), search.suspects.end(),
                   [&](const ShortSuspect& one) { return names(search, one, truth); }))
    truth.kind = ShortKind::noneOfThese;
  const auto lossOf = [&] {
    for (const ShortSuspect& one : search.suspects)
      if (names(search, one, truth)) return -std::log2(std::max(1e-12, one.probability));
    return 40.0;
  };
  Job out;
  out.priorLoss = lossOf();
  constexpr std::size_t mostReadings = 6;
  while (readings.size() < mostReadings) {
    const NextShortProbe next = nextShortProbe(search);
    if (next.stop || next.ranked.empty()) break;
    const ProbePlace& point = search.points[next.ranked.front().point];
    // The point on the true board, whose nodes are those of the graph with all copper.
    const auto there = std::find_if(rail.full.points.begin(), rail.full.points.end(),
                                    [&](const ProbePlace& one) { return one.label == point.label; });
    REQUIRE(there != rail.full.points.end());
    Reading reading;
    reading.point = {point.pin, point.label};
    reading.mode = ReadingMode::milliohms;
    reading.value = meter.read(copper.ohmsAt(*there->node));
    readings.push_back(reading);
    search = weighShort(hypotheses, lookup, readings, {});
  }
  out.readings = readings.size();
  out.claim = {search.suspects.front().probability, names(search, search.suspects.front(), truth)};
  out.logLoss = lossOf();
  return out;
}

struct Bin {
  double said = 0.0;
  double right = 0.0;
  double count = 0.0;
  [[nodiscard]] double error() const {
    const double p = std::clamp(right / count, 0.5 / count, 1.0 - 0.5 / count);
    return std::sqrt(p * (1.0 - p) / count);
  }
};

void judge(const std::vector<Job>& jobs, const std::string& what, double fewest) {
  std::array<Bin, 6> bins{};
  double readings = 0.0, loss = 0.0, before = 0.0;
  for (const Job& job : jobs) {
    const double said = job.claim.said;
    Bin& bin = bins.at(said > 0.95 ? 5 : std::min<std::size_t>(4, static_cast<std::size_t>(said * 5.0)));
    bin.said += said;
    bin.right += job.claim.right ? 1.0 : 0.0;
    bin.count += 1.0;
    readings += static_cast<double>(job.readings);
    loss += job.logLoss;
    before += job.priorLoss;
  }
  const auto all = static_cast<double>(jobs.size());
  std::string table = fmt::format("{}: {} jobs, {:.1f} readings, {:.2f} bits left of {:.2f}\n", what,
                                  jobs.size(), readings / all, loss / all, before / all);
  for (const Bin& bin : bins) {
    if (bin.count < 1.0) continue;
    table += fmt::format("  said {:.3f}  right {:.3f} ± {:.3f}  ({:.0f})\n", bin.said / bin.count,
                         bin.right / bin.count, bin.error(), bin.count);
  }
  WARN(table);
  for (const Bin& bin : bins) {
    if (bin.count < fewest) continue;
    INFO("said " << bin.said / bin.count << ", right " << bin.right / bin.count << " ± " << bin.error());
    CHECK(bin.said / bin.count - bin.right / bin.count <= 0.05 + 2.0 * bin.error());
    CHECK(bin.right / bin.count - bin.said / bin.count <= 0.15 + 2.0 * bin.error());
  }
  // Readings have to tell something.
  CHECK(loss < before);
}

void calibrate(const std::vector<std::string>& files, std::size_t jobs, double fewest) {
  const unsigned seed = testSeed();
  INFO("seed " << seed);
  Dice dice(seed);
  std::vector<Rail> rails;
  for (const std::string& file : files)
    for (Rail& rail : railsOf(file))
      rails.push_back(std::move(rail));
  REQUIRE(rails.size() > 1);
  for (const bool pinsOnly : {false, true}) {
    std::vector<Job> played;
    for (std::size_t i = 0; i < jobs; ++i)
      played.push_back(play(rails[i % rails.size()], pinsOnly, dice));
    judge(played, pinsOnly ? "pins and nets only" : "all copper", fewest);
  }
}

const std::vector<std::string> fewBoards{"pic_programmer/pic_programmer", "interf_u/interf_u"};
const std::vector<std::string> allBoards{"complex_hierarchy/complex_hierarchy",
                                         "ecc83/ecc83-pp",
                                         "flat_hierarchy/flat_hierarchy",
                                         "interf_u/interf_u",
                                         "kit-dev-coldfire-xilinx_5213/kit-dev-coldfire-xilinx_5213",
                                         "pic_programmer/pic_programmer",
                                         "sonde xilinx/sonde xilinx",
                                         "stickhub/StickHub",
                                         "test_xil_95108/carte_test",
                                         "video/video"};

} // namespace

TEST_CASE("what the simulated board reads of a short is ngspice's") {
  const unsigned seed = testSeed();
  INFO("seed " << seed);
  Dice dice(seed);
  const auto rails = railsOf(fewBoards.front());
  REQUIRE_FALSE(rails.empty());
  for (int round = 0; round < rounds(10, 2); ++round) {
    const Rail& rail = rails[dice.below(rails.size())];
    const TrueCopper copper = drawCopper(rail, dice.below(rail.full.places.size()), dice);
    const NodeIndex point = *rail.full.points[dice.below(rail.full.points.size())].node;
    // Contacts without resistance are a nanoohm there.
    CHECK(copper.ohmsAt(point) == Approx(copper.ohmsInNgspice(point)).epsilon(1e-4));
  }
}

TEST_CASE("shorts by the priors on two boards: shares are true") {
  if (sanitized) return; // a job takes minutes there; the networks' own tests go the same ways
  calibrate(fewBoards, static_cast<std::size_t>(rounds(60, 6)), sanitized ? 1e9 : 15.0);
}

TEST_CASE("shorts by the priors on all boards: shares are true", "[.full]") {
  calibrate(allBoards, 3000, 100.0);
}

#include <catch2/catch.hpp>

#include "bench_board.h"
#include "jumper/scoring.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// A candidate over an area without keep-outs, all of whose prices differ.
struct Priced {
  FreeArea area;
  Landing from, to;
  Candidate candidate;
  LandingPrices prices;

  explicit Priced(std::vector<Point> points) {
    candidate.points = std::move(points);
    prices.perBend = Price(0.5);
    prices.tight = Price(2.25);
    prices.tightBelow = Length(100'000);
    from.terms = {{TermKind::landing, Price(4), {}, 0, LandingKind::via, "via 1"}};
    to.terms = {{TermKind::landing, Price(2), {}, 0, LandingKind::partTerminal, "C1.1"},
                {TermKind::smallPart, Price(3), Length(200'000)}};
  }
  void scoreIt() {
    candidate.area = &area;
    candidate.from = &from;
    candidate.to = &to;
    score(candidate, prices);
  }
  void softZone(const std::string& name, ZoneEffect effect, double price, Polygon core) {
    ZoneRule rule;
    rule.effect = effect;
    rule.price = Price(price);
    rule.reason = "of " + name;
    area.obstacles.softZones.push_back(
        {std::move(core), ZoneId{1}, rule, {KeepOutName::What::zone, ZoneKind::heatSensitive, name, {}}});
  }
};

Length inside(const Polygon& polygon, Point a, Point b) {
  CHECK(lengthInside(polygon, a, b) == lengthInside(polygon, b, a));
  return lengthInside(polygon, a, b);
}

} // namespace

TEST_CASE("a score lists length, bends and both landings' terms, and adds them up") {
  Priced p({mm(0, 0), mm(3, 4), mm(3, 10), mm(8, 10)});
  p.candidate.terms = {{TermKind::tightPassage, Price(100)}}; // of an earlier reckoning
  p.candidate.total = Price(100);
  p.scoreIt();
  const std::vector<ScoreTerm> is = {{TermKind::length, Price(16), Length(16'000'000)},
                                     {TermKind::bends, Price(1), {}, 2},
                                     p.from.terms[0],
                                     p.to.terms[0],
                                     p.to.terms[1]};
  CHECK(p.candidate.terms == is);
  CHECK(p.candidate.total.value == Approx(16 + 1 + 4 + 2 + 3).epsilon(1e-12));
}

TEST_CASE("a straight way has no term for bends, one bend has one") {
  Priced straight({mm(0, 0), mm(5, 0)});
  straight.scoreIt();
  CHECK(straight.candidate.terms.size() == 4);
  CHECK(straight.candidate.total.value == Approx(5 + 9));
  Priced bent({mm(0, 0), mm(5, 0), mm(5, 5)});
  bent.scoreIt();
  CHECK(bent.candidate.terms[1] == ScoreTerm{TermKind::bends, Price(0.5), {}, 1});
}

TEST_CASE("a way through a gap narrower than the limit pays for it once, by its narrowest gap") {
  const auto tight = [](std::vector<std::int64_t> gaps) {
    Priced p({mm(0, 0), mm(5, 0)});
    for (const std::int64_t nm : gaps) {
      const auto at = static_cast<std::int32_t>(p.area.mesh.vertices.size());
      p.area.mesh.vertices.push_back({Length(at), Length(0)});
      p.area.mesh.vertices.push_back({Length(at), Length(nm)});
      p.candidate.free.crossed.emplace_back(at, at + 1);
    }
    p.scoreIt();
    const auto found = std::find_if(p.candidate.terms.begin(), p.candidate.terms.end(),
                                    [](const ScoreTerm& t) { return t.kind == TermKind::tightPassage; });
    return found == p.candidate.terms.end() ? std::nullopt : std::optional(*found);
  };
  CHECK_FALSE(tight({}));
  CHECK_FALSE(tight({100'000}));
  CHECK(tight({99'999}) == ScoreTerm{TermKind::tightPassage, Price(2.25), Length(99'999)});
  for (const auto& gaps :
       {std::vector<std::int64_t>{90'000, 80'000, 500'000}, {80'000, 90'000}, {500'000, 80'000}})
    CHECK(tight(gaps) == ScoreTerm{TermKind::tightPassage, Price(2.25), Length(80'000)});
}

TEST_CASE("soft zones cost by the millimetre inside or by the crossing, each with its name and reason") {
  Priced p({mm(0, 0), mm(10, 0), mm(10, 10)});
  p.softZone("beside", ZoneEffect::perLength, 7, {box(1, 1, 9, 9), {}});
  p.softZone("film", ZoneEffect::perLength, 3, {box(8, -1, 12, 5), {}}); // 2 mm and then 5 mm of it
  p.softZone("seam", ZoneEffect::perCrossing, 1.5, {box(9, 7, 11, 9), {}});
  p.scoreIt();
  REQUIRE(p.candidate.terms.size() == 7);
  const ScoreTerm &film = p.candidate.terms[5], &seam = p.candidate.terms[6];
  CHECK(film.kind == TermKind::softZone);
  CHECK(film.price.value == Approx(21).epsilon(1e-12));
  CHECK(film.length == Length(7'000'000));
  CHECK(film.keepOuts ==
        std::vector<KeepOutName>{{KeepOutName::What::zone, ZoneKind::heatSensitive, "film", {}}});
  CHECK(film.reason == "of film");
  CHECK(seam.price == Price(1.5));
  CHECK(seam.length == Length(2'000'000));
  CHECK(seam.keepOuts[0].label == "seam");
  CHECK(p.candidate.total.value == Approx(20 + 0.5 + 9 + 21 + 1.5).epsilon(1e-12));
}

TEST_CASE("the length of a stretch inside a polygon, with holes, edges and corners on its way") {
  const Polygon frame{box(0, 0, 10, 10), {box(4, 4, 6, 6)}};
  CHECK(inside(frame, mm(-5, 2), mm(15, 2)) == Length(10'000'000));
  CHECK(inside(frame, mm(-5, 5), mm(15, 5)) == Length(8'000'000));
  CHECK(inside(frame, mm(1, 5), mm(5, 5)) == Length(3'000'000));
  CHECK(inside(frame, mm(4.5, 5), mm(5.5, 5)) == Length(0));
  CHECK(inside(frame, mm(2, 1), mm(2, 3)) == Length(2'000'000));
  CHECK(inside(frame, mm(-2, 1), mm(-2, 3)) == Length(0));
  CHECK(inside(frame, mm(-3, 10), mm(13, 10)) == Length(10'000'000)); // along its edge
  CHECK(inside(frame, mm(-3, 10.000001), mm(13, 10.000001)) == Length(0));
  CHECK(inside(frame, mm(2, 4), mm(8, 4)) == Length(6'000'000)); // along the hole's edge
  CHECK(inside(frame, mm(-2, 2), mm(4, 8)).mm() == Approx(4 * std::numbers::sqrt2).margin(2e-6));
  CHECK(inside(frame, mm(-3, -4), mm(0, 0)) == Length(0)); // touches a corner
  CHECK(inside(frame, mm(-5, 5), mm(5, -5)) == Length(0)); // passes a corner
  CHECK(inside(frame, mm(3, 3), mm(3, 3)) == Length(0));
  // A comb: two of its teeth.
  const Polygon comb{{mm(0, 0), mm(5, 0), mm(5, 4), mm(4, 4), mm(4, 1), mm(2, 1), mm(2, 4), mm(0, 4)}, {}};
  CHECK(inside(comb, mm(-1, 3), mm(6, 3)) == Length(3'000'000));
  CHECK(inside(comb, mm(-1, 0.5), mm(6, 0.5)) == Length(5'000'000));
}

TEST_CASE("lengths inside a polygon agree with counting points along the way") {
  std::mt19937 random(21);
  INFO("seed 21");
  std::uniform_real_distribution<double> x(-1, 11);
  const Polygon star{{mm(0, 0), mm(5, 3), mm(10, 0), mm(7, 5), mm(10, 10), mm(5, 7), mm(0, 10), mm(3, 5)},
                     {box(4.5, 4.5, 5.5, 5.5)}};
  for (int i = 0; i < 20; ++i) {
    const Point a = mm(x(random), x(random)), b = mm(x(random), x(random));
    int in = 0;
    constexpr int steps = 2000;
    for (int k = 0; k < steps; ++k) {
      const double share = (k + 0.5) / steps;
      in += covers(star, {Length::fromMm(a.x.mm() + share * (b.x - a.x).mm()),
                          Length::fromMm(a.y.mm() + share * (b.y - a.y).mm())})
                ? 1
                : 0;
    }
    const double whole = distance(a, b).mm();
    CHECK(inside(star, a, b).mm() == Approx(whole * in / steps).margin(whole * 6 / steps));
  }
}

TEST_CASE(
    "no way between two landings is cheaper than straight from exit to exit, and the landings' prices") {
  Priced p({mm(0, 0), mm(1, 0)});
  p.from.at = mm(0, 0);
  p.from.opening.exit = mm(0, 2);
  p.to.opening.exit = mm(4, 5); // 5 mm on
  p.to.at = mm(4, 5.75);
  CHECK(leastPossible(p.from, p.to).value == Approx(2 + 5 + 0.75 + 4 + 5).epsilon(1e-12));
}

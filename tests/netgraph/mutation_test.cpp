#include <filesystem>
#include <iostream>

#include <catch2/catch.hpp>

#include "copper_board.h"
#include "mutations.h"
#include "netmend/board/exchange/import.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// Boards of the Debian package `kicad-demos`.
std::vector<std::filesystem::path> demoBoards() {
  std::vector<std::filesystem::path> out;
  for (const auto& entry : std::filesystem::recursive_directory_iterator("/usr/share/kicad/demos"))
    if (entry.path().extension() == ".kicad_pcb") out.push_back(entry.path());
  std::sort(out.begin(), out.end());
  return out;
}

double distanceToTrack(const Track& track, Point p) {
  const Ring line = centreLine(track, Length(1000));
  double best = 1e300;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double dx = static_cast<double>((line[i + 1] - line[i]).x.nm);
    const double dy = static_cast<double>((line[i + 1] - line[i]).y.nm);
    const double px = static_cast<double>((p - line[i]).x.nm);
    const double py = static_cast<double>((p - line[i]).y.nm);
    const double squared = dx * dx + dy * dy;
    const double t = squared > 0.0 ? std::clamp((px * dx + py * dy) / squared, 0.0, 1.0) : 0.0;
    best = std::min(best, std::hypot(px - t * dx, py - t * dy));
  }
  return best;
}

double lengthOf(const Track& track) {
  return static_cast<double>(trackLength(track).value().nm);
}

bool names(const Disagreement& d, const CopperObject& object) {
  return std::find(d.objects.begin(), d.objects.end(), object) != d.objects.end();
}

class Judge {
public:
  Judge(Board board, std::uint32_t seed) : board_(std::move(board)), mutator_(board_, seed) {}

  /// True when the mutation was drawn and changes something.
  bool tryOne(Mutation::Kind kind) {
    const auto m = mutator_.draw(kind);
    if (!m) return false;
    Board changed = board_;
    if (m->after)
      changed.tracks.put(*m->after);
    else
      changed.tracks.erase(m->before.id);
    const auto found = compareWithNames(changed, buildBoardGraph(changed));
    const auto& t = m->before;
    INFO("track " << t.id.value << " (" << t.start.x.mm() << ", " << t.start.y.mm() << ") to ("
                  << t.end.x.mm() << ", " << t.end.y.mm() << "), kind " << static_cast<int>(kind));
    checkShorts(*m, found);
    checkGaps(*m, found);
    return m->changesSomething();
  }

private:
  void checkShorts(const Mutation& m, const std::vector<Disagreement>& found) {
    std::set<CopperObject> expected;
    for (const std::size_t i : m.foreign)
      expected.insert(mutator_.brute.objects[i].id);
    std::set<CopperObject> reported;
    for (const Disagreement& d : found) {
      if (d.kind != Disagreement::Kind::shorted) continue;
      REQUIRE(d.objects.size() == 2);
      CHECK(names(d, m.before.id));
      const CopperObject other = d.objects[0] == CopperObject(m.before.id) ? d.objects[1] : d.objects[0];
      reported.insert(other);
      const auto object = std::find_if(mutator_.brute.objects.begin(), mutator_.brute.objects.end(),
                                       [&](const BruteObject& o) { return o.id == other; });
      REQUIRE(object != mutator_.brute.objects.end());
      // The place lies on both: a dot of 2 µm there touches them.
      BruteObject dot = mutator_.brute.trackObject(m.before);
      setOutlines(dot, {outlineOf({{d.at}, Length(2000)}, Length(50))});
      CHECK(touch(dot, *object));
      CHECK(touch(dot, mutator_.brute.trackObject(m.after.value_or(m.before))));
    }
    CHECK(reported == expected);
  }

  void checkGaps(const Mutation& m, const std::vector<Disagreement>& found) {
    std::size_t gaps = 0;
    std::size_t atItsPlace = 0;
    for (const Disagreement& d : found) {
      if (d.kind != Disagreement::Kind::disconnected) continue;
      ++gaps;
      CHECK(d.nets == std::vector<NetId>{m.before.net.value});
      if (isAtItsPlace(m, d))
        ++atItsPlace;
      else if (m.kind == Mutation::Kind::remove) // nothing left tells of the track: a nearer way is named
        CHECK(isNarrowerThan(d, lengthOf(m.before)));
    }
    CHECK(gaps + 1 == m.pieces);
    if (m.kind == Mutation::Kind::shorten && m.pieces > 1) CHECK(atItsPlace >= 1);
    if (m.kind == Mutation::Kind::remove) {
      gaps_ += gaps;
      gapsAtTheirPlace_ += atItsPlace;
    }
  }

  /// Whether a disc of this diameter at the reported place reaches both objects.
  [[nodiscard]] bool isNarrowerThan(const Disagreement& d, double nm) const {
    const auto object = [&](const CopperObject& id) -> const BruteObject& {
      return *std::find_if(mutator_.brute.objects.begin(), mutator_.brute.objects.end(),
                           [&](const BruteObject& o) { return o.id == id; });
    };
    BruteObject disc = object(d.objects[0]);
    setOutlines(disc, {outlineOf({{d.at}, Length(std::llround(nm / 2.0))}, Length(1000))});
    disc.firstLayer = 0;
    disc.lastLayer = 100;
    return touch(disc, object(d.objects[0])) && touch(disc, object(d.objects[1]));
  }

  /// Shortened: at the new end, and it is named; or those that it joined are, where they are nearer to each
  /// other than what it lost is long. Its new end may lie inside other copper of its net, and then tells
  /// nothing. Removed: on the way that it took, or those that it joined are named.
  [[nodiscard]] bool isAtItsPlace(const Mutation& m, const Disagreement& d) const {
    const double half = static_cast<double>(m.before.width.value.nm) / 2.0;
    if (m.kind == Mutation::Kind::shorten) {
      const Point end = m.after->start == m.before.start ? m.after->end : m.after->start;
      const Track dot{{}, TrackWay::straight, end, end, {}, {}, {}, {}, {}};
      const bool atEnd = distanceToTrack(dot, d.at) <= half + 20'000.0;
      if (atEnd && names(d, m.before.id)) return true;
      return namesWhatItJoined(m, d) && (atEnd || isNarrowerThan(d, lengthOf(m.before) - lengthOf(*m.after)));
    }
    return distanceToTrack(m.before, d.at) <= half + 500'000.0 || namesWhatItJoined(m, d);
  }

  [[nodiscard]] bool namesWhatItJoined(const Mutation& m, const Disagreement& d) const {
    const BruteObject was = mutator_.brute.trackObject(m.before);
    return std::all_of(d.objects.begin(), d.objects.end(), [&](const CopperObject& object) {
      return std::any_of(mutator_.brute.objects.begin(), mutator_.brute.objects.end(),
                         [&](const BruteObject& o) { return o.id == object && touch(was, o); });
    });
  }

  Board board_;
  Mutator mutator_;

public:
  std::size_t gaps_ = 0;
  std::size_t gapsAtTheirPlace_ = 0;
};

void mutate(const std::filesystem::path& path, std::size_t wanted) {
  const auto read = importBoard(path);
  REQUIRE(read);
  if (read->board.tracks.empty()) return; // nothing to cut
  const std::uint32_t seed = netmend::testSeed();
  std::cout << path.filename().string() << ": seed " << seed << std::flush;
  INFO(path << " seed " << seed);
  Judge judge(read->board, seed);
  std::size_t done = 0;
  for (std::size_t attempt = 0; done < wanted && attempt < 30 * wanted; ++attempt)
    done += judge.tryOne(static_cast<Mutation::Kind>(attempt % 3)) ? 1 : 0;
  std::cout << ", " << done << " mutations, " << judge.gapsAtTheirPlace_ << " of " << judge.gaps_
            << " gaps of removed tracks at their place\n";
  CHECK((done == wanted || read->board.tracks.size() < 50));
  CHECK(done > 0);
  // Some removed tracks leave no trace, and their nets run nearer to each other elsewhere.
  if (judge.gaps_ >= 40) CHECK(judge.gapsAtTheirPlace_ * 10 >= judge.gaps_ * 9);
}

} // namespace

TEST_CASE("a track cut, shortened or pushed on foreign copper is reported at its place, a spare one is not") {
  const auto boards = demoBoards();
  REQUIRE(boards.size() >= 13);
  for (const auto& path : boards) {
    // The large boards hold more of the same.
    if (netmend::sanitized && std::filesystem::file_size(path) > 600'000) continue;
    mutate(path, static_cast<std::size_t>(netmend::rounds(12, 3)));
  }
}

TEST_CASE(
    "where a shortened track ends inside other copper of its net, the nearer way between what it joined is "
    "named") {
  // Track 3 runs from track 2 over track 4 into track 1. Cut back until it lets go of 2 and 4, it ends inside
  // 1, whose end is held by 4: nothing is loose there.
  CopperBoard drawn;
  drawn.track(at(0.0, 0.0), at(2.0, 0.0), "A");
  drawn.track(at(5.0, 0.0), at(6.0, 0.0), "A");
  drawn.track(at(5.0, 0.0), at(1.0, 0.01), "A");
  drawn.track(at(2.0, 0.0), at(2.0, 1.0), "A");
  for (const Point end : {at(0.0, 0.0), at(2.0, 1.0), at(6.0, 0.0)})
    drawn.pad(drawn.pin("A"), end, 0.3);
  Board changed = drawn.board;
  Track cut = *std::next(changed.tracks.begin(), 2);
  cut.start = at(1.7, 0.01);
  changed.tracks.put(cut);
  const auto found = compareWithNames(changed, buildBoardGraph(changed));
  REQUIRE(found.size() == 1);
  CHECK(found.front().kind == Disagreement::Kind::disconnected);
  CHECK(found.front().at == at(3.5, 0.0));
  CHECK_FALSE(names(found.front(), cut.id));

  Judge judge(drawn.board, netmend::testSeed());
  int drawnOnes = 0;
  for (int i = 0; i < 60; ++i)
    drawnOnes += judge.tryOne(Mutation::Kind::shorten) ? 1 : 0;
  CHECK(drawnOnes >= 10);
}

TEST_CASE("200 mutations of every board are reported at their place", "[.full]") {
  for (const auto& path : demoBoards())
    mutate(path, 200);
}

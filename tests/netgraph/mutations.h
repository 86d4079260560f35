#pragma once

#include <cmath>
#include <optional>
#include <random>
#include <string>

#include "brute_copper.h"
#include "netmend/netgraph/board_graph.h"

namespace netmend::test {

/// One change to one track, and what the report must then say.
struct Mutation {
  enum class Kind { remove, nudge, shorten } kind;
  Track before;
  std::optional<Track> after;
  std::vector<std::size_t> foreign; ///< objects of other nets that it touches now
  std::size_t pieces = 1;           ///< of its own net
  [[nodiscard]] bool changesSomething() const { return pieces > 1 || !foreign.empty(); }
};

/// Draws random mutations and works out what they do, by BruteBoard. A draw that is not clear to within 1.5
/// µm gives nothing.
class Mutator {
public:
  Mutator(const Board& board, std::uint32_t seed) : board_(board), brute(board), random_(seed) {}

  [[nodiscard]] std::optional<Mutation> draw(Mutation::Kind kind) {
    if (board_.tracks.empty()) return std::nullopt;
    const Track& track = board_.tracks[upTo(board_.tracks.size())];
    if (!track.net.value || track.width.value.nm <= 0) return std::nullopt;
    Mutation m{kind, track, std::nullopt, {}, 1};
    // Moved or shortened, it may leave its neighbours alone with each other as well.
    if (!clearWithout(track)) return std::nullopt;
    if (kind == Mutation::Kind::remove) {
      m.pieces = brute.piecesOf(track.net.value, track.id);
      return m;
    }
    if (track.way != TrackWay::straight || track.start == track.end) return std::nullopt;
    m.after = kind == Mutation::Kind::nudge ? nudged(track) : shortened(track);
    if (!m.after) return std::nullopt;
    const BruteObject now = brute.trackObject(*m.after);
    const auto touched = brute.touched(now);
    if (touched != brute.touched(brute.trackObject(*m.after, Length(1'500))) ||
        touched != brute.touched(brute.trackObject(*m.after, Length(-1'500))))
      return std::nullopt;
    for (const std::size_t i : touched) {
      if (!brute.objects[i].net)
        return std::nullopt; // whether unnamed copper leads on is not worked out here
      if (brute.objects[i].net != track.net.value) m.foreign.push_back(i);
    }
    m.pieces = brute.piecesOf(track.net.value, track.id, &now);
    return m;
  }

private:
  std::size_t upTo(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }

  /// Whether those that it joined touch each other, or not, by more than 1.5 µm.
  [[nodiscard]] bool clearWithout(const Track& track) const {
    std::vector<const BruteObject*> near;
    for (const std::size_t i : brute.touched(brute.trackObject(track)))
      near.push_back(&brute.objects[i]);
    for (const BruteObject* a : near) {
      const auto* id = std::get_if<TrackId>(&a->id);
      if (!id) continue;
      const BruteObject larger = brute.trackObject(*board_.tracks.find(*id), Length(1'500));
      const BruteObject smaller = brute.trackObject(*board_.tracks.find(*id), Length(-1'500));
      for (const BruteObject* b : near)
        if (b != a && touch(larger, *b) != touch(smaller, *b)) return false;
    }
    return true;
  }

  static Track moved(Track track, double x, double y) {
    const Point by{Length(std::llround(x)), Length(std::llround(y))};
    track.start = track.start + by;
    track.end = track.end + by;
    return track;
  }

  /// Towards foreign copper on its layer within 10 mm, in steps of 10 µm until it touches.
  std::optional<Track> nudged(const Track& track) {
    const BruteObject self = brute.trackObject(track);
    std::vector<std::size_t> near;
    Box reach = self.boxes.front();
    reach.include(reach.min - Point{Length(3'000'000), Length(3'000'000)});
    reach.include(reach.max + Point{Length(3'000'000), Length(3'000'000)});
    for (std::size_t i = 0; i < brute.objects.size(); ++i) {
      const BruteObject& o = brute.objects[i];
      if (o.area || !o.net || o.net == track.net.value) continue;
      if (o.firstLayer > self.firstLayer || o.lastLayer < self.firstLayer) continue;
      if (boxesMeet(o.boxes.front(), reach)) near.push_back(i);
    }
    if (near.empty()) return std::nullopt;
    const BruteObject& target = brute.objects[near[upTo(near.size())]];
    const Point aim = target.outlines.front()[upTo(target.outlines.front().size())];
    const double dx = static_cast<double>((aim - track.start).x.nm);
    const double dy = static_cast<double>((aim - track.start).y.nm);
    const double way = std::hypot(dx, dy);
    if (way == 0.0) return std::nullopt;
    double low = 0.0;
    double high = way;
    while (high - low > 10'000.0) { // some place where it goes from open to touching
      const double middle = (low + high) / 2.0;
      const bool hit = touch(brute.trackObject(moved(track, dx * middle / way, dy * middle / way)), target);
      (hit ? high : low) = middle;
    }
    return moved(track, dx * high / way, dy * high / way);
  }

  /// From one end, until what touched there just does not, and 5 µm more.
  std::optional<Track> shortened(const Track& track) {
    const bool fromStart = upTo(2) == 0;
    const double dx = static_cast<double>((track.end - track.start).x.nm);
    const double dy = static_cast<double>((track.end - track.start).y.nm);
    const double whole = std::hypot(dx, dy);
    const auto cut = [&](double by) {
      Track out = track;
      const Point step{Length(std::llround(dx * by / whole)), Length(std::llround(dy * by / whole))};
      if (fromStart)
        out.start = track.start + step;
      else
        out.end = track.end - step;
      return out;
    };
    if (whole < 20'000.0) return std::nullopt;
    const Track tail = cut(whole - 10'000.0); // what holds it at the other end stays
    std::vector<std::size_t> held;
    const BruteObject rest = brute.trackObject(tail);
    for (const std::size_t i : brute.touched(brute.trackObject(track)))
      if (brute.objects[i].net == track.net.value && !touch(rest, brute.objects[i])) held.push_back(i);
    if (held.empty()) return std::nullopt;
    double low = 0.0;
    double high = whole - 10'000.0;
    while (high - low > 500.0) {
      const double middle = (low + high) / 2.0;
      const BruteObject now = brute.trackObject(cut(middle));
      const bool touches =
          std::any_of(held.begin(), held.end(), [&](std::size_t i) { return touch(now, brute.objects[i]); });
      (touches ? low : high) = middle;
    }
    if (high + 5'000.0 >= whole - 10'000.0) return std::nullopt;
    return cut(high + 5'000.0);
  }

  const Board& board_;

public:
  BruteBoard brute;

private:
  std::mt19937 random_;
};

} // namespace netmend::test

#include "part_guess.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "netmend/board/value.h"

namespace netmend {

namespace {

struct Letters {
  std::string_view letters;
  PartKind kind;
};

// Class letters of IEEE 315-1975 clause 22 where it has them; BEAD, JP, MK, SH, TP and the like are
// common practice without a source.
constexpr std::array letterTable{
    Letters{"ANT", PartKind::antenna},      Letters{"AE", PartKind::antenna},
    Letters{"E", PartKind::antenna},        Letters{"BAT", PartKind::battery},
    Letters{"BT", PartKind::battery},       Letters{"C", PartKind::capacitor},
    Letters{"CMC", PartKind::choke},        Letters{"CN", PartKind::connector},
    Letters{"CON", PartKind::connector},    Letters{"CONN", PartKind::connector},
    Letters{"CR", PartKind::diode},         Letters{"D", PartKind::diode},
    Letters{"F", PartKind::fuse},           Letters{"FB", PartKind::ferrite},
    Letters{"BEAD", PartKind::ferrite},     Letters{"FID", PartKind::mechanical},
    Letters{"FL", PartKind::filter},        Letters{"FS", PartKind::fuse},
    Letters{"H", PartKind::mechanical},     Letters{"IC", PartKind::chip},
    Letters{"J", PartKind::connector},      Letters{"JP", PartKind::connector},
    Letters{"K", PartKind::other},          Letters{"L", PartKind::inductor},
    Letters{"LED", PartKind::led},          Letters{"MH", PartKind::mechanical},
    Letters{"MP", PartKind::mechanical},    Letters{"P", PartKind::connector},
    Letters{"Q", PartKind::transistor},     Letters{"R", PartKind::resistor},
    Letters{"RA", PartKind::resistorArray}, Letters{"RN", PartKind::resistorArray},
    Letters{"RP", PartKind::resistorArray}, Letters{"RR", PartKind::resistorArray},
    Letters{"S", PartKind::switchOrKey},    Letters{"SH", PartKind::shield},
    Letters{"SW", PartKind::switchOrKey},   Letters{"T", PartKind::other},
    Letters{"TP", PartKind::testPoint},     Letters{"TR", PartKind::transistor},
    Letters{"U", PartKind::chip},           Letters{"VR", PartKind::chip},
    Letters{"X", PartKind::crystal},        Letters{"XTAL", PartKind::crystal},
    Letters{"Y", PartKind::crystal},
};

double cross(Point o, Point a, Point b) {
  const auto ax = static_cast<double>((a - o).x.nm), ay = static_cast<double>((a - o).y.nm);
  const auto bx = static_cast<double>((b - o).x.nm), by = static_cast<double>((b - o).y.nm);
  return ax * by - ay * bx;
}

} // namespace

Fact<PartKind> guessedKind(std::string_view reference, std::string_view value, std::size_t pins) {
  std::string letters;
  for (const char c : reference) {
    if (std::isalpha(static_cast<unsigned char>(c)) == 0) break;
    letters += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  }
  const auto found = std::find_if(letterTable.begin(), letterTable.end(),
                                  [&](const Letters& entry) { return entry.letters == letters; });
  if (found == letterTable.end()) return {};
  if (found->kind == PartKind::resistor) {
    if (pins > 3) return guessed(PartKind::resistorArray);
    const auto number = parsePartValue(value);
    const bool ohms = number && (number->unit == ValueUnit::ohm || number->unit == ValueUnit::none);
    if (ohms && number->magnitude == 0.0 && pins <= 2) return guessed(PartKind::zeroOhmLink);
  }
  // Two windings of a choke have four ends.
  if (found->kind == PartKind::inductor && pins == 4) return guessed(PartKind::choke);
  return guessed(found->kind);
}

Ring convexHull(std::vector<Point> points) {
  std::sort(points.begin(), points.end());
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return {};
  Ring hull;
  const auto walk = [&](auto first, auto last) {
    const std::size_t base = hull.size();
    for (auto it = first; it != last; ++it) {
      while (hull.size() >= base + 2 && cross(hull[hull.size() - 2], hull.back(), *it) <= 0)
        hull.pop_back();
      hull.push_back(*it);
    }
    hull.pop_back(); // the first of the other way
  };
  walk(points.begin(), points.end());
  walk(points.rbegin(), points.rend());
  return hull.size() >= 3 ? hull : Ring{};
}

Ring hullWithMargin(std::vector<Point> points, Length margin) {
  // The hull of a regular octagon about each point; its flats lie `margin` away.
  const Length a = margin;
  const Length b = Length::fromMm(margin.mm() * 0.41421356237); // tan 22.5°
  const std::array<Point, 8> octagon{Point{a, b},   Point{b, a},   Point{-b, a}, Point{-a, b},
                                     Point{-a, -b}, Point{-b, -a}, Point{b, -a}, Point{a, -b}};
  Ring hull = convexHull(points);
  if (hull.empty()) hull = std::move(points); // on a line, or fewer than three
  std::vector<Point> around;
  around.reserve(hull.size() * octagon.size());
  for (const Point p : hull)
    for (const Point corner : octagon)
      around.push_back(p + corner);
  return convexHull(std::move(around));
}

} // namespace netmend

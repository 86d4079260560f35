#include "connector_lie.h"

#include <algorithm>
#include <cctype>
#include <map>

#include <QCoreApplication>

namespace netmend {

namespace {

std::vector<QPointF> placesByName(const std::vector<ProbePoint>& points) {
  std::map<std::string, int> inRow;
  std::vector<std::string> rows;
  std::vector<QPointF> out;
  for (const ProbePoint& point : points) {
    const auto dot = point.label.find('.');
    std::string name = dot == std::string::npos ? point.label : point.label.substr(dot + 1);
    const auto digit = std::find_if(name.begin(), name.end(),
                                    [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; });
    const std::string row(name.begin(), digit);
    auto known = std::find(rows.begin(), rows.end(), row);
    if (known == rows.end()) known = rows.insert(rows.end(), row);
    out.emplace_back(inRow[row]++, known - rows.begin());
  }
  return out;
}

/// The middle of the pin's largest pad: a finger of an edge connector may have a second, small one.
Fact<Point> placeOf(const Lookup& lookup, PinId pin) {
  Fact<Point> out;
  double largest = -1.0;
  for (const PadId id : lookup.padsOf(pin)) {
    const Pad* pad = lookup.board().pads.find(id);
    if (pad == nullptr || !pad->position.known()) continue;
    const double area = pad->size.known() ? pad->size.value.width.mm() * pad->size.value.height.mm() : 0.0;
    if (area <= largest) continue;
    largest = area;
    out = pad->position;
  }
  return out;
}

} // namespace

std::vector<QPointF> connectorPlaces(const Lookup* lookup, const std::vector<ProbePoint>& points) {
  std::vector<QPointF> out;
  for (const ProbePoint& point : points) {
    if (lookup == nullptr) return placesByName(points);
    const auto at = placeOf(*lookup, point.pin);
    if (!at.known()) return placesByName(points);
    const Pin* pin = lookup->board().pins.find(point.pin);
    const Part* part = pin != nullptr ? lookup->board().parts.find(pin->part) : nullptr;
    const bool below = part != nullptr && part->side.known() && part->side.value == Side::bottom;
    out.emplace_back(below ? -at.value.x.mm() : at.value.x.mm(), -at.value.y.mm());
  }
  return out;
}

QString spokenPoint(const ProbePoint& point) {
  QString label = QString::fromStdString(point.label);
  const qsizetype dot = label.indexOf(QLatin1Char('.'));
  if (dot <= 0) return label;
  return QCoreApplication::translate("netmend::Station", "%1 pin %2")
      .arg(label.left(dot), label.mid(dot + 1));
}

} // namespace netmend

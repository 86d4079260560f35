#include "map_picture.h"

#include <algorithm>
#include <cmath>

#include "findings.h"
#include "netmend/drawing/pin_strip.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/verdict.h"
#include "netmend/words/customer.h"
#include "netmend/words/jumper.h"
#include "netmend/words/place.h"
#include "netmend/words/verdict.h"
#include "style.h"
#include "text.h"

namespace netmend {

namespace {

void include(Box& box, const std::vector<Point>& points) {
  for (const Point p : points)
    box.include(p);
}

std::string percent(double probability) {
  return std::to_string(std::lround(100.0 * probability)) + " %";
}

/// The likeliest suspects that have a place: the first is crossed, all have their stretch ticked.
void addSuspects(const Job& job, Overlay& overlay, Box& region) {
  constexpr double worthShowing = 0.1;
  bool first = true;
  for (const JobSuspect& suspect : suspectsOfRepair(job)) {
    if (suspect.probability < worthShowing && !first) continue;
    if (!suspect.at && suspect.way.empty()) continue;
    if (suspect.way.size() > 1) overlay.lines.push_back({suspect.way, LineStyle::suspect});
    const Point at = suspect.at ? *suspect.at : suspect.way[suspect.way.size() / 2];
    overlay.marks.push_back({at, MarkShape::cross,
                             said(first ? pattern("core", "break, {}") : pattern("core", "or here, {}"),
                                  percent(suspect.probability))});
    region.include(at);
    include(region, suspect.way);
    first = false;
  }
}

void addJumper(const JumperRecord& jumper, Overlay& overlay, Box& region) {
  overlay.lines.push_back({jumper.way, LineStyle::wire});
  overlay.marks.push_back(
      {jumper.from.at, MarkShape::ring, said(pattern("core", "A {}"), nameOf(jumper.from))});
  overlay.marks.push_back({jumper.to.at, MarkShape::ring, said(pattern("core", "B {}"), nameOf(jumper.to))});
  region.include(jumper.from.at);
  region.include(jumper.to.at);
  include(region, jumper.way);
}

/// The same for whoever knows neither nets nor landings.
void addNewWire(const JumperRecord& jumper, Overlay& overlay, Box& region) {
  Length length;
  for (std::size_t i = 1; i < jumper.way.size(); ++i)
    length += distance(jumper.way[i - 1], jumper.way[i]);
  overlay.lines.push_back(
      {jumper.way, LineStyle::laid,
       said(pattern("core", "new wire, {} mm"), std::to_string(std::lround(length.mm())))});
  for (const LandingPlace* place : {&jumper.from, &jumper.to}) {
    overlay.marks.push_back({place->at, MarkShape::ring, nameOf(place->name)});
    region.include(place->at);
  }
  include(region, jumper.way);
}

/// Findings of the walk at their pins, where they fall into the region; few enough to be told apart.
void addFindings(const Sheet& sheet, const Lookup& lookup, Overlay& overlay, Box& region) {
  constexpr std::size_t most = 8;
  std::vector<OverlayMark> marks;
  for (const ReadingPair& pair : pairReadings(sheet.job().readings)) {
    if (pair.before == nullptr || !pair.before->odd()) continue;
    const PinId pin = pair.before->reading.point.pin;
    if (!pin || lookup.board().pins.find(pin) == nullptr) continue;
    const Fact<Point> at = positionOf(lookup, pin);
    if (!at.known()) continue;
    marks.push_back(
        {at.value, markForVerdict(pair.before->kind()),
         said(pattern("core", "{}: {}"), pair.before->reading.point.label, nameOf(pair.before->kind()))});
  }
  if (marks.size() > most) return;
  for (OverlayMark& mark : marks) {
    // A landing on the same pin says enough.
    const bool taken = std::any_of(overlay.marks.begin(), overlay.marks.end(),
                                   [&](const OverlayMark& other) { return other.at == mark.at; });
    region.include(mark.at);
    if (!taken) overlay.marks.push_back(std::move(mark));
  }
}

/// With room around it, at least so much that its surroundings can be recognised, never beyond the board.
Box surroundings(const Box& region, const Box& board) {
  if (region.empty()) return board;
  const Length least = Length(8'000'000);
  const Size size = region.size();
  const Length around = std::max(least, std::max(size.width, size.height)) / 5;
  Box out;
  out.include({std::max(board.min.x, region.min.x - around), std::max(board.min.y, region.min.y - around)});
  out.include({std::min(board.max.x, region.max.x + around), std::min(board.max.y, region.max.y + around)});
  return out;
}

struct Key {
  QString text;
  std::function<void(QPainter&, const QRectF&)> sample;
};

void strokeSample(QPainter& painter, const QRectF& box, const QPen& pen) {
  painter.setPen(pen);
  painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()));
}

bool has(const SheetMap& map, LineStyle style) {
  return std::any_of(map.overlay.lines.begin(), map.overlay.lines.end(),
                     [&](const OverlayLine& line) { return line.style == style; });
}

std::vector<Key> keysOf(const SheetMap& map) {
  const double u = SheetStyle::point;
  std::vector<Key> keys;
  if (!map.overlay.litNets.empty()) {
    keys.push_back({shown(pattern("core", "line, on this side")), [u](QPainter& p, const QRectF& box) {
                      strokeSample(p, box, QPen(sheetColors().lit, 2.4 * u));
                    }});
    keys.push_back({shown(pattern("core", "line, on another layer")), [u](QPainter& p, const QRectF& box) {
                      strokeSample(p, box, QPen(sheetColors().lit, 2.4 * u));
                      strokeSample(p, box, QPen(sheetColors().litCore, 1.2 * u));
                    }});
    keys.push_back({shown(pattern("core", "line, way not known")), [u](QPainter& p, const QRectF& box) {
                      QPen pen(sheetColors().lit, 1.4 * u, Qt::CustomDashLine, Qt::RoundCap);
                      pen.setDashPattern({0.1, 2.6});
                      strokeSample(p, box, pen);
                    }});
  }
  if (has(map, LineStyle::suspect))
    keys.push_back({shown(pattern("core", "suspected stretch")), [u](QPainter& p, const QRectF& box) {
                      for (double x = box.left(); x <= box.right(); x += 3 * u) {
                        p.setPen(QPen(sheetColors().suspect, 0.9 * u));
                        p.drawLine(QPointF(x, box.center().y() - 2.5 * u),
                                   QPointF(x, box.center().y() + 2.5 * u));
                      }
                    }});
  if (has(map, LineStyle::wire))
    keys.push_back({shown(pattern("core", "jumper wire")), [u](QPainter& p, const QRectF& box) {
                      strokeSample(p, box, QPen(sheetColors().ink, 2.6 * u, Qt::SolidLine, Qt::FlatCap));
                      QPen pen(sheetColors().wire, 1.8 * u, Qt::CustomDashLine, Qt::FlatCap);
                      pen.setDashPattern({4.5, 1.5});
                      strokeSample(p, box, pen);
                    }});
  return keys;
}

void paintKeys(QPainter& painter, const SheetMap& map, const QRectF& box, const QFont& font) {
  painter.setFont(font);
  const double line = QFontMetricsF(font).height() * 1.25;
  double top = box.top();
  for (const Key& key : keysOf(map)) {
    if (top + line > box.bottom()) return;
    key.sample(painter, QRectF(box.left(), top, 22 * SheetStyle::point, line));
    painter.setPen(sheetColors().ink);
    painter.drawText(QRectF(box.left() + 27 * SheetStyle::point, top, box.width(), line),
                     Qt::AlignLeft | Qt::AlignVCenter, key.text);
    top += line;
  }
}

void frameRect(QPainter& painter, const QRectF& box) {
  painter.setPen(QPen(sheetColors().edge, 0.6 * SheetStyle::point));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(box);
}

QString captionOf(const Sheet& sheet, Side side, const QString& what) {
  QString board = cleaned(sheet.content.board.board->info.name.valueOr({}));
  if (board.isEmpty()) board = shown(pattern("core", "Board"));
  const QString from = side == Side::top ? shown(pattern("core", "seen from the top"))
                                         : shown(pattern("core", "seen from the bottom"));
  return what.isEmpty() ? QStringLiteral("%1, %2").arg(board, from)
                        : QStringLiteral("%1, %2: %3").arg(board, from, what);
}

} // namespace

std::vector<SheetMap> mapsOf(const Sheet& sheet, const BoardScene& scene) {
  if (scene.extent().empty()) return {};
  const Lookup& lookup = *sheet.content.board.lookup;
  std::vector<SheetMap> maps;
  const auto make = [&](const RepairAction* action) {
    SheetMap map;
    map.overlay.litNets = sheet.content.line;
    Box region;
    addSuspects(sheet.job(), map.overlay, region);
    QString what;
    if (action != nullptr) {
      map.side = action->jumper->side;
      addJumper(*action->jumper, map.overlay, region);
      what = shown(pattern("core", "jumper %1")).arg(cleaned(action->target).simplified());
    }
    addFindings(sheet, lookup, map.overlay, region);
    map.region = surroundings(region, scene.extent());
    map.caption = captionOf(sheet, map.side, what.trimmed());
    maps.push_back(std::move(map));
  };
  for (const RepairAction& action : sheet.job().actions)
    if (action.jumper) make(&action);
  if (maps.empty()) make(nullptr);
  return maps;
}

std::optional<SheetMap> repairMap(const Sheet& sheet, const BoardScene& scene) {
  if (scene.extent().empty()) return {};
  SheetMap map;
  Box region;
  const JumperRecord* first = nullptr;
  for (const RepairAction& action : sheet.job().actions) {
    if (!action.jumper) continue;
    if (first == nullptr) first = &*action.jumper;
    if (action.jumper->side == first->side) addNewWire(*action.jumper, map.overlay, region);
  }
  const std::vector<JobSuspect> suspects = suspectsOfRepair(sheet.job());
  if (!suspects.empty() && (suspects.front().at || !suspects.front().way.empty())) {
    const JobSuspect& open = suspects.front();
    if (open.way.size() > 1)
      map.overlay.lines.insert(map.overlay.lines.begin(), {open.way, LineStyle::suspect});
    const Point at = open.at ? *open.at : open.way[open.way.size() / 2];
    map.overlay.marks.push_back({at, MarkShape::cross, pattern("core", "open here")});
    region.include(at);
  }
  if (region.empty()) return {};
  map.overlay.litNets = sheet.content.line;
  map.side = first != nullptr ? first->side : Side::top;
  map.region = surroundings(region, scene.extent());
  return map;
}

void paintRepairMap(QPainter& painter, const SheetMap& map, const BoardScene& scene, const QRectF& frame,
                    const SheetStyle& style) {
  paintBoard(painter, scene, viewOf(map.region, frame, map.side), map.overlay, style.picture);
  frameRect(painter, frame);
}

void paintSheetMap(QPainter& painter, const SheetMap& map, const BoardScene& scene, const QRectF& frame,
                   const SheetStyle& style) {
  const double gap = 3 * SheetStyle::millimetre;
  const QRectF detail(frame.left(), frame.top(), frame.width() * 0.72, frame.height());
  paintBoard(painter, scene, viewOf(map.region, detail, map.side), map.overlay, style.picture);
  frameRect(painter, detail);

  const QRectF column(detail.right() + gap, frame.top(), frame.right() - detail.right() - gap,
                      frame.height());
  const double keysHeight =
      QFontMetricsF(style.small).height() * 1.25 * static_cast<double>(keysOf(map).size());
  const double rest = column.height() - keysHeight - gap;
  const QRectF whole(column.left(), column.top(), column.width(), std::min(rest, column.width() * 0.9));
  Overlay overview;
  overview.litNets = map.overlay.litNets;
  overview.zones = overview.partLabels = overview.pinLabels = overview.scaleBar = false;
  const Box& r = map.region;
  overview.lines.push_back({{r.min, {r.max.x, r.min.y}, r.max, {r.min.x, r.max.y}}, LineStyle::outline});
  paintBoard(painter, scene, viewOf(scene.extent(), whole, map.side), overview, style.picture);
  frameRect(painter, whole);
  paintKeys(painter, map, QRectF(column.left(), whole.bottom() + gap, column.width(), keysHeight + gap),
            style.small);
}

} // namespace netmend

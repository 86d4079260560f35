#include <algorithm>
#include <tuple>

#include "marks.h"
#include "painting.h"

namespace netmend {

namespace {

/// In the order of painting.
enum class Pass : std::uint8_t {
  buriedArea,
  buriedTrack,
  farPad,
  farBody,
  area,
  track,
  via,
  pad,
  litArea,
  litTrack,
  litVia,
  litPad,
  body,
  zone
};

struct Visible {
  Pass pass;
  std::uint32_t index;
  [[nodiscard]] bool operator<(const Visible& other) const {
    return std::tie(pass, index) < std::tie(other.pass, other.index);
  }
};

bool allLayersIn(const SceneItem& item, const std::vector<char>& flags) {
  for (int layer = item.firstLayer; layer <= item.lastLayer; ++layer) {
    const auto i = static_cast<std::size_t>(layer);
    if (i >= flags.size() || !flags[i]) return false;
  }
  return true;
}

/// What can be told to be on the side seen; copper whose layer is unknown is not.
bool isNear(const Painting& p, const SceneItem& item) {
  if (item.kind == ItemKind::track || item.kind == ItemKind::area)
    return item.firstLayer == p.nearLayer && item.lastLayer == p.nearLayer;
  return item.firstLayer <= p.nearLayer && p.nearLayer <= item.lastLayer;
}

std::optional<Pass> passOf(const Painting& p, const SceneItem& item) {
  const bool near = isNear(p, item);
  const bool through = p.overlay.seeThrough;
  if (item.kind == ItemKind::zone) {
    if (!p.overlay.zones || !(near || through)) return std::nullopt;
    return Pass::zone;
  }
  if (item.kind == ItemKind::body) {
    if (near) return Pass::body;
    return through ? std::optional(Pass::farBody) : std::nullopt;
  }
  if (allLayersIn(item, p.hidden)) return std::nullopt;
  const bool lit = p.isLit(item);
  switch (item.kind) {
  case ItemKind::area:
    if (lit) return Pass::litArea;
    if (near) return Pass::area;
    return through ? std::optional(Pass::buriedArea) : std::nullopt;
  case ItemKind::track:
    if (lit) return Pass::litTrack;
    // What runs inside, nobody knows how, is seen nowhere else.
    if (near || (p.overlay.overPhoto && item.uncertain)) return Pass::track;
    return through ? std::optional(Pass::buriedTrack) : std::nullopt;
  case ItemKind::via:
    if (lit) return Pass::litVia;
    return near || through ? std::optional(Pass::via) : std::nullopt;
  default:
    if (lit && (near || through)) return Pass::litPad;
    if (near) return Pass::pad;
    return through ? std::optional(Pass::farPad) : std::nullopt;
  }
}

/// Too small to be seen at this scale.
bool belowSight(const Painting& p, const SceneItem& item) {
  const double size = p.picture(std::max(item.box.width(), item.box.height()));
  if (item.kind == ItemKind::padPlace) return false;
  return size < 0.06 * p.unit * 10.0;
}

std::vector<Visible> visibleItems(const Painting& p) {
  // Outlines and crosses reach a little over the boxes that the index knows.
  const double reach = 4 * p.unit;
  const Box shown = p.view.shown(p.part.adjusted(-reach, -reach, reach, reach));
  std::vector<Visible> out;
  for (const std::uint32_t index : itemsIn(p.content, QRectF(mm(shown.min), mm(shown.max)))) {
    const SceneItem& item = p.content.items[index];
    const auto pass = passOf(p, item);
    if (pass && (!belowSight(p, item) || *pass >= Pass::litArea)) out.push_back({*pass, index});
  }
  std::sort(out.begin(), out.end());
  return out;
}

struct Look {
  QColor fill;
  QColor line; ///< invalid: no outline
};

Look lookOf(const Painting& p, Pass pass) {
  const PictureColors& c = p.colors;
  switch (pass) {
  case Pass::buriedArea:
    return {c.buriedArea, {}};
  case Pass::buriedTrack:
    return {c.buried, {}};
  case Pass::farPad:
    return {Qt::transparent, c.farPad};
  case Pass::farBody:
    return {Qt::transparent, c.farBody};
  case Pass::area:
    return {c.copperArea, {}};
  // Beside a lit net everything else steps back.
  case Pass::track:
    return {p.anyLit ? c.quietCopper : c.copper, {}};
  case Pass::via:
  case Pass::pad:
    return {p.anyLit ? c.quietPad : c.pad, {}};
  case Pass::litArea:
    return {c.litArea, c.lit};
  case Pass::litTrack:
  case Pass::litVia:
    return {c.lit, {}};
  case Pass::litPad:
    return {c.lit, c.litEdge};
  case Pass::body:
    return {Qt::transparent, c.body};
  case Pass::zone:
    return {c.zone, {}};
  }
  return {};
}

/// Copper of a layer that is only hinted at.
Look dimmedLook(const Painting& p, const SceneItem& item, Look look) {
  if (p.dimmed.empty() || !allLayersIn(item, p.dimmed)) return look;
  look.fill.setAlpha(look.fill.alpha() / 4);
  if (look.line.isValid()) look.line.setAlpha(look.line.alpha() / 4);
  return look;
}

void drawWay(QPainter& painter, const QPolygonF& points) {
  if (points.size() == 2)
    painter.drawLine(points[0], points[1]);
  else
    painter.drawPolyline(points);
}

void paintTrack(const Painting& p, const SceneItem& item, Pass pass, const Look& look) {
  QPainter& painter = p.painter;
  const bool lit = pass == Pass::litTrack;
  const double least = p.inMm((lit ? 1.6 : 0.5) * p.unit);
  const double width = std::max(item.width, least);
  if (item.uncertain) {
    // Where it runs is not known: a line that does not look like copper.
    const double thin = p.inMm((lit ? 1.8 : 0.9) * p.unit);
    QPen pen(lit ? look.fill : p.colors.stronger(look.fill), thin, Qt::CustomDashLine, Qt::RoundCap,
             Qt::RoundJoin);
    pen.setDashPattern({0.1, 2.6});
    painter.setPen(pen);
    drawWay(painter, item.points);
    return;
  }
  painter.setPen(QPen(look.fill, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  drawWay(painter, item.points);
}

/// Lit tracks that are not on the side seen have a light core: dashes inside the board, and a whole line, so
/// that they look hollow, on its other side.
void paintCore(const Painting& p, const SceneItem& item) {
  if (item.uncertain || isNear(p, item)) return;
  const bool inside = item.firstLayer > 0 && item.lastLayer < p.content.lastLayer;
  const double width = std::max(item.width, p.inMm(1.6 * p.unit));
  QPen pen(p.colors.litCore, width * 0.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  if (inside) {
    pen = QPen(p.colors.substrate, width * 1.02, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
    const double wide = p.picture(pen.widthF());
    // In the pen's own widths: what is left between the gaps is the dash.
    pen.setDashPattern({std::max(3.0 * p.unit / wide, 0.8), std::max(6.0 * p.unit / wide, 1.8)});
    pen.setDashOffset(-1.0);
  }
  p.painter.setPen(pen);
  drawWay(p.painter, item.points);
}

void paintHole(const Painting& p, const SceneItem& item) {
  if (item.hole.isEmpty() || p.picture(item.hole.width()) < 2.0 * p.unit) return;
  p.painter.setPen(Qt::NoPen);
  p.painter.setBrush(p.colors.hole);
  const double r = std::min(item.hole.width(), item.hole.height()) / 2;
  p.painter.drawRoundedRect(item.hole, r, r);
}

void paintPadPlace(const Painting& p, const SceneItem& item, const Look& look) {
  // Size unknown: a small cross of constant size.
  const double r = p.inMm(2.5 * p.unit);
  const QPointF c = item.box.center();
  p.painter.setPen(QPen(look.fill.alpha() == 0 ? look.line : p.colors.stronger(look.fill), p.inMm(p.unit)));
  p.painter.drawLine(c - QPointF(r, 0), c + QPointF(r, 0));
  p.painter.drawLine(c - QPointF(0, r), c + QPointF(0, r));
}

void paintFilled(const Painting& p, const SceneItem& item, const Look& look) {
  QPen pen(Qt::NoPen);
  if (look.line.isValid()) {
    pen = QPen(look.line, p.inMm(0.6 * p.unit), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    if (item.absent)
      pen.setDashPattern({0.1, 3.0});
    else if (item.kind == ItemKind::body && item.uncertain)
      pen.setDashPattern({4.0, 3.0});
  }
  p.painter.setPen(pen);
  p.painter.setBrush(look.fill.alpha() == 0 ? QBrush(Qt::NoBrush) : QBrush(look.fill));
  const bool coarse = !item.coarse.isEmpty() && p.picture(SceneItem::coarseStep) < 0.7 * p.unit;
  p.painter.drawPath(coarse ? item.coarse : item.path);
  if (item.kind == ItemKind::pad || item.kind == ItemKind::via) paintHole(p, item);
}

void paintItem(const Painting& p, const Visible& visible) {
  const SceneItem& item = p.content.items[visible.index];
  if (p.overlay.overPhoto) return paintOverPhoto(p, item, p.isLit(item));
  Look look = dimmedLook(p, item, lookOf(p, visible.pass));
  // A lit pad of the far side looks hollow, like lit tracks that are not on the side seen.
  if (visible.pass == Pass::litPad && !isNear(p, item)) look = {p.colors.litCore, p.colors.lit};
  switch (item.kind) {
  case ItemKind::track:
    paintTrack(p, item, visible.pass, look);
    break;
  case ItemKind::padPlace:
    paintPadPlace(p, item, look);
    break;
  case ItemKind::zone:
    paintZone(p, item);
    break;
  default:
    paintFilled(p, item, look);
    break;
  }
}

void paintItems(const Painting& p, const std::vector<Visible>& items) {
  p.painter.save();
  p.painter.setTransform(p.toPicture, true);
  auto at = items.begin();
  const auto upTo = [&](Pass last) {
    for (; at != items.end() && at->pass <= last; ++at)
      paintItem(p, *at);
  };
  upTo(Pass::litArea);
  const auto firstLit = at;
  upTo(Pass::litTrack);
  for (auto it = firstLit; it != at && !p.overlay.overPhoto; ++it)
    paintCore(p, p.content.items[it->index]);
  upTo(Pass::zone);
  p.painter.restore();
}

void paintSubstrate(const Painting& p) {
  if (p.content.outline.isEmpty()) return;
  p.painter.save();
  p.painter.setTransform(p.toPicture, true);
  p.painter.setPen(QPen(p.colors.edge, p.inMm(1.0 * p.unit), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  p.painter.setBrush(p.overlay.overPhoto ? QBrush(Qt::NoBrush) : QBrush(p.colors.substrate));
  p.painter.drawPath(p.content.outline);
  p.painter.restore();
}

std::vector<const SceneItem*> chosen(const Painting& p, const std::vector<Visible>& items,
                                     std::initializer_list<Pass> passes) {
  std::vector<const SceneItem*> out;
  for (const Visible& visible : items)
    if (std::find(passes.begin(), passes.end(), visible.pass) != passes.end())
      out.push_back(&p.content.items[visible.index]);
  return out;
}

bool hasBands(const Overlay& overlay) {
  return std::any_of(overlay.lines.begin(), overlay.lines.end(),
                     [](const OverlayLine& line) { return line.style == LineStyle::suspect; });
}

double widestLit(const Painting& p, const std::vector<Visible>& items) {
  double widest = 0;
  for (const Visible& item : items)
    if (item.pass == Pass::litTrack) widest = std::max(widest, p.picture(p.content.items[item.index].width));
  return widest;
}

/// Tracks, vias and pads of the lit net: over the bands that mark what of it is suspected.
std::vector<Visible> litOnes(std::vector<Visible> items) {
  std::erase_if(items,
                [](const Visible& item) { return item.pass < Pass::litTrack || item.pass > Pass::litPad; });
  return items;
}

std::vector<char> flagsFor(const std::vector<LayerId>& wanted, const std::vector<LayerId>& layers) {
  if (wanted.empty()) return {};
  std::vector<char> flags(layers.size(), 0);
  for (std::size_t i = 0; i < layers.size(); ++i)
    flags[i] = std::find(wanted.begin(), wanted.end(), layers[i]) != wanted.end() ? 1 : 0;
  return flags;
}

Painting prepare(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                 const PictureType& type, const PictureColors& colors, const QRectF& part) {
  const BoardScene::Content& content = scene.content();
  Painting p{painter,          content, view, overlay, type, colors, part,
             view.transform(), 1.0,     0,    {},      {},   {},     false};
  p.unit = type.font.pixelSize() / 10.0;
  p.nearLayer = view.side == Side::bottom ? content.lastLayer : 0;
  p.hidden = flagsFor(overlay.hidden, content.layers);
  p.dimmed = flagsFor(overlay.dimmed, content.layers);
  p.lit.assign(content.nets.size(), 0);
  for (const NetId net : overlay.litNets) {
    const auto it = std::lower_bound(content.nets.begin(), content.nets.end(), net);
    if (it == content.nets.end() || *it != net) continue;
    p.lit[static_cast<std::size_t>(it - content.nets.begin())] = 1;
    p.anyLit = true;
  }
  return p;
}

void paintNothingToSee(const Painting& p) {
  p.painter.setFont(p.type.font);
  p.painter.setPen(p.colors.quietInk);
  p.painter.drawText(p.view.frame, Qt::AlignCenter | Qt::TextWordWrap, p.content.nothingToSee);
}

} // namespace

void paintCopper(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                 const PictureType& type, const PictureColors& colors, const QRectF& part) {
  painter.save();
  painter.setClipRect(part, Qt::IntersectClip);
  painter.setRenderHint(QPainter::Antialiasing);
  const Painting p = prepare(painter, scene, view, overlay, type, colors, part);
  paintSubstrate(p);
  paintItems(p, visibleItems(p));
  painter.restore();
}

void paintWords(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                const PictureType& type, const PictureColors& colors) {
  painter.save();
  painter.setClipRect(view.frame, Qt::IntersectClip);
  painter.setRenderHint(QPainter::Antialiasing);
  const Painting p = prepare(painter, scene, view, overlay, type, colors, view.frame);
  if (p.content.extent.empty()) {
    paintNothingToSee(p);
  } else {
    const std::vector<Visible> items = visibleItems(p);
    LabelPlacer placer(view.frame.adjusted(p.unit * 2, p.unit * 2, -p.unit * 2, -p.unit * 2));
    if (overlay.scaleBar) placer.occupy(scaleBarPlate(view, type));
    occupyMarks(p, placer);
    const auto tabs = placeTabs(p, placer);
    const DuePlace due = placeDue(
        p, chosen(p, items, {Pass::body, Pass::pad, Pass::litPad, Pass::litTrack, Pass::litVia}), placer);
    paintSuspectBands(p, placer, widestLit(p, items));
    if (p.anyLit && hasBands(overlay)) paintItems(p, litOnes(items));
    paintItemLabels(p, chosen(p, items, {Pass::body}), chosen(p, items, {Pass::pad, Pass::litPad}), placer);
    paintDrops(p);
    paintLines(p, placer);
    paintMarks(p, placer);
    paintZoneLabels(p, chosen(p, items, {Pass::zone}), placer);
    paintTabs(p, tabs);
    paintDue(p, due);
  }
  painter.restore();
}

void paintBoard(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                const PictureType& type, const PictureColors& colors) {
  paintCopper(painter, scene, view, overlay, type, colors, view.frame);
  paintWords(painter, scene, view, overlay, type, colors);
  if (overlay.scaleBar && !scene.extent().empty()) paintScaleBar(painter, view, type, colors);
}

} // namespace netmend

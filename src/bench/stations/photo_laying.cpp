#include "photo_laying.h"

#include <cmath>

#include <QLocale>
#include <QRegularExpression>

#include "netmend/board/underlay.h"

namespace netmend {

namespace {

/// Zero: that is no length.
double millimetresIn(QString text) {
  bool read = false;
  const double mm = text.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&read);
  return read && mm > 0.1 && mm < 2000.0 ? mm : 0.0;
}

/// The pad or via that a click is at is meant, not the pixel.
Point placeOf(const SketchClick& click, const Lookup& lookup) {
  if (const auto pad = positionOf(lookup, click.pin); pad.known()) return pad.value;
  const CopperAt there = copperAt(lookup.board(), click.at, click.side, click.reach);
  const Via* via = lookup.board().vias.find(there.via);
  return via != nullptr ? via->position : click.at;
}

} // namespace

void PhotoLaying::clickBoard(const Board& board, const SketchClick& click, const Lookup& lookup) {
  const Underlay* photo = board.underlays.find(photo_);
  if (photo == nullptr) return;
  if (by_ == By::corners) {
    if (corners_.size() >= 4) return;
    if (const auto at = PhotoMapping(*photo).toPhoto(click.at)) corners_.push_back(*at);
    return;
  }
  if (!waiting_) return;
  pairs_.push_back({*waiting_, placeOf(click, lookup)});
  waiting_.reset();
}

Result<void> PhotoLaying::typeSize(const QString& text, const Board& board) {
  static const QRegularExpression by(QStringLiteral("\\s*[x×*]\\s*|\\s+"));
  QString plain = text.trimmed();
  if (plain.endsWith(QLatin1String("mm"))) plain.chop(2);
  const QStringList figures = plain.trimmed().split(by, Qt::SkipEmptyParts);
  const double first = figures.isEmpty() ? 0.0 : millimetresIn(figures[0]);
  const double second = figures.size() < 2 ? 0.0 : millimetresIn(figures[1]);
  const Underlay* photo = board.underlays.find(photo_);
  if (corners_.size() == 4 && first > 0.0 && second > 0.0) {
    const Length w = Length::fromMm(first);
    const Length h = Length::fromMm(second);
    // Clockwise as that side is seen, from the upper left; on the board x runs as seen from the top.
    const bool top = photo == nullptr || photo->side == Side::top;
    const Length left = top ? Length() : w;
    const Length right = top ? w : Length();
    outline_ = {{left, h}, {right, h}, {right, {}}, {left, {}}};
    pairs_.clear();
    for (std::size_t i = 0; i < 4; ++i)
      pairs_.push_back({corners_[i], outline_[i]});
    return {};
  }
  if (corners_.size() == 2 && first > 0.0 && figures.size() == 1 && photo != nullptr) {
    // Upright as it is, the first place where it lies now.
    const PhotoMapping mapping(*photo);
    const auto a = mapping.toBoard(corners_[0]);
    const auto b = mapping.toBoard(corners_[1]);
    const double apart = a && b ? distance(*a, *b).mm() : 0.0;
    if (apart <= 0.0) return failure({pattern("core", "both clicks are at the same place")});
    const double scale = first / apart;
    const Point d = *b - *a;
    pairs_ = {
        {corners_[0], *a},
        {corners_[1], {a->x + Length::fromMm(d.x.mm() * scale), a->y + Length::fromMm(d.y.mm() * scale)}}};
    model_ = PhotoModel::similarity;
    return {};
  }
  return failure({pattern("core", "no size of a board"), "", "", text.toStdString(),
                  corners_.size() == 2 ? pattern("core", "how far apart the two are, in mm: 12.7")
                                       : pattern("core", "width and height in mm: 84 x 56")});
}

void PhotoLaying::takeBack() {
  if (waiting_)
    waiting_.reset();
  else if (!pairs_.empty() && by_ == By::pairs)
    pairs_.pop_back();
  else if (!corners_.empty())
    corners_.pop_back();
}

} // namespace netmend

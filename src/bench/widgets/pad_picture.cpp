#include "pad_picture.h"

#include <algorithm>

#include <QHelpEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

#include "letters.h"

namespace netmend {

PadPicture::PadPicture(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Connector as it lies"));
  setObjectName(QStringLiteral("pads"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void PadPicture::setPads(std::vector<PadState> pads, PadWords words) {
  pads_ = std::move(pads);
  words_ = std::move(words);
  std::vector<PadPlace> places;
  std::size_t read = 0, odd = 0;
  for (const PadState& pad : pads_) {
    places.push_back(pad.place);
    read += pad.isRead();
    odd += pad.odd;
  }
  if (places != places_) {
    // Another connector lies as it lies.
    places_ = std::move(places);
    grid_ = padGrid(places_);
    layout_ = {};
    quarters_ = 0;
    mirrored_ = false;
  }
  const auto due = std::find_if(pads_.begin(), pads_.end(), [](const PadState& pad) { return pad.due; });
  setAccessibleDescription(QStringLiteral("%1; %2").arg(
      due == pads_.end() ? tr("no pin is due") : tr("pin %1 is due").arg(due->name),
      tr("%1 of %2 pins read, %3 odd").arg(read).arg(pads_.size()).arg(odd)));
  layOut();
}

void PadPicture::setGood(bool good) {
  if (good == good_) return;
  good_ = good;
  update();
}

void PadPicture::turn() {
  quarters_ = (quarters_ + (grid_.isLong() || grid_.span > 1 ? 2 : 1)) % 4;
  layOut();
}

void PadPicture::mirror() {
  mirrored_ = !mirrored_;
  layOut();
}

void PadPicture::layOut() {
  PadRoom room;
  room.size = size();
  room.unit = faceScale();
  const QFontMetricsF metrics(lettersFont(Letters::small));
  const QFontMetricsF bold(lettersFont(Letters::small, true));
  room.narrowest = bold.horizontalAdvance(QStringLiteral("0.000"));
  for (const PadState& pad : pads_) {
    // A long name gives way to its neighbours; a value does not.
    room.narrowest = std::max(room.narrowest, (pad.odd ? bold : metrics).horizontalAdvance(pad.value));
    room.narrowestLow = std::max(room.narrowestLow, bold.horizontalAdvance(pad.name) + 22 * faceScale());
    room.chart = room.chart || pad.good || pad.goodOl;
  }
  room.narrowest += 2 * faceScale();
  room.firstColumn = layout_.firstColumn;
  room.firstRow = layout_.firstRow;
  const auto due = std::find_if(pads_.begin(), pads_.end(), [](const PadState& pad) { return pad.due; });
  if (due != pads_.end()) room.due = static_cast<std::size_t>(due - pads_.begin());
  layout_ = layPads(turned(grid_, quarters_, mirrored_), room);
  update();
}

void PadPicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  PadWords words = words_;
  if (grid_.inOrder) words.seen = tr("pins in their order");
  if (mirrored_) words.seen += QStringLiteral(", ") + tr("mirrored");
  paintPads(painter, {pads_, words, turned(grid_, quarters_, mirrored_), layout_, good_});
}

void PadPicture::resizeEvent(QResizeEvent*) {
  layOut();
}

std::optional<std::size_t> PadPicture::padAt(QPointF at) const {
  for (const auto* rects : {&layout_.pads, &layout_.small})
    for (std::size_t i = 0; i < rects->size(); ++i)
      if ((*rects)[i].adjusted(-2, -2, 2, 2).contains(at)) return i;
  return std::nullopt;
}

void PadPicture::mousePressEvent(QMouseEvent* event) {
  if (const auto pad = padAt(event->position()); pad && onPad) onPad(*pad);
}

bool PadPicture::event(QEvent* event) {
  if (event->type() == QEvent::FontChange) layOut();
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    const auto pad = padAt(help->pos());
    QToolTip::showText(help->globalPos(),
                       !pad                   ? QString()
                       : pads_[*pad].isRead() ? pads_[*pad].name + QStringLiteral(": ") + pads_[*pad].value
                                              : pads_[*pad].name,
                       this);
    return true;
  }
  return QWidget::event(event);
}

} // namespace netmend

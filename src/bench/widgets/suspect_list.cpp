#include "suspect_list.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QPainter>
#include <QStyledItemDelegate>

#include "face_style.h"
#include "letters.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/words/fault.h"
#include "suspect_letters.h"
#include "tree_layout.h"

namespace netmend {

namespace {

constexpr std::size_t mostListed = 60; ///< the rest together is below what anybody acts on
constexpr double leastListed = 0.005;
constexpr int rowRole = Qt::UserRole;

QString shareText(double probability) {
  if (probability < leastListed) return QStringLiteral("< 1 %");
  if (probability > 0.995) return QStringLiteral("> 99 %"); // nothing is certain
  return QStringLiteral("%1 %").arg(std::max(1L, std::lround(probability * 100.0)));
}

QVariantList packed(const SuspectRow& row) {
  return {row.letter, row.share, row.probability, row.words, row.detail, row.leading};
}

SuspectRow unpacked(const QVariantList& list) {
  return {list[0].toString(),
          list[1].toString(),
          list[2].toDouble(),
          list[3].toString(),
          list[4].toString(),
          list[5].toBool(),
          false};
}

class SuspectDelegate : public QStyledItemDelegate {
public:
  using QStyledItemDelegate::QStyledItemDelegate;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
    return {scaled(200), scaled(suspectRowHeight)};
  }
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const FaceColors& colors = faceColors(faceTheme());
    const bool selected = (option.state & QStyle::State_Selected) != 0;
    const bool keyed = (option.state & QStyle::State_HasFocus) != 0;
    // The first one is looked at by itself: only what somebody has chosen is marked.
    if (selected && (keyed || index.row() > 0)) {
      painter->fillRect(option.rect, colors.accentTint);
      painter->fillRect(QRect(option.rect.topLeft(), QSize(scaled(4), option.rect.height())), colors.accent);
    }
    paintSuspectRow(*painter, option.rect, unpacked(index.data(rowRole).toList()));
    painter->fillRect(
        QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), std::max(1, scaled(1))),
        colors.line);
  }
};

} // namespace

void paintLetter(QPainter& painter, const QRectF& plate, const QString& letter, double pixels) {
  const FaceColors& colors = faceColors(faceTheme());
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colors.card, plate.height() / 13.0));
  painter.setBrush(colors.odd);
  painter.drawRoundedRect(plate, plate.height() / 9.0, plate.height() / 9.0);
  QFont font = faceFont(pixels);
  font.setBold(true);
  painter.setFont(font);
  painter.setPen(colors.plate);
  painter.drawText(plate, Qt::AlignCenter, letter);
  painter.restore();
}

void paintSuspectRow(QPainter& painter, const QRect& rect, const SuspectRow& row) {
  const FaceColors& colors = faceColors(faceTheme());
  const int gap = scaled(16);
  const auto centred = [&](int x, int width, int height) {
    return QRect(x, rect.top() + (rect.height() - height) / 2, width, height);
  };
  painter.save();
  int x = rect.left() + scaled(face::margin);
  if (!row.letter.isEmpty())
    paintLetter(painter, centred(x, scaled(letterPlate), scaled(letterPlate)), row.letter,
                face::textLetters * faceScale());
  x += scaled(letterPlate) + gap / 2;
  painter.setFont(lettersFont(Letters::metre, row.leading));
  painter.setPen(row.rest ? colors.quiet : colors.ink);
  const int share = scaled(84);
  painter.drawText(centred(x, share, rect.height()), Qt::AlignRight | Qt::AlignVCenter, row.share);
  x += share + gap;
  const QRect frame = centred(x, scaled(104), scaled(20));
  const int full = static_cast<int>(std::lround(frame.width() * std::clamp(row.probability, 0.0, 1.0)));
  painter.setPen(QPen(colors.outline, colors.hair * faceScale()));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(frame.adjusted(0, 0, -1, -1));
  painter.setPen(QPen(colors.ink, colors.hair * faceScale()));
  painter.setBrush(colors.oddFill);
  if (full > 1) painter.drawRect(QRect(frame.topLeft(), QSize(full, frame.height())).adjusted(0, 0, -1, -1));
  x += frame.width() + gap;
  const int right = rect.right() - scaled(face::margin);
  const QFontMetrics small(lettersFont(Letters::small));
  painter.setFont(lettersFont(Letters::reading, row.leading));
  const QFontMetrics metrics(painter.font());
  const int detail = row.detail.isEmpty() ? 0 : small.horizontalAdvance(row.detail) + gap;
  const bool detailed = detail > 0 && x + metrics.horizontalAdvance(row.words) + detail <= right;
  const int room = right - x - (detailed ? detail : 0);
  painter.setPen(row.rest ? colors.quiet : colors.ink);
  // Long words in small letters, on two lines where it takes them.
  if (metrics.horizontalAdvance(row.words) > room) painter.setFont(lettersFont(Letters::small, row.leading));
  if (room > 0)
    painter.drawText(centred(x, room, rect.height()),
                     Qt::AlignLeft | Qt::AlignVCenter | static_cast<int>(Qt::TextWordWrap), row.words);
  if (detailed) {
    painter.setFont(lettersFont(Letters::small));
    painter.setPen(colors.quiet);
    painter.drawText(centred(right - detail, detail, rect.height()), Qt::AlignRight | Qt::AlignVCenter,
                     row.detail);
  }
  painter.restore();
}

SuspectList::SuspectList(QWidget* parent) : QListWidget(parent) {
  setObjectName(QStringLiteral("suspects"));
  setAccessibleName(tr("Suspects, likeliest first"));
  setItemDelegate(new SuspectDelegate(this));
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFrameShape(QFrame::NoFrame);
  viewport()->setAutoFillBackground(false);
  setResizeMode(QListView::Adjust);
}

void SuspectList::setFault(const FaultCase* fault, const std::vector<std::string>& letters, bool all) {
  const QSignalBlocker quiet(this);
  clear();
  rest_ = {};
  if (fault == nullptr) return;
  const std::vector<Suspect>& ranked = fault->suspects.ranked;
  std::size_t others = 0;
  for (std::size_t i = 0; i < ranked.size(); ++i) {
    const Suspect& suspect = ranked[i];
    const FoundFault found = toFoundFault(fault->isolation.classes[suspect.faultClass], fault->names);
    if (i >= (all ? mostListed : letteredSuspects) || (i > 0 && suspect.probability < leastListed && !all)) {
      rest_.probability += suspect.probability;
      others += std::max<std::size_t>(1, suspect.places.size());
      continue;
    }
    SuspectRow row;
    if (i < letters.size()) row.letter = QString::fromStdString(letters[i]);
    row.probability = suspect.probability;
    row.share = shareText(suspect.probability);
    row.words = besidePicture(headlineOf(found));
    if (const Said more = othersSaid(found); !more.empty()) row.detail = besidePicture(more);
    row.leading = i == 0;
    const QString text = row.share + QStringLiteral("  ") + row.words +
                         (row.detail.isEmpty() ? QString() : QStringLiteral(", ") + row.detail);
    auto* item = new QListWidgetItem(text, this);
    item->setData(rowRole, packed(row));
    item->setToolTip(text);
    if (!row.letter.isEmpty())
      item->setData(Qt::AccessibleTextRole, row.letter + QStringLiteral(": ") + text);
  }
  if (others == 0) return;
  rest_.rest = true;
  rest_.share = shareText(rest_.probability);
  rest_.words = tr("%n other place(s)", nullptr, static_cast<int>(others));
}

int SuspectList::wantedHeight() const {
  return count() * scaled(suspectRowHeight);
}

std::optional<std::size_t> SuspectList::chosen() const {
  if (currentRow() < 0) return std::nullopt;
  return static_cast<std::size_t>(currentRow());
}

void SuspectList::choose(std::size_t suspect) {
  if (suspect < static_cast<std::size_t>(count())) setCurrentRow(static_cast<int>(suspect));
}

} // namespace netmend

#include "suspect_list.h"

#include <algorithm>

#include <QCoreApplication>
#include <QPainter>
#include <QStyledItemDelegate>

#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/words/fault.h"
#include "tree_layout.h"

namespace netmend {

namespace {

constexpr std::size_t mostListed = 60; ///< the rest together is below what anybody acts on
constexpr int probabilityRole = Qt::UserRole;
constexpr int reportedRole = Qt::UserRole + 1;
constexpr int wordsRole = Qt::UserRole + 2;

/// Where a row's share, bar and words are.
struct RowParts {
  QRect share;
  QRectF bar;
  QRect words;
  RowParts(const QRect& row, const QFontMetrics& metrics) {
    const QRect box = row.adjusted(8, 3, -8, -3);
    const int figures = metrics.horizontalAdvance(QStringLiteral("99.9 %")) * 3 / 2;
    const int length = metrics.averageCharWidth() * 8;
    share = {box.left(), box.top(), figures, box.height()};
    bar = {box.left() + figures + 10.0, box.center().y() - 7.0, static_cast<double>(length), 14.0};
    words = box.adjusted(figures + length + 24, 0, 0, 0);
  }
};

/// Paints by the list's palette, so that it follows every theme; the bar alone has a picture's colour.
class SuspectDelegate : public QStyledItemDelegate {
public:
  SuspectDelegate(const PictureTheme* theme, QObject* parent) : QStyledItemDelegate(parent), theme_(theme) {}

  /// As many lines as its words take in the list's width.
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const auto* list = qobject_cast<const QListWidget*>(option.widget);
    const int width = list != nullptr ? list->viewport()->width() : option.rect.width();
    const RowParts parts(QRect(0, 0, width, 100), option.fontMetrics);
    const int height = QFontMetrics(fontOf(option, index))
                           .boundingRect(0, 0, std::max(parts.words.width(), 20), 10000, Qt::TextWordWrap,
                                         index.data(wordsRole).toString())
                           .height();
    return {option.fontMetrics.averageCharWidth() * 30,
            std::max(height, option.fontMetrics.lineSpacing() * 3 / 2) + 8};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const bool selected = (option.state & QStyle::State_Selected) != 0;
    const bool reported = index.data(reportedRole).toBool();
    const double probability = index.data(probabilityRole).toDouble();
    const QPalette& palette = option.palette;
    painter->save();
    painter->fillRect(option.rect, selected ? palette.highlight() : palette.base());
    const QColor ink = selected ? palette.highlightedText().color() : palette.text().color();
    const RowParts parts(option.rect, option.fontMetrics);
    QFont large = option.font;
    large.setBold(reported);
    if (reported) large.setPointSizeF(large.pointSizeF() * 1.15);
    painter->setFont(large);
    painter->setPen(ink);
    painter->drawText(parts.share, Qt::AlignRight | Qt::AlignVCenter,
                      index.data(Qt::DisplayRole).toString().section(QStringLiteral("  "), 0, 0));
    paintBar(*painter, parts.bar, probability, ink);
    painter->setFont(fontOf(option, index));
    painter->drawText(parts.words, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap,
                      index.data(wordsRole).toString());
    if ((option.state & QStyle::State_HasFocus) != 0) {
      painter->setPen(QPen(ink, 1, Qt::DotLine));
      painter->drawRect(option.rect.adjusted(1, 1, -2, -2));
    }
    painter->restore();
  }

private:
  void paintBar(QPainter& painter, const QRectF& frame, double probability, const QColor& ink) const {
    const PictureColors colors = pictureColors(*theme_);
    painter.fillRect(frame, colors.paper);
    painter.fillRect(QRectF(frame.topLeft(), QSizeF(frame.width() * probability, frame.height())),
                     colors.suspect);
    painter.setPen(QPen(ink, 1));
    painter.drawRect(frame);
  }

  static QFont fontOf(const QStyleOptionViewItem& option, const QModelIndex& index) {
    QFont words = option.font;
    words.setItalic(!index.data(reportedRole).toBool());
    return words;
  }

  const PictureTheme* theme_;
};

} // namespace

SuspectList::SuspectList(QWidget* parent) : QListWidget(parent) {
  setObjectName(QStringLiteral("suspects"));
  setAccessibleName(QCoreApplication::translate("netmend::SuspectList", "Suspects, likeliest first"));
  setItemDelegate(new SuspectDelegate(&theme_, this));
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn); // rows are laid out by the width that they will have
  setResizeMode(QListView::Adjust);
}

void SuspectList::setTheme(PictureTheme theme) {
  theme_ = theme;
  viewport()->update();
}

void SuspectList::setFault(const FaultCase* fault) {
  const QSignalBlocker quiet(this);
  clear();
  if (fault == nullptr) return;
  const Suspects& suspects = fault->suspects;
  for (std::size_t i = 0; i < suspects.ranked.size() && i < mostListed; ++i) {
    const Suspect& suspect = suspects.ranked[i];
    const bool reported = i < suspects.setSize;
    const QString share = suspicionText(suspect.probability);
    if (share.isEmpty() && !reported && i >= 3) break;
    const FoundFault found = toFoundFault(fault->isolation.classes[suspect.faultClass], fault->names);
    const Said others = othersSaid(found);
    const QString words = besidePicture(headlineOf(found)) +
                          (others.empty() ? QString() : QStringLiteral(",\n") + besidePicture(others));
    auto* item = new QListWidgetItem(
        (share.isEmpty() ? QStringLiteral("< 0.5 %") : share) + QStringLiteral("  ") + words, this);
    item->setData(probabilityRole, suspect.probability);
    item->setData(reportedRole, reported);
    item->setData(wordsRole, words);
    item->setToolTip(words);
  }
}

std::optional<std::size_t> SuspectList::chosen() const {
  if (currentRow() < 0) return std::nullopt;
  return static_cast<std::size_t>(currentRow());
}

void SuspectList::choose(std::size_t suspect) {
  if (suspect < static_cast<std::size_t>(count())) setCurrentRow(static_cast<int>(suspect));
}

} // namespace netmend

#pragma once

#include <QHBoxLayout>
#include <QPainter>
#include <QWidget>

#include "bench/widgets/letters.h"
#include "bench/widgets/suspect_list.h"

namespace netmend {

/// The last row under the suspects: all others together, and at its right what can be asked for.
class OthersRow : public QWidget {
public:
  explicit OthersRow(QWidget* parent) : QWidget(parent), buttons_(new QHBoxLayout(this)) {
    setObjectName(QStringLiteral("otherSuspects"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setScaledHeight(*this, suspectRowHeight);
    buttons_->setContentsMargins(0, 0, 0, 0);
    buttons_->addStretch(1);
  }
  void add(QWidget* button) { buttons_->addWidget(button, 0, Qt::AlignVCenter); }
  void setRow(const SuspectRow& row) {
    row_ = row;
    setAccessibleName(row.words.isEmpty() ? QString() : row.share + QLatin1Char(' ') + row.words);
    update();
  }
  [[nodiscard]] const SuspectRow& row() const { return row_; }

protected:
  void paintEvent(QPaintEvent*) override {
    buttons_->setContentsMargins(0, 0, scaled(face::margin), 0);
    buttons_->setSpacing(scaled(face::grid));
    if (row_.words.isEmpty()) return;
    int right = width();
    for (const QWidget* button : findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly))
      if (button->isVisible()) right = std::min(right, button->x());
    QPainter painter(this);
    paintSuspectRow(painter, QRect(0, 0, right + scaled(face::grid), height()), row_);
  }

private:
  QHBoxLayout* buttons_;
  SuspectRow row_;
};

} // namespace netmend

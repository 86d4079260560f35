#pragma once

#include <QScrollArea>

namespace netmend {

/// What does not fit is scrolled to; the keyboard stays with what is in it.
[[nodiscard]] inline QScrollArea* scrolled(QWidget* content, QWidget* parent) {
  auto* area = new QScrollArea(parent);
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setFocusPolicy(Qt::NoFocus);
  area->setWidget(content);
  return area;
}

} // namespace netmend

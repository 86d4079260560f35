#include "face_style.h"

#include <QAbstractButton>
#include <QApplication>
#include <QPainter>
#include <QPointer>
#include <QStyleOption>

#include "letters.h"
#include "netmend/drawing/face.h"

namespace netmend {

namespace {

struct Panel {
  QColor fill;
  QColor outline;
  int width;
  Qt::PenStyle line = Qt::SolidLine;
};

void paintPanel(QPainter& painter, const QRect& rect, const Panel& panel) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(panel.outline, panel.width, panel.line));
  painter.setBrush(panel.fill);
  const qreal half = panel.width / 2.0;
  painter.drawRoundedRect(QRectF(rect).adjusted(half, half, -half, -half), face::round, face::round);
  painter.restore();
}

bool has(const QWidget* widget, const char* property) {
  return widget != nullptr && widget->property(property).toBool();
}

Panel buttonPanel(const FaceColors& colors, QStyle::State state, bool isMain, bool isLater) {
  const bool enabled = state.testFlag(QStyle::State_Enabled) && !isLater;
  Panel panel{colors.card, colors.outline, colors.hair, enabled ? Qt::SolidLine : Qt::DashLine};
  if (isMain && enabled) {
    panel.fill = panel.outline = colors.accent;
    if (state.testFlag(QStyle::State_Sunken)) panel.fill = colors.ink;
    if (state.testFlag(QStyle::State_HasFocus)) panel.outline = colors.ink;
    return panel;
  }
  if (state.testFlag(QStyle::State_On))
    panel.fill = panel.outline = colors.ink;
  else if (state.testFlag(QStyle::State_Sunken))
    panel.fill = colors.shade;
  if (state.testFlag(QStyle::State_HasFocus)) {
    panel.outline = colors.accent;
    panel.width = colors.edge;
  }
  return panel;
}

} // namespace

FaceStyle::FaceStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

void FaceStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                              const QWidget* widget) const {
  const FaceColors& colors = faceColors(theme_);
  const bool focus = option->state.testFlag(State_HasFocus);
  const Panel field{colors.field, focus ? colors.accent : colors.outline, focus ? colors.edge : colors.hair};
  switch (element) {
  case PE_PanelButtonCommand:
    return paintPanel(
        *painter, option->rect,
        buttonPanel(colors, option->state, has(widget, "netmendMain"), has(widget, "netmendLater")));
  case PE_PanelLineEdit:
    return paintPanel(*painter, option->rect, field);
  case PE_FrameLineEdit:
    return; // the panel has it
  case PE_Frame: {
    Panel frame = field;
    frame.fill = Qt::transparent;
    // A card: nothing is typed into it.
    if (widget != nullptr && widget->backgroundRole() == QPalette::Button) frame.outline = colors.line;
    return paintPanel(*painter, option->rect, frame);
  }
  case PE_FrameFocusRect:
    if (qobject_cast<const QAbstractButton*>(widget) != nullptr) return; // its outline says so
    break;
  default:
    break;
  }
  QProxyStyle::drawPrimitive(element, option, painter, widget);
}

void FaceStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                            const QWidget* widget) const {
  if (element != CE_HeaderSection && element != CE_HeaderEmptyArea)
    return QProxyStyle::drawControl(element, option, painter, widget);
  // Flat, with a rule below. Fusion's gradients are drawn by threads, which a window that starts waits for.
  const FaceColors& colors = faceColors(theme_);
  painter->fillRect(option->rect, colors.card);
  painter->setPen(colors.line);
  painter->drawLine(option->rect.bottomLeft(), option->rect.bottomRight());
}

QRect FaceStyle::subElementRect(SubElement element, const QStyleOption* option, const QWidget* widget) const {
  const QRect rect = QProxyStyle::subElementRect(element, option, widget);
  if (element != SE_LineEditContents) return rect;
  const int beside = fieldPadding(); // a letter against the outline is hard to tell from it
  return rect.adjusted(beside, 0, -beside, 0);
}

QRect FaceStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl which,
                                const QWidget* widget) const {
  const QRect rect = QProxyStyle::subControlRect(control, option, which, widget);
  if (control != CC_ComboBox || which != SC_ComboBoxEditField) return rect;
  return rect.adjusted(fieldPadding() / 2, 0, 0, 0);
}

PictureTheme faceTheme() {
  return faceStyle().theme();
}

FaceStyle& faceStyle() {
  static QPointer<FaceStyle> style;
  if (style.isNull()) {
    style = new FaceStyle;
    QApplication::setStyle(style); // which owns it
  }
  return *style;
}

} // namespace netmend

#pragma once

#include <map>
#include <string>
#include <vector>

#include <QAbstractScrollArea>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QFrame>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QWidget>

#include "bench/map/copper_map.h"
#include "drawing/contrast.h"

namespace netmend::testing {

/// What is wrong with a window as somebody sees it, judged by its picture: text that does not stand out from
/// its ground by 4.5 to 1 (WCAG 2.1, success criterion 1.4.3), text that is cut off, panes with nothing in
/// them. Photo and map are left aside.
class Seen {
public:
  explicit Seen(QWidget& window) : window_(window), picture_(window.grab().toImage()) {
    for (QWidget* widget : window.findChildren<QWidget*>()) {
      if (!widget->isVisible() || !widget->isVisibleTo(&window)) continue;
      lookAt(*widget);
    }
  }
  [[nodiscard]] const std::vector<std::string>& faults() const { return faults_; }

private:
  struct Colours {
    QColor ground;         ///< most of it
    double contrast = 1.0; ///< of what stands out most from it
    bool one = true;       ///< nothing but the ground
  };

  void lookAt(const QWidget& widget) {
    if (isOnMap(widget) || isCovered(widget)) return;
    if (const QString text = textOf(widget); !text.isEmpty()) {
      checkContrast(widget, text);
      if (!scrolls(widget)) checkRoom(widget, text);
    }
    checkFilled(widget);
  }

  /// What was told lies over the page until the next key.
  [[nodiscard]] bool isCovered(const QWidget& widget) const {
    const auto* message = window_.findChild<QLabel*>(QStringLiteral("message"));
    return message != nullptr && message != &widget && message->isVisible() &&
           inWindow(*message).intersects(inWindow(widget)) && widget.findChild<QWidget*>() == nullptr;
  }
  static bool isOnMap(const QWidget& widget) {
    for (const QWidget* at = &widget; at != nullptr; at = at->parentWidget())
      if (dynamic_cast<const CopperMap*>(at) != nullptr) return true;
    return false;
  }
  static bool scrolls(const QWidget& widget) {
    for (const QWidget* at = &widget; at != nullptr; at = at->parentWidget())
      if (qobject_cast<const QScrollArea*>(at) != nullptr) return true;
    return false;
  }
  static QString textOf(const QWidget& widget) {
    if (const auto* label = qobject_cast<const QLabel*>(&widget)) return label->text();
    if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) return button->text();
    if (const auto* field = qobject_cast<const QLineEdit*>(&widget))
      return field->text().isEmpty() ? field->placeholderText() : field->text();
    if (const auto* box = qobject_cast<const QComboBox*>(&widget)) return box->currentText();
    return {};
  }

  void report(const QWidget& widget, const std::string& what) {
    const QWidget* named = &widget;
    while (named->objectName().isEmpty() && named->parentWidget() != nullptr)
      named = named->parentWidget();
    faults_.push_back(what + ": " + widget.metaObject()->className() + " \"" + textOf(widget).toStdString() +
                      "\" in " + named->objectName().toStdString() + " " + std::to_string(widget.width()) +
                      "x" + std::to_string(widget.height()));
  }

  [[nodiscard]] QRect inWindow(const QWidget& widget) const {
    QRect rect(widget.mapTo(&window_, QPoint()), widget.size());
    for (const QWidget* at = widget.parentWidget(); at != nullptr && at != &window_; at = at->parentWidget())
      rect &= QRect(at->mapTo(&window_, QPoint()), at->size());
    return rect & picture_.rect();
  }

  [[nodiscard]] Colours coloursIn(const QRect& rect) const {
    constexpr int fewest = 3; // pixels: fewer are a smoothed edge
    std::map<QRgb, int> counts;
    for (int y = rect.top(); y <= rect.bottom(); ++y)
      for (int x = rect.left(); x <= rect.right(); ++x)
        ++counts[picture_.pixel(x, y)];
    Colours out;
    int most = 0;
    for (const auto& [colour, count] : counts)
      if (count > most) {
        most = count;
        out.ground = QColor(colour);
      }
    for (const auto& [colour, count] : counts)
      if (count >= fewest) out.contrast = std::max(out.contrast, contrastRatio(QColor(colour), out.ground));
    out.one = counts.size() <= 1;
    return out;
  }

  void checkContrast(const QWidget& widget, const QString& text) {
    const QRect rect = inWindow(widget).adjusted(4, 4, -4, -4);
    if (rect.isEmpty()) return;
    const double contrast = coloursIn(rect).contrast;
    if (contrast < 4.5 && !text.trimmed().isEmpty()) report(widget, "contrast " + std::to_string(contrast));
  }

  void checkRoom(const QWidget& widget, const QString& text) {
    if (inWindow(widget).size() != widget.size()) return report(widget, "outside of its pane");
    if (const auto* label = qobject_cast<const QLabel*>(&widget)) {
      const int needed =
          label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
      if (label->height() < needed) report(widget, "cut off below, wants " + std::to_string(needed));
      if (!label->wordWrap() && label->width() + 1 < label->sizeHint().width())
        report(widget, "cut off, wants " + std::to_string(label->sizeHint().width()));
      int widest = 0;
      if (label->wordWrap())
        for (const QString& word : text.split(QLatin1Char(' ')))
          widest = std::max(widest, label->fontMetrics().horizontalAdvance(word));
      if (widest > label->width()) report(widget, "a word is wider than its label");
    } else if (const auto* button = qobject_cast<const QPushButton*>(&widget)) {
      const bool step =
          button->objectName().startsWith(QStringLiteral("station")); // shows its number alone then
      if (!step && button->width() < button->sizeHint().width())
        report(widget, "cut off, wants " + std::to_string(button->sizeHint().width()));
    } else if (const auto* field = qobject_cast<const QLineEdit*>(&widget)) {
      if (field->text().isEmpty() && field->fontMetrics().horizontalAdvance(text) > field->width() - 4)
        report(widget, "hint is cut off");
    } else if (const auto* box = qobject_cast<const QComboBox*>(&widget)) {
      if (box->fontMetrics().horizontalAdvance(text) > box->width() - 20) report(widget, "cut off");
    }
  }

  /// Fields are there to be filled; all else has something of its own in it, or takes no room.
  void checkFilled(const QWidget& widget) {
    const bool pane = (qobject_cast<const QFrame*>(&widget) != nullptr &&
                       qobject_cast<const QLabel*>(&widget) == nullptr) ||
                      widget.inherits("QAbstractScrollArea");
    const bool typed = qobject_cast<const QPlainTextEdit*>(&widget) != nullptr;
    if (!pane || typed || widget.width() < 60 || widget.height() < 40) return;
    const QRect rect = inWindow(widget).adjusted(4, 4, -4, -4);
    if (!rect.isEmpty() && coloursIn(rect).one) report(widget, "nothing in it");
  }

  QWidget& window_;
  QImage picture_;
  std::vector<std::string> faults_;
};

} // namespace netmend::testing

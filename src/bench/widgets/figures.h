#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QLabel>
#include <QWidget>

#include "letters.h"
#include "netmend/drawing/overlay.h"

namespace netmend {

/// One bold line that gives up size before it gives up letters, from `most` down to what is read at the
/// station.
class FittingLabel : public QLabel {
public:
  FittingLabel(Letters most, const QString& name, QWidget* parent = nullptr);
  void setWords(const QString& text);
  [[nodiscard]] QSize minimumSizeHint() const override { return {scaled(40), sizeHint().height()}; }

protected:
  void resizeEvent(QResizeEvent* event) override;
  bool event(QEvent* event) override;

private:
  void fit();
  Letters most_;
};

/// Where a value stands beside what good boards read: the range takes a fixed part of the scale, so that one
/// look is enough whatever the range is.
class RangeGauge : public QWidget {
public:
  struct Range {
    double low = 0.0;
    double high = 0.0;
  };
  explicit RangeGauge(QWidget* parent = nullptr);
  /// None: nothing to compare with.
  void setRanges(std::vector<Range> ranges);
  /// None: nothing is read now, or OL.
  void setValue(std::optional<double> value);
  /// Part of the width, from the left; what is off the scale stands at its end.
  [[nodiscard]] double share(double value) const;

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  std::vector<Range> ranges_;
  std::optional<double> value_;
};

/// A reading: its pin, its shape and its value.
struct TakenPin {
  QString pin;   ///< "21"
  QString value; ///< "0.633 V"
  QString said;  ///< "in range"
  MarkShape shape = MarkShape::hollow;
};

/// The reading that was taken last. Its text, for who does not see it: pin, value and verdict with three
/// spaces between.
class TakenLabel : public QLabel {
public:
  explicit TakenLabel(const QString& name, QWidget* parent = nullptr);
  /// None: nothing.
  void setTaken(const std::optional<TakenPin>& taken, const QString& label);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return {scaled(80), sizeHint().height()}; }

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  std::optional<TakenPin> taken_;
};

/// Odd pins in one line: as many as there is room for, and how many more. A click goes to one.
class OddList : public QWidget {
public:
  explicit OddList(QWidget* parent = nullptr);
  struct Odd {
    TakenPin pin;
    std::size_t point = 0;
  };
  void setOdd(std::vector<Odd> odd);
  std::function<void(std::size_t point)> onOdd;
  [[nodiscard]] QSize sizeHint() const override { return {scaled(200), scaled(28)}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {scaled(60), scaled(28)}; }

protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

private:
  /// Widths of those that fit; `more` is what is left.
  [[nodiscard]] std::vector<int> widths() const;
  std::vector<Odd> odd_;
};

} // namespace netmend

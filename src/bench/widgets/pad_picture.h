#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QCoreApplication>
#include <QWidget>

#include "netmend/drawing/overlay.h"
#include "pad_layout.h"

class QPainter;

namespace netmend {

/// One of a connector's pins as it is drawn.
struct PadState {
  QString name; ///< "22", "B33"
  PadPlace place;
  QString value;              ///< as read, without its unit; empty: not read
  std::optional<double> read; ///< none: OL, or not read
  MarkShape shape = MarkShape::hollow;
  bool odd = false;
  bool due = false;
  bool skipped = false;
  bool noNet = false;
  struct Range {
    double low = 0.0;
    double high = 0.0;
  };
  std::optional<Range> good; ///< what good boards read
  bool goodOl = false;       ///< they read OL

  [[nodiscard]] bool isRead() const { return !value.isEmpty(); }
};

/// What stands on the connector's body.
struct PadWords {
  QString name;  ///< "J4"
  QString seen;  ///< how it lies
  QString count; ///< how many are read
  QString zero;  ///< the chart's floor: "0 V"
};

/// A connector as one picture: each pad keeps its number, its shape and its value, and the charts of both
/// sides stand on their pads. It can be turned and mirrored until it lies as the board under the microscope.
class PadPicture : public QWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::PadPicture)

public:
  explicit PadPicture(QWidget* parent = nullptr);
  void setPads(std::vector<PadState> pads, PadWords words);
  /// The bench's ground is the good board's.
  void setGood(bool good);
  void turn(); ///< by a quarter, clockwise; what is long by two
  void mirror();
  [[nodiscard]] bool mirrored() const { return mirrored_; }
  [[nodiscard]] const std::vector<PadState>& pads() const { return pads_; }
  /// As it is drawn now.
  [[nodiscard]] const PadLayout& layout() const { return layout_; }
  std::function<void(std::size_t)> onPad; ///< a pad was clicked, in either size
  [[nodiscard]] QSize sizeHint() const override { return {1000, 300}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {200, 60}; }

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  bool event(QEvent* event) override;

private:
  void layOut();
  [[nodiscard]] std::optional<std::size_t> padAt(QPointF at) const;
  std::vector<PadState> pads_;
  PadWords words_;
  std::vector<PadPlace> places_; ///< that `grid_` is of
  PadGrid grid_;
  PadLayout layout_;
  bool good_ = false;
  int quarters_ = 0;
  bool mirrored_ = false;
};

/// What there is to paint of it.
struct PadScene {
  const std::vector<PadState>& pads;
  const PadWords& words;
  const PadGrid& grid; ///< as turned
  const PadLayout& layout;
  bool good = false;
};
void paintPads(QPainter& painter, const PadScene& scene);

/// Height in a chart of what a pin reads: in range within its box, else above or below it.
[[nodiscard]] double chartHeight(const PadChart& chart, const PadState& pad, bool onFloor);
/// What good boards read is next to nothing beside what they read elsewhere.
[[nodiscard]] bool readsNothing(const PadState& pad, double highest);

} // namespace netmend

#pragma once

#include <functional>
#include <memory>
#include <vector>

#include <QWidget>

#include "netmend/drawing/board_photo.h"

namespace netmend {

/// A photo as it was taken, to click places in: the wheel comes nearer, dragging moves it.
class PhotoInset : public QWidget {
public:
  explicit PhotoInset(QWidget* parent = nullptr);
  /// Null: nothing to be seen.
  void showPhoto(std::shared_ptr<const BoardPhoto> photo);
  /// Numbered, in this order.
  void setPlaces(std::vector<PhotoPoint> places);
  std::function<void(PhotoPoint)> onClick;

  /// Where a place of the photo is in the widget.
  [[nodiscard]] QPointF placeOf(PhotoPoint at) const;
  [[nodiscard]] QSize sizeHint() const override { return {360, 240}; }

protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  void fit();
  std::shared_ptr<const BoardPhoto> photo_;
  std::vector<PhotoPoint> places_;
  double scale_ = 1.0; ///< widget pixels a photo pixel
  QPointF offset_;
  QPointF pressedAt_;
  QPointF draggedTo_;
  bool dragged_ = false;
};

} // namespace netmend

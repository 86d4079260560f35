#pragma once

#include <functional>
#include <memory>
#include <optional>

#include <QWidget>

#include "netmend/board/lookup.h"
#include "netmend/drawing/board_scene.h"

namespace netmend {

/// The picture of a board to pan and zoom in. Drag or arrow keys pan, wheel and + − zoom at the pointer
/// or the middle, F fits, Tab turns the board over, X sees through it, a click lights the net under the
/// pointer.
class BoardCanvas : public QWidget {
public:
  explicit BoardCanvas(QWidget* parent = nullptr);

  void setBoard(Board board);
  [[nodiscard]] bool hasBoard() const { return board_ != nullptr; }
  [[nodiscard]] const Board* board() const { return board_.get(); }
  [[nodiscard]] const BoardView& view() const { return view_; }
  [[nodiscard]] const Overlay& overlay() const { return overlay_; }
  void fit();
  void flip();
  void seeThrough(bool on);

  /// Told what the pointer is over, in words.
  std::function<void(const QString&)> onPlace;

  [[nodiscard]] QSize sizeHint() const override { return {1100, 700}; }

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool focusNextPrevChild(bool next) override;

private:
  void light(QPointF at);
  void tellPlace(QPointF at);

  std::unique_ptr<Board> board_; ///< on the heap: scene and lookup keep its address
  std::unique_ptr<BoardScene> scene_;
  BoardView view_;
  Overlay overlay_;
  std::optional<QPointF> pressedAt_;
  QPointF draggedTo_;
  bool dragged_ = false;
  bool fitted_ = true; ///< nobody has panned or zoomed: keep all of the board in sight
};

} // namespace netmend

#pragma once

#include <memory>

#include <QCoreApplication>
#include <QImage>
#include <QWidget>

#include "netmend/drawing/board_scene.h"
#include "netmend/drawing/overlay.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// A piece of the board, painted once for each size and theme, beside the event loop: until it is, its ground
/// is seen.
class BoardClip : public QWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::BoardClip)

public:
  explicit BoardClip(QWidget* parent = nullptr);
  ~BoardClip() override;
  /// `plate` names the place, along the lower edge; empty: none.
  void showPlace(const Box& box, Side side, Overlay overlay, const QString& plate = {});
  /// Null: not made ready yet.
  void setScene(std::shared_ptr<const BoardScene> scene);
  /// Whether what is seen is the picture as it is wanted now.
  [[nodiscard]] bool painted() const { return !picture_.isNull() && pictured_ == wanted(); }
  [[nodiscard]] QSize sizeHint() const override { return {200, 100}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {40, 40}; }

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  /// What a picture depends on beside the place.
  struct Looks {
    int place = 0; ///< counted: another place or another board
    QSize size;
    double ratio = 1;
    double scale = 1;
    PictureTheme theme = PictureTheme::light;
    friend bool operator==(const Looks&, const Looks&) = default;
  };
  struct Asked;
  [[nodiscard]] Looks wanted() const;
  void ask(const Looks& looks);
  std::shared_ptr<const BoardScene> scene_;
  Box box_;
  Side side_ = Side::top;
  Overlay overlay_;
  QString plate_;
  int place_ = 0;
  QImage picture_;
  Looks pictured_;
  std::shared_ptr<Asked> asked_; ///< the last picture asked for; null: none
};

} // namespace netmend

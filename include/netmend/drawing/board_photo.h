#pragma once

#include <memory>
#include <vector>

#include <QImage>
#include <QTransform>

#include "netmend/board/board.h"

namespace netmend {

/// A photo made ready to be painted at any scale: itself, and smaller and smaller ones, each half as large.
class BoardPhoto {
public:
  explicit BoardPhoto(const QImage& image);
  [[nodiscard]] QSize size() const { return levels_.front().size(); }
  /// The smallest one that has at least so many pixels where the photo has one.
  [[nodiscard]] const QImage& levelFor(double pixelsPerPhotoPixel) const;
  [[nodiscard]] const QImage& whole() const { return levels_.front(); }

private:
  std::vector<QImage> levels_; ///< RGB32
};

/// A photo under a board, with where it lies. Values that never change once made.
struct ShownPhoto {
  Underlay underlay;
  std::shared_ptr<const BoardPhoto> photo;
  friend bool operator==(const ShownPhoto&, const ShownPhoto&) = default;
};

/// Paints the photo over what `onto` shows; `toBoard` is from its pixels to millimetres on the board. Tones
/// are pressed together, so that none is near ink or paper: what is drawn stays apart from what is seen. Of a
/// lie that is not known, nothing.
void paintPhoto(QImage& onto, const QTransform& toBoard, const ShownPhoto& shown);

} // namespace netmend

#pragma once

#include <optional>
#include <vector>

#include <QString>

#include "bench/session/bench_drawing.h"

namespace netmend {

/// A photo on its way to its place: what has been clicked of it so far.
class PhotoLaying {
public:
  enum class By {
    corners, ///< of the board, clicked in the photo where it lies; their places are typed as a size
    pairs    ///< a place in the photo, then the same on the board
  };

  PhotoLaying(UnderlayId photo, By by) : photo_(photo), by_(by) {}

  [[nodiscard]] UnderlayId photo() const { return photo_; }
  [[nodiscard]] By by() const { return by_; }

  /// A click on the board where the photo lies now, or beside it; the second half of a pair.
  void clickBoard(const Board& board, const SketchClick& click, const Lookup& lookup);
  /// A click in the photo itself.
  void clickPhoto(PhotoPoint at) { waiting_ = at; }
  /// `84 x 56` after four corners, from the upper left one clockwise; `12.7` after two: they are so far
  /// apart. Fails where that was not said.
  [[nodiscard]] Result<void> typeSize(const QString& text, const Board& board);
  void takeBack();

  [[nodiscard]] const std::vector<PhotoPoint>& corners() const { return corners_; }
  [[nodiscard]] const std::optional<PhotoPoint>& waiting() const { return waiting_; }
  [[nodiscard]] const std::vector<PhotoPair>& pairs() const { return pairs_; }
  [[nodiscard]] std::optional<PhotoModel> model() const {
    return model_ ? model_ : richestModel(pairs_.size());
  }
  [[nodiscard]] bool wantsSize() const {
    return by_ == By::corners && pairs_.empty() && (corners_.size() == 2 || corners_.size() == 4);
  }
  /// The board's size as it was typed: its outline.
  [[nodiscard]] const Ring& outline() const { return outline_; }

private:
  UnderlayId photo_;
  By by_;
  std::vector<PhotoPoint> corners_;
  std::optional<PhotoPoint> waiting_; ///< a place in the photo whose place on the board comes next
  std::vector<PhotoPair> pairs_;
  std::optional<PhotoModel> model_;
  Ring outline_;
};

} // namespace netmend

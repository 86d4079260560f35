#pragma once

#include <memory>
#include <optional>

#include <QFont>
#include <QPainter>

#include "netmend/base/error.h"
#include "netmend/drawing/board_view.h"
#include "netmend/drawing/overlay.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// A board made ready for painting again and again: outlines worked out once, kept in a spatial
/// index, so that a frame costs what it shows. Holds its own copy of what it needs; made anew
/// after an edit.
class BoardScene {
public:
  explicit BoardScene(const Board& board);
  BoardScene(BoardScene&&) noexcept;
  BoardScene& operator=(BoardScene&&) noexcept;
  ~BoardScene();

  struct Content;
  [[nodiscard]] const Content& content() const { return *content_; }
  [[nodiscard]] const Box& extent() const;

  /// The pad under a place, smallest first, on the side seen or through it; none: zero.
  [[nodiscard]] PadId padAt(Point place, Side side) const;
  /// What else is there, as far as the picture shows it: the net of the smallest copper and the part with
  /// the smallest body on the side seen; without any there and `through`, those behind it. None: zero.
  struct Found {
    NetId net;
    PartId part;
  };
  [[nodiscard]] Found foundAt(Point place, Side side, bool through) const;
  /// The side that has to be up to touch a pad or copper there; none: either, or nothing is known there.
  [[nodiscard]] std::optional<Side> sideTouched(Point place) const;
  /// The box of the place itself, its pad where there is one, with the part it belongs to or the nearest one,
  /// no further than `reach` from the place.
  [[nodiscard]] Box around(Point place, Side side, Length reach) const;

private:
  std::unique_ptr<Content> content_;
};

/// Letters of the picture. The size is the font's pixel size, taken as picture units.
struct PictureType {
  QFont font;
  double smallest = 7.0; ///< labels that would have to be smaller are left out
};

/// The face's letters (`faceFont`); `size` in picture units.
[[nodiscard]] PictureType pictureType(double size);

/// Paints what the view's frame shows, clipped to it. The painter's units are the view's.
void paintBoard(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                const PictureType& type, const PictureColors& colors = {});

/// `paintBoard` in its steps, for who keeps the picture of each. First the board itself, with lit nets and
/// zones: what is painted at a place does not depend on where the frame ends, so that pictures of parts
/// can be put side by side. `part` is what of the view's picture is wanted.
void paintCopper(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                 const PictureType& type, const PictureColors& colors, const QRectF& part);
/// Then names, lines, marks and labels, kept off the place of the scale bar.
void paintWords(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                const PictureType& type, const PictureColors& colors);
/// Last the scale bar, with the side that is seen.
void paintScaleBar(QPainter& painter, const BoardView& view, const PictureType& type,
                   const PictureColors& colors);

/// All of the board, small: outline and larger parts, the part that `view` shows framed and the due place as
/// a dot. It lies as the view does.
void paintInset(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                const QRectF& box, const PictureColors& colors);

/// The same for a single picture.
void paintBoard(QPainter& painter, const Board& board, const BoardView& view, const Overlay& overlay);

/// All of the board (or of `part` of it) as a PNG file of the given size in pixels, written atomically.
/// Needs a QGuiApplication. Fails when the size is not between 16 and 20000 pixels or the file cannot be
/// written.
struct PngOptions {
  int width = 1600;
  int height = 1200;
  Side side = Side::top;
  Box part; ///< empty: all
};
[[nodiscard]] Result<void> renderPng(const std::string& path, const Board& board, const Overlay& overlay,
                                     const PngOptions& options = {});

} // namespace netmend

#pragma once

#include <optional>
#include <vector>

#include <QFontMetricsF>
#include <QPainter>
#include <QTransform>

#include "label_placer.h"
#include "scene_content.h"

/// What the steps of painting a board share. Lengths on the picture are multiples of `unit`, a tenth of
/// the letters' size, so that screen and paper look alike.
namespace netmend {

struct Painting {
  QPainter& painter;
  const BoardScene::Content& content;
  const BoardView& view;
  const Overlay& overlay;
  const PictureType& type;
  const PictureColors& colors;
  QRectF part;          ///< of the picture, wanted
  QTransform toPicture; ///< from mm, y up
  double unit = 1.0;
  int nearLayer = 0;
  std::vector<char> lit;    ///< by dense net
  std::vector<char> hidden; ///< by dense layer
  std::vector<char> dimmed; ///< by dense layer
  bool anyLit = false;

  [[nodiscard]] bool isLit(const SceneItem& item) const { return item.net < lit.size() && lit[item.net]; }
  [[nodiscard]] double picture(double mmLength) const { return mmLength * view.scale.value; }
  /// `picture` units in mm, for pens under the transform.
  [[nodiscard]] double inMm(double pictureLength) const { return pictureLength / view.scale.value; }
  [[nodiscard]] QFont fontOf(double size) const;
  /// Room for an upright text within a box on the board, seen on the picture round its middle.
  [[nodiscard]] QRectF roomIn(const QRectF& box) const;
};

/// A text fitted into a box of the picture.
struct FittedText {
  QFont font;
  bool upright = true; ///< otherwise turned by a quarter
  QSizeF size;
};
/// Nothing when the text would have to be smaller than legible.
[[nodiscard]] std::optional<FittedText> fitText(const Painting& p, const QString& text, QSizeF room,
                                                double largest, bool mayTurn);

/// References in bodies and names on pads, where they are legible.
void paintItemLabels(const Painting& p, const std::vector<const SceneItem*>& bodies,
                     const std::vector<const SceneItem*>& pads, LabelPlacer& placer);
/// Drawn on a photo, whose copper stays to be seen: a dark core in a light edge. A pad with a net is filled.
void paintOverPhoto(const Painting& p, const SceneItem& item, bool lit);
void paintZone(const Painting& p, const SceneItem& zone);
void paintZoneLabels(const Painting& p, const std::vector<const SceneItem*>& zones, LabelPlacer& placer);
/// Where the scale bar stands.
[[nodiscard]] QRectF scaleBarPlate(const BoardView& view, const PictureType& type);
/// Stretches that may be broken, beneath the net whose tracks are at most so wide on the picture.
void paintSuspectBands(const Painting& p, LabelPlacer& placer, double widest);
/// What is dropped along copper, over it.
void paintDrops(const Painting& p);
void paintLines(const Painting& p, LabelPlacer& placer);
/// Keeps labels off the marks; before any label is placed.
void occupyMarks(const Painting& p, LabelPlacer& placer);
void paintMarks(const Painting& p, LabelPlacer& placer);

/// The due place: the ring round its pad and where the plate with its name goes, which is the side with the
/// most free board.
struct DuePlace {
  const OverlayMark* mark = nullptr; ///< none: nothing is due, or it is outside the frame
  QPointF at;
  double ring = 0; ///< its radius
  QRectF plate;
};
[[nodiscard]] DuePlace placeDue(const Painting& p, const std::vector<const SceneItem*>& around,
                                LabelPlacer& placer);
void paintDue(const Painting& p, const DuePlace& due);
/// What is due or suspected outside the frame, as a tab at its edge.
struct EdgeTab {
  QRectF box;
  int edge = 0; ///< left, right, top, bottom
  QString name;
  QString away;
  bool due = false;
};
[[nodiscard]] std::vector<EdgeTab> placeTabs(const Painting& p, LabelPlacer& placer);
void paintTabs(const Painting& p, const std::vector<EdgeTab>& tabs);

} // namespace netmend

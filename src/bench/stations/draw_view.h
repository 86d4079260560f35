#pragma once

#include <array>
#include <memory>
#include <optional>

#include <QElapsedTimer>

#include "bench/map/copper_map.h"
#include "draw_line.h"
#include "photo_laying.h"
#include "station.h"

class QLabel;
class QPushButton;

namespace netmend {

class PhotoInset;

/// Drawing a board: what is due, what is in hand, and what the drawing is good for. It lends the map its
/// hand; the line stands above the map.
class DrawView : public QWidget {
  Q_OBJECT

public:
  explicit DrawView(Desk desk, QWidget* parent = nullptr);

  [[nodiscard]] DrawLine& line() { return *line_; }
  [[nodiscard]] std::shared_ptr<const CopperMap::Hand> hand() const { return hand_; }
  /// What the linked meter should measure: ohms while one lead is held at a net.
  [[nodiscard]] ReadingMode wantedMode() const { return ReadingMode::ohms; }
  void take(const ReadingEvent& event);
  void setTheme(PictureTheme theme);
  /// Whether a meter is linked, which says what the ringed pin reads.
  void setMetered(bool metered);

  void addPhoto(const QString& file);
  /// An image or a table from the clipboard.
  void paste();
  void choosePhoto();
  /// Another description of the board, to be brought into the drawing.
  void mergeFile(const QString& file);
  void arrive();

Q_SIGNALS:
  void told(const QString& text, bool isError);
  void mapWanted();         ///< the keyboard belongs to the map
  void mapStale();          ///< what is painted over it is another
  void straightenedOnMap(); ///< the photo lies elsewhere now: all of it should be in sight
  void leaveWanted();

private:
  [[nodiscard]] QLayout* keys();
  [[nodiscard]] QPushButton* keyButton(const QString& text, Qt::Key key, SketchKey means);
  [[nodiscard]] bool pressKey(const QKeyEvent& event, const MapPointer& at);
  [[nodiscard]] bool layingKey(int key);
  [[nodiscard]] bool mergingKey(int key);
  void beginMerge(const QString& name, std::shared_ptr<const Board> file);
  void decide(std::optional<MergeDifference::Right> right);
  void showMerging();
  void act(SketchKey key);
  bool press(const MapPointer& at);
  void stroke(const MapPointer& at, bool done);
  bool wheel(double steps, Qt::KeyboardModifiers modifiers);
  [[nodiscard]] SketchClick clickAt(const MapPointer& at) const;
  void lineTyped(const QString& text);
  void photoAdded(UnderlayId photo);
  void lay(PhotoLaying::By by);
  void straighten();
  void takeLaying();
  [[nodiscard]] const Underlay* underlayInHand() const;
  [[nodiscard]] bool hasStraightPhoto(Side side) const;
  void refresh();
  void showDue();
  void showWorth();
  [[nodiscard]] QStringList factsInHand() const;
  void showLaying();
  void paintHand(QPainter& painter, const BoardView& view) const;
  void paintLaying(QPainter& painter, const BoardView& view) const;

  Desk desk_;
  PictureColors colors_;
  DrawLine* line_;
  std::shared_ptr<const CopperMap::Hand> hand_;
  QLabel* due_;
  QLabel* help_;
  QLabel* facts_;
  QLabel* members_;
  PhotoInset* inset_;
  struct WorthLabels {
    QLabel* what = nullptr;
    QLabel* more = nullptr;
  };
  std::array<WorthLabels, 3> worth_{};
  std::vector<std::pair<QPushButton*, SketchKey>> buttons_;
  QPushButton* layTake_ = nullptr;
  std::vector<QPushButton*> mergeButtons_;
  bool metered_ = false;
  MapPointer pointer_;
  std::optional<SketchClick> pressed_; ///< where a stroke or a move began
  Ring strokeWay_;
  struct Merging {
    QString name;
    std::shared_ptr<const Board> file;
    MergePlan plan;
    std::size_t at = 0; ///< the difference that is asked about; all of them: the whole is
  };
  std::optional<Merging> merging_;
  std::optional<PhotoLaying> laying_;
  std::optional<Straightened> straightened_;
  std::optional<Length> edgesOff_;
};

} // namespace netmend

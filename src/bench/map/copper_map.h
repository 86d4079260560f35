#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include <QCoreApplication>
#include <QTimer>
#include <QVariantAnimation>
#include <QWidget>

#include "map_follow.h"
#include "map_search.h"
#include "netmend/board/board.h"
#include "netmend/drawing/board_photo.h"
#include "netmend/drawing/board_view.h"
#include "netmend/drawing/overlay.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend {

struct MapBoard;
struct MapStyle;
struct PictureType;
class MapPicture;

/// What is under the pointer, or under the cross in the middle when the keys are used.
struct MapPlace {
  Point at;
  PinId pin;    ///< none: no pad there
  NetId net;    ///< of the pin or of the copper there; none where nothing is or it is not known
  PartId part;  ///< of the pin, or the one whose body is there
  QString text; ///< all of this in words, with the pin's last verdict
};

/// Where the pointer is on the board.
struct MapPointer {
  Point at;
  Side side = Side::top;
  Length reach; ///< that a click may slip, at this scale
  Qt::KeyboardModifiers modifiers;
};

enum class LayerShow { whole, dimmed, hidden };

struct MapMeasure {
  Point from;
  Point to;
};

/// The picture of a board to find one's way in.
///
/// Drag or arrow keys move, wheel and + − zoom at the pointer or the middle, F shows all, T turns the board
/// over, X sees through it, R and L rotate by a quarter and , . by 5 degrees, 0 stands it upright again and
/// shows all, M measures between two places, Return does at the middle what a click does at the pointer. A
/// click lights the net under the pointer. Tab goes on to the next widget.
///
/// The view follows what is due (`viewFollowing`) until somebody pans or zooms; then it is theirs until
/// something else is due. An inset shows where on the board one is when not all of it is in sight. Widgets
/// may stand over the map as its children: labels keep off them.
///
/// The picture is put together from tiles that a thread of its own paints, so that moving never waits; until
/// a tile is ready the nearest one there is stands in for it, scaled.
class CopperMap : public QWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::CopperMap)

public:
  explicit CopperMap(QWidget* parent = nullptr);
  ~CopperMap() override;

  enum class Keep { nothing, view };
  /// Shows a board. What it takes to paint it is worked out beside the event loop; until then the board
  /// shown before stays (`Keep::view`, for a board that was edited: view, lit nets and layers stay too) or
  /// the map says that it is at it. Null: no board.
  void setBoard(std::shared_ptr<const Board> board, Keep keep = Keep::nothing);
  void setBoard(Board board, Keep keep = Keep::nothing);
  [[nodiscard]] bool hasBoard() const { return board_ != nullptr; }
  /// The board last set, whether it can be painted yet or not.
  [[nodiscard]] const Board* board() const { return board_.get(); }

  /// Whether what is shown is the exact picture and nothing stands in for anything.
  [[nodiscard]] bool settled();
  /// Waits until it is, for pictures and tests; false after this long. Blocks.
  bool settle(int milliseconds = 20'000);

  [[nodiscard]] const BoardView& view() const { return view_; }
  void setView(const BoardView& view); ///< its frame is replaced by the widget's
  void fit();
  /// All of the board, as it lies in its file.
  void standUpright();
  void flip();
  /// Where the inset is; empty: there is none, since all of the board is in sight.
  [[nodiscard]] QRectF inset() const;
  void setSide(Side side);
  /// How the board lies: turned counter-clockwise on the screen by so much.
  void setTurn(Degrees turn);
  void seeThrough(bool on);
  [[nodiscard]] bool seesThrough() const { return overlay_.seeThrough; }

  /// Shows the object with its surroundings, from the side that it is on. False when it has no known place
  /// (or the board is still being worked out).
  bool zoomTo(PartId part);
  bool zoomTo(PinId pin);
  bool zoomTo(NetId net);
  /// Zooms to it and lights its net, if it has one.
  bool show(const MapHit& hit);
  /// See `MapIndex::find`. Nothing while the board is still being worked out.
  [[nodiscard]] std::vector<MapHit> find(std::string_view text, std::size_t most = 50) const;

  /// What lies on the board: `litNets`, `lines`, `marks` and `zones` are taken from it. What is the reader's
  /// own choice (see-through, layers) stays as it is.
  void setOverlay(const Overlay& overlay);
  /// What is shown now, the reader's choices included.
  [[nodiscard]] const Overlay& overlay() const { return overlay_; }
  /// Lights these nets and no others: a net, or all nets of a line.
  void light(std::vector<NetId> nets);

  /// Photos that lie under the drawing, each with its side; the later over the earlier. `photoOnly`: nothing
  /// of the drawing is shown.
  void setPhotos(std::vector<ShownPhoto> photos);
  void showPhotoOnly(bool only);

  /// Who draws on the board takes what the pointer and the keys do before the map does.
  struct Hand {
    std::function<bool(const MapPointer&)> click; ///< false: it is the map's
    std::function<bool(const MapPointer&)> press; ///< true: what is drawn from here on is a stroke
    std::function<void(const MapPointer&, bool done)> stroke; ///< where it has come to; done: let go
    std::function<void(const MapPointer&)> move;
    std::function<bool(const QKeyEvent&, const MapPointer&)> key;
    std::function<bool(double steps, Qt::KeyboardModifiers)> wheel;
    std::function<void(QPainter&, const BoardView&)> paint; ///< over everything, in each frame
  };
  /// Null: nobody.
  void setHand(std::shared_ptr<const Hand> hand);

  void setLayerShow(LayerId layer, LayerShow show);
  [[nodiscard]] LayerShow layerShow(LayerId layer) const;

  void setTheme(PictureTheme theme);
  [[nodiscard]] PictureTheme theme() const { return theme_; }

  /// Measuring: two clicks, or Return at the middle twice; Escape leaves it.
  void startMeasuring();
  void stopMeasuring();
  [[nodiscard]] bool measuring() const { return measuring_; }
  /// The last two places, once there are two.
  [[nodiscard]] std::optional<MapMeasure> measured() const;

  /// All may be empty; called in the event loop.
  std::function<void(const MapPlace&)> onPlace;       ///< the pointer or the middle is over another place
  std::function<void(PinId)> onPin;                   ///< a pin was clicked, or Return pressed over it
  std::function<void(const MapMeasure&)> onMeasured;  ///< both places are set
  std::function<void()> onBoardReady;                 ///< the board can be painted and searched
  std::function<void()> onTurned;                     ///< `view().lie()` is another one
  std::function<void()> onLayersChanged;              ///< layers or how they are shown
  std::function<std::vector<NetId>(NetId)> lineOfNet; ///< what a net continues into, to be lit with it
  std::function<QString(PinId)> verdictOf;            ///< the last verdict in words; empty: none

  [[nodiscard]] QSize sizeHint() const override { return {1100, 700}; }

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void takeResults();
  void showReady(std::shared_ptr<const MapBoard> ready);
  void styleChanged();
  void viewChanged();
  /// Somebody moved the view: it stays as it is.
  void takeByHand();
  void aimNow();
  void moveTo(const BoardView& view);
  void noteCovered();
  [[nodiscard]] const std::shared_ptr<const MapStyle>& style();
  bool moveByKey(int key);
  bool turnByKey(int key);
  bool actByKey(int key);
  void zoomBy(double steps, QPointF at);
  bool zoomToBox(Box box, std::optional<Side> side);
  void act(QPointF at);
  void measureAt(QPointF at);
  [[nodiscard]] MapPlace placeAt(QPointF at) const;
  [[nodiscard]] MapPointer pointerAt(QPointF at) const;
  void tellPlace(QPointF at);
  void tellMiddle();
  void paintLive(QPainter& painter);
  void paintMeasure(QPainter& painter, const PictureType& type) const;

  std::shared_ptr<const Board> board_;
  std::shared_ptr<const MapBoard> ready_; ///< what is being shown; null: nothing yet
  std::shared_ptr<const MapStyle> style_; ///< null: something changed
  std::unique_ptr<MapPicture> picture_;
  QTimer refresh_; ///< gathers what the painting thread delivers into few frames
  BoardView view_;
  PictureLie lie_; ///< as it was told last
  Overlay overlay_;
  PictureTheme theme_ = PictureTheme::light;
  PictureColors colors_;
  Keep keep_ = Keep::nothing; ///< of the board being made ready
  std::vector<ShownPhoto> photos_;
  std::shared_ptr<const Hand> hand_; ///< held while it is called: it may go by what it does
  bool photoOnly_ = false;
  bool stroking_ = false;
  std::optional<QPointF> pressedAt_;
  QPointF draggedTo_;
  bool dragged_ = false;
  enum class Aim { all, due, byHand };
  Aim aim_ = Aim::all; ///< what the view keeps in sight
  Followed followed_;  ///< last
  QVariantAnimation motion_;
  BoardView from_; ///< of the motion
  BoardView to_;
  bool byKeys_ = false; ///< the cross in the middle is shown
  bool measuring_ = false;
  std::vector<Point> measure_; ///< up to two places
  QPointF pointer_;
};

} // namespace netmend

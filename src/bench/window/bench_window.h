#pragma once

#include <array>
#include <memory>
#include <vector>

#include <QMainWindow>

#include "bench/map/copper_map.h"
#include "bench/map/map_tools.h"
#include "bench/stations/station.h"
#include "bench/widgets/meter_figure.h"
#include "netmend/meter/linked_meter_source.h"

class QBoxLayout;
class QVBoxLayout;
class QLabel;
class QPushButton;
class QSplitter;
class QStackedWidget;

namespace netmend {

class FootBar;
class Pedals;
class Sounds;
class StillCamera;
class WalkEar;
class WayBar;
enum class FootAct;

/// The bench: the job's way along the top, the station in the middle with the copper map beside it, the one
/// next thing along the bottom. Nothing opens on top of it but what cannot be undone.
class BenchWindow : public QMainWindow {
  Q_OBJECT

public:
  explicit BenchWindow(std::unique_ptr<BenchJob> job);
  ~BenchWindow() override;

  [[nodiscard]] Desk desk() { return {*job_, *walk_, *fault_, *drawing_}; }
  void go(Station station);
  [[nodiscard]] Station station() const { return station_; }
  [[nodiscard]] StationPage& page(Station station);
  [[nodiscard]] CopperMap& map() { return *map_; }
  [[nodiscard]] Sounds& sounds() { return *sounds_; }
  void openBoard(const QString& file);

  /// Links a meter by its address (`tcp:host:port`, `serial:/dev/ttyUSB0`); empty: none.
  void linkMeter(const QString& address);
  [[nodiscard]] const LinkedMeterSource* meter() const { return meter_.get(); }

  void setTheme(PictureTheme theme);
  void setWhy(bool why);
  /// Letters and everything with them, 100 to 300 per cent.
  void setScale(int percent);
  /// What stands at the bottom beside the next thing; empty: nothing.
  [[nodiscard]] QString message() const;
  [[nodiscard]] QString nextText() const;

  /// The last job, where it was left: asked for by main, not by tests.
  void restore();

Q_SIGNALS:
  /// The window has been drawn for the first time: what takes its time can follow.
  void firstPicture();

protected:
  void closeEvent(QCloseEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  QWidget* mapPanel();
  void layOverMap();
  void spaceMap();
  /// Whether there is anything to be seen of the board.
  [[nodiscard]] bool hasPlaces() const;
  [[nodiscard]] StationPage* makePage(Station station);
  void addKeys();
  void showStation(Station station);

  void follow(StationPage& page);
  void refresh();
  void refreshMap();
  void lendMap();
  void draw();
  void sayHowPictureLies();
  /// Sizes follow the window, in steps.
  void followSize();
  void placeMessage();
  void placeMessageAnew();
  [[nodiscard]] bool isNarrow() const;
  /// Gives the keyboard to the map or to the station, and the window where it is too narrow for both.
  void putFirst(bool map);
  void shareRoom();
  void tell(const QString& text, bool isError);
  void meterEvents();
  void showMeter(const LinkStatus& status);
  void showLive(const LiveValue& value);
  void setFigure(const std::optional<LiveFigure>& live);
  /// What is open, in the book.
  void remember();
  [[nodiscard]] Result<void> reopen();
  void askWantedMode();
  void undo();
  void showKeys();
  void askMeter();
  void takeNow();
  void addEar();
  void sayAgain();
  void askPedals();
  /// Whether it was a pedal's press, which has been acted on.
  bool footPressed(const QObject* watched, QEvent* event);
  void doByFoot(FootAct act);
  /// Whether it was the first letter of the connector that is asked for.
  bool typedForBoard(const QKeyEvent& event);
  void addCamera();
  void askCamera();

  std::unique_ptr<BenchJob> job_;
  std::unique_ptr<BenchWalk> walk_;
  std::unique_ptr<BenchFault> fault_;
  std::unique_ptr<BenchDrawing> drawing_;
  std::unique_ptr<LinkedMeterSource> meter_;
  ReadingMode askedMode_ = ReadingMode::diode; ///< what the linked meter was last told to measure
  bool meterWarned_ = false;
  std::optional<LiveFigure> figure_; ///< what the linked meter shows; none: none is linked
  std::unique_ptr<Sounds> sounds_;
  std::unique_ptr<WalkEar> ear_;
  std::unique_ptr<Pedals> pedals_;
  std::unique_ptr<StillCamera> camera_;
  Station station_ = Station::board;
  PictureTheme theme_ = PictureTheme::light;
  bool why_ = false;          ///< reasons and figures are shown
  bool mapFirst_ = false;     ///< where there is room for one of them
  int letters_ = 100;         ///< the person's own, per cent
  double stationShare_ = 0.6; ///< of the width, beside the map
  bool restoring_ = false;    ///< nothing new to remember
  LeftOpen left_;             ///< what the book remembers of this window
  bool painted_ = false;      ///< the first picture is out

  QStackedWidget* pages_;
  WayBar* way_;
  QSplitter* splitter_;
  QWidget* panel_ = nullptr; ///< the map with what belongs to it
  CopperMap* map_;
  std::optional<PictureLie> picture_; ///< as the pages say their places now
  QBoxLayout* bands_ = nullptr;       ///< of the pages, over their whole width
  QBoxLayout* overMap_ = nullptr;     ///< what the page has above the map
  std::string mapped_;                ///< uuid of the board on the map
  MapSearch* search_;
  MapLayers* layers_;
  QLabel* place_;
  FootBar* foot_;
  QLabel* message_; ///< floats over the page, where its reading field is
  QPushButton* nextButton_;
  std::array<StationPage*, stations.size()> made_{}; ///< null: not wanted yet
};

} // namespace netmend

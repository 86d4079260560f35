#pragma once

#include <array>
#include <memory>

#include <QString>
#include <QWidget>

#include "bench/map/copper_map.h"
#include "bench/session/bench_drawing.h"
#include "bench/session/bench_fault.h"
#include "bench/session/bench_job.h"
#include "bench/session/bench_walk.h"
#include "bench/widgets/band.h"
#include "netmend/drawing/overlay.h"
#include "netmend/drawing/picture_colors.h"

class QPushButton;

namespace netmend {

class MeterFigure;

/// The job's way, in order.
enum class Station { bookIn, board, walk, find, bridge, prove, handOver };
inline constexpr std::array<Station, 7> stations{Station::bookIn,  Station::board,  Station::walk,
                                                 Station::find,    Station::bridge, Station::prove,
                                                 Station::handOver};
[[nodiscard]] QString stationName(Station station);

/// Shows reasons and figures, or leaves them out.
inline constexpr Qt::Key whyKey = Qt::Key_F2;
/// Books a new job in, from any station.
inline constexpr QKeyCombination newJobKey = Qt::CTRL | Qt::Key_N;
/// Draws the board, from any station.
inline constexpr Qt::Key drawKey = Qt::Key_F4;

/// What all stations work on.
struct Desk {
  BenchJob& job;
  BenchWalk& walk;
  BenchFault& fault;
  BenchDrawing& drawing;
};

/// Whether the station has what the ones after it need.
[[nodiscard]] bool stationDone(Station station, const Desk& desk);

/// The one thing to do now, and where.
struct NextThing {
  Station station = Station::bookIn;
  QString text;
  QString key{};              ///< what does it, at its station …
  bool keyEverywhere = false; ///< … or at any
};
/// The text with the key, where that works.
[[nodiscard]] QString saidAt(Station here, const NextThing& next);
[[nodiscard]] NextThing nextThing(const Desk& desk);

/// Where the point lies, as far as the board knows.
[[nodiscard]] std::optional<Point> placeOnBoard(const Lookup& lookup, const ProbePoint& point);

/// What is being worked on, for the foot's left end.
struct FootMode {
  BandLook look = BandLook::job;
  QString text;
};

/// One station's page. It reads the desk, follows its signals, and never talks to another page.
class StationPage : public QWidget {
  Q_OBJECT

public:
  explicit StationPage(Desk desk, QWidget* parent = nullptr) : QWidget(parent), desk_(desk) {}

  /// The window came here: put the keyboard where the next key belongs.
  virtual void arrive() { setFocus(); }
  /// Keeps what was typed and waits for a pause; the window is about to go.
  virtual void keepTyped() {}
  /// Something from the linked meter or a pedal. A value of another mode than `wantedMode` is told and not
  /// taken: the point may have changed since the meter was told, and a reading in volts is no reading in
  /// ohms.
  void take(const ReadingEvent& event);
  /// What the meter should be set to here.
  [[nodiscard]] virtual ReadingMode wantedMode() const { return ReadingMode::diode; }
  /// Takes back what was done last, wherever.
  virtual void undo();
  /// What the copper map should show with it.
  [[nodiscard]] virtual Overlay overlay() const { return {}; }
  /// The map stands beside it; else the page has the whole width until the map is asked for. `mapHandChanged`
  /// when that is another answer.
  [[nodiscard]] virtual bool wantsMap() const { return true; }
  /// A pin was clicked in the map.
  virtual void pinChosen(PinId) {}
  virtual void setTheme(PictureTheme theme) { theme_ = theme; }
  /// Who draws on the map while the page is shown, and what stands above it; null: nobody, nothing.
  [[nodiscard]] virtual std::shared_ptr<const CopperMap::Hand> mapHand() const { return nullptr; }
  [[nodiscard]] virtual QWidget* overMap() { return nullptr; }
  /// Over page and map, as wide as the window; made once and the page's own. Null: none.
  [[nodiscard]] virtual QWidget* band() { return nullptr; }
  /// Which board or line is worked on; without a text the station's name.
  [[nodiscard]] virtual FootMode footMode() const { return {}; }
  /// Its keys in the window's foot, made once and the page's own; null: none.
  [[nodiscard]] virtual QWidget* footKeys() { return nullptr; }
  /// Its foot keys hold the way to the next station: the window's own button is not needed.
  [[nodiscard]] virtual bool goesOnItself() const { return false; }
  /// Where the linked meter's value is shown; null: nowhere.
  [[nodiscard]] virtual MeterFigure* meterFigure() { return nullptr; }
  /// Beneath which a message stands: the reading field; null: at the window's foot.
  [[nodiscard]] virtual QWidget* messageAnchor() { return nullptr; }
  /// The picture beside it lies another way: right is left in it, or above.
  virtual void pictureTurned() {}
  /// Whether the reasons and figures behind what is said are shown, too.
  void setWhy(bool why);

Q_SIGNALS:
  /// The overlay is another one.
  void overlayChanged();
  /// What it lends the map is something else; or only what that paints is.
  void mapHandChanged();
  void mapStale();
  /// The keyboard belongs to the map; all of the board should be in sight.
  void mapWanted();
  void allWanted();
  /// To be told beside the next thing; an error until the next key.
  void told(const QString& text, bool isError);
  void goTo(Station station);
  /// The other of the two: with reasons, or without.
  void whyWanted();

protected:
  /// `why_` is another one.
  virtual void showWhy() {}
  /// What the last reading's point read before, where that was something else, and the key that says why;
  /// empty: nothing else.
  [[nodiscard]] QString
  otherwiseWords(const QString& unlessSaid = tr("A slip: %1. I: it comes and goes")) const;
  /// The key: the last reading was no slip, its point comes and goes; once more: a slip after all.
  void sayComesAndGoes();
  /// For pages that have reasons to show: pressed while they are shown.
  [[nodiscard]] QPushButton* makeWhyButton();

  /// A value is of the mode wanted.
  virtual void accept(const ReadingEvent&) {}

  Desk desk_;
  PictureTheme theme_ = PictureTheme::light;
  bool why_ = false;

private:
  QPushButton* whyButton_ = nullptr;
};

} // namespace netmend

#pragma once

#include "bench/widgets/band.h"
#include "bench/widgets/figures.h"
#include "station.h"

class QBoxLayout;
class QComboBox;
class QFrame;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace netmend {

class PadPicture;
class ReadingField;

/// Pin after pin of a connector, on the job's board or on a good one. Letters are commands while the field is
/// empty, so that one key is enough: O is OL, S skips, B goes back, U takes back. What the walk's condition
/// is, who measures and with what is asked once.
class WalkPage : public StationPage {
  Q_OBJECT

public:
  explicit WalkPage(Desk desk, QWidget* parent = nullptr);
  void arrive() override;
  [[nodiscard]] ReadingMode wantedMode() const override { return desk_.walk.mode(); }
  [[nodiscard]] Overlay overlay() const override;
  [[nodiscard]] bool wantsMap() const override { return false; }
  void pinChosen(PinId pin) override;
  [[nodiscard]] FootMode footMode() const override;
  [[nodiscard]] QWidget* footKeys() override { return footKeys_; }
  [[nodiscard]] MeterFigure* meterFigure() override { return meter_; }
  [[nodiscard]] QWidget* messageAnchor() override;
  /// Keeps the good walk; the job's board is next.
  void keep();

Q_SIGNALS:
  /// What was read and what is due is to be heard.
  void sayAgain();
  /// The meter's present value is wanted (footswitch, Space): the window asks its link.
  void takeNow();

protected:
  void showWhy() override;
  void accept(const ReadingEvent& event) override;
  void resizeEvent(QResizeEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  void makeBand();
  QWidget* condition();
  QWidget* figures();
  QLayout* dueFigure();
  QWidget* takenFigure();
  QWidget* makeFootKeys();
  void makePartList();
  bool command(int key);
  void typed();
  void run(const Result<void>& done);
  void refresh();
  void showBand();
  void showParts();
  void choosePart();
  void partChosen();
  void showDue();
  void showMeter();
  void showVerdict();
  void showOdd();
  [[nodiscard]] std::vector<OddList::Odd> oddPins() const;
  void showPads();
  /// By the room there is: captions, charts and the last figure go before what is due and what it reads.
  void arrange();
  [[nodiscard]] bool roomy() const;
  void keepWho();
  void askCondition();
  /// What was asked for again was about another walk.
  void forgetAsked();
  void startWithCondition();
  /// With the first reading, for who did not press Enter behind it.
  void conditionAsTyped();

  Band* band_;
  QPushButton* partButton_;
  QPushButton* conditionButton_;
  QPushButton* other_;
  QListWidget* parts_;
  QComboBox* mode_;
  QFrame* conditionBox_;
  QLayout* questions_ = nullptr;
  QWidget* lies_ = nullptr; ///< how the picture lies
  QLineEdit* plugged_;
  QLineEdit* temperature_;
  QComboBox* profile_; ///< of the meter
  QLineEdit* by_;
  QWidget* body_; ///< beneath the band; on a good board there are stripes beside it
  QWidget* figures_ = nullptr;
  QLabel* nextCaption_;
  FittingLabel* point_;
  FittingLabel* net_;
  QLabel* lead_;
  ReadingField* field_;
  MeterFigure* meter_;
  RangeGauge* gauge_;
  QLabel* expectedCaption_;
  FittingLabel* expected_;
  QBoxLayout* second_ = nullptr; ///< column of the meter's figure
  QBoxLayout* third_ = nullptr;
  QBoxLayout* row_ = nullptr;  ///< of the three figures
  QBoxLayout* head_ = nullptr; ///< of the last one
  QBoxLayout* good_ = nullptr; ///< what good boards read
  QWidget* lastRule_ = nullptr;
  QWidget* last_ = nullptr; ///< what was taken last, and what is odd
  TakenLabel* taken_;
  QLabel* explanation_;
  QLabel* oddCaption_;
  OddList* odd_;
  QPushButton* reread_ = nullptr; ///< the first of them, on a good board
  QLabel* reasons_;
  PadPicture* pads_;
  QWidget* footKeys_ = nullptr;
  QPushButton* overLimit_ = nullptr;
  QPushButton* skip_ = nullptr;
  QPushButton* back_ = nullptr;
  QPushButton* keep_ = nullptr;     ///< while it is not complete
  QPushButton* keepMain_ = nullptr; ///< when it is
  QPushButton* again_ = nullptr;
  QPushButton* shift_ = nullptr;
  QPushButton* map_ = nullptr;
  bool filling_ = false;
  bool conditionWanted_ = false; ///< asked for again
};

} // namespace netmend

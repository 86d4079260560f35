#pragma once

#include "bench/widgets/pictures.h"
#include "station.h"

class QBoxLayout;
class QComboBox;
class QFrame;
class QLabel;
class QLineEdit;
class QPushButton;

namespace netmend {

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
  void pinChosen(PinId pin) override;
  void setTheme(PictureTheme theme) override;
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

private:
  QLayout* head();
  QWidget* condition();
  QLayout* now();
  void arrangeNow();
  QLayout* entry();
  bool command(int key);
  void typed();
  void run(const Result<void>& done);
  void refresh();
  void showParts();
  void showDue();
  void showVerdict();
  void showConnector();
  void keepWho();
  void askCondition();
  /// What was asked for again was about another walk.
  void forgetAsked();
  void startWithCondition();
  /// With the first reading, for who did not press Enter behind it.
  void conditionAsTyped();
  [[nodiscard]] std::vector<ConnectorPin> connectorPins() const;

  QLabel* band_;
  QPushButton* other_;
  QComboBox* part_;
  QComboBox* mode_;
  QFrame* conditionBox_;
  QLineEdit* plugged_;
  QLineEdit* temperature_;
  QComboBox* meter_;
  QLineEdit* by_;
  QLabel* point_;
  QLabel* lead_;
  QLabel* expected_;
  QBoxLayout* now_ = nullptr;   ///< words and connector
  QBoxLayout* words_ = nullptr; ///< what is due, and the result
  QWidget* result_ = nullptr;   ///< the last verdict, where there is one
  ConnectorView* connector_;
  VerdictMark* mark_;
  QLabel* verdict_;
  QLabel* explanation_;
  ReadingField* field_;
  QPushButton* keep_ = nullptr;
  QPushButton* again_ = nullptr;
  QPushButton* shift_ = nullptr;
  StripView* strip_;
  bool filling_ = false;
  bool conditionWanted_ = false; ///< asked for again
};

} // namespace netmend

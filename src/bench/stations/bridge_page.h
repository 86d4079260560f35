#pragma once

#include "station.h"

class QLabel;
class QPushButton;
class QStackedWidget;

namespace netmend {

class OddStrip;
class ProposalsView;
class StepsView;

/// How it is repaired. First the ways to bridge the break, one beneath the other; once one is accepted (or
/// another repair chosen) its work steps, one by one, with what each check must read.
class BridgePage : public StationPage {
  Q_OBJECT

public:
  explicit BridgePage(Desk desk, QWidget* parent = nullptr);
  void arrive() override;
  [[nodiscard]] ReadingMode wantedMode() const override;
  [[nodiscard]] Overlay overlay() const override;
  void pictureTurned() override;
  [[nodiscard]] bool wantsMap() const override { return !choosing(); }
  [[nodiscard]] FootMode footMode() const override;
  [[nodiscard]] QWidget* footKeys() override;
  [[nodiscard]] MeterFigure* meterFigure() override;
  [[nodiscard]] QWidget* messageAnchor() override;

protected:
  void showWhy() override;
  void accept(const ReadingEvent& event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void makeKeys();
  void connectViews();
  void showChoosing(bool choose);
  [[nodiscard]] bool choosing() const;
  void refresh();
  void chooseOdd(std::size_t index);
  void showStrip();

  OddStrip* strip_;
  QPushButton* byHand_;
  QLabel* repair_;
  QStackedWidget* views_;
  ProposalsView* proposals_;
  StepsView* work_;
  QWidget* keys_; ///< while a way is chosen
  QPushButton* toWork_ = nullptr;
  QPushButton* take_ = nullptr;
};

} // namespace netmend

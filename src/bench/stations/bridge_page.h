#pragma once

#include "station.h"

class QStackedWidget;

namespace netmend {

class ProposalsView;
class StepsView;

/// How it is repaired. First the ways to bridge the break, side by side; once one is accepted (or another
/// repair chosen) its work steps, one by one, with what each check must read.
class BridgePage : public StationPage {
  Q_OBJECT

public:
  explicit BridgePage(Desk desk, QWidget* parent = nullptr);
  void arrive() override;
  [[nodiscard]] ReadingMode wantedMode() const override;
  [[nodiscard]] Overlay overlay() const override;
  void pictureTurned() override;

protected:
  void showWhy() override;
  void accept(const ReadingEvent& event) override;
  void keyPressEvent(QKeyEvent* event) override;

private:
  void showChoosing(bool choose);
  [[nodiscard]] bool choosing() const;
  void refresh();

  QStackedWidget* views_;
  ProposalsView* proposals_;
  StepsView* work_;
};

} // namespace netmend

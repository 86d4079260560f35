#pragma once

#include <optional>
#include <vector>

#include "netmend/casework/proof.h"
#include "station.h"

class QFrame;
class QLabel;
class QVBoxLayout;
class QPushButton;

namespace netmend {

class OddStrip;
class ReadingField;
class FunctionChecks;
class ProofTable;
class VerdictMark;

/// What was odd, where the wire ends and what lies beside it, measured again beside the earlier readings;
/// then the functions the device is for. Says at every moment whether the repair is proved, or what is still
/// open.
class ProvePage : public StationPage {
  Q_OBJECT

public:
  explicit ProvePage(Desk desk, QWidget* parent = nullptr);
  void arrive() override;
  void pictureTurned() override { refresh(); }
  void undo() override;
  [[nodiscard]] ReadingMode wantedMode() const override;
  [[nodiscard]] Overlay overlay() const override;
  void pinChosen(PinId pin) override;
  void setTheme(PictureTheme theme) override;
  [[nodiscard]] QWidget* band() override { return state_; }
  [[nodiscard]] FootMode footMode() const override;
  /// What is due and what is read; all else goes first (`layOut`).
  [[nodiscard]] QSize minimumSizeHint() const override;
  [[nodiscard]] QWidget* footKeys() override { return keys_; }
  [[nodiscard]] MeterFigure* meterFigure() override { return figure_; }
  [[nodiscard]] QWidget* messageAnchor() override;

protected:
  bool event(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void showWhy() override;
  void accept(const ReadingEvent& event) override;

private:
  /// A point that stays the same while the list of points is made anew.
  struct Place {
    ProbePoint point;
    ProbePoint other;
    ReadingMode mode = ReadingMode::diode;
    friend bool operator==(const Place&, const Place&) = default;
  };
  static Place placeOf(const ProofPoint& point) { return {point.point, point.other, point.mode}; }

  QWidget* dueCard();
  QLayout* lastRead();
  void makeKeys();
  void layOut(); ///< to the room and to the letters' scale
  void fitPoint();
  bool command(int key);
  void typed();
  void reading(std::optional<double> value);
  void skip();
  void goTo(std::size_t point);
  void goToOpen(std::size_t from);

  void refresh();
  void readPoints();
  void showState();
  void showDue();
  void showLast();
  [[nodiscard]] std::vector<std::size_t> skippedPoints() const;
  [[nodiscard]] const ProofPoint* due() const;
  [[nodiscard]] std::optional<std::size_t> duePoint() const;

  Band* state_;
  QLabel* functionsLeft_;
  OddStrip* strip_;
  QLabel* caption_;
  QLabel* point_;
  QLabel* lead_;
  QLabel* must_;
  VerdictMark* mark_;
  QLabel* verdict_;
  QLabel* explanation_;
  ReadingField* field_;
  MeterFigure* figure_;
  QWidget* keys_;
  QWidget* lastRow_ = nullptr;
  QFrame* card_ = nullptr;
  QVBoxLayout* body_ = nullptr;
  QPushButton* comesAndGoes_ = nullptr;
  QPushButton* overLimit_ = nullptr;
  QPushButton* skip_ = nullptr;
  ProofTable* table_;
  FunctionChecks* functions_;
  std::vector<ProofPoint> points_;
  std::vector<Place> skipped_;
  std::optional<Place> due_;
  std::optional<Place> last_; ///< read last: its verdict stands in large
  JobId job_;
};

} // namespace netmend

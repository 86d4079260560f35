#pragma once

#include <functional>
#include <optional>

#include <QWidget>

class QLabel;

namespace netmend {

class ReadingField;
class SettleBar;

/// What a linked meter shows now.
struct LiveFigure {
  QString value;                  ///< with its unit
  QString state;                  ///< one word: what the hand has to do
  double settled = 0.0;           ///< 0 to 1: how long it has been still, of the time wanted
  bool taken = false;             ///< the probe may be lifted
  std::optional<double> number{}; ///< the value in SI units; none: OL, or nothing is read
};

/// The place of a reading: which meter and mode, and in the largest letters what it reads. With a linked
/// meter that is the live value, with a bar that fills until it is taken; what is typed takes its place, and
/// without one it is the field for typing. The field always has the keys.
class MeterFigure : public QWidget {
public:
  /// Takes the field in.
  explicit MeterFigure(ReadingField* field, QWidget* parent = nullptr);
  void setCaption(const QString& text);
  /// Where there is little room it goes without.
  void setCaptioned(bool captioned);
  /// None: no meter is linked.
  void setLive(const std::optional<LiveFigure>& live);
  [[nodiscard]] bool linked() const { return linked_; }
  std::function<void(std::optional<double>)> onValue; ///< what the linked meter reads now

private:
  bool linked_ = false;
  ReadingField* field_;
  QLabel* caption_;
  QLabel* state_;
  SettleBar* bar_;
};

} // namespace netmend

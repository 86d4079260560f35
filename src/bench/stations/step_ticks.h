#pragma once

#include <functional>
#include <vector>

#include <QWidget>

namespace netmend {

enum class TickState { open, done, due, failed, overruled };

/// All steps of a repair in one row: done ticked, the due one filled, one that read wrong with a thick edge.
class StepTicks : public QWidget {
public:
  explicit StepTicks(QWidget* parent = nullptr);
  void setStates(std::vector<TickState> states);
  [[nodiscard]] const std::vector<TickState>& states() const { return states_; }
  std::function<void(std::size_t)> onStep; ///< one was clicked
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

private:
  [[nodiscard]] QRect boxOf(std::size_t index) const;
  std::vector<TickState> states_;
};

} // namespace netmend

#pragma once

#include <functional>
#include <vector>

#include <QWidget>

class QHBoxLayout;
class QPushButton;

namespace netmend {

/// The job's way along the top: done has a solid rule and a tick, here is a filled block, later a dotted
/// rule, so that it reads without colour. Where there is no room for all names, only the place that one is at
/// has its own.
class WayBar : public QWidget {
public:
  struct Step {
    QString name;
    bool done = false;
    bool here = false;
    friend bool operator==(const Step&, const Step&) = default;
  };

  explicit WayBar(std::size_t steps, QWidget* parent = nullptr);
  /// Which job, and what it is about, in two lines.
  void setJob(const QString& number, const QString& device);
  void setSteps(const std::vector<Step>& steps);
  std::function<void(std::size_t)> onStep;

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool event(QEvent* event) override;

private:
  void layOut();
  [[nodiscard]] int jobWidth() const;
  QString number_;
  QString device_;
  std::vector<Step> steps_;
  std::vector<QPushButton*> buttons_;
  QHBoxLayout* row_;
};

} // namespace netmend

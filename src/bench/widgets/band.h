#pragma once

#include <vector>

#include <QWidget>

#include "netmend/drawing/face.h"

class QHBoxLayout;
class QLabel;
class QPainter;
class QPushButton;

namespace netmend {

/// What a band says by pattern besides its words: the job's board is solid, a good one striped, not proved
/// hollow.
enum class BandLook { job, good, open, plain };

/// The ground of such a band; text on it is in `bandInk`.
void paintBand(QPainter& painter, const QRect& rect, BandLook look, const FaceColors& colors);
[[nodiscard]] QColor bandInk(BandLook look, const FaceColors& colors);

/// A full-width band: a state in capitals, what it is about, and at its right what can be done about it. On
/// stripes the words stand on plates.
class Band : public QWidget {
public:
  explicit Band(const QString& name, QWidget* parent = nullptr);
  void set(BandLook look, const QString& title, const QString& words);
  [[nodiscard]] BandLook look() const { return look_; }
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString words() const;
  /// From left to right; its buttons have the band's ground and ink.
  void add(QPushButton* button);
  void add(QLabel* words);

protected:
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;

private:
  void paintWords();
  BandLook look_ = BandLook::job;
  QLabel* title_;
  QLabel* words_;
  QHBoxLayout* row_;
  std::vector<QPushButton*> buttons_;
};

} // namespace netmend

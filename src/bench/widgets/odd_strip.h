#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QCoreApplication>
#include <QPushButton>
#include <QWidget>

#include "netmend/board/ids.h"
#include "netmend/drawing/overlay.h"

class QLabel;

namespace netmend {

/// A pin of the job's board that read odd, as its box says it.
struct OddPin {
  PinId pin;     ///< none: a point that the board does not have
  QString label; ///< "J4.9"
  QString word;  ///< "open", "low 0.212"; once mended its value
  QString net;   ///< may be empty
  MarkShape shape = MarkShape::gap;
  bool mended = false;
  friend bool operator==(const OddPin&, const OddPin&) = default;
};

/// What is left to mend: a box for each odd pin with its shape, what it read, its net and its key. As many as
/// fit, the chosen one always; where not all do, first the nets go, then the last boxes, which "+12" lists.
class OddStrip : public QWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::OddStrip)

public:
  explicit OddStrip(QWidget* parent = nullptr);
  void setPins(std::vector<OddPin> pins);
  [[nodiscard]] const std::vector<OddPin>& pins() const { return pins_; }
  void setChosen(std::optional<std::size_t> chosen);
  [[nodiscard]] std::optional<std::size_t> chosen() const { return chosen_; }
  /// What stands at its right end.
  void addRight(QWidget* widget);
  /// How many have no box.
  [[nodiscard]] std::size_t hiddenCount() const;
  std::function<void(std::size_t)> onChosen; ///< by a click or by its key

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  bool event(QEvent* event) override;

private:
  class Box;
  void layOut();
  [[nodiscard]] std::vector<std::size_t> fitting(int room, bool nets) const;
  void listHidden();

  std::vector<OddPin> pins_;
  std::optional<std::size_t> chosen_;
  QLabel* caption_;
  std::vector<Box*> boxes_;
  QPushButton* more_;
  std::vector<QWidget*> right_;
};

} // namespace netmend

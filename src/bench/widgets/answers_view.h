#pragma once

#include <vector>

#include <QString>
#include <QWidget>

namespace netmend {

/// What one answer of the meter would mean.
struct AnswerRow {
  QString reads;                ///< "near 0.645", "OL again"
  QString then;                 ///< "leaves"
  std::vector<QString> letters; ///< of the suspects that are left
  QString after{};              ///< "key I if it comes and goes"
  friend bool operator==(const AnswerRow&, const AnswerRow&) = default;
};

/// The answers beneath each other, their words in columns.
class AnswersView : public QWidget {
public:
  explicit AnswersView(QWidget* parent = nullptr);
  void setRows(std::vector<AnswerRow> rows);
  [[nodiscard]] const std::vector<AnswerRow>& rows() const { return rows_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  std::vector<AnswerRow> rows_;
};

} // namespace netmend

#pragma once

#include <QLayout>

namespace netmend {

/// A row that goes on in the next line where it is too long for its place: with large letters, or beside the
/// map. In each line the widgets that can grow share what is left, else the line begins at the left.
class WrapLayout : public QLayout {
public:
  using QLayout::QLayout;
  ~WrapLayout() override;

  void addItem(QLayoutItem* item) override { items_.append(item); }
  [[nodiscard]] int count() const override { return static_cast<int>(items_.size()); }
  [[nodiscard]] QLayoutItem* itemAt(int index) const override { return items_.value(index); }
  QLayoutItem* takeAt(int index) override;
  [[nodiscard]] Qt::Orientations expandingDirections() const override { return Qt::Horizontal; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  /// All in one line.
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSize() const override;
  void setGeometry(const QRect& rect) override;

private:
  /// Lays out from the top of `rect`, or only measures; the height taken.
  int arrange(const QRect& rect, bool measureOnly) const;
  [[nodiscard]] int gap() const;
  QList<QLayoutItem*> items_;
};

} // namespace netmend

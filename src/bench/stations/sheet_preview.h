#pragma once

#include <vector>

#include <QCoreApplication>
#include <QImage>
#include <QScrollArea>

namespace netmend {

/// Pages below each other, as wide as there is room.
class SheetPreview : public QScrollArea {
  Q_DECLARE_TR_FUNCTIONS(netmend::SheetPreview)

public:
  explicit SheetPreview(QWidget* parent = nullptr);
  void setPages(std::vector<QImage> pages);
  /// In pixels of the screen.
  [[nodiscard]] int wantedWidth() const;

private:
  class Pages;
  Pages* pages_;
};

} // namespace netmend

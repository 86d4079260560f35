#pragma once

#include <vector>

#include <QListWidget>

#include "netmend/casework/fault_case.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// Suspects, likeliest first: per cent, bar, words. Those below the line that ends the reported set stand in
/// quieter letters.
class SuspectList : public QListWidget {
public:
  explicit SuspectList(QWidget* parent = nullptr);
  /// Null: none.
  void setFault(const FaultCase* fault);
  void setTheme(PictureTheme theme);
  /// Index into `Suspects::ranked`; nothing selected: none.
  [[nodiscard]] std::optional<std::size_t> chosen() const;
  void choose(std::size_t suspect);

private:
  PictureTheme theme_ = PictureTheme::light;
};

} // namespace netmend

#pragma once

#include <filesystem>
#include <optional>

#include <QMainWindow>

#include "netmend/bench/map/copper_map.h"

class QLabel;

namespace netmend {

/// Looks at one board, read-only.
class BoardWindow : public QMainWindow {
public:
  BoardWindow();

  /// Shows the board of a file, in any format that can be imported. On an error the board shown
  /// before stays, and the window says what is wrong.
  bool open(const std::filesystem::path& file);
  void show(Board board, const QString& title);
  using QMainWindow::show;

  [[nodiscard]] CopperMap& canvas() { return *canvas_; }
  [[nodiscard]] QString message() const;

protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

private:
  CopperMap* canvas_;
  QLabel* message_;
  QLabel* place_;
};

} // namespace netmend

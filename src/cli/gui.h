#pragma once

#include <memory>

#include <QGuiApplication>

namespace netmend {

/// Fonts and pictures need a QGuiApplication, not a display: made without one unless the program has its own.
class QtApplication {
public:
  QtApplication() {
    if (QGuiApplication::instance() != nullptr) return;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    application_ = std::make_unique<QGuiApplication>(count_, arguments_);
  }

private:
  int count_ = 1;
  char name_[8] = "netmend";
  char* arguments_[2] = {name_, nullptr};
  std::unique_ptr<QGuiApplication> application_;
};

} // namespace netmend

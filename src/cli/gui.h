#pragma once

#include <memory>
#include <optional>

#include <QGuiApplication>
#include <QTemporaryDir>

namespace netmend {

/// Fonts and pictures need a QGuiApplication, not a display: made without one unless the program has its own.
class QtApplication {
public:
  QtApplication() {
    if (QGuiApplication::instance() != nullptr) return;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    // A service or a bare console has no folder for sockets; Qt would complain of that before every sheet.
    if (!qEnvironmentVariableIsSet("XDG_RUNTIME_DIR") && runtime_.emplace().isValid())
      qputenv("XDG_RUNTIME_DIR", runtime_->path().toUtf8());
    application_ = std::make_unique<QGuiApplication>(count_, arguments_);
  }

  QtApplication(const QtApplication&) = delete;
  QtApplication& operator=(const QtApplication&) = delete;
  ~QtApplication() {
    application_.reset();
    if (runtime_) qunsetenv("XDG_RUNTIME_DIR");
  }

private:
  std::optional<QTemporaryDir> runtime_; ///< only its owner may look into it, as Qt asks for
  int count_ = 1;
  char name_[8] = "netmend";
  char* arguments_[2] = {name_, nullptr};
  std::unique_ptr<QGuiApplication> application_;
};

} // namespace netmend

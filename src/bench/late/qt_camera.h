#pragma once

#include <memory>

#include <QCamera>
#include <QImageCapture>
#include <QMediaCaptureSession>
#include <QObject>
#include <QTimer>

#include "camera.h"

namespace netmend {

/// By way of Qt Multimedia.
class QtCamera : public QObject, public Camera {
  Q_OBJECT
  Q_PLUGIN_METADATA(IID "org.netmend.Camera/1")
  Q_INTERFACES(netmend::Camera)

public:
  QtCamera();
  void still(const QString& name, std::function<void(Result<QImage>)> done) override;
  void close() override;

private:
  [[nodiscard]] Result<void> open(const QString& name);
  void captureWhenReady();
  void give(const Result<QImage>& image);

  QString name_;
  struct Opened {
    QMediaCaptureSession session;
    std::unique_ptr<QCamera> camera;
    QImageCapture capture;
  };
  std::unique_ptr<Opened> opened_;
  QTimer patience_;
  std::function<void(Result<QImage>)> done_; ///< who waits
};

} // namespace netmend

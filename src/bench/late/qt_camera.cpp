#include "qt_camera.h"

#include <chrono>
#include <utility>

#include <QCameraDevice>
#include <QMediaDevices>

namespace netmend {

namespace {

/// Cameras take a second or two to begin.
constexpr std::chrono::seconds longest{10};

QCameraDevice deviceNamed(const QString& name) {
  if (name.isEmpty()) return QMediaDevices::defaultVideoInput();
  const auto devices = QMediaDevices::videoInputs();
  for (const QCameraDevice& device : devices)
    if (device.description().contains(name, Qt::CaseInsensitive)) return device;
  return {};
}

} // namespace

QtCamera::QtCamera() : patience_(this) {
  patience_.setSingleShot(true);
  patience_.setInterval(longest);
  connect(&patience_, &QTimer::timeout, this, [this] {
    opened_.reset();
    give(failure({pattern("core", "the camera gives no picture"), name_.toStdString()}));
  });
}

Result<void> QtCamera::open(const QString& name) {
  if (opened_ && name_ == name && opened_->camera->isActive()) return {};
  name_ = name;
  opened_.reset();
  const QCameraDevice device = deviceNamed(name);
  if (device.isNull()) return failure({pattern("core", "no such camera"), name.toStdString()});
  opened_ = std::make_unique<Opened>();
  opened_->camera = std::make_unique<QCamera>(device);
  opened_->session.setCamera(opened_->camera.get());
  opened_->session.setImageCapture(&opened_->capture);
  connect(&opened_->capture, &QImageCapture::readyForCaptureChanged, this, &QtCamera::captureWhenReady);
  connect(&opened_->capture, &QImageCapture::imageCaptured, this,
          [this](int, const QImage& image) { give(image); });
  connect(&opened_->capture, &QImageCapture::errorOccurred, this,
          [this](int, QImageCapture::Error, const QString& text) {
            give(failure({asItIs(text.toStdString()), name_.toStdString()}));
          });
  connect(opened_->camera.get(), &QCamera::errorOccurred, this, [this](QCamera::Error, const QString& text) {
    give(failure({asItIs(text.toStdString()), name_.toStdString()}));
  });
  opened_->camera->start();
  return {};
}

void QtCamera::still(const QString& name, std::function<void(Result<QImage>)> done) {
  done_ = std::move(done);
  if (const auto ready = open(name); !ready) {
    give(failure(ready.error()));
    return;
  }
  patience_.start();
  captureWhenReady();
}

void QtCamera::captureWhenReady() {
  if (done_ && opened_ && opened_->capture.isReadyForCapture()) opened_->capture.capture();
}

void QtCamera::give(const Result<QImage>& image) {
  patience_.stop();
  const auto done = std::exchange(done_, nullptr);
  if (done)
    QMetaObject::invokeMethod(
        this, [done, image] { done(image); }, Qt::QueuedConnection);
}

void QtCamera::close() {
  done_ = nullptr;
  patience_.stop();
  opened_.reset();
}

} // namespace netmend

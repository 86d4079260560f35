#pragma once

#include <functional>

#include <QImage>
#include <QString>
#include <QtPlugin>

#include "netmend/base/error.h"

namespace netmend {

/// Stills of a camera. Get it by `late<Camera>()`.
class Camera {
public:
  static constexpr const char* plugin = "netmend_camera";
  virtual ~Camera() = default;

  /// A picture as it is now of the camera whose name has this in it; empty: the system's first choice. `done`
  /// is called later, in the event loop, and once, whatever happens. The camera stays open for the next one.
  virtual void still(const QString& name, std::function<void(Result<QImage>)> done) = 0;
  /// Gives the camera back and forgets who waits; to be called before the application ends, since the plugin
  /// ends after it.
  virtual void close() = 0;
};

} // namespace netmend

Q_DECLARE_INTERFACE(netmend::Camera, "org.netmend.Camera/1")

#pragma once

#include <optional>
#include <vector>

#include <QImage>
#include <QString>
#include <QtPlugin>

#include "netmend/base/error.h"
#include "netmend/photo/straighten.h"

namespace netmend {

/// What is worked out from photos of a board. Get it by `late<Photographs>()`.
class Photographs {
public:
  static constexpr const char* plugin = "netmend_photographs";
  virtual ~Photographs() = default;

  /// See photo/straighten.h. Any thread may ask.
  [[nodiscard]] virtual Result<Straightened>
  straighten(const Underlay& photo, const std::vector<PhotoPair>& pairs, PhotoModel model) = 0;
  [[nodiscard]] virtual std::optional<Length> edgesOff(const QImage& photo, const Underlay& lying,
                                                       const std::vector<Point>& corners) = 0;
};

} // namespace netmend

Q_DECLARE_INTERFACE(netmend::Photographs, "org.netmend.Photographs/1")

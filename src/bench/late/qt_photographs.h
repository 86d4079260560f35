#pragma once

#include <QObject>

#include "photographs.h"

namespace netmend {

/// By way of the folder photo, and with it OpenCV.
class QtPhotographs : public QObject, public Photographs {
  Q_OBJECT
  Q_PLUGIN_METADATA(IID "org.netmend.Photographs/1")
  Q_INTERFACES(netmend::Photographs)

public:
  [[nodiscard]] Result<Straightened> straighten(const Underlay& photo, const std::vector<PhotoPair>& pairs,
                                                PhotoModel model) override;
  [[nodiscard]] std::optional<Length> edgesOff(const QImage& photo, const Underlay& lying,
                                               const std::vector<Point>& corners) override;
};

} // namespace netmend

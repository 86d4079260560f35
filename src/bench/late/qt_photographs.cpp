#include "qt_photographs.h"

namespace netmend {

Result<Straightened> QtPhotographs::straighten(const Underlay& photo, const std::vector<PhotoPair>& pairs,
                                               PhotoModel model) {
  return netmend::straighten(photo, pairs, model);
}

std::optional<Length> QtPhotographs::edgesOff(const QImage& photo, const Underlay& lying,
                                              const std::vector<Point>& corners) {
  const QImage grey = photo.convertToFormat(QImage::Format_Grayscale8);
  // Rows are padded to four bytes; the pixels wanted are not.
  std::vector<std::uint8_t> pixels;
  pixels.reserve(static_cast<std::size_t>(grey.width()) * static_cast<std::size_t>(grey.height()));
  for (int y = 0; y < grey.height(); ++y)
    pixels.insert(pixels.end(), grey.constScanLine(y), grey.constScanLine(y) + grey.width());
  return netmend::edgesOff({pixels, grey.width(), grey.height()}, lying, corners);
}

} // namespace netmend

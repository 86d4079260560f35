#include "beside_picture.h"

#include "netmend/drawing/shown.h"

namespace netmend {

namespace {

std::optional<PictureLie> pictureBeside;

} // namespace

void setPictureBeside(const std::optional<PictureLie>& picture) {
  pictureBeside = picture;
}

QString besidePicture(const Said& said) {
  return shown(said, pictureBeside);
}

} // namespace netmend

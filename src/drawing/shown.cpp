#include "netmend/drawing/shown.h"

#include <string>

#include <QCoreApplication>

namespace netmend {

namespace {

std::optional<PictureLie> pictureBeside;

std::string inTheLanguageSet(const Pattern& pattern, std::optional<std::int64_t> count) {
  const std::string one(pattern.english);
  const std::string several(pattern.several);
  const QString text =
      count ? QCoreApplication::translate("core", one.c_str(), several.c_str(), static_cast<int>(*count))
            : QCoreApplication::translate("core", one.c_str());
  // Without a translation what comes back is the singular, whatever the count.
  const std::string out = text.toStdString();
  return out == one ? english(pattern, count) : out;
}

} // namespace

QString shown(const Said& said, const std::optional<PictureLie>& picture) {
  return QString::fromStdString(wordsOf(said, inTheLanguageSet, picture));
}

QString shown(const Error& error) {
  return shown(error.said());
}

void setPictureBeside(const std::optional<PictureLie>& picture) {
  pictureBeside = picture;
}

QString besidePicture(const Said& said) {
  return shown(said, pictureBeside);
}

} // namespace netmend

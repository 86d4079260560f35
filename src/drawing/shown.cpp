#include "netmend/drawing/shown.h"

#include <string>

#include <QCoreApplication>

namespace netmend {

QString shown(std::string_view english) {
  if (english.empty()) return {};
  return QCoreApplication::translate("core", std::string(english).c_str());
}

} // namespace netmend

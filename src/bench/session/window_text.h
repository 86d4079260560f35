#pragma once

#include <QCoreApplication>
#include <QString>

namespace netmend {

/// A text of the window, said outside any class that has a `tr` of its own; translated in the context
/// `netmend`.
[[nodiscard]] inline QString tr(const char* text) {
  return QCoreApplication::translate("netmend", text);
}

} // namespace netmend

#pragma once

#include <QObject>
#include <QString>

#include "netmend/base/error.h"

namespace netmend {

/// The object of a plugin of ours; loads the plugin when it is first asked for, and keeps it. The libraries
/// behind sound and paper take longer to load than the window's first picture takes to draw, so the window
/// starts without them. Any thread may ask. Errors name the file.
[[nodiscard]] Result<QObject*> lateObject(const QString& plugin);

/// The same as the service that the plugin gives, which names it: `T::plugin`.
template <class T> [[nodiscard]] Result<T*> late() {
  const auto object = lateObject(QString::fromLatin1(T::plugin));
  if (!object) return failure(object.error());
  if (T* service = qobject_cast<T*>(*object)) return service;
  return failure({pattern("core", "is of another version of the program"), T::plugin});
}

} // namespace netmend

#include "netmend/bench/late/late.h"

#include <map>
#include <memory>
#include <mutex>

#include <QCoreApplication>
#include <QDir>
#include <QPluginLoader>

namespace netmend {

namespace {

/// Beside an installed program, else where the build has put it.
QString fileOf(const QString& plugin) {
  const QString name = plugin + QStringLiteral(".so");
  const QDir installed(QCoreApplication::applicationDirPath() +
                       QStringLiteral("/" NETMEND_PLUGINS_INSTALLED));
  if (installed.exists(name)) return QDir::cleanPath(installed.filePath(name));
  return QStringLiteral(NETMEND_PLUGINS_IN_BUILD_TREE "/") + name;
}

} // namespace

Result<QObject*> lateObject(const QString& plugin) {
  static std::mutex mutex;
  static std::map<QString, QObject*> loaded;
  const std::scoped_lock lock(mutex);
  if (const auto known = loaded.find(plugin); known != loaded.end()) return known->second;
  QPluginLoader loader(fileOf(plugin));
  QObject* object = loader.instance();
  if (object == nullptr)
    return failure(
        {"cannot be loaded: " + loader.errorString().toStdString(), loader.fileName().toStdString()});
  loaded.emplace(plugin, object);
  return object;
}

} // namespace netmend

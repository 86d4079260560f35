#include "late.h"

#include <map>
#include <mutex>

#include <QCoreApplication>
#include <QDir>
#include <QPluginLoader>

namespace netmend {

namespace {

/// Where the build has put it for a program that the build has made, else beside the installed program.
QString fileOf(const QString& plugin) {
  const QString name = plugin + QStringLiteral(".so");
  const QString program = QCoreApplication::applicationDirPath();
  // The program's own path has no symbolic links in it.
  const QString built = QDir(QStringLiteral(NETMEND_BUILD_TREE)).canonicalPath();
  if (!built.isEmpty() && (program + QLatin1Char('/')).startsWith(built + QLatin1Char('/')))
    return QStringLiteral(NETMEND_PLUGINS_IN_BUILD_TREE "/") + name;
  return QDir::cleanPath(program + QStringLiteral("/" NETMEND_PLUGINS_INSTALLED "/") + name);
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
  // Whoever asked first may be a thread that ends.
  object->moveToThread(QCoreApplication::instance()->thread());
  loaded.emplace(plugin, object);
  return object;
}

} // namespace netmend

#include "language.h"

#include <QCoreApplication>
#include <QDir>
#include <QLibraryInfo>
#include <QLocale>

namespace netmend {

QStringList languages() {
  QStringList out{QStringLiteral("en")};
  for (const QString& file : QDir(QStringLiteral(":/translations")).entryList(QDir::Files, QDir::Name)) {
    const QString code = file.section(QLatin1Char('_'), 1).section(QLatin1Char('.'), 0, 0);
    if (!out.contains(code)) out << code;
  }
  return out;
}

QString languageFor(const QStringList& wanted) {
  const QStringList all = languages();
  for (QString code : wanted) {
    code.replace(QLatin1Char('-'), QLatin1Char('_'));
    for (; !code.isEmpty();
         code = code.contains(QLatin1Char('_')) ? code.section(QLatin1Char('_'), 0, -2) : QString())
      if (all.contains(code)) return code;
  }
  return all.front();
}

std::unique_ptr<QTranslator> textsIn(const QString& language) {
  auto texts = std::make_unique<QTranslator>();
  if (!texts->load(QStringLiteral(":/translations/netmend_%1.qm").arg(language))) return nullptr;
  return texts;
}

void speak(const QString& language) {
  auto* const application = QCoreApplication::instance();
  // Whoever spoke another language before is silent now: a removed translator takes its texts with it.
  static const QString name = QStringLiteral("spoken");
  for (QTranslator* spoken : application->findChildren<QTranslator*>(name, Qt::FindDirectChildrenOnly))
    delete spoken;
  auto* const qt = new QTranslator(application);
  qt->setObjectName(name);
  if (qt->load(QLocale(language), QStringLiteral("qtbase"), QStringLiteral("_"),
               QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
    QCoreApplication::installTranslator(qt);
  // English has its plurals; what another language lacks falls back to it.
  for (const QString& code : {QStringLiteral("en"), language}) {
    auto texts = textsIn(code);
    if (texts == nullptr) continue;
    texts->setParent(application);
    texts->setObjectName(name);
    QCoreApplication::installTranslator(texts.release());
  }
}

} // namespace netmend

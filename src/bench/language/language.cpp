#include "netmend/bench/language/language.h"

#include <mutex>

#include <QCoreApplication>
#include <QDir>
#include <QHash>
#include <QLibraryInfo>
#include <QLocale>

#include "sentence_tables.h"

namespace netmend {

namespace {

/// Of one window's texts; more than are on the screen at once.
constexpr qsizetype mostRemembered = 4000;

constexpr const char* coreContext = "core";

} // namespace

/// Pictures are drawn and sheets written beside the window's own thread.
struct Translation::Remembered {
  std::mutex mutex;
  QHash<QByteArray, QString> said;
};

Translation::Translation() : remembered_(std::make_unique<Remembered>()) {}
Translation::~Translation() = default;

std::vector<const char*> coreSentences() {
  std::vector<const char*> out;
  for (const auto& part : {wordsSentences(), findSentences(), repairSentences(), dataSentences(),
                           sheetSentences(), errorsSentences(), filesSentences(), tablesSentences()})
    out.insert(out.end(), part.begin(), part.end());
  return out;
}

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

std::unique_ptr<Translation> Translation::of(const QString& language) {
  std::unique_ptr<Translation> out(new Translation);
  if (!out->texts_.load(QStringLiteral(":/translations/netmend_%1.qm").arg(language))) return nullptr;
  std::vector<Phrase> phrases;
  for (const char* sentence : coreSentences()) {
    const QString said = out->texts_.translate(coreContext, sentence);
    if (!said.isEmpty()) phrases.push_back({sentence, said.toStdString()});
  }
  out->phrases_ = Phrases(phrases);
  return out;
}

QString Translation::translate(const char* context, const char* sourceText, const char* disambiguation,
                               int n) const {
  if (qstrcmp(context, coreContext) != 0) return texts_.translate(context, sourceText, disambiguation, n);
  if (QString said = texts_.translate(context, sourceText, disambiguation, n); !said.isEmpty()) return said;
  const QByteArray english(sourceText);
  {
    const std::lock_guard lock(remembered_->mutex);
    if (const auto found = remembered_->said.constFind(english); found != remembered_->said.constEnd())
      return *found;
  }
  // Searched for without the lock: another thread's text does not wait for this one's.
  const auto said = phrases_.translate(english.toStdString());
  // A null text says that there is none.
  QString out = said ? QString::fromStdString(*said) : QString();
  const std::lock_guard lock(remembered_->mutex);
  if (remembered_->said.size() >= mostRemembered) remembered_->said.clear();
  remembered_->said.insert(english, out);
  return out;
}

void speak(const QString& language) {
  auto* const application = QCoreApplication::instance();
  auto* const qt = new QTranslator(application);
  if (qt->load(QLocale(language), QStringLiteral("qtbase"), QStringLiteral("_"),
               QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
    QCoreApplication::installTranslator(qt);
  // English has its plurals; what another language lacks falls back to it.
  for (const QString& code : {QStringLiteral("en"), language}) {
    auto texts = Translation::of(code);
    if (texts == nullptr) continue;
    texts->setParent(application);
    QCoreApplication::installTranslator(texts.release());
  }
}

} // namespace netmend

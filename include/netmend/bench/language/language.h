#pragma once

#include <memory>
#include <vector>

#include <QString>
#include <QStringList>
#include <QTranslator>

#include "netmend/bench/language/phrases.h"

namespace netmend {

/// Words and sentences of the core that the window can show in other languages, as `Phrase::english` has
/// them. Kept equal to the core's sources and data by tests.
[[nodiscard]] std::vector<const char*> coreSentences();

/// Codes of the languages that the program has: `en` first.
[[nodiscard]] QStringList languages();

/// The first of `wanted` (codes such as `de`, `de_AT` or `de-CH`, the dearest first) that the program has;
/// `en` if none.
[[nodiscard]] QString languageFor(const QStringList& wanted);

/// All texts in one language: those of the window as Qt knows them, those of the core by their phrases.
class Translation : public QTranslator {
public:
  /// nullptr: the program does not have it.
  [[nodiscard]] static std::unique_ptr<Translation> of(const QString& language);
  ~Translation() override;

  [[nodiscard]] bool isEmpty() const override { return false; }
  [[nodiscard]] QString translate(const char* context, const char* sourceText,
                                  const char* disambiguation = nullptr, int n = -1) const override;

private:
  struct Remembered;
  Translation();

  QTranslator texts_;
  Phrases phrases_;
  std::unique_ptr<Remembered> remembered_;
};

/// Sets the texts of the running application to a language that `languages` names, for as long as it runs;
/// Qt's own dialogs and names of keys, too, where Qt's translations are installed. Dates stay as the desktop
/// writes them.
void speak(const QString& language);

} // namespace netmend

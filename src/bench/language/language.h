#pragma once

#include <memory>

#include <QString>
#include <QStringList>
#include <QTranslator>

namespace netmend {

/// Codes of the languages that the program has: `en` first.
[[nodiscard]] QStringList languages();

/// The first of `wanted` (codes such as `de`, `de_AT` or `de-CH`, the dearest first) that the program has;
/// `en` if none.
[[nodiscard]] QString languageFor(const QStringList& wanted);

/// All texts in one language, those of the window and those of the core (context "core"). nullptr: the
/// program does not have it.
[[nodiscard]] std::unique_ptr<QTranslator> textsIn(const QString& language);

/// Sets the texts of the running application to a language that `languages` names, for as long as it runs;
/// Qt's own dialogs and names of keys, too, where Qt's translations are installed. Dates stay as the desktop
/// writes them.
void speak(const QString& language);

} // namespace netmend

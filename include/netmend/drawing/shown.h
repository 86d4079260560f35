#pragma once

#include <string_view>

#include <QString>

namespace netmend {

/// What the core says (a word of an enumeration, a sentence, a step, an error) in the language that the
/// program has been set to. Files, job book and command line keep the English. Where no language is set, or
/// where it has nothing for the sentence, the English comes back.
[[nodiscard]] QString shown(std::string_view english);

} // namespace netmend

#include <catch2/catch.hpp>

#include <regex>

#include "netmend/bench/language/language.h"
#include "netmend/bench/language/phrases.h"

using namespace netmend;

namespace {

std::string said(const Phrases& phrases, std::string_view english) {
  return phrases.translate(english).value_or("(not known)");
}

} // namespace

TEST_CASE("a sentence is known again by what stands around its gaps", "[language]") {
  const Phrases phrases({{"via at {}", "Durchkontaktierung bei {}"},
                         {"via at {}, top", "Durchkontaktierung bei {}, oben"},
                         {"open", "offen"}});
  CHECK(said(phrases, "open") == "offen");
  CHECK(said(phrases, "via at (12.30, 4.50) mm") == "Durchkontaktierung bei (12.30, 4.50) mm");
  CHECK(said(phrases, "via at (12.30, 4.50) mm, top") == "Durchkontaktierung bei (12.30, 4.50) mm, oben");
  CHECK_FALSE(phrases.translate("a resistor at (1, 2)"));
  CHECK_FALSE(phrases.translate("via at "));
  CHECK_FALSE(phrases.translate(""));
}

TEST_CASE("what stands in a gap is said in the other language, too", "[language]") {
  const Phrases phrases({{"joint of {}", "Lötstelle {}"},
                         {"open: {}", "offen: {}"},
                         {"{}, or {n} more places that read the same", "{}, oder {} weitere Stellen"}});
  CHECK(said(phrases, "open: joint of J4.9, or 3 more places that read the same") ==
        "offen: Lötstelle J4.9, oder 3 weitere Stellen");
}

TEST_CASE("the other language puts the gaps in its own order", "[language]") {
  const Phrases phrases(
      {{"of {n} boards {n} read OL", "OL bei {1} von {0}"}, {"Cut {length} of {wire}", "{wire}: {length}"}});
  CHECK(said(phrases, "of 8 boards 2 read OL") == "OL bei 2 von 8");
  CHECK(said(phrases, "Cut 24 mm of enamelled copper") == "enamelled copper: 24 mm");
}

TEST_CASE("a gap for a value takes no words", "[language]") {
  const Phrases phrases(std::vector<Phrase>{{"{n} to {n}", "{0} bis {1}"}});
  CHECK(said(phrases, "0.441 V to 0.465 V") == "0.441 V bis 0.465 V");
  CHECK(said(phrases, "-3.1 mV to > 99.9 %") == "-3.1 mV bis > 99.9 %");
  CHECK(said(phrases, "OL to 12 V") == "OL bis 12 V");
  CHECK_FALSE(phrases.translate("cannot be attached to the board"));
  CHECK_FALSE(phrases.translate("J4 to J5"));
}

TEST_CASE("sentences are known where they stand beside each other", "[language]") {
  const Phrases phrases({{"is empty", "ist leer"},
                         {"line {n}", "Zeile {n}"},
                         {"found {}; expected {}", "gefunden {}; erwartet {}"}});
  CHECK(said(phrases, "/tmp/a, b.csv: line 3: is empty") == "/tmp/a, b.csv: Zeile 3: ist leer");
  CHECK(said(phrases, "is empty (found x; expected y)") == "ist leer (gefunden x; erwartet y)");
  CHECK(said(phrases, "line 1. line 2.") == "Zeile 1. Zeile 2.");
}

TEST_CASE("text from outside cannot keep the window busy", "[language]") {
  std::vector<Phrase> all;
  for (const char* sentence : coreSentences())
    all.push_back({sentence, sentence});
  const Phrases phrases(all);
  std::string hostile;
  while (hostile.size() < 3900)
    hostile += "a read b; here c: 1 bits for, or 2 to 3 (x) ";
  for (int i = 0; i < 5; ++i)
    static_cast<void>(phrases.translate(hostile + std::to_string(i)));
  static_cast<void>(phrases.translate(std::string(100'000, '{')));
  SUCCEED();
}

TEST_CASE("a text whose parts can be joined in countless ways is looked through once") {
  // Each of the joins might be a sentence's: trying all ways to part 60 of them takes longer than there is
  // time.
  std::string english = "reads OL";
  for (int i = 0; i < 60; ++i)
    english += i % 3 == 0 ? ", " : i % 3 == 1 ? "; " : ": ", english += "x" + std::to_string(i) + " (y)";
  const Phrases joinsOnly(std::vector<Phrase>{{"not in it", "nicht darin"}});
  CHECK_FALSE(joinsOnly.translate(english));
  const Phrases one({{"x59 (y)", "X"}, {"reads {}", "liest {}"}});
  const auto said = one.translate(english);
  REQUIRE(said);
  CHECK(said->starts_with("liest OL, x0 (y)"));
  CHECK(Phrases(std::vector<Phrase>{}).translate(english) == std::nullopt);
}

TEST_CASE("every sentence of the core comes back in German with what stood in its gaps", "[language]") {
  const auto german = Translation::of(QStringLiteral("de"));
  REQUIRE(german != nullptr);
  const std::regex gap("\\{([a-z_0-9]*)\\}");
  for (const char* sentence : coreSentences()) {
    const std::string english(sentence);
    const std::string translated =
        german->translate("core", sentence).toStdString(); // a pattern fits itself, gaps and all
    std::string filled;
    std::vector<std::string> values;
    std::size_t from = 0;
    for (std::sregex_iterator it(english.begin(), english.end(), gap), end; it != end; ++it) {
      const auto number = std::to_string(values.size() + 2);
      values.push_back((*it)[1] == "n" ? "3" + number + "5" : "Q" + number + "7");
      filled += english.substr(from, static_cast<std::size_t>(it->position()) - from) + values.back();
      from = static_cast<std::size_t>(it->position() + it->length());
    }
    filled += english.substr(from);
    const std::string back = german->translate("core", filled.c_str()).toStdString();
    INFO(english << " | " << filled << " | " << back);
    CHECK_FALSE(back.empty());
    for (const std::string& value : values)
      CHECK(back.find(value) != std::string::npos);
    CHECK(back.find('{') == std::string::npos);
    if (values.empty()) CHECK(back == translated);
  }
}

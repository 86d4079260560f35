#include <catch2/catch.hpp>

#include <fstream>
#include <regex>
#include <sstream>

#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include "drawing/gui.h"
#include "netmend/bench/language/language.h"
#include "netmend/bench/session/open_board.h"
#include "netmend/bench/stations/station.h"
#include "netmend/casework/repair_data.h"
#include "netmend/drawing/shown.h"
#include "netmend/isolation/isolation.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/jumper/zone_rules.h"
#include "netmend/probing/verdict.h"
#include "netmend/probing/words.h"

using namespace netmend;
namespace fs = std::filesystem;

namespace {

fs::path sources() {
  return NETMEND_SOURCE_DIR;
}

QString translationFile(const QString& language) {
  return QString::fromStdString((sources() / "data" / "translations").string()) +
         QStringLiteral("/netmend_%1.ts").arg(language);
}

QByteArray contentOf(const QString& file) {
  QFile in(file);
  REQUIRE(in.open(QIODevice::ReadOnly));
  return in.readAll();
}

struct Message {
  QString context;
  QString source;
  bool numerus = false;
  QString state; ///< `unfinished`, `vanished`; empty: good
  QStringList forms;
};

std::vector<Message> messagesIn(const QString& file) {
  std::vector<Message> out;
  QXmlStreamReader xml(contentOf(file));
  QString context;
  while (!xml.atEnd()) {
    if (xml.readNext() != QXmlStreamReader::StartElement) continue;
    if (xml.name() == QLatin1String("name")) context = xml.readElementText();
    if (xml.name() == QLatin1String("message")) {
      out.push_back(
          {context, {}, xml.attributes().value(QLatin1String("numerus")) == QLatin1String("yes"), {}, {}});
    }
    if (out.empty()) continue;
    if (xml.name() == QLatin1String("source")) out.back().source = xml.readElementText();
    if (xml.name() == QLatin1String("translation")) {
      out.back().state = xml.attributes().value(QLatin1String("type")).toString();
      if (!out.back().numerus) out.back().forms << xml.readElementText();
    }
    if (xml.name() == QLatin1String("numerusform")) out.back().forms << xml.readElementText();
  }
  REQUIRE_FALSE(xml.hasError());
  return out;
}

std::vector<Message> messagesOf(const QString& language) {
  return messagesIn(translationFile(language));
}

/// Context and source of each, in an order of their own: where in the sources a text stands is of no account.
QStringList namesOf(const std::vector<Message>& messages) {
  QStringList out;
  for (const Message& message : messages)
    out << message.context + QStringLiteral(": ") + message.source;
  out.sort();
  return out;
}

/// `%1`, `%n`, `{}`, `{name}`: each as often as it stands there, without the order.
QStringList placeholdersIn(const QString& text, bool gaps) {
  QStringList out;
  const QRegularExpression expression(gaps ? QStringLiteral("\\{[^}]*\\}") : QStringLiteral("%[0-9n]"));
  for (auto found = expression.globalMatch(text); found.hasNext();) {
    const QString placeholder = found.next().captured();
    out << (gaps ? QStringLiteral("{}") : placeholder);
  }
  out.sort();
  return out;
}

/// All string literals of a folder, those that stand beside each other joined, what fmt fills in as `{}`.
std::string literalsOf(const std::vector<std::string>& folders) {
  std::string out;
  for (const std::string& folder : folders)
    for (const auto& entry : fs::recursive_directory_iterator(sources() / folder)) {
      const std::string extension = entry.path().extension().string();
      if (extension != ".cpp" && extension != ".h") continue;
      if (entry.path().string().find("/language/") != std::string::npos) continue;
      std::ifstream in(entry.path());
      std::stringstream text;
      text << in.rdbuf();
      const std::string code = std::regex_replace(text.str(), std::regex("\"[ \\t]*\\n[ \\t]*\""), "");
      const std::regex literal("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");
      for (std::sregex_iterator it(code.begin(), code.end(), literal), end; it != end; ++it)
        out += std::regex_replace((*it)[1].str(), std::regex("\\{[^}]*\\}"), "{}") + '\n';
    }
  return std::regex_replace(out, std::regex("\\\\\""), "\"");
}

std::string dataTexts() {
  std::string out;
  for (const char* file : {"work_steps.json", "zones.json", "wires.json"}) {
    std::ifstream in(sources() / "data" / file);
    std::stringstream text;
    text << in.rdbuf();
    out += text.str();
  }
  return std::regex_replace(out, std::regex("\\{[a-z_]*\\}"), "{}");
}

/// Into how many stretches of words a text has to be cut so that each stands in `all`: sentences are put
/// together.
std::size_t stretchesOf(const std::string& text, const std::string& all) {
  std::vector<std::string> words;
  std::istringstream in(text);
  for (std::string word; in >> word;)
    words.push_back(word);
  const auto isLetter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
  while (!words.empty() && std::none_of(words.back().begin(), words.back().end(), isLetter))
    words.pop_back();
  while (!words.empty() && std::none_of(words.front().begin(), words.front().end(), isLetter))
    words.erase(words.begin());
  if (!words.empty()) words.back().erase(words.back().find_last_not_of(" :;,.(\"") + 1);
  std::size_t stretches = 0;
  for (std::size_t from = 0; from < words.size(); ++stretches) {
    std::string stretch;
    std::size_t good = from;
    for (std::size_t to = from; to < words.size(); ++to) {
      stretch += (stretch.empty() ? "" : " ") + words[to];
      if (all.find(stretch) == std::string::npos) break;
      good = to + 1;
    }
    if (good == from) return words.size() + 99; // a word that nobody says
    from = good;
  }
  return stretches;
}

template <class Words> void checkKnown(const Translation& german, const Words& words) {
  for (const auto& word : words) {
    INFO(word.text);
    CHECK_FALSE(german.translate("core", std::string(word.text).c_str(), nullptr, -1).isEmpty());
  }
}

} // namespace

TEST_CASE("every text is translated, and none that is gone is kept", "[language]") {
  for (const char* language : {"de", "en"}) {
    const auto messages = messagesOf(QString::fromLatin1(language));
    CHECK(messages.size() > 10);
    for (const Message& message : messages) {
      INFO(language << " " << message.context.toStdString() << ": " << message.source.toStdString());
      CHECK(message.state.toStdString().empty());
      CHECK(message.forms.size() == (message.numerus ? 2 : 1));
      for (const QString& form : message.forms)
        CHECK_FALSE(form.isEmpty());
    }
  }
}

TEST_CASE("the translations have the texts that the sources have now", "[language]") {
  const QTemporaryDir folder;
  for (const QString& language : {QStringLiteral("de"), QStringLiteral("en")}) {
    const QString copy = folder.filePath(language + QStringLiteral(".ts"));
    REQUIRE(QFile::copy(translationFile(language), copy));
    QStringList arguments{QStringLiteral("-silent"),
                          QStringLiteral("@data/translations/sources.lst"),
                          QStringLiteral("src/bench"),
                          QStringLiteral("include/netmend/bench"),
                          QStringLiteral("-tr-function-alias"),
                          QStringLiteral("QT_TRANSLATE_NOOP+=pattern"),
                          QStringLiteral("-tr-function-alias"),
                          QStringLiteral("QT_TRANSLATE_N_NOOP3+=counted"),
                          QStringLiteral("-locations"),
                          QStringLiteral("none"),
                          QStringLiteral("-no-obsolete"),
                          QStringLiteral("-no-ui-lines")};
    if (language == QStringLiteral("en")) {
      arguments << QStringLiteral("-pluralonly");
    } else {
      arguments << QStringLiteral("include");
      for (const char* part : {"base", "board", "netgraph", "probing", "isolation", "jumper", "jobbook",
                               "casework", "words", "drawing", "jobsheet"})
        arguments << QStringLiteral("src/") + QLatin1String(part);
    }
    QProcess lupdate;
    lupdate.setWorkingDirectory(QString::fromStdString(sources().string()));
    lupdate.start(QStringLiteral(NETMEND_LUPDATE), arguments << QStringLiteral("-ts") << copy);
    REQUIRE(lupdate.waitForFinished(120'000));
    REQUIRE(lupdate.exitCode() == 0);
    INFO("ninja update_translations takes new texts in");
    const QStringList now = namesOf(messagesIn(copy));
    const QStringList kept = namesOf(messagesOf(language));
    for (const QString& text : now)
      if (!kept.contains(text))
        FAIL_CHECK("not yet in netmend_" << language.toStdString() << ".ts: " << text.toStdString());
    for (const QString& text : kept)
      if (!now.contains(text)) FAIL_CHECK("nobody says any more: " << text.toStdString());
    CHECK(now.size() == kept.size());
  }
}

TEST_CASE("a translation fills in what its source fills in", "[language]") {
  for (const char* language : {"de", "en"})
    for (const Message& message : messagesOf(QString::fromLatin1(language))) {
      const bool core = message.context == QLatin1String("core");
      for (const QString& form : message.forms) {
        INFO(message.source.toStdString() << " | " << form.toStdString());
        const QStringList wanted = placeholdersIn(message.source, false);
        const QStringList got = placeholdersIn(form, false);
        // One of a thing need not name the number.
        const bool singular = message.numerus && form == message.forms.front();
        CHECK((got == wanted ||
               (singular && got == wanted.filter(QRegularExpression(QStringLiteral("[^n]$"))))));
        if (core) CHECK(placeholdersIn(form, true) == placeholdersIn(message.source, true));
      }
    }
}

TEST_CASE("each sentence of the table is still said by the core or stands in the data", "[language]") {
  const std::string all = literalsOf({"src", "include"}) + dataTexts();
  const std::regex gap("\\{[^}]*\\}");
  // What the system's library says of a file.
  const std::vector<std::string> foreign{"Permission denied", "No such file or directory", "Is a directory",
                                         "No space left on device"};
  for (const char* sentence : coreSentences()) {
    const std::string text(sentence);
    if (std::find(foreign.begin(), foreign.end(), text) != foreign.end()) continue;
    for (std::sregex_token_iterator it(text.begin(), text.end(), gap, -1), end; it != end; ++it) {
      INFO(text << ": nobody says \"" << it->str() << "\"");
      CHECK(stretchesOf(it->str(), all) <= 4);
    }
  }
}

TEST_CASE("every word of the core's enumerations has its German", "[language]") {
  const auto german = Translation::of(QStringLiteral("de"));
  REQUIRE(german != nullptr);
  checkKnown(*german, jobStateWords);
  checkKnown(*german, repairKindWords);
  checkKnown(*german, readingPurposeWords);
  for (int i = 0; i <= static_cast<int>(ReadingMode::temperature); ++i)
    CHECK_FALSE(german->translate("core", word(static_cast<ReadingMode>(i)).data(), nullptr, -1).isEmpty());
  for (int i = 0; i <= static_cast<int>(VerdictKind::nothingToCompare); ++i)
    CHECK_FALSE(german->translate("core", word(static_cast<VerdictKind>(i)).data(), nullptr, -1).isEmpty());
  for (int i = 0; i <= static_cast<int>(ZoneKind::tallPart); ++i)
    CHECK_FALSE(german->translate("core", nameOf(static_cast<ZoneKind>(i)).data(), nullptr, -1).isEmpty());
}

TEST_CASE("every step, caution and reason of the data has its German", "[language]") {
  const auto german = Translation::of(QStringLiteral("de"));
  REQUIRE(german != nullptr);
  const auto data = loadRepairData(sources() / "data");
  REQUIRE(data);
  const auto known = [&](const std::string& text) {
    INFO(text);
    CHECK_FALSE(german->translate("core", text.c_str(), nullptr, -1).isEmpty());
  };
  for (const std::string& caution : data->work.cautions)
    known(caution);
  for (const auto& [kind, steps] : data->work.kinds)
    for (const auto& step : steps) {
      known(step.text);
      if (!step.expected.empty()) known(step.expected);
    }
  for (const RoleCurrent& role : data->jumper.wires.roles)
    if (!role.warning.empty()) known(role.warning);
  for (const ZoneRule& rule : data->jumper.zones.zones)
    known(rule.reason);
  for (const Wire& wire : data->jumper.wires.wires) {
    known(wire.name);
    if (!wire.stripping.empty()) known(wire.stripping);
  }
}

TEST_CASE("a language is found by the codes that systems give", "[language]") {
  CHECK(languages().first() == QStringLiteral("en"));
  CHECK(languageFor({QStringLiteral("de-AT"), QStringLiteral("en")}) == QStringLiteral("de"));
  CHECK(languageFor({QStringLiteral("de_Latn_CH")}) == QStringLiteral("de"));
  CHECK(languageFor({QStringLiteral("xx"), QStringLiteral("de")}) == QStringLiteral("de"));
  CHECK(languageFor({QStringLiteral("en-GB"), QStringLiteral("de")}) == QStringLiteral("en"));
  CHECK(languageFor({QStringLiteral("C")}) == QStringLiteral("en"));
  CHECK(languageFor({}) == QStringLiteral("en"));
  CHECK(Translation::of(QStringLiteral("xx")) == nullptr);
}

TEST_CASE("a connector is understood as the German window asks for it", "[language]") {
  const auto german = Translation::of(QStringLiteral("de"));
  REQUIRE(german != nullptr);
  const QString asked = german->translate("netmend::BoardPage", "or type a connector:  J4, 40 pins, two rows")
                            .section(QLatin1Char(':'), 1);
  const auto typed = parseConnector(asked.trimmed().toStdString());
  REQUIRE(typed);
  CHECK(typed->reference == "J4");
  CHECK(typed->pins == 40);
  CHECK(typed->rows == 2);
}

TEST_CASE("English counts one thing and several things", "[language]") {
  const auto english = Translation::of(QStringLiteral("en"));
  REQUIRE(english != nullptr);
  const auto said = [&](const char* context, const char* text, int n) {
    return english->translate(context, text, nullptr, n)
        .replace(QStringLiteral("%n"), QString::number(n))
        .toStdString();
  };
  CHECK(said("netmend::BoardPage", "%n part(s)", 1) == "1 part");
  CHECK(said("netmend::BoardPage", "%n part(s)", 2) == "2 parts");
  CHECK(said("netmend::BoardPage", "%n part(s)", 0) == "0 parts");
  CHECK(said("netmend", "%n via(s)", 1) == "via");
  CHECK(said("netmend", "%n via(s)", 3) == "3 vias");
  for (const Message& message : messagesOf(QStringLiteral("en")))
    for (const QString& form : message.forms)
      CHECK_FALSE(form.contains(QLatin1String("(s)")));
}

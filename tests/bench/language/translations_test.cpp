#include <catch2/catch.hpp>

#include <set>

#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include "bench/language/data_texts.h"
#include "bench/language/language.h"
#include "bench/session/opened_file.h"
#include "drawing/gui.h"
#include "netmend/casework/repair_data.h"
#include "netmend/jobbook/charge_presets.h"

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
      for (const char* part : {"base", "board", "netgraph", "probing", "isolation", "jumper", "sketch",
                               "photo", "jobbook", "casework", "words", "meter", "drawing", "jobsheet"})
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

TEST_CASE("what people read of the data is known to the translations, and nothing else is", "[language]") {
  const auto data = loadRepairData(sources() / "data");
  REQUIRE(data);
  std::set<std::string> read;
  const auto add = [&](const std::string& text) {
    if (!text.empty()) read.insert(text);
  };
  for (const std::string& caution : data->work.cautions)
    add(caution);
  for (const auto& [kind, steps] : data->work.kinds)
    for (const auto& step : steps)
      for (const std::string& text : {step.text, step.detail, step.expected, step.otherwise})
        add(text);
  for (const RoleCurrent& role : data->jumper.wires.roles)
    add(role.warning);
  for (const ZoneRule& rule : data->jumper.zones.zones)
    add(rule.reason);
  for (const Wire& wire : data->jumper.wires.wires) {
    add(wire.name);
    add(wire.stripping);
  }
  for (const MeterProfile& meter : data->probing.meters)
    add(meter.name);
  const auto charges = loadChargePresets(sources() / "data" / "charges.json");
  REQUIRE(charges);
  for (const ChargePreset& preset : *charges)
    add(preset.what);
  const auto known = dataTexts();
  CHECK(std::set<std::string>(known.begin(), known.end()) == read);
}

TEST_CASE("a language is found by the codes that systems give", "[language]") {
  CHECK(languages().first() == QStringLiteral("en"));
  CHECK(languageFor({QStringLiteral("de-AT"), QStringLiteral("en")}) == QStringLiteral("de"));
  CHECK(languageFor({QStringLiteral("de_Latn_CH")}) == QStringLiteral("de"));
  CHECK(languageFor({QStringLiteral("xx"), QStringLiteral("de")}) == QStringLiteral("de"));
  CHECK(languageFor({QStringLiteral("en-GB"), QStringLiteral("de")}) == QStringLiteral("en"));
  CHECK(languageFor({QStringLiteral("C")}) == QStringLiteral("en"));
  CHECK(languageFor({}) == QStringLiteral("en"));
  CHECK(textsIn(QStringLiteral("xx")) == nullptr);
}

TEST_CASE("a connector is understood as the German window asks for it", "[language]") {
  const auto german = textsIn(QStringLiteral("de"));
  REQUIRE(german != nullptr);
  const QString asked =
      german->translate("netmend::BoardPage", "or type:  J4, 40 pins, two rows").section(QLatin1Char(':'), 1);
  const auto typed = parseConnector(asked.trimmed().toStdString());
  REQUIRE(typed);
  CHECK(typed->reference == "J4");
  CHECK(typed->pins == 40);
  CHECK(typed->rows == 2);
}

TEST_CASE("English counts one thing and several things", "[language]") {
  const auto english = textsIn(QStringLiteral("en"));
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

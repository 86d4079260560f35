// The face's letters. B612 Mono calls itself B612 as well (its second family name), and its regular letters
// then take the place of B612's own in Qt's list. So B612 is read under a family name that nobody else has:
// of the name table (OpenType specification, "name") the first letter of the family is another one, in memory
// only.
#include <algorithm>
#include <cmath>
#include <cstring>

#include <QFile>
#include <QFontDatabase>
#include <QGuiApplication>
#include <QStandardPaths>
#include <QtEndian>

#include "netmend/drawing/face.h"

namespace netmend {

namespace {

constexpr qsizetype recordSize = 12; // of a name
constexpr char firstLetter = 'N';

template <class T> T number(const QByteArray& bytes, qsizetype at) {
  return at + static_cast<qsizetype>(sizeof(T)) <= bytes.size() ? qFromBigEndian<T>(bytes.constData() + at)
                                                                : T(0);
}

/// Where the table begins; 0: nowhere.
qsizetype tableAt(const QByteArray& font, const char* tag) {
  const auto tables = number<quint16>(font, 4);
  for (qsizetype record = 12; record < 12 + 16 * tables && record + 16 <= font.size(); record += 16)
    if (std::memcmp(font.constData() + record, tag, 4) == 0) return number<quint32>(font, record + 8);
  return 0;
}

/// The font with another first letter in its family's name; nothing where the file is not as it should be.
QByteArray underOwnName(QByteArray font) {
  const qsizetype table = tableAt(font, "name");
  if (table == 0) return {};
  const auto names = number<quint16>(font, table + 2);
  const qsizetype texts = table + number<quint16>(font, table + 4);
  for (qsizetype i = 0; i < names; ++i) {
    const qsizetype record = table + 6 + i * recordSize;
    const auto id = number<quint16>(font, record + 6);
    if (id != 1 && id != 16) continue;                    // family, typographic family
    const bool wide = number<quint16>(font, record) != 1; // all but the Macintosh's are UTF-16
    const qsizetype letter = texts + number<quint16>(font, record + 10) + (wide ? 1 : 0);
    if (letter >= font.size()) return {};
    font[letter] = firstLetter;
  }
  return font;
}

QString load() {
  QString family;
  for (const auto* name : {"Regular", "Bold", "Italic", "BoldItalic"}) {
    QFile file(QStandardPaths::locate(QStandardPaths::FontsLocation,
                                      QStringLiteral("opentype/b612/B612-%1.otf").arg(QLatin1String(name))));
    if (!file.open(QFile::ReadOnly)) continue;
    const QByteArray font = underOwnName(file.readAll());
    const int id = font.isEmpty() ? -1 : QFontDatabase::addApplicationFontFromData(font);
    if (const QStringList added = QFontDatabase::applicationFontFamilies(id); !added.isEmpty())
      family = added.first();
  }
  if (!family.isEmpty()) return family;
  const QString other = QStringLiteral("DejaVu Sans");
  return QFontDatabase::families().contains(other) ? other : QGuiApplication::font().family();
}

} // namespace

QString faceFamily() {
  static const QString family = load();
  return family;
}

QFont faceFont(double pixels) {
  QFont font(faceFamily());
  font.setPixelSize(std::max(1, static_cast<int>(std::lround(pixels))));
  return font;
}

} // namespace netmend

#pragma once

#include <QDir>
#include <QFile>
#include <QImage>

#include "hand.h"
#include "support/zipped.h"

namespace netmend::testing {

inline void writeBytes(const QString& file, const QByteArray& bytes) {
  QFile out(file);
  if (out.open(QIODevice::WriteOnly)) out.write(bytes);
}

/// Files that somebody may drop on the window, good and bad, made in this folder. `realBoard` is one of
/// Netmend's own kind.
inline QStringList filesToDrop(const QString& folder, const QString& realBoard) {
  const QDir dir(folder);
  const auto named = [&](const char* name) { return dir.filePath(QString::fromUtf8(name)); };
  QImage photo(400, 300, QImage::Format_RGB32);
  for (int y = 0; y < photo.height(); ++y)
    for (int x = 0; x < photo.width(); ++x)
      photo.setPixel(x, y, qRgb(20 + x % 50, 90 + y % 60, 40));
  photo.save(named("photo.png"));
  photo.save(named("photo.jpg"));
  QFile board(realBoard);
  const QByteArray whole = board.open(QIODevice::ReadOnly) ? board.readAll() : QByteArray();
  QFile picture(named("photo.jpg"));
  const QByteArray jpeg = picture.open(QIODevice::ReadOnly) ? picture.readAll() : QByteArray();
  writeBytes(named("cut off.netmend-board.json"), whole.left(whole.size() / 2));
  writeBytes(named("cut off.jpg"), jpeg.left(jpeg.size() / 3));
  const std::string content = whole.toStdString();
  const std::string two =
      test::zipped({{"one.netmend-board.json", content}, {"two/again.netmend-board.json", content}});
  writeBytes(named("two boards.zip"), QByteArray::fromStdString(two));
  writeBytes(named("empty.kicad_pcb"), {});
  writeBytes(named("rubbish.kicad_pcb"), QByteArray("\x00\xff(kicad_pcb (((", 15));
  writeBytes(named("deep.kicad_pcb"), QByteArray("(kicad_pcb ") + QByteArray(20'000, '('));
  writeBytes(named("words.txt"), "Third column of the keypad is dead\n");
  writeBytes(named("no picture.png"), "\x89PNG\r\n\x1a\nno more");
  writeBytes(named("no archive.zip"), "PK\x03\x04 and nothing");
  writeBytes(named("Lötstelle Ω.csv"), "part,pin,net\nJ4,1,GND\n");
  dir.mkdir(QStringLiteral("a folder.kicad_pcb"));
  return {named("two boards.zip"),     named("photo.png"),
          named("photo.jpg"),          named("cut off.netmend-board.json"),
          named("cut off.jpg"),        named("empty.kicad_pcb"),
          named("rubbish.kicad_pcb"),  named("deep.kicad_pcb"),
          named("words.txt"),          named("no picture.png"),
          named("no archive.zip"),     named("Lötstelle Ω.csv"),
          named("a folder.kicad_pcb"), named("not there.kicad_pcb")};
}

} // namespace netmend::testing

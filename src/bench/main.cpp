#include <cstdio>
#include <fcntl.h>
#include <future>
#include <string_view>
#include <sys/file.h>
#include <thread>
#include <utility>

#include <QApplication>
#include <QCommandLineParser>
#include <QDir>
#include <QIcon>
#include <QLocale>
#include <QStandardPaths>

#include "bench/language/language.h"
#include "bench/window/bench_window.h"
#include "bench/window/theme.h"
#include "netmend/base/data_folder.h"
#include "netmend/casework/repair_data.h"
#include "netmend/drawing/face.h"

namespace {

constexpr const char* help =
    "netmend-bench [OPTION…] [BOARD]\n"
    "The bench window: book in, board, walk, find, bridge, prove, hand over.\n\n"
    "  BOARD                board file to open; a file can also be dropped on the window\n"
    "  --store FOLDER       where job book and drawn boards are kept (default: the user's data folder)\n"
    "  --job NUMBER         job of the book to open, for example 2026-0007\n"
    "  --language CODE      language of the window, en or de (default: LANGUAGE and LANG decide)\n"
    "  --meter ADDRESS      linked meter: tcp:HOST[:PORT], serial:/dev/NAME[:PATTERN]\n"
    "  --help, --version\n\n"
    "F1 in the window shows all keys. Example:\n"
    "  netmend-bench --store ~/repairs logger.netmend-board.json\n";

/// Before Qt looks for a display: these need none.
bool answered(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    const std::string_view argument = argv[i];
    if (argument == "--help" || argument == "-h") {
      std::fputs(help, stdout);
      return true;
    }
    if (argument == "--version") {
      std::puts("netmend-bench " NETMEND_VERSION);
      return true;
    }
  }
  return false;
}

std::filesystem::path pathOf(const QString& text) {
  return std::filesystem::path(text.toStdU16String());
}

/// Two windows would overwrite what the other one wrote. The lock ends with the process, however that ends.
bool onlyWindowOf(const std::filesystem::path& store) {
  const int file = ::open((store / "window.lock").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0644);
  return file < 0 || ::flock(file, LOCK_EX | LOCK_NB) == 0;
}

/// The same drawing in all sizes that desktops ask for.
QIcon windowIcon() {
  QIcon icon;
  for (const int size : {16, 24, 32, 48, 64, 128, 256})
    icon.addFile(QStringLiteral(":/icon/%1.png").arg(size), QSize(size, size));
  return icon;
}

/// At its first station, with its board beside the later ones.
netmend::Result<void> openJob(netmend::BenchWindow& window, const std::string& number) {
  netmend::BenchJob& bench = window.desk().job;
  auto found = bench.book().jobNumbered(number);
  if (!found) return netmend::failure(found.error());
  bench.openJob(std::move(*found));
  window.go(netmend::Station::bookIn);
  return {};
}

} // namespace

int main(int argc, char** argv) {
  if (answered(argc, argv)) return 0;
  // The data folder is read while Qt finds its display.
  auto reading =
      std::async(std::launch::async, [] { return netmend::loadRepairData(netmend::dataFolder()); });
  const QApplication application(argc, argv);
  QApplication::setOrganizationName(QStringLiteral("netmend"));
  QApplication::setApplicationName(QStringLiteral("netmend-bench"));
  // By this name Wayland finds icon and menu entry.
  QApplication::setDesktopFileName(QStringLiteral("netmend-bench"));
  QCommandLineParser line;
  const QCommandLineOption store(QStringLiteral("store"), QString(), QStringLiteral("folder"));
  const QCommandLineOption number(QStringLiteral("job"), QString(), QStringLiteral("number"));
  const QCommandLineOption meter(QStringLiteral("meter"), QString(), QStringLiteral("address"));
  const QCommandLineOption language(QStringLiteral("language"), QString(), QStringLiteral("code"));
  line.addOptions({store, number, meter, language});
  if (!line.parse(QApplication::arguments()) || line.positionalArguments().size() > 1) {
    std::fputs(qPrintable(line.errorText() + QLatin1Char('\n')), stderr);
    std::fputs(help, stderr);
    return 2;
  }
  const QString spoken = netmend::languageFor(line.isSet(language) ? QStringList{line.value(language)}
                                                                   : QLocale::system().uiLanguages());
  if (line.isSet(language) && !line.value(language).startsWith(spoken)) {
    std::fputs(qPrintable(QStringLiteral("no such language: %1 (expected one of %2)\n")
                              .arg(line.value(language), netmend::languages().join(QStringLiteral(", ")))),
               stderr);
    return 2;
  }
  netmend::speak(spoken);
  // Asked for against the desktop's own language: dates then follow the words.
  if (line.isSet(language) && spoken != QStringLiteral("en") &&
      QLocale(spoken).language() != QLocale::system().language())
    QLocale::setDefault(QLocale(spoken));
  const QString folder = line.isSet(store)
                             ? line.value(store)
                             : QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
  QDir().mkpath(folder);
  if (!onlyWindowOf(pathOf(folder))) {
    std::fputs(qPrintable(QStringLiteral("%1: another window has this job book open\n").arg(folder)), stderr);
    return 3;
  }
  // Which fonts there are takes as long to find out as the book to open.
  std::jthread fonts([] { static_cast<void>(netmend::faceFamily()); });
  auto data = reading.get();
  if (!data) {
    std::fputs((data.error().text() + "\n").c_str(), stderr);
    return 3;
  }
  auto job = netmend::BenchJob::open({netmend::dataFolder(), pathOf(folder)}, std::move(*data));
  if (!job) {
    std::fputs((job.error().text() + "\n").c_str(), stderr);
    return 3;
  }
  fonts.join();
  // Before there are widgets; the window has the person's own.
  netmend::setFace(netmend::PictureTheme::light);
  netmend::BenchWindow window(std::move(*job));
  window.resize(1280, 800);
  window.restore();
  if (line.isSet(number)) {
    if (const auto opened = openJob(window, line.value(number).toStdString()); !opened) {
      std::fputs((opened.error().text() + "\n").c_str(), stderr);
      return 3;
    }
  }
  if (line.isSet(meter)) window.linkMeter(line.value(meter));
  if (!line.positionalArguments().isEmpty()) {
    window.go(netmend::Station::board);
    window.openBoard(line.positionalArguments().first());
  }
  // Seven pictures to be read: not before the window's own first one.
  QObject::connect(&window, &netmend::BenchWindow::firstPicture,
                   [] { QApplication::setWindowIcon(windowIcon()); });
  window.show();
  return QApplication::exec();
}

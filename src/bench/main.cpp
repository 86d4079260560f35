#include <cstdio>
#include <string_view>

#include <QApplication>

#include "netmend/bench/board_window.h"

namespace {

constexpr const char* help = "netmend-bench [FILE]\n"
                             "Opens a board to look at. A file can also be dropped on the window.\n"
                             "Drag or arrow keys move, wheel or + - zoom, F fits, T turns the board over,\n"
                             "X sees through it, a click on a pad lights its net.\n";

} // namespace

int main(int argc, char** argv) {
  // Before Qt looks for a display: help needs none.
  for (int i = 1; i < argc; ++i) {
    const std::string_view argument = argv[i];
    if (argument == "--help" || argument == "-h") {
      std::fputs(help, stdout);
      return 0;
    }
  }
  const QApplication application(argc, argv);
  const QStringList arguments = QApplication::arguments();
  if (arguments.size() > 2 || (arguments.size() == 2 && arguments[1].startsWith(QLatin1Char('-')))) {
    std::fputs(help, stderr);
    return 2;
  }
  netmend::BoardWindow window;
  window.resize(1200, 760);
  if (arguments.size() == 2) window.open(std::filesystem::path(arguments[1].toStdU16String()));
  window.show();
  return QApplication::exec();
}

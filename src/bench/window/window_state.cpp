// What the window remembers from one time to the next.
#include <algorithm>
#include <utility>

#include <QCloseEvent>
#include <QFileInfo>
#include <QSettings>

#include "netmend/bench/window/bench_window.h"

namespace netmend {

namespace {

constexpr double leastShare = 0.1; ///< of the window's width

} // namespace

QString BenchWindow::storeName() const {
  return QFileInfo(QString::fromStdU16String(job_->folders().store.u16string())).absoluteFilePath();
}

void BenchWindow::remember() const {
  if (restoring_) return;
  QSettings settings;
  settings.setValue(QStringLiteral("window/store"), storeName());
  settings.setValue(QStringLiteral("window/station"), static_cast<int>(station_));
  if (job_->job() != nullptr)
    settings.setValue(QStringLiteral("window/job"), QVariant::fromValue<qulonglong>(job_->job()->id.value));
  if (const OpenBoard* board = job_->board())
    settings.setValue(QStringLiteral("window/board"), QString::fromStdU16String(board->file.u16string()));
}

void BenchWindow::reopen(const QSettings& settings) {
  const int station =
      settings.value(QStringLiteral("window/station"), static_cast<int>(Station::board)).toInt();
  const auto job = settings.value(QStringLiteral("window/job")).toULongLong();
  const QString board = settings.value(QStringLiteral("window/board")).toString();
  if (station >= 0 && station < static_cast<int>(stations.size()))
    station_ = stations[static_cast<std::size_t>(station)];
  if (auto kept = job_->book().job(JobId(job)))
    job_->openJob(std::move(*kept));
  else if (!board.isEmpty())
    job_->openBoardFile(std::filesystem::path(board.toStdU16String()));
}

void BenchWindow::restore() {
  restoring_ = true;
  if (!painted_) job_->putOffBoards();
  const QSettings settings;
  restoreGeometry(settings.value(QStringLiteral("window/geometry")).toByteArray());
  stationShare_ = std::clamp(settings.value(QStringLiteral("window/stationShare"), stationShare_).toDouble(),
                             leastShare, 1.0 - leastShare);
  if (const int scale = settings.value(QStringLiteral("window/scale")).toInt(); scale > 0) setScale(scale);
  setTheme(static_cast<PictureTheme>(settings.value(QStringLiteral("window/theme"), 0).toInt()));
  // Numbers of jobs are of their store.
  if (settings.value(QStringLiteral("window/store")).toString() == storeName()) reopen(settings);
  go(station_);
  // Fields that need a board could not have the keyboard until it was read.
  connect(
      job_.get(), &BenchJob::boardChanged, this, [this] { page(station_).arrive(); },
      Qt::SingleShotConnection);
  linkMeter(settings.value(QStringLiteral("meter/address")).toString());
  restoring_ = false;
  refresh();
}

void BenchWindow::closeEvent(QCloseEvent* event) {
  remember();
  for (StationPage* page : made_)
    if (page != nullptr) page->keepTyped();
  QSettings settings;
  settings.setValue(QStringLiteral("window/geometry"), saveGeometry());
  settings.setValue(QStringLiteral("window/stationShare"), stationShare_);
  QMainWindow::closeEvent(event);
}

} // namespace netmend

// What the window remembers from one time to the next.
#include <algorithm>
#include <utility>

#include <QCloseEvent>
#include <QFile>
#include <QFileInfo>
#include <QSettings>

#include "bench_window.h"

namespace netmend {

namespace {

constexpr double leastShare = 0.1; ///< of the window's width

/// A program killed as it made its lock of the settings leaves an empty one, of which nobody can tell whose
/// it is: QLockFile, and with it the window, would stand still for 30 s at the next change.
void removeDeadLock(const QSettings& settings) {
  const QFileInfo lock(settings.fileName() + QStringLiteral(".lock"));
  if (lock.exists() && lock.size() == 0) QFile::remove(lock.filePath());
}

} // namespace

void BenchWindow::remember() {
  if (restoring_) return;
  LeftOpen now = left_;
  now.job = job_->job() != nullptr ? job_->job()->id : JobId{};
  now.station = static_cast<int>(station_);
  // A board that is still being read is the one that was left.
  if (const BoardUnderWork* board = job_->board()) now.board = std::filesystem::absolute(board->file);
  if (now != left_ && job_->leaveOpen(now)) left_ = now;
}

Result<void> BenchWindow::reopen() {
  const auto left = job_->book().leftOpen();
  if (!left) return failure(left.error());
  left_ = *left;
  if (const int station = left_.station.value_or(-1);
      station >= 0 && station < static_cast<int>(stations.size()))
    station_ = stations[static_cast<std::size_t>(station)];
  if (left_.job) {
    auto kept = job_->book().job(left_.job);
    if (!kept) return failure(kept.error());
    job_->openJob(std::move(*kept));
  } else if (!left_.board.empty()) {
    job_->openBoardFile(left_.board);
  }
  return {};
}

void BenchWindow::restore() {
  restoring_ = true;
  if (!painted_) job_->putOffBoards();
  const QSettings settings;
  removeDeadLock(settings);
  restoreGeometry(settings.value(QStringLiteral("window/geometry")).toByteArray());
  stationShare_ = std::clamp(settings.value(QStringLiteral("window/stationShare"), stationShare_).toDouble(),
                             leastShare, 1.0 - leastShare);
  if (const int scale = settings.value(QStringLiteral("window/scale")).toInt(); scale > 0) setScale(scale);
  setTheme(static_cast<PictureTheme>(settings.value(QStringLiteral("window/theme"), 0).toInt()));
  setWhy(settings.value(QStringLiteral("window/why"), false).toBool());
  const auto reopened = reopen();
  go(station_);
  // Fields that need a board could not have the keyboard until it was read.
  connect(
      job_.get(), &BenchJob::boardChanged, this, [this] { page(station_).arrive(); },
      Qt::SingleShotConnection);
  linkMeter(settings.value(QStringLiteral("meter/address")).toString());
  restoring_ = false;
  refresh();
  if (!reopened) job_->fail(reopened.error());
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

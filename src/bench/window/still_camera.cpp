#include "still_camera.h"

#include <algorithm>

#include <QBuffer>
#include <QSettings>

#include "bench/late/camera.h"
#include "bench/late/late.h"
#include "netmend/casework/function_check.h"
#include "netmend/drawing/photo_image.h"
#include "netmend/drawing/shown.h"

namespace netmend {

namespace {

const QString fileScheme = QStringLiteral("file:");
const QString cameraScheme = QStringLiteral("camera:");
constexpr int jpegQuality = 92;
constexpr QSize glance{64, 64}; ///< whether all of the file is a picture is seen in a small one

QString settingsKey() {
  return QStringLiteral("camera/address");
}

/// Whether somebody has worked at the board: a step of a repair is done.
bool workBegun(const Job& job) {
  return std::any_of(job.actions.begin(), job.actions.end(), [](const RepairAction& action) {
    return std::any_of(action.steps.begin(), action.steps.end(),
                       [](const WorkStep& step) { return step.done && !isFunctionCheck(step); });
  });
}

} // namespace

StillCamera::StillCamera(BenchJob& job) : job_(job), working_(this) {
  connect(&job, &BenchJob::papersChanged, this, [this] {
    const Job* now = job_.job();
    if (waiting_.isEmpty() || now == nullptr || now->photos.empty() ||
        QString::fromStdString(now->photos.back().caption) != waiting_)
      return;
    Q_EMIT told(tr("Picture taken: %1").arg(std::exchange(waiting_, {})), false);
  });
}

StillCamera::~StillCamera() {
  if (camera_ != nullptr) camera_->close();
}

QString StillCamera::address() {
  return QSettings().value(settingsKey()).toString();
}

Result<void> StillCamera::setAddress(const QString& address) {
  const QString given = address.trimmed();
  if (!given.isEmpty() && !given.startsWith(cameraScheme) &&
      (!given.startsWith(fileScheme) || given.size() == fileScheme.size()))
    return failure({pattern("core", "not a camera's address"), "", "", given.toStdString(),
                    pattern("core", "camera:, camera:NAME or file:PATH")});
  QSettings().setValue(settingsKey(), given);
  return {};
}

void StillCamera::take() {
  const Job* job = job_.job();
  if (job == nullptr) {
    Q_EMIT told(tr("A picture needs a job: book one in first (Ctrl+N)"), true);
    return;
  }
  const QString from = address();
  if (from.isEmpty()) {
    Q_EMIT addressWanted();
    return;
  }
  if (busy_) return;
  busy_ = true;
  const Wanted wanted{job->id, workBegun(*job) ? tr("After: microscope") : tr("Before: microscope")};
  if (from.startsWith(fileScheme))
    takeFile(from.mid(fileScheme.size()), wanted);
  else
    takeCamera(from.mid(cameraScheme.size()), wanted);
}

void StillCamera::takeFile(const QString& file, const Wanted& wanted) {
  working_.run<Result<Photo>>(
      [file](const std::stop_token&) -> Result<Photo> {
        auto read = readWholePhoto(std::filesystem::path(file.toStdU16String()), glance);
        if (!read) return failure(read.error());
        return std::move(read->photo);
      },
      [this, wanted](Result<Photo> photo) { put(std::move(photo), wanted); });
}

void StillCamera::takeCamera(const QString& name, const Wanted& wanted) {
  // The libraries behind it take their time to load.
  working_.run<Result<Camera*>>([](const std::stop_token&) { return late<Camera>(); },
                                [this, name, wanted](Result<Camera*> camera) {
                                  if (!camera) return put(failure(camera.error()), wanted);
                                  camera_ = *camera;
                                  camera_->still(name, [this, wanted](const Result<QImage>& image) {
                                    if (!image) return put(failure(image.error()), wanted);
                                    encode(*image, wanted);
                                  });
                                });
}

void StillCamera::encode(const QImage& image, const Wanted& wanted) {
  working_.run<Result<Photo>>(
      [image](const std::stop_token&) -> Result<Photo> {
        QByteArray bytes;
        QBuffer buffer(&bytes);
        if (!buffer.open(QIODevice::WriteOnly) || !image.save(&buffer, "JPEG", jpegQuality))
          return failure({pattern("core", "the camera gives no picture")});
        Photo photo;
        photo.mediaType = "image/jpeg";
        photo.bytes = bytes.toStdString();
        return photo;
      },
      [this, wanted](Result<Photo> photo) { put(std::move(photo), wanted); });
}

void StillCamera::put(Result<Photo> photo, const Wanted& wanted) {
  busy_ = false;
  if (!photo) {
    Q_EMIT told(shown(photo.error()), true);
    return;
  }
  if (job_.job() == nullptr || job_.job()->id != wanted.job) {
    Q_EMIT told(tr("Another job is open: the picture was not kept"), true);
    return;
  }
  photo->caption = wanted.caption.toStdString();
  waiting_ = wanted.caption;
  job_.addPhoto(*photo);
}

} // namespace netmend

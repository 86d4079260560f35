#pragma once

#include <functional>

#include <QObject>

#include "bench/session/background.h"
#include "bench/session/bench_job.h"

namespace netmend {

class Camera;

/// A still of the microscope's camera on its way into the job. Where it comes from stands in the settings:
/// `camera:NAME`, `camera:` for the one there is, or `file:PATH`, a picture that some other program keeps up
/// to date.
class StillCamera : public QObject {
  Q_OBJECT

public:
  explicit StillCamera(BenchJob& job);
  ~StillCamera() override;
  [[nodiscard]] static QString address();
  /// Refused: neither of the above.
  [[nodiscard]] Result<void> setAddress(const QString& address);
  /// Into the open job, as before the repair or after it has begun.
  void take();

Q_SIGNALS:
  void told(const QString& text, bool isError);
  /// Nobody has said yet where pictures come from.
  void addressWanted();

private:
  /// A picture being fetched: for which job, and what will be said of it.
  struct Wanted {
    JobId job;
    QString caption;
  };
  void takeFile(const QString& file, const Wanted& wanted);
  void takeCamera(const QString& name, const Wanted& wanted);
  void encode(const QImage& image, const Wanted& wanted);
  void put(Result<Photo> photo, const Wanted& wanted);

  BenchJob& job_;
  Camera* camera_ = nullptr; ///< null: not wanted yet
  bool busy_ = false;        ///< one at a time
  QString waiting_;          ///< the caption of one that is not in the book yet
  Background working_;
};

} // namespace netmend

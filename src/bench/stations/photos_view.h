#pragma once

#include <deque>
#include <map>

#include <QStringList>
#include <QWidget>

#include "bench/session/background.h"
#include "bench/session/bench_job.h"

class QComboBox;
class QLineEdit;
class QListWidget;

namespace netmend {

/// Pictures of the board before and after. Files are read and thumbnails made beside the event loop.
class PhotosView : public QWidget {
  Q_OBJECT

public:
  explicit PhotosView(BenchJob& job, QWidget* parent = nullptr);
  /// Puts the pictures into the job under the caption typed; what is none is told.
  void addFiles(const QStringList& files);
  void chooseFiles();

Q_SIGNALS:
  void told(const QString& text, bool isError);

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  void refresh();
  void makeThumbnails();
  void readNext();
  void remove();
  [[nodiscard]] QString caption() const;

  BenchJob& job_;
  QComboBox* when_;
  QLineEdit* caption_;
  QListWidget* list_;
  struct Waiting {
    QString file;
    QString caption;
    JobId job; ///< the one that was open when it was chosen
  };
  std::deque<Waiting> waiting_;                ///< to be read
  std::map<std::uint64_t, QImage> thumbnails_; ///< by the photo's id: none is used twice
  Background reading_;
  Background drawing_;
};

} // namespace netmend

#include "photos_view.h"

#include <QComboBox>
#include <QFileDialog>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "netmend/drawing/photo_image.h"
#include "netmend/drawing/shown.h"

#include "proof_table.h"

namespace netmend {

namespace {

constexpr int thumbnailHeight = 92; ///< pixels at 100 %

/// As wide as it comes.
QSize boxOf(int height) {
  return {1 << 20, height};
}

} // namespace

PhotosView::PhotosView(BenchJob& job, QWidget* parent)
    : QWidget(parent), job_(job), when_(new QComboBox(this)), caption_(new QLineEdit(this)),
      list_(new QListWidget(this)), reading_(this), drawing_(this) {
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins({});
  const int height = scaled(thumbnailHeight);
  list_->setObjectName(QStringLiteral("photos"));
  list_->setAccessibleName(tr("Photos; Delete takes one out"));
  list_->setToolTip(tr("PNG or JPEG; they can be dropped here too. Delete takes the marked photo out; Undo "
                       "brings it back."));
  list_->setViewMode(QListView::IconMode);
  list_->setMovement(QListView::Static);
  list_->setResizeMode(QListView::Adjust);
  list_->setFlow(QListView::LeftToRight);
  list_->setWrapping(false);
  layOnCard(*list_);
  list_->setIconSize(QSize(height * 3 / 2, height));
  setLetters(*list_, Letters::small);
  setScaledHeight(*list_, thumbnailHeight + 48);
  list_->installEventFilter(this);
  layout->addWidget(makeCaption(tr("Photos"), this), 0, Qt::AlignTop);
  layout->addWidget(list_, 1);
  auto* column = new QVBoxLayout;
  when_->addItems({tr("Before"), tr("After")});
  when_->setAccessibleName(tr("Taken before or after the repair"));
  when_->setObjectName(QStringLiteral("photoWhen"));
  column->addWidget(when_);
  caption_->setPlaceholderText(tr("what the photo shows"));
  caption_->setAccessibleName(tr("What the photo shows"));
  caption_->setObjectName(QStringLiteral("photoCaption"));
  column->addWidget(caption_);
  QPushButton* add = makeButton(tr("Add photos"), QKeySequence(Qt::CTRL | Qt::Key_I), this);
  connect(add, &QPushButton::clicked, this, &PhotosView::chooseFiles);
  connect(caption_, &QLineEdit::returnPressed, this, &PhotosView::chooseFiles);
  column->addWidget(add);
  column->addStretch(1);
  layout->addStretch(0);
  layout->addLayout(column);
  connect(&job_, &BenchJob::papersChanged, this, &PhotosView::refresh);
  refresh();
}

QString PhotosView::caption() const {
  const QString what = caption_->text().trimmed();
  const QString when = when_->currentText();
  return what.isEmpty() ? when : tr("%1: %2", "before or after: what").arg(when, what);
}

void PhotosView::chooseFiles() {
  auto* dialog = new QFileDialog(this, tr("Photos for the job"));
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setFileMode(QFileDialog::ExistingFiles);
  dialog->setNameFilter(tr("Pictures (*.png *.jpg *.jpeg *.PNG *.JPG *.JPEG)"));
  connect(dialog, &QFileDialog::filesSelected, this, &PhotosView::addFiles);
  dialog->setModal(false);
  dialog->show();
}

void PhotosView::addFiles(const QStringList& files) {
  if (job_.job() == nullptr) {
    Q_EMIT told(tr("A photo needs a job: book one in first"), true);
    return;
  }
  for (const QString& file : files)
    waiting_.push_back({file, caption(), job_.job()->id});
  caption_->clear();
  readNext();
}

void PhotosView::readNext() {
  if (reading_.busy() || waiting_.empty()) return;
  const Waiting next = waiting_.front();
  waiting_.pop_front();
  const int height = list_->iconSize().height();
  reading_.run<Result<WholePhoto>>(
      [file = next.file, height](const std::stop_token&) {
        return readWholePhoto(std::filesystem::path(file.toStdU16String()), boxOf(height));
      },
      [this, text = next.caption, id = next.job](Result<WholePhoto> read) {
        const Job* job = job_.job();
        if (!read) {
          Q_EMIT told(shown(read.error()), true);
        } else if (job != nullptr && job->id == id) {
          read->photo.caption = text.toStdString();
          job_.addPhoto(read->photo);
        }
        readNext();
      });
}

void PhotosView::refresh() {
  const Job* job = job_.job();
  const int row = list_->currentRow();
  list_->clear();
  list_->hide(); // a pane with nothing in it is not laid out
  if (job == nullptr) return;
  for (const Photo& photo : job->photos) {
    auto* item = new QListWidgetItem(QString::fromStdString(photo.caption), list_);
    item->setData(Qt::UserRole, QVariant::fromValue<qulonglong>(photo.id.value));
    if (const auto known = thumbnails_.find(photo.id.value); known != thumbnails_.end())
      item->setIcon(QIcon(QPixmap::fromImage(known->second)));
  }
  list_->setVisible(list_->count() > 0);
  list_->setCurrentRow(std::min(row, list_->count() - 1));
  makeThumbnails();
}

void PhotosView::makeThumbnails() {
  using Made = std::map<std::uint64_t, QImage>;
  std::map<std::uint64_t, PhotoBytes> missing;
  for (const Photo& photo : job_.job()->photos)
    if (!thumbnails_.contains(photo.id.value)) missing[photo.id.value] = photo.bytes;
  if (missing.empty()) return;
  const int height = list_->iconSize().height();
  drawing_.run<Made>(
      [missing = std::move(missing), height](const std::stop_token& stop) {
        Made made;
        for (const auto& [id, bytes] : missing)
          if (!stop.stop_requested()) made[id] = photoImage(bytes.text(), boxOf(height)).value_or(QImage());
        return made;
      },
      [this](Made made) {
        thumbnails_.merge(made);
        for (int i = 0; i < list_->count(); ++i) {
          QListWidgetItem* item = list_->item(i);
          const auto known = thumbnails_.find(item->data(Qt::UserRole).toULongLong());
          if (known != thumbnails_.end()) item->setIcon(QIcon(QPixmap::fromImage(known->second)));
        }
      });
}

void PhotosView::remove() {
  const QListWidgetItem* item = list_->currentItem();
  if (item != nullptr) job_.removePhoto(PhotoId(item->data(Qt::UserRole).toULongLong()));
}

bool PhotosView::eventFilter(QObject* watched, QEvent* event) {
  if (watched == list_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete) {
    remove();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

} // namespace netmend

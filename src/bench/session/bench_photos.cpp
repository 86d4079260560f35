// Photos of the open job, on their way into the book and out of it.
#include <algorithm>

#include "bench_job.h"

namespace netmend {

bool BenchJob::addPhoto(const Photo& photo) {
  if (!job_) return false;
  const auto kept = std::make_shared<Photo>(photo);
  kept->id = {};
  return done(tr("photo"), later({job_->id, true, kept}), later({job_->id, false, kept}));
}

bool BenchJob::removePhoto(PhotoId id) {
  if (!job_) return false;
  const auto photo = std::find_if(job_->photos.begin(), job_->photos.end(),
                                  [id](const Photo& each) { return each.id == id; });
  if (photo == job_->photos.end()) return false;
  const auto kept = std::make_shared<Photo>(*photo);
  return done(tr("removal of a photo"), later({job_->id, false, kept}), later({job_->id, true, kept}));
}

std::function<Result<void>()> BenchJob::later(PhotoChange change) {
  return [this, change]() -> Result<void> {
    photoChanges_.push_back(change);
    if (photoChanges_.size() == 1) changeNextPhoto();
    return {};
  };
}

void BenchJob::changeNextPhoto() {
  // One that did not get into the book need not be taken out.
  while (!photoChanges_.empty() && !photoChanges_.front().add && !photoChanges_.front().photo->id)
    photoChanges_.pop_front();
  if (photoChanges_.empty()) return;
  const PhotoChange change = photoChanges_.front();
  storing_.run<Result<PhotoId>>(
      [file = bookFile(folders_), change](const std::stop_token&) -> Result<PhotoId> {
        // A connection of its own: that of the event loop is not for two.
        auto book = JobBook::open(file, BookUse::change);
        if (!book) return failure(book.error());
        const Photo& photo = *change.photo;
        if (change.add && !photo.id) return book->addPhoto(change.job, photo);
        // What is taken out can be put back: its bytes are read by now, or would be gone with its row.
        if (!change.add && photo.bytes.text().empty())
          return failure({pattern("core", "the photo cannot be read, so it stays"), file.string()});
        const auto done =
            change.add ? book->putBack(change.job, photo) : book->takeBack(change.job, photo.id);
        if (!done) return failure(done.error());
        return photo.id;
      },
      [this, change](Result<PhotoId> done) {
        photoChanges_.pop_front();
        if (!done) {
          fail(done.error());
        } else {
          change.photo->id = *done;
          if (job_ && job_->id == change.job && reload({*change.photo})) Q_EMIT papersChanged();
        }
        changeNextPhoto();
      });
}

} // namespace netmend

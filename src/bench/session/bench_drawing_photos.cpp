// The photos under a drawing: kept beside the board's file, read beside the event loop.
#include <algorithm>
#include <utility>

#include <QFile>
#include <QFileInfo>

#include "bench_drawing.h"
#include "netmend/base/digest.h"
#include "netmend/base/file.h"
#include "netmend/board/underlay.h"
#include "netmend/drawing/photo_image.h"

namespace netmend {

namespace {

constexpr double guessedPixelsPerMm = 20.0; ///< of a photo that nobody has straightened
constexpr QSize wholePhoto{1'000'000, 1'000'000};
constexpr std::uintmax_t mostPhotoBytes = 200u << 20;

/// The file's ending by what its bytes are, as Qt's readers tell them apart.
std::string endingOf(std::string_view bytes) {
  if (bytes.starts_with("\x89PNG")) return ".png";
  if (bytes.starts_with("\xFF\xD8")) return ".jpg";
  if (bytes.size() > 12 && bytes.substr(8, 4) == "WEBP") return ".webp";
  return ".image";
}

} // namespace

void BenchDrawing::addPhoto(const QString& file, Side side, bool closeUp) {
  if (!begin()) return;
  const std::filesystem::path from(file.toStdU16String());
  const auto folder = photosFolder(kept_->file());
  reading_.run<Result<ReadPhoto>>(
      [from, folder,
       name = QFileInfo(file).fileName().toStdString()](const std::stop_token&) -> Result<ReadPhoto> {
        auto bytes = readFile(from, mostPhotoBytes);
        if (!bytes) return failure(bytes.error());
        return keepPhoto(*bytes, name, folder, from.string());
      },
      [this, side, closeUp](Result<ReadPhoto> read) { photoRead(std::move(read), side, closeUp); });
}

void BenchDrawing::addPhoto(const QByteArray& bytes, const QString& name, Side side, bool closeUp) {
  if (!begin()) return;
  const auto folder = photosFolder(kept_->file());
  reading_.run<Result<ReadPhoto>>(
      [bytes, folder, name = name.toStdString()](const std::stop_token&) {
        return keepPhoto(bytes.toStdString(), name, folder, name);
      },
      [this, side, closeUp](Result<ReadPhoto> read) { photoRead(std::move(read), side, closeUp); });
}

Result<BenchDrawing::ReadPhoto> BenchDrawing::keepPhoto(const std::string& bytes, const std::string& name,
                                                        const std::filesystem::path& folder,
                                                        const std::string& from) {
  auto image = photoImage(bytes, wholePhoto);
  if (!image) {
    Error error = image.error();
    error.file = from;
    return failure(std::move(error));
  }
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) return failure({said(pattern("core", "cannot be made: {}"), error.message()), folder.string()});
  ReadPhoto out{sha256(bytes).substr(0, 16) + endingOf(bytes), name, {}};
  const auto file = folder / out.file;
  if (!std::filesystem::exists(file, error))
    if (auto written = writeFileAtomically(file, bytes); !written) return failure(written.error());
  out.photo = std::make_shared<const BoardPhoto>(*image);
  return out;
}

void BenchDrawing::photoRead(Result<ReadPhoto> read, Side side, bool closeUp) {
  if (!read) return job_.fail(read.error());
  if (!kept_) return;
  loaded_.emplace_back(read->file, read->photo);
  Underlay underlay;
  underlay.id = UnderlayId(board()->lastId + 1);
  underlay.name = read->name;
  underlay.file = read->file;
  underlay.width = Pixels(read->photo->size().width());
  underlay.height = Pixels(read->photo->size().height());
  underlay.side = side;
  underlay.closeUp = closeUp;
  underlay.lie = guessed(uprightLie(underlay, {}, guessedPixelsPerMm));
  underlay.origin = Origin::user;
  Edit edit;
  edit.put(underlay);
  if (perform(tr("photo"), edit)) Q_EMIT photoAdded(underlay.id);
}

void BenchDrawing::loadPhotos() {
  std::vector<std::string> missing;
  for (const Underlay& underlay : board()->underlays)
    if (std::none_of(loaded_.begin(), loaded_.end(), [&](const auto& l) { return l.first == underlay.file; }))
      missing.push_back(underlay.file);
  if (missing.empty()) return refreshPhotos();
  using Picture = std::shared_ptr<const BoardPhoto>;
  using Loaded = std::vector<std::pair<std::string, Result<Picture>>>;
  loading_.run<Loaded>(
      [missing, folder = photosFolder(kept_->file())](const std::stop_token& stop) {
        Loaded out;
        for (const std::string& file : missing) {
          if (stop.stop_requested()) break;
          const auto bytes = readFile(folder / file, mostPhotoBytes);
          auto image = bytes ? photoImage(*bytes, wholePhoto) : Result<QImage>(failure(bytes.error()));
          out.emplace_back(file, image ? Result<Picture>(std::make_shared<const BoardPhoto>(*image))
                                       : Result<Picture>(failure(image.error())));
        }
        return out;
      },
      [this](Loaded all) {
        for (auto& [file, photo] : all) {
          if (photo)
            loaded_.emplace_back(file, *photo);
          else
            job_.fail(photo.error());
        }
        refreshPhotos();
      });
}

void BenchDrawing::refreshPhotos() {
  std::vector<ShownPhoto> now;
  // Close-ups over photos of a whole side.
  for (const bool closeUp : {false, true})
    for (const Underlay& underlay : board()->underlays) {
      if (underlay.closeUp != closeUp) continue;
      const auto photo = std::find_if(loaded_.begin(), loaded_.end(),
                                      [&](const auto& l) { return l.first == underlay.file; });
      if (photo != loaded_.end()) now.push_back({underlay, photo->second});
    }
  if (now == shown_) return;
  shown_ = std::move(now);
  Q_EMIT photosChanged();
}

bool BenchDrawing::layPhoto(UnderlayId photo, const Straightened& straightened,
                            std::vector<PhotoPair> pairs) {
  const Underlay* there = begun() ? board()->underlays.find(photo) : nullptr;
  if (there == nullptr) return false;
  Underlay laid = *there;
  laid.lie = fromUser(straightened.lie);
  laid.pairs = std::move(pairs);
  return perform(tr("photo straightened"), Edit{}.put(laid));
}

bool BenchDrawing::setPhotoTones(UnderlayId photo, Share faded, Share lightened) {
  const Underlay* there = begun() ? board()->underlays.find(photo) : nullptr;
  if (there == nullptr) return false;
  Underlay toned = *there;
  toned.faded = faded;
  toned.lightened = lightened;
  return perform(tr("tones of the photo"), Edit{}.put(toned));
}

} // namespace netmend

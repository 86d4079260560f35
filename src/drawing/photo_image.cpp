#include "netmend/drawing/photo_image.h"

#include <QBuffer>
#include <QImageReader>

#include "netmend/jobbook/record.h"

namespace netmend {

namespace {

constexpr qint64 mostPixels = 250'000'000;
/// MiB; Qt's own limit, of 128, refuses a sound photo of 50 megapixels. Four bytes for each of the most
/// pixels.
constexpr int mostMemory = 954;

} // namespace

Result<QImage> photoImage(std::string_view bytes, QSize box) {
  QByteArray data = QByteArray::fromRawData(bytes.data(), static_cast<qsizetype>(bytes.size()));
  QBuffer buffer(&data);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  reader.setAutoTransform(true);
  const QSize size = reader.size();
  const qint64 pixels = qint64{size.width()} * size.height();
  if (pixels > mostPixels)
    return failure({pattern("core", "is a photo of too many pixels"), "", "",
                    said(pattern("core", "{} by {}"), size.width(), size.height()),
                    pattern("core", "at most 250 megapixels")});
  if (size.isValid()) {
    // The box is that of the photo as it is looked at.
    const bool turned = reader.transformation().testFlag(QImageIOHandler::TransformationRotate90);
    const QSize most = turned ? box.transposed() : box;
    if (size.width() > most.width() || size.height() > most.height())
      reader.setScaledSize(size.scaled(most, Qt::KeepAspectRatio).expandedTo({1, 1}));
  }
  QImageReader::setAllocationLimit(mostMemory);
  QImage image = reader.read();
  if (image.isNull())
    return failure({pattern("core", "is a picture that cannot be read to its end"), "", "",
                    reader.errorString().toStdString(), pattern("core", "a whole PNG or JPEG picture")});
  return image;
}

Result<WholePhoto> readWholePhoto(const std::filesystem::path& file, QSize box) {
  auto photo = readPhoto(file);
  if (!photo) return failure(photo.error());
  auto image = photoImage(photo->bytes.text(), box);
  if (image) return WholePhoto{std::move(*photo), std::move(*image)};
  Error error = image.error();
  error.file = file.string();
  return failure(std::move(error));
}

} // namespace netmend

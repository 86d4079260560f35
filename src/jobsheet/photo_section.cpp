#include <algorithm>

#include <QImage>

#include "netmend/drawing/photo_image.h"
#include "netmend/drawing/shown.h"
#include "sections.h"
#include "style.h"
#include "text.h"

namespace netmend {

namespace {

constexpr std::size_t photosPerRow = 2;
constexpr double photoGap = 5 * SheetStyle::millimetre;
constexpr double highestPhoto = 75 * SheetStyle::millimetre;
constexpr int dotsPerInch = 220; ///< more is lost on paper and only makes the file large
constexpr int mostCaptionLines = 5;

struct PrintedPhoto {
  QImage image;
  QSizeF size; ///< on paper
  TextBlock caption;
  [[nodiscard]] int captionLines() const { return std::min(caption.lines(), mostCaptionLines); }
  [[nodiscard]] double height() const {
    return size.height() + 1.5 * SheetStyle::point + caption.lineHeight() * captionLines();
  }
};

Piece photoRow(std::vector<PrintedPhoto> row, double width) {
  Piece piece;
  for (const PrintedPhoto& photo : row)
    piece.height = std::max(piece.height, photo.height());
  piece.spaceAbove = 4 * SheetStyle::point;
  piece.paint = [row = std::move(row), width](QPainter& painter, QPointF at) {
    for (const PrintedPhoto& photo : row) {
      painter.drawImage(QRectF(at, photo.size), photo.image);
      painter.setPen(sheetColors().ink);
      photo.caption.paint(painter, at + QPointF(0, photo.size.height() + 1.5 * SheetStyle::point), 0,
                          photo.captionLines());
      at.rx() += width + photoGap;
    }
  };
  return piece;
}

} // namespace

Result<QImage> printedPhoto(const Photo& photo, const QString& name, QSizeF box) {
  auto image = photoImage(photo.bytes.text(), (box * dotsPerInch / SheetStyle::unitsPerInch).toSize());
  if (!image) {
    Error error = image.error();
    error.place = name.toStdString();
    return failure(std::move(error));
  }
  if (!image->hasAlphaChannel()) return image;
  QImage onWhite(image->size(), QImage::Format_RGB32);
  onWhite.fill(Qt::white);
  QPainter(&onWhite).drawImage(0, 0, *image);
  return onWhite;
}

Result<Pieces> photos(const Sheet& sheet) {
  const std::vector<Photo>& all = sheet.job().photos;
  if (all.empty()) return Pieces{};
  const QSizeF box((sheet.style.body.width() - photoGap) / photosPerRow, highestPhoto);
  Pieces pieces{headingPiece(sheet.style, shown(pattern("core", "Photos")))};
  for (std::size_t first = 0; first < all.size(); first += photosPerRow) {
    std::vector<PrintedPhoto> row;
    for (std::size_t i = first; i < std::min(all.size(), first + photosPerRow); ++i) {
      const QString caption = cleaned(all[i].caption);
      QString name = shown(pattern("core", "photo %1")).arg(i + 1);
      if (!caption.isEmpty()) name += QStringLiteral(", ") + caption;
      const auto image = printedPhoto(all[i], name, box);
      if (!image) return failure(image.error());
      const QSizeF size = QSizeF(image->size()).scaled(box, Qt::KeepAspectRatio);
      name.front() = name.front().toUpper();
      row.push_back({*image, size, TextBlock({{name, false, false}}, sheet.style.small, box.width())});
    }
    pieces.push_back(photoRow(std::move(row), box.width()));
  }
  return pieces;
}

} // namespace netmend

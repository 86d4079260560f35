#include <algorithm>
#include <cmath>

#include <QBuffer>
#include <QImage>

#include "netmend/base/file.h"
#include "netmend/drawing/board_scene.h"
#include "netmend/drawing/face.h"

namespace netmend {

PictureType pictureType(double size) {
  PictureType type;
  QFont font = faceFont(std::floor(size));
  font.setHintingPreference(QFont::PreferNoHinting);
  // Any spacing at all keeps ligatures out: text taken from a PDF must have an f and an i, not one letter.
  font.setLetterSpacing(QFont::AbsoluteSpacing, 0.02);
  type.font = font;
  type.smallest = size * 0.65;
  return type;
}

void paintBoard(QPainter& painter, const Board& board, const BoardView& view, const Overlay& overlay) {
  const double size = std::clamp(view.frame.width() / 90.0, 11.0, 40.0);
  paintBoard(painter, BoardScene(board), view, overlay, pictureType(size));
}

Result<void> renderPng(const std::string& path, const Board& board, const Overlay& overlay,
                       const PngOptions& options) {
  const auto sensible = [](int pixels) { return pixels >= 16 && pixels <= 20000; };
  if (!sensible(options.width) || !sensible(options.height))
    return failure({pattern("core", "picture size is out of range"), path, "",
                    std::to_string(options.width) + " × " + std::to_string(options.height),
                    pattern("core", "16 to 20000 pixels each way")});
  QImage image(options.width, options.height, QImage::Format_RGB32);
  if (image.isNull()) return failure({pattern("core", "no memory for a picture of this size"), path});
  image.fill(PictureColors().paper);
  {
    QPainter painter(&image);
    const QRectF frame(0, 0, options.width, options.height);
    const Box box = options.part.empty() ? pictureExtent(board) : options.part;
    paintBoard(painter, board, viewOf(box, frame, options.side), overlay);
  }
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG"))
    return failure({pattern("core", "picture could not be encoded as PNG"), path});
  return writeFileAtomically(path, {bytes.constData(), static_cast<std::size_t>(bytes.size())});
}

} // namespace netmend

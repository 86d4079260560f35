#pragma once

#include <filesystem>
#include <string_view>

#include <QImage>
#include <QSize>

#include "netmend/base/error.h"
#include "netmend/jobbook/job.h"

namespace netmend {

/// A photo as the camera was held, no larger than `box` (pixels; smaller ones keep their size), read without
/// ever holding more of it than four bytes a pixel. Its size is known from its first bytes: one of more than
/// 250 megapixels is refused before it is decoded. Errors carry no file.
[[nodiscard]] Result<QImage> photoImage(std::string_view bytes, QSize box);

/// A photo from a file, and what `photoImage` makes of it: its first bytes say what it should be, not that
/// all of it is there. Errors name the file.
struct WholePhoto {
  Photo photo;
  QImage image;
};
[[nodiscard]] Result<WholePhoto> readWholePhoto(const std::filesystem::path& file, QSize box);

} // namespace netmend

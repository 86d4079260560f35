#pragma once

#include <QPainter>

#include "netmend/drawing/overlay.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// Text in ink with a ground of its own, so that it reads on top of anything.
void paintLabel(QPainter& painter, const QRectF& box, const QString& text, const PictureColors& colors);

} // namespace netmend

#pragma once

#include <QPainter>

#include "netmend/drawing/overlay.h"

namespace netmend {

/// Text with a light ground, so that it reads on top of anything.
void paintLabel(QPainter& painter, const QRectF& box, const QString& text, const QColor& colour);

} // namespace netmend

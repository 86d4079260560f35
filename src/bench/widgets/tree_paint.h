#pragma once

#include <optional>

#include <QPainter>

#include "line_tree.h"

namespace netmend {

/// Paints what of the tree lies in `shown`, in the layout's units.
void paintLineTree(QPainter& painter, const LineTree& tree, const TreeLayout& layout,
                   const std::optional<TreeSelection>& selection, const QRectF& shown,
                   const TreeMetrics& metrics, const PictureColors& colors);

} // namespace netmend

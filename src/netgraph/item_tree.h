#pragma once

#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/index/rtree.hpp>

#include "copper_items.h"

namespace netmend::copper {

using TreePoint = boost::geometry::model::d2::point_xy<double>;
using TreeBox = boost::geometry::model::box<TreePoint>;
using TreeEntry = std::pair<TreeBox, std::size_t>; ///< an item's box and its index
using ItemTree = boost::geometry::index::rtree<TreeEntry, boost::geometry::index::linear<16>>;

[[nodiscard]] inline TreeBox treeBox(const Bounds& b) {
  return {{b.min.x, b.min.y}, {b.max.x, b.max.y}};
}

} // namespace netmend::copper

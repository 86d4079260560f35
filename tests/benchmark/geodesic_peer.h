#pragma once

#include <memory>

#include "netmend/jumper/navigation_mesh.h"

namespace netmend::benchmarks {

/// The exact geodesic of CGAL on a navigation mesh's free triangles, as the peer that ways are measured
/// against.
class GeodesicPeer {
public:
  explicit GeodesicPeer(const NavigationMesh& mesh);
  ~GeodesicPeer();
  GeodesicPeer(const GeodesicPeer&) = delete;
  GeodesicPeer& operator=(const GeodesicPeer&) = delete;

  /// Length in mm of the shortest way, sequence tree of this source included in the work. Negative when there
  /// is none. Throws std::logic_error when the path does not run between the places asked for.
  [[nodiscard]] double lengthMm(Point from, Point to) const;

private:
  struct Data;
  std::unique_ptr<Data> data_;
};

} // namespace netmend::benchmarks

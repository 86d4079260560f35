#pragma once

#include <cstddef>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/shape.h"
#include "netmend/netgraph/resistance.h"

/// A copper area as a network of resistors, made only where somebody asks.
namespace netmend {

/// Nodes on a square grid inside the area, and resistors between neighbours. A resistor stands only where the
/// straight way between its nodes is copper all along, so that a slit separates however narrow it is; copper
/// narrower than `cell` may be lost, never invented.
struct AreaMesh {
  Length cell;
  Ohms perSquare;
  std::vector<Point> nodes; ///< contacts are added at the end
  std::vector<Resistor> resistors;
};

/// Meshes the area with the given cell. Each resistor stands for the strip of copper that is nearer to it
/// than to its neighbours (finite volumes), so that the sum over a cut is the copper's true width whatever
/// the grid. Fails when `cell` is not positive or more than `mostNodes` would be needed.
[[nodiscard]] Result<AreaMesh> meshArea(const Polygon& area, Length cell, Length thickness,
                                        std::size_t mostNodes = 1'000'000);

/// Joins what lies under `contact` to one new node, the contact's edge being a line of equal potential, and
/// gives its number. Fails when no node lies under it: the cell is then too coarse or the contact beside the
/// area.
[[nodiscard]] Result<std::size_t> addContact(AreaMesh& mesh, const RoundedShape& contact);

/// Resistance through the area from contact to contact. Halves the cell up to three times when a contact or a
/// neck between them is too small for it; fails when they still do not hang together.
[[nodiscard]] Result<Ohms> areaResistance(const Polygon& area, Length thickness, const RoundedShape& from,
                                          const RoundedShape& to, Length cell);

/// The graph with one area node taken apart into its mesh: what met the area at one place meets the mesh
/// there. All other nodes keep their number; the area's own goes to the mesh's first node. Mesh nodes are of
/// kind `area`, mesh edges are `contact` edges of the AreaId with their resistance, marked guessed. An edge
/// meets the area in a disc of its width at its end; where that is unknown or too small for the mesh, at the
/// nearest node.
[[nodiscard]] Result<CopperGraph> withAreaResolved(const CopperGraph& graph, NodeIndex area,
                                                   const Polygon& polygon, Length thickness, Length cell);

} // namespace netmend

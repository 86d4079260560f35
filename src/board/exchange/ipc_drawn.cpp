#include <algorithm>

#include "ipc_reader.h"

namespace netmend::ipc {

void addConductor(IpcReader& r, const std::string& net, int layer, const Drawn& drawn) {
  if (!drawn.pen) return;
  const bool round = drawn.pen->height <= Length(0);
  if (!round)
    r.folded.add(pattern("core", "conductors drawn with a rectangular pen, its smaller side taken as width"),
                 drawn.place.said());
  const Length width = round ? drawn.pen->width : std::min(drawn.pen->width, drawn.pen->height);
  const std::string name = r.netName(net);
  Fact<NetId> netId;
  if (name == "N/C")
    netId = fromFile(NetId{});
  else if (!name.empty())
    netId = fromFile(r.points.net(name));
  for (const Ring& run : drawn.runs) {
    for (std::size_t i = 1; i < run.size(); ++i) {
      Track track;
      track.id = r.points.board().newId<TrackId>();
      track.start = run[i - 1];
      track.end = run[i];
      if (layer >= 1 && static_cast<std::size_t>(layer) <= r.layers.size())
        track.layer = fromFile(r.layers[static_cast<std::size_t>(layer) - 1]);
      if (width > Length(0)) track.width = fromFile(width);
      track.net = netId;
      track.origin = Origin::file;
      r.points.board().tracks.put(track);
    }
  }
}

void addEdge(IpcReader& r, const Drawn& drawn) {
  for (std::size_t i = 0; i < drawn.runs.size(); ++i) {
    Ring points = drawn.runs[i];
    // The size of the pen should come first; where a file leaves it out, what stands there is the first
    // corner, and only with it does the outline close.
    if (i == 0 && drawn.pen && !drawn.penIsCorner && points.size() > 2 && points.front() != points.back()) {
      const Point first{drawn.pen->width, drawn.pen->height};
      if (first == points.back()) points.insert(points.begin(), first);
    }
    if (points.size() >= 2) r.edges.push_back({std::move(points), false});
  }
}

} // namespace netmend::ipc

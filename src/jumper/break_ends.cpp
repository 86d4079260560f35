#include <algorithm>
#include <set>

#include "netmend/jumper/proposal.h"

namespace netmend {
namespace {

/// Middle of the broken edges that have a place.
std::optional<Point> middleOf(const CopperGraph& graph, const std::vector<std::size_t>& cut) {
  Box box;
  for (auto [e, end] = boost::edges(graph); e != end; ++e) {
    if (std::find(cut.begin(), cut.end(), graph[*e].index) == cut.end()) continue;
    for (const auto& at : {graph[*e].from, graph[*e].to, graph[boost::source(*e, graph)].at,
                           graph[boost::target(*e, graph)].at})
      if (at) box.include(*at);
  }
  if (box.empty()) return std::nullopt;
  return Point{(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2};
}

std::vector<std::size_t> soundParts(const CopperGraph& graph, const std::vector<std::size_t>& cut) {
  std::vector<std::size_t> parts;
  for (auto [e, end] = boost::edges(graph); e != end; ++e)
    if (graph[*e].kind == EdgeKind::part && std::find(cut.begin(), cut.end(), graph[*e].index) == cut.end())
      parts.push_back(graph[*e].index);
  return parts;
}

} // namespace

Result<BreakEnds> breakEnds(const CopperGraph& graph, const std::vector<std::size_t>& cut) {
  std::set<NodeIndex> atCut;
  std::set<std::size_t> unknown(cut.begin(), cut.end());
  for (auto [e, end] = boost::edges(graph); e != end; ++e)
    if (std::find(cut.begin(), cut.end(), graph[*e].index) != cut.end()) {
      unknown.erase(graph[*e].index);
      atCut.insert(boost::source(*e, graph));
      atCut.insert(boost::target(*e, graph));
    }
  if (cut.empty())
    return failure({pattern("core", "no edge is named as broken, so there is nothing to bridge")});
  if (!unknown.empty())
    return failure({.message = pattern("core", "the line has no such edge"),
                    .found = said(pattern("core", "edge {}"), *unknown.begin()),
                    .expected = said(pattern("core", "0 to {}"),
                                     boost::num_edges(graph) == 0 ? 0 : boost::num_edges(graph) - 1)});

  BreakEnds ends;
  ends.fragments = fragments(graph, cut);
  ends.at = middleOf(graph, cut);
  ends.copper = fragments(graph, soundParts(graph, cut));
  std::set<std::size_t> touched;
  for (const NodeIndex n : atCut)
    touched.insert(ends.fragments.ofNode[n]);
  for (const NodeIndex n : atCut)
    ends.broken.push_back(ends.copper.ofNode[n]);
  std::sort(ends.broken.begin(), ends.broken.end());
  ends.broken.erase(std::unique(ends.broken.begin(), ends.broken.end()), ends.broken.end());
  if (touched.size() < 2)
    return failure(
        {.message = pattern(
             "core", "taking these edges out opens nothing: the line still hangs together another way"),
         .found = said(pattern("core", "{} edges"), cut.size()),
         .expected = pattern("core", "edges whose loss parts the line")});
  std::set<std::size_t> useful;
  for (const NodeIndex n : boost::make_iterator_range(boost::vertices(graph)))
    if (graph[n].kind == NodeKind::terminal && touched.contains(ends.fragments.ofNode[n]))
      useful.insert(ends.fragments.ofNode[n]);
  if (useful.size() != 2)
    return failure(
        {.message =
             useful.size() < 2
                 ? pattern("core", "only one side of the break has a terminal: a wire would lead nowhere")
                 : pattern("core", "the break parts the line into more than two pieces with terminals; "
                                   "bridge one gap after the other"),
         .found = said(pattern("core", "{} pieces with terminals"), useful.size()),
         .expected = asItIs("2")});
  ends.a = *useful.begin();
  ends.b = *useful.rbegin();
  return ends;
}

bool joinsBreak(const CopperGraph& graph, const BreakEnds& ends, const Landing& from, const Landing& to) {
  const auto a = fragmentsAt(graph, ends.fragments, from), b = fragmentsAt(graph, ends.fragments, to);
  const auto on = [&](const std::vector<std::size_t>& pieces, std::size_t fragment) {
    return pieces == std::vector<std::size_t>{fragment};
  };
  const bool joins = (on(a, ends.a) && on(b, ends.b)) || (on(a, ends.b) && on(b, ends.a));
  return joins && fragmentsAt(graph, ends.copper, from) == fragmentsAt(graph, ends.copper, to);
}

} // namespace netmend

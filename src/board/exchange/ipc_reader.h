#pragma once

#include <map>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "ipc_record.h"
#include "netmend/board/exchange/import.h"
#include "outline.h"
#include "pin_points.h"

namespace netmend::ipc {

/// What the file says before its points can be understood: units, long names, how many layers.
struct Preamble {
  Units units;
  bool unitsGiven = false;
  std::string title, job, revision;
  std::unordered_map<std::string, std::string> longNames; ///< by the name that records use
  int layers = 2;
  std::set<int> layersSeen;
  bool ended = false;
  std::vector<std::string> notices;
};
[[nodiscard]] Result<Preamble> preambleOf(const ImportSource& source);

/// A point that the records since the last 3x7 describe together.
struct Group {
  std::string reference, pin, net;
  std::vector<TestRecord> records;
  std::string place; ///< "line 12"
};

struct IpcReader {
  const ImportSource& source;
  Preamble preamble;
  PinPoints points;
  std::vector<LayerId> layers{}; ///< by number - 1
  Group group{};
  std::vector<EdgePiece> edges{};
  std::map<std::string, std::size_t> counted{};
  std::set<std::string> netsSeen{};

  IpcReader(const ImportSource& s, Preamble p)
      : source(s), preamble(std::move(p)), points(s, LabelConflict::separate) {}
  [[nodiscard]] std::string netName(const std::string& field) const;
};

// ipc_points.cpp
/// Turns the group into pads of a pin or a via, and empties it.
[[nodiscard]] Result<void> finishGroup(IpcReader& r);

// ipc_drawn.cpp
void addConductor(IpcReader& r, const std::string& net, int layer, const Drawn& drawn);
void addEdge(IpcReader& r, const Drawn& drawn);

/// Operation code of a line, or -1.
[[nodiscard]] int codeOf(std::string_view line);
[[nodiscard]] bool isTestRecord(int code);

} // namespace netmend::ipc

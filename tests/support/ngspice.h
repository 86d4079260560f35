#pragma once

#include <map>
#include <mutex>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <ngspice/sharedspice.h>

/// The reference circuit simulator as a function, for tests only. Link the test program with `ngspice`.
namespace netmend::test {

/// What the simulator has to be told once in a process, and what it printed since the last question.
class NgspiceLibrary {
public:
  NgspiceLibrary() {
    const auto print = [](char* text, int, void* user) {
      static_cast<NgspiceLibrary*>(user)->printed_ += std::string(text) + '\n';
      return 0;
    };
    const auto leave = [](int, NG_BOOL, NG_BOOL, int, void*) { return 0; };
    ngSpice_Init(print, nullptr, leave, nullptr, nullptr, nullptr, this);
    command("set ngbehavior=");
  }

  void command(std::string text) { ngSpice_Command(text.data()); }

  /// Voltage of every node at the operating point of a circuit.
  std::map<std::string, double> operatingPoint(std::string_view netlist) {
    printed_.clear();
    std::vector<std::string> lines{"* circuit under test"};
    for (std::size_t at = 0; at < netlist.size();) {
      const auto end = std::min(netlist.find('\n', at), netlist.size());
      if (end > at) lines.emplace_back(netlist.substr(at, end - at));
      at = end + 1;
    }
    // The defaults leave several microvolts of error.
    lines.emplace_back(".options reltol=1e-9 abstol=1e-15 vntol=1e-12 gmin=1e-15 itl1=1000");
    lines.emplace_back(".end");
    std::vector<char*> pointers;
    pointers.reserve(lines.size() + 1);
    for (auto& line : lines)
      pointers.push_back(line.data());
    pointers.push_back(nullptr);
    if (ngSpice_Circ(pointers.data()) != 0) fail("does not read the circuit");
    command("op");
    auto voltages = collect();
    command("destroy all");
    command("remcirc");
    return voltages;
  }

private:
  std::map<std::string, double> collect() {
    std::map<std::string, double> voltages;
    const std::string plot = ngSpice_CurPlot();
    // Without a solution the current plot is that of the constants.
    if (!plot.starts_with("op")) fail("finds no operating point");
    char** names = ngSpice_AllVecs(const_cast<char*>(plot.c_str()));
    for (; names != nullptr && *names != nullptr; ++names) {
      std::string name = plot + "." + *names;
      const auto* vector = ngGet_Vec_Info(name.data());
      if (vector != nullptr && vector->v_length > 0 && vector->v_realdata != nullptr)
        voltages[*names] = vector->v_realdata[0];
    }
    if (voltages.empty()) fail("finds no operating point");
    return voltages;
  }
  [[noreturn]] void fail(const std::string& what) const {
    throw std::runtime_error("ngspice " + what + ":\n" + printed_);
  }

  std::string printed_;
};

/// Node voltages (V, by node name in lower case) of a netlist's operating point, ground being node `0`. The
/// netlist is element and model lines only, without title, options and `.end`; currents of sources and
/// inductors are in it as `name#branch`. `.options temp=…` may be among the lines. Convergence limits are far
/// below a microvolt. Throws std::runtime_error with the simulator's own words. One circuit at a time: calls
/// wait for each other.
inline std::map<std::string, double> ngspiceOperatingPoint(std::string_view netlist) {
  static std::mutex one;
  const std::scoped_lock lock(one);
  static NgspiceLibrary library;
  return library.operatingPoint(netlist);
}

} // namespace netmend::test

#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <unistd.h>

namespace netmend::test {

/// IPC-D-356 test data that the CAD program's library (package kicad 6.0.11) writes of each board of
/// `kicad-demos`, in a folder of its own that goes with the object.
class IpcExports {
public:
  struct Export {
    std::filesystem::path cad; ///< the board's file
    std::filesystem::path ipc;
  };

  IpcExports() {
    std::filesystem::create_directories(folder_);
    const std::string script =
        "import pcbnew,glob\n"
        "for i,p in enumerate(sorted(glob.glob('/usr/share/kicad/demos/**/*.kicad_pcb',recursive=True))):\n"
        "    pcbnew.IPC356D_WRITER(pcbnew.LoadBoard(p)).Write('" +
        folder_.string() +
        "/%d.d356' % i)\n"
        "    print(p, file=open('" +
        folder_.string() + "/%d.txt' % i, 'w'))\n";
    const std::string command = "/usr/bin/python3 -c \"" + script + "\" >/dev/null 2>&1";
    if (std::system(command.c_str()) != 0)
      throw std::runtime_error("the CAD program's library wrote nothing");
    for (std::size_t i = 0; std::filesystem::exists(folder_ / fmt::format("{}.d356", i)); ++i) {
      std::string name;
      std::ifstream list(folder_ / fmt::format("{}.txt", i));
      std::getline(list, name);
      all.push_back({name, folder_ / fmt::format("{}.d356", i)});
    }
  }
  IpcExports(const IpcExports&) = delete;
  IpcExports& operator=(const IpcExports&) = delete;
  ~IpcExports() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }

  std::vector<Export> all;

private:
  std::filesystem::path folder_ =
      std::filesystem::temp_directory_path() / fmt::format("netmend-ipc-{}", getpid());
};

} // namespace netmend::test

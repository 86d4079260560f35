#pragma once

#include <filesystem>
#include <string_view>

namespace netmend {

/// Where the files are that a user may edit (`meters.json` …): the folder named by the environment
/// variable NETMEND_DATA if it is set, else `../share/netmend/data` beside the running program's folder
/// if that is there, else the source tree that the program was built from.
[[nodiscard]] std::filesystem::path dataFolder();

/// `dataFolder() / name`; whether it is there is for its reader to say.
[[nodiscard]] std::filesystem::path dataFile(std::string_view name);

} // namespace netmend

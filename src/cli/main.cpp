#include <exception>
#include <iostream>

#include "cli.h"

int main(int argc, char** argv) {
  try {
    std::ios::sync_with_stdio(false);
    return static_cast<int>(
        netmend::runCli(std::vector<std::string>(argv + 1, argv + argc), {std::cin, std::cout, std::cerr}));
  } catch (const std::exception& error) {
    // Nothing that a user can cause ends here: what is left is memory running out.
    std::cerr << "netmend: " << error.what() << "\n";
    return static_cast<int>(netmend::ExitCode::badInput);
  }
}

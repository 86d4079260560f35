#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>

#ifdef NETMEND_SANITIZED
/// What the reference simulator keeps for good when it is set up is not ours to free.
extern "C" const char* __lsan_default_suppressions() {
  return "leak:libngspice\n";
}
#endif

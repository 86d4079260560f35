#include "netmend/base/digest.h"

#include <catch2/catch.hpp>

using namespace netmend;

// NIST, "Examples with intermediate values", SHA-256: one block, two blocks; and the hash of no bytes
// (NIST CAVP, SHA256ShortMsg.rsp, Len = 0).
TEST_CASE("SHA-256 gives what its standard's examples say") {
  CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

#include "netmend/base/file.h"
#include "netmend/board/edit.h"
#include "netmend/board/exchange/import.h"

// fuzz_exchange SECONDS SEED FILE …  damages the files in random ways and reads them. A crash or a hang
// shows by itself (build with NETMEND_SANITIZE=ON); an unsound board or an error without its file stops
// it, and what was read is left in fuzz-failure.

using namespace netmend;

namespace {

std::string damaged(std::string text, std::mt19937_64& random) {
  const auto below = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  for (std::size_t i = 1 + below(6); i > 0 && !text.empty(); --i) {
    const std::size_t at = below(text.size());
    switch (below(4)) {
    case 0:
      text[at] = static_cast<char>(below(256));
      break;
    case 1:
      text.erase(at, 1 + below(100));
      break;
    case 2:
      text.insert(at, text.substr(below(text.size()), 1 + below(400)));
      break;
    default:
      text[at] = "()\"\\-.0123456789eXY*,;\n"[below(23)];
    }
  }
  return text;
}

bool copes(const std::string& content, const std::string& file) {
  const auto result = importBoard(ImportSource{content, file});
  return result ? checkReferences(result->board).has_value() : result.error().file == file;
}

} // namespace

int main(int count, char** words) {
  if (count < 4) {
    std::fputs("fuzz_exchange SECONDS SEED FILE ...\n", stderr);
    return 2;
  }
  const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(std::atol(words[1]));
  std::mt19937_64 random(std::strtoull(words[2], nullptr, 10));
  std::size_t runs = 0;
  while (std::chrono::steady_clock::now() < end) {
    for (int i = 3; i < count; ++i) {
      const auto original = readFile(words[i]);
      if (!original) {
        std::fprintf(stderr, "%s\n", original.error().text().c_str());
        return 2;
      }
      const std::string content = damaged(*original, random);
      ++runs;
      if (copes(content, words[i])) continue;
      if (!writeFileAtomically("fuzz-failure", content)) std::fputs("cannot keep the failing file\n", stderr);
      std::fprintf(stderr, "failed after %zu runs, see fuzz-failure\n", runs);
      return 1;
    }
  }
  std::printf("%zu damaged files read\n", runs);
  return 0;
}

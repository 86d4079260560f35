#include "jobsheet/flow.h"

#include <catch2/catch.hpp>

#include <random>

#include "support/seed.h"

using namespace netmend;

namespace {

Piece piece(double height, bool keep = false) {
  return {height, [](QPainter&, QPointF) {}, 0, keep, nullptr};
}

const QRectF firstBody(0, 0, 100, 100);
const QRectF body(0, 10, 100, 90);

} // namespace

TEST_CASE("a heading goes to the next page with what it heads") {
  const Pieces pieces{piece(85), piece(10, true), piece(10)};
  const auto pages = paginate(pieces, firstBody, body);
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].size() == 1);
  CHECK(pages[1].size() == 2);
  CHECK(pages[1][0].piece == &pieces[1]);
}

TEST_CASE("a table's head comes again where the table goes on") {
  const auto head = std::make_shared<const Piece>(piece(8));
  Pieces pieces{piece(8, true)};
  for (int i = 0; i < 20; ++i) {
    pieces.push_back(piece(10));
    pieces.back().head = head;
  }
  const auto pages = paginate(pieces, firstBody, body);
  REQUIRE(pages.size() == 3);
  CHECK(pages[1][0].piece == head.get());
  CHECK(pages[2][0].piece == head.get());
}

TEST_CASE("of 300 random documents every piece is placed once, in order, within its page") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  for (int round = 0; round < 300; ++round) {
    Pieces pieces;
    const int count = std::uniform_int_distribution<>(0, 60)(random);
    for (int i = 0; i < count; ++i) {
      pieces.push_back(piece(std::uniform_real_distribution<>(1, 60)(random), random() % 4 == 0));
      pieces.back().spaceAbove = static_cast<double>(random() % 8);
    }
    std::vector<const Piece*> seen;
    const auto pages = paginate(pieces, firstBody, body);
    for (std::size_t p = 0; p < pages.size(); ++p) {
      double top = p == 0 ? firstBody.top() : body.top();
      for (const PlacedPiece& placed : pages[p]) {
        REQUIRE(placed.top >= top - 1e-9);
        top = placed.top + placed.piece->height;
        REQUIRE(top <= 100 + 1e-9);
        seen.push_back(placed.piece);
      }
    }
    REQUIRE(seen.size() == pieces.size());
    for (std::size_t i = 0; i < seen.size(); ++i)
      REQUIRE(seen[i] == &pieces[i]);
  }
}

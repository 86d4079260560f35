// A board from a file brought into a drawn one: layers and outline.
#include "cross.h"

using namespace netmend;
using namespace netmend::test;

using Texts = std::vector<std::string>;

TEST_CASE("the file's layers come in between the drawn ones, with what is known of them") {
  Cross two;
  const LayerId top = two.drawn.layer("top");
  const LayerId bottom = two.drawn.layer("bottom");
  two.drawn.with(two.drawn.board.layers, bottom,
                 [](Layer& layer) { layer.copperThickness = fromUser(Length(70'000)); });
  std::vector<LayerId> theirs;
  for (const char* name : {"F.Cu", "In1", "In2", "B.Cu"}) {
    theirs.push_back(two.file.layer(name));
    two.file.with(two.file.board.layers, theirs.back(), [](Layer& layer) {
      layer.copperThickness = fromFile(Length(35'000));
      layer.dielectricBelow = fromFile(Length(200'000));
    });
  }
  for (const LayerId layer : theirs)
    two.file.track(mm(0, 0), mm(1, 1), layer, "A");
  const Board board = mergedBy(two.drawn.board, two.file.board);
  const auto& order = board.info.layerOrder;
  REQUIRE(order.size() == 4);
  CHECK(order.front() == top);
  CHECK(order.back() == bottom);
  CHECK(board.layers.find(order[1])->name == "In1");
  CHECK(board.layers.find(order[2])->name == "In2");
  CHECK(board.layers.find(top)->name == "top");
  CHECK(board.layers.find(top)->copperThickness == fromFile(Length(35'000)));
  CHECK(board.layers.find(top)->dielectricBelow == fromFile(Length(200'000)));
  CHECK(board.layers.find(bottom)->copperThickness == fromUser(Length(70'000)));
  CHECK(board.layers.size() == 4);
  REQUIRE(board.tracks.size() == 4);
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(board.tracks[i].layer == fromFile(order[i]));
}

TEST_CASE("a drawing without layers gets the file's, one with inner ones keeps those that the file has not") {
  Cross two;
  two.file.layer("F.Cu");
  two.file.layer("In2");
  two.file.layer("B.Cu");
  const auto names = [](const Board& board) {
    Texts out;
    for (const LayerId layer : board.info.layerOrder)
      out.push_back(board.layers.find(layer)->name);
    return out;
  };
  CHECK(names(mergedBy(two.drawn.board, two.file.board)) == Texts{"F.Cu", "In2", "B.Cu"});
  two.drawn.layer("top");
  CHECK(names(mergedBy(two.drawn.board, two.file.board)) == Texts{"top", "In2", "B.Cu"});
  two.drawn.layer("In1");
  two.drawn.layer("In2");
  two.drawn.layer("bottom");
  const Board board = mergedBy(two.drawn.board, two.file.board);
  CHECK(names(board) == Texts{"top", "In2", "In1", "bottom"});
  CHECK(board.layers.size() == 4);
}

TEST_CASE("a file that tells no layers leaves those of the drawing") {
  Cross two;
  two.drawn.layer("top");
  two.drawn.layer("bottom");
  const LayerId only = two.file.layer("copper");
  two.file.track(mm(0, 0), mm(1, 0), only, "A");
  two.file.via(mm(1, 0), "A");
  two.file.board.info.outline = fromFile(std::vector<Polygon>{{box(0, 0, 4, 4), {box(1, 1, 2, 2)}}});
  const Board board = mergedBy(two.drawn.board, two.file.board);
  CHECK(board.info.layerOrder == two.drawn.board.info.layerOrder);
  CHECK_FALSE(board.tracks[0].layer.known());
  CHECK(board.info.outline ==
        fromFile(std::vector<Polygon>{{carried(box(0, 0, 4, 4)), {carried(box(1, 1, 2, 2))}}}));
}

TEST_CASE("an outline that is drawn stays") {
  Cross two;
  two.drawn.board.info.outline = fromUser(std::vector<Polygon>{{box(0, 0, 40, 40), {}}});
  two.file.board.info.outline = fromFile(std::vector<Polygon>{{box(0, 0, 4, 4), {}}});
  CHECK(mergedBy(two.drawn.board, two.file.board).info.outline == two.drawn.board.info.outline);
}

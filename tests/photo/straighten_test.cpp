#include "netmend/photo/straighten.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

#include <Eigen/Dense>

#include "netmend/board/underlay.h"
#include "support/board_photo.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

Underlay photoOf(double width, double height, Side side = Side::top) {
  Underlay out;
  out.width = Pixels(width);
  out.height = Pixels(height);
  out.side = side;
  return out;
}

PhotoPair pairOf(const TakenPhoto& photo, Point place) {
  const QPointF at = photo.pixelOf(place);
  return {{Pixels(at.x()), Pixels(at.y())}, place};
}

/// A plain board of 80 by 50 mm: only its edge is to be seen.
Board plainBoard() {
  Board board;
  board.info.outline = fromUser(std::vector<Polygon>{{{mm(0, 0), mm(80, 0), mm(80, 50), mm(0, 50)}, {}}});
  return board;
}

/// The direct linear transformation by itself, from its definition (Hartley and Zisserman, Multiple View
/// Geometry, 2nd edition, algorithm 4.2, with its normalisation): the independent solution.
std::array<double, 9> directLinear(const std::vector<PhotoPair>& pairs) {
  const auto n = static_cast<Eigen::Index>(pairs.size());
  const auto normal = [&](auto x, auto y) {
    double mx = 0, my = 0, reach = 0;
    for (const PhotoPair& pair : pairs) {
      mx += x(pair) / static_cast<double>(n);
      my += y(pair) / static_cast<double>(n);
    }
    for (const PhotoPair& pair : pairs)
      reach += std::hypot(x(pair) - mx, y(pair) - my) / static_cast<double>(n);
    const double s = std::sqrt(2.0) / reach;
    Eigen::Matrix3d t;
    t << s, 0, -s * mx, 0, s, -s * my, 0, 0, 1;
    return t;
  };
  const Eigen::Matrix3d from = normal([](const PhotoPair& p) { return p.board.x.mm(); },
                                      [](const PhotoPair& p) { return p.board.y.mm(); });
  const Eigen::Matrix3d to = normal([](const PhotoPair& p) { return p.photo.x.value; },
                                    [](const PhotoPair& p) { return p.photo.y.value; });
  Eigen::MatrixXd a(2 * n, 9);
  for (Eigen::Index i = 0; i < n; ++i) {
    const PhotoPair& pair = pairs[static_cast<std::size_t>(i)];
    const Eigen::Vector3d x = from * Eigen::Vector3d(pair.board.x.mm(), pair.board.y.mm(), 1);
    const Eigen::Vector3d u = to * Eigen::Vector3d(pair.photo.x.value, pair.photo.y.value, 1);
    a.row(2 * i) << 0, 0, 0, -x.transpose(), u.y() * x.transpose();
    a.row(2 * i + 1) << x.transpose(), 0, 0, 0, -u.x() * x.transpose();
  }
  const Eigen::VectorXd h = Eigen::JacobiSVD<Eigen::MatrixXd>(a, Eigen::ComputeFullV).matrixV().col(8);
  Eigen::Matrix3d m;
  m << h(0), h(1), h(2), h(3), h(4), h(5), h(6), h(7), h(8);
  const Eigen::Matrix3d out = to.inverse() * m * from;
  std::array<double, 9> rows{};
  for (Eigen::Index i = 0; i < 9; ++i)
    rows[static_cast<std::size_t>(i)] = out(i / 3, i % 3) / out(2, 2);
  return rows;
}

double pixelsApart(const PhotoPoint& a, const PhotoPoint& b) {
  return std::hypot((a.x - b.x).value, (a.y - b.y).value);
}

} // namespace

TEST_CASE("a slanted photo is straightened by four places, wherever the camera stood") {
  const unsigned seed = testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> angle(-12.0, 12.0);
  const Board board = plainBoard();
  for (const Side side : {Side::top, Side::bottom})
    for (int i = 0; i < 3; ++i) {
      Camera camera;
      camera.side = side;
      camera.pixelsPerMm = 8.0;
      camera.blur = camera.noise = 0.0;
      camera.tiltX = angle(random);
      camera.tiltY = angle(random);
      camera.turn = angle(random);
      const TakenPhoto photo = takePhoto(board, camera);
      Underlay underlay = photoOf(photo.image.width(), photo.image.height(), side);
      std::vector<PhotoPair> pairs;
      for (const Point place : {mm(0, 50), mm(80, 50), mm(80, 0), mm(0, 0)})
        pairs.push_back(pairOf(photo, place));
      const auto straight = straighten(underlay, pairs, PhotoModel::perspective);
      REQUIRE(straight);
      CHECK(straight->residuals.empty()); // four always fit
      underlay.lie = fromUser(straight->lie);
      const PhotoMapping mapping(underlay);
      for (const Point place : {mm(10, 10), mm(40, 25), mm(77, 3), mm(5, 48)}) {
        const auto seen = mapping.toPhoto(place);
        REQUIRE(seen);
        CHECK(pixelsApart(*seen, pairOf(photo, place).photo) < 1e-3);
        CHECK(distance(*mapping.toBoard(pairOf(photo, place).photo), place) < Length(300));
      }
    }
}

TEST_CASE("perspective by many clicked places is as good as the direct linear transformation's, and better") {
  const unsigned seed = testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> off(-0.6, 0.6);
  Camera camera;
  camera.pixelsPerMm = 8.0;
  camera.tiltX = 9.0;
  camera.tiltY = -6.0;
  const TakenPhoto photo = takePhoto(plainBoard(), camera);
  std::vector<PhotoPair> pairs;
  for (int i = 0; i < 12; ++i) {
    PhotoPair pair = pairOf(photo, mm(2 + 15.0 * (i % 6), i < 6 ? 3 + i : 40 + 0.7 * i));
    pair.photo.x += Pixels(off(random));
    pair.photo.y += Pixels(off(random));
    pairs.push_back(pair);
  }
  Underlay underlay = photoOf(photo.image.width(), photo.image.height());
  const auto straight = straighten(underlay, pairs, PhotoModel::perspective);
  REQUIRE(straight);
  const auto misfit = [&](const std::array<double, 9>& plane) {
    underlay.lie = fromUser(PhotoLie{plane, 0.0});
    const PhotoMapping mapping(underlay);
    double sum = 0.0;
    for (const PhotoPair& pair : pairs)
      sum += std::pow(pixelsApart(*mapping.toPhoto(pair.board), pair.photo), 2);
    return sum;
  };
  const double mine = misfit(straight->lie.plane);
  const double theirs = misfit(directLinear(pairs));
  CHECK(mine <= theirs * (1 + 1e-9));
  CHECK(mine > 0.9 * theirs);
  CHECK(straight->residuals.size() == 12);
  // Without any slip both are the same.
  for (PhotoPair& pair : pairs)
    pair = pairOf(photo, pair.board);
  const auto exact = straighten(underlay, pairs, PhotoModel::perspective);
  REQUIRE(exact);
  const auto linear = directLinear(pairs);
  Underlay theirLie = underlay;
  underlay.lie = fromUser(exact->lie);
  theirLie.lie = fromUser(PhotoLie{linear, 0.0});
  for (const Point place : {mm(0, 0), mm(80, 50), mm(13, 44), mm(40, 25)})
    CHECK(pixelsApart(*PhotoMapping(underlay).toPhoto(place), *PhotoMapping(theirLie).toPhoto(place)) < 1e-3);
}

TEST_CASE("a lens is taken out by six places, and four leave it in") {
  const Board board = plainBoard();
  for (const double barrel : {0.02, -0.01}) {
    Camera camera;
    camera.pixelsPerMm = 8.0;
    camera.tiltX = 4.0;
    camera.barrel = barrel;
    const TakenPhoto photo = takePhoto(board, camera);
    Underlay underlay = photoOf(photo.image.width(), photo.image.height());
    std::vector<PhotoPair> pairs;
    for (const Point place : {mm(0, 50), mm(80, 50), mm(80, 0), mm(0, 0), mm(40, 25), mm(20, 40)})
      pairs.push_back(pairOf(photo, place));
    const auto worst = [&](const Straightened& straight) {
      underlay.lie = fromUser(straight.lie);
      const PhotoMapping mapping(underlay);
      Length most;
      for (const Point place : {mm(20, 10), mm(60, 30), mm(70, 45), mm(10, 25)})
        most = std::max(most, distance(*mapping.toBoard(pairOf(photo, place).photo), place));
      return most;
    };
    const auto lens = straighten(underlay, pairs, PhotoModel::lens);
    REQUIRE(lens);
    CHECK(lens->model == PhotoModel::lens);
    CHECK(lens->residuals.size() == 6);
    CHECK(lens->lie.radial == Approx(-barrel).epsilon(0.02));
    CHECK(worst(*lens) < Length(5'000));
    pairs.resize(4);
    const auto flat = straighten(underlay, pairs, PhotoModel::perspective);
    REQUIRE(flat);
    CHECK(worst(*flat) > Length(50'000));
  }
}

TEST_CASE("two places move, turn and scale a photo, from below with left and right changed") {
  Underlay underlay = photoOf(800, 600, Side::top);
  // 10 px/mm, turned by a quarter: the board's x runs up in the photo.
  const std::vector<PhotoPair> pairs{{{Pixels(100), Pixels(500)}, mm(0, 0)},
                                     {{Pixels(100), Pixels(300)}, mm(20, 0)}};
  const auto straight = straighten(underlay, pairs, PhotoModel::similarity);
  REQUIRE(straight);
  CHECK(straight->residuals.empty());
  underlay.lie = fromUser(straight->lie);
  const auto seen = PhotoMapping(underlay).toPhoto(mm(20, 10));
  CHECK(seen->x.value == Approx(0.0).margin(1e-9)); // y runs to the left then
  CHECK(seen->y.value == Approx(300.0));

  underlay.side = Side::bottom;
  const auto below = straighten(underlay, pairs, PhotoModel::similarity);
  REQUIRE(below);
  underlay.lie = fromUser(below->lie);
  const auto mirrored = PhotoMapping(underlay).toPhoto(mm(20, 10));
  CHECK(mirrored->x.value == Approx(200.0));
  CHECK(mirrored->y.value == Approx(300.0));

  // A third place checks the two before.
  std::vector<PhotoPair> three = pairs;
  three.push_back({{Pixels(205), Pixels(300)}, mm(20, 10)});
  const auto checked = straighten(underlay, three, PhotoModel::similarity);
  REQUIRE(checked);
  REQUIRE(checked->residuals.size() == 3);
  CHECK(*std::max_element(checked->residuals.begin(), checked->residuals.end()) > Length(50'000));
}

TEST_CASE("places that tell nothing are refused") {
  const Underlay underlay = photoOf(800, 600);
  const auto at = [](double x, double y, Point place) { return PhotoPair{{Pixels(x), Pixels(y)}, place}; };
  const auto refused = [&](const std::vector<PhotoPair>& pairs, PhotoModel model) {
    return !straighten(underlay, pairs, model);
  };
  CHECK(refused({}, PhotoModel::similarity));
  CHECK(refused({at(1, 1, mm(1, 1))}, PhotoModel::similarity));
  CHECK(refused({at(1, 1, mm(1, 1)), at(1, 1, mm(2, 1))}, PhotoModel::similarity));
  CHECK(refused({at(1, 1, mm(1, 1)), at(2, 1, mm(1, 1))}, PhotoModel::similarity));
  // Three of four in a line, in the photo or on the board.
  CHECK(refused({at(0, 0, mm(0, 0)), at(100, 0, mm(10, 0)), at(200, 0, mm(20, 5)), at(0, 100, mm(0, 10))},
                PhotoModel::perspective));
  CHECK(refused({at(0, 0, mm(0, 0)), at(100, 0, mm(10, 0)), at(200, 50, mm(20, 0)), at(0, 100, mm(0, 10))},
                PhotoModel::perspective));
  CHECK(
      refused({at(0, 0, mm(0, 0)), at(100, 0, mm(10, 0)), at(200, 50, mm(20, 5))}, PhotoModel::perspective));
  CHECK(richestModel(1) == std::nullopt);
  CHECK(richestModel(2) == PhotoModel::similarity);
  CHECK(richestModel(3) == PhotoModel::similarity);
  CHECK(richestModel(4) == PhotoModel::perspective);
  CHECK(richestModel(5) == PhotoModel::perspective);
  CHECK(richestModel(6) == PhotoModel::lens);
}

TEST_CASE("straight edges are seen as straight, bent ones by how much, and none where there are none") {
  Camera camera;
  camera.pixelsPerMm = 10.0;
  camera.tiltX = 5.0;
  const std::vector<Point> corners{mm(0, 0), mm(80, 0), mm(80, 50), mm(0, 50)};
  const auto edges = [&](const TakenPhoto& photo) {
    const QImage grey = photo.image.convertToFormat(QImage::Format_Grayscale8);
    std::vector<std::uint8_t> pixels;
    for (int y = 0; y < grey.height(); ++y)
      pixels.insert(pixels.end(), grey.constScanLine(y), grey.constScanLine(y) + grey.width());
    Underlay lying = photoOf(grey.width(), grey.height());
    std::vector<PhotoPair> pairs;
    for (const Point corner : corners)
      pairs.push_back(pairOf(photo, corner));
    lying.lie = fromUser(straighten(lying, pairs, PhotoModel::perspective)->lie);
    return edgesOff({pixels, grey.width(), grey.height()}, lying, corners);
  };
  const auto straight = edges(takePhoto(plainBoard(), camera));
  REQUIRE(straight);
  INFO(straight->mm());
  CHECK(*straight < Length(60'000)); // half a pixel
  camera.barrel = 0.02;
  const auto bent = edges(takePhoto(plainBoard(), camera));
  REQUIRE(bent);
  // By hand: a barrel of 2 % moves the middle of the long edge outwards by about 0.3 mm against its ends.
  CHECK(*bent > Length(100'000));
  CHECK(*bent < Length(600'000));
  TakenPhoto nothing = takePhoto(plainBoard(), camera);
  nothing.image.fill(Qt::gray);
  CHECK_FALSE(edges(nothing));
}

// Arrays of pins and sizes of chips against what is on the boards of the Debian package kicad-demos, read
// where it puts them.
#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <filesystem>
#include <functional>
#include <iostream>
#include <map>
#include <regex>

#include "netmend/base/plane.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/lookup.h"
#include "netmend/sketch/chip_sizes.h"
#include "netmend/sketch/pin_array.h"

using namespace netmend;

namespace {

std::vector<std::filesystem::path> demoBoards() {
  std::vector<std::filesystem::path> boards;
  for (const auto& entry : std::filesystem::recursive_directory_iterator("/usr/share/kicad/demos"))
    if (entry.path().extension() == ".kicad_pcb") boards.push_back(entry.path());
  std::sort(boards.begin(), boards.end());
  return boards;
}

void forEachPart(const std::function<void(const Lookup&, const Part&)>& visit) {
  for (const auto& path : demoBoards()) {
    const auto imported = importBoard(path);
    REQUIRE(imported);
    const Lookup lookup(imported->board);
    for (const Part& part : imported->board.parts) {
      INFO(path.filename().string() << " " << part.reference << " " << part.package.value);
      visit(lookup, part);
    }
  }
}

using Places = std::map<std::string, Point>;

/// The places of the part's pins, of those that have only one; pins of several places are none of an array.
Places placesOf(const Lookup& lookup, PartId part) {
  Places places;
  std::map<std::string, int> times;
  for (const PinId id : lookup.pinsOf(part))
    for (const PadId padId : lookup.padsOf(id)) {
      const Pad& pad = *lookup.board().pads.find(padId);
      const std::string& name = lookup.board().pins.find(id)->name;
      if (name.empty() || !pad.position.known()) continue;
      ++times[name];
      places[name] = pad.position.value;
    }
  std::erase_if(places, [&](const auto& place) { return times[place.first] > 1; });
  return places;
}

constexpr double slip = 5'000.0; // of rounded drawings, in nanometres

/// Whether what has these numbers lies, seen from its side, in rows and columns: `number(column, row)`.
bool liesInRows(const std::vector<Vec>& pins, std::size_t rows,
                const std::function<std::size_t(std::size_t, std::size_t)>& number) {
  const std::size_t columns = pins.size() / rows;
  if (columns < 2) return false;
  const auto at = [&](std::size_t c, std::size_t r) { return pins.at(number(c, r) - 1); };
  const Vec step = (at(columns - 1, 0) - at(0, 0)) * (1.0 / static_cast<double>(columns - 1));
  const Vec down = rows > 1 ? (at(0, rows - 1) - at(0, 0)) * (1.0 / static_cast<double>(rows - 1)) : Vec{};
  if (length(step) < 1e5 || std::abs(dot(step, down)) > slip * (length(step) + length(down))) return false;
  for (std::size_t r = 0; r < rows; ++r)
    for (std::size_t c = 0; c < columns; ++c) {
      const Vec expected = at(0, 0) + step * static_cast<double>(c) + down * static_cast<double>(r);
      if (length(at(c, r) - expected) > slip) return false;
    }
  return true;
}

/// Whether they lie on the four sides of a square, counted counter-clockwise.
bool liesOnFourSides(const std::vector<Vec>& pins) {
  if (pins.size() < 8 || pins.size() % 4 != 0) return false;
  const std::size_t m = pins.size() / 4;
  const Vec centre = (pins.front() + pins[2 * m]) * 0.5;
  // A quarter of a turn carries each side onto the next.
  for (std::size_t i = 0; i < pins.size(); ++i) {
    const Vec from = pins[i] - centre;
    const Vec to = pins[(i + m) % pins.size()] - centre;
    if (length(Vec{-from.y, from.x} - to) > slip) return false;
  }
  const Vec step = (pins[m - 1] - pins[0]) * (1.0 / static_cast<double>(m - 1));
  const Vec toFirst = pins[0] - centre;
  if (dot(step, toFirst + pins[m - 1] - centre) > slip * length(step)) return false; // it lies across
  for (std::size_t i = 0; i < m; ++i)
    if (length(pins[0] + step * static_cast<double>(i) - pins[i]) > slip) return false;
  return true;
}

Vec seen(Point p, Side side) {
  return {(side == Side::bottom ? -1.0 : 1.0) * static_cast<double>(p.x.nm), static_cast<double>(p.y.nm)};
}

/// What a regular array it is, told by the names and places of its pins alone.
std::optional<PinArray> regularNumbered(const Places& all, Side side) {
  std::vector<Vec> pins;
  for (std::size_t n = 1; all.contains(std::to_string(n)); ++n)
    pins.push_back(seen(all.at(std::to_string(n)), side));
  // A pad in the middle of an even number of others is there for the heat.
  if (pins.size() % 2 == 1 && pins.size() > 8) {
    Vec middle;
    for (std::size_t i = 0; i + 1 < pins.size(); ++i)
      middle = middle + pins[i] * (1.0 / static_cast<double>(pins.size() - 1));
    if (length(middle - pins.back()) < 50'000.0) pins.pop_back();
  }
  PinArray array;
  array.pins = pins.size();
  if (pins.size() < 3) return std::nullopt;
  if (liesInRows(pins, 1, [](std::size_t c, std::size_t) { return c + 1; })) return array;
  if (liesOnFourSides(pins)) {
    array.form = PinForm::fourSides;
    return array;
  }
  for (array.rows = 2; array.rows <= pins.size() / 2; ++array.rows) {
    if (pins.size() % array.rows != 0) continue;
    const std::size_t columns = pins.size() / array.rows;
    array.order = PinOrder::alternating;
    if (liesInRows(pins, array.rows, [&](auto c, auto r) { return c * array.rows + r + 1; })) return array;
    array.order = PinOrder::along;
    if (liesInRows(pins, array.rows, [&](auto c, auto r) { return r * columns + c + 1; })) return array;
    array.order = PinOrder::round;
    const auto round = [&](std::size_t c, std::size_t r) { return r == 0 ? c + 1 : pins.size() - c; };
    if (array.rows == 2 && liesInRows(pins, 2, round) &&
        cross(pins[1] - pins[0], pins.back() - pins[0]) > 0.0) // counter-clockwise
      return array;
  }
  return std::nullopt;
}

/// A grid's: rows by JEDEC's letters (JEP95), places without a pin are left out.
std::optional<PinArray> regularLettered(const Places& all, Side side) {
  const std::string letters = "ABCDEFGHJKLMNPRTUVWY";
  std::map<std::pair<std::size_t, std::size_t>, Vec> pins; // by row and column
  std::size_t rows = 0, columns = 0;
  for (const auto& [name, at] : all) {
    const auto row = letters.find(name.front());
    if (row == std::string::npos || name.size() < 2 ||
        name.find_first_not_of("0123456789", 1) != std::string::npos)
      return std::nullopt;
    const std::size_t column = std::stoul(name.substr(1)) - 1;
    pins.emplace(std::pair(row, column), seen(at, side));
    rows = std::max(rows, row + 1);
    columns = std::max(columns, column + 1);
  }
  if (rows < 2 || columns < 2 || !pins.contains({0, 0}) || !pins.contains({0, columns - 1}) ||
      !pins.contains({rows - 1, 0}))
    return std::nullopt;
  const Vec first = pins.at({0, 0});
  const Vec step = (pins.at({0, columns - 1}) - first) * (1.0 / static_cast<double>(columns - 1));
  const Vec down = (pins.at({rows - 1, 0}) - first) * (1.0 / static_cast<double>(rows - 1));
  if (cross(step, down) >= 0.0) return std::nullopt; // downwards from a row to the right
  PinArray array;
  array.form = PinForm::grid;
  array.rows = rows;
  array.pins = rows * columns;
  for (std::size_t r = 0; r < rows; ++r)
    for (std::size_t c = 0; c < columns; ++c) {
      const auto pin = pins.find({r, c});
      if (pin == pins.end()) {
        array.left.push_back(letters[r] + std::to_string(c + 1));
      } else if (length(pin->second - first - step * static_cast<double>(c) - down * static_cast<double>(r)) >
                 slip) {
        return std::nullopt;
      }
    }
  return array;
}

bool agrees(const PlacedArray& placed, const Places& places) {
  for (const auto& pad : placed.pads)
    if (distance(pad.at, places.at(pad.name)) > Length(20'000)) return false;
  return true;
}

struct Tried {
  std::size_t row = 0, rows = 0, round = 0, fourSides = 0, grid = 0, turned = 0, otherWay = 0, irregular = 0;
  [[nodiscard]] std::size_t all() const { return row + rows + round + fourSides + grid; }
};

void tryArray(const PinArray& array, const Places& places, Side side, Tried& tried) {
  const bool round = array.form == PinForm::rows && array.order == PinOrder::round;
  ++(array.form == PinForm::fourSides ? tried.fourSides
     : array.form == PinForm::grid    ? tried.grid
     : array.rows == 1                ? tried.row
     : round                          ? tried.round
                                      : tried.rows);
  PinClicks clicks{places.at(firstPin(array)), places.at(oppositePin(array)), {}, side, false};
  // Rows at an angle need their end, too.
  const std::size_t columns = array.form == PinForm::fourSides ? array.pins / 4 : array.pins / array.rows;
  const bool grid = array.form == PinForm::grid;
  const bool alternating = array.form == PinForm::rows && array.order == PinOrder::alternating;
  const std::string end = grid ? "A" + std::to_string(columns)
                               : std::to_string(alternating ? (columns - 1) * array.rows + 1 : columns);
  const Point d = places.at(end) - clicks.first;
  if (array.rows > 1 || array.form == PinForm::fourSides)
    if (std::min(std::abs(d.x.nm), std::abs(d.y.nm)) > 1'000) {
      clicks.rowEnd = places.at(end);
      ++tried.turned;
    }
  auto placed = placeArray(array, clicks);
  REQUIRE(placed);
  CHECK(pinNames(array).size() == placed->pads.size());
  if (agrees(*placed, places)) return;
  // Of a square nothing tells which way the rows run: there is the other way.
  const bool open = array.form == PinForm::rows && array.rows == columns && !round;
  clicks.otherWay = true;
  placed = placeArray(array, clicks);
  REQUIRE(placed);
  CHECK((open && agrees(*placed, places)));
  ++tried.otherWay;
}

} // namespace

TEST_CASE("connectors and packages on real boards lie where two clicks place them") {
  Tried tried;
  forEachPart([&](const Lookup& lookup, const Part& part) {
    const Side side = part.side.valueOr(Side::top);
    Places places = placesOf(lookup, part.id);
    auto array = regularNumbered(places, side);
    if (!array) array = regularLettered(places, side);
    if (array)
      tryArray(*array, places, side, tried);
    else if (places.size() > 2)
      ++tried.irregular;
  });
  std::cout << "arrays of pins on real boards: " << tried.all() << " within 0.02 mm, of them " << tried.row
            << " single rows, " << tried.rows << " in several rows, " << tried.round << " counted round, "
            << tried.fourSides << " on four sides, " << tried.grid << " grids; " << tried.turned
            << " at an angle, " << tried.otherWay << " the other way; " << tried.irregular
            << " irregular ones left out\n";
  CHECK(tried.all() >= 60);
  CHECK(tried.fourSides >= 5);
  CHECK(tried.round >= 20);
  CHECK(tried.grid >= 1);
  CHECK(tried.otherWay <= 3);
}

TEST_CASE("chips on real boards have the sizes of their codes") {
  const auto sizes = loadChipSizes(NETMEND_SOURCE_DIR "/data/part_sizes.json");
  REQUIRE(sizes);
  // R_0402_1005Metric, C_1206, 1005_C
  const std::regex inches("(^|:|_)(R|C|L|LED|D)_(\\d{4,5})(_.*)?$");
  const std::regex metric("(^|:)(\\d{4})_[RCL]$");
  std::size_t tried = 0, exact = 0;
  double worst = 0.0;
  std::map<std::string, int> codes;
  forEachPart([&](const Lookup& lookup, const Part& part) {
    std::smatch match;
    const std::string package = part.package.valueOr({});
    const ChipSize* size = nullptr;
    if (std::regex_search(package, match, inches))
      size = sizes->find(match[3].str());
    else if (std::regex_search(package, match, metric))
      size = sizes->find(match[2].str() + "M");
    const Places places = placesOf(lookup, part.id);
    if (size == nullptr || places.size() != 2) return;
    ++tried;
    ++codes[size->code];
    const Length apart = distance(places.begin()->second, places.rbegin()->second);
    // Pads that are drawn out for a soldering iron lie farther apart.
    const bool drawnOut = package.find("HandSolder") != std::string::npos;
    CHECK(std::abs((apart - size->padsApart).mm()) <= (drawnOut ? 0.4 : 0.25));
    worst = std::max(worst, drawnOut ? 0.0 : std::abs((apart - size->padsApart).mm()));
    const ChipSize& nearest = sizes->nearest(apart);
    exact += nearest.code == size->code ? 1 : 0;
    CHECK(std::abs(&nearest - size) <= 1); // it, or one beside it
  });
  std::cout << "chips on real boards: " << tried << ", of " << codes.size()
            << " sizes; the nearest size is theirs of " << 100 * exact / tried
            << " %; pads that are not drawn out lie at most " << worst << " mm otherwise\n";
  CHECK(tried >= 150);
  CHECK(codes.size() >= 4);
  CHECK(100 * exact >= 90 * tried);
}

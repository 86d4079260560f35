#include "logger_board.h"

#include <array>
#include <vector>

#include "drawing_board.h"

/// The main board of a tide-gauge logger that does not exist. Seen from the top, the keypad's connector is at
/// the lower left, the display's to its right, the controller in the middle, the radio under its shield at
/// the upper right, the coin cell below it. Only what somebody could trace is drawn as copper.
namespace netmend::demo {

namespace {

using Nets = std::vector<std::string>;
constexpr std::array<const char*, 8> keys{"KEY_ROW0", "KEY_ROW1", "KEY_ROW2", "KEY_ROW3",
                                          "KEY_COL0", "KEY_COL1", "KEY_COL2", "KEY_COL3"};

double keypadX(int k) {
  return 12.5 + k;
}
double filterX(int k) {
  return 32.0 + 2.2 * k;
}

void placeController(DrawingBoard& board) {
  Nets nets(64, "");
  for (std::size_t i : {0u, 17u, 33u, 50u})
    nets[i] = "GND";
  for (std::size_t i : {1u, 18u, 34u, 51u})
    nets[i] = "+3V3";
  for (std::size_t k = 0; k < keys.size(); ++k)
    nets[4 + k] = std::string(keys[k]) + "_U";
  const Nets right{"RADIO_CLK", "RADIO_MOSI", "RADIO_MISO", "RADIO_CS",  "RADIO_IRQ",
                   "RADIO_RST", "FLASH_CS",   "FLASH_CLK",  "FLASH_IO0", "FLASH_IO1"};
  for (std::size_t i = 0; i < right.size(); ++i)
    nets[20 + i] = right[i];
  const Nets upper{"LCD_D0", "LCD_D1",  "LCD_D2", "LCD_D3",  "LCD_CLK",
                   "LCD_DE", "LCD_RST", "LCD_BL", "DBG_CLK", "DBG_IO"};
  for (std::size_t i = 0; i < upper.size(); ++i)
    nets[36 + i] = upper[i];
  const Nets sd{"SD_D2", "SD_D3", "SD_CMD", "SD_CLK", "SD_D0", "SD_D1"};
  for (std::size_t k = 0; k < sd.size(); ++k)
    nets[48 + 2 * k] = sd[k];
  const Nets left{"ADC_CS", "I2C_SDA", "I2C_SCL", "BUS_TX", "BUS_RX"};
  // Between the card's lines.
  nets[49] = left[0];
  nets[53] = left[1];
  nets[55] = left[2];
  nets[57] = left[3];
  nets[59] = left[4];
  nets[60] = "XTAL_A";
  nets[61] = "XTAL_B";
  nets[62] = "PWR_KEY";
  nets[63] = "-";
  board.place({"U1", PartKind::chip, "controller", 42, 33, 0, Side::top, nets},
              quad(64, 0.5, 11.4, 1.5, 0.3, 10));
}

void placeConnectors(DrawingBoard& board) {
  Nets keypad{"GND"};
  keypad.insert(keypad.end(), keys.begin(), keys.end());
  for (const char* net : {"KEY_LED", "LED_RTN", "PWR_KEY", "BEEP", "GND"})
    keypad.emplace_back(net);
  const PartId j4 = board.place({"J4", PartKind::connector, "keypad", 18, 4, 0, Side::top, keypad},
                                row("film 14", 14, 1.0, 0.6, 1.6, 17, 5, -2.6, 2.0));
  board.zone(ZoneKind::connector, "keypad plug", box(9.5, 0, 26.5, 6.5), fromUser(Side::top), j4);

  Nets display{"GND",    "+3V3",    "LCD_D0", "LCD_D1",     "LCD_D2",  "LCD_D3",  "LCD_CLK",
               "LCD_DE", "LCD_RST", "LCD_BL", "LCD_BL_RTN", "I2C_SDA", "I2C_SCL", "GND",
               "-",      "-",       "-",      "-",          "+3V3",    "GND"};
  const PartId j3 = board.place({"J3", PartKind::connector, "display", 33, 13, 0, Side::top, display},
                                row("film 20", 20, 0.5, 0.3, 1.2, 13, 4, -2.4, 1.6));
  board.zone(ZoneKind::connector, "display plug", box(26.5, 9.5, 39.5, 15), fromUser(Side::top), j3);

  board.place({"J1", PartKind::connector, "supply", 5, 50, 0, Side::top, {"VIN_RAW", "GND"}},
              row("2 pins", 2, 2.0, 1.2, 2.4, 6, 5, 0, 6.0));
  board.place({"J2",
               PartKind::connector,
               "sensor",
               18,
               52,
               0,
               Side::top,
               {"SENS_P", "SENS_N", "SENS_V", "GND", "BUS_A", "BUS_B"}},
              row("6 pins", 6, 1.25, 0.7, 1.6, 9, 4, 1.2, 4.0));
  board.place({"J5",
               PartKind::connector,
               "debug",
               36,
               50.5,
               0,
               Side::top,
               {"+3V3", "DBG_IO", "GND", "DBG_CLK", "GND", "RESET", "-", "-", "GND", "-"}},
              twoRows("header 10", 10, 1.27, 3.0, 1.6, 0.7, 4, 6.5, 5.0));
  board.place({"J6",
               PartKind::connector,
               "memory card",
               16,
               38,
               -90,
               Side::bottom,
               {"-", "SD_D1", "SD_D0", "SD_CLK", "SD_CMD", "SD_D3", "SD_D2", "+3V3", "GND"}},
              row("card 9", 9, 1.1, 0.7, 1.5, 14, 15, -7.5, 2.0));
}

void placeKeypadFilter(DrawingBoard& board) {
  for (int k = 0; k < 8; ++k) {
    const std::string net = keys[static_cast<std::size_t>(k)];
    const std::string number = std::to_string(21 + k);
    const double x = filterX(k);
    board.place({"C" + number, PartKind::capacitor, "100p", x + 0.48, 19.5, 0, Side::top, {net, "GND"}},
                chipSize("0402"));
    board.place({"R" + number, PartKind::resistor, "100R", x, 23.0, 90, Side::top, {net, net + "_U"}},
                chipSize("0402"));
  }
}

void placeRadioAndPower(DrawingBoard& board) {
  const Nets radio{"GND", "RADIO_CLK", "RADIO_MOSI", "RADIO_MISO", "RADIO_CS", "RADIO_IRQ", "RADIO_RST",
                   "-",   "-",         "GND",        "ANT",        "GND",      "-",         "-",
                   "-",   "-",         "GND",        "+3V3_RF",    "+3V3_RF",  "GND"};
  const PartId sh1 =
      board.place({"SH1", PartKind::shield, "", 70, 40, 0, Side::top, {"GND", "GND", "GND", "GND"}},
                  {"frame 20",
                   20,
                   20,
                   2.5,
                   {{"1", -9.6, -9.6, 0.8, 0.8},
                    {"2", 9.6, -9.6, 0.8, 0.8},
                    {"3", 9.6, 9.6, 0.8, 0.8},
                    {"4", -9.6, 9.6, 0.8, 0.8}}});
  Polygon wall = box(59.9, 29.9, 80.1, 50.1);
  wall.holes.push_back(box(60.6, 30.6, 79.4, 49.4).outer);
  board.zone(ZoneKind::shieldWall, "radio shield", wall, fromUser(Side::top), sh1);
  const Footprint module = twoRows("module 20", 20, 1.5, 14, 1.6, 0.9, 14, 16, 2.0);
  for (const PartId part :
       {board.place({"U2", PartKind::chip, "radio", 70, 40, 0, Side::top, radio}, module),
        board.place({"C7", PartKind::capacitor, "100n", 61.4, 33, 90, Side::top, {"+3V3_RF", "GND"}},
                    chipSize("0402")),
        board.place({"C8", PartKind::capacitor, "10u", 61.4, 36, 90, Side::top, {"+3V3_RF", "GND"}},
                    chipSize("0603")),
        board.place({"L1", PartKind::inductor, "3n9", 61.4, 46, 90, Side::top, {"ANT", "ANT_F"}},
                    chipSize("0402"))})
    board.lidOver(part, sh1);
  board.place({"ANT1", PartKind::antenna, "", 78, 53.5, 0, Side::top, {"ANT_F", "GND"}},
              {"chip antenna", 8, 2, 1.2, {{"1", -3.6, 0, 1, 1.8}, {"2", 3.6, 0, 1, 1.8}}});
  board.zone(ZoneKind::antenna, "radio antenna", box(72, 51, 84, 56), {});
  const PartId bt1 =
      board.place({"BT1", PartKind::battery, "coin cell", 68, 14, 0, Side::top, {"VBAT", "GND"}},
                  {"cell holder", 20, 20, 5.0, {{"1", -11, 0, 2.5, 4}, {"2", 11, 0, 2.5, 4}}});
  board.zone(ZoneKind::battery, "coin cell", box(55.5, 3, 80.5, 25), fromUser(Side::top), bt1);

  board.place({"F1", PartKind::fuse, "1A", 5, 46, 90, Side::top, {"VIN_RAW", "VIN"}}, chipSize("1206"));
  const Footprint six = twoRows("SOT 6", 6, 0.95, 2.6, 1.0, 0.6, 1.6, 2.9, 1.1);
  board.place({"Q1",
               PartKind::transistor,
               "p-channel",
               5,
               41,
               0,
               Side::top,
               {"PWR_GATE", "VIN", "VIN_SW", "-", "-", "-"}},
              six);
  board.place({"U6",
               PartKind::chip,
               "step-down",
               5,
               36.5,
               0,
               Side::top,
               {"BUCK_FB", "GND", "BUCK_SW", "VIN_SW", "PWR_EN", "BUCK_BST"}},
              six);
  board.place({"L2", PartKind::inductor, "4u7", 5, 32.5, 90, Side::top, {"BUCK_SW", "+3V3"}},
              chipSize("1206"));
  board.place({"D1", PartKind::diode, "", 5, 28, 90, Side::top, {"GND", "VIN_SW"}}, chipSize("1206"));
  board.place({"U7",
               PartKind::chip,
               "1V8 regulator",
               5,
               24,
               0,
               Side::top,
               {"+3V3", "GND", "PWR_EN", "-", "+1V8", "-"}},
              six);
  board.place({"C9", PartKind::capacitor, "22u", 5, 20.5, 0, Side::top, {"+3V3", "GND"}}, chipSize("0603"));
  board.place({"C10", PartKind::capacitor, "22u", 5, 18.5, 0, Side::top, {"+3V3", "GND"}}, chipSize("0603"));
  board.place({"FB1", PartKind::ferrite, "600R", 5, 16.5, 0, Side::top, {"+3V3", "+3V3_RF"}},
              chipSize("0603"));
  board.place({"FB2", PartKind::ferrite, "600R", 5, 14.5, 0, Side::top, {"VBAT", "VBAT_RTC"}},
              chipSize("0603"));
  board.place({"C30", PartKind::capacitor, "100u", 23.5, 12.2, 0, Side::top, {"+3V3", "GND"}},
              {"can 4.5", 4.5, 4.5, 6.5, {{"1", -1.7, 0, 1.6, 1.0}, {"2", 1.7, 0, 1.6, 1.0}}});
}

void placeTheRest(DrawingBoard& board) {
  const Footprint eight = twoRows("SO 8", 8, 1.27, 5.4, 1.5, 0.6, 4, 5, 1.6);
  board.place({"U3",
               PartKind::chip,
               "memory",
               14,
               42,
               0,
               Side::top,
               {"FLASH_CS", "FLASH_IO1", "+3V3", "GND", "FLASH_IO0", "FLASH_CLK", "+3V3", "+3V3"}},
              eight);
  board.place({"U4",
               PartKind::chip,
               "clock",
               14,
               33,
               0,
               Side::top,
               {"RTC_XA", "RTC_XB", "VBAT_RTC", "GND", "I2C_SDA", "I2C_SCL", "-", "+3V3"}},
              eight);
  board.place({"U8",
               PartKind::chip,
               "bus driver",
               24,
               33,
               0,
               Side::top,
               {"BUS_RX", "BUS_EN", "BUS_EN", "BUS_TX", "GND", "BUS_A", "BUS_B", "+3V3"}},
              eight);
  board.place({"U5",
               PartKind::chip,
               "converter",
               26,
               46.5,
               0,
               Side::top,
               {"ADC_CS", "FLASH_CLK", "FLASH_IO0", "FLASH_IO1", "+3V3", "GND", "VREF", "-", "SENS_P",
                "SENS_N", "SENS_V", "GND", "-", "-", "-", "+3V3"}},
              twoRows("TSSOP 16", 16, 0.65, 5.8, 1.2, 0.4, 4.4, 5, 1.1));
  const Footprint crystal = twoRows("crystal 4", 4, 1.7, 2.4, 1.0, 1.0, 2.5, 3.2, 0.8);
  board.place({"Y1", PartKind::crystal, "16M", 31.5, 27, 0, Side::top, {"XTAL_A", "GND", "XTAL_B", "GND"}},
              crystal);
  board.place(
      {"Y2", PartKind::crystal, "32k768", 19.5, 37.5, 0, Side::top, {"RTC_XA", "GND", "RTC_XB", "GND"}},
      crystal);
  board.place({"SW1", PartKind::switchOrKey, "reset", 41, 4, 0, Side::top, {"RESET", "RESET", "GND", "GND"}},
              twoRows("key 4", 4, 3.0, 6.0, 1.2, 1.0, 5, 5, 3.0));
  board.place({"D2", PartKind::led, "", 48, 3, 0, Side::top, {"LED_A", "GND"}}, chipSize("0603"));
  board.place({"D3", PartKind::led, "", 48, 5.5, 0, Side::top, {"LED_B", "GND"}}, chipSize("0603"));
  for (int i = 0; i < 6; ++i)
    board.place({"C" + std::to_string(1 + i),
                 PartKind::capacitor,
                 "100n",
                 35.5 + 2.5 * i,
                 41.2,
                 0,
                 Side::top,
                 {"+3V3", "GND"}},
                chipSize("0402"));

  struct Passive {
    const char* reference;
    const char* value;
    const char* a;
    const char* b;
  };
  constexpr std::array<Passive, 30> passives{{
      {"R1", "10k", "RESET", "+3V3"},         {"R2", "4k7", "I2C_SDA", "+3V3"},
      {"R3", "4k7", "I2C_SCL", "+3V3"},       {"R4", "100k", "PWR_KEY", "VIN"},
      {"R5", "10k", "PWR_GATE", "VIN"},       {"R6", "1M", "BUCK_FB", "+3V3"},
      {"R7", "324k", "BUCK_FB", "GND"},       {"R8", "330R", "LED_A", "+3V3"},
      {"R9", "330R", "LED_B", "+3V3"},        {"R10", "22R", "LCD_CLK", "LCD_CLK_T"},
      {"R11", "120R", "BUS_A", "BUS_B"},      {"R12", "10k", "BUS_EN", "GND"},
      {"R13", "47R", "KEY_LED", "+3V3"},      {"R14", "0R", "LED_RTN", "GND"},
      {"R15", "10k", "SD_CMD", "+3V3"},       {"R16", "10k", "SD_D0", "+3V3"},
      {"R17", "10k", "FLASH_CS", "+3V3"},     {"R18", "1k", "BEEP", "BEEP_G"},
      {"C11", "100n", "+3V3", "GND"},         {"C12", "100n", "+3V3", "GND"},
      {"C13", "100n", "+1V8", "GND"},         {"C14", "1u", "+1V8", "GND"},
      {"C15", "12p", "XTAL_A", "GND"},        {"C16", "12p", "XTAL_B", "GND"},
      {"C17", "100n", "VREF", "GND"},         {"C18", "10n", "SENS_P", "SENS_N"},
      {"C19", "100n", "BUCK_SW", "BUCK_BST"}, {"C20", "100n", "RESET", "GND"},
      {"C29", "1u", "VBAT_RTC", "GND"},       {"R19", "10R", "SENS_V", "+3V3"},
  }};
  for (std::size_t i = 0; i < passives.size(); ++i) {
    const Passive& p = passives[i];
    const auto column = static_cast<double>(i % 6);
    const auto line = static_cast<double>(i / 6);
    board.place({p.reference,
                 p.reference[0] == 'R' ? PartKind::resistor : PartKind::capacitor,
                 p.value,
                 10.0 + 3.0 * column,
                 18.0 + 2.0 * line,
                 0,
                 Side::top,
                 {p.a, p.b}},
                chipSize("0402"));
  }
}

/// From the keypad's connector under the display's to the filter, and on to the controller.
void drawKeypadCopper(DrawingBoard& board) {
  for (int k = 0; k < 8; ++k) {
    const std::string net = keys[static_cast<std::size_t>(k)];
    const double from = keypadX(k);
    const double to = filterX(k);
    const double lane = 14.5 - 0.5 * k;
    board.track("top", net, 0.2, {at(from, 6.6), at(from, 9.0)});
    board.via(net, from, 9.0, MaskOpening::none);
    board.via(net, to, 18.0, MaskOpening::none);
    if (k < 4) // of the rows only the ends have been traced
      board.unknownRun(net, at(from, 9.0), at(to, 18.0));
    else
      board.track("inner 1", net, 0.12, {at(from, 9.0), at(from, lane), at(to, lane), at(to, 18.0)});
    board.track("top", net, 0.2, {at(to, 18.0), at(to, 19.5), at(to, 22.52)});
    board.track("top", "GND", 0.3, {at(to + 0.96, 19.5), at(to + 0.96, 18.5)});
    board.via("GND", to + 0.96, 18.5, MaskOpening::none);
    const double pin = 40.25 + 0.5 * k;
    const double bend = 25.7 - 0.35 * (k < 5 ? k : 7 - k);
    board.track("top", net + "_U", 0.15, {at(to, 23.48), at(pin, bend), at(pin, 27.0)});
  }
}

void drawCardCopper(DrawingBoard& board) {
  constexpr std::array<const char*, 6> lines{"SD_D1", "SD_D0", "SD_CLK", "SD_CMD", "SD_D3", "SD_D2"};
  for (int i = 0; i < 6; ++i) {
    const double pad = 38.0 + (i + 1 - 4) * 1.1;
    const double pin = 33.0 + 3.75 - (5 - i);
    const std::string net = lines[static_cast<std::size_t>(i)];
    board.track("bottom", net, 0.2, {at(23.5, pad), at(33.8, pin)});
    board.via(net, 33.8, pin, MaskOpening::none);
    board.track("top", net, 0.15, {at(33.8, pin), at(36.3, pin)});
  }
}

/// Ground on the third layer, cleared round every via of another net.
void drawGround(DrawingBoard& board) {
  Polygon plane = box(0.5, 0.5, 83.5, 55.5);
  NetId ground;
  for (const Net& net : board.board().nets)
    if (net.name == "GND") ground = net.id;
  for (const Via& via : board.board().vias)
    if (via.net.value != ground)
      plane.holes.push_back(disc(via.position.x.mm(), via.position.y.mm(), 0.45).outer);
  plane.holes.push_back(disc(52.0, 50.5, 2.5).outer);
  board.area("inner 2", "GND", plane);
}

} // namespace

Board loggerBoard() {
  DrawingBoard board("3f0e6f0a-5f3c-4c39-9d1c-1b6a7c1d2e90", "tide logger main board", "C", 84, 56);
  placeController(board);
  placeConnectors(board);
  placeKeypadFilter(board);
  placeRadioAndPower(board);
  placeTheRest(board);
  drawKeypadCopper(board);
  drawCardCopper(board);
  drawGround(board);
  board.testPad("TP1", 30.0, 5.0, Side::bottom, "+3V3");
  board.testPad("TP2", 33.0, 5.0, Side::bottom, "GND");
  board.testPad("TP3", 36.0, 5.0, Side::bottom, "+1V8");
  board.testPad("TP4", 50.0, 20.0, Side::top, "VBAT");
  for (const auto& [x, y] : {std::pair{3.0, 3.0}, {81.0, 27.5}, {45.0, 52.5}})
    board.zone(ZoneKind::fastener, "screw", disc(x, y, 2.6), {});
  board.zone(ZoneKind::battery, "battery pack behind the board", box(6, 7.5, 56, 31), fromUser(Side::bottom));
  board.role("GND", NetRole::ground, 0);
  for (const auto& [net, volts] : {std::pair{"+3V3", 3.3},
                                   {"+3V3_RF", 3.3},
                                   {"+1V8", 1.8},
                                   {"VBAT", 3.0},
                                   {"VIN", 12.0},
                                   {"VIN_RAW", 12.0},
                                   {"VIN_SW", 12.0},
                                   {"VBAT_RTC", 3.0}})
    board.role(net, NetRole::supply, volts);
  board.role("ANT", NetRole::radio, 0);
  board.role("ANT_F", NetRole::radio, 0);
  return board.board();
}

} // namespace netmend::demo

#include <algorithm>

#include <catch2/catch.hpp>

#include "netmend/casework/injection.h"
#include "support/drawn_board.h"
#include "support/ranged_figures.h"

using namespace netmend;
using namespace netmend::test;

namespace {

InjectionRules rules() {
  return loadInjectionRules(NETMEND_SOURCE_DIR "/data/injection.json").value();
}

struct Rails : DrawnBoard {
  NetId rail = supply("VDD", 3.3);
  NetId ground = net("GND");

  NetId supply(const std::string& name, std::optional<double> rated) {
    Net more;
    more.role = fromUser(NetRole::supply);
    if (rated) more.ratedVoltage = fromUser(Volts(*rated));
    return net(name, more);
  }
  PartId joining(PartKind kind, NetId a, NetId b) {
    Part more;
    more.kind = fromUser(kind);
    const PartId id = part("X" + std::to_string(board.lastId), Side::top, {}, more);
    pin(id, "1", a);
    pin(id, "2", b);
    return id;
  }
  [[nodiscard]] InjectionProposal proposal() const {
    const Lookup lookup(board);
    return proposeInjection(lookup, {rail}, rules());
  }
  [[nodiscard]] bool reaches(NetId net) const {
    const auto all = proposal().nets;
    return std::any_of(all.begin(), all.end(), [&](const ReachedNet& one) { return one.net == net; });
  }
};

} // namespace

TEST_CASE("the limit is the lowest rating within reach, through as many parts as it takes") {
  Rails board;
  CHECK(board.proposal().limit == Volts(3.3));
  CHECK(board.proposal().start == Volts(0.5));
  CHECK(board.proposal().lowest == board.rail);
  const NetId middle = board.supply("VMID", 5.0), core = board.supply("VCORE", 0.9);
  board.joining(PartKind::inductor, board.rail, middle);
  const PartId fet = board.joining(PartKind::transistor, middle, core);
  const auto proposal = board.proposal();
  CHECK(proposal.limit == Volts(0.9));
  CHECK(proposal.lowest == core);
  CHECK(proposal.unrated == 0);
  REQUIRE(proposal.nets.size() == 3);
  CHECK_FALSE(proposal.nets.front().through);
  CHECK(proposal.nets.back().through == fet);
}

TEST_CASE("a net without a rating keeps the limit at one volt; a guess is no rating") {
  Rails board;
  const NetId unknown = board.supply("VX", std::nullopt);
  board.joining(PartKind::switchOrKey, board.rail, unknown);
  CHECK(board.proposal().limit == Volts(1.0));
  CHECK(board.proposal().start == Volts(0.5));
  CHECK_FALSE(board.proposal().lowest);
  CHECK(board.proposal().unrated == 1);
  Net guess = *board.board.nets.find(unknown);
  guess.ratedVoltage = guessed(Volts(5.0));
  board.board.nets.put(guess);
  CHECK(board.proposal().limit == Volts(1.0));
  guess.ratedVoltage = fromUser(Volts(5.0));
  board.board.nets.put(guess);
  CHECK(board.proposal().limit == Volts(3.3));
  // Rated below what is allowed without: the rating counts, and so below the start.
  for (const double low : {0.8, 0.3}) {
    board.joining(PartKind::ferrite, board.rail, board.supply("LOW" + std::to_string(low), low));
    board.joining(PartKind::ferrite, board.rail, board.supply("X" + std::to_string(low), std::nullopt));
    CHECK(board.proposal().limit == Volts(low));
    CHECK(board.proposal().start == Volts(std::min(0.5, low)));
  }
  const Lookup lookup(board.board);
  CHECK(proposeInjection(lookup, {}, rules()).limit == Volts(1.0));
}

TEST_CASE("what joins nets and what does not") {
  using K = PartKind;
  for (const K kind :
       {K::resistor, K::zeroOhmLink, K::resistorArray, K::inductor, K::ferrite, K::choke, K::filter, K::fuse,
        K::diode, K::led, K::transistor, K::switchOrKey, K::other, K::chip}) {
    Rails board;
    const NetId beyond = board.supply("V2", 1.8);
    board.joining(kind, board.rail, beyond);
    CHECK(board.reaches(beyond));
  }
  for (const K kind : {K::capacitor, K::crystal, K::connector, K::battery, K::antenna, K::shield,
                       K::testPoint, K::mechanical}) {
    Rails board;
    const NetId beyond = board.supply("V2", 1.8);
    board.joining(kind, board.rail, beyond);
    CHECK_FALSE(board.reaches(beyond));
  }
  Rails board;
  const NetId signal = board.net("DATA"), beyondGround = board.supply("V2", 1.8),
              notFitted = board.supply("V3", 1.8), unknownKind = board.supply("V4", 1.8);
  board.joining(K::chip, board.rail, signal);
  board.joining(K::resistor, board.rail, board.ground);
  board.joining(K::resistor, board.ground, beyondGround);
  Part part = *board.board.parts.find(board.joining(K::resistor, board.rail, notFitted));
  part.fitted = fromUser(false);
  board.board.parts.put(part);
  part = *board.board.parts.find(board.joining(K::resistor, board.rail, unknownKind));
  part.kind = {};
  board.board.parts.put(part);
  CHECK_FALSE(board.reaches(signal));
  CHECK_FALSE(board.reaches(board.ground));
  CHECK_FALSE(board.reaches(beyondGround));
  CHECK_FALSE(board.reaches(notFitted));
  CHECK(board.reaches(unknownKind));
}

TEST_CASE("the current is the bench's, or the line's own rating where that is less") {
  Rails board;
  CHECK(board.proposal().current == Amperes(1.0));
  Net rail = *board.board.nets.find(board.rail);
  for (const auto& [rated, limit] : {std::pair(0.2, 0.2), std::pair(5.0, 1.0)}) {
    rail.ratedCurrent = fromUser(Amperes(rated));
    board.board.nets.put(rail);
    CHECK(board.proposal().current == Amperes(limit));
  }
}

TEST_CASE("the rules of injection are read within their ranges: never above 0.5 V to start, 1.0 V unrated") {
  using R = InjectionRules;
  const std::vector<RangedFigure<R>> figures{
      {"/start_V/value", 0.01, 0.5, [](const R& r) { return r.start.value; }},
      {"/mostUnrated_V/value", 0.01, 1.0, [](const R& r) { return r.mostUnrated.value; }},
      {"/current_A/value", 0.001, 10.0, [](const R& r) { return r.current.value; }},
      {"/step_V/value", 0.001, 0.5, [](const R& r) { return r.step.value; }},
      {"/stepSeconds/value", 0.1, 600.0, [](const R& r) { return r.stepTime.value; }},
      {"/mostSeconds/value", 0.1, 600.0, [](const R& r) { return r.duration.value; }}};
  checkRanges<R>("injection.json", figures, loadInjectionRules);
}

// What is read from a metre away or at a glance has to be short, in every language.
#include <catch2/catch.hpp>

#include <filesystem>
#include <set>

#include <QApplication>
#include <QRegularExpression>

#include "bench/language/language.h"
#include "casework/demo_device.h"
#include "drawing/gui.h"
#include "netmend/board/exchange/import.h"
#include "netmend/casework/jumper_case.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/words/fault.h"
#include "netmend/words/place.h"
#include "netmend/words/step.h"
#include "netmend/words/verdict.h"

using namespace netmend;
using namespace netmend::test;

namespace {

constexpr qsizetype most = 90; ///< letters

/// Without what a board's own labels have beyond nine letters ("U102.76" has seven): how long those are is
/// for whoever drew the board.
qsizetype lettersIn(const QString& line) {
  static const QRegularExpression label(QStringLiteral("[A-Z][A-Z0-9_]*\\.[A-Z0-9_]+"));
  qsizetype letters = line.size();
  for (auto found = label.globalMatch(line); found.hasNext();)
    letters -= std::max<qsizetype>(found.next().capturedLength() - 9, 0);
  return letters;
}

/// All lines that were said, the longest first.
class Lines {
public:
  void add(const Said& said) { lines_.insert(shown(said)); }
  void check(const char* what) const {
    qsizetype longest = 0;
    for (const QString& line : lines_) {
      longest = std::max(longest, lettersIn(line));
      if (lettersIn(line) > most) FAIL_CHECK(lettersIn(line) << " letters: " << line.toStdString());
    }
    WARN(what << ": " << lines_.size() << " lines, the longest of " << longest << " letters");
    CHECK_FALSE(lines_.empty());
  }

private:
  std::set<QString> lines_;
};

struct Spoken {
  explicit Spoken(const QString& language) {
    testing::needApplication<QApplication>();
    speak(language);
  }
  ~Spoken() { speak(QStringLiteral("en")); }
  Spoken(const Spoken&) = delete;
  Spoken& operator=(const Spoken&) = delete;
};

void addFault(const FaultCase& fault, Lines& headlines, Lines& probes) {
  for (const FaultClass& each : fault.isolation.classes)
    headlines.add(headlineOf(toFoundFault(each, fault.names)));
  for (std::size_t i = 0; i < fault.isolation.places.size(); ++i)
    probes.add(nameOf(fault.names.probe(i)));
  for (const ProbeProposal& probe : fault.next.ranked)
    probes.add(probeLine(fault.next, probe));
}

/// Lines of boards that were made by others; each has its own ways to call parts.
void addOthers(Lines& headlines, Lines& probes) {
  for (const char* file :
       {"complex_hierarchy/complex_hierarchy.kicad_pcb", "pic_programmer/pic_programmer.kicad_pcb",
        "video/video.kicad_pcb", "kit-dev-coldfire-xilinx_5213/kit-dev-coldfire-xilinx_5213.kicad_pcb"}) {
    const auto read = openBoard(std::filesystem::path("/usr/share/kicad/demos") / file);
    REQUIRE(read);
    std::size_t lines = 0;
    for (const Net& net : read->board->nets) {
      const auto& pins = read->lookup->pinsOf(net.id);
      if (pins.size() < 2 || pins.size() > 8 || lines >= 25) continue;
      const auto solved = solveFault(*read, {net.id, {}, {}, {}, {}, {}}, repairData());
      REQUIRE(solved);
      addFault(*solved, headlines, probes);
      ++lines;
    }
  }
}

/// A landing whose name is as long as they come.
LandingPlace farLanding() {
  LandingPlace out;
  out.kind = LandingKind::tentedVia;
  out.name.sort = PlaceName::Sort::via;
  out.name.beside = {"U102.76", Heading::right, 124, {}};
  return out;
}

} // namespace

TEST_CASE("verdicts, headlines, probes and first lines of steps are short in every language", "[language]") {
  for (const QString& language : languages()) {
    INFO(language.toStdString());
    const Spoken spoken(language);
    Lines verdicts, headlines, probes, steps;

    Walk walk = demoDevice().faulty;
    for (const double value : {0.001, 0.2, 0.5, 0.9, 1.5})
      for (Reading reading : demoDevice().faulty.readings) {
        reading.value = value;
        walk.readings.push_back(reading);
      }
    const auto judged = judgeWalk(walk, demoDevice().expected, &demoDevice().lookup, repairData().probing);
    for (std::size_t i = 0; i < walk.readings.size(); ++i)
      verdicts.add(verdictLine(walk.readings[i], judged.verdicts[i]));

    for (const std::vector<std::string>& more :
         {std::vector<std::string>{}, {"C28.1 0.649"}, {"C28.1 0.649", "pad of J4.9 OL"}})
      addFault(demoDevice().solve(demoDevice().question(more)).value(), headlines, probes);
    addOthers(headlines, probes);

    const auto proposals =
        proposeJumpers(demoDevice().lookup, demoFault(), suspectedCut(demoFault()).value(), repairData());
    REQUIRE(proposals);
    for (const JumperProposal& proposal : proposals->proposals) {
      RepairAction action = actionFor(demoDevice().loaded, demoFault(), proposal, repairData().work);
      for (int i = 0; i < 2; ++i) {
        for (const auto& each : repairData().work.kinds.at(WorkKind::jumper)) {
          WorkStep step;
          step.text = each.text;
          steps.add(stepSaid(step, action));
        }
        action.jumper->from = action.jumper->to = farLanding();
      }
    }
    RepairAction other;
    other.target = "U102.76";
    other.reason = "no supply at all";
    for (const auto& [kind, all] : repairData().work.kinds)
      for (const StepTemplate& each : all) {
        if (kind == WorkKind::jumper) continue;
        WorkStep step;
        step.text = each.text;
        steps.add(stepSaid(step, other));
      }
    verdicts.check("verdicts");
    headlines.check("headlines");
    probes.check("probes");
    steps.check("steps");
  }
}

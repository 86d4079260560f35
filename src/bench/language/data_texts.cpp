#include "netmend/bench/language/data_texts.h"

#include <array>

#include <QCoreApplication>

namespace netmend {

namespace {

constexpr auto fromData = std::to_array<const char*>({
    QT_TRANSLATE_NOOP("core", "Make sure that the board is without power: battery disconnected and removed, "
                              "capacitors discharged."),
    QT_TRANSLATE_NOOP("core", "0 V across the battery contacts and the large capacitors"),
    QT_TRANSLATE_NOOP("core", "Otherwise discharge them and measure again."),
    QT_TRANSLATE_NOOP(
        "core",
        "Uncover the {side} side at {from} and {to}; clean both with isopropyl alcohol and let them dry."),
    QT_TRANSLATE_NOOP("core", "Scrape the solder mask off {from} until bare copper shows, no wider than the "
                              "copper itself; mind the glass dust."),
    QT_TRANSLATE_NOOP("core", "Scrape the solder mask off {to} until bare copper shows, no wider than the "
                              "copper itself; mind the glass dust."),
    QT_TRANSLATE_NOOP("core", "Touch the bare copper at {from} with the probe, before any tin."),
    QT_TRANSLATE_NOOP("core", "{expected_from}"),
    QT_TRANSLATE_NOOP("core", "Go on. OL where a value is expected: the break is on the other side of this "
                              "place, stop. A short: this is another copper, stop."),
    QT_TRANSLATE_NOOP("core", "Touch the bare copper at {to} with the probe, before any tin."),
    QT_TRANSLATE_NOOP("core", "{expected_to}"),
    QT_TRANSLATE_NOOP("core", "Cover all other copper that scraping laid bare with UV mask and cure it; "
                              "leave only the landing open."),
    QT_TRANSLATE_NOOP(
        "core", "Measure from the bare landing to ground and to the copper that lay above or beside it."),
    QT_TRANSLATE_NOOP("core", "No short"),
    QT_TRANSLATE_NOOP("core", "Otherwise take the mask off, clean, and mask again."),
    QT_TRANSLATE_NOOP("core", "Cut {cut_length} of {wire}; its insulation: {stripping}. Tin its ends."),
    QT_TRANSLATE_NOOP("core", "Pull the wire through tweezers and measure it from end to end."),
    QT_TRANSLATE_NOOP("core", "About {resistance} or little more"),
    QT_TRANSLATE_NOOP("core", "Otherwise an end is not stripped or the wire is nicked: take a new one."),
    QT_TRANSLATE_NOOP("core", "Tin {from} and {to}: little solder, fresh flux, start low with the heat."),
    QT_TRANSLATE_NOOP(
        "core",
        "Look at both landings under the microscope, and measure each to its neighbours and to ground."),
    QT_TRANSLATE_NOOP("core", "Bright solder on the landing only, no short"),
    QT_TRANSLATE_NOOP("core", "Otherwise wick it off and tin again."),
    QT_TRANSLATE_NOOP("core", "Solder the wire to {from}."),
    QT_TRANSLATE_NOOP("core", "Measure from the wire's free end to ground and to the neighbours of {from}."),
    QT_TRANSLATE_NOOP("core", "{expected_from}, no short"),
    QT_TRANSLATE_NOOP("core", "Otherwise do the joint again."),
    QT_TRANSLATE_NOOP("core", "Fix the wire with a spot of mask within 2 mm of the joint and cure it before "
                              "anything pulls on the small part."),
    QT_TRANSLATE_NOOP("core", "Lay the wire along the way in the picture ({length}), flat on the board; "
                              "nothing beside connectors, over the battery or under a shield wall."),
    QT_TRANSLATE_NOOP(
        "core",
        "Inside the opened margin lead the wire straight out, as drawn, and hold it down with mask there."),
    QT_TRANSLATE_NOOP("core", "Solder the wire to {to}."),
    QT_TRANSLATE_NOOP("core", "Measure from {to} to ground and to its neighbours."),
    QT_TRANSLATE_NOOP("core", "{expected_bridged}, no short"),
    QT_TRANSLATE_NOOP(
        "core", "Fix the wire with mask at the {tacks} places marked and cure; eyes away from the UV lamp."),
    QT_TRANSLATE_NOOP("core", "Measure resistance from {from} to {to}, zeroed leads."),
    QT_TRANSLATE_NOOP("core", "About {resistance}"),
    QT_TRANSLATE_NOOP("core", "More than twice that: a joint is bad."),
    QT_TRANSLATE_NOOP("core", "Take the line's readings at both ends of the wire again."),
    QT_TRANSLATE_NOOP("core", "{expected_bridged} at both ends"),
    QT_TRANSLATE_NOOP("core", "Otherwise a second break: go back to the readings."),
    QT_TRANSLATE_NOOP("core",
                      "Close shield and lids, plug all assemblies, and look once more along the wire."),
    QT_TRANSLATE_NOOP("core", "Nothing presses on the wire and every lid closes"),
    QT_TRANSLATE_NOOP("core", "Otherwise lay it anew."),
    QT_TRANSLATE_NOOP(
        "core",
        "The line has a warning (see the wire's remarks): try the function at full speed, not only at rest."),
    QT_TRANSLATE_NOOP("core", "It works for several minutes"),
    QT_TRANSLATE_NOOP("core", "Otherwise the jumper does not do for this line."),
    QT_TRANSLATE_NOOP("core", "Power the board from a supply with a current limit and watch the current at "
                              "start, then try the function."),
    QT_TRANSLATE_NOOP("core", "A start current as on a good board, and the function works"),
    QT_TRANSLATE_NOOP("core", "Otherwise switch off at once."),
    QT_TRANSLATE_NOOP("core", "Look at {target} under the microscope for rings and cracks; take a photo."),
    QT_TRANSLATE_NOOP("core",
                      "Clean the place with isopropyl alcohol and a soft brush; let it dry before any heat."),
    QT_TRANSLATE_NOOP("core",
                      "Flux {target} and heat it until the solder flows and wets pad and leg; add little "
                      "fresh solder. Start low; the paste's and the part's data sheets come first. Mind "
                      "underfilled chips, plastic connectors and batteries near the heat."),
    QT_TRANSLATE_NOOP("core", "Let it cool without a draught, then clean off the flux."),
    QT_TRANSLATE_NOOP("core", "Look at the joint from all sides."),
    QT_TRANSLATE_NOOP("core", "A smooth fillet on pad and leg, no bridge"),
    QT_TRANSLATE_NOOP("core", "Otherwise do it again."),
    QT_TRANSLATE_NOOP("core", "Measure {points}."),
    QT_TRANSLATE_NOOP("core", "{expected}"),
    QT_TRANSLATE_NOOP("core", "Otherwise the fault is elsewhere or not alone: go back to the readings."),
    QT_TRANSLATE_NOOP("core", "Measure from {points} to ground and to the neighbouring nets."),
    QT_TRANSLATE_NOOP("core", "Otherwise look for solder between neighbours before going on."),
    QT_TRANSLATE_NOOP("core", "Take a photo of {target} with its marking and direction."),
    QT_TRANSLATE_NOOP("core", "Mask or shield what stands near, preheat, flux, and take {target} off when "
                              "all joints are molten; never pull."),
    QT_TRANSLATE_NOOP("core", "Look at the pads."),
    QT_TRANSLATE_NOOP("core", "All pads are there and flat"),
    QT_TRANSLATE_NOOP("core", "Otherwise the repair becomes a track repair: stop and note it."),
    QT_TRANSLATE_NOOP("core", "Level the pads with wick and flux and clean them."),
    QT_TRANSLATE_NOOP("core", "Measure {points} with the part off."),
    QT_TRANSLATE_NOOP(
        "core",
        "The fault gone: it was in the part. Still there: it is on the board, do not fit a new part yet."),
    QT_TRANSLATE_NOOP("core", "Take a photo of {target} with its marking and direction, and lay out the new "
                              "part: same value, size, rating."),
    QT_TRANSLATE_NOOP("core", "Measure the new part before fitting."),
    QT_TRANSLATE_NOOP("core", "Its value within tolerance"),
    QT_TRANSLATE_NOOP("core", "Otherwise take another."),
    QT_TRANSLATE_NOOP("core", "The short or wrong value is gone"),
    QT_TRANSLATE_NOOP("core", "Otherwise the fault is on the board: stop."),
    QT_TRANSLATE_NOOP(
        "core",
        "Fit the new part in the right direction, little solder, start low; its data sheet comes first."),
    QT_TRANSLATE_NOOP("core", "Look at all joints and at the direction."),
    QT_TRANSLATE_NOOP("core", "Every joint wetted, no bridge, direction as in the photo"),
    QT_TRANSLATE_NOOP("core", "Otherwise correct it."),
    QT_TRANSLATE_NOOP("core", "Take off lids and what covers {target}; take a photo before cleaning."),
    QT_TRANSLATE_NOOP("core", "Soak {target} with isopropyl alcohol, brush residue and corrosion off, rinse, "
                              "and blow out from under parts."),
    QT_TRANSLATE_NOOP(
        "core", "Dry with warm air until no solvent is left; no heat above what the data sheets allow."),
    QT_TRANSLATE_NOOP("core", "Look at {target} under the microscope."),
    QT_TRANSLATE_NOOP("core", "No residue, no eaten pad, leg or track"),
    QT_TRANSLATE_NOOP("core", "Otherwise note each place: they become suspects."),
    QT_TRANSLATE_NOOP("core", "Mark the place on {target} where nothing else lies close; take a photo."),
    QT_TRANSLATE_NOOP("core", "Cut through mask and copper twice, side by side, with a sharp blade, and lift "
                              "out the strip between; do not go deeper than this layer."),
    QT_TRANSLATE_NOOP("core", "Measure across the cut."),
    QT_TRANSLATE_NOOP("core", "OL or the value of the way round"),
    QT_TRANSLATE_NOOP("core", "Otherwise copper is left: cut again."),
    QT_TRANSLATE_NOOP("core", "Measure from both sides of the cut to ground and to the neighbours."),
    QT_TRANSLATE_NOOP("core", "Otherwise clear the burr."),
    QT_TRANSLATE_NOOP("core", "Seal the cut with mask and cure it."),
    QT_TRANSLATE_NOOP("core", "Write down what was found: {target}. Reason: {reason}."),
    QT_TRANSLATE_NOOP(
        "core", "Make sure that nothing of the customer's is lost: data, parts taken off, screws, seals."),
    QT_TRANSLATE_NOOP("core", "All there and listed"),
    QT_TRANSLATE_NOOP("core", "Otherwise say so on the sheet."),
    QT_TRANSLATE_NOOP("core", "Put the board back as received, mark what was changed, and leave the battery "
                              "disconnected where it is unsafe."),
    QT_TRANSLATE_NOOP(
        "core", "Tell the customer the findings, the reason, and what a replacement would cost instead."),
    QT_TRANSLATE_NOOP("core", "Local rules and the maker's safety notes come first."),
    QT_TRANSLATE_NOOP("core", "Disconnect and remove the battery before any heat. A swollen or damaged cell "
                              "is not touched, pressed or charged."),
    QT_TRANSLATE_NOOP("core", "Discharge capacitors before touching or heating the board."),
    QT_TRANSLATE_NOOP("core",
                      "Devices on mains power are opened and repaired only by persons licensed for it."),
    QT_TRANSLATE_NOOP(
        "core",
        "Protect your eyes: UV lamp, scraping, clipped wire, parts that burst under injected current."),
    QT_TRANSLATE_NOOP("core", "Extract solder and solvent fumes; do not breathe the dust of scraped glass "
                              "fibre; wash your hands after solder with lead."),
    QT_TRANSLATE_NOOP("core", "Let solvent dry completely before heat or power."),
    QT_TRANSLATE_NOOP("core", "Work grounded against electrostatic discharge (IEC 61340-5-1)."),
    QT_TRANSLATE_NOOP(
        "core", "Heat settings are starting points of one bench: start low; the paste's and the part's data "
                "sheets come first; mind underfilled chips, plastic connectors and batteries near the heat."),
    QT_TRANSLATE_NOOP("core", "the mating part and the strip its plug sweeps would tear the wire"),
    QT_TRANSLATE_NOOP("core", "the lid must close, and the wall would cut the enamel"),
    QT_TRANSLATE_NOOP("core", "a wire under a cell presses into it, and the next battery swap would tear it"),
    QT_TRANSLATE_NOOP("core", "head and washer crush the wire"),
    QT_TRANSLATE_NOOP("core", "copper near an antenna detunes it"),
    QT_TRANSLATE_NOOP("core", "solid wire breaks where the board bends"),
    QT_TRANSLATE_NOOP("core", "fixing the wire there brings heat and UV near the part"),
    QT_TRANSLATE_NOOP("core", "the wire runs on the board, not over bodies"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.01 mm"),
    QT_TRANSLATE_NOOP("core", "strips in the tin of a hot iron, about 375 to 390 °C"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.02 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.025 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.032 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.04 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.05 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.063 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.071 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.08 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.1 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.125 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.16 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.2 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.25 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.315 mm"),
    QT_TRANSLATE_NOOP("core", "enamelled copper 0.1 mm, polyimide"),
    QT_TRANSLATE_NOOP("core", "has to be scraped off; no iron strips it"),
    QT_TRANSLATE_NOOP("core", "AWG 36 enamelled copper"),
    QT_TRANSLATE_NOOP("core", "AWG 34 enamelled copper"),
    QT_TRANSLATE_NOOP("core", "AWG 32 enamelled copper"),
    QT_TRANSLATE_NOOP("core", "AWG 30 insulated wire"),
    QT_TRANSLATE_NOOP("core", "with a wire stripper"),
    QT_TRANSLATE_NOOP("core", "AWG 28 insulated wire"),
    QT_TRANSLATE_NOOP("core", "AWG 26 insulated wire"),
    QT_TRANSLATE_NOOP("core", "one half of a fast pair: bridge both halves with equal length on the same "
                              "way, close together, or the link may fail at speed"),
    QT_TRANSLATE_NOOP("core", "radio line: a loose wire is not its impedance and radiates; a jumper is "
                              "advised against, use the right coaxial jumper or replace the board"),
    QT_TRANSLATE_NOOP("core", "Handheld, 4000 counts"),
    QT_TRANSLATE_NOOP("core", "Handheld, 20000 counts"),
    QT_TRANSLATE_NOOP("core", "Bench, 200000 counts, four wires for milliohms"),
});

} // namespace

std::span<const char* const> dataTexts() {
  return fromData;
}

} // namespace netmend

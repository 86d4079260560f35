// What is said of test data, tables of pins and archives.
#include "sentence_tables.h"

#include <array>

#include <QtGlobal>

namespace netmend {

namespace {

constexpr auto tablesTable = std::to_array<const char*>({
    QT_TRANSLATE_NOOP("core", "names that end in half a letter, which is left out: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "bytes that are not UTF-8, read as Latin-1: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "longer than a board can be"),
    QT_TRANSLATE_NOOP("core", "at most 10 m either way"),
    QT_TRANSLATE_NOOP(
        "core", "aliases that stand for two nets, of which the first was used: {n}, first at {}: {} and {}"),
    QT_TRANSLATE_NOOP("core", "the nets {} and {} have the same first {n} characters; such pairs: {n}"),
    QT_TRANSLATE_NOOP("core",
                      "net {} may be {} cut to {n} characters; they were read as two nets; such nets: {n}"),
    QT_TRANSLATE_NOOP("core", "net names that fill all {n} columns and may have been cut: {n}; nets whose "
                              "names were cut to the same would appear as one"),
    QT_TRANSLATE_NOOP("core", "net names that run past their columns, read to column 20: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "outlines other than the board's edge, not read: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "step records of a panel, not read: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "records {n}, not read: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "points on inner layers, their reach left unknown: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "points marked as lying in the middle of their net: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core",
                      "blind vias of which only one layer is said, read as on that one alone: {n}, first "
                      "at {}"),
    QT_TRANSLATE_NOOP("core",
                      "conductors drawn with a rectangular pen, its smaller side taken as width: {n}, first "
                      "at {}"),
    QT_TRANSLATE_NOOP(
        "core", "pins that stand on another net elsewhere, read as two pins, their labels may have been "
                "cut: {n}, first at {}: {}, which stands at {}, too"),
    QT_TRANSLATE_NOOP("core", "the board's edge is not closed in the file; it was closed by a straight line"),
    QT_TRANSLATE_NOOP("core", "the board's edge was left out: {}"),
    QT_TRANSLATE_NOOP("core",
                      "the file has no records of conductors: what joins the points of a net is not known, "
                      "and a net is not checked for breaks"),
    QT_TRANSLATE_NOOP("core",
                      "pads at odd angles: {n}, first at {}; angles taken as counted {}: {n} overlaps of "
                      "different nets, the other way {n}"),
    QT_TRANSLATE_NOOP("core", "clockwise"),
    QT_TRANSLATE_NOOP("core", "counter-clockwise"),
    QT_TRANSLATE_NOOP("core",
                      "pads at quarter turns {}: {n}, first at {}; sizes taken as they lie on the board: {n} "
                      "overlaps of different nets, the other way {n}"),
    QT_TRANSLATE_NOOP("core", "with holes"),
    QT_TRANSLATE_NOOP("core", "without holes"),
    QT_TRANSLATE_NOOP("core",
                      "pads taken as ovals, as the corners of their rectangles reach into other nets: {n}"),
    QT_TRANSLATE_NOOP("core", "there are no columns for part and pin"),
    QT_TRANSLATE_NOOP("core", "a first row part,pin[,net[,x_mm,y_mm,side]], or rows like J4,1,GND"),
    QT_TRANSLATE_NOOP("core", "the table is too long"),
    QT_TRANSLATE_NOOP("core", "at most {n} pins"),
    QT_TRANSLATE_NOOP("core", "the table is too large"),
    QT_TRANSLATE_NOOP("core", "half a letter in UTF-16 text"),
    QT_TRANSLATE_NOOP("core", "is no archive that can be read"),
    QT_TRANSLATE_NOOP("core", "a ZIP archive"),
    QT_TRANSLATE_NOOP("core", "the archive has too many entries"),
    QT_TRANSLATE_NOOP("core", "archives inside the archive, not opened: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "files in the archive that are not read: {}: {n}, first at {}"),
    QT_TRANSLATE_NOOP("core", "without a size"),
    QT_TRANSLATE_NOOP("core", "encrypted"),
    QT_TRANSLATE_NOOP("core", "above {n} MiB"),
    QT_TRANSLATE_NOOP("core", "beyond {n} MiB of the archive"),
    QT_TRANSLATE_NOOP("core", "damaged or packed in an unknown way"),
    QT_TRANSLATE_NOOP("core", "damaged"),
    QT_TRANSLATE_NOOP("core", "larger than the archive says"),
    QT_TRANSLATE_NOOP("core", "shorter than the archive says"),
    QT_TRANSLATE_NOOP("core", "there is no board file in this archive"),
    QT_TRANSLATE_NOOP("core", "a board in one of the formats that can be read"),
    QT_TRANSLATE_NOOP("core", "there are several boards in this archive"),
    QT_TRANSLATE_NOOP("core", "no such board in this archive"),
    QT_TRANSLATE_NOOP("core", "one of {}"),
    QT_TRANSLATE_NOOP("core", "read from the archive: {}"),
});

} // namespace

std::span<const char* const> tablesSentences() {
  return tablesTable;
}

} // namespace netmend

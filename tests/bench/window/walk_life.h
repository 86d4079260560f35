#pragma once

#include <string_view>

/// What a bench window that is going to be killed tells of what it has shown, a line each: one of these
/// words, then what belongs to it, separated by tabs. `B` is the job's board, `G` a good one.
namespace netmend::testing::life {

inline constexpr std::string_view opened = "opened";   ///< job's number or `-`, readings of B, readings of G
inline constexpr std::string_view taken = "taken";     ///< B or G, point, value: painted on the screen
inline constexpr std::string_view undoing = "undoing"; ///< the key is about to be pressed …
inline constexpr std::string_view undone = "undone"; ///< … B or G: a reading of it is gone from the screen
inline constexpr std::string_view unkept = "unkept"; ///< … a good walk that was kept is under way again
inline constexpr std::string_view asBefore = "asBefore"; ///< … or something else was undone
inline constexpr std::string_view keeping = "keeping";   ///< the good walk is about to go into the book …
inline constexpr std::string_view kept = "kept";         ///< … and the screen says that it has
inline constexpr std::string_view failed = "failed";     ///< and why: the window did not do as it should

} // namespace netmend::testing::life

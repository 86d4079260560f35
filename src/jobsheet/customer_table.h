#pragma once

#include "sections.h"
#include "table.h"

/// Rows of the customer's copy: one line each, what is too long for its column ends with an ellipsis.
namespace netmend {

inline constexpr double px = SheetStyle::pixel;

struct Field {
  QString text;
  double left = 0; ///< shares of the row's width
  double right = 1;
  Qt::Alignment alignment = Qt::AlignLeft;
  bool bold = false;
  bool large = false;
  Sign sign{}; ///< at the right end, in the room behind `right`
};

struct FieldRow {
  Pieces pieces; ///< one
  bool cut = false;
};

enum class RowLook { head, plain, total };

[[nodiscard]] FieldRow fieldRow(const Sheet& sheet, const std::vector<Field>& fields, RowLook look);

/// What was odd before or is after, in at most `rows` rows; one more counts the others.
[[nodiscard]] FieldRow oddPoints(const Sheet& sheet, std::size_t rows);
/// The same of what it costs; the total always stands below.
[[nodiscard]] Result<FieldRow> costs(const Sheet& sheet, std::size_t rows);

} // namespace netmend

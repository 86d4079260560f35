#include "flow.h"

#include <iterator>

namespace netmend {

namespace {

class Pagination {
public:
  Pagination(const QRectF& firstBody, const QRectF& body) : body_(body), room_(firstBody) {
    pages_.emplace_back();
    top_ = room_.top();
  }

  void place(const Pieces& pieces, std::size_t first, std::size_t last) {
    if (!fits(pieces, first, last) && !pages_.back().empty()) startPage();
    if (!fits(pieces, first, last)) {
      // More than a page: no use in keeping it together.
      for (std::size_t i = first; i <= last; ++i) {
        if (!fits(pieces, i, i) && !pages_.back().empty()) startPage();
        put(pieces[i]);
      }
      return;
    }
    for (std::size_t i = first; i <= last; ++i)
      put(pieces[i]);
  }

  [[nodiscard]] std::vector<PlacedPage> take() { return std::move(pages_); }

private:
  void startPage() {
    pages_.emplace_back();
    room_ = body_;
    top_ = room_.top();
  }

  [[nodiscard]] double heightOf(const Piece& piece, bool atHead) const {
    if (!atHead) return piece.spaceAbove + piece.height;
    return piece.height + (piece.head ? piece.head->height : 0.0);
  }

  [[nodiscard]] bool fits(const Pieces& pieces, std::size_t first, std::size_t last) const {
    double height = 0;
    for (std::size_t i = first; i <= last; ++i)
      height += heightOf(pieces[i], pages_.back().empty() && i == first);
    return top_ + height <= room_.bottom();
  }

  void put(const Piece& piece) {
    const bool atHead = pages_.back().empty();
    if (atHead && piece.head) {
      pages_.back().push_back({piece.head.get(), top_});
      top_ += piece.head->height;
    }
    if (!atHead) top_ += piece.spaceAbove;
    pages_.back().push_back({&piece, top_});
    top_ += piece.height;
  }

  QRectF body_;
  QRectF room_;
  double top_ = 0;
  std::vector<PlacedPage> pages_;
};

} // namespace

std::vector<PlacedPage> paginate(const Pieces& pieces, const QRectF& firstBody, const QRectF& body) {
  Pagination pagination(firstBody, body);
  for (std::size_t first = 0; first < pieces.size();) {
    std::size_t last = first;
    while (pieces[last].keepWithNext && last + 1 < pieces.size())
      ++last;
    pagination.place(pieces, first, last);
    first = last + 1;
  }
  return pagination.take();
}

void append(Pieces& pieces, Pieces more) {
  pieces.insert(pieces.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

} // namespace netmend

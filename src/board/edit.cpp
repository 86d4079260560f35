#include "netmend/board/edit.h"

#include <tuple>

#include "references.h"

namespace netmend {

namespace {

/// What an edit does to the objects of one kind: the last change of each id, in rising order of id.
template <class T> struct Plan {
  struct Step {
    const Change<T>* change;
    std::size_t index; ///< in the edit
  };
  std::vector<Step> steps;

  [[nodiscard]] const Change<T>* find(decltype(T::id) id) const {
    const auto it = std::lower_bound(steps.begin(), steps.end(), id,
                                     [](const Step& step, decltype(T::id) i) { return step.change->id < i; });
    return it != steps.end() && it->change->id == id ? it->change : nullptr;
  }
};

struct EditPlan {
  const InfoChange* info = nullptr;
  std::size_t infoIndex = 0;
  std::tuple<Plan<Layer>, Plan<Part>, Plan<Net>, Plan<Pin>, Plan<Pad>, Plan<Track>, Plan<Via>, Plan<Area>,
             Plan<Zone>, Plan<Underlay>>
      plans;

  template <class T> [[nodiscard]] Plan<T>& of() { return std::get<Plan<T>>(plans); }
  template <class T> [[nodiscard]] const Plan<T>& of() const { return std::get<Plan<T>>(plans); }
};

using Problem = std::optional<Error>;

Error problemAt(std::size_t change, Said message, const std::string& further = {}) {
  return {std::move(message), "", "/changes/" + std::to_string(change) + further};
}

template <class T> std::string nameOf(decltype(T::id) id) {
  return std::string(Kind<T>::name) + " " + std::to_string(id.value);
}

Problem collect(const Edit& edit, EditPlan& plan) {
  for (std::size_t i = 0; i < edit.changes.size(); ++i) {
    const auto take = [&]<class T>(const Change<T>& change) -> Problem {
      if (!change.id) return problemAt(i, said(pattern("core", "a {} has no id"), Kind<T>::name));
      if (change.id.value > largestId)
        return problemAt(i, said(pattern("core", "{}: the id is too large"), nameOf<T>(change.id)));
      if (change.after && change.after->id != change.id)
        return problemAt(
            i, said(pattern("core", "{} is replaced by one with another id"), nameOf<T>(change.id)));
      plan.of<T>().steps.push_back({&change, i});
      return {};
    };
    const auto takeInfo = [&](const InfoChange& change) -> Problem {
      plan.info = &change;
      plan.infoIndex = i;
      return {};
    };
    auto problem = std::visit(
        [&](const auto& change) {
          if constexpr (std::is_same_v<std::decay_t<decltype(change)>, InfoChange>)
            return takeInfo(change);
          else
            return take(change);
        },
        edit.changes[i]);
    if (problem) return problem;
  }
  return {};
}

/// Sorts the steps and keeps the last of each id, after looking that no removal names nothing.
template <class T> Problem settle(const Table<T>& table, Plan<T>& plan) {
  using Step = typename Plan<T>::Step;
  auto& steps = plan.steps;
  std::stable_sort(steps.begin(), steps.end(),
                   [](const Step& a, const Step& b) { return a.change->id < b.change->id; });
  std::vector<Step> last;
  last.reserve(steps.size());
  for (const Step& step : steps) {
    const auto id = step.change->id;
    const bool again = !last.empty() && last.back().change->id == id;
    const bool there = again ? last.back().change->after.has_value() : table.find(id) != nullptr;
    if (!step.change->after && !there)
      return problemAt(step.index,
                       said(pattern("core", "{} is to be removed and does not exist"), nameOf<T>(id)));
    if (again)
      last.back() = step;
    else
      last.push_back(step);
  }
  steps = std::move(last);
  return {};
}

/// The kind, other than its own, that has an object or a change with this number; empty if none.
std::string_view otherOwner(const Board& board, const EditPlan& plan, std::uint64_t number,
                            std::string_view own) {
  std::string_view owner;
  forEachKind([&]<class K>(K kind) {
    if (kind.name == own || !owner.empty()) return;
    using T = typename K::Type;
    const auto& table = board.*K::table;
    const decltype(T::id) id(number);
    const bool inTable = !table.empty() && id <= table[table.size() - 1].id && table.find(id);
    if (inTable || plan.of<T>().find(id)) owner = kind.name;
  });
  return owner;
}

/// Ids are unique over all kinds, so that an id alone names an object.
Problem checkKindsOfIds(const Board& board, const EditPlan& plan) {
  Problem problem;
  forEachKind([&]<class K>(K kind) {
    using T = typename K::Type;
    for (const auto& step : plan.of<T>().steps) {
      if (problem) return;
      const auto id = step.change->id;
      const auto owner = otherOwner(board, plan, id.value, kind.name);
      if (!owner.empty())
        problem =
            problemAt(step.index, said(pattern("core", "{}: the id belongs to a {}"), nameOf<T>(id), owner));
    }
  });
  return problem;
}

/// Whether an object will exist once the edit is done.
struct ExistsAfter {
  const Board& board;
  const EditPlan& plan;

  template <class IdType> bool operator()(IdType id) const {
    using T = typename KindOfId<IdType>::Type;
    if (const auto* change = plan.of<T>().find(id)) return change->after.has_value();
    return (board.*Kind<T>::table).find(id) != nullptr;
  }
};

/// What the edit puts must not name anything that is not there.
Problem checkPut(const Board& board, const EditPlan& plan) {
  const ExistsAfter exists{board, plan};
  Problem problem;
  if (plan.info) {
    if (const auto bad = danglingIn(plan.info->after, exists))
      return problemAt(plan.infoIndex, said(pattern("core", "the board's info {}"), bad->said()),
                       bad->place.pointer());
  }
  forEachKind([&]<class K>(K) {
    using T = typename K::Type;
    for (const auto& step : plan.of<T>().steps) {
      if (problem || !step.change->after) continue;
      if (const auto bad = danglingIn(*step.change->after, exists))
        problem =
            problemAt(step.index, said(pattern("core", "{} {}"), nameOf<T>(step.change->id), bad->said()),
                      bad->place.pointer());
    }
  });
  return problem;
}

template <class T> bool removesAny(const EditPlan& plan) {
  const auto& steps = plan.of<T>().steps;
  return std::any_of(steps.begin(), steps.end(), [](const auto& step) { return !step.change->after; });
}

/// What the edit leaves alone must not name anything that it removes. One pass over the board, however
/// many removals, and none at all when nothing is removed that others can name.
Problem checkRemoved(const Board& board, const EditPlan& plan) {
  if (!removesAny<Layer>(plan) && !removesAny<Part>(plan) && !removesAny<Net>(plan) && !removesAny<Pin>(plan))
    return {};
  const auto removed = [&](auto id, bool) {
    const auto* change = plan.of<typename KindOfId<decltype(id)>::Type>().find(id);
    return change && !change->after.has_value();
  };
  const auto indexOfRemoval = [&](const Dangling& bad) {
    std::size_t index = 0;
    forEachKind([&]<class K>(K kind) {
      if (kind.name != bad.kind) return;
      for (const auto& step : plan.of<typename K::Type>().steps)
        if (step.change->id.value == bad.id) index = step.index;
    });
    return index;
  };
  const auto stillNamed = [&](const Dangling& bad, const Said& by) {
    return problemAt(indexOfRemoval(bad),
                     said(pattern("core", "{} {} is to be removed and {} still names it"),
                          std::string(bad.kind), bad.id, by));
  };
  if (!plan.info) {
    if (const auto bad = firstReference(board.info, removed))
      return stillNamed(*bad, pattern("core", "the board's info"));
  }
  Problem problem;
  forEachKind([&]<class K>(K) {
    using T = typename K::Type;
    const auto& own = plan.of<T>();
    for (const T& object : board.*K::table) {
      if (problem) return;
      const auto bad = firstReference(object, removed);
      if (bad && !own.find(object.id)) problem = stillNamed(*bad, nameOf<T>(object.id));
    }
  });
  return problem;
}

/// Nothing fails from here on. An id that was empty before and after is left out of the inverse.
Edit carryOut(Board& board, const EditPlan& plan) {
  Edit inverse;
  if (plan.info) {
    inverse.changes.emplace_back(InfoChange{std::move(board.info)});
    board.info = plan.info->after;
  }
  forEachKind([&]<class K>(K) {
    using T = typename K::Type;
    const auto& steps = plan.of<T>().steps;
    if (steps.empty()) return;
    std::vector<typename Table<T>::Slot> slots;
    slots.reserve(steps.size());
    for (const auto& step : steps)
      slots.emplace_back(step.change->id, step.change->after);
    board.lastId = std::max(board.lastId, slots.back().first.value);
    slots = (board.*K::table).exchange(std::move(slots));
    for (std::size_t i = 0; i < slots.size(); ++i) {
      if (!slots[i].second && !steps[i].change->after) continue;
      inverse.changes.emplace_back(Change<T>{slots[i].first, std::move(slots[i].second)});
    }
  });
  return inverse;
}

} // namespace

Result<Edit> apply(Board& board, const Edit& edit) {
  EditPlan plan;
  if (auto problem = collect(edit, plan)) return failure(std::move(*problem));
  Problem problem;
  forEachKind([&]<class K>(K) {
    if (!problem) problem = settle(board.*K::table, plan.of<typename K::Type>());
  });
  if (!problem) problem = checkKindsOfIds(board, plan);
  if (!problem) problem = checkPut(board, plan);
  if (!problem) problem = checkRemoved(board, plan);
  if (problem) return failure(std::move(*problem));
  return carryOut(board, plan);
}

Result<void> checkReferences(const Board& board) {
  if (const auto bad = firstDangling(board)) {
    const std::string index = bad->list == "info" ? "" : "/" + std::to_string(bad->index);
    return failure({said(pattern("core", "{} {}"), bad->object, bad->what.said()), "",
                    "/" + std::string(bad->list) + index + bad->what.place.pointer()});
  }
  return {};
}

} // namespace netmend

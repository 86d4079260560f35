#include "edit_json.h"

namespace netmend {

using nlohmann::json;

namespace {

struct ChangeEncoder {
  Encoder& encoder;
  const Place& place;

  json operator()(const InfoChange& change) const {
    return {{"info", encoder.plain(change.after, Place(place, "info"), Origin::unknown)}};
  }
  template <class T> json operator()(const Change<T>& change) const {
    if (!change.after) return {{"remove", Kind<T>::name}, {"id", change.id.value}};
    return {{"put", Kind<T>::name}, {"object", encoder.object(*change.after, Place(place, "object"))}};
  }
};

class ChangeDecoder {
public:
  ChangeDecoder(Decoder& decoder, const json& in, const Place& place)
      : decoder_(decoder), in_(in), place_(place) {}

  void into(Edit& edit) {
    if (!decoder_.isObject(in_, place_)) return;
    const auto info = in_.find("info");
    if (info != in_.end() && in_.size() == 1) {
      InfoChange change;
      decoder_.plain(*info, change.after, Place(place_, "info"), Origin::unknown);
      edit.changes.emplace_back(std::move(change));
      return;
    }
    if (!takeObject(edit, "put", "object") && !takeObject(edit, "remove", "id"))
      decoder_.refuse(pattern("core", "is no change"), place_, in_,
                      pattern("core", "put and object, remove and id, or info"));
  }

private:
  /// Whether the change is one of this verb; what is wrong with it, the decoder keeps.
  bool takeObject(Edit& edit, const char* verb, const char* what) {
    const auto name = in_.find(verb);
    const auto value = in_.find(what);
    if (name == in_.end() || value == in_.end() || in_.size() != 2) return false;
    bool found = false;
    forEachKind([&]<class K>(K) {
      using T = typename K::Type;
      if (*name != K::name) return;
      found = true;
      Change<T> change;
      const Place here(place_, what);
      if (std::string_view(verb) == "put") {
        decoder_.object(*value, change.after.emplace(), here);
        change.id = change.after->id;
      } else {
        decoder_.read(*value, change.id, here);
      }
      edit.changes.emplace_back(std::move(change));
    });
    if (!found)
      decoder_.refuse(pattern("core", "is no kind of object"), Place(place_, verb), *name,
                      asItIs("net, pin, pad, ..."));
    return true;
  }

  Decoder& decoder_;
  const json& in_;
  const Place& place_;
};

} // namespace

json encodeEdit(Encoder& encoder, const Edit& edit) {
  const Place root;
  const Place list(root, "changes");
  json changes = json::array();
  for (std::size_t i = 0; i < edit.changes.size(); ++i) {
    const Place place(list, i);
    changes.push_back(std::visit(ChangeEncoder{encoder, place}, edit.changes[i]));
  }
  return {{"changes", std::move(changes)}};
}

Edit decodeEdit(Decoder& decoder, const json& in) {
  Edit edit;
  const Place root;
  if (!decoder.isObject(in, root)) return edit;
  const auto changes = in.find("changes");
  const Place list(root, "changes");
  if (changes == in.end() || in.size() != 1) {
    decoder.refuse(pattern("core", "is no edit"), root, in, asItIs(R"({"changes": [...]})"));
    return edit;
  }
  if (!decoder.isList(*changes, list)) return edit;
  edit.changes.reserve(changes->size());
  for (std::size_t i = 0; i < changes->size() && !decoder.problem; ++i) {
    const Place place(list, i);
    ChangeDecoder(decoder, (*changes)[i], place).into(edit);
  }
  return edit;
}

} // namespace netmend

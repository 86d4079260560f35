#pragma once

#include "netmend/board/edit.h"
#include "object_json.h"

namespace netmend {

/// `{"changes": [{"put": "net", "object": {…}}, {"remove": "net", "id": 5}, {"info": {…}}]}`
[[nodiscard]] nlohmann::json encodeEdit(Encoder& encoder, const Edit& edit);
/// Keeps the first problem in the decoder.
[[nodiscard]] Edit decodeEdit(Decoder& decoder, const nlohmann::json& in);

} // namespace netmend

// Field notes as they come in through C.
#pragma once

#include <memory>
#include <string_view>

#include "capi/context.h"
#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::capi {

// What the notes say. The text in the context's workspace becomes the remarks, one a line.
Result<std::unique_ptr<firnbook::PitT>> take_notes(firn_context& context, const char* caller,
                                                   std::string_view text, bool keep_unread);

}  // namespace firn::capi

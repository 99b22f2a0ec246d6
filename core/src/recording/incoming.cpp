#include "recording/incoming.h"

#include <string>
#include <utility>

#include "recording/draft.h"
#include "recording/fold.h"
#include "recording/overlay.h"

namespace firn::recording {
namespace {

using firnbook::ChangeKind;
using firnbook::Edit;

Done check_text(const Edit& edit) {
  const firnbook::Pit* fields = edit.change()->fields();
  const flatbuffers::String* observer = edit.observer();
  const bool is_text = (fields == nullptr || holds_plain_text(*fields)) &&
                       (observer == nullptr || is_plain_text({observer->c_str(), observer->size()}));
  if (is_text) return done();
  return failure_of(FIRN_BAD_UTF8, "a text in the edit is not UTF-8 or holds control characters",
                    "give text as UTF-8; of control characters only tab and line ends");
}

}  // namespace

bool is_newer(const Edit& edit) {
  const firnbook::Pit* fields = edit.change() != nullptr ? edit.change()->fields() : nullptr;
  return edit.schema_minor() > pit::kSchemaMinor ||
         (fields != nullptr && fields->schema_minor() > pit::kSchemaMinor);
}

bool is_marker(const Edit& edit) {
  const ChangeKind kind = *edit.change()->kind();
  return kind == ChangeKind::undo || kind == ChangeKind::redo;
}

Result<const Edit*> read_edit(const std::uint8_t* bytes, std::size_t size, const pit::Limits& limits,
                              pit::AlignedBytes& aligned) {
  static constexpr pit::Schema kEdit = {
      "FIRE", "edit", [](flatbuffers::Verifier& verifier) { return firnbook::VerifyEditBuffer(verifier); }};
  Result<const std::uint8_t*> data = pit::verify_bytes(bytes, size, limits, kEdit, aligned);
  if (!data) return data.failure();
  return firnbook::GetEdit(*data);
}

Done check_head(const Edit& edit) {
  if (is_newer(edit)) {
    return failure_of(FIRN_NEWER_SCHEMA,
                      "the edit was written by a newer version and may say more than is known here",
                      "keep its bytes, and record with a library of that version");
  }
  if (edit.id() == nullptr || edit.id()->device() == 0 || edit.id()->sequence() == 0) {
    return failure_of(FIRN_BAD_EDIT, "the edit has no id",
                      "give it a device and a sequence, neither of them 0");
  }
  if (edit.clock() == 0 || edit.clock() > kLastClock) {
    return failure_of(FIRN_BAD_EDIT, "the edit's logical clock is 0 or beyond its range",
                      "give it one more than the largest clock seen");
  }
  if (edit.change() == nullptr)
    return failure_of(FIRN_BAD_EDIT, "the edit holds no change", "give it a change");
  return done();
}

Result<std::size_t> check_alone(const Edit& edit) {
  Done verdict = Fold::check_alone(*edit.change());
  if (!verdict) return verdict.failure();
  const firnbook::Pit* fields = edit.change()->fields();
  const std::size_t content = fields != nullptr ? content_of(*fields) : 0;
  if (content > kMostContent) {
    return failure_of(FIRN_TOO_LARGE, "the edit writes more than 256 MB once it is unpacked",
                      "no edit is that large; its bytes may be made to harm");
  }
  verdict = check_text(edit);
  if (!verdict) return verdict.failure();
  return content;
}

}  // namespace firn::recording

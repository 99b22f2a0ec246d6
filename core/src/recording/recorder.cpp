#include "recording/recorder.h"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

namespace firn::recording {
namespace {

using firnbook::ChangeKind;
using firnbook::Edit;

EditKey key_of(const firnbook::EditId& id) {
  return {id.device(), id.sequence()};
}

bool is_marker(const Edit& edit) {
  const ChangeKind kind = *edit.change()->kind();
  return kind == ChangeKind::undo || kind == ChangeKind::redo;
}

Done check_head(const Edit& edit) {
  const firnbook::Pit* fields = edit.change() != nullptr ? edit.change()->fields() : nullptr;
  if (edit.schema_minor() > pit::kSchemaMinor ||
      (fields != nullptr && fields->schema_minor() > pit::kSchemaMinor)) {
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

Done check_fields(const Edit& edit, std::size_t content) {
  if (content > kMostContent) {
    return failure_of(FIRN_TOO_LARGE, "the edit writes more than 256 MB once it is unpacked",
                      "no edit is that large; its bytes may be made to harm");
  }
  const firnbook::Pit* fields = edit.change()->fields();
  const flatbuffers::String* observer = edit.observer();
  const bool is_text = (fields == nullptr || holds_plain_text(*fields)) &&
                       (observer == nullptr || is_plain_text({observer->c_str(), observer->size()}));
  if (is_text) return done();
  return failure_of(FIRN_BAD_UTF8, "a text in the edit is not UTF-8 or holds control characters",
                    "give text as UTF-8; of control characters only tab and line ends");
}

}  // namespace

Done Recorder::apply(const std::uint8_t* bytes, std::size_t size) {
  static constexpr pit::Schema kEdit = {
      "FIRE", "edit", [](flatbuffers::Verifier& verifier) { return firnbook::VerifyEditBuffer(verifier); }};
  pit::AlignedBytes aligned;
  Result<const std::uint8_t*> data = pit::verify_bytes(bytes, size, limits_, kEdit, aligned);
  if (!data) return data.failure();
  const Edit& edit = *firnbook::GetEdit(*data);
  Done verdict = check_head(edit);
  if (!verdict) return verdict;
  const auto same_key = edits_.find(key_of(*edit.id()));
  if (same_key != edits_.end()) {
    const Bytes& there = same_key->second.bytes;
    if (there.size() == size && std::equal(there.begin(), there.end(), bytes)) return done();
    return failure_of(FIRN_DUPLICATE_EDIT, "another edit with this device and sequence is already there",
                      "give each edit of a device a sequence of its own");
  }
  verdict = Fold::check_alone(*edit.change());
  if (!verdict) return verdict;
  const firnbook::Pit* fields = edit.change()->fields();
  const std::size_t content = fields != nullptr ? content_of(*fields) : 0;
  verdict = check_fields(edit, content);
  if (!verdict) return verdict;
  verdict = is_marker(edit) ? check_marker(edit) : check_content(edit, content);
  if (!verdict) return verdict;
  insert(edit, *data, size, content);
  return done();
}

std::uint64_t Recorder::last_sequence(std::uint64_t device) const {
  auto after = edits_.upper_bound({device, UINT64_MAX});
  if (after == edits_.begin()) return 0;
  --after;
  return after->first.device == device ? after->first.sequence : 0;
}

Done Recorder::check_marker(const Edit& edit) const {
  const EditKey named = key_of(*edit.change()->edit());
  const auto found = edits_.find(named);
  if (found == edits_.end()) {
    return failure_of(FIRN_NO_SUCH_TARGET, "the edit to undo or redo is not there",
                      "name an edit that was recorded");
  }
  const Order marker{edit.clock(), key_of(*edit.id())};
  if (!(Order{found->second.clock, named} < marker)) {
    return failure_of(FIRN_BAD_EDIT, "an undo or redo must come after the edit that it names",
                      "give it a clock larger than all that were seen");
  }
  return done();
}

Done Recorder::check_content(const Edit& edit, std::size_t content) {
  const Order here{edit.clock(), key_of(*edit.id())};
  FoldReport report;
  if (here < last_) return fold(&here, report)->check(edit, content);
  Done fits = folded().check(edit, content);
  return fits ? folded().check_now(edit) : std::move(fits);
}

const Fold& Recorder::folded() {
  FoldReport report;
  if (folded_ == nullptr) folded_ = fold(nullptr, report);
  return *folded_;
}

Result<const Run*> Recorder::run_of(const firnbook::Target& test) {
  const Run* run = folded().run_of(test);
  if (run != nullptr) return run;
  return failure_of(FIRN_NO_SUCH_TARGET, "there is no guided test of that name",
                    "name a test that was begun as a guided one and is still there");
}

Result<Guidance> Recorder::guided(const firnbook::Target& test) {
  const Result<const Run*> run = run_of(test);
  if (!run) return run.failure();
  return guide(**run, folded().test_of(**run));
}

Result<Bytes> Recorder::guided_test(const firnbook::Target& test) {
  const Result<const Run*> run = run_of(test);
  if (!run) return run.failure();
  firnbook::PitT alone;
  alone.tests.push_back(std::make_unique<firnbook::StabilityTestT>(folded().test_of(**run)));
  return to_bytes(alone);
}

firnbook::Target Recorder::guided_fracture(const firnbook::Target& test, std::uint32_t sub) {
  const Run* run = folded().run_of(test);
  if (run != nullptr) {
    for (const Run::Named& named : run->fractures) {
      if (named.sub == sub) return target_of(named.edit, firnbook::Thing::fracture);
    }
  }
  return {};
}

firnbook::Target Recorder::open_test(std::uint64_t device) {
  const Run* run = folded().open_run(device);
  return run != nullptr ? target_of(run->start, firnbook::Thing::test) : firnbook::Target();
}

// What can fail for want of memory comes before anything that shows.
void Recorder::insert(const Edit& edit, const std::uint8_t* bytes, std::size_t size, std::size_t content) {
  const Order here{edit.clock(), key_of(*edit.id())};
  // Out of date until the edit is in it.
  std::unique_ptr<Fold> folded = std::move(folded_);
  if (is_marker(edit) || here < last_) folded.reset();
  if (folded != nullptr) folded->apply(edit, content);
  edits_.emplace(here.key, Stored{Bytes(bytes, bytes + size), edit.clock(), content});
  folded_ = std::move(folded);
  if (last_ < here) last_ = here;
  if (next_clock_ <= edit.clock()) next_clock_ = std::min(edit.clock() + 1, kLastClock);
}

std::vector<const Recorder::Stored*> Recorder::counting(FoldReport& report) const {
  std::vector<std::pair<Order, const Stored*>> ordered;
  ordered.reserve(edits_.size());
  for (const auto& [key, stored] : edits_) ordered.push_back({Order{stored.clock, key}, &stored});
  std::sort(ordered.begin(), ordered.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  // From the last to the first: whoever comes to an edit knows already whether all that speak of it count.
  std::map<EditKey, bool> counts;
  std::vector<const Stored*> kept;
  kept.reserve(ordered.size());
  for (auto it = ordered.rbegin(); it != ordered.rend(); ++it) {
    const Edit& edit = it->second->edit();
    const auto decided = counts.find(it->first.key);
    if (decided != counts.end() && !decided->second) {
      if (!is_marker(edit)) ++report.taken_back;
      continue;
    }
    if (!is_marker(edit)) {
      kept.push_back(it->second);
      continue;
    }
    // The later one was here first and decides. A name of a later edit finds nothing more to decide.
    counts.emplace(key_of(*edit.change()->edit()), *edit.change()->kind() == ChangeKind::redo);
  }
  std::reverse(kept.begin(), kept.end());
  return kept;
}

std::unique_ptr<Fold> Recorder::fold(const Order* end, FoldReport& report) const {
  auto folded = std::make_unique<Fold>();
  for (const Stored* stored : counting(report)) {
    const Edit& edit = stored->edit();
    if (end != nullptr && !(Order{stored->clock, key_of(*edit.id())} < *end)) break;
    if (folded->check(edit, stored->content)) {
      folded->apply(edit, stored->content);
    } else {
      ++report.without_effect;
    }
  }
  return folded;
}

Result<Bytes> Recorder::pit(FoldReport* report) const {
  FoldReport counted;
  const std::unique_ptr<Fold> folded = fold(nullptr, counted);
  Bytes bytes = to_bytes(folded->finish());
  if (bytes.size() > limits_.max_bytes) {
    return failure_of(
        FIRN_TOO_LARGE, "the pit takes more bytes than the limits allow",
        "raise max_bytes in the context's limits, or remove what is large (extensions, long texts)");
  }
  if (report != nullptr) *report = counted;
  return bytes;
}

}  // namespace firn::recording

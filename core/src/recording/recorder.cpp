#include "recording/recorder.h"

#include <algorithm>
#include <string>
#include <utility>

namespace firn::recording {
namespace {

using firnbook::ChangeKind;
using firnbook::Edit;

EditOrder order_of(const Edit& edit) {
  return {edit.clock(), key_of(*edit.id())};
}

bool is_undo(const Edit& edit) {
  return *edit.change()->kind() == ChangeKind::undo;
}

bool stands_before(const Standing& standing, const EditOrder& order) {
  return standing.order < order;
}

}  // namespace

Done Recorder::apply(const std::uint8_t* bytes, std::size_t size) {
  pit::AlignedBytes aligned;
  Result<const Edit*> read = read_edit(bytes, size, limits_, aligned);
  if (!read) return read.failure();
  const Edit& edit = **read;
  Done verdict = check_head(edit);
  if (!verdict) return verdict;
  if (const Held* there = find_edit(key_of(*edit.id()))) {
    if (there->bytes.size() == size && std::equal(there->bytes.begin(), there->bytes.end(), bytes))
      return done();
    return failure_of(FIRN_DUPLICATE_EDIT, "another edit with this device and sequence is already there",
                      "give each edit of a device a sequence of its own");
  }
  if (size > kMostContent - held_bytes_) {
    return failure_of(FIRN_TOO_LARGE, "all edits together take more than 256 MB",
                      "no pit is that large; start another one");
  }
  Result<std::size_t> content = check_alone(edit);
  if (!content) return content.failure();
  verdict = is_marker(edit) ? check_marker(edit) : check_content(edit, *content);
  if (!verdict) return verdict;
  insert(edit, bytes, size, *content);
  return done();
}

const Recorder::Held* Recorder::find_edit(EditKey key) const {
  const auto found = held_.find({key, kEditSort, 0});
  return found == held_.end() ? nullptr : &found->second;
}

std::uint64_t Recorder::last_sequence(std::uint64_t device) const {
  std::uint64_t last = 0;
  auto after = held_.upper_bound({{device, UINT64_MAX}, UINT16_MAX, UINT32_MAX});
  if (after != held_.begin() && (--after)->first.key.device == device) last = after->first.key.sequence;
  auto lost = std::upper_bound(lost_.begin(), lost_.end(), EditKey{device, UINT64_MAX});
  if (lost != lost_.begin() && (--lost)->device == device) last = std::max(last, lost->sequence);
  return last;
}

// From device to device, looking at the last of each that could be read.
std::vector<firnbook::Seen> Recorder::seen_by(std::uint64_t device) const {
  std::vector<firnbook::Seen> seen;
  for (auto first = held_.begin(); first != held_.end() && seen.size() < kMostSeen;) {
    const std::uint64_t other = first->first.key.device;
    const auto next = held_.upper_bound({{other, UINT64_MAX}, UINT16_MAX, UINT32_MAX});
    for (auto it = next; other != device && it != first;) {
      --it;
      if (!it->second.is_readable) continue;
      seen.emplace_back(other, it->first.key.sequence);
      break;
    }
    first = next;
  }
  return seen;
}

Done Recorder::check_marker(const Edit& edit) const {
  const EditKey named = key_of(*edit.change()->edit());
  const Held* found = find_edit(named);
  if (found == nullptr || !found->is_readable) {
    return failure_of(FIRN_NO_SUCH_TARGET, "the edit to undo or redo is not there",
                      "name an edit that was recorded");
  }
  if (!(order_of(found->edit()) < order_of(edit))) {
    return failure_of(FIRN_BAD_EDIT, "an undo or redo must come after the edit that it names",
                      "give it a clock larger than all that were seen");
  }
  return done();
}

Done Recorder::check_content(const Edit& edit, std::size_t content) {
  FoldReport report;
  const EditOrder here = order_of(edit);
  if (here < last_) return fold(standings(), &here, report)->check(edit, content);
  Done fits = folded().check(edit, content);
  return fits ? folded().check_now(edit) : std::move(fits);
}

const Fold& Recorder::folded() {
  FoldReport report;
  if (folded_ == nullptr) folded_ = fold(standings(), nullptr, report);
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

Result<const firnbook::StabilityTestT*> Recorder::guided_test(const firnbook::Target& test) {
  const Result<const Run*> run = run_of(test);
  if (!run) return run.failure();
  return &folded().test_of(**run);
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
  const EditOrder here = order_of(edit);
  if (arrivals_.size() == arrivals_.capacity()) arrivals_.reserve(2 * arrivals_.size() + 16);
  // Out of date until the edit is in it.
  std::unique_ptr<Fold> folded = std::move(folded_);
  if (is_marker(edit) || here < last_) folded.reset();
  if (folded != nullptr) folded->apply(edit, content);
  const auto held =
      held_.emplace(HeldKey{here.key, kEditSort, 0}, Held{Bytes(bytes, bytes + size), content, true}).first;
  arrivals_.push_back(&*held);
  folded_ = std::move(folded);
  ++edit_count_;
  held_bytes_ += size;
  if (last_ < here) last_ = here;
  if (next_clock_ <= here.clock) next_clock_ = std::min(here.clock + 1, kLastClock);
}

std::vector<Standing> Recorder::standings() const {
  std::vector<Standing> all;
  all.reserve(edit_count_);
  for (const auto& [key, held] : held_) {
    if (held.is_readable) all.push_back({&held.edit(), nullptr, held.content, order_of(held.edit()), true});
  }
  std::sort(all.begin(), all.end(), [](const Standing& a, const Standing& b) { return a.order < b.order; });
  // From the last to the first: whoever comes to an edit knows already whether all that speak of it count.
  for (std::size_t i = all.size(); i-- > 0;) {
    const Edit& edit = *all[i].edit;
    if (!all[i].counts || !is_marker(edit)) continue;
    const Held* named = find_edit(key_of(*edit.change()->edit()));
    if (named == nullptr || !named->is_readable) continue;
    const EditOrder order = order_of(named->edit());
    // A name of a later edit finds nothing more to decide.
    if (!(order < all[i].order)) continue;
    Standing& standing = *std::lower_bound(all.begin(), all.end(), order, stands_before);
    // The later one was here first and decides.
    if (standing.by != nullptr) continue;
    standing.by = &edit;
    standing.counts = !is_undo(edit);
  }
  return all;
}

std::unique_ptr<Fold> Recorder::fold(const std::vector<Standing>& standings, const EditOrder* end,
                                     FoldReport& report) const {
  auto folded = std::make_unique<Fold>();
  for (const Standing& standing : standings) {
    if (end != nullptr && !(standing.order < *end)) break;
    if (is_marker(*standing.edit)) continue;
    if (!standing.counts) {
      ++report.taken_back;
    } else if (folded->check(*standing.edit, standing.content)) {
      folded->apply(*standing.edit, standing.content);
    } else {
      ++report.without_effect;
    }
  }
  return folded;
}

Result<Bytes> Recorder::pit(FoldReport* report) const {
  FoldReport counted;
  const std::unique_ptr<Fold> folded = fold(standings(), nullptr, counted);
  firnbook::PitT& pit = folded->finish();
  const auto kept = static_cast<std::uint32_t>(std::min<std::size_t>(kept_count(), UINT32_MAX));
  if (kept > 0) pit.unread_edits = std::max(kept, pit.unread_edits.value_or(0));
  Bytes bytes = to_bytes(pit);
  if (bytes.size() > limits_.max_bytes) {
    return failure_of(
        FIRN_TOO_LARGE, "the pit takes more bytes than the limits allow",
        "raise max_bytes in the context's limits, or remove what is large (extensions, long texts)");
  }
  if (report != nullptr) *report = counted;
  return bytes;
}

// What to undo is the last that counts. What to redo is the last that was taken back, unless something was
// recorded since: then there is no way forward any more.
UndoSteps Recorder::undo_steps(std::uint64_t device) const {
  UndoSteps steps;
  EditOrder last_recorded;
  EditOrder last_taken_back;
  const std::vector<Standing> all = standings();
  for (const Standing& standing : all) {
    if (standing.order.key.device != device || is_marker(*standing.edit)) continue;
    last_recorded = standing.order;
    if (standing.counts) {
      steps.undo = standing.order.key.sequence;
    } else if (last_taken_back < order_of(*standing.by)) {
      last_taken_back = order_of(*standing.by);
      steps.redo = standing.order.key.sequence;
    }
  }
  if (last_taken_back < last_recorded) steps.redo = 0;
  return steps;
}

std::vector<Conflict> Recorder::conflicts() const {
  FoldReport report;
  const std::vector<Standing> all = standings();
  return find_conflicts(all, *fold(all, nullptr, report));
}

}  // namespace firn::recording

// The recorder's journal: tickets, frames, and what other journals bring.
#include <algorithm>
#include <string>
#include <utility>

#include "recording/overlay.h"
#include "recording/recorder.h"
#include "support/checksum.h"
#include "support/text.h"

namespace firn::recording {
namespace {

using firnbook::Edit;

Failure not_begun() {
  return failure_of(FIRN_WRONG_STATE, "nobody has said which pit this is the journal of",
                    "call firn_recorder_begin with the pit's id first");
}

Failure bad_ticket(const char* what) {
  return failure_of(FIRN_BAD_TICKET, what, "use the tickets that firn_recorder_ticket and _frames answer");
}

Failure too_large() {
  return failure_of(FIRN_TOO_LARGE, "the journal holds more than 256 MB of edits",
                    "no pit is that large; start another one");
}

Failure other_pit() {
  return failure_of(FIRN_OTHER_PIT, "the journal is that of another pit",
                    "look which file was opened; to hold two pits against each other, compare them");
}

Failure same_key(EditKey key) {
  std::string what = "two different edits are number ";
  append_unsigned(what, key.sequence);
  what += " of device ";
  append_unsigned(what, key.device);
  return failure_of(
      FIRN_DUPLICATE_EDIT, std::move(what),
      "a number was given out twice: hand on only edits that were acknowledged, and give each device "
      "and journal a number of its own");
}

std::string_view text_of(const std::uint8_t* bytes, std::size_t size) {
  return {reinterpret_cast<const char*>(bytes), size};
}

Done check_pit_id(std::string_view pit_id) {
  if (pit_id.empty() || pit_id.size() > kMostPitId) {
    return failure_of(FIRN_BAD_ARGUMENT, "the pit's id is empty or longer than 1024 bytes",
                      "give a name of its own to each pit, such as a UUID");
  }
  if (!is_plain_text(pit_id)) {
    return failure_of(FIRN_BAD_UTF8, "the pit's id is not UTF-8 or holds control characters",
                      "give plain text");
  }
  return done();
}

}  // namespace

Done Recorder::begin(std::string_view pit_id) {
  Done plain = check_pit_id(pit_id);
  if (!plain) return plain;
  if (!pit_id_.empty() && pit_id_ != pit_id) {
    return failure_of(FIRN_OTHER_PIT, "this is the journal of another pit", "make a recorder for each pit");
  }
  if (!pit_id_.empty()) return done();
  std::string own(pit_id);
  arrivals_.push_back(nullptr);
  pit_id_.swap(own);
  pit_tag_ = pit_tag(pit_id_);
  return done();
}

Done Recorder::acknowledge(std::uint64_t ticket) {
  if (ticket > last_ticket()) return bad_ticket("this ticket was not given out");
  if (ticket <= acknowledged_) return bad_ticket("this ticket was acknowledged before");
  acknowledged_ = ticket;
  return done();
}

void Recorder::append_held(Bytes& out, const HeldMap::value_type& held) const {
  const Bytes& bytes = held.second.bytes;
  if (held.first.checksum != 0) {
    out.insert(out.end(), bytes.begin(), bytes.end());
  } else {
    append_frame(out, FrameKind::edit, held.first.key, pit_tag_, bytes.data(), bytes.size());
  }
}

void Recorder::append_pit_frame(Bytes& out) const {
  append_frame(out, FrameKind::pit, {}, pit_tag_, reinterpret_cast<const std::uint8_t*>(pit_id_.data()),
               pit_id_.size());
}

Result<Bytes> Recorder::frames_after(std::uint64_t ticket) const {
  if (pit_id_.empty()) return not_begun();
  if (ticket > last_ticket()) return bad_ticket("this ticket was not given out");
  Bytes out;
  for (auto at = static_cast<std::size_t>(ticket); at < arrivals_.size(); ++at) {
    arrivals_[at] == nullptr ? append_pit_frame(out) : append_held(out, *arrivals_[at]);
  }
  return out;
}

Result<Bytes> Recorder::journal() const {
  if (pit_id_.empty()) return not_begun();
  Bytes out;
  append_pit_frame(out);
  for (const auto& held : held_) append_held(out, held);
  return out;
}

// --- loading ---------------------------------------------------------------------------------------------

// What a journal brings, beside the recorder until all of it was looked at.
class Recorder::Loading {
 public:
  Loading(const Recorder& into, const std::uint8_t* bytes)
      : into_(into), bytes_(bytes), pit_id(into.pit_id_), next_clock(into.next_clock_), last(into.last_) {}

  Done take(JournalMap map) {
    Done named = find_pit(map);
    if (!named) return named;
    loaded.whole_size = map.whole_size;
    loaded.gaps = std::move(map.gaps);
    for (const Frame& frame : map.frames) {
      Done taken = take_frame(frame);
      if (!taken) return taken;
    }
    finish_gaps();
    return done();
  }

 private:
  // The name of the pit: the recorder's, else the journal's own.
  Done find_pit(const JournalMap& map) {
    for (const Frame& frame : map.frames) {
      if (!pit_id.empty()) break;
      if (!frame.is(FrameKind::pit)) continue;
      const std::string_view id = text_of(bytes_ + frame.payload(), frame.payload_size);
      if (check_pit_id(id)) pit_id.assign(id);
    }
    tag = pit_tag(pit_id);
    if (map.frames.empty()) return done();
    if (pit_id.empty()) return not_begun();
    return map.frames.front().pit_tag == tag ? done() : Done(other_pit());
  }

  Done take_frame(const Frame& frame) {
    if (frame.pit_tag != tag) return leave_out(frame, GapReason::other_pit);
    if (!frame.is_known) return keep(frame, bytes_ + frame.offset, frame.size);
    if (frame.is(FrameKind::edit)) return take_edit(frame);
    if (text_of(bytes_ + frame.payload(), frame.payload_size) != pit_id) return other_pit();
    if (into_.pit_id_.empty() && !loaded.names_pit) arrivals.push_back(nullptr);
    loaded.names_pit = true;
    ++loaded.frames;
    return done();
  }

  Done take_edit(const Frame& frame) {
    const std::uint8_t* payload = bytes_ + frame.payload();
    const HeldKey key{frame.key, kEditSort, 0};
    if (is_there(key, payload, frame.payload_size)) return done();
    if (has_other(key)) return same_key(frame.key);
    Result<const Edit*> read = read_edit(payload, frame.payload_size, into_.limits_, aligned_);
    if (!read && read.failure().status == FIRN_TOO_LARGE) return read.failure();
    if (!read) return leave_out(frame, GapReason::bad_edit);
    const Edit& edit = **read;
    if (edit.id() == nullptr || !(key_of(*edit.id()) == frame.key)) {
      return leave_out(frame, GapReason::bad_edit);
    }
    if (is_newer(edit)) {
      see_clock(edit.clock());
      return add(key, payload, frame.payload_size, 0, false);
    }
    if (!check_head(edit)) return leave_out(frame, GapReason::bad_edit);
    Result<std::size_t> content = check_alone(edit);
    if (!content) return leave_out(frame, GapReason::bad_edit);
    see_clock(edit.clock());
    last = std::max(last, EditOrder{edit.clock(), frame.key});
    return add(key, payload, frame.payload_size, *content, true);
  }

  Done keep(const Frame& frame, const std::uint8_t* bytes, std::size_t size) {
    const auto sort = static_cast<std::uint16_t>(frame.version * 256 + frame.kind);
    const HeldKey key{frame.key, sort, crc32(bytes, size) | 1u};
    if (is_there(key, bytes, size)) return done();
    if (has_other(key)) return same_key(frame.key);
    return add(key, bytes, size, 0, false);
  }

  const Held* find(const HeldKey& key) const {
    const auto there = into_.held_.find(key);
    if (there != into_.held_.end()) return &there->second;
    const auto here = held.find(key);
    return here != held.end() ? &here->second : nullptr;
  }
  bool has_other(const HeldKey& key) const { return find(key) != nullptr; }
  // Counts the frame when it is.
  bool is_there(const HeldKey& key, const std::uint8_t* bytes, std::size_t size) {
    const Held* found = find(key);
    if (found == nullptr || found->bytes.size() != size ||
        !std::equal(found->bytes.begin(), found->bytes.end(), bytes)) {
      return false;
    }
    ++loaded.frames;
    ++loaded.known;
    return true;
  }

  Done add(const HeldKey& key, const std::uint8_t* bytes, std::size_t size, std::size_t content,
           bool is_readable) {
    if (size > kMostContent - into_.held_bytes_ - held_bytes) return too_large();
    held_bytes += size;
    const auto added = held.emplace(key, Held{Bytes(bytes, bytes + size), content, is_readable}).first;
    arrivals.push_back(&*added);
    ++loaded.frames;
    ++(is_readable ? loaded.added : loaded.kept);
    return done();
  }

  Done leave_out(const Frame& frame, GapReason reason) {
    loaded.gaps.push_back({frame.offset, frame.size, frame.key, reason});
    return done();
  }

  void see_clock(std::uint64_t clock) {
    if (next_clock <= clock) next_clock = std::min(clock, kLastClock - 1) + 1;
  }

  void finish_gaps() {
    std::sort(loaded.gaps.begin(), loaded.gaps.end(),
              [](const Gap& a, const Gap& b) { return a.offset < b.offset; });
    lost = into_.lost_;
    for (const Gap& gap : loaded.gaps) {
      loaded.lost_bytes += gap.size;
      if (gap.key.device != 0 && gap.reason != GapReason::other_pit) lost.push_back(gap.key);
    }
    std::sort(lost.begin(), lost.end());
    // The last of each device is what counts.
    const auto is_followed = [this](const EditKey& key) {
      const EditKey* next = &key + 1;
      return next != lost.data() + lost.size() && next->device == key.device;
    };
    std::size_t left = 0;
    for (const EditKey& key : lost) {
      if (!is_followed(key)) lost[left++] = key;
    }
    lost.resize(left);
  }

  const Recorder& into_;
  const std::uint8_t* bytes_;
  pit::AlignedBytes aligned_;

 public:
  HeldMap held;
  Arrivals arrivals;
  std::size_t held_bytes = 0;
  std::string pit_id;
  std::uint32_t tag = 0;
  std::uint64_t next_clock;
  EditOrder last;
  std::vector<EditKey> lost;
  Loaded loaded;
};

Result<Loaded> Recorder::load(const std::uint8_t* bytes, std::size_t size) {
  if (bytes == nullptr) {
    return failure_of(FIRN_NULL_ARGUMENT, "no bytes of a journal were given",
                      "give the bytes and their size");
  }
  if (size > 2 * kMostContent) return too_large();
  Loading loading(*this, bytes);
  Done taken = loading.take(scan_journal(bytes, size));
  if (!taken) return taken.failure();
  arrivals_.reserve(arrivals_.size() + loading.arrivals.size());
  // Nothing can fail from here on.
  arrivals_.insert(arrivals_.end(), loading.arrivals.begin(), loading.arrivals.end());
  held_.merge(loading.held);
  held_bytes_ += loading.held_bytes;
  edit_count_ += loading.loaded.added;
  lost_.swap(loading.lost);
  if (!loading.pit_id.empty()) {
    pit_id_.swap(loading.pit_id);
    pit_tag_ = loading.tag;
  }
  if (loading.loaded.added > 0) folded_.reset();
  next_clock_ = loading.next_clock;
  last_ = loading.last;
  return std::move(loading.loaded);
}

}  // namespace firn::recording

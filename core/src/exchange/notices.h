// What happened to a record on its way from one format to another. Nothing is lost without a word: what a
// reader did not understand and what a writer could not hold are told here, one by one, with their place.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace firn::exchange {

enum class NoticeKind : std::uint8_t {
  changed,         // read or written in another form: rounded, converted, put in order
  kept,            // not understood, but kept in the pit (an extension, the observer's words)
  not_understood,  // not understood and not kept
  left_out         // the format cannot hold it
};

struct Notice {
  NoticeKind kind = NoticeKind::changed;
  // From 1; 0 when the format has no lines.
  std::uint32_t line = 0;
  std::uint32_t column = 0;
  std::string path;  // in the document when reading, in the pit when writing
  std::string what;  // one sentence, without the path
};

// Keeps the first ones and counts the rest, so that a hostile document cannot fill the memory by its faults.
class Notices {
 public:
  static constexpr std::size_t kMost = 10000;

  void add(Notice notice) {
    if (kept_.size() < kMost) {
      kept_.push_back(std::move(notice));
    } else {
      ++not_kept_;
    }
  }
  const std::vector<Notice>& kept() const { return kept_; }
  std::size_t not_kept() const { return not_kept_; }
  bool empty() const { return kept_.empty(); }
  void clear() {
    kept_.clear();
    not_kept_ = 0;
  }

 private:
  std::vector<Notice> kept_;
  std::size_t not_kept_ = 0;
};

// What a document may be at most. Ours, far above any record; the caller's to set.
struct Limits {
  std::size_t max_bytes = std::size_t{64} << 20;
  std::uint32_t max_depth = 64;
};

}  // namespace firn::exchange

#include "recording_bench.h"

#include <benchmark/benchmark.h>
#include <firnbook/firnbook.h>
#include <malloc.h>
#include <unistd.h>

#include <cstdint>
#include <cstdio>
#include <string>

namespace firn::bench {
namespace {

constexpr int kTaps = 30;

// A recorder as an app has it, with a host that stores nothing and acknowledges everything.
class Hand {
 public:
  Hand() {
    firn_author author = FIRN_INIT(firn_author);
    author.device = 7;
    author.observer = "KL";
    ok_ = firn_context_create(nullptr, &context_, nullptr) == FIRN_OK &&
          firn_recorder_create(context_, &recorder_, nullptr) == FIRN_OK &&
          firn_recorder_author(recorder_, &author, nullptr) == FIRN_OK &&
          firn_recorder_begin(recorder_, "tarn-shoulder", nullptr) == FIRN_OK;
    store();
  }
  ~Hand() {
    firn_recorder_destroy(recorder_);
    firn_context_destroy(context_);
  }
  Hand(const Hand&) = delete;
  Hand& operator=(const Hand&) = delete;

  void begin_test() {
    firn_test test = FIRN_INIT(firn_test);
    test.present = FIRN_BIT(FIRN_FIELD_STABILITY_TEST_KIND);
    test.kind = FIRN_TEST_KIND_CT;
    note(firn_guided_start(recorder_, &test, &test_, &guidance_, nullptr, nullptr));
    store();
  }
  void tell(firn_test_event_kind kind) {
    firn_test_event event = FIRN_INIT(firn_test_event);
    event.kind = static_cast<std::uint8_t>(kind);
    note(firn_guided_event(recorder_, &test_, &event, &guidance_, nullptr, nullptr));
    store();
  }
  void whole_test() {
    begin_test();
    for (int i = 0; i < kTaps; ++i) tell(FIRN_TEST_EVENT_TAP);
    tell(FIRN_TEST_EVENT_STOP);
  }
  void say(const std::string& line) {
    note(firn_record_notes(recorder_, line.data(), line.size(), nullptr, nullptr));
    store();
  }

  bool ok() const { return ok_; }
  const std::string& last_frame() const { return last_frame_; }
  std::size_t stored() const { return stored_; }
  std::size_t edits() const { return firn_recorder_edit_count(recorder_); }

 private:
  void note(firn_status status) { ok_ = ok_ && status == FIRN_OK; }
  void store() {
    firn_buffer frames = {};
    std::uint64_t last = 0;
    note(firn_recorder_frames(recorder_, firn_recorder_acknowledged(recorder_), &frames, &last, nullptr));
    if (!ok_) return;
    stored_ += frames.size;
    last_frame_.assign(reinterpret_cast<const char*>(frames.data), frames.size);
    firn_buffer_free(context_, &frames);
    note(firn_recorder_acknowledge(recorder_, last, nullptr));
  }

  firn_context* context_ = nullptr;
  firn_recorder* recorder_ = nullptr;
  firn_target test_ = {};
  firn_guidance guidance_ = FIRN_INIT(firn_guidance);
  std::string last_frame_;
  std::size_t stored_ = 0;
  bool ok_ = false;
};

// One event: the edit, its frame, the answer, and the acknowledgement. A turn is a whole test.
void tap(benchmark::State& state) {
  while (state.KeepRunningBatch(kTaps + 2)) {
    Hand hand;
    hand.whole_test();
    if (!hand.ok()) {
      state.SkipWithError("a tap was refused");
      break;
    }
  }
}

// The same bytes, handed to the system and not waited for.
void write_tap(benchmark::State& state) {
  Hand hand;
  hand.begin_test();
  hand.tell(FIRN_TEST_EVENT_TAP);
  const std::string frame = hand.last_frame();
  std::FILE* file = std::tmpfile();
  if (!hand.ok() || file == nullptr) return state.SkipWithError("no file to write to");
  const int descriptor = fileno(file);
  while (state.KeepRunningBatch(kTaps + 2)) {
    bool written = lseek(descriptor, 0, SEEK_SET) == 0;
    for (int i = 0; i < kTaps + 2; ++i) {
      written =
          written && write(descriptor, frame.data(), frame.size()) == static_cast<ssize_t>(frame.size());
    }
    if (!written) {
      state.SkipWithError("the file cannot be written");
      break;
    }
  }
  std::fclose(file);
}

// Six tests tapped through and a pit of forty layers and thirty temperatures.
bool print_hour() {
  const std::size_t before = mallinfo2().uordblks;
  Hand hand;
  for (int test = 0; test < 6; ++test) hand.whole_test();
  for (int layer = 0; layer < 40; ++layer) {
    hand.say(std::to_string(3 * layer) + "-" + std::to_string(3 * layer + 3) + " 4F FC 1.5 \"invented\"");
  }
  for (int reading = 0; reading < 30; ++reading) {
    hand.say("temp " + std::to_string(4 * reading) + " -" + std::to_string(reading % 10) + ".5");
  }
  const std::size_t held = mallinfo2().uordblks - before;
  std::printf("An hour's recording: %zu edits, %zu bytes of journal, %zu bytes in memory\n", hand.edits(),
              hand.stored(), held);
  return hand.ok();
}

}  // namespace

bool register_recording() {
  benchmark::RegisterBenchmark("tap", tap);
  benchmark::RegisterBenchmark("write tap", write_tap);
  return print_hour();
}

}  // namespace firn::bench

// A recorder that is killed while it writes: whatever it had acknowledged is there, each time.
//
// FIRN_KILLS sets how many times at write boundaries (default: each boundary of the hour in four ways, 1000)
// and a fifth of it at random moments beside.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

#include "frames.h"
#include "support.h"

namespace {

using journal::Desk;
using journal::Folder;

// An hour: an edit every quarter of a minute. With the pit's own frame that makes 250 writes.
constexpr int kEdits = 249;
constexpr char kPit[] = "pit of the crash test";

// Where in a write the recorder dies.
enum class Moment { before, half_way, before_sync, before_acknowledging };
constexpr int kMoments = 4;

// In the child only.
struct Doom {
  int writes_left = 0;  // 0: it lives
  Moment moment = Moment::before;
} doom;

void die() {
  kill(getpid(), SIGKILL);
}

ssize_t fatal_write(int file, const void* bytes, size_t size) {
  const bool is_now = doom.writes_left > 0 && --doom.writes_left == 0;
  if (!is_now) return write(file, bytes, size);
  if (doom.moment == Moment::before) die();
  if (doom.moment == Moment::half_way) {
    if (write(file, bytes, size / 2) >= 0) die();
  }
  const ssize_t taken = write(file, bytes, size);
  if (doom.moment == Moment::before_sync) die();
  doom.writes_left = -1;
  return taken;
}

int fatal_sync(int file) {
  const int result = fsync(file);
  if (doom.writes_left == -1) die();
  return result;
}

// One edit that was acknowledged, on its way to the parent. Small enough to go through a pipe in one piece.
struct Promise {
  std::uint64_t sequence;
  std::uint32_t checksum;
  std::uint32_t size;
};

// Records what is left of the hour. Never comes back.
[[noreturn]] void record_hour(const std::string& path, int report, bool at_writes) {
  Desk desk;
  journal_file file;
  const journal_file_calls calls = {at_writes ? fatal_write : write, at_writes ? fatal_sync : fsync,
                                    ftruncate};
  if (journal_file_open(&file, path.c_str(), kPit, desk.context, desk.recorder, &calls, &desk.error) !=
      JOURNAL_FILE_OK) {
    _exit(2);
  }
  for (int n = static_cast<int>(firn_recorder_edit_count(desk.recorder)); n < kEdits; ++n) {
    firn_buffer edit = {nullptr, 0};
    if (desk.record(n, &edit) != FIRN_OK) _exit(3);
    if (journal_file_store(&file, &desk.error) != JOURNAL_FILE_OK) _exit(4);
    std::uint64_t next = 0;
    if (firn_recorder_next(desk.recorder, nullptr, &next, nullptr) != FIRN_OK) _exit(5);
    const std::string bytes = desk.take(edit);
    const Promise promise = {next - 1, journal::crc32(bytes, 0, bytes.size()),
                             static_cast<std::uint32_t>(bytes.size())};
    if (write(report, &promise, sizeof promise) != sizeof promise) _exit(6);
  }
  _exit(0);
}

class Crash : public testing::Test {
 protected:
  // Runs a recorder to its death, or to the end of the hour; true when it was killed.
  bool run(int writes, Moment moment, useconds_t random_us) {
    int ends[2];
    EXPECT_EQ(pipe(ends), 0);
    const pid_t child = fork();
    if (child == 0) {
      close(ends[0]);
      doom.writes_left = writes;
      doom.moment = moment;
      record_hour(folder.file(), ends[1], writes > 0);
    }
    close(ends[1]);
    if (random_us > 0) {
      usleep(random_us);
      kill(child, SIGKILL);
    }
    int how = 0;
    EXPECT_EQ(waitpid(child, &how, 0), child);
    Promise promise;
    while (read(ends[0], &promise, sizeof promise) == sizeof promise) promised[promise.sequence] = promise;
    close(ends[0]);
    if (WIFEXITED(how)) {
      EXPECT_EQ(WEXITSTATUS(how), 0);
    }
    return WIFSIGNALED(how) && WTERMSIG(how) == SIGKILL;
  }

  // Everything that was ever promised stands in the file, byte for byte, and the library reads it all.
  void expect_promises_kept() {
    const std::string bytes = journal::read_file(folder.file());
    const auto frames = journal::read_frames(bytes);
    for (const auto& [sequence, promise] : promised) {
      const auto found = frames.find({7, sequence});
      ASSERT_NE(found, frames.end()) << "edit " << sequence << " was acknowledged and is gone";
      ASSERT_EQ(found->second.size(), promise.size) << sequence;
      ASSERT_EQ(journal::crc32(found->second, 0, found->second.size()), promise.checksum) << sequence;
    }
    Desk desk;
    firn_loaded loaded = FIRN_INIT(firn_loaded);
    const auto* data = reinterpret_cast<const std::uint8_t*>(bytes.data());
    ASSERT_EQ(firn_recorder_load(desk.recorder, data, bytes.size(), &loaded, nullptr), FIRN_OK);
    ASSERT_EQ(loaded.frames, frames.size());
    ASSERT_GE(loaded.added, promised.size());
    // At most the one write that was under way is torn.
    ASSERT_LE(loaded.gaps, 1u);
    ASSERT_EQ(loaded.whole_size + loaded.lost_bytes, bytes.size());
  }

  void start_anew() {
    unlink(folder.file().c_str());
    promised.clear();
  }

  static int kills() {
    const char* wanted = std::getenv("FIRN_KILLS");
    const int all = (kEdits + 1) * kMoments;
    return wanted == nullptr ? all : std::max(1, std::atoi(wanted));
  }

  Folder folder;
  std::map<std::uint64_t, Promise> promised;
};

TEST_F(Crash, AtEveryWriteBoundaryNothingAcknowledgedIsLost) {
  const int all = (kEdits + 1) * kMoments;
  const int wanted = std::min(kills(), all);
  for (int n = 0; n < wanted; ++n) {
    const int which = static_cast<int>(std::int64_t{n} * all / wanted);
    const int writes = which / kMoments + 1;
    const auto moment = static_cast<Moment>(which % kMoments);
    start_anew();
    ASSERT_TRUE(run(writes, moment, 0)) << which;
    // The first write names the pit; each one after it holds one edit, and all before the last were promised.
    ASSERT_EQ(promised.size(), static_cast<std::size_t>(std::max(0, writes - 2))) << which;
    expect_promises_kept();
    if (HasFailure()) return;
  }
}

TEST_F(Crash, AtRandomMomentsNothingAcknowledgedIsLostAndItGoesOn) {
  std::uint64_t dice = 1;
  int killed = 0;
  int hours = 0;
  for (int runs = 0; killed < std::max(1, kills() / 5); ++runs) {
    ASSERT_LT(runs, 100000);
    dice = dice * 6364136223846793005u + 1442695040888963407u;
    const auto moment_us = static_cast<useconds_t>(1 + (dice >> 33) % 8000);
    if (run(0, Moment::before, moment_us)) ++killed;
    if (HasFailure()) return;
    expect_promises_kept();
    if (HasFailure()) return;
    if (journal::read_frames(journal::read_file(folder.file())).size() <= kEdits) continue;
    ++hours;
    start_anew();
  }
  RecordProperty("hours", hours);
}

// Killed in every third write and taken up again, the hour gives the pit of an hour without a kill.
TEST_F(Crash, WhatWasTakenUpAgainIsThePitOfAnUndisturbedHour) {
  int runs = 0;
  while (run(3, static_cast<Moment>(runs % kMoments), 0)) {
    expect_promises_kept();
    if (HasFailure()) return;
    ASSERT_LT(++runs, 2 * kEdits);
  }
  Desk undisturbed;
  for (int n = 0; n < kEdits; ++n) ASSERT_EQ(undisturbed.record(n, nullptr), FIRN_OK);
  Desk disturbed;
  const std::string bytes = journal::read_file(folder.file());
  ASSERT_EQ(firn_recorder_load(disturbed.recorder, reinterpret_cast<const std::uint8_t*>(bytes.data()),
                               bytes.size(), nullptr, nullptr),
            FIRN_OK);
  EXPECT_GT(runs, kEdits / 3);
  EXPECT_TRUE(disturbed.pit() == undisturbed.pit());
}

}  // namespace

// The journal in a file when the system does not do as it is told: short writes, signals, a full disk, a sync
// that fails. Nothing is acknowledged that is not there, and all is written once it can be.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <string>

#include "frames.h"
#include "support.h"

namespace {

using journal::Desk;
using journal::Folder;

// What the system does next; one test at a time.
struct System {
  std::size_t most = SIZE_MAX;  // bytes taken in one go
  std::size_t room = SIZE_MAX;  // bytes that fit on the disk
  int interruptions = 0;        // before each call that works
  int fail_write = 0;           // errno of every write
  int fail_sync = 0;
  int fail_truncate = 0;
  int interrupted = 0;
  int syncs = 0;
  bool is_interrupted() {
    if (interrupted++ < interruptions) {
      errno = EINTR;
      return true;
    }
    interrupted = 0;
    return false;
  }
} now;

ssize_t moody_write(int file, const void* bytes, size_t size) {
  if (now.is_interrupted()) return -1;
  if (now.fail_write != 0 || now.room == 0) {
    errno = now.fail_write != 0 ? now.fail_write : ENOSPC;
    return -1;
  }
  const std::size_t taken = std::min(std::min(size, now.most), now.room);
  const ssize_t done = write(file, bytes, taken);
  if (done > 0 && now.room != SIZE_MAX) now.room -= static_cast<std::size_t>(done);
  return done;
}
int moody_sync(int file) {
  if (now.is_interrupted()) return -1;
  ++now.syncs;
  if (now.fail_sync == 0) return fsync(file);
  errno = now.fail_sync;
  return -1;
}
int moody_truncate(int file, off_t size) {
  if (now.is_interrupted()) return -1;
  if (now.fail_truncate == 0) return ftruncate(file, size);
  errno = now.fail_truncate;
  return -1;
}
constexpr journal_file_calls kMoody = {moody_write, moody_sync, moody_truncate};

class File : public testing::Test {
 protected:
  File() { now = System(); }
  ~File() override { journal_file_close(&file); }

  journal_file_status open(Desk& desk, const char* pit = "pit") {
    return journal_file_open(&file, folder.file().c_str(), pit, desk.context, desk.recorder, &kMoody,
                             &desk.error);
  }
  void expect_stored(Desk& desk) {
    EXPECT_EQ(firn_recorder_acknowledged(desk.recorder), firn_recorder_ticket(desk.recorder));
    EXPECT_TRUE(bytes() == desk.frames());
  }
  std::string bytes() const { return journal::read_file(folder.file()); }
  void put(const std::string& content) {
    std::ofstream out(folder.file(), std::ios::binary);
    out << content;
  }

  Folder folder;
  journal_file file = {};
};

TEST_F(File, HoldsWhatWasRecordedAndGivesItBack) {
  {
    Desk desk;
    ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
    expect_stored(desk);
    for (int n = 0; n < 30; ++n) {
      ASSERT_EQ(desk.record(n, nullptr), FIRN_OK);
      if (n % 4 == 3) {
        ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
        expect_stored(desk);
      }
    }
    ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
    const int syncs = now.syncs;
    ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
    EXPECT_EQ(now.syncs, syncs) << "nothing new, nothing to do";
    expect_stored(desk);
    journal_file_close(&file);
  }
  Desk again;
  ASSERT_EQ(open(again, nullptr), JOURNAL_FILE_OK);
  EXPECT_EQ(file.loaded.added, 30u);
  EXPECT_EQ(firn_recorder_acknowledged(again.recorder), 31u);
  ASSERT_EQ(again.record(30, nullptr), FIRN_OK);
  ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
  expect_stored(again);
}

TEST_F(File, ShortWritesAndSignalsChangeNothing) {
  now.most = 7;
  now.interruptions = 2;
  Desk desk;
  ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
  for (int n = 0; n < 5; ++n) {
    ASSERT_EQ(desk.record(n, nullptr), FIRN_OK);
    ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
    expect_stored(desk);
  }
}

// Wherever the disk is full: what was there stays, nothing is acknowledged, and it goes on when there is
// room.
TEST_F(File, AFullDiskAtAnyByte) {
  Desk desk;
  ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
  ASSERT_EQ(desk.record(0, nullptr), FIRN_OK);
  ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
  ASSERT_EQ(desk.record(1, nullptr), FIRN_OK);
  const std::string before = bytes();
  const std::size_t needed = desk.frames().size() - before.size();
  for (std::size_t room = 0; room < needed; ++room) {
    now.room = room;
    // Every other time not even cutting off works.
    now.fail_truncate = room % 2 == 0 ? EIO : 0;
    ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_SYSTEM) << room;
    ASSERT_EQ(file.system_error, ENOSPC) << room;
    if (now.fail_truncate != 0) {
      // What could not be cut off comes first the next time.
      ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_SYSTEM) << room;
      ASSERT_EQ(file.system_error, EIO) << room;
    }
    ASSERT_EQ(firn_recorder_acknowledged(desk.recorder), 2u);
    ASSERT_TRUE(bytes().substr(0, before.size()) == before);
    if (now.fail_truncate == 0) {
      ASSERT_TRUE(bytes() == before);
    }
    // Whoever reads the file now finds what was promised.
    ASSERT_EQ(journal::read_frames(bytes()).size(), 2u);
  }
  now = System();
  ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
  expect_stored(desk);
}

TEST_F(File, ASyncThatFailsPromisesNothingAndIsNotTrustedLater) {
  Desk desk;
  ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
  const std::string before = bytes();
  ASSERT_EQ(desk.record(0, nullptr), FIRN_OK);
  now.fail_sync = EIO;
  ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_SYSTEM);
  EXPECT_EQ(file.system_error, EIO);
  EXPECT_EQ(firn_recorder_acknowledged(desk.recorder), 1u);
  EXPECT_TRUE(bytes() == before);
  now.fail_sync = 0;
  ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
  expect_stored(desk);
}

TEST_F(File, WritesThatFailForGoodLeaveTheRecorderWorking) {
  Desk desk;
  ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
  now.fail_write = EIO;
  for (int n = 0; n < 20; ++n) {
    ASSERT_EQ(desk.record(n, nullptr), FIRN_OK);
    ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_SYSTEM);
    ASSERT_EQ(file.system_error, EIO);
    ASSERT_EQ(firn_recorder_acknowledged(desk.recorder), 1u);
  }
  EXPECT_FALSE(desk.pit().empty());
  now.fail_write = 0;
  ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
  expect_stored(desk);
}

TEST_F(File, AWriteThatTakesNothingIsAnErrorAndNoEndlessLoop) {
  Desk desk;
  ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
  ASSERT_EQ(desk.record(0, nullptr), FIRN_OK);
  now.most = 0;
  ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_SYSTEM);
  EXPECT_EQ(file.system_error, EIO);
}

// The system's own limit on the size of files, as a full disk that needs no disk.
TEST_F(File, TheSystemsOwnLimit) {
  Desk desk;
  ASSERT_EQ(
      journal_file_open(&file, folder.file().c_str(), "pit", desk.context, desk.recorder, nullptr, nullptr),
      JOURNAL_FILE_OK);
  const pid_t child = fork();
  if (child == 0) {
    signal(SIGXFSZ, SIG_IGN);
    const rlimit limit = {bytes().size() + 60, bytes().size() + 60};
    bool fine = setrlimit(RLIMIT_FSIZE, &limit) == 0 && desk.record(0, nullptr) == FIRN_OK;
    fine = fine && journal_file_store(&file, nullptr) == JOURNAL_FILE_SYSTEM;
    fine = fine && file.system_error == EFBIG && firn_recorder_acknowledged(desk.recorder) == 1;
    _exit(fine ? 0 : 1);
  }
  int how = 0;
  ASSERT_EQ(waitpid(child, &how, 0), child);
  EXPECT_TRUE(WIFEXITED(how) && WEXITSTATUS(how) == 0);
  EXPECT_EQ(journal::read_frames(bytes()).size(), 1u);
}

TEST_F(File, CutsOffATornTailAndKeepsDamageInTheMiddle) {
  std::string whole;
  {
    Desk desk;
    ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
    for (int n = 0; n < 5; ++n) ASSERT_EQ(desk.record(n, nullptr), FIRN_OK);
    ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
    whole = bytes();
    journal_file_close(&file);
  }
  // The third edit's own bytes, and half of the last frame.
  std::string damaged = whole.substr(0, whole.size() - 30);
  const std::size_t third = damaged.find("sugary");
  ASSERT_NE(third, std::string::npos);
  damaged[third] = 'S';
  put(damaged);
  Desk desk;
  ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
  EXPECT_EQ(file.loaded.added, 3u);
  EXPECT_EQ(file.loaded.gaps, 2u);
  firn_journal_gap gap = FIRN_INIT(firn_journal_gap);
  ASSERT_EQ(firn_recorder_gap(desk.recorder, 0, &gap, nullptr), FIRN_OK);
  EXPECT_EQ(gap.reason, static_cast<std::uint32_t>(FIRN_GAP_DAMAGED));
  EXPECT_EQ(gap.device, 7u);
  EXPECT_EQ(gap.sequence, 3u);
  ASSERT_EQ(firn_recorder_gap(desk.recorder, 1, &gap, nullptr), FIRN_OK);
  EXPECT_EQ(gap.reason, static_cast<std::uint32_t>(FIRN_GAP_TORN));
  EXPECT_TRUE(bytes() == damaged.substr(0, gap.offset));
  ASSERT_EQ(desk.record(5, nullptr), FIRN_OK);
  ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
  journal_file_close(&file);
  Desk again;
  ASSERT_EQ(open(again), JOURNAL_FILE_OK);
  EXPECT_TRUE(again.pit() == desk.pit());
}

TEST_F(File, TheFirstFrameMayBeTornToo) {
  std::string whole;
  {
    Desk desk;
    ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
    whole = bytes();
    journal_file_close(&file);
  }
  for (std::size_t size = 0; size <= whole.size(); ++size) {
    put(whole.substr(0, size));
    Desk desk;
    ASSERT_EQ(open(desk), JOURNAL_FILE_OK) << size;
    ASSERT_TRUE(bytes() == whole) << size;
    journal_file_close(&file);
  }
  // A power cut may leave a file of the right size without its bytes.
  put(std::string(whole.size(), '\0'));
  Desk desk;
  ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
  EXPECT_TRUE(bytes() == whole);
}

TEST_F(File, LeavesOtherFilesAlone) {
  for (const std::string& content :
       {std::string("pit Larch Bowl entry\nHS 140\n"), std::string(500, '\xFF')}) {
    put(content);
    Desk desk;
    EXPECT_EQ(open(desk), JOURNAL_FILE_SYSTEM);
    EXPECT_EQ(file.system_error, EINVAL);
    EXPECT_TRUE(bytes() == content);
  }
}

TEST_F(File, RefusesTheJournalOfAnotherPitAndLeavesItAlone) {
  {
    Desk desk;
    ASSERT_EQ(open(desk, "one"), JOURNAL_FILE_OK);
    ASSERT_EQ(desk.record(0, nullptr), FIRN_OK);
    ASSERT_EQ(journal_file_store(&file, nullptr), JOURNAL_FILE_OK);
    journal_file_close(&file);
  }
  const std::string before = bytes() + "torn";
  put(before);
  Desk desk;
  EXPECT_EQ(open(desk, "two"), JOURNAL_FILE_LIBRARY);
  EXPECT_EQ(desk.error.status, static_cast<std::uint32_t>(FIRN_OTHER_PIT));
  EXPECT_TRUE(bytes() == before);
}

TEST_F(File, OneFileIsWrittenByOneProcess) {
  Desk desk;
  ASSERT_EQ(open(desk), JOURNAL_FILE_OK);
  const pid_t child = fork();
  if (child == 0) {
    Desk other;
    journal_file second;
    const journal_file_status status = journal_file_open(&second, folder.file().c_str(), "pit", other.context,
                                                         other.recorder, nullptr, nullptr);
    const bool is_told = second.system_error == EAGAIN || second.system_error == EACCES;
    _exit(status == JOURNAL_FILE_SYSTEM && is_told ? 0 : 1);
  }
  int how = 0;
  ASSERT_EQ(waitpid(child, &how, 0), child);
  EXPECT_TRUE(WIFEXITED(how) && WEXITSTATUS(how) == 0);
}

TEST_F(File, SaysWhatTheSystemSays) {
  Desk desk;
  EXPECT_EQ(
      journal_file_open(&file, "/no/such/folder/pit", "pit", desk.context, desk.recorder, nullptr, nullptr),
      JOURNAL_FILE_SYSTEM);
  EXPECT_EQ(file.system_error, ENOENT);
  EXPECT_EQ(file.file, -1);
  // A recorder that holds edits already would promise them without storing them.
  ASSERT_EQ(desk.record(0, nullptr), FIRN_OK);
  EXPECT_EQ(open(desk), JOURNAL_FILE_SYSTEM);
  EXPECT_EQ(file.system_error, EINVAL);
}

}  // namespace

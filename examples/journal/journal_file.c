#define _POSIX_C_SOURCE 200809L

#include "journal_file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static journal_file_status refused_by_system(journal_file* journal) {
  journal->system_error = errno;
  return JOURNAL_FILE_SYSTEM;
}

/* A signal may interrupt any of these; then the call is made again. */
static int sync_file(const journal_file* journal, int file) {
  int result;
  do {
    result = journal->calls.sync(file);
  } while (result != 0 && errno == EINTR);
  return result;
}

static int cut_off(journal_file* journal) {
  int result;
  do {
    result = journal->calls.truncate(journal->file, journal->stored);
  } while (result != 0 && errno == EINTR);
  if (result == 0) journal->is_dirty = false;
  return result;
}

/* The system may take less than it was given; a full disk shows as the next call's error. */
static int write_all(const journal_file* journal, const uint8_t* bytes, size_t size) {
  while (size > 0) {
    const ssize_t taken = journal->calls.write(journal->file, bytes, size);
    if (taken < 0 && errno == EINTR) continue;
    if (taken < 0) return -1;
    if (taken == 0) {
      errno = EIO;
      return -1;
    }
    bytes += taken;
    size -= (size_t)taken;
  }
  return 0;
}

/* NULL and errno set when that fails. */
static uint8_t* read_all(int file, size_t* size) {
  struct stat about;
  if (fstat(file, &about) != 0) return NULL;
  if (!S_ISREG(about.st_mode)) {
    errno = EINVAL;
    return NULL;
  }
  const size_t room = (size_t)about.st_size;
  uint8_t* bytes = malloc(room + 1);
  if (bytes == NULL) return NULL;
  *size = 0;
  while (*size < room) {
    const ssize_t got = read(file, bytes + *size, room - *size);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) {
      free(bytes);
      return NULL;
    }
    if (got == 0) break;
    *size += (size_t)got;
  }
  return bytes;
}

/* A new file is there after a power cut only when its folder was synced too. */
static int sync_folder(const journal_file* journal, const char* path) {
  const char* slash = strrchr(path, '/');
  char* folder = strdup(slash == NULL ? "." : path);
  if (folder == NULL) return -1;
  if (slash != NULL) folder[slash == path ? 1 : slash - path] = '\0';
  const int opened = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  free(folder);
  if (opened < 0) return -1;
  const int result = sync_file(journal, opened);
  const int why = errno;
  close(opened);
  errno = why;
  return result;
}

/* Two programs that append to one file would tear each other's frames. */
static int lock_file(int file) {
  struct flock lock;
  memset(&lock, 0, sizeof lock);
  lock.l_type = F_WRLCK;
  lock.l_whence = SEEK_SET;
  return fcntl(file, F_SETLK, &lock);
}

/* Whether a file without a single whole frame may be taken for a journal whose first frame was torn: the
   wrong file, once it was cut off, would be gone. A power cut may leave zeros. */
static bool may_be_torn(const journal_file* journal, const uint8_t* bytes, size_t size) {
  firn_journal_gap gap = FIRN_INIT(firn_journal_gap);
  size_t zeros = 0;
  while (zeros < size && bytes[zeros] == 0) ++zeros;
  if (zeros == size) return true;
  if (firn_recorder_gap(journal->recorder, 0, &gap, NULL) != FIRN_OK) return false;
  return gap.offset == 0 && gap.reason == FIRN_GAP_TORN;
}

static journal_file_status load(journal_file* journal, const char* pit_id, firn_error* error) {
  size_t size = 0;
  uint8_t* bytes = read_all(journal->file, &size);
  if (bytes == NULL) return refused_by_system(journal);
  firn_status status = FIRN_OK;
  if (pit_id != NULL) status = firn_recorder_begin(journal->recorder, pit_id, error);
  journal->loaded = FIRN_INIT(firn_loaded);
  if (status == FIRN_OK) status = firn_recorder_load(journal->recorder, bytes, size, &journal->loaded, error);
  const bool is_journal =
      status == FIRN_OK && (journal->loaded.whole_size > 0 || may_be_torn(journal, bytes, size));
  free(bytes);
  if (status != FIRN_OK) return JOURNAL_FILE_LIBRARY;
  if (!is_journal) {
    errno = EINVAL;
    return refused_by_system(journal);
  }
  journal->stored = (off_t)journal->loaded.whole_size;
  journal->is_dirty = journal->loaded.whole_size < size;
  return JOURNAL_FILE_OK;
}

/* What was read is not yet what is on the disk: whoever wrote it may have died before the sync. */
static journal_file_status make_sure(journal_file* journal, const char* path, firn_error* error) {
  if (journal->is_dirty && cut_off(journal) != 0) return refused_by_system(journal);
  if (sync_file(journal, journal->file) != 0) return refused_by_system(journal);
  if (sync_folder(journal, path) != 0) return refused_by_system(journal);
  /* A file that does not say yet which pit it is about says so before the first observation. */
  if (journal->stored == 0) return journal_file_store(journal, error);
  const uint64_t last = firn_recorder_ticket(journal->recorder);
  const firn_status status = firn_recorder_acknowledge(journal->recorder, last, error);
  return status == FIRN_OK ? JOURNAL_FILE_OK : JOURNAL_FILE_LIBRARY;
}

journal_file_status journal_file_open(journal_file* journal, const char* path, const char* pit_id,
                                      firn_context* context, firn_recorder* recorder,
                                      const journal_file_calls* calls, firn_error* error) {
  memset(journal, 0, sizeof *journal);
  journal->context = context;
  journal->recorder = recorder;
  journal->calls.write = write;
  journal->calls.sync = fsync;
  journal->calls.truncate = ftruncate;
  if (calls != NULL) journal->calls = *calls;
  journal->file = -1;
  if (firn_recorder_ticket(recorder) != 0) {
    errno = EINVAL;
    return refused_by_system(journal);
  }
  do {
    journal->file = open(path, O_RDWR | O_CREAT | O_APPEND | O_CLOEXEC, 0644);
  } while (journal->file < 0 && errno == EINTR);
  if (journal->file < 0) return refused_by_system(journal);
  journal_file_status status =
      lock_file(journal->file) != 0 ? refused_by_system(journal) : load(journal, pit_id, error);
  if (status == JOURNAL_FILE_OK) status = make_sure(journal, path, error);
  if (status != JOURNAL_FILE_OK) journal_file_close(journal);
  return status;
}

/* After a sync that failed nobody knows what of the written bytes will reach the disk, and asking again may
   answer that all is well: so they are cut off, and written anew the next time. */
static journal_file_status take_back(journal_file* journal) {
  const journal_file_status status = refused_by_system(journal);
  journal->is_dirty = true;
  cut_off(journal); /* when this fails too, the next call does it first */
  return status;
}

static journal_file_status append(journal_file* journal, const firn_buffer* frames) {
  if (journal->is_dirty && cut_off(journal) != 0) return refused_by_system(journal);
  if (write_all(journal, frames->data, frames->size) != 0) return take_back(journal);
  if (sync_file(journal, journal->file) != 0) return take_back(journal);
  journal->stored += (off_t)frames->size;
  return JOURNAL_FILE_OK;
}

journal_file_status journal_file_store(journal_file* journal, firn_error* error) {
  const uint64_t after = firn_recorder_acknowledged(journal->recorder);
  firn_buffer frames = {NULL, 0};
  uint64_t last = 0;
  journal->system_error = 0;
  if (firn_recorder_ticket(journal->recorder) == after) return JOURNAL_FILE_OK;
  if (firn_recorder_frames(journal->recorder, after, &frames, &last, error) != FIRN_OK) {
    return JOURNAL_FILE_LIBRARY;
  }
  journal_file_status status = append(journal, &frames);
  firn_buffer_free(journal->context, &frames);
  if (status != JOURNAL_FILE_OK) return status;
  if (firn_recorder_acknowledge(journal->recorder, last, error) != FIRN_OK) return JOURNAL_FILE_LIBRARY;
  return JOURNAL_FILE_OK;
}

void journal_file_close(journal_file* journal) {
  if (journal->file >= 0) close(journal->file);
  journal->file = -1;
}

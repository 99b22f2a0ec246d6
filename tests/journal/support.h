// A folder of the test's own, and an hour of recording.
#pragma once

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

#include "journal_file.h"

namespace journal {

// In memory where there is such a folder: a sync then costs nothing, and a kill loses no more there than on a
// disk.
class Folder {
 public:
  Folder() {
    const char* wanted = std::getenv("FIRN_JOURNAL_DIR");
    std::string base = wanted != nullptr ? wanted : access("/dev/shm", W_OK) == 0 ? "/dev/shm" : ".";
    path_ = base + "/firnbook-journal-XXXXXX";
    EXPECT_NE(mkdtemp(&path_[0]), nullptr) << path_;
  }
  ~Folder() {
    unlink(file().c_str());
    rmdir(path_.c_str());
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  std::string file() const { return path_ + "/pit.firnjournal"; }

 private:
  std::string path_;
};

inline std::string read_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// A context and a recorder for which device 7 records.
class Desk {
 public:
  Desk() {
    EXPECT_EQ(firn_context_create(nullptr, &context, nullptr), FIRN_OK);
    EXPECT_EQ(firn_recorder_create(context, &recorder, nullptr), FIRN_OK);
  }
  ~Desk() {
    firn_recorder_destroy(recorder);
    firn_context_destroy(context);
  }
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  // Edit number `n` of the hour; its bytes go to `edit`, which may be null.
  firn_status record(int n, firn_buffer* edit) {
    firn_author author = FIRN_INIT(firn_author);
    author.device = 7;
    author.observer = "KL";
    author.made = {1800098400 + n * 15, -7 * 60, FIRN_TIME_PRECISION_SECOND, 1, 0};
    if (firn_recorder_author(recorder, &author, nullptr) != FIRN_OK) return FIRN_INTERNAL;
    if (n % 10 == 9) {
      std::uint64_t undo = 0;
      if (firn_recorder_undoable(recorder, 7, &undo, nullptr, &error) != FIRN_OK) return FIRN_INTERNAL;
      return firn_record_undo(recorder, 7, undo, edit, &error);
    }
    if (n % 3 == 0) return record_layer(n, edit);
    if (n % 3 == 1) return record_test(n, edit);
    firn_remark remark = FIRN_INIT(firn_remark);
    remark.text = n % 2 == 0 ? "sugary below the crust" : "easy to miss";
    return firn_record_remark(recorder, &remark, nullptr, nullptr, edit, &error);
  }

  std::string pit() {
    firn_buffer out = {nullptr, 0};
    EXPECT_EQ(firn_recorder_pit(recorder, &out, nullptr), FIRN_OK);
    return take(out);
  }
  std::string frames() {
    firn_buffer out = {nullptr, 0};
    EXPECT_EQ(firn_recorder_frames(recorder, 0, &out, nullptr, nullptr), FIRN_OK);
    return take(out);
  }
  std::string take(firn_buffer& out) {
    std::string text(reinterpret_cast<const char*>(out.data), out.size);
    firn_buffer_free(context, &out);
    return text;
  }

  firn_context* context = nullptr;
  firn_recorder* recorder = nullptr;
  firn_error error = FIRN_INIT(firn_error);

 private:
  static firn_depth down(int centimetres) {
    return {FIRN_CM(centimetres), FIRN_DATUM_SURFACE, FIRN_DIRECTION_VERTICAL, 0};
  }
  firn_status record_layer(int n, firn_buffer* edit) {
    firn_layer layer = FIRN_INIT(firn_layer);
    layer.present = FIRN_BIT(FIRN_FIELD_LAYER_TOP) | FIRN_BIT(FIRN_FIELD_LAYER_BOTTOM) |
                    FIRN_BIT(FIRN_FIELD_LAYER_HARDNESS);
    layer.top = down(n);
    layer.bottom = down(n + 3);
    layer.hardness = FIRN_HAND_HARDNESS_FIST;
    return firn_record_layer(recorder, &layer, nullptr, nullptr, edit, &error);
  }
  firn_status record_test(int n, firn_buffer* edit) {
    firn_fracture fracture = FIRN_INIT(firn_fracture);
    fracture.present = FIRN_BIT(FIRN_FIELD_FRACTURE_TAP) | FIRN_BIT(FIRN_FIELD_FRACTURE_DEPTH);
    fracture.tap = static_cast<std::uint8_t>(n % 30 + 1);
    fracture.depth = down(n);
    firn_test test = FIRN_INIT(firn_test);
    test.present = FIRN_BIT(FIRN_FIELD_STABILITY_TEST_KIND);
    test.kind = FIRN_TEST_KIND_CT;
    test.fractures = &fracture;
    test.fracture_count = 1;
    return firn_record_test(recorder, &test, nullptr, nullptr, edit, &error);
  }
};

}  // namespace journal

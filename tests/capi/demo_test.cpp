// The whole road through the C API, on both demo pits.
#include <thread>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

struct Outputs {
  std::string pit, report, note, svg, notes;
  bool operator==(const Outputs& other) const {
    return pit == other.pit && report == other.report && note == other.note && svg == other.svg &&
           notes == other.notes;
  }
};

Outputs walk(firn_context* context, const std::string& notes) {
  Outputs outputs;
  outputs.pit = capi::pit_of(context, notes);
  outputs.report = capi::report_of(context, outputs.pit);
  const auto* pit = bytes_of(outputs.pit);
  const auto* report = bytes_of(outputs.report);
  Buffer out(context), lost(context);
  EXPECT_EQ(
      firn_note_write(context, pit, outputs.pit.size(), report, outputs.report.size(), out.out(), nullptr),
      FIRN_OK);
  outputs.note = out.text();
  EXPECT_EQ(firn_draw_profile(context, pit, outputs.pit.size(), report, outputs.report.size(), nullptr,
                              out.out(), nullptr),
            FIRN_OK);
  outputs.svg = out.text();
  EXPECT_EQ(firn_notes_write(context, pit, outputs.pit.size(), out.out(), lost.out(), nullptr), FIRN_OK);
  EXPECT_EQ(lost.text(), "");
  EXPECT_NE(lost.data(), nullptr);
  outputs.notes = out.text();
  return outputs;
}

TEST(Demo, NotesToPitToReportToNoteToPicture) {
  for (const std::string& name : capi::demos()) {
    Context context;
    const Outputs outputs = walk(context, capi::demo_notes(name));
    EXPECT_GT(outputs.note.size(), 500u) << name;
    EXPECT_NE(outputs.svg.rfind("<svg", 200), std::string::npos) << name;
    int newer = -1;
    EXPECT_EQ(firn_pit_is_newer(context, bytes_of(outputs.pit), outputs.pit.size(), &newer, nullptr),
              FIRN_OK);
    EXPECT_EQ(newer, 0);
    // What is printed reads back to the same bytes.
    EXPECT_TRUE(capi::pit_of(context, outputs.notes) == outputs.pit) << outputs.notes;
  }
}

TEST(Demo, AContextForgetsWhatItDidBefore) {
  Context used, fresh;
  walk(used, capi::demo_notes("tarn-shoulder"));
  Buffer out(used);
  firn_notes_read(used, "nonsense", 8, nullptr, out.out(), nullptr, nullptr);
  EXPECT_TRUE(walk(used, capi::demo_notes("larch-bowl-entry")) ==
              walk(fresh, capi::demo_notes("larch-bowl-entry")));
}

TEST(Demo, TwoContextsInTwoThreads) {
  Context expected_context;
  const std::string notes[] = {capi::demo_notes("larch-bowl-entry"), capi::demo_notes("tarn-shoulder")};
  const Outputs expected[] = {walk(expected_context, notes[0]), walk(expected_context, notes[1])};
  bool same[2] = {true, true};
  const auto work = [&](int which) {
    Context context;
    for (int i = 0; i < 20; ++i) same[which] = same[which] && walk(context, notes[which]) == expected[which];
  };
  std::thread one(work, 0), other(work, 1);
  one.join();
  other.join();
  EXPECT_TRUE(same[0]);
  EXPECT_TRUE(same[1]);
}

struct Message {
  firn_log_level level;
  std::string component, text;
};

void keep_message(void* user, firn_log_level level, const char* component, const char* message) {
  static_cast<std::vector<Message>*>(user)->push_back({level, component, message});
}

TEST(Log, TellsTheHostAtTheLevelItWants) {
  std::vector<Message> messages;
  firn_context_options options = FIRN_INIT(firn_context_options);
  options.log = keep_message;
  options.log_user = &messages;
  {
    Context context(options);
    EXPECT_EQ(firn_pit_verify(context, nullptr, 0, nullptr), FIRN_NULL_ARGUMENT);
    ASSERT_EQ(messages.size(), 1u);
    EXPECT_EQ(messages[0].level, FIRN_LOG_WARNING);
    EXPECT_EQ(messages[0].component, "firn_pit_verify");
    EXPECT_FALSE(messages[0].text.empty());
    capi::pit_of(context, capi::demo_notes("larch-bowl-entry"));
    EXPECT_EQ(messages.size(), 1u) << "a call that went well is for FIRN_LOG_DEBUG";
  }
  messages.clear();
  options.log_level = FIRN_LOG_DEBUG;
  {
    Context context(options);
    capi::pit_of(context, capi::demo_notes("larch-bowl-entry"));
    ASSERT_FALSE(messages.empty());
    EXPECT_EQ(messages.back().level, FIRN_LOG_DEBUG);
  }
  messages.clear();
  options.log_level = FIRN_LOG_ERROR;
  {
    Context context(options);
    firn_pit_verify(context, nullptr, 0, nullptr);
    EXPECT_TRUE(messages.empty());
  }
}

void throw_message(void*, firn_log_level, const char*, const char*) {
  throw std::runtime_error("a host that throws");
}

TEST(Log, WhatTheHostThrowsStaysOutside) {
  firn_context_options options = FIRN_INIT(firn_context_options);
  options.log = throw_message;
  options.log_level = FIRN_LOG_DEBUG;
  Context context(options);
  EXPECT_EQ(firn_pit_verify(context, nullptr, 0, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_FALSE(capi::pit_of(context, capi::demo_notes("larch-bowl-entry")).empty());
}

TEST(Log, LongAndUglyTextIsCutAndCleaned) {
  std::vector<Message> messages;
  firn_context_options options = FIRN_INIT(firn_context_options);
  options.log = keep_message;
  options.log_user = &messages;
  options.log_level = FIRN_LOG_INFO;
  Context context(options);
  std::string notes;
  for (int i = 0; i < 2000; ++i) notes += "\xE2\x9D\x84";
  notes += "\n";
  Buffer out(context);
  EXPECT_NE(firn_notes_read(context, notes.data(), notes.size(), nullptr, out.out(), nullptr, nullptr),
            FIRN_OK);
  ASSERT_FALSE(messages.empty());
  for (const Message& message : messages) EXPECT_LT(message.text.size(), 512u);
}

}  // namespace

// Two pits of one wall through the C API.
#include <cstring>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

constexpr const char* kInstructor =
    "observers KL\n0-31 4F DF 1.0\n31-32 F SH 6.0\n32-140 1F FC 1.5\nCT12 (SP) down 31\n";
constexpr const char* kStudent = "observers AB\n0-34 F DF 1.0\n34-140 1F FC 1.5\nCT14 (SP) down 34\n";

struct Class {
  Context context;
  std::string reference = capi::pit_of(context, kInstructor);
  std::string other = capi::pit_of(context, kStudent);

  firn_status compare(firn_buffer* out, const firn_compare_options* options = nullptr,
                      firn_error* error = nullptr) {
    return firn_compare(context, bytes_of(reference), reference.size(), bytes_of(other), other.size(),
                        options, out, error);
  }
  firn_status note(const Buffer& comparison, const std::string& first, const std::string& second,
                   firn_buffer* text) {
    return firn_comparison_note(context, comparison.data(), comparison.size(), bytes_of(first), first.size(),
                                bytes_of(second), second.size(), text, nullptr);
  }
};

TEST(Compare, ATeacherReadsIt) {
  Class wall;
  Buffer comparison(wall.context), text(wall.context);
  ASSERT_EQ(wall.compare(comparison.out()), FIRN_OK);
  EXPECT_EQ(comparison.text().substr(4, 4), "FIRC");
  ASSERT_EQ(wall.note(comparison, wall.reference, wall.other, text.out()), FIRN_OK);
  const std::string note = text.text();
  EXPECT_NE(note.find("0-31 cm 4F DF 1 mm | 0-34 cm F DF 1 mm\n  bottom 3 cm lower; 1 step softer\n"),
            std::string::npos)
      << note;
  EXPECT_NE(note.find("31-32 cm F SH 6 mm | -\n  not in the other pit\n"), std::string::npos) << note;
  EXPECT_NE(note.find("    2 taps more; 3 cm deeper\n"), std::string::npos) << note;
}

TEST(Compare, TheSameBytesComeOutEveryTime) {
  Class wall;
  Buffer one(wall.context), two(wall.context);
  ASSERT_EQ(wall.compare(one.out()), FIRN_OK);
  ASSERT_EQ(wall.compare(two.out()), FIRN_OK);
  EXPECT_EQ(one.text(), two.text());
  Context elsewhere;
  Buffer three(elsewhere);
  ASSERT_EQ(firn_compare(elsewhere, bytes_of(wall.reference), wall.reference.size(), bytes_of(wall.other),
                         wall.other.size(), nullptr, three.out(), nullptr),
            FIRN_OK);
  EXPECT_EQ(one.text(), three.text());
}

TEST(Compare, TheNoteBelongsToTheTwoPitsInTheirOrder) {
  Class wall;
  Buffer comparison(wall.context), text(wall.context);
  ASSERT_EQ(wall.compare(comparison.out()), FIRN_OK);
  EXPECT_EQ(wall.note(comparison, wall.other, wall.reference, text.out()), FIRN_OTHER_PIT);
  EXPECT_EQ(text.data(), nullptr);
  EXPECT_EQ(wall.note(comparison, wall.reference, wall.reference, text.out()), FIRN_OTHER_PIT);
}

TEST(Compare, DistancesAreChosen) {
  Class wall;
  firn_compare_options options = FIRN_INIT(firn_compare_options);
  options.fracture_apart_10um = FIRN_CM(2);
  Buffer comparison(wall.context), text(wall.context);
  ASSERT_EQ(wall.compare(comparison.out(), &options), FIRN_OK);
  ASSERT_EQ(wall.note(comparison, wall.reference, wall.other, text.out()), FIRN_OK);
  EXPECT_NE(text.text().find("  tap 12 SP down 31 cm | -\n    not in the other pit\n"), std::string::npos);
  EXPECT_NE(text.text().find("fractures 2 cm"), std::string::npos);
  firn_error error = FIRN_INIT(firn_error);
  for (const std::int32_t bad : {-1, 20001, INT32_MIN, INT32_MAX}) {
    firn_compare_options wrong = FIRN_INIT(firn_compare_options);
    wrong.layer_apart_10um = bad;
    EXPECT_EQ(wall.compare(comparison.out(), &wrong, &error), FIRN_BAD_ARGUMENT);
    wrong.layer_apart_10um = 0;
    wrong.fracture_apart_10um = bad;
    EXPECT_EQ(wall.compare(comparison.out(), &wrong, &error), FIRN_BAD_ARGUMENT);
    wrong.fracture_apart_10um = 0;
    wrong.temperature_apart_10um = bad;
    EXPECT_EQ(wall.compare(comparison.out(), &wrong, &error), FIRN_BAD_ARGUMENT);
    EXPECT_NE(std::string(error.what).find("temperature_apart_10um"), std::string::npos);
  }
  options.struct_size = 4;
  EXPECT_EQ(wall.compare(comparison.out(), &options), FIRN_BAD_STRUCT_SIZE);
}

TEST(Compare, BadBytesAreRefusedAndNamed) {
  Class wall;
  Buffer comparison(wall.context), text(wall.context);
  ASSERT_EQ(wall.compare(comparison.out()), FIRN_OK);
  firn_error error = FIRN_INIT(firn_error);
  Buffer out(wall.context);
  const std::string cut = wall.other.substr(0, wall.other.size() / 2);
  EXPECT_EQ(firn_compare(wall.context, bytes_of(wall.reference), wall.reference.size(), bytes_of(cut),
                         cut.size(), nullptr, out.out(), &error),
            FIRN_DAMAGED);
  EXPECT_EQ(std::string(error.what).find("other: "), 0u);
  EXPECT_EQ(firn_compare(wall.context, nullptr, 0, bytes_of(wall.other), wall.other.size(), nullptr,
                         out.out(), &error),
            FIRN_NULL_ARGUMENT);
  EXPECT_EQ(std::string(error.what).find("reference: "), 0u);
  EXPECT_EQ(firn_compare(wall.context, comparison.data(), comparison.size(), bytes_of(wall.other),
                         wall.other.size(), nullptr, out.out(), nullptr),
            FIRN_WRONG_KIND);
  EXPECT_EQ(wall.compare(nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(wall.note(comparison, wall.reference, wall.other, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_comparison_note(wall.context, bytes_of(wall.reference), wall.reference.size(),
                                 bytes_of(wall.reference), wall.reference.size(), bytes_of(wall.other),
                                 wall.other.size(), text.out(), nullptr),
            FIRN_WRONG_KIND);
  EXPECT_EQ(firn_comparison_note(wall.context, comparison.data(), 20, bytes_of(wall.reference),
                                 wall.reference.size(), bytes_of(wall.other), wall.other.size(), text.out(),
                                 nullptr),
            FIRN_DAMAGED);
}

// Every prefix, and every byte changed: an answer, never a crash.
TEST(Compare, DamagedComparisons) {
  Class wall;
  Buffer comparison(wall.context), text(wall.context);
  ASSERT_EQ(wall.compare(comparison.out()), FIRN_OK);
  const std::string whole = comparison.text();
  const auto tell = [&](const std::string& bytes) {
    return firn_comparison_note(wall.context, bytes_of(bytes), bytes.size(), bytes_of(wall.reference),
                                wall.reference.size(), bytes_of(wall.other), wall.other.size(), text.out(),
                                nullptr);
  };
  for (std::size_t size = 0; size < whole.size(); ++size)
    EXPECT_NE(tell(whole.substr(0, size)), FIRN_INTERNAL);
  std::size_t told = 0;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    std::string bytes = whole;
    bytes[at] = static_cast<char>(~bytes[at]);
    told += tell(bytes) == FIRN_OK ? 1u : 0u;
  }
  EXPECT_GT(told, 50u);
}

}  // namespace

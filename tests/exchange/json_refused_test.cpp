// JSON that is not what it should be: refused with its place, or read with a notice; never a crash.
#include <gtest/gtest.h>

#include "json_help.h"
#include "pits.h"
#include "random_pit.h"

namespace firn::tests {
namespace {

using exchange::Notices;

struct Row {
  const char* text;
  const char* path;
  std::uint32_t line, column;
  const char* what;  // how it begins
};

TEST(JsonRefused, SaysWhatAndWhere) {
  const Row rows[] = {
      {"", "", 1, 1, "there is no value here"},
      {"[]", "", 1, 0, "a list stands where an object belongs"},
      {"{}", "", 1, 2, "there is neither a pit, nor a report, nor bulletins in this document"},
      {"{\"pit\": 3}", "", 1, 10, "a number stands where an object belongs"},
      {"{\"pit\": {}, \"pit\": {}}", "", 1, 18, "a second record stands in this document"},
      {"{\"pit\": {\"title\": 4}}", "title", 1, 20, "a number stands where a text belongs"},
      {"{\"pit\": {\n \"layers\": [{},\n {\"hardness_top\": \"X\"}]}}", "layers[1].hardness_top", 3, 22,
       "\"X\" is none of the values of HandHardness"},
      {"{\"pit\": {\"layers\": {}}}", "layers", 1, 0, "an object stands where a list belongs"},
      {"{\"pit\": {\"layers\": [null]}}", "layers[0]", 1, 25, "null stands in a list"},
      {"{\"pit\": {\"layers\": [[]]}}", "layers[0]", 1, 0, "a list stands where an object belongs"},
      {"{\"pit\": {\"layers\": [{\"top\": {\"datum\": \"surface\"}}]}}", "layers[0].top", 1, 48,
       "\"value_10um\" is missing"},
      {"{\"pit\": {\"layers\": [{\"top\": {\"value_10um\": 1e999}}]}}", "layers[0].top.value_10um", 1, 0,
       "this number is not written as JSON wants it"},
      {"{\"pit\": {\"layers\": [{\"top\": {\"value_10um\": 2147483648}}]}}", "layers[0].top.value_10um", 1, 0,
       "the number is outside what the field can hold"},
      {"{\"pit\": {\"layers\": [{\"top\": {\"value_10um\": 1.5}}]}}", "layers[0].top.value_10um", 1, 0,
       "a number with a fraction stands where a whole number belongs"},
      {"{\"pit\": {\"layers\": [{\"top\": {\"value_10um\": 17,5}}]}}", "layers[0].top.value_10um", 1, 0,
       "the name of a member should stand here, in quotes"},
      {"{\"pit\": {\"layers\": [{\"top\": {\"value_10um\": NaN}}]}}", "layers[0].top.value_10um", 1, 0,
       "this is no value of JSON"},
      {"{\"pit\": {\"title\": \"a\", \"title\": \"b\"}}", "title", 1, 31,
       "the member stands here a second time"},
      {"{\"pit\": {\"title\": \"a", "title", 1, 0, "the text ends here, before it is complete"},
      {"{\"pit\": {\"title\": \"\xFF\"}}", "title", 1, 0, "this is not JSON"},
      {"{\"pit\": {\"edited\": \"yesterday\"}}", "edited", 1, 31, "\"yesterday\" is no moment"},
      {"{\"pit\": {\"site\": {\"unreliable\": [\"nose\"]}}}", "site.unreliable", 1, 0,
       "\"nose\" is no field of Site"},
      {"{\"pit\": {\"site\": {\"unreliable\": 5}}}", "site.unreliable", 1, 0,
       "a number stands where a list of names of fields belongs"},
      {"{\"pit\": {\"extensions\": [{\"bytes\": \"###\"}]}}", "extensions[0].bytes", 1, 0,
       "the text is not base64"},
      {"{\"pit\": {}} x", "", 1, 0, "more text follows after the value has ended"},
      {"{\"pit\": {\"remarks\": [{\"about\": {\"thing\": \"layer\", \"field\": \"nose\"}}]}}",
       "remarks[0].about", 1, 0, "\"nose\" is no field of this thing"},
  };
  for (const Row& row : rows) {
    Notices notices;
    auto read = exchange::read_json(row.text, {}, notices);
    ASSERT_FALSE(read) << row.text;
    const Failure& failure = read.failure();
    EXPECT_EQ(failure.path, row.path) << row.text;
    EXPECT_EQ(failure.line, row.line) << row.text;
    EXPECT_EQ(row.column == 0 ? 0 : failure.column, row.column) << row.text;
    EXPECT_EQ(failure.what.substr(0, std::string_view(row.what).size()), row.what) << row.text;
    EXPECT_FALSE(failure.remedy.empty()) << row.text;
    EXPECT_EQ(failure.status, FIRN_NOT_UNDERSTOOD) << row.text;
  }
}

TEST(JsonRefused, DepthAndSizeHaveLimits) {
  Notices notices;
  std::string deep = "{\"pit\": {\"site\": {\"x\": ";
  deep.append(100000, '[');
  // Cut off, but the parser goes through all of it without going deeper itself.
  EXPECT_FALSE(exchange::read_json(deep, {}, notices));
  exchange::Limits limits;
  limits.max_depth = 2;
  auto read = exchange::read_json("{\"pit\": {\"site\": {\"name\": \"a\"}}}", limits, notices);
  ASSERT_FALSE(read);
  EXPECT_EQ(read.failure().what, "the document is nested too deeply");
  limits.max_bytes = 4;
  auto large = exchange::read_json("{\"pit\": {}}", limits, notices);
  ASSERT_FALSE(large);
  EXPECT_EQ(large.failure().status, FIRN_TOO_LARGE);
}

TEST(JsonRefused, ByteOrderMarksAndWindowsLinesAreRead) {
  Notices notices;
  EXPECT_TRUE(exchange::read_json("\xEF\xBB\xBF{\"pit\":\r\n{\"title\": \"a\"}}\r\n", {}, notices));
  EXPECT_TRUE(notices.empty());
}

// Whatever is done to a document, what is answered is a failure with a place, or a pit that verifies.
TEST(JsonRefused, DamagedDocumentsAreReadWithoutHarm) {
  std::uint64_t state = 11;
  const auto roll = [&](std::size_t sides) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::size_t>(state >> 33) % sides;
  };
  Notices notices;
  std::vector<std::string> wholes;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const auto pit = RandomPit(seed, Wild::plausible).pit();
    wholes.push_back(json_of(recording::to_bytes(*pit), notices, 0));
  }
  std::size_t read_ones = 0, refused = 0;
  for (int i = 0; i < 20000; ++i) {
    std::string damaged = wholes[roll(wholes.size())];
    for (std::size_t change = 0; change <= roll(3); ++change) {
      constexpr std::string_view kSigns = "{}[],:\"0129-.eE tfn\\u\x80";
      const std::size_t at = roll(damaged.size());
      roll(3) == 0 ? damaged.erase(at, roll(20)) : damaged.replace(at, 1, 1, kSigns[roll(kSigns.size())]);
    }
    auto read = exchange::read_json(damaged, {}, notices);
    if (!read) {
      ++refused;
      EXPECT_GT(read.failure().line, 0u);
      continue;
    }
    ++read_ones;
    pit::AlignedBytes aligned;
    ASSERT_TRUE(read->root != exchange::Root::pit ||
                pit::verify(read->bytes.data(), read->bytes.size(), {}, aligned))
        << damaged;
  }
  EXPECT_GT(read_ones, 100u);
  EXPECT_GT(refused, 1000u);
}

}  // namespace
}  // namespace firn::tests

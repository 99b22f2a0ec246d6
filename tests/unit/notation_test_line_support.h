// One test read from a line, and the bytes of a test for comparison.
#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "notation/test_line.h"

namespace firn::notation {

inline std::vector<std::uint8_t> packed(const firnbook::StabilityTestT& test) {
  flatbuffers::FlatBufferBuilder builder;
  builder.Finish(firnbook::StabilityTest::Pack(builder, &test));
  return {builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()};
}

inline const firnbook::StabilityTest& unpacked(const std::vector<std::uint8_t>& bytes) {
  return *flatbuffers::GetRoot<firnbook::StabilityTest>(bytes.data());
}

inline std::string printed(const firnbook::StabilityTestT& test) {
  std::string out;
  append_test(out, unpacked(packed(test)));
  return out;
}

// The only test of a line that must be understood.
inline firnbook::StabilityTestT one(std::string_view line) {
  auto tests = parse_test(line);
  EXPECT_TRUE(tests) << line << ": " << tests.failure().what << " at " << tests.failure().column;
  if (!tests) return {};
  EXPECT_EQ(tests->size(), 1u) << line;
  return (*tests)[0];
}

// The only fracture of the only test.
inline firnbook::FractureT only(std::string_view line) {
  const firnbook::StabilityTestT test = one(line);
  EXPECT_EQ(test.fractures.size(), 1u) << line;
  return test.fractures.size() == 1 ? *test.fractures[0] : firnbook::FractureT{};
}

inline std::string canonical(std::string_view line) {
  return printed(one(line));
}

}  // namespace firn::notation

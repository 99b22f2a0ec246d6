// Invented pits with the reading that the rules of the trade ask for, written down by hand beside their
// notes:
//
//   #= concern layer 68-69 propagated     every concern, in order
//   #= has next 107 deep_tap_test         a line that the reading must hold
//   #= lacks finding ct_sudden            a line that it must not hold, nor one that begins with it
//   #= bulletin persistent expired        one of the invented bulletins, and how it stands to the pit
//   #= has problem wind_slab not_shown    what the pit says of one of its problems
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "bulletin/compare.h"
#include "bulletin_help.h"
#include "interpretation_help.h"
#include "notation/notes.h"

namespace firn::tests {
namespace {

using Lines = std::vector<std::string>;

const std::filesystem::path kPits = FIRN_SOURCE_DIR "/tests/readings/pits";

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  EXPECT_TRUE(file) << path;
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

struct Expected {
  Lines concerns, has, lacks;
  std::string bulletin;  // its file, and how it stands to the pit
};

Expected expected_of(const std::string& text) {
  Expected expected;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t to = std::min(text.find('\n', from), text.size());
    const std::string line = text.substr(from, to - from);
    from = to + 1;
    if (line.rfind("#= ", 0) != 0) continue;
    const std::string said = line.substr(3);
    if (said.rfind("concern ", 0) == 0) {
      expected.concerns.push_back(said);
    } else if (said.rfind("has ", 0) == 0) {
      expected.has.push_back(said.substr(4));
    } else if (said.rfind("bulletin ", 0) == 0) {
      expected.bulletin = said.substr(9);
    } else if (said.rfind("lacks ", 0) == 0) {
      expected.lacks.push_back(said.substr(6));
    } else {
      ADD_FAILURE() << "what is \"" << said << "\"?";
    }
  }
  return expected;
}

std::string cm_of(std::int32_t depth_10um) {
  return std::to_string(depth_10um / 1000);
}

std::string line_of(const interpretation::Concern& concern) {
  std::string line = "concern ";
  if (concern.top < 0) {
    line += "unplaced";
  } else {
    line += concern.kind == ConcernKind::layer      ? "layer "
            : concern.kind == ConcernKind::boundary ? "boundary "
                                                    : "depth ";
    line += cm_of(concern.top);
    if (concern.bottom > concern.top) line += "-" + cm_of(concern.bottom);
  }
  return line + " " + firnbook::EnumNameConcernRank(concern.rank);
}

Lines concerns_of(const Read& read) {
  Lines lines;
  for (const interpretation::Concern& one : read.analysis.concerns) lines.push_back(line_of(one));
  return lines;
}

Lines all_of(const Read& read) {
  Lines lines = concerns_of(read);
  for (const std::string& one : read.not_loaded()) lines.push_back("not loaded " + one);
  for (const std::string& one : read.suggestions()) lines.push_back("next " + one);
  for (const firnbook::Check& one : read.analysis.checks) {
    lines.push_back(std::string("check ") + firnbook::EnumNameCheckCode(one.code()));
  }
  for (const firnbook::Caution& one : read.analysis.cautions) {
    lines.push_back(std::string("caution ") + firnbook::EnumNameCautionKey(one.key()));
  }
  for (const Finding& one : read.analysis.findings) {
    const std::string depth = one.depth_10um() < 0 ? "" : " " + cm_of(one.depth_10um());
    lines.push_back(std::string("finding ") + firnbook::EnumNameFindingKey(one.key()) + depth + " " +
                    firnbook::EnumNameVerdict(one.verdict()));
  }
  return lines;
}

// Every pit lies in the first of the invented regions.
bulletin::Comparison held_beside(const Read& read, const firnbook::Bulletins& bulletins) {
  bulletin::Question question;
  question.region = "XX-LW-01";
  return bulletin::compare(read.view, read.analysis, bulletins, question);
}

void add_problems(Lines& lines, const bulletin::Comparison& comparison) {
  for (const firnbook::ProblemMatch& one : comparison.problems) {
    lines.push_back(std::string("problem ") +
                    firnbook::EnumNameProblemType(static_cast<firnbook::ProblemType>(one.type())) + " " +
                    firnbook::EnumNameProblemAnswer(one.answer()));
  }
}

bool begins_a_line(const Lines& lines, const std::string& said) {
  return std::any_of(lines.begin(), lines.end(), [&said](const std::string& line) {
    return line == said || line.rfind(said + " ", 0) == 0;
  });
}

std::string joined(const Lines& lines) {
  std::string all;
  for (const std::string& line : lines) all += line + "\n";
  return all;
}

std::vector<std::string> names() {
  std::vector<std::string> found;
  for (const auto& entry : std::filesystem::directory_iterator(kPits)) {
    found.push_back(entry.path().stem().string());
  }
  std::sort(found.begin(), found.end());
  return found;
}

class ReadingTest : public testing::TestWithParam<std::string> {};

TEST_P(ReadingTest, IsWhatTheRulesOfTheTradeAsk) {
  const std::string text = text_of(kPits / (GetParam() + ".txt"));
  std::vector<Failure> others;
  const auto notes = notation::read_notes(text, {}, others);
  ASSERT_TRUE(notes) << notes.failure().line << ": " << notes.failure().what;
  const Read read(*notes->pit);
  ASSERT_TRUE(read.ok);
  const Expected expected = expected_of(text);
  Lines lines = all_of(read);
  const std::size_t blank = expected.bulletin.find(' ');
  ASSERT_NE(blank, std::string::npos) << "no bulletin is named";
  const ReadBulletin file(bulletin_file(expected.bulletin.substr(0, blank)));
  ASSERT_TRUE(file.ok);
  const bulletin::Comparison comparison = held_beside(read, *file.root);
  add_problems(lines, comparison);
  EXPECT_EQ(firnbook::EnumNameBulletinMatch(comparison.choice.match), expected.bulletin.substr(blank + 1));
  EXPECT_EQ(concerns_of(read), expected.concerns);
  for (const std::string& said : expected.has) EXPECT_TRUE(begins_a_line(lines, said)) << said;
  for (const std::string& said : expected.lacks) EXPECT_FALSE(begins_a_line(lines, said)) << said;
  if (HasFailure()) ADD_FAILURE() << "the reading is\n" << joined(lines);
}

std::string case_name(const testing::TestParamInfo<std::string>& info) {
  std::string name = info.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Invented, ReadingTest, testing::ValuesIn(names()), case_name);

TEST(Readings, AreTwentyOrMoreAndSayThatTheyAreInvented) {
  EXPECT_GE(names().size(), 20u);
  for (const std::string& name : names()) {
    EXPECT_EQ(text_of(kPits / (name + ".txt")).rfind("# Invented.", 0), 0u) << name;
  }
}

}  // namespace
}  // namespace firn::tests

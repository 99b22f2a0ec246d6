// Documents written by hand from the schemas alone, read, and compared with what stands beside each of them:
// one value a line, by its path in the pit.
#include <algorithm>
#include <map>
#include <set>

#include "caaml_help.h"
#include "exchange/caaml/number.h"
#include "support/form.h"
#include "support/text.h"

namespace firn::tests {
namespace {

std::string printed(const firnbook::Moment& moment) {
  using firnbook::TimePrecision;
  if (moment.precision() == TimePrecision::none) return "none";
  const CalendarTime time = calendar_time(moment.local_s());
  char text[64];
  std::snprintf(text, sizeof text, "%04d-%02d-%02d", static_cast<int>(time.year), time.month, time.day);
  std::string out = text;
  if (moment.precision() >= TimePrecision::minute) {
    std::snprintf(text, sizeof text, "T%02d:%02d:%02d", time.hour, time.minute, time.second);
    out += text;
  }
  if (moment.offset_known() != 0) {
    const int offset = moment.offset_min();
    std::snprintf(text, sizeof text, "%c%02d:%02d", offset < 0 ? '-' : '+', std::abs(offset) / 60,
                  std::abs(offset) % 60);
    out += text;
  }
  return out;
}

using Lines = std::map<std::string, std::string>;

void dump(Lines& lines, const form::Table& table, void* object, const std::string& path);

void dump_structure(Lines& lines, const form::Field& field, void* member, const std::string& path) {
  switch (field.element) {
    case form::Element::moment:
      lines[path] = printed(**static_cast<std::unique_ptr<firnbook::Moment>*>(member));
      return;
    case form::Element::time_span: {
      const auto& span = **static_cast<std::unique_ptr<firnbook::TimeSpan>*>(member);
      lines[path + ".begin"] = printed(span.begin());
      lines[path + ".end"] = printed(span.end());
      return;
    }
    case form::Element::place: {
      const std::string named = path_of(**static_cast<std::unique_ptr<firnbook::Place>*>(member));
      lines[path] = named.compare(0, 4, "pit.") == 0 ? named.substr(4) : named;
      return;
    }
    default: {
      const auto& depth = **static_cast<std::unique_ptr<firnbook::Depth>*>(member);
      const char* const kData[] = {"unknown", "surface", "ground"};
      lines[path] = std::to_string(depth.value_10um()) + " " + kData[static_cast<int>(depth.datum()) % 3];
    }
  }
}

void dump_numbers(Lines& lines, const form::Field& field, void* member, const std::string& path) {
  std::string& line = lines[path];
  if (field.element == form::Element::bits8) {
    const auto& bytes = *static_cast<std::vector<std::uint8_t>*>(member);
    line.assign(bytes.begin(), bytes.end());
  } else if (field.element == form::Element::real) {
    for (const float value : *static_cast<std::vector<float>*>(member)) {
      if (!line.empty()) line += ' ';
      append_float(line, value);
    }
  }
}

void dump_field(Lines& lines, const form::Field& field, void* object, const std::string& path) {
  void* member = field.in(object);
  std::int64_t value = 0;
  switch (field.kind) {
    case form::Kind::optional:
      if (form::get(field, object, value)) lines[path] = std::to_string(value);
      return;
    case form::Kind::text:
      lines[path] = *static_cast<std::string*>(member);
      return;
    case form::Kind::structure:
      return dump_structure(lines, field, member, path);
    case form::Kind::numbers:
      return dump_numbers(lines, field, member, path);
    case form::Kind::table:
      return dump(lines, *field.table, field.table->get(member), path + ".");
    case form::Kind::tables:
      for (std::size_t i = 0; i < field.table->size(member); ++i) {
        dump(lines, *field.table, field.table->object_at(member, i), path + "[" + std::to_string(i) + "].");
      }
      return;
    default:
      return;
  }
}

void dump(Lines& lines, const form::Table& table, void* object, const std::string& path) {
  std::size_t number = 0;
  for (const form::Field& field : table) {
    const std::string name(table.name_of(number++));
    if (form::holds(field, object)) dump_field(lines, field, object, path + name);
  }
}

Lines lines_of(const std::filesystem::path& file) {
  Lines lines;
  std::ifstream in(file);
  for (std::string line; std::getline(in, line);) {
    const std::size_t colon = line.find(": ");
    EXPECT_NE(colon, std::string::npos) << file << " " << line;
    if (colon != std::string::npos) lines[line.substr(0, colon)] = line.substr(colon + 2);
  }
  EXPECT_FALSE(lines.empty()) << file;
  return lines;
}

const std::filesystem::path kFolder = std::filesystem::path(FIRN_SOURCE_DIR) / "tests/exchange/caaml";

std::vector<std::filesystem::path> documents(const std::string& version) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(kFolder / version)) {
    if (entry.path().extension() == ".xml") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

class CaamlDocuments : public testing::TestWithParam<const char*> {};

TEST_P(CaamlDocuments, AreReadAsExpected) {
  std::size_t values = 0;
  for (const auto& file : documents(GetParam())) {
    SCOPED_TRACE(file.filename().string());
    Notices notices;
    const auto pit = read_caaml_well(read_whole(file), notices);
    for (const Notice& notice : notices.kept()) {
      // 5.0 spells some methods otherwise, and lets layers have ids, which nothing refers to.
      const bool is_expected = notice.what.find("gml:id") != std::string::npos ||
                               notice.what.find("another program") != std::string::npos ||
                               notice.what.find("read as ") == 0;
      EXPECT_TRUE(is_expected) << shown(notices);
    }
    Lines found;
    dump(found, form::table_of<firnbook::PitT>(), pit.get(), "");
    for (const auto& [path, value] : lines_of(std::filesystem::path(file).replace_extension(".expected"))) {
      ++values;
      ASSERT_TRUE(found.count(path) != 0) << path << " is missing";
      EXPECT_EQ(found[path], value) << path;
    }
  }
  EXPECT_GT(values, 10u);
}

// Whatever version they are of, they are written as 6.0.4 and mean the same then.
TEST_P(CaamlDocuments, ComeBackFromWhatIsWrittenOfThem) {
  for (const auto& file : documents(GetParam())) {
    SCOPED_TRACE(file.filename().string());
    Notices notices;
    const Bytes pit = recording::to_bytes(*read_caaml_well(read_whole(file), notices));
    const std::string text = written(pit);
    Notices again;
    EXPECT_EQ(recording::to_bytes(*read_caaml_well(text, again)), pit) << text;
  }
}

TEST_P(CaamlDocuments, Validate) {
  if (cannot_validate()) GTEST_SKIP() << kCannotValidate;
  std::vector<std::string> files;
  for (const auto& file : documents(GetParam())) files.push_back(file.string());
  EXPECT_EQ(validate(files, GetParam()), "");
}

// None of the elements that the schema has is missing from them.
TEST_P(CaamlDocuments, UseEveryElement) {
  const std::string version = GetParam();
  if (schema_folder().empty()) GTEST_SKIP() << kCannotValidate;
  const std::string schema =
      read_whole(schema_folder() / version /
                 (version == "v5.0" ? "CAAMLv5_SnowProfileIACS.xsd" : "CAAMLv6_SnowProfileIACS.xsd"));
  std::string all;
  for (const auto& file : documents(version)) all += read_whole(file);
  // Of 6.0.3 only what it has otherwise than 6.0.4 is written a second time.
  if (version == "v6.0.3") {
    for (const auto& file : documents("v6.0.4")) all += read_whole(file);
  }
  std::size_t elements = 0;
  const std::string mark = "<element name=\"";
  for (std::size_t at = schema.find(mark); at != std::string::npos; at = schema.find(mark, at + 1)) {
    const std::size_t from = at + mark.size();
    const std::string name = schema.substr(from, schema.find('"', from) - from);
    if (name == "AbstractStbTest") continue;  // stands for the tests
    ++elements;
    const bool is_used = all.find("<caaml:" + name + ">") != std::string::npos ||
                         all.find("<caaml:" + name + " ") != std::string::npos ||
                         all.find("<caaml:" + name + "/") != std::string::npos;
    EXPECT_TRUE(is_used) << name;
  }
  EXPECT_GT(elements, 90u);
}

INSTANTIATE_TEST_SUITE_P(Versions, CaamlDocuments, testing::Values("v6.0.4", "v6.0.3", "v5.0"),
                         [](const auto& which) {
                           std::string name = which.param;
                           name.erase(std::remove(name.begin(), name.end(), '.'), name.end());
                           return name;
                         });

}  // namespace
}  // namespace firn::tests

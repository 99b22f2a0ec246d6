// The picture as a parser and an eye see it: well-formed, nothing over anything else, nothing outside.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "drawing/text_fit.h"
#include "drawing_help.h"

namespace firn::tests {
namespace {

using drawing::Tenths;
using firnbook::GrainForm;
using firnbook::HandHardness;

struct Box {
  Tenths left, top, right, bottom, baseline;
  std::string text;
};

Tenths tenths(const std::string& number) {
  const std::size_t point = number.find('.');
  Tenths value = std::atoll(number.c_str()) * 10;
  if (point != std::string::npos)
    value += (value < 0 || number[0] == '-' ? -1 : 1) * (number[point + 1] - '0');
  return value;
}

Tenths font_of(pugi::xml_node node) {
  while (node && !node.attribute("font-size")) node = node.parent();
  return tenths(node.attribute("font-size").value());
}

Box box_of(const pugi::xml_node& text) {
  const Tenths font = font_of(text);
  const bool bold = std::string(text.attribute("font-weight").value()) == "bold";
  Tenths width = 0;
  std::string words;
  for (const pugi::xml_node& part : text.children()) {
    const bool span = part.type() == pugi::node_element;
    const std::string content = span ? part.child_value() : part.value();
    const bool strong = bold || std::string(part.attribute("font-weight").value()) == "bold";
    width += drawing::text_width(content, font, strong);
    words += content;
  }
  Tenths x = tenths(text.attribute("x").value());
  const Tenths y = tenths(text.attribute("y").value());
  const std::string anchor = text.attribute("text-anchor").value();
  if (anchor == "end") x -= width;
  if (anchor == "middle") x -= width / 2;
  return {x, y - font * 7 / 10, x + width, y + font / 5, y, words};
}

void collect(const pugi::xml_node& node, std::vector<Box>& boxes) {
  for (const pugi::xml_node& child : node.children()) {
    if (std::string(child.name()) == "text") boxes.push_back(box_of(child));
    collect(child, boxes);
  }
}

struct Picture {
  pugi::xml_document document;
  std::vector<Box> texts;
  Tenths width = 0, height = 0;

  explicit Picture(const std::string& svg) {
    const pugi::xml_parse_result parsed = document.load_buffer(
        svg.data(), svg.size(), pugi::parse_full | pugi::parse_ws_pcdata, pugi::encoding_utf8);
    EXPECT_TRUE(parsed) << parsed.description();
    collect(document, texts);
    width = tenths(root().attribute("width").value());
    height = tenths(root().attribute("height").value());
  }
  pugi::xml_node root() const { return document.child("svg"); }
};

void expect_tidy(const Picture& picture) {
  for (std::size_t i = 0; i < picture.texts.size(); ++i) {
    const Box& a = picture.texts[i];
    EXPECT_GE(a.left, 0) << a.text;
    EXPECT_LE(a.right, picture.width) << a.text;
    EXPECT_GE(a.top, 0) << a.text;
    EXPECT_LE(a.bottom, picture.height) << a.text;
    for (std::size_t k = 0; k < i; ++k) {
      const Box& b = picture.texts[k];
      const bool apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
      EXPECT_TRUE(apart) << a.text << " | " << b.text;
    }
  }
}

// Points of a path's M and L commands, the only ones the writer knows.
std::vector<std::pair<Tenths, Tenths>> points_of(const std::string& data) {
  std::vector<std::pair<Tenths, Tenths>> points;
  for (std::size_t at = 0; at < data.size();) {
    if (data[at] != 'M' && data[at] != 'L') {
      ++at;
      continue;
    }
    const std::size_t blank = data.find(' ', at);
    const std::size_t end = std::min(data.find_first_of("MLZ", blank), data.size());
    points.emplace_back(tenths(data.substr(at + 1, blank - at - 1)),
                        tenths(data.substr(blank + 1, end - blank - 1)));
    at = end;
  }
  return points;
}

// The bars' own group.
std::vector<std::vector<std::pair<Tenths, Tenths>>> bars_of(const Picture& picture) {
  std::vector<std::vector<std::pair<Tenths, Tenths>>> bars;
  for (const pugi::xml_node& group : picture.root().children("g")) {
    if (std::string(group.attribute("stroke").value()) != "#333") continue;
    for (const pugi::xml_node& path : group.children("path")) {
      bars.push_back(points_of(path.attribute("d").value()));
    }
  }
  return bars;
}

TEST(Layout, TheDemoPitsAreTidyAtEveryWidth) {
  const auto larch_report =
      report_of({{firnbook::ConcernKind::boundary, 1, cm(17), cm(17), firnbook::ConcernRank::sudden}});
  for (const std::int32_t width : {320, 360, 479, 480, 600, 720, 1000, 1400, 2000}) {
    SCOPED_TRACE(width);
    expect_tidy(Picture(draw(*tarn_shoulder(), width, tarn_shoulder_report())));
    expect_tidy(Picture(draw(*larch_bowl_entry(), width, larch_report)));
  }
}

TEST(Layout, SmallestTextIsReadableOnAPhone) {
  EXPECT_GE(font_of(Picture(draw(*tarn_shoulder(), 720)).root()), 160);  // 8 px when shown 360 px wide
  EXPECT_GE(font_of(Picture(draw(*tarn_shoulder(), 360)).root()), 110);
}

TEST(Layout, APictureForPeopleWhoCannotSeeIt) {
  const Picture picture(draw(*tarn_shoulder(), 720, tarn_shoulder_report()));
  EXPECT_STREQ(picture.root().attribute("role").value(), "img");
  const std::string title = picture.root().child("title").child_value();
  const std::string summary = picture.root().child("desc").child_value();
  EXPECT_TRUE(has(title, "Tarn Shoulder"));
  for (const char* text :
       {"140 cm", "7 layers", "5 stability tests", "cracking", "Concern 1: the layer from 68 to 69 cm",
        "Concern 2: the boundary 107 cm", "One pit is one point."}) {
    EXPECT_TRUE(has(summary, text)) << text;
  }
}

TEST(Layout, TextStaysText) {
  const Picture picture(draw(*tarn_shoulder(), 720, tarn_shoulder_report()));
  EXPECT_STREQ(picture.root().attribute("font-family").value(), "sans-serif");
  EXPECT_GT(picture.texts.size(), 50u);
}

// Equal steps by index, from the panel's right edge: F one step, P four.
TEST(Layout, BarsGrowToTheLeftInEqualSteps) {
  firnbook::PitT pit;
  add_layer(pit, 0, cm(50), HandHardness::Fist, GrainForm::PP);
  add_layer(pit, cm(50), cm(100), HandHardness::Pencil, GrainForm::RG);
  const auto bars = bars_of(Picture(draw(pit)));
  ASSERT_EQ(bars.size(), 2u);
  const Tenths right = bars[0][0].first;
  const Tenths step = right - bars[0][1].first;
  EXPECT_GT(step, 0);
  EXPECT_EQ(bars[0][1].first, bars[0][2].first);
  EXPECT_NEAR(static_cast<double>(right - bars[1][1].first), static_cast<double>(step * 4), 4);
  EXPECT_EQ(bars[0][2].second, bars[1][0].second);  // they touch
}

TEST(Layout, AHardnessThatChangesWithinTheLayerSlantsTheEnd) {
  firnbook::PitT pit;
  firnbook::LayerT& layer = add_layer(pit, 0, cm(50));
  layer.hardness_top = HandHardness::FourFinger;
  layer.hardness_bottom = HandHardness::Knife;
  const auto bars = bars_of(Picture(draw(pit)));
  ASSERT_EQ(bars.size(), 1u);
  ASSERT_EQ(bars[0].size(), 4u);
  const Tenths right = bars[0][0].first;
  EXPECT_NEAR(static_cast<double>(right - bars[0][1].first) * 5,
              static_cast<double>(right - bars[0][2].first) * 2, 15);
  EXPECT_LT(bars[0][1].second, bars[0][2].second);
  EXPECT_TRUE(has(draw(pit), "4F to K"));
}

TEST(Layout, AThinLayerStaysVisible) {
  firnbook::PitT pit;
  add_layer(pit, 0, cm(200), HandHardness::Pencil, GrainForm::RG);
  add_layer(pit, cm(200), cm(200) + 100, HandHardness::Fist, GrainForm::SH);  // 1 mm
  add_layer(pit, cm(200) + 100, cm(300), HandHardness::Pencil, GrainForm::RG);
  const auto bars = bars_of(Picture(draw(pit)));
  ASSERT_EQ(bars.size(), 3u);
  EXPECT_GE(bars[2][2].second - bars[2][1].second, 25) << "drawn last, over its neighbours";
}

firnbook::PitT pit_of_thin_layers() {
  firnbook::PitT pit;
  for (std::int32_t i = 0; i < 30; ++i) {
    add_layer(pit, cm(100) + i * 500, cm(100) + (i + 1) * 500, HandHardness::OneFinger, GrainForm::FC, 100);
    if (i % 3 == 0) add_compression_test(pit, 12, firnbook::FractureCharacter::SP, cm(100) + i * 500);
  }
  add_layer(pit, 0, cm(100), HandHardness::Fist, GrainForm::PP);
  return pit;
}

TEST(Layout, LabelsOfThinLayersArePushedApart) {
  for (const std::int32_t width : {360, 720}) {
    const Picture picture(draw(pit_of_thin_layers(), width));
    expect_tidy(picture);
    const Tenths font = font_of(picture.root());
    std::vector<Tenths> baselines;
    Tenths label_left = 0;
    for (const Box& box : picture.texts) label_left = box.text.rfind("down ", 0) == 0 ? box.left : label_left;
    ASSERT_GT(label_left, 0);
    for (const Box& box : picture.texts) {
      if (box.left >= label_left && box.left < label_left + font * 2) baselines.push_back(box.baseline);
    }
    std::sort(baselines.begin(), baselines.end());
    baselines.erase(std::unique(baselines.begin(), baselines.end()), baselines.end());
    EXPECT_GE(baselines.size(), 41u);
    for (std::size_t i = 1; i < baselines.size(); ++i) EXPECT_GE(baselines[i] - baselines[i - 1], font);
  }
}

TEST(Layout, LeadersNeverCross) {
  const Picture picture(draw(pit_of_thin_layers()));
  std::vector<std::pair<Tenths, Tenths>> leaders;  // y at the panel, y at the label
  for (const pugi::xml_node& path : picture.root().children("path")) {
    const auto points = points_of(path.attribute("d").value());
    const bool leader = points.size() == 4 && points[0].second == points[1].second &&
                        points[2].second == points[3].second && points[0].first < points[1].first &&
                        points[2].first < points[3].first;
    if (leader) leaders.emplace_back(points[0].second, points[3].second);
  }
  ASSERT_EQ(leaders.size(), 41u);
  for (std::size_t i = 1; i < leaders.size(); ++i) {
    EXPECT_LE(leaders[i - 1].first, leaders[i].first);
    EXPECT_LT(leaders[i - 1].second, leaders[i].second);
  }
}

// Whatever verifies structurally is drawn as well-formed XML, with its text inside the picture.
TEST(Layout, HostilePitsAreTidyToo) {
  firnbook::PitT pit;
  pit.title = std::string(100000, '<') + "\xFF";
  pit.time = std::make_unique<firnbook::TimeSpan>(
      instant(firnbook::Moment(INT64_MIN, INT16_MIN, static_cast<firnbook::TimePrecision>(99), 255)));
  pit.snowpack = std::make_unique<firnbook::SnowpackT>();
  pit.snowpack->hs_10um = INT32_MAX;
  pit.profile_depth_10um = INT32_MIN;
  add_layer(pit, cm(30), cm(10), static_cast<HandHardness>(255), static_cast<GrainForm>(255), INT32_MIN)
      .words = "\xD8\xAB\xD9\x84\xD8\xAC <&>";
  add_layer(pit, -cm(50), cm(60), static_cast<HandHardness>(1), GrainForm::SH, INT32_MAX);
  add_layer(pit, INT32_MIN + 1, INT32_MAX, HandHardness::Ice, GrainForm::IF);
  add_layer(pit, 0, 0, HandHardness::Ice, GrainForm::IF);
  add_compression_test(pit, 255, static_cast<firnbook::FractureCharacter>(99), cm(20));
  add_test(pit, static_cast<firnbook::TestKind>(200));
  add_temperature(pit, cm(10), INT32_MIN + 1);
  add_temperature(pit, cm(12), INT32_MAX);
  add_density(pit, INT32_MAX, INT32_MIN + 1, INT32_MAX);
  add_density(pit, 0, cm(5), INT32_MIN + 1);
  const auto report =
      report_of({{static_cast<firnbook::ConcernKind>(99), INT32_MAX, -INT32_MAX, cm(5),
                  static_cast<firnbook::ConcernRank>(99)},
                 {firnbook::ConcernKind::layer, 0, INT32_MAX, INT32_MIN, firnbook::ConcernRank::little}});
  for (const std::int32_t width : {320, 720, 2000}) expect_tidy(Picture(draw(pit, width, report)));
}

TEST(Layout, EmptyAndOneSidedPitsAreTidy) {
  expect_tidy(Picture(draw({})));
  firnbook::PitT tests;
  for (std::uint8_t i = 1; i < 25; ++i) {
    add_compression_test(tests, i, firnbook::FractureCharacter::SC, cm(40));
  }
  expect_tidy(Picture(draw(tests, 360)));
  EXPECT_TRUE(has(draw(tests), "12 more"));
  firnbook::PitT temperatures;
  for (std::int32_t i = 0; i < 20; ++i) add_temperature(temperatures, cm(i * 5), -1900 + i * 100);
  expect_tidy(Picture(draw(temperatures)));
  EXPECT_TRUE(has(draw(temperatures), "No layers were recorded."));
}

}  // namespace
}  // namespace firn::tests

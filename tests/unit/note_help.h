// What tests of the note share: words that would reassure, texts as readers need them, hostile reports.
#pragma once

#include <cstdint>
#include <memory>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "note/page.h"
#include "note/words.h"
#include "schemas/pit_generated.h"
#include "schemas/report_generated.h"
#include "support/text.h"

namespace firn::tests {

// Words that would reassure. They may appear in no sentence of the library, whatever a pit holds. A word of
// German or French counts with the endings it takes.
struct Forbidden {
  std::vector<std::string_view> words, endings;
};

inline const Forbidden& forbidden(note::Language language) {
  static const Forbidden english = {
      {"safe",        "safely",   "safer",       "good",      "stable",     "unlikely",
       "ok",          "okay",     "go",          "green",     "fine",       "favourable",
       "harmless",    "no risk",  "low risk",    "no danger", "low danger", "secure",
       "trustworthy", "reliable", "well bonded", "all clear"},
      {""}};
  static const Forbidden german = {{"sicher",
                                    "sicherheit",
                                    "gut",
                                    "besser",
                                    "stabil",
                                    "unwahrscheinlich",
                                    "ok",
                                    "okay",
                                    "go",
                                    "gr\u00FCn",
                                    "g\u00FCnstig",
                                    "harmlos",
                                    "gefahrlos",
                                    "ungef\u00E4hrlich",
                                    "unbedenklich",
                                    "bedenkenlos",
                                    "unproblematisch",
                                    "problemlos",
                                    "verl\u00E4sslich",
                                    "zuverl\u00E4ssig",
                                    "tragf\u00E4hig",
                                    "befahrbar",
                                    "kein risiko",
                                    "geringes risiko",
                                    "keine gefahr",
                                    "geringe gefahr",
                                    "in ordnung",
                                    "los"},
                                   {"", "e", "er", "es", "en", "em"}};
  static const Forbidden french = {{"s\u00FBr",
                                    "s\u00FBret\u00E9",
                                    "s\u00E9curit\u00E9",
                                    "bon",
                                    "bonne",
                                    "bien",
                                    "stable",
                                    "improbable",
                                    "peu probable",
                                    "ok",
                                    "okay",
                                    "go",
                                    "vert",
                                    "favorable",
                                    "inoffensif",
                                    "inoffensive",
                                    "fiable",
                                    "rassurant",
                                    "solide",
                                    "praticable",
                                    "sans risque",
                                    "sans danger",
                                    "risque faible",
                                    "faible risque",
                                    "danger faible",
                                    "faible danger",
                                    "aucun risque",
                                    "aucun danger",
                                    "vas-y",
                                    "allez-y"},
                                   {"", "e", "s", "es"}};
  switch (language) {
    case note::Language::german:
      return german;
    case note::Language::french:
      return french;
    default:
      return english;
  }
}

// Small letters of ASCII and of Latin-1.
inline std::string lower(std::string_view text) {
  std::string out(text);
  for (std::size_t i = 0; i < out.size(); ++i) {
    const auto byte = static_cast<unsigned char>(out[i]);
    const bool latin =
        i > 0 && static_cast<unsigned char>(out[i - 1]) == 0xC3 && byte >= 0x80 && byte <= 0x9E;
    if ((byte >= 'A' && byte <= 'Z') || (latin && byte != 0x97)) out[i] = static_cast<char>(byte + 0x20);
  }
  return out;
}

inline bool is_letter(char byte) {
  return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') ||
         static_cast<unsigned char>(byte) >= 0x80;
}

inline bool stands_alone(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    const bool starts = at == 0 || !is_letter(text[at - 1]);
    const std::size_t end = at + word.size();
    if (starts && (end == text.size() || !is_letter(text[end]))) return true;
  }
  return false;
}

// The forbidden word that stands in the text as a word of its own, or "". Blanks of any kind are one.
inline std::string forbidden_in(std::string_view text, note::Language language) {
  std::string low;
  for (const char byte : lower(text)) {
    const char one = byte == '\n' ? ' ' : byte;
    if (one != ' ' || low.empty() || low.back() != ' ') low += one;
  }
  const Forbidden& list = forbidden(language);
  for (const std::string_view word : list.words) {
    for (const std::string_view ending : list.endings) {
      const std::string form = std::string(word) + std::string(ending);
      if (stands_alone(low, form)) return form;
    }
  }
  return {};
}

// What makes a text unfit to be printed: broken UTF-8, control characters, a template left open, a line of
// more than so many characters, no newline at the end. "" when nothing does.
inline std::string trouble_in(std::string_view text, std::size_t widest) {
  if (!is_utf8(text)) return "not UTF-8";
  if (text.empty() || text.back() != '\n') return "no newline at the end";
  if (text.find('{') != std::string_view::npos) return "a template";
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t end = text.find('\n', start);
    const std::string_view line = text.substr(start, end - start);
    // The record at the end has lines of its own.
    if (note::characters_in(line) > widest) return "a line too long: " + std::string(line);
    start = end + 1;
  }
  for (const char byte : text) {
    if (byte != '\n' && static_cast<unsigned char>(byte) < 0x20) return "a control character";
  }
  return {};
}

inline std::vector<std::uint8_t> pack(const firnbook::PitT& pit) {
  flatbuffers::FlatBufferBuilder builder;
  firnbook::FinishPitBuffer(builder, firnbook::Pit::Pack(builder, &pit));
  return {builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()};
}

// A report as hostile as a report can be that still verifies: every position and number at random.
inline std::vector<std::uint8_t> random_report(std::mt19937& random) {
  const auto number = [&random](std::int32_t low, std::int32_t high) {
    return std::uniform_int_distribution<std::int32_t>(low, high)(random);
  };
  const auto any = [&] {
    const std::int32_t choices[] = {INT32_MIN, -1, 0, 1, 2, 68000, INT32_MAX, number(-5, 5)};
    return choices[number(0, 7)];
  };
  const auto place = [&] {
    return firnbook::Place(any(), any(), static_cast<std::uint16_t>(number(0, 65535)),
                           static_cast<firnbook::Thing>(number(0, 255)));
  };
  flatbuffers::FlatBufferBuilder builder;
  std::vector<firnbook::Finding> findings;
  for (int i = 0; i < 12; ++i) {
    findings.emplace_back(place(), any(), any(), any(), any(),
                          static_cast<firnbook::FindingKey>(number(0, 300)),
                          static_cast<firnbook::Method>(number(0, 1) == 0 ? 1 : number(0, 40)),
                          static_cast<firnbook::Verdict>(number(0, 9)));
  }
  std::vector<firnbook::Check> checks;
  for (int i = 0; i < 4; ++i) {
    checks.emplace_back(place(), any(), any(), any(), static_cast<firnbook::CheckCode>(number(0, 1000)),
                        static_cast<firnbook::Severity>(number(0, 9)));
  }
  std::vector<firnbook::Caution> cautions;
  for (int i = 0; i < 6; ++i) {
    cautions.emplace_back(
        place(), any(), any(),
        static_cast<firnbook::CautionKey>(number(0, 3) == 0 ? number(100, 107) : number(0, 60)),
        static_cast<std::uint8_t>(number(0, 2)));
  }
  std::vector<firnbook::NotLoaded> not_loaded;
  std::vector<firnbook::Suggestion> suggestions;
  for (int i = 0; i < 4; ++i) {
    not_loaded.emplace_back(any(), any(), any(), static_cast<firnbook::TestKind>(number(0, 255)),
                            static_cast<firnbook::NotLoadedReason>(number(0, 9)));
    suggestions.emplace_back(any(), any(), static_cast<firnbook::NextStep>(number(0, 40)));
  }
  std::vector<flatbuffers::Offset<firnbook::Concern>> concerns;
  for (int i = 0; i < 3; ++i) {
    std::vector<std::uint32_t> evidence;
    for (int k = 0; k < 6; ++k) evidence.push_back(static_cast<std::uint32_t>(number(0, 14)));
    const auto list = builder.CreateVector(evidence);
    firnbook::ConcernBuilder concern(builder);
    if (number(0, 3) != 0) concern.add_kind(static_cast<firnbook::ConcernKind>(number(0, 5)));
    if (number(0, 3) != 0) concern.add_layer(any());
    if (number(0, 3) != 0) concern.add_layer_below(any());
    if (number(0, 3) != 0) concern.add_top_10um(any());
    if (number(0, 3) != 0) concern.add_bottom_10um(any());
    if (number(0, 3) != 0) concern.add_rank(static_cast<firnbook::ConcernRank>(number(0, 9)));
    concern.add_evidence(list);
    concerns.push_back(concern.Finish());
  }
  const auto check_list = builder.CreateVectorOfStructs(checks);
  const auto finding_list = builder.CreateVectorOfStructs(findings);
  const auto concern_list = builder.CreateVector(concerns);
  const auto not_loaded_list = builder.CreateVectorOfStructs(not_loaded);
  const auto suggestion_list = builder.CreateVectorOfStructs(suggestions);
  const auto caution_list = builder.CreateVectorOfStructs(cautions);
  flatbuffers::Offset<firnbook::BulletinComparison> bulletin = 0;
  if (number(0, 3) == 0) bulletin = firnbook::CreateBulletinComparison(builder);
  firnbook::ReportBuilder report(builder);
  if (!bulletin.IsNull()) report.add_bulletin(bulletin);
  report.add_checks(check_list);
  report.add_findings(finding_list);
  report.add_concerns(concern_list);
  report.add_not_loaded(not_loaded_list);
  report.add_suggestions(suggestion_list);
  report.add_cautions(caution_list);
  const auto root = report.Finish();
  firnbook::FinishReportBuffer(builder, root);
  return {builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()};
}

inline firnbook::PitT small_pit() {
  firnbook::PitT pit;
  pit.title = "Tarn Shoulder";
  auto layer = std::make_unique<firnbook::LayerT>();
  layer->top = std::make_unique<firnbook::Depth>(0, firnbook::Datum::surface, firnbook::Direction::vertical);
  layer->bottom =
      std::make_unique<firnbook::Depth>(16000, firnbook::Datum::surface, firnbook::Direction::vertical);
  layer->grain_form = firnbook::GrainForm::SH;
  layer->hardness = static_cast<firnbook::HandHardness>(251);
  pit.layers.push_back(std::move(layer));
  auto test = std::make_unique<firnbook::StabilityTestT>();
  test->kind = static_cast<firnbook::TestKind>(77);
  test->fractures.push_back(std::make_unique<firnbook::FractureT>());
  pit.tests.push_back(std::move(test));
  auto sign = std::make_unique<firnbook::SignT>();
  sign->kind = static_cast<firnbook::SignKind>(200);
  sign->length_10um = INT32_MIN;
  pit.signs.push_back(std::move(sign));
  auto slide = std::make_unique<firnbook::SlideT>();
  slide->size_tenths = std::uint8_t{255};
  pit.slides.push_back(std::move(slide));
  return pit;
}

}  // namespace firn::tests

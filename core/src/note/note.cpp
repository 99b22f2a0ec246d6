#include "note/note.h"

#include <cstdint>
#include <string_view>
#include <vector>

#include "checking/check.h"
#include "notation/notes.h"
#include "note/page.h"
#include "note/sentences.h"
#include "note/words.h"
#include "support/place.h"
#include "support/text.h"
#include "vocabulary/codes.h"

namespace firn::note {
namespace {

using firnbook::Finding;
using firnbook::FindingKey;
using firnbook::Method;
using firnbook::Report;
using firnbook::Verdict;

constexpr std::size_t kCautionsFirst = 3;

// With a capital letter and a full stop; the catalogues keep their sentences small for other uses.
void append_sentence(std::string& out, std::string_view words) {
  if (words.empty()) return;
  const char first = words.front();
  out += first >= 'a' && first <= 'z' ? static_cast<char>(first - 'a' + 'A') : first;
  out.append(words.substr(1));
  out += '.';
}

class Writer {
 public:
  Writer(std::string& out, const pit::View& view, const Report& report)
      : page_(out), out_(out), pit_(view.raw()), report_(report) {}

  void write() {
    where_and_when();
    signs();
    first_cautions();
    concerns();
    not_loaded();
    suggestions();
    also_noticed();
    own_words();
    checks();
    all_cautions();
    methods();
    parameters();
    record();
  }

 private:
  std::uint32_t finding_count() const { return pit::size_of(report_.findings()); }
  const Finding& finding(std::uint32_t index) const { return *report_.findings()->Get(index); }

  void where_and_when();
  void signs();
  void first_cautions();
  void concerns();
  void concern(std::uint32_t index);
  void concern_title(const firnbook::Concern& concern);
  void append_span(const firnbook::Concern& concern);
  void append_depth_only(const firnbook::Concern& concern);
  void append_reading(const firnbook::Concern& concern);
  std::uint32_t evidence_count(const firnbook::Concern& concern) const;
  std::uint32_t flags(const firnbook::Concern& concern, std::uint32_t from);
  void flag_list(const firnbook::Concern& concern, std::uint32_t from, std::uint32_t to, Verdict verdict,
                 std::string_view intro);
  void not_loaded();
  void suggestions();
  void also_noticed();
  void own_words();
  void quoted(std::string_view mark, const flatbuffers::String* words);
  void checks();
  void caution(std::string_view mark, const firnbook::Caution& caution);
  void all_cautions();
  void methods();
  void parameters();
  void record();

  Page page_;
  std::string& out_;
  const firnbook::Pit& pit_;
  const Report& report_;
  std::string line_;
  std::uint32_t numbered_ = 0;
};

void Writer::where_and_when() {
  const std::string_view title = pit::text(pit_.title());
  page_.paragraph(title.empty() ? std::string_view{"Pit without a name"} : title);
  line_.clear();
  line_ += "Dug ";
  const std::size_t before = line_.size();
  if (pit_.time() != nullptr) append_moment(line_, &pit_.time()->begin());
  if (line_.size() == before) line_ += "at a time that was not recorded";
  bool first = true;
  for (std::uint32_t i = 0; i < pit::size_of(pit_.observers()); ++i) {
    const std::string_view name = pit::text(pit_.observers()->Get(i)->name());
    if (name.empty()) continue;
    line_ += first ? " by " : ", ";
    line_.append(name);
    first = false;
  }
  line_ += '.';
  page_.paragraph(line_);
  line_.clear();
  append_site(line_, pit_.site());
  if (pit_.snowpack() != nullptr && pit_.snowpack()->hs_10um()) {
    line_ += line_.empty() ? "HS " : ", HS ";
    append_cm(line_, *pit_.snowpack()->hs_10um());
    line_ += " cm";
  }
  if (!line_.empty()) page_.paragraph(line_);
  page_.paragraph("One pit, at that place, at that hour. Depths are in cm below the snow surface.");
}

void Writer::signs() {
  page_.heading("SIGNS OF INSTABILITY (they come before any test)");
  bool any = false;
  for (std::uint32_t i = 0; i < finding_count(); ++i) {
    if (finding(i).method() != Method::field_signs) continue;
    any = true;
    line_.clear();
    append_finding(line_, pit_, finding(i));
    page_.item(0, finding(i).verdict() == Verdict::raises ? "! " : "- ", line_);
  }
  if (!any) page_.item(0, "- ", "none was recorded, as seen or as looked for");
}

void Writer::caution(std::string_view mark, const firnbook::Caution& caution) {
  const std::string_view words = caution_words(caution.key());
  if (words.empty()) return;
  line_.clear();
  append_template(line_, words, {0, caution.a(), caution.b(), 0});
  page_.item(0, mark, line_);
}

void Writer::first_cautions() {
  std::size_t printed = 0;
  for (std::uint32_t i = 0; i < pit::size_of(report_.cautions()) && printed < kCautionsFirst; ++i) {
    const firnbook::Caution* one = report_.cautions()->Get(i);
    if (one->specific() == 0) continue;
    if (printed == 0) page_.heading("ABOUT THIS PIT, FIRST");
    caution("! ", *one);
    ++printed;
  }
}

// " at 17 cm", " 68 to 69 cm", or nothing where the depth cannot be told.
void Writer::append_span(const firnbook::Concern& concern) {
  if (!concern.top_10um() || *concern.top_10um() < 0) return;
  const bool thick = concern.bottom_10um() && *concern.bottom_10um() > *concern.top_10um();
  line_ += thick ? " " : " at ";
  append_cm(line_, *concern.top_10um());
  if (thick) {
    line_ += " to ";
    append_cm(line_, *concern.bottom_10um());
  }
  line_ += " cm";
}

void Writer::append_depth_only(const firnbook::Concern& concern) {
  if (!concern.top_10um() || *concern.top_10um() < 0) {
    line_ += "At a depth that cannot be told";
    return;
  }
  line_ += "No layer was recorded";
  append_span(concern);
}

// What the rank does not say already: tests that look opposed, and what lies deeper than a rider reaches.
void Writer::append_reading(const firnbook::Concern& concern) {
  using firnbook::ConcernReading;
  const ConcernReading reading = concern.reading() ? *concern.reading() : ConcernReading::none;
  if (reading != ConcernReading::starts_and_runs && reading != ConcernReading::not_tested &&
      !reading_words(reading).empty()) {
    line_ += ' ';
    append_sentence(line_, reading_words(reading));
  }
  if (!concern.reach() || *concern.reach() != firnbook::ConcernReach::large_load_or_thin_slab) return;
  line_ += ' ';
  append_sentence(line_, reach_words(*concern.reach()));
}

// Numbered as in the picture; a break that says little either way has no number.
void Writer::concern_title(const firnbook::Concern& concern) {
  std::string mark = "-  ";
  if (!concern.rank() || *concern.rank() != firnbook::ConcernRank::little) {
    mark.clear();
    append_integer(mark, ++numbered_);
    mark += ". ";
  }
  line_.clear();
  const auto kind = concern.kind() ? *concern.kind() : firnbook::ConcernKind::depth_only;
  const std::int32_t layer = concern.layer() ? *concern.layer() : -1;
  const std::int32_t below = concern.layer_below() ? *concern.layer_below() : -1;
  if (kind == firnbook::ConcernKind::layer) {
    line_ += "Layer";
    append_span(concern);
    line_ += ": ";
    append_layer(line_, pit_, layer);
  } else if (kind == firnbook::ConcernKind::boundary) {
    line_ += "Boundary";
    append_span(concern);
    line_ += ": ";
    append_layer(line_, pit_, layer);
    line_ += "; on ";
    append_layer(line_, pit_, below);
  } else {
    append_depth_only(concern);
  }
  line_ += '.';
  if (concern.rank() && !rank_words(*concern.rank()).empty()) {
    line_ += ' ';
    append_sentence(line_, rank_words(*concern.rank()));
  }
  append_reading(concern);
  page_.item(0, mark, line_);
}

void Writer::flag_list(const firnbook::Concern& concern, std::uint32_t from, std::uint32_t to,
                       Verdict verdict, std::string_view intro) {
  bool first = true;
  for (std::uint32_t k = from; k < to; ++k) {
    const Finding& one = finding(concern.evidence()->Get(k));
    if (one.verdict() != verdict || one.key() == FindingKey::flag_count) continue;
    line_.append(first ? intro : std::string_view{"; "});
    first = false;
    if (verdict == Verdict::unknown) {
      line_.append(finding_name(one.key()));
    } else {
      append_template(line_, finding_words(one.key()), {one.depth_10um(), one.a(), one.b(), one.c()});
    }
  }
  if (!first) line_ += '.';
  if (!first && verdict == Verdict::not_met) line_ += " A flag not met takes nothing away from the rest.";
}

// Evidence lists can be shared by many concerns of a hostile report; no real one is longer than this.
std::uint32_t Writer::evidence_count(const firnbook::Concern& concern) const {
  constexpr std::uint32_t kMost = 256;
  const std::uint32_t count = pit::size_of(concern.evidence());
  return count < kMost ? count : kMost;
}

// All yellow flags of one boundary as one paragraph. Returns where the next evidence starts.
std::uint32_t Writer::flags(const firnbook::Concern& concern, std::uint32_t from) {
  const std::uint32_t count = evidence_count(concern);
  const std::int32_t depth = finding(concern.evidence()->Get(from)).depth_10um();
  std::uint32_t to = from;
  line_ = "yellow flags at ";
  append_cm(line_, depth);
  line_ += " cm: ";
  while (to < count && concern.evidence()->Get(to) < finding_count()) {
    const Finding& one = finding(concern.evidence()->Get(to));
    if (one.method() != Method::yellow_flags || one.depth_10um() != depth) break;
    if (one.key() == FindingKey::flag_count) {
      append_template(line_, finding_words(one.key()), {depth, one.a(), one.b(), one.c()});
    }
    ++to;
  }
  line_ += '.';
  flag_list(concern, from, to, Verdict::raises, " Met: ");
  flag_list(concern, from, to, Verdict::not_met, " Not met: ");
  flag_list(concern, from, to, Verdict::unknown, " Not recorded: ");
  return to;
}

std::string_view question(Method method) {
  switch (method) {
    case Method::extended_column_swiss:
    case Method::extended_column_schemes:
    case Method::extended_column_early:
    case Method::saw_test:
      return "does it run?   ";
    case Method::compression_test:
    case Method::deep_tap_test:
    case Method::shear_quality:
    case Method::rutschblock_swiss:
    case Method::shear_tests:
    case Method::unclassed_tests:
      return "does it start? ";
    default:
      return "structure      ";
  }
}

bool is_scheme(Method method) {
  return method == Method::threshold_sum || method == Method::lemons || method == Method::weak_layer_build ||
         method == Method::skier_stability || method == Method::critical_crack_length;
}

// Numbers that other findings rest on: for whoever reads the report's bytes.
bool is_groundwork(Method method) {
  return method == Method::density_estimate || method == Method::slab_stress ||
         method == Method::strength_estimate;
}

void Writer::concern(std::uint32_t index) {
  const firnbook::Concern& one = *report_.concerns()->Get(index);
  concern_title(one);
  const std::uint32_t count = evidence_count(one);
  std::uint32_t k = 0;
  while (k < count) {
    const std::uint32_t position = one.evidence()->Get(k);
    if (position >= finding_count()) {
      ++k;
      continue;
    }
    const Method method = finding(position).method();
    if (method == Method::yellow_flags) {
      k = flags(one, k);
    } else {
      line_.clear();
      append_finding(line_, pit_, finding(position));
      ++k;
    }
    // Schemes of structure are short and stand side by side on one line.
    while (is_scheme(method) && k < count && one.evidence()->Get(k) < finding_count() &&
           is_scheme(finding(one.evidence()->Get(k)).method())) {
      line_ += "; ";
      append_finding(line_, pit_, finding(one.evidence()->Get(k++)));
    }
    page_.item(3, question(method), line_);
  }
}

void Writer::concerns() {
  page_.heading("LAYERS OF CONCERN (first things first)");
  const std::uint32_t count = pit::size_of(report_.concerns());
  if (count == 0) {
    page_.item(
        0, "- ",
        "Nothing in this record raised concern under the methods listed below. That says little: what was "
        "not found, not tested or not looked for may still be there.");
  }
  for (std::uint32_t i = 0; i < count; ++i) concern(i);
}

void Writer::not_loaded() {
  const std::uint32_t count = pit::size_of(report_.not_loaded());
  if (count == 0) return;
  page_.heading("WHAT THE TESTS DID NOT LOAD");
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::NotLoaded& one = *report_.not_loaded()->Get(i);
    line_.clear();
    append_cm(line_, one.depth_10um());
    line_ += " cm was not loaded by ";
    const std::string_view code = code_of(one.kind());
    line_.append(code.empty() ? std::string_view{"a test"} : code);
    line_ += ": ";
    line_.append(not_loaded_words(one.reason()));
    page_.item(0, "- ", line_);
  }
}

void Writer::suggestions() {
  const std::uint32_t count = pit::size_of(report_.suggestions());
  if (count == 0) return;
  page_.heading("WHAT WOULD TELL MORE");
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::Suggestion& one = *report_.suggestions()->Get(i);
    line_.clear();
    append_template(line_, suggestion_words(one.step()), {one.depth_10um(), 0, 0, 0});
    page_.item(0, "- ", line_);
  }
}

void Writer::also_noticed() {
  std::vector<bool> used(finding_count(), false);
  for (std::uint32_t i = 0; i < pit::size_of(report_.concerns()); ++i) {
    const firnbook::Concern& one = *report_.concerns()->Get(i);
    for (std::uint32_t k = 0; k < evidence_count(one); ++k) {
      if (one.evidence()->Get(k) < finding_count()) used[one.evidence()->Get(k)] = true;
    }
  }
  bool first = true;
  for (std::uint32_t i = 0; i < finding_count(); ++i) {
    const Finding& one = finding(i);
    // Single flags without a concern and gentle gradients would bury what matters.
    const bool minor = one.method() == Method::yellow_flags || one.key() == FindingKey::gradient_weak ||
                       one.verdict() == Verdict::not_met || is_scheme(one.method()) ||
                       is_groundwork(one.method()) || one.key() == FindingKey::slab_load;
    if (used[i] || one.method() == Method::field_signs || minor) continue;
    if (first) page_.heading("ALSO NOTICED");
    first = false;
    line_.clear();
    append_finding(line_, pit_, one);
    page_.item(0, "- ", line_);
  }
}

void Writer::quoted(std::string_view mark, const flatbuffers::String* words) {
  if (pit::size_of(words) == 0) return;
  line_ = "\"";
  line_.append(pit::text(words));
  line_ += '"';
  page_.item(0, mark, line_);
}

void Writer::own_words() {
  const firnbook::Assessment* own = pit_.assessment();
  if (own == nullptr) return;
  page_.heading("THE OBSERVERS' OWN READING (theirs, not computed)");
  quoted("- ", own->words());
  quoted("- plan: ", own->plan());
  if (own->confidence()) {
    line_ = "confidence: ";
    line_.append(label_of(*own->confidence()));
    page_.item(0, "- ", line_);
  }
}

std::string_view severity_words(firnbook::Severity severity) {
  switch (severity) {
    case firnbook::Severity::error:
      return "error: ";
    case firnbook::Severity::warning:
      return "warning: ";
    default:
      return "hint: ";
  }
}

void Writer::checks() {
  const std::uint32_t count = pit::size_of(report_.checks());
  if (count == 0) return;
  page_.heading("CHECKS ON THE RECORD");
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::Check& one = *report_.checks()->Get(i);
    line_.clear();
    line_.append(severity_words(one.severity()));
    line_ += path_of(one.place());
    line_ += ": ";
    checking::append_message(line_, one);
    line_ += ". ";
    std::string remedy;
    checking::append_remedy(remedy, one);
    append_sentence(line_, remedy);
    page_.item(0, "- ", line_);
  }
}

void Writer::all_cautions() {
  page_.heading("ALL CAUTIONS");
  for (std::uint32_t i = 0; i < pit::size_of(report_.cautions()); ++i)
    caution("- ", *report_.cautions()->Get(i));
}

void Writer::methods() {
  page_.heading("METHODS AND THEIR SOURCES");
  for (std::uint32_t i = 0; i < pit::size_of(report_.methods()); ++i) {
    const firnbook::MethodUsed& one = *report_.methods()->Get(i);
    line_.clear();
    line_.append(method_words(one.method()));
    line_ += "; ";
    line_.append(verified_words(one.verified()));
    page_.item(0, "- ", line_);
  }
}

void Writer::parameters() {
  const std::uint32_t count = pit::size_of(report_.parameters_changed());
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::ParameterChanged& one = *report_.parameters_changed()->Get(i);
    line_ = "changed for this report: ";
    const char* name = firnbook::EnumNameParameterKey(one.key());
    line_ += *name == '\0' ? "a parameter of a newer version" : name;
    line_ += " is ";
    append_integer(line_, one.value());
    line_ += " instead of ";
    append_integer(line_, one.default_value());
    page_.item(0, "! ", line_);
  }
}

void Writer::record() {
  page_.heading("THE RECORD");
  std::vector<firnbook::Place> lost;
  notation::write_notes(out_, pit_, lost);
  for (const firnbook::Place& place : lost) {
    line_ = "not shown here: ";
    line_ += path_of(place);
    page_.item(0, "# ", line_);
  }
}

}  // namespace

void append_note(std::string& out, const pit::View& pit, const firnbook::Report& report) {
  Writer(out, pit, report).write();
}

}  // namespace firn::note

#include "note/note.h"

#include <cstdint>
#include <string_view>
#include <vector>

#include "notation/notes.h"
#include "note/bulletin.h"
#include "note/page.h"
#include "note/sentences.h"
#include "note/short.h"
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

class Writer {
 public:
  Writer(std::string& out, const pit::View& view, const Report& report, Language language)
      : page_(out), out_(out), view_(view), pit_(view.raw()), report_(report), language_(language) {}

  void write() {
    where_and_when();
    signs();
    first_cautions();
    concerns();
    not_loaded();
    suggestions();
    append_bulletin(page_, view_, report_, language_);
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
  std::string_view words(Phrase key) const { return phrase(key, language_); }
  void say(Phrase key, const Numbers& numbers = {}) { append_phrase(line_, key, language_, numbers); }

  void where_and_when();
  void signs();
  void first_cautions();
  void concerns();
  void concern(std::uint32_t index);
  void concern_title(const firnbook::Concern& concern);
  void append_reading(const firnbook::Concern& concern);
  std::uint32_t evidence_count(const firnbook::Concern& concern) const;
  std::uint32_t flags(const firnbook::Concern& concern, std::uint32_t from);
  void flag_list(const firnbook::Concern& concern, std::uint32_t from, std::uint32_t to, Verdict verdict,
                 Phrase intro);
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
  const pit::View& view_;
  const firnbook::Pit& pit_;
  const Report& report_;
  Language language_;
  std::string line_;
  std::uint32_t numbered_ = 0;
};

void Writer::where_and_when() {
  const std::string_view title = pit::text(pit_.title());
  page_.paragraph(title.empty() ? words(Phrase::title_unknown) : title);
  std::string moment;
  if (pit_.time() != nullptr) append_moment(moment, &pit_.time()->begin(), language_);
  line_.clear();
  Numbers when;
  when.x = moment;
  say(moment.empty() ? Phrase::dug_sometime : Phrase::dug, when);
  bool first = true;
  for (std::uint32_t i = 0; i < pit::size_of(pit_.observers()); ++i) {
    const std::string_view name = pit::text(pit_.observers()->Get(i)->name());
    if (name.empty()) continue;
    line_.append(first ? words(Phrase::by) : std::string_view{", "});
    line_.append(name);
    first = false;
  }
  line_ += '.';
  page_.paragraph(line_);
  line_.clear();
  append_site(line_, pit_.site(), language_);
  if (pit_.snowpack() != nullptr && pit_.snowpack()->hs_10um()) {
    if (!line_.empty()) line_ += ", ";
    append_template(line_, "HS {a:cm} cm", {0, *pit_.snowpack()->hs_10um()}, language_);
  }
  if (!line_.empty()) page_.paragraph(line_);
  page_.paragraph(words(Phrase::one_pit));
}

void Writer::signs() {
  page_.heading(words(Phrase::heading_signs));
  bool any = false;
  for (std::uint32_t i = 0; i < finding_count(); ++i) {
    if (finding(i).method() != Method::field_signs) continue;
    any = true;
    line_.clear();
    append_finding(line_, pit_, finding(i), language_);
    page_.item(0, finding(i).verdict() == Verdict::raises ? "! " : "- ", line_);
  }
  if (!any) page_.item(0, "- ", words(Phrase::no_signs));
}

void Writer::caution(std::string_view mark, const firnbook::Caution& caution) {
  const std::string_view sentence = caution_words(caution.key(), language_);
  if (sentence.empty()) return;
  line_.clear();
  append_template(line_, sentence, {0, caution.a(), caution.b()}, language_);
  page_.item(0, mark, line_);
}

void Writer::first_cautions() {
  std::size_t printed = 0;
  for (std::uint32_t i = 0; i < pit::size_of(report_.cautions()) && printed < kCautionsFirst; ++i) {
    const firnbook::Caution* one = report_.cautions()->Get(i);
    if (one->specific() == 0) continue;
    if (printed == 0) page_.heading(words(Phrase::heading_first));
    caution("! ", *one);
    ++printed;
  }
}

// What the rank does not say already: tests that look opposed, and what lies deeper than a rider reaches.
void Writer::append_reading(const firnbook::Concern& concern) {
  using firnbook::ConcernReading;
  const ConcernReading reading = concern.reading().value_or(ConcernReading::none);
  const std::string_view read = reading_words(reading, language_);
  if (reading != ConcernReading::starts_and_runs && reading != ConcernReading::not_tested && !read.empty()) {
    line_ += ' ';
    append_sentence(line_, read);
  }
  if (!concern.reach() || *concern.reach() != firnbook::ConcernReach::large_load_or_thin_slab) return;
  line_ += ' ';
  append_sentence(line_, reach_words(*concern.reach(), language_));
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
  append_concern(line_, pit_, concern, language_);
  append_reading(concern);
  page_.item(0, mark, line_);
}

void Writer::flag_list(const firnbook::Concern& concern, std::uint32_t from, std::uint32_t to,
                       Verdict verdict, Phrase intro) {
  bool first = true;
  for (std::uint32_t k = from; k < to; ++k) {
    const Finding& one = finding(concern.evidence()->Get(k));
    if (one.verdict() != verdict || one.key() == FindingKey::flag_count) continue;
    line_.append(words(first ? intro : Phrase::semicolon));
    first = false;
    if (verdict == Verdict::unknown) {
      line_.append(finding_name(one.key(), language_));
    } else {
      append_template(line_, finding_words(one.key(), language_),
                      {one.depth_10um(), one.a(), one.b(), one.c()}, language_);
    }
  }
  if (!first) line_ += '.';
  if (!first && verdict == Verdict::not_met) say(Phrase::flag_not_met_takes_nothing);
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
  line_.clear();
  say(Phrase::flags_at, {depth});
  while (to < count && concern.evidence()->Get(to) < finding_count()) {
    const Finding& one = finding(concern.evidence()->Get(to));
    if (one.method() != Method::yellow_flags || one.depth_10um() != depth) break;
    if (one.key() == FindingKey::flag_count) {
      append_template(line_, finding_words(one.key(), language_), {depth, one.a(), one.b(), one.c()},
                      language_);
    }
    ++to;
  }
  line_ += '.';
  flag_list(concern, from, to, Verdict::raises, Phrase::flags_met);
  flag_list(concern, from, to, Verdict::not_met, Phrase::flags_not_met);
  flag_list(concern, from, to, Verdict::unknown, Phrase::flags_unknown);
  return to;
}

Phrase question(Method method) {
  switch (method) {
    case Method::extended_column_swiss:
    case Method::extended_column_schemes:
    case Method::extended_column_early:
    case Method::saw_test:
      return Phrase::does_it_run;
    case Method::compression_test:
    case Method::deep_tap_test:
    case Method::shear_quality:
    case Method::rutschblock_swiss:
    case Method::shear_tests:
    case Method::unclassed_tests:
      return Phrase::does_it_start;
    default:
      return Phrase::structure;
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
      append_finding(line_, pit_, finding(position), language_);
      ++k;
    }
    // Schemes of structure are short and stand side by side on one line.
    while (is_scheme(method) && k < count && one.evidence()->Get(k) < finding_count() &&
           is_scheme(finding(one.evidence()->Get(k)).method())) {
      say(Phrase::semicolon);
      append_finding(line_, pit_, finding(one.evidence()->Get(k++)), language_);
    }
    page_.item(3, words(question(method)), line_);
  }
}

void Writer::concerns() {
  page_.heading(words(Phrase::heading_concerns));
  const std::uint32_t count = pit::size_of(report_.concerns());
  if (count == 0) page_.item(0, "- ", words(Phrase::no_concerns));
  for (std::uint32_t i = 0; i < count; ++i) concern(i);
}

void Writer::not_loaded() {
  const std::uint32_t count = pit::size_of(report_.not_loaded());
  if (count == 0) return;
  page_.heading(words(Phrase::heading_not_loaded));
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::NotLoaded& one = *report_.not_loaded()->Get(i);
    Numbers numbers = {one.depth_10um()};
    numbers.x = code_of(one.kind());
    if (numbers.x.empty()) numbers.x = words(Phrase::unknown_test);
    numbers.y = not_loaded_words(one.reason(), language_);
    line_.clear();
    say(Phrase::not_loaded, numbers);
    page_.item(0, "- ", line_);
  }
}

void Writer::suggestions() {
  const std::uint32_t count = pit::size_of(report_.suggestions());
  if (count == 0) return;
  page_.heading(words(Phrase::heading_suggestions));
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::Suggestion& one = *report_.suggestions()->Get(i);
    line_.clear();
    append_template(line_, suggestion_words(one.step(), language_), {one.depth_10um()}, language_);
    // One of a newer version has no words here.
    if (line_.empty()) continue;
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
    if (first) page_.heading(words(Phrase::heading_also));
    first = false;
    line_.clear();
    append_finding(line_, pit_, one, language_);
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
  page_.heading(words(Phrase::heading_own));
  quoted("- ", own->words());
  std::string plan = "- ";
  plan.append(words(Phrase::plan));
  quoted(plan, own->plan());
  if (own->confidence()) {
    line_.clear();
    say(Phrase::confidence);
    line_.append(label_in(language_, *own->confidence()));
    page_.item(0, "- ", line_);
  }
}

Phrase severity_phrase(firnbook::Severity severity) {
  switch (severity) {
    case firnbook::Severity::error:
      return Phrase::error;
    case firnbook::Severity::warning:
      return Phrase::warning;
    default:
      return Phrase::hint;
  }
}

void Writer::checks() {
  const std::uint32_t count = pit::size_of(report_.checks());
  if (count == 0) return;
  page_.heading(words(Phrase::heading_checks));
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::Check& one = *report_.checks()->Get(i);
    line_.clear();
    say(severity_phrase(one.severity()));
    line_ += path_of(one.place());
    say(Phrase::colon);
    append_check_message(line_, one, language_);
    line_ += ". ";
    std::string remedy;
    append_check_remedy(remedy, one, language_);
    append_sentence(line_, remedy);
    page_.item(0, "- ", line_);
  }
}

void Writer::all_cautions() {
  page_.heading(words(Phrase::heading_cautions));
  for (std::uint32_t i = 0; i < pit::size_of(report_.cautions()); ++i)
    caution("- ", *report_.cautions()->Get(i));
}

void Writer::methods() {
  page_.heading(words(Phrase::heading_methods));
  for (std::uint32_t i = 0; i < pit::size_of(report_.methods()); ++i) {
    const firnbook::MethodUsed& one = *report_.methods()->Get(i);
    line_.clear();
    line_.append(method_words(one.method(), language_));
    line_ += "; ";
    line_.append(verified_words(one.verified(), language_));
    page_.item(0, "- ", line_);
  }
}

void Writer::parameters() {
  const std::uint32_t count = pit::size_of(report_.parameters_changed());
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::ParameterChanged& one = *report_.parameters_changed()->Get(i);
    Numbers numbers = {0, one.value(), one.default_value()};
    numbers.x = firnbook::EnumNameParameterKey(one.key());
    if (numbers.x.empty()) numbers.x = words(Phrase::unknown_parameter);
    line_.clear();
    say(Phrase::parameter_changed, numbers);
    page_.item(0, "! ", line_);
  }
}

void Writer::record() {
  page_.heading(words(Phrase::heading_record));
  std::vector<firnbook::Place> lost;
  notation::write_notes(out_, pit_, lost);
  for (const firnbook::Place& place : lost) {
    line_.clear();
    say(Phrase::not_shown);
    line_ += path_of(place);
    page_.item(0, "# ", line_);
  }
}

}  // namespace

void append_note(std::string& out, const pit::View& pit, const firnbook::Report& report, Language language) {
  Writer(out, pit, report, language).write();
}

void append_text(std::string& out, const pit::View& pit, const firnbook::Report& report, Language language,
                 Length length) {
  switch (length) {
    case Length::one_line:
      return append_line(out, pit, report, language);
    case Length::briefing:
      return append_briefing(out, pit, report, language);
    case Length::short_note:
      return append_short_note(out, pit, report, language);
    default:
      return append_note(out, pit, report, language);
  }
}

}  // namespace firn::note

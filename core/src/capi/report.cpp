// Read views into a report: fixed structs out, nothing computed.
#include <limits>

#include "capi/inputs.h"
#include "capi/languages.h"
#include "capi/outputs.h"
#include "capi/report.h"
#include "capi/structs.h"
#include "firnbook/interpret.h"
#include "note/sentences.h"
#include "note/words.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

firn_place place_of(const firnbook::Place& place) {
  return {place.index(), place.sub(), place.field(), static_cast<std::uint8_t>(place.thing()), 0};
}

// -1 stands for "no depth" in a report's structs.
std::int32_t depth_or_unknown(std::int32_t depth_10um) {
  return depth_10um == -1 ? FIRN_UNKNOWN : depth_10um;
}

template <class V>
std::uint32_t count_of(const V* vector) {
  return pit::size_of(vector);
}

firn_report_summary summary_of(const firnbook::Report& report) {
  firn_report_summary out = {};
  out.pit_crc32 = report.pit_crc32();
  out.check_count = count_of(report.checks());
  out.finding_count = count_of(report.findings());
  out.concern_count = count_of(report.concerns());
  out.not_loaded_count = count_of(report.not_loaded());
  out.suggestion_count = count_of(report.suggestions());
  out.caution_count = count_of(report.cautions());
  out.method_count = count_of(report.methods());
  out.loaded_count = count_of(report.loaded());
  out.schema_minor = report.schema_minor();
  out.tolerance_10um = report.tolerance_10um().value_or(FIRN_UNKNOWN);
  out.parameter_count = count_of(report.parameters_changed());
  return out;
}

firn_check_entry entry_of(const firnbook::Check& check) {
  firn_check_entry out = {};
  out.place = place_of(check.place());
  out.a = check.a();
  out.b = check.b();
  out.c = check.c();
  out.code = static_cast<std::uint16_t>(check.code());
  out.severity = static_cast<std::uint8_t>(check.severity());
  return out;
}

firn_finding finding_of(const firnbook::Finding& finding) {
  firn_finding out = {};
  out.subject = place_of(finding.subject());
  out.depth_10um = depth_or_unknown(finding.depth_10um());
  out.a = finding.a();
  out.b = finding.b();
  out.c = finding.c();
  out.key = static_cast<std::uint16_t>(finding.key());
  out.method = static_cast<std::uint8_t>(finding.method());
  out.verdict = static_cast<std::uint8_t>(finding.verdict());
  return out;
}

firn_concern concern_of(const firnbook::Concern& concern) {
  firn_concern out = {};
  out.layer = concern.layer().value_or(-1);
  out.layer_below = concern.layer_below().value_or(-1);
  out.weaker_layer = concern.weaker_layer().value_or(-1);
  out.top_10um = concern.top_10um().value_or(FIRN_UNKNOWN);
  out.bottom_10um = concern.bottom_10um().value_or(FIRN_UNKNOWN);
  out.evidence_count = count_of(concern.evidence());
  out.kind = pit::number(concern.kind());
  out.rank = pit::number(concern.rank());
  out.reading = pit::number(concern.reading());
  out.reach = pit::number(concern.reach());
  return out;
}

firn_loaded_by loaded_of(const firnbook::LoadedBy& entry) {
  firn_loaded_by out = {};
  out.concern = entry.concern();
  out.test = entry.test();
  out.test_kind = static_cast<std::uint8_t>(entry.kind());
  return out;
}

firn_not_loaded not_loaded_of(const firnbook::NotLoaded& entry) {
  firn_not_loaded out = {};
  out.concern = entry.concern();
  out.test = entry.test();
  out.depth_10um = depth_or_unknown(entry.depth_10um());
  out.test_kind = static_cast<std::uint8_t>(entry.kind());
  out.reason = static_cast<std::uint8_t>(entry.reason());
  return out;
}

firn_suggestion suggestion_of(const firnbook::Suggestion& suggestion) {
  firn_suggestion out = {};
  out.concern = suggestion.concern();
  out.depth_10um = depth_or_unknown(suggestion.depth_10um());
  out.step = static_cast<std::uint16_t>(suggestion.step());
  return out;
}

firn_caution caution_of(const firnbook::Caution& caution) {
  firn_caution out = {};
  out.place = place_of(caution.place());
  out.a = caution.a();
  out.b = caution.b();
  out.key = static_cast<std::uint16_t>(caution.key());
  out.specific = caution.specific();
  return out;
}

Done open(firn_context& context, const std::uint8_t* bytes, std::size_t size, firn_report** report) {
  Result<const firnbook::Report*> read = read_report(context, bytes, size);
  if (!read) return read.failure();
  firn_report* made = context.memory.make<firn_report>(context);
  made->bytes = static_cast<std::uint8_t*>(context.memory.allocate(size));
  if (made->bytes == nullptr) {
    context.memory.destroy(made);
    throw std::bad_alloc();
  }
  std::memcpy(made->bytes, bytes, size);
  made->root = firnbook::GetReport(made->bytes);
  *report = made;
  return done();
}

Done append_finding_text(const firn_report& report, const firnbook::Finding& finding, const uint8_t* pit,
                         size_t pit_size, std::string& text) {
  Result<const firnbook::Pit*> read = read_pit(*report.context, pit, pit_size);
  if (!read) return read.failure();
  Done same = check_same_pit(*report.root, pit, pit_size);
  if (!same) return same;
  note::append_finding(text, **read, finding, report.language);
  return done();
}

// The context's working text, empty.
std::string& clean_text(const firn_report& report) {
  report.context->work.text.clear();
  return report.context->work.text;
}

}  // namespace
}  // namespace firn::capi

firn_status firn_report_open(firn_context* context, const uint8_t* bytes, size_t size, firn_report** report,
                             firn_error* error) {
  return guard(Call(context, error, __func__).emptying(report), [&]() -> firn::Done {
    if (report == nullptr) return null_argument("report");
    return open(*context, bytes, size, report);
  });
}

void firn_report_close(firn_report* report) {
  give_back([&] {
    if (report != nullptr) report->context->memory.destroy(report);
  });
}

firn_status firn_report_set_language(firn_report* report, uint8_t language, firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    firn::Result<firn::note::Language> known = language_of(language);
    if (!known) return known.failure();
    report->language = *known;
    return firn::done();
  });
}

firn_status firn_report_summarise(const firn_report* report, firn_report_summary* out, firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    return write_struct(out, summary_of(*report->root),
                        FIRN_FIRST_VERSION(firn_report_summary, tolerance_10um), "firn_report_summary");
  });
}

firn_status firn_report_check(const firn_report* report, uint32_t position, firn_check_entry* out,
                              firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto entry = at(report->root->checks(), position, "check");
    if (!entry) return entry.failure();
    return write_struct(out, entry_of(**entry), FIRN_FIRST_VERSION(firn_check_entry, reserved),
                        "firn_check_entry");
  });
}

firn_status firn_report_finding(const firn_report* report, uint32_t position, firn_finding* out,
                                firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto finding = at(report->root->findings(), position, "finding");
    if (!finding) return finding.failure();
    return write_struct(out, finding_of(**finding), FIRN_FIRST_VERSION(firn_finding, verdict),
                        "firn_finding");
  });
}

firn_status firn_report_concern(const firn_report* report, uint32_t position, firn_concern* out,
                                firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto concern = at(report->root->concerns(), position, "concern");
    if (!concern) return concern.failure();
    return write_struct(out, concern_of(**concern), FIRN_FIRST_VERSION(firn_concern, reach), "firn_concern");
  });
}

firn_status firn_report_evidence(const firn_report* report, uint32_t concern, uint32_t nth, uint32_t* finding,
                                 firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    if (finding == nullptr) return null_argument("finding");
    auto found = at(report->root->concerns(), concern, "concern");
    if (!found) return found.failure();
    auto evidence = at((*found)->evidence(), nth, "evidence");
    if (!evidence) return evidence.failure();
    *finding = *evidence;
    return firn::done();
  });
}

firn_status firn_report_loaded_by(const firn_report* report, uint32_t position, firn_loaded_by* out,
                                  firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto entry = at(report->root->loaded(), position, "test that loaded a concern");
    if (!entry) return entry.failure();
    return write_struct(out, loaded_of(**entry), FIRN_FIRST_VERSION(firn_loaded_by, reserved),
                        "firn_loaded_by");
  });
}

firn_status firn_report_not_loaded(const firn_report* report, uint32_t position, firn_not_loaded* out,
                                   firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto entry = at(report->root->not_loaded(), position, "layer that was not loaded");
    if (!entry) return entry.failure();
    return write_struct(out, not_loaded_of(**entry), FIRN_FIRST_VERSION(firn_not_loaded, reserved),
                        "firn_not_loaded");
  });
}

firn_status firn_report_suggestion(const firn_report* report, uint32_t position, firn_suggestion* out,
                                   firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto suggestion = at(report->root->suggestions(), position, "suggestion");
    if (!suggestion) return suggestion.failure();
    return write_struct(out, suggestion_of(**suggestion), FIRN_FIRST_VERSION(firn_suggestion, reserved),
                        "firn_suggestion");
  });
}

firn_status firn_report_caution(const firn_report* report, uint32_t position, firn_caution* out,
                                firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto caution = at(report->root->cautions(), position, "caution");
    if (!caution) return caution.failure();
    return write_struct(out, caution_of(**caution), FIRN_FIRST_VERSION(firn_caution, reserved),
                        "firn_caution");
  });
}

firn_status firn_report_method(const firn_report* report, uint32_t position, firn_method_used* out,
                               firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto used = at(report->root->methods(), position, "method");
    if (!used) return used.failure();
    firn_method_used method = {};
    method.method = static_cast<std::uint8_t>((*used)->method());
    method.verified = static_cast<std::uint8_t>((*used)->verified());
    return write_struct(out, method, FIRN_FIRST_VERSION(firn_method_used, reserved), "firn_method_used");
  });
}

firn_status firn_report_parameter(const firn_report* report, uint32_t position, firn_parameter* out,
                                  int32_t* default_value, firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    if (out == nullptr) return null_argument("out");
    auto changed = at(report->root->parameters_changed(), position, "parameter");
    if (!changed) return changed.failure();
    *out = {static_cast<std::uint16_t>((*changed)->key()), 0, (*changed)->value()};
    if (default_value != nullptr) *default_value = (*changed)->default_value();
    return firn::done();
  });
}

firn_status firn_report_check_text(const firn_report* report, uint32_t position, firn_buffer* message,
                                   firn_buffer* remedy, firn_error* error) {
  return guard({context_of(report), error, __func__, {message, remedy}}, [&]() -> firn::Done {
    if (message == nullptr) return null_argument("message");
    auto entry = at(report->root->checks(), position, "check");
    if (!entry) return entry.failure();
    std::string& text = clean_text(*report);
    Staged staged_message(*report->context, message), staged_remedy(*report->context, remedy);
    firn::note::append_check_message(text, **entry, report->language);
    staged_message.fill(text);
    text.clear();
    firn::note::append_check_remedy(text, **entry, report->language);
    staged_remedy.fill(text);
    staged_message.publish();
    staged_remedy.publish();
    return firn::done();
  });
}

firn_status firn_report_finding_text(const firn_report* report, uint32_t position, const uint8_t* pit,
                                     size_t pit_size, firn_buffer* text, firn_error* error) {
  return guard({context_of(report), error, __func__, {text}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    auto finding = at(report->root->findings(), position, "finding");
    if (!finding) return finding.failure();
    std::string& words = clean_text(*report);
    firn::Done told = append_finding_text(*report, **finding, pit, pit_size, words);
    if (!told) return told;
    give(*report->context, text, words);
    return firn::done();
  });
}

firn_status firn_report_not_loaded_text(const firn_report* report, uint32_t position, firn_buffer* text,
                                        firn_error* error) {
  return guard({context_of(report), error, __func__, {text}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    auto entry = at(report->root->not_loaded(), position, "layer that was not loaded");
    if (!entry) return entry.failure();
    std::string& words = clean_text(*report);
    firn::note::append_template(words, firn::note::not_loaded_words((*entry)->reason(), report->language),
                                {(*entry)->depth_10um()}, report->language);
    give(*report->context, text, words);
    return firn::done();
  });
}

firn_status firn_report_suggestion_text(const firn_report* report, uint32_t position, firn_buffer* text,
                                        firn_error* error) {
  return guard({context_of(report), error, __func__, {text}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    auto suggestion = at(report->root->suggestions(), position, "suggestion");
    if (!suggestion) return suggestion.failure();
    std::string& words = clean_text(*report);
    firn::note::append_template(words, firn::note::suggestion_words((*suggestion)->step(), report->language),
                                {(*suggestion)->depth_10um()}, report->language);
    give(*report->context, text, words);
    return firn::done();
  });
}

firn_status firn_report_caution_text(const firn_report* report, uint32_t position, firn_buffer* text,
                                     firn_error* error) {
  return guard({context_of(report), error, __func__, {text}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    auto caution = at(report->root->cautions(), position, "caution");
    if (!caution) return caution.failure();
    std::string& words = clean_text(*report);
    firn::note::append_template(words, firn::note::caution_words((*caution)->key(), report->language),
                                {0, (*caution)->a(), (*caution)->b()}, report->language);
    give(*report->context, text, words);
    return firn::done();
  });
}

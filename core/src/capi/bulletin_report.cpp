// Read views into what a report says about the bulletin: fixed structs out, nothing computed.
#include "capi/report.h"
#include "capi/structs.h"
#include "firnbook/bulletin.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

firn_moment moment_of(const firnbook::Moment& moment) {
  return {moment.local_s(), moment.offset_min(), static_cast<std::uint8_t>(moment.precision()),
          moment.offset_known(), 0};
}

const char* text_of(const flatbuffers::String* text) {
  return text == nullptr ? nullptr : text->c_str();
}

std::uint32_t position(std::int32_t index) {
  return index < 0 ? 0 : static_cast<std::uint32_t>(index);
}

template <class E>
std::uint8_t number(E value) {
  return static_cast<std::uint8_t>(value);
}

firn_bulletin_comparison comparison_of(const firnbook::BulletinComparison* comparison) {
  firn_bulletin_comparison out = {};
  out.bulletin = -1;
  if (comparison == nullptr) return out;
  out.bulletin_crc32 = comparison->bulletin_crc32();
  out.bulletin = comparison->bulletin().value_or(-1);
  out.treeline_m = comparison->treeline_m().value_or(0);
  out.rating_count = pit::size_of(comparison->ratings());
  out.problem_count = pit::size_of(comparison->problems());
  out.unlisted_count = pit::size_of(comparison->unlisted());
  out.evidence_count = pit::size_of(comparison->evidence());
  out.match = pit::number(comparison->match());
  out.region_from = pit::number(comparison->region_from());
  out.state = pit::number(comparison->state());
  if (comparison->published() != nullptr) out.published = moment_of(*comparison->published());
  if (comparison->valid() != nullptr)
    out.valid = {moment_of(comparison->valid()->begin()), moment_of(comparison->valid()->end())};
  out.bulletin_id = text_of(comparison->bulletin_id());
  out.source = text_of(comparison->source());
  out.region_id = text_of(comparison->region_id());
  out.region_name = text_of(comparison->region_name());
  out.highlights = text_of(comparison->highlights());
  return out;
}

firn_rating_match rating_of(const firnbook::RatingMatch& match) {
  firn_rating_match out = {};
  out.rating = match.rating();
  out.level = match.level();
  out.elevation = number(match.elevation());
  out.aspects = number(match.aspects());
  out.period = number(match.period());
  out.day_period = match.day_period();
  out.covers = number(match.covers());
  return out;
}

firn_problem_match problem_of(const firnbook::ProblemMatch& match) {
  firn_problem_match out = {};
  out.problem = match.problem();
  out.first_evidence = position(match.first_evidence());
  out.evidence_count = position(match.evidence_count());
  out.type = match.type();
  out.kind = number(match.kind());
  out.level = match.level();
  out.elevation = number(match.elevation());
  out.aspects = number(match.aspects());
  out.period = number(match.period());
  out.day_period = match.day_period();
  out.place = number(match.place());
  out.answer = number(match.answer());
  out.limit = number(match.limit());
  out.size_tenths = match.size_tenths();
  return out;
}

firn_unlisted unlisted_of(const firnbook::Unlisted& unlisted) {
  firn_unlisted out = {};
  out.first_evidence = position(unlisted.first_evidence());
  out.evidence_count = position(unlisted.evidence_count());
  out.kind = number(unlisted.kind());
  out.listed_elsewhere = unlisted.listed_elsewhere();
  return out;
}

firn_bulletin_evidence evidence_of(const firnbook::BulletinEvidence& evidence) {
  firn_bulletin_evidence out = {};
  out.index = evidence.index();
  out.kind = number(evidence.kind());
  return out;
}

// The list of the comparison, or none.
template <class V>
const V* list_of(const firn_report& report, const V* (firnbook::BulletinComparison::*list)() const) {
  return report.root->bulletin() == nullptr ? nullptr : (report.root->bulletin()->*list)();
}

}  // namespace
}  // namespace firn::capi

firn_status firn_report_bulletin(const firn_report* report, firn_bulletin_comparison* out,
                                 firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    return write_struct(out, comparison_of(report->root->bulletin()),
                        FIRN_FIRST_VERSION(firn_bulletin_comparison, highlights), "firn_bulletin_comparison");
  });
}

firn_status firn_report_bulletin_rating(const firn_report* report, uint32_t position, firn_rating_match* out,
                                        firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto match = at(list_of(*report, &firnbook::BulletinComparison::ratings), position, "rating");
    if (!match) return match.failure();
    return write_struct(out, rating_of(**match), FIRN_FIRST_VERSION(firn_rating_match, reserved),
                        "firn_rating_match");
  });
}

firn_status firn_report_bulletin_problem(const firn_report* report, uint32_t position,
                                         firn_problem_match* out, firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto match = at(list_of(*report, &firnbook::BulletinComparison::problems), position, "problem");
    if (!match) return match.failure();
    return write_struct(out, problem_of(**match), FIRN_FIRST_VERSION(firn_problem_match, reserved),
                        "firn_problem_match");
  });
}

firn_status firn_report_bulletin_unlisted(const firn_report* report, uint32_t position, firn_unlisted* out,
                                          firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto unlisted = at(list_of(*report, &firnbook::BulletinComparison::unlisted), position, "unlisted kind");
    if (!unlisted) return unlisted.failure();
    return write_struct(out, unlisted_of(**unlisted), FIRN_FIRST_VERSION(firn_unlisted, reserved),
                        "firn_unlisted");
  });
}

firn_status firn_report_bulletin_evidence(const firn_report* report, uint32_t position,
                                          firn_bulletin_evidence* out, firn_error* error) {
  return guard({context_of(report), error, __func__}, [&]() -> firn::Done {
    auto evidence = at(list_of(*report, &firnbook::BulletinComparison::evidence), position, "evidence");
    if (!evidence) return evidence.failure();
    return write_struct(out, evidence_of(**evidence), FIRN_FIRST_VERSION(firn_bulletin_evidence, reserved),
                        "firn_bulletin_evidence");
  });
}

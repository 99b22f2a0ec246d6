#include "firnbook/compare.h"

#include "capi/inputs.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "comparison/comparison.h"
#include "support/checksum.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

constexpr std::int32_t kMostApart = 20000;

struct Bytes {
  const std::uint8_t* data;
  std::size_t size;
};

// Comparing is done now and then, so what it needs is not kept from call to call.
struct TwoPits {
  pit::AlignedBytes reference_bytes, other_bytes;
  pit::View reference, other;
};

Done decode_one(const firn_context& context, Bytes bytes, pit::AlignedBytes& aligned, pit::View& view) {
  Result<const firnbook::Pit*> read = pit::verify(bytes.data, bytes.size, context.limits.pit, aligned);
  if (!read) return read.failure();
  view.decode(**read);
  if (!comparison::is_too_large(view)) return done();
  return failure_of(FIRN_TOO_LARGE, "a pit lists more than 1000000 layers, tests, fractures or temperatures",
                    "no record is that large; its bytes may be made to harm");
}

Failure about(Failure failure, const char* which) {
  failure.what = std::string(which) + failure.what;
  return failure;
}

Done decode(const firn_context& context, Bytes reference, Bytes other, TwoPits& pits) {
  Done first = decode_one(context, reference, pits.reference_bytes, pits.reference);
  if (!first) return about(first.failure(), "reference: ");
  Done second = decode_one(context, other, pits.other_bytes, pits.other);
  if (!second) return about(second.failure(), "other: ");
  return done();
}

Done take(std::int32_t given, std::int32_t& parameter, const char* name) {
  if (given == 0) return done();
  if (given < 0 || given > kMostApart) {
    return failure_of(FIRN_BAD_ARGUMENT, std::string(name) + " is outside 1 to 20000",
                      "give a distance within it, or 0 for the default");
  }
  parameter = given;
  return done();
}

Done read_parameters(const firn_compare_options* given, comparison::Parameters& parameters) {
  Result<firn_compare_options> chosen = read_options(
      given, FIRN_FIRST_VERSION(firn_compare_options, temperature_apart_10um), "firn_compare_options");
  if (!chosen) return chosen.failure();
  Done layer = take(chosen->layer_apart_10um, parameters.layer_apart_10um, "layer_apart_10um");
  if (!layer) return layer;
  Done fracture = take(chosen->fracture_apart_10um, parameters.fracture_apart_10um, "fracture_apart_10um");
  if (!fracture) return fracture;
  return take(chosen->temperature_apart_10um, parameters.temperature_apart_10um, "temperature_apart_10um");
}

comparison::Checksums checksums_of(Bytes reference, Bytes other) {
  return {crc32(reference.data, reference.size), crc32(other.data, other.size)};
}

Result<const firnbook::PitComparison*> read_comparison(firn_context& context, Bytes bytes) {
  static constexpr pit::Schema kComparison = {
      "FIRC", "comparison", [](flatbuffers::Verifier& v) { return firnbook::VerifyPitComparisonBuffer(v); }};
  Result<const std::uint8_t*> data = pit::verify_bytes(bytes.data, bytes.size, context.limits.report,
                                                       kComparison, context.work.report_bytes);
  if (!data) return data.failure();
  return firnbook::GetPitComparison(*data);
}

}  // namespace
}  // namespace firn::capi

firn_status firn_compare(firn_context* context, const uint8_t* reference, size_t reference_size,
                         const uint8_t* other, size_t other_size, const firn_compare_options* options,
                         firn_buffer* comparison, firn_error* error) {
  return guard({context, error, __func__, {comparison}}, [&]() -> firn::Done {
    if (comparison == nullptr) return null_argument("comparison");
    firn::comparison::Parameters parameters;
    firn::Done chosen = read_parameters(options, parameters);
    if (!chosen) return chosen;
    const Bytes one = {reference, reference_size}, two = {other, other_size};
    TwoPits pits;
    firn::Done seen = decode(*context, one, two, pits);
    if (!seen) return seen;
    flatbuffers::FlatBufferBuilder& builder = context->work.builder;
    firn::comparison::compare(pits.reference, pits.other, parameters, checksums_of(one, two), builder);
    give(*context, comparison, builder.GetBufferPointer(), builder.GetSize());
    return firn::done();
  });
}

firn_status firn_comparison_note(firn_context* context, const uint8_t* comparison, size_t comparison_size,
                                 const uint8_t* reference, size_t reference_size, const uint8_t* other,
                                 size_t other_size, firn_buffer* text, firn_error* error) {
  return guard({context, error, __func__, {text}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    const Bytes one = {reference, reference_size}, two = {other, other_size};
    TwoPits pits;
    firn::Done seen = decode(*context, one, two, pits);
    if (!seen) return seen;
    firn::Result<const firnbook::PitComparison*> read =
        read_comparison(*context, {comparison, comparison_size});
    if (!read) return read.failure();
    const firn::comparison::Checksums sums = checksums_of(one, two);
    if ((*read)->reference_crc32() != sums.reference || (*read)->other_crc32() != sums.other) {
      return failure_of(FIRN_OTHER_PIT, "the comparison was not made from these two pits in this order",
                        "compare them again, or give the pits it belongs to, the reference first");
    }
    std::string& words = context->work.text;
    words.clear();
    firn::comparison::append_note(words, **read, pits.reference, pits.other);
    give(*context, text, words);
    return firn::done();
  });
}

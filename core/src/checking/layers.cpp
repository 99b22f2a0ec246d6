// What stands in one layer: sizes, hardness, forms and the observer's words. Limits of sizes by form from
// the reference list of derived checks and the subclass definitions of ICSSG 2009 (from memory).
#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::GrainForm;

constexpr std::int32_t kLargestSize = pit::mm(50);
constexpr std::int32_t kSmallRoundedBelow = 25;  // RGsr < 0.25 mm <= RGlr
constexpr std::int32_t kHailAbove = pit::mm(5);  // PPgp, PPip <= 5 mm < PPhl
constexpr auto kKnife = static_cast<std::uint8_t>(firnbook::HandHardness::Knife);
// "Several cm" in the reference list; the number is ours.
constexpr std::int32_t kThickSurfaceHoar = pit::cm(5);

bool in_main_class(std::uint8_t form, GrainForm main) {
  return form / 10 == static_cast<std::uint8_t>(main) / 10;
}

void check_sizes(const pit::Layer& layer, Reporter& out) {
  const Place size = layer_place(layer, firnbook::Layer::VT_GRAIN_SIZE_10UM);
  const Place size_max = layer_place(layer, firnbook::Layer::VT_GRAIN_SIZE_MAX_10UM);
  const auto check_one = [&](std::int32_t value, const Place& place) {
    if (value == pit::kUnknown) return;
    if (value <= 0) out.add(CheckCode::size_not_positive, place, value);
    if (value > kLargestSize) out.add(CheckCode::size_impossible, place, value, kLargestSize);
  };
  check_one(layer.size, size);
  check_one(layer.size_max, size_max);
  if (layer.size != pit::kUnknown && layer.size_max != pit::kUnknown && layer.size_max < layer.size) {
    out.add(CheckCode::size_max_below_size, size_max, layer.size, layer.size_max);
  }
}

// The limit that the size crosses for its form, or 0.
std::int32_t crossed_limit(GrainForm form, std::int32_t size) {
  switch (form) {
    case GrainForm::RGsr:
      return size >= kSmallRoundedBelow ? kSmallRoundedBelow : 0;
    case GrainForm::RGlr:
      return size < kSmallRoundedBelow ? kSmallRoundedBelow : 0;
    case GrainForm::PPgp:
    case GrainForm::PPip:
      return size > kHailAbove ? kHailAbove : 0;
    case GrainForm::PPhl:
      return size <= kHailAbove ? kHailAbove : 0;
    default:
      return 0;
  }
}

void check_form(const pit::Layer& layer, Reporter& out) {
  if (layer.size > 0) {
    const std::int32_t limit = crossed_limit(static_cast<GrainForm>(layer.form), layer.size);
    if (limit != 0) {
      out.add(CheckCode::size_contradicts_form, layer_place(layer, firnbook::Layer::VT_GRAIN_SIZE_10UM),
              layer.form, layer.size, limit);
    }
  }
  if (in_main_class(layer.form, GrainForm::SH) && layer.has_span()) {
    const std::int64_t thickness = std::int64_t{layer.bottom} - layer.top;
    if (thickness > kThickSurfaceHoar) {
      out.add(CheckCode::surface_hoar_thick, layer_place(layer, firnbook::Layer::VT_BOTTOM), thickness,
              kThickSurfaceHoar);
    }
  }
}

void check_hardness(const pit::Layer& layer, Reporter& out) {
  const firnbook::Layer& raw = *layer.raw;
  const Place place = layer_place(layer, firnbook::Layer::VT_HARDNESS);
  if (raw.hardness() && (raw.hardness_top() || raw.hardness_bottom())) {
    out.add(CheckCode::hardness_twice, place);
  }
  const std::uint8_t hardest =
      layer.hardness_top > layer.hardness_bottom ? layer.hardness_top : layer.hardness_bottom;
  if (in_main_class(layer.form, GrainForm::IF) && hardest != 0 && hardest < kKnife) {
    out.add(CheckCode::ice_softer_than_knife, place, hardest);
  }
}

void check_words(const pit::Layer& layer, Reporter& out) {
  if (layer.form != 0 || pit::text(layer.raw->words()).empty()) return;
  out.add(CheckCode::words_without_code, layer_place(layer, firnbook::Layer::VT_GRAIN_FORM),
          pit::size_of(layer.raw->candidates()));
}

}  // namespace

void check_layers(const pit::View& pit, Reporter& out) {
  for (const pit::Layer& layer : pit.layers()) {
    check_sizes(layer, out);
    check_form(layer, out);
    check_hardness(layer, out);
    check_words(layer, out);
  }
}

}  // namespace firn::checking

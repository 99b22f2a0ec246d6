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
// "Several cm" in the reference list for surface hoar and near-surface facets; the number is ours.
constexpr std::int32_t kThickSurfaceHoar = pit::cm(5);
// Ours: what a pencil does not enter has lost the crystals it fell with.
constexpr auto kHardNewSnow = static_cast<std::uint8_t>(firnbook::HandHardness::Pencil);
// Ours: what four fingers enter without being stopped is no sheet.
constexpr auto kFirmCrust = static_cast<std::uint8_t>(firnbook::HandHardness::FourFingerMinus);
constexpr auto kVeryWet = static_cast<std::uint8_t>(firnbook::Wetness::V);
constexpr auto kDry = static_cast<std::uint8_t>(firnbook::Wetness::D);

bool in_main_class(std::uint8_t form, GrainForm main) {
  return form / 10 == static_cast<std::uint8_t>(main) / 10;
}

bool is_form(std::uint8_t form, GrainForm wanted) {
  return form == static_cast<std::uint8_t>(wanted);
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
  const bool hoar = in_main_class(layer.form, GrainForm::SH);
  const bool surface_facets = is_form(layer.form, GrainForm::FCsf);
  if ((hoar || surface_facets) && layer.has_span()) {
    const std::int64_t thickness = std::int64_t{layer.bottom} - layer.top;
    if (thickness > kThickSurfaceHoar) {
      out.add(hoar ? CheckCode::surface_hoar_thick : CheckCode::surface_facets_thick,
              layer_place(layer, firnbook::Layer::VT_BOTTOM), thickness, kThickSurfaceHoar);
    }
  }
}

void check_second_form(const pit::Layer& layer, Reporter& out) {
  if (layer.form_second == 0) return;
  const Place place = layer_place(layer, firnbook::Layer::VT_GRAIN_FORM_SECOND);
  if (layer.form == 0) {
    out.add(CheckCode::second_form_without_first, place, layer.form_second);
  } else if (layer.form_second == layer.form) {
    out.add(CheckCode::second_form_repeats_first, place, layer.form);
  }
}

// Classes are closed below and open above (ours, since the standard gives touching ranges; limits of ICSSG
// 2009 from memory).
struct SizeClass {
  firnbook::GrainSizeClass name;
  std::int32_t from, to;
};
constexpr SizeClass kSizeClasses[] = {
    {firnbook::GrainSizeClass::very_fine, 0, 20},      {firnbook::GrainSizeClass::fine, 20, 50},
    {firnbook::GrainSizeClass::medium, 50, 100},       {firnbook::GrainSizeClass::coarse, 100, 200},
    {firnbook::GrainSizeClass::very_coarse, 200, 500}, {firnbook::GrainSizeClass::extreme, 500, INT32_MAX},
};

void check_size_class(const flatbuffers::Optional<firnbook::GrainSizeClass>& said, std::int32_t size,
                      const Place& place, Reporter& out) {
  if (!said || size <= 0) return;
  for (const SizeClass& row : kSizeClasses) {
    if (row.name != *said || (size >= row.from && size <= row.to)) continue;
    out.add(CheckCode::size_class_contradicts_size, place, size, row.from, row.to);
  }
}

void check_wet_form(const pit::Layer& layer, Reporter& out) {
  if (!is_form(layer.form, GrainForm::MFsl) || layer.wetness == 0 || layer.wetness >= kVeryWet) return;
  out.add(CheckCode::slush_not_soaked, layer_place(layer, firnbook::Layer::VT_WETNESS));
}

// Hail, ice pellets and rime can be hard as they fall.
bool is_soft_new_snow(std::uint8_t form) {
  return in_main_class(form, GrainForm::PP) && !is_form(form, GrainForm::PPgp) &&
         !is_form(form, GrainForm::PPhl) && !is_form(form, GrainForm::PPip) &&
         !is_form(form, GrainForm::PPrm);
}

void check_hardness(const pit::Layer& layer, Reporter& out) {
  const firnbook::Layer& raw = *layer.raw;
  const Place place = layer_place(layer, firnbook::Layer::VT_HARDNESS);
  if (raw.hardness() && (raw.hardness_top() || raw.hardness_bottom())) {
    out.add(CheckCode::hardness_twice, place);
  }
  const std::uint8_t hardest =
      layer.hardness_top > layer.hardness_bottom ? layer.hardness_top : layer.hardness_bottom;
  if (hardest == 0) return;
  if (in_main_class(layer.form, GrainForm::IF) && hardest < kKnife) {
    out.add(CheckCode::ice_softer_than_knife, place, hardest);
  }
  if (is_soft_new_snow(layer.form) && hardest >= kHardNewSnow) {
    out.add(CheckCode::new_snow_hard, place, layer.form);
  }
  // Water takes the strength of a crust, so only one that is dry is odd.
  if (is_form(layer.form, GrainForm::MFcr) && hardest < kFirmCrust && layer.wetness <= kDry) {
    out.add(CheckCode::crust_soft, place, hardest);
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
    check_second_form(layer, out);
    check_size_class(layer.raw->grain_size_class(), layer.size,
                     layer_place(layer, firnbook::Layer::VT_GRAIN_SIZE_CLASS), out);
    check_size_class(layer.raw->grain_size_max_class(), layer.size_max,
                     layer_place(layer, firnbook::Layer::VT_GRAIN_SIZE_MAX_CLASS), out);
    check_wet_form(layer, out);
    check_hardness(layer, out);
    check_words(layer, out);
  }
}

}  // namespace firn::checking

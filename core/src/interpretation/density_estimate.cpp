// Density from hand hardness and grain form where none was measured (Geldsetzer and Jamieson 2000;
// coefficients from memory): rho = A + B h, for rounded grains A + B h^3.15, with h the hand-hardness index.
// Dry snow only. No relation is known to us for SH, MF, MFcr, IF and MM, and ours is to use none for hail,
// ice pellets and rime either.
#include "interpretation/densities.h"
#include "interpretation/evidence.h"
#include "support/maths.h"

namespace firn::interpretation {
namespace {

using firnbook::GrainForm;

struct Relation {
  GrainForm form;
  std::int32_t base, per_step;  // kg/m3
};

// Forms of their own before their main class.
constexpr Relation kRelations[] = {
    {GrainForm::PPgp, 83, 37}, {GrainForm::RGxf, 91, 42}, {GrainForm::FCxr, 56, 64}, {GrainForm::PP, 45, 36},
    {GrainForm::DF, 65, 36},   {GrainForm::FC, 112, 46},  {GrainForm::DH, 185, 25},
};

bool is_other_precipitation(GrainForm form) {
  return form == GrainForm::PPhl || form == GrainForm::PPip || form == GrainForm::PPrm;
}

}  // namespace

std::int32_t estimated_density(std::uint8_t form, std::int32_t hardness_twelfths) {
  const GrainForm exact = static_cast<GrainForm>(form);
  const std::uint8_t main = main_form(form);
  if (main == 0 || hardness_twelfths <= 0 || is_other_precipitation(exact)) return 0;
  for (const Relation& one : kRelations) {
    const bool whole_class = static_cast<std::uint8_t>(one.form) % 10 == 0;
    if (one.form != exact && !(whole_class && main_form(static_cast<std::uint8_t>(one.form)) == main))
      continue;
    return one.base * 10 + (one.per_step * 10 * hardness_twelfths + 6) / 12;
  }
  if (main != main_form(static_cast<std::uint8_t>(GrainForm::RG))) return 0;
  return rounded(1540.0 + 15.1 * power(static_cast<double>(hardness_twelfths) / 12.0, 3.15));
}

void density_estimate(const pit::View& pit, const Densities& densities, Findings& out) {
  for (std::size_t i = 0; i < densities.layers.size(); ++i) {
    const LayerDensity& density = densities.layers[i];
    if (density.measured || density.dkgm3 == 0) continue;
    const pit::Layer& layer = pit.layers()[i];
    add(out, Method::density_estimate, FindingKey::density_estimated, Verdict::fact,
        place_of(Thing::layer, static_cast<std::int32_t>(layer.stored), kWholeThing), layer.top,
        {density.dkgm3, (layer.hardness_top + layer.hardness_bottom) / 2, layer.form});
  }
}

}  // namespace firn::interpretation

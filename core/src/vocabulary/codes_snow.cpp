// Codes of the snow itself. The ICSSG 2009 codes are confirmed by the CAAML 6.0.4 schema (read); its names
// are from memory, and the plain words are ours.
#include "vocabulary/code_rows.h"

namespace firn {
namespace {

using firnbook::GrainForm;
using firnbook::GrainSizeClass;
using firnbook::HandHardness;
using firnbook::LayerNameKind;
using firnbook::PartOfLayer;
using firnbook::SurfaceRoughness;
using firnbook::Wetness;

constexpr Code kGrainForms[] = {
    {n(GrainForm::PP), "PP", "precipitation particles: fresh snow crystals"},
    {n(GrainForm::PPco), "PPco", "columns"},
    {n(GrainForm::PPnd), "PPnd", "needles"},
    {n(GrainForm::PPpl), "PPpl", "plates"},
    {n(GrainForm::PPsd), "PPsd", "stars and dendrites: feathery six-armed crystals"},
    {n(GrainForm::PPir), "PPir", "irregular fresh crystals"},
    {n(GrainForm::PPgp), "PPgp", "graupel: small soft balls of rimed snow"},
    {n(GrainForm::PPhl), "PPhl", "hail"},
    {n(GrainForm::PPip), "PPip", "ice pellets: frozen raindrops"},
    {n(GrainForm::PPrm), "PPrm", "rime: fog frozen onto things, pointing into the wind"},
    {n(GrainForm::MM), "MM", "machine made snow"},
    {n(GrainForm::MMrp), "MMrp", "machine made: round frozen droplets"},
    {n(GrainForm::MMci), "MMci", "machine made: crushed ice"},
    {n(GrainForm::DF), "DF", "decomposing and broken fresh crystals"},
    {n(GrainForm::DFdc), "DFdc", "fresh crystals partly decomposed, shape still seen"},
    {n(GrainForm::DFbk), "DFbk", "fresh crystals broken by wind"},
    {n(GrainForm::RG), "RG", "rounded grains"},
    {n(GrainForm::RGsr), "RGsr", "small rounded grains"},
    {n(GrainForm::RGlr), "RGlr", "large rounded grains"},
    {n(GrainForm::RGwp), "RGwp", "rounded grains packed by wind"},
    {n(GrainForm::RGxf), "RGxf", "rounded grains starting to grow facets"},
    {n(GrainForm::FC), "FC", "faceted crystals: angular, sugary grains"},
    {n(GrainForm::FCso), "FCso", "solid faceted crystals"},
    {n(GrainForm::FCsf), "FCsf", "facets grown just under the surface"},
    {n(GrainForm::FCxr), "FCxr", "faceted crystals becoming round"},
    {n(GrainForm::DH), "DH", "depth hoar: large cup-shaped or striped crystals"},
    {n(GrainForm::DHcp), "DHcp", "depth hoar: hollow cups"},
    {n(GrainForm::DHpr), "DHpr", "depth hoar: hollow prisms"},
    {n(GrainForm::DHch), "DHch", "depth hoar: cups joined in chains"},
    {n(GrainForm::DHla), "DHla", "depth hoar: large striped crystals"},
    {n(GrainForm::DHxr), "DHxr", "depth hoar becoming round"},
    {n(GrainForm::SH), "SH", "surface hoar: frost feathers, often buried"},
    {n(GrainForm::SHsu), "SHsu", "surface hoar crystals"},
    {n(GrainForm::SHcv), "SHcv", "hoar grown in a hollow or crevasse"},
    {n(GrainForm::SHxr), "SHxr", "surface hoar becoming round"},
    {n(GrainForm::MF), "MF", "melt forms: grains that have been wet"},
    {n(GrainForm::MFcl), "MFcl", "clusters of rounded wet grains"},
    {n(GrainForm::MFpc), "MFpc", "rounded polycrystals: single melt-freeze grains, corn"},
    {n(GrainForm::MFsl), "MFsl", "slush: grains in water"},
    {n(GrainForm::MFcr), "MFcr", "melt-freeze crust: wet grains frozen into a sheet"},
    {n(GrainForm::IF), "IF", "ice formations"},
    {n(GrainForm::IFil), "IFil", "ice layer"},
    {n(GrainForm::IFic), "IFic", "ice column: a frozen trickle"},
    {n(GrainForm::IFbi), "IFbi", "ice at the ground"},
    {n(GrainForm::IFrc), "IFrc", "rain crust: a glaze from freezing rain"},
    {n(GrainForm::IFsc), "IFsc", "sun crust: a thin clear glaze, firnspiegel"},
};

constexpr Code kHandHardness[] = {
    {n(HandHardness::FistMinus), "F-", "fist, a little softer"},
    {n(HandHardness::Fist), "F", "fist"},
    {n(HandHardness::FistPlus), "F+", "fist, a little harder"},
    {n(HandHardness::FistToFourFinger), "F-4F", "between fist and four fingers"},
    {n(HandHardness::FourFingerMinus), "4F-", "four fingers, a little softer"},
    {n(HandHardness::FourFinger), "4F", "four fingers"},
    {n(HandHardness::FourFingerPlus), "4F+", "four fingers, a little harder"},
    {n(HandHardness::FourFingerToOneFinger), "4F-1F", "between four fingers and one finger"},
    {n(HandHardness::OneFingerMinus), "1F-", "one finger, a little softer"},
    {n(HandHardness::OneFinger), "1F", "one finger"},
    {n(HandHardness::OneFingerPlus), "1F+", "one finger, a little harder"},
    {n(HandHardness::OneFingerToPencil), "1F-P", "between one finger and pencil"},
    {n(HandHardness::PencilMinus), "P-", "pencil, a little softer"},
    {n(HandHardness::Pencil), "P", "pencil"},
    {n(HandHardness::PencilPlus), "P+", "pencil, a little harder"},
    {n(HandHardness::PencilToKnife), "P-K", "between pencil and knife"},
    {n(HandHardness::KnifeMinus), "K-", "knife, a little softer"},
    {n(HandHardness::Knife), "K", "knife"},
    {n(HandHardness::KnifePlus), "K+", "knife, a little harder"},
    {n(HandHardness::KnifeToIce), "K-I", "between knife and ice"},
    {n(HandHardness::Ice), "I", "ice: a knife does not enter"},
};

constexpr Code kWetness[] = {
    {n(Wetness::D), "D", "dry: grains hardly stick"},
    {n(Wetness::D_M), "D-M", "between dry and moist"},
    {n(Wetness::M), "M", "moist: makes a snowball, no water seen"},
    {n(Wetness::M_W), "M-W", "between moist and wet"},
    {n(Wetness::W), "W", "wet: water seen with a lens, none squeezed out"},
    {n(Wetness::W_V), "W-V", "between wet and very wet"},
    {n(Wetness::V), "V", "very wet: water can be squeezed out"},
    {n(Wetness::V_S), "V-S", "between very wet and soaked"},
    {n(Wetness::S), "S", "soaked: full of water"},
};

constexpr Code kSizeClasses[] = {
    {n(GrainSizeClass::very_fine), "very fine", "very fine, below 0.2 mm"},
    {n(GrainSizeClass::fine), "fine", "fine, from 0.2 mm"},
    {n(GrainSizeClass::medium), "medium", "medium, from 0.5 mm"},
    {n(GrainSizeClass::coarse), "coarse", "coarse, from 1 mm"},
    {n(GrainSizeClass::very_coarse), "very coarse", "very coarse, from 2 mm"},
    {n(GrainSizeClass::extreme), "extreme", "extreme, from 5 mm"},
};

constexpr Code kRoughness[] = {
    {n(SurfaceRoughness::rsm), "rsm", "smooth"},
    {n(SurfaceRoughness::rwa), "rwa", "wavy: wind ripples"},
    {n(SurfaceRoughness::rcv), "rcv", "hollows: sun cups"},
    {n(SurfaceRoughness::rcx), "rcx", "ridges: rain or melt grooves"},
    {n(SurfaceRoughness::rrd), "rrd", "rough without order: eroded by wind"},
};

constexpr Code kPartOfLayer[] = {
    {n(PartOfLayer::all), "all", "the whole layer"},
    {n(PartOfLayer::top), "top", "the top of the layer"},
    {n(PartOfLayer::bottom), "bottom", "the bottom of the layer"},
};

constexpr Code kLayerNameKinds[] = {
    {n(LayerNameKind::buried), "buried", "named by the day it was buried"},
    {n(LayerNameKind::formed), "formed", "named by the day it formed"},
    {n(LayerNameKind::assumed), "assumed", "named by a day somebody assumed"},
};

}  // namespace

template <>
CodeTable code_table<GrainForm>() {
  return rows(kGrainForms);
}
template <>
CodeTable code_table<HandHardness>() {
  return rows(kHandHardness);
}
template <>
CodeTable code_table<Wetness>() {
  return rows(kWetness);
}
template <>
CodeTable code_table<GrainSizeClass>() {
  return rows(kSizeClasses);
}
template <>
CodeTable code_table<SurfaceRoughness>() {
  return rows(kRoughness);
}
template <>
CodeTable code_table<PartOfLayer>() {
  return rows(kPartOfLayer);
}
template <>
CodeTable code_table<LayerNameKind>() {
  return rows(kLayerNameKinds);
}

// Limits: ICSSG 2009, from memory. Closed below and open above is ours.
std::optional<GrainSizeClass> size_class(std::int32_t size_10um) {
  if (size_10um <= 0) return std::nullopt;
  if (size_10um < 20) return GrainSizeClass::very_fine;
  if (size_10um < 50) return GrainSizeClass::fine;
  if (size_10um < 100) return GrainSizeClass::medium;
  if (size_10um < 200) return GrainSizeClass::coarse;
  if (size_10um < 500) return GrainSizeClass::very_coarse;
  return GrainSizeClass::extreme;
}

}  // namespace firn

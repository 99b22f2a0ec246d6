#include "vocabulary/words.h"

#include "vocabulary/code_rows.h"

namespace firn {
namespace {

using firnbook::FractureCharacter;
using firnbook::GrainForm;
using firnbook::HandHardness;
using firnbook::SignKind;
using firnbook::Wetness;

template <auto... Values>
struct Candidates {
  static constexpr std::uint8_t numbers[] = {static_cast<std::uint8_t>(Values)...};
  static constexpr std::size_t count = sizeof...(Values);
};

template <auto... Values>
constexpr Word word(std::string_view text, WordOf about, std::string_view note = {}) {
  return {text, about, Candidates<Values...>::numbers, Candidates<Values...>::count, note};
}

using GF = GrainForm;
using HH = HandHardness;
constexpr WordOf kForm = WordOf::grain_form;
constexpr WordOf kHand = WordOf::hand_hardness;
constexpr WordOf kWater = WordOf::wetness;
constexpr WordOf kBreak = WordOf::fracture_character;
constexpr WordOf kSign = WordOf::sign;

// All of it common practice. "pop" and "drop" for sudden planar and sudden collapse: a forecasters' tech tip
// (read, secondary; reference B.5). MFpc against MFcr for corn: SWAG 2010, appendix F (read).
constexpr Word kWords[] = {
    word<GF::FC, GF::DH>("sugary", kForm, "loose angular grains: a lens tells facets from depth hoar"),
    word<GF::FC, GF::DH>("sugar snow", kForm, "loose angular grains: a lens tells facets from depth hoar"),
    word<GF::FC, GF::DH>("sugar", kForm, "loose angular grains: a lens tells facets from depth hoar"),
    word<GF::FC>("facets", kForm),
    word<GF::FC>("facet", kForm),
    word<GF::FC>("faceted", kForm),
    word<GF::FCsf>("near surface facets", kForm),
    word<GF::FCsf>("near-surface facets", kForm),
    word<GF::FC, GF::DH>("basal facets", kForm, "facets near the ground are often depth hoar"),
    word<GF::DH>("depth hoar", kForm),
    word<GF::SH>("surface hoar", kForm),
    word<GF::SH>("feathers", kForm),
    word<GF::SH, GF::DH>("hoar", kForm, "frost on the surface or grown inside the snow"),
    word<GF::SH, GF::PPrm>("frost", kForm, "hoar grows from vapour, rime freezes from fog"),
    word<GF::MFcr, GF::IFrc, GF::IFsc>("crust", kForm,
                                       "a wind crust has no code of its own: wind-packed grains are RGwp"),
    word<GF::MFcr>("melt-freeze crust", kForm),
    word<GF::MFcr, GF::IFsc>("sun crust", kForm, "a frozen sheet of melt grains, or a thin clear glaze"),
    word<GF::IFrc, GF::MFcr>("rain crust", kForm, "a glaze from freezing rain, or rain-wet snow refrozen"),
    word<GF::RGwp, GF::DFbk>("wind crust", kForm, "no code of its own: wind-packed or wind-broken grains"),
    word<GF::RGwp, GF::DFbk, GF::RG>("wind slab", kForm, "a slab is a layer's role, not a grain"),
    word<GF::RGwp, GF::DFbk, GF::RG>("windslab", kForm, "a slab is a layer's role, not a grain"),
    word<GF::RGwp, GF::DFbk>("wind packed", kForm),
    word<GF::RGwp, GF::DFbk>("wind-packed", kForm),
    word<GF::PP, GF::DF>("new snow", kForm, "DF once the crystals start to break or decompose"),
    word<GF::PP, GF::DF>("fresh snow", kForm, "DF once the crystals start to break or decompose"),
    word<GF::PP, GF::DF>("storm snow", kForm, "DF once the crystals start to break or decompose"),
    word<GF::PP, GF::DF, GF::FC>("powder", kForm, "says how it skis, not what the grains are"),
    word<GF::PPsd>("stellars", kForm),
    word<GF::PPsd>("dendrites", kForm),
    word<GF::PPnd>("needles", kForm),
    word<GF::PPgp>("graupel", kForm),
    word<GF::PPhl, GF::PPgp>("hail", kForm, "soft white balls are graupel"),
    word<GF::PPrm>("rime", kForm),
    word<GF::RG>("rounds", kForm),
    word<GF::RG>("rounded grains", kForm),
    word<GF::RG, GF::DF>("settled snow", kForm),
    word<GF::MFpc, GF::MFcl>("corn", kForm, "single frozen grains, or wet clusters"),
    word<GF::MFsl>("slush", kForm),
    word<GF::IFil, GF::IFbi, GF::IFrc>("ice", kForm, "a layer inside, at the ground, or a glaze on top"),
    word<GF::IFil>("ice lens", kForm),
    word<GF::MF>("wet grains", kForm),
    word<HH::Fist>("fist", kHand),
    word<HH::FourFinger>("four finger", kHand),
    word<HH::FourFinger>("four fingers", kHand),
    word<HH::OneFinger>("one finger", kHand),
    word<HH::OneFinger>("finger", kHand),
    word<HH::Pencil>("pencil", kHand),
    word<HH::Knife>("knife", kHand),
    word<Wetness::D>("dry", kWater),
    word<Wetness::M>("moist", kWater),
    word<Wetness::M>("damp", kWater),
    word<Wetness::W, Wetness::V>("wet", kWater, "very wet when water can be squeezed out"),
    word<Wetness::V, Wetness::S>("soaking", kWater),
    word<FractureCharacter::SP>("pop", kBreak),
    word<FractureCharacter::SP>("popped", kBreak),
    word<FractureCharacter::SC>("drop", kBreak),
    word<FractureCharacter::SC>("dropped", kBreak),
    word<FractureCharacter::SC>("collapse", kBreak),
    word<FractureCharacter::SP, FractureCharacter::SC>("sudden", kBreak, "SDN when nobody told them apart"),
    word<FractureCharacter::BRK, FractureCharacter::PC>("crumbled", kBreak),
    word<SignKind::whumpf>("whumpf", kSign),
    word<SignKind::whumpf>("whoomph", kSign),
    word<SignKind::whumpf>("settling", kSign, "heard or felt underfoot"),
    word<SignKind::cracking>("shooting cracks", kSign),
    word<SignKind::hollow_sound>("drummy", kSign),
};

bool in_word(char character) {
  return (character >= 'a' && character <= 'z') || (character >= 'A' && character <= 'Z') ||
         (character >= '0' && character <= '9') || static_cast<unsigned char>(character) >= 0x80;
}

bool stands_at(std::string_view remark, std::size_t start, std::string_view known) {
  if (remark.size() - start < known.size() || !same_code(remark.substr(start, known.size()), known)) {
    return false;
  }
  const std::size_t after = start + known.size();
  return after == remark.size() || !in_word(remark[after]);
}

// "sugar snow" before "sugar": of the words that stand here, the longest says most.
const Word* longest_at(std::string_view remark, std::size_t start, WordOf about) {
  const Word* longest = nullptr;
  for (const Word& known : kWords) {
    if (known.about != about || !stands_at(remark, start, known.word)) continue;
    if (longest == nullptr || known.word.size() > longest->word.size()) longest = &known;
  }
  return longest;
}

}  // namespace

const Word* find_word(std::string_view text) {
  for (const Word& known : kWords) {
    if (same_code(known.word, text)) return &known;
  }
  return nullptr;
}

const Word* find_word_in(std::string_view remark, WordOf about) {
  for (std::size_t i = 0; i < remark.size(); ++i) {
    if (!in_word(remark[i]) || (i > 0 && in_word(remark[i - 1]))) continue;
    if (const Word* found = longest_at(remark, i, about)) return found;
  }
  return nullptr;
}

const Word* all_words(std::size_t& count) {
  count = sizeof kWords / sizeof kWords[0];
  return kWords;
}

}  // namespace firn

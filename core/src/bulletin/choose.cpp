// Which bulletin of a file is the one for a pit: first the region, then the time.
#include "bulletin/compare.h"

namespace firn::bulletin {
namespace {

using firnbook::Bulletin;
using firnbook::BulletinMatch;
using firnbook::Bulletins;
using firnbook::Region;
using firnbook::RegionFrom;

// Longer texts are no name, and comparing megabytes that many regions share would take minutes.
constexpr std::size_t kLongestName = 256;

bool is_named(const flatbuffers::String* text, std::string_view wanted) {
  return !wanted.empty() && wanted.size() <= kLongestName && pit::text(text) == wanted;
}

const Region* region_named(const Bulletin& bulletin, std::string_view wanted) {
  for (std::uint32_t i = 0; i < pit::size_of(bulletin.regions()); ++i) {
    const Region* one = bulletin.regions()->Get(i);
    if (is_named(one->id(), wanted) || is_named(one->name(), wanted)) return one;
  }
  return nullptr;
}

bool any_named(const Bulletins& bulletins, std::string_view wanted) {
  for (std::uint32_t i = 0; i < pit::size_of(bulletins.bulletins()); ++i) {
    if (region_named(*bulletins.bulletins()->Get(i), wanted) != nullptr) return true;
  }
  return false;
}

// By its id, or by its name where it has no id.
std::string_view name_of(const Region& region) {
  const std::string_view id = pit::text(region.id());
  const std::string_view name = id.empty() ? pit::text(region.name()) : id;
  return name.size() <= kLongestName ? name : std::string_view{};
}

// The name of the only region in the file; empty when there is none or more than one.
std::string_view only_region(const Bulletins& bulletins) {
  std::string_view only;
  for (std::uint32_t i = 0; i < pit::size_of(bulletins.bulletins()); ++i) {
    const Bulletin& bulletin = *bulletins.bulletins()->Get(i);
    if (pit::size_of(bulletin.regions()) == 0) return {};
    for (std::uint32_t k = 0; k < bulletin.regions()->size(); ++k) {
      const std::string_view name = name_of(*bulletin.regions()->Get(k));
      if (name.empty() || (!only.empty() && name != only)) return {};
      only = name;
    }
  }
  return only;
}

struct Wanted {
  std::string_view region;
  RegionFrom from;
};

// Whoever asks knows best. The record of the bulletin that the observer read is as good; the region of the
// site may be any name for the country around, so it counts only when the bulletin knows it.
Wanted wanted_region(const pit::View& pit, const Bulletins& bulletins, std::string_view region) {
  if (!region.empty()) return {region, RegionFrom::caller};
  const firnbook::BulletinSeen* seen = pit.raw().bulletin();
  if (seen != nullptr && pit::size_of(seen->region()) != 0)
    return {pit::text(seen->region()), RegionFrom::record};
  const firnbook::Site* site = pit.raw().site();
  const std::string_view around = site == nullptr ? std::string_view{} : pit::text(site->region());
  if (any_named(bulletins, around)) return {around, RegionFrom::record};
  const std::string_view only = only_region(bulletins);
  return {only, only.empty() ? RegionFrom::none : RegionFrom::only_one};
}

BulletinMatch match_of(Validity validity) {
  switch (validity) {
    case Validity::holds:
      return BulletinMatch::matches;
    case Validity::expired:
      return BulletinMatch::expired;
    case Validity::not_yet:
      return BulletinMatch::not_yet_valid;
    case Validity::unknown:
      return BulletinMatch::time_unknown;
  }
  return BulletinMatch::time_unknown;
}

// When it was issued, in UTC as far as that is known.
std::int64_t issued(const Bulletin& bulletin) {
  const firnbook::Moment* moment = bulletin.published();
  if (moment == nullptr || moment->precision() == firnbook::TimePrecision::none) return INT64_MIN;
  constexpr std::int64_t kFarAway = std::int64_t{1} << 40;
  if (moment->local_s() > kFarAway || moment->local_s() < -kFarAway) return INT64_MIN;
  return moment->local_s() - (moment->offset_known() == 1 ? std::int64_t{moment->offset_min()} * 60 : 0);
}

struct Candidate {
  const Bulletin* bulletin = nullptr;
  const Region* region = nullptr;
  std::int32_t index = -1;
  ValidityToPit time = {Validity::unknown, 0};
};

// One that holds before one of which that cannot be told, before one that does not; then the nearer in time,
// the later issued, the later in the file.
bool better(const Candidate& one, const Candidate& other) {
  if (other.bulletin == nullptr) return true;
  const auto rank = [](const Candidate& of) {
    return of.time.validity == Validity::holds ? 0 : of.time.validity == Validity::unknown ? 1 : 2;
  };
  if (rank(one) != rank(other)) return rank(one) < rank(other);
  if (one.time.seconds_apart != other.time.seconds_apart)
    return one.time.seconds_apart < other.time.seconds_apart;
  const std::int64_t one_issued = issued(*one.bulletin), other_issued = issued(*other.bulletin);
  if (one_issued != other_issued) return one_issued > other_issued;
  return one.index > other.index;
}

}  // namespace

Choice choose(const pit::View& pit, const PitPlace& place, const Bulletins& bulletins,
              std::string_view region) {
  Choice choice;
  if (pit::size_of(bulletins.bulletins()) == 0) {
    choice.match = BulletinMatch::none_issued;
    return choice;
  }
  const Wanted wanted = wanted_region(pit, bulletins, region);
  choice.region_from = wanted.from;
  if (wanted.from == RegionFrom::none) {
    choice.match = BulletinMatch::region_unknown;
    return choice;
  }
  Candidate best;
  for (std::uint32_t i = 0; i < bulletins.bulletins()->size(); ++i) {
    Candidate one;
    one.bulletin = bulletins.bulletins()->Get(i);
    one.region = region_named(*one.bulletin, wanted.region);
    if (one.region == nullptr) continue;
    one.index = static_cast<std::int32_t>(i);
    one.time = validity_of(one.bulletin->valid(), place);
    if (better(one, best)) best = one;
  }
  if (best.bulletin == nullptr) {
    choice.match = BulletinMatch::other_region;
    return choice;
  }
  choice.match = match_of(best.time.validity);
  choice.bulletin = best.index;
  choice.chosen = best.bulletin;
  choice.region = best.region;
  choice.seconds_apart = best.time.seconds_apart;
  return choice;
}

}  // namespace firn::bulletin

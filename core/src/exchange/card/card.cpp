#include "exchange/card/card.h"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>

#include "exchange/card/checksum.h"
#include "exchange/card/walk.h"
#include "support/place.h"
#include "support/text.h"

namespace firn::exchange::card {
namespace {

using firnbook::PitT;
using firnbook::Place;
using firnbook::Thing;

// The first byte: the major version in its upper half, the minor in its lower.
constexpr std::uint8_t kMajor = 1;
constexpr std::uint8_t kMinor = 0;
constexpr std::size_t kSmallest = 1 + 1 + kChecksumSize;

// --- what a card cannot hold -----------------------------------------------------------------------------

class LeftOut {
 public:
  LeftOut(bool may_leave_out, Notices& notices) : may_leave_out_(may_leave_out), notices_(notices) {}

  // False when the pit is to be refused.
  bool from(PitT& pit) {
    for (std::size_t i = 0; i < pit.surface_area.size() && !refusal_; ++i) {
      firnbook::SurfaceAreaProfileT& profile = *pit.surface_area[i];
      dense(Thing::surface_area_profile, i, field_id(firnbook::SurfaceAreaProfile::VT_DENSE_DEPTH_CM),
            profile.dense_depth_cm, profile.dense_m2kg);
    }
    for (std::size_t i = 0; i < pit.hardness.size() && !refusal_; ++i) {
      firnbook::HardnessProfileT& profile = *pit.hardness[i];
      dense(Thing::hardness_profile, i, field_id(firnbook::HardnessProfile::VT_DENSE_DEPTH_CM),
            profile.dense_depth_cm, profile.dense_n);
    }
    for (std::size_t i = 0; i < pit.photos.size() && !refusal_; ++i) hash(*pit.photos[i], i);
    for (std::size_t i = 0; i < pit.extensions.size() && !refusal_; ++i) extension(*pit.extensions[i], i);
    if (!refusal_) pit.extensions.clear();
    return !refusal_;
  }
  bool any() const { return any_; }
  Failure refusal() { return std::move(*refusal_); }

 private:
  void tell(const Place& place, std::string path, std::string_view what) {
    any_ = true;
    if (may_leave_out_) {
      notices_.add({NoticeKind::left_out, 0, 0, std::move(path), std::string(what)});
      return;
    }
    refusal_ = std::make_unique<Failure>(
        failure_of(FIRN_NOT_HELD, std::string(what) + ": " + path,
                   "ask for it to be left out, or pass on the pit's own file, which holds everything"));
    refusal_->place = place;
  }
  void dense(Thing thing, std::size_t index, std::uint16_t field, std::vector<float>& depths,
             std::vector<float>& values) {
    if (depths.empty() && values.empty()) return;
    const Place place = place_of(thing, static_cast<std::int32_t>(index), field);
    tell(place, path_of(place), "a card has no room for the dense profile of an instrument");
    depths.clear();
    values.clear();
  }
  void hash(firnbook::PhotoT& photo, std::size_t index) {
    if (photo.sha256.empty()) return;
    const Place place =
        place_of(Thing::photo, static_cast<std::int32_t>(index), field_id(firnbook::Photo::VT_SHA256));
    tell(place, path_of(place), "a card has no room for the hash of a photo");
    photo.sha256.clear();
  }
  void extension(const firnbook::ExtensionT& extension, std::size_t index) {
    std::string path = "extensions[";
    append_unsigned(path, index);
    path += ']';
    const Place place = place_of(Thing::pit, -1, field_id(firnbook::Pit::VT_EXTENSIONS));
    // The name is somebody else's and may hold anything.
    const bool is_plain = extension.key.size() <= 200 && is_utf8(extension.key);
    tell(place, std::move(path),
         "a card has no room for data of others" + (is_plain ? " (" + extension.key + ")" : std::string()));
  }

  bool may_leave_out_;
  Notices& notices_;
  bool any_ = false;
  std::unique_ptr<Failure> refusal_;
};

// --- both ways -------------------------------------------------------------------------------------------

void append_checksum(Bytes& card) {
  const std::uint32_t crc = crc32c(card.data(), card.size());
  for (int shift = 24; shift >= 0; shift -= 8) card.push_back(static_cast<std::uint8_t>(crc >> shift));
}

// The pit must be in canonical form. Empty when it is too large.
Bytes encode(PitT& pit, bool is_incomplete) {
  Notices none;
  Bits bits = Bits::writing(kMostBytes - kChecksumSize);
  bits.fixed(kMajor, 4);
  bits.fixed(kMinor, 4);
  bits.flag(is_incomplete);
  Walk(bits, pit, none).pit();
  bits.end();
  if (bits.failed()) return {};
  Bytes card = std::move(bits.bytes());
  append_checksum(card);
  return card;
}

Failure damaged(std::string_view what) {
  return failure_of(FIRN_DAMAGED, what, "scan the code again, or ask for the card again");
}

// Size, checksum, version: the same in every version of the card.
Done check_envelope(const std::uint8_t* bytes, std::size_t size) {
  if (bytes == nullptr && size != 0) {
    return failure_of(FIRN_NULL_ARGUMENT, "no card was given", "give its bytes and size");
  }
  if (size < kSmallest) {
    return failure_of(FIRN_TOO_SMALL, "too few bytes to be a card", "give the whole card");
  }
  if (size > kMostBytes) {
    return failure_of(FIRN_TOO_LARGE, "more bytes than a card can have", "check what was read");
  }
  if (!is_card(bytes, size)) return damaged("this is no card, or it was changed or cut off on the way");
  const unsigned major = bytes[0] >> 4;
  if (major > kMajor) {
    return failure_of(FIRN_NEWER_SCHEMA, "the card was written by a newer version",
                      "read it with a library of that version, or ask for the pit's own file");
  }
  if (major < kMajor)
    return failure_of(FIRN_WRONG_KIND, "there is no such version of a card", "check what was read");
  return done();
}

}  // namespace

bool is_card(const std::uint8_t* bytes, std::size_t size) {
  if (bytes == nullptr || size < kSmallest || size > kMostBytes) return false;
  std::uint32_t stored = 0;
  for (std::size_t i = size - kChecksumSize; i < size; ++i) stored = stored << 8 | bytes[i];
  return crc32c(bytes, size - kChecksumSize) == stored;
}

Result<Bytes> write_card(const firnbook::Pit& pit, const CardOptions& options, Notices& notices) {
  Result<std::unique_ptr<PitT>> object = recording::from_bytes(pit);
  if (!object) return object.failure();
  Notices told;
  LeftOut left_out(options.leave_out, told);
  if (!left_out.from(**object)) return left_out.refusal();
  // For the order alone: equal pits make equal cards.
  recording::to_bytes(**object);
  Bytes card = encode(**object, left_out.any());
  if (card.empty()) {
    return failure_of(FIRN_TOO_LARGE, "the pit is too large for a card: it takes more than 16384 bytes",
                      "pass on the pit's own file");
  }
  for (const Notice& notice : told.kept()) notices.add(notice);
  return card;
}

Result<std::unique_ptr<PitT>> read_card(const std::uint8_t* bytes, std::size_t size, Notices& notices) {
  const Done envelope = check_envelope(bytes, size);
  if (!envelope) return envelope.failure();
  auto pit = std::make_unique<PitT>();
  Bits bits = Bits::reading(bytes, size - kChecksumSize);
  bits.fixed(0, 4);
  const auto minor = static_cast<std::uint8_t>(bits.fixed(0, 4));
  const bool is_incomplete = bits.flag(false);
  Notices found;
  Walk(bits, *pit, found).pit();
  bits.end();
  if (bits.failed()) return damaged("the card's bits contradict what a card can hold");
  // A pit has one card. Whatever else the bits could be read as, nobody wrote it.
  recording::to_bytes(*pit);
  const Bytes own = encode(*pit, is_incomplete);
  const bool is_own = own.size() == size && std::equal(own.begin(), own.end(), bytes);
  if (minor <= kMinor && !is_own) return damaged("the card is not as a writer of its version writes it");
  if (minor > kMinor) {
    notices.add({NoticeKind::not_understood, 0, 0, "pit",
                 "the card was written by a newer version, which may say more than is known here"});
  }
  for (const Notice& notice : found.kept()) notices.add(notice);
  if (is_incomplete) {
    notices.add({NoticeKind::left_out, 0, 0, "pit",
                 "the writer left out what a card has no room for: the pit's own file holds more"});
  }
  return pit;
}

}  // namespace firn::exchange::card

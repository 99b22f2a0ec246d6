// Lines of measurements: `temp 10 -8.6, 30 -7.0`, and the profiles, such as `density 31-68 238, 69-104 310`.
#pragma once

#include "notation/layer_line.h"

namespace firn::notation {

bool read_temperatures(Line& line, const Frame& frame, firnbook::PitT& pit);

enum class Profile : std::uint8_t { density, liquid_water, surface_area, hardness, strength, impurity };
inline constexpr std::size_t kProfiles = 6;
std::string_view profile_keyword(Profile profile);
// Readings go into the profile that was begun last; `density profile, method snow tube` begins another. So do
// the points of an instrument: `resistance dense 0 0.05, 0.5 0.061`.
bool read_profile(Line& line, Profile profile, const Frame& frame, firnbook::PitT& pit);

// Prints whole lines. Where depths are counted otherwise than `frame` says, a line that says so comes first.
void append_frame(std::string& out, Frame& frame, const Frame& needed);
void append_temperatures(std::string& out, Frame& frame, const firnbook::PitT& pit);
void append_profiles(std::string& out, Frame& frame, const firnbook::PitT& pit);

}  // namespace firn::notation

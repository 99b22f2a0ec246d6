// The namespaces that a document may be in, and names in them.
#pragma once

#include <cstdint>
#include <string_view>

namespace firn::exchange::caaml {

inline constexpr std::string_view kNamespace6 = "http://caaml.org/Schemas/SnowProfileIACS/v6.0.4";
inline constexpr std::string_view kNamespace6Stem = "http://caaml.org/Schemas/SnowProfileIACS/v6.0";
inline constexpr std::string_view kNamespace5 = "http://caaml.org/Schemas/V5.0/Profiles/SnowProfileIACS";
inline constexpr std::string_view kNamespaceGml = "http://www.opengis.net/gml";
inline constexpr std::string_view kNamespaceInstance = "http://www.w3.org/2001/XMLSchema-instance";
// Ours, for what the standard has no place for. Its number changes when older readers would misread it.
inline constexpr std::string_view kNamespaceOwn = "urn:firnbook:caaml:1";

// Ids that the standard wants and the pit has not begin with this and are not read back.
inline constexpr std::string_view kMadeId = "_firn.";
// A reason that the standard's own list leaves open: the record says nothing here, not even why.
inline constexpr std::string_view kNotRecorded = "other:notrecorded";
// Stands for a time that is not known, where the standard wants one.
inline constexpr std::string_view kNoTime = "0001-01-01";

enum class Space : std::uint8_t { caaml, gml, own, other };

struct Name {
  Space space = Space::other;
  std::string_view local;
};

}  // namespace firn::exchange::caaml

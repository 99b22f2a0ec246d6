// What recording costs in the field: one tap, and an hour.
#pragma once

namespace firn::bench {

// Rows "tap" and "write tap"; prints what an hour's recording holds in memory. False when a call failed.
bool register_recording();

}  // namespace firn::bench

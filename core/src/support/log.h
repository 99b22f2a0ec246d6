// Messages on their way to the host's callback. Silent when there is none.
#pragma once

#include <memory>
#include <string_view>

#include "firnbook/context.h"

namespace firn {

// Room for a message on its way out, with the closing NUL; longer ones are cut between characters.
inline constexpr std::size_t kLogMessageSize = 512;

class Log {
 public:
  struct Receiver {
    firn_log_callback call = nullptr;
    void* user = nullptr;
    firn_log_level quietest = FIRN_LOG_WARNING;
  };

  Log();
  ~Log();
  Log(const Log&) = delete;
  Log& operator=(const Log&) = delete;

  // May run out of memory; then it stays silent.
  void open(const Receiver& receiver);

  bool wants(firn_log_level level) const noexcept {
    return receiver_.call != nullptr && level <= receiver_.quietest;
  }
  // Never throws and never allocates. `component` ends with a NUL.
  void write(firn_log_level level, const char* component, std::string_view message) noexcept;

 private:
  class Channel;

  Receiver receiver_;
  std::unique_ptr<Channel> channel_;
};

}  // namespace firn

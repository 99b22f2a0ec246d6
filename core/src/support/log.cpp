#include "support/log.h"

#include "support/fixed_text.h"

// The callback of the host may be written in C++ and throw all the same: nothing of that gets past here.
namespace firn {
namespace {

void hand_over(const Log::Receiver& receiver, firn_log_level level, const char* component,
               std::string_view message) noexcept {
  char text[kLogMessageSize];
  copy_text(text, sizeof text, message);
  try {
    receiver.call(receiver.user, level, component, text);
  } catch (...) {
  }
}

}  // namespace
}  // namespace firn

#if defined(FIRNBOOK_WITH_SPDLOG)

// One translation unit holds all of spdlog, header-only, with nothing of its own that the core forbids: no
// thread ids, no thread-locals, no registry or default logger, no clock (every message carries a time), no
// formatting. What remains of it is listed in tests/checks/allowed-symbols.txt.
//
// SPDLOG_NO_EXCEPTIONS leaves out spdlog's own catching, which formats what was caught and brings 150 KB of
// fmt with it. It would abort where spdlog itself throws: nothing of that is reached from here.
#define SPDLOG_HEADER_ONLY
#define SPDLOG_NO_EXCEPTIONS
#define SPDLOG_NO_THREAD_ID
#define SPDLOG_NO_TLS
#define SPDLOG_DISABLE_DEFAULT_LOGGER
#define FMT_HEADER_ONLY
#include <spdlog/logger.h>
#include <spdlog/sinks/sink.h>

namespace firn {
namespace {

class CallbackSink final : public spdlog::sinks::sink {
 public:
  explicit CallbackSink(const Log::Receiver& receiver) : receiver_(receiver) {}

  void log(const spdlog::details::log_msg& message) override {
    // The component travels as the source's function name, which is a literal that ends with a NUL.
    hand_over(receiver_, level_of(message.level), message.source.funcname,
              {message.payload.data(), message.payload.size()});
  }
  void flush() override {}
  void set_pattern(const std::string&) override {}
  void set_formatter(std::unique_ptr<spdlog::formatter>) override {}

 private:
  static firn_log_level level_of(spdlog::level::level_enum level) {
    switch (level) {
      case spdlog::level::critical:
      case spdlog::level::err:
        return FIRN_LOG_ERROR;
      case spdlog::level::warn:
        return FIRN_LOG_WARNING;
      case spdlog::level::info:
        return FIRN_LOG_INFO;
      default:
        return FIRN_LOG_DEBUG;
    }
  }

  Log::Receiver receiver_;
};

spdlog::level::level_enum level_for(firn_log_level level) {
  switch (level) {
    case FIRN_LOG_ERROR:
      return spdlog::level::err;
    case FIRN_LOG_WARNING:
      return spdlog::level::warn;
    case FIRN_LOG_INFO:
      return spdlog::level::info;
    case FIRN_LOG_DEBUG:
      break;
  }
  return spdlog::level::debug;
}

// Hands each message to the sink and does nothing else with it: no backtrace, no flushing, no printing of
// errors with a clock and a static mutex. Our sink throws nothing.
class QuietLogger final : public spdlog::logger {
 public:
  explicit QuietLogger(spdlog::sink_ptr sink) : spdlog::logger("firnbook", std::move(sink)) {
    set_error_handler([](const std::string&) {});
  }
  std::shared_ptr<spdlog::logger> clone(std::string) override { return nullptr; }

  void hand_on(const spdlog::details::log_msg& message) {
    if (should_log(message.level)) sink_it_(message);
  }

 protected:
  void sink_it_(const spdlog::details::log_msg& message) override {
    for (const spdlog::sink_ptr& sink : sinks()) sink->log(message);
  }
  void flush_() override {}
};

}  // namespace

class Log::Channel {
 public:
  explicit Channel(const Receiver& receiver) : logger_(std::make_shared<CallbackSink>(receiver)) {
    logger_.set_level(level_for(receiver.quietest));
  }
  void write(firn_log_level level, const char* component, std::string_view message) {
    const spdlog::source_loc source{"", 0, component};
    logger_.hand_on({spdlog::log_clock::time_point{}, source, logger_.name(), level_for(level),
                     spdlog::string_view_t{message.data(), message.size()}});
  }

 private:
  QuietLogger logger_;
};

}  // namespace firn

#else

namespace firn {

class Log::Channel {
 public:
  explicit Channel(const Receiver& receiver) : receiver_(receiver) {}
  void write(firn_log_level level, const char* component, std::string_view message) {
    hand_over(receiver_, level, component, message);
  }

 private:
  Receiver receiver_;
};

}  // namespace firn

#endif

namespace firn {

Log::Log() = default;
Log::~Log() = default;

void Log::open(const Receiver& receiver) {
  channel_ = receiver.call == nullptr ? nullptr : std::make_unique<Channel>(receiver);
  receiver_ = receiver;
}

void Log::write(firn_log_level level, const char* component, std::string_view message) noexcept {
  if (!wants(level)) return;
  try {
    channel_->write(level, component, message);
  } catch (...) {
  }
}

}  // namespace firn

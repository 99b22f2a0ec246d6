// What the shorter texts are made of: what a report raises, and what was not tested, in few words. Everything
// appends, since temporary strings would be most of the code.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "note/words.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::note {

// What a short text has room for; a hostile report may list millions.
inline constexpr std::size_t kMostRaised = 3;

class Raised {
 public:
  Raised(const pit::View& pit, const firnbook::Report& report, Language language);

  // Signs of instability that were seen, each kind once: "whumpf: seen".
  std::size_t signs() const { return sign_count_; }
  void append_sign(std::string& out, std::size_t nth) const;
  // Concerns in the report's order, without those that say little either way.
  std::size_t concerns() const { return concern_count_; }
  const firnbook::Concern& concern(std::size_t nth) const { return *concerns_[nth]; }
  // "at 17 cm (DH): broke suddenly here", with the name of the grains where `named`.
  void append_concern(std::string& out, std::size_t nth, bool named) const;
  bool nothing() const { return sign_count_ == 0 && concern_count_ == 0 && !other_; }
  // Some finding raises concern that is no sign.
  bool other() const { return other_; }

  // "cracking, slides", or nothing.
  const std::string& not_looked_for() const { return not_looked_for_; }
  // What did not load the nth depth: "107 cm by ECT, PST". False when there are no more.
  bool append_not_loaded(std::string& out, std::size_t nth) const;
  // In few words, an observation of the report that would tell more. False when there are no more.
  bool append_step(std::string& out, std::uint32_t nth) const;
  bool has(firnbook::CautionKey key) const;

  // "2026-11-28", with the hour where wanted and known; "date unknown".
  void append_date(std::string& out, bool with_hour) const;
  // On one line, whatever it was typed with.
  std::string_view title() const { return title_; }

 private:
  void take_sign(const firnbook::Finding& finding);
  void find_concerns();

  const firnbook::Pit& pit_;
  const firnbook::Report& report_;
  Language language_;
  std::string title_, not_looked_for_;
  const firnbook::Finding* signs_[kMostRaised] = {};
  const firnbook::Concern* concerns_[kMostRaised] = {};
  std::size_t sign_count_ = 0, concern_count_ = 0, not_looked_for_count_ = 0;
  bool other_ = false;
};

// Words as a reader counts them: what stands between blanks and holds a letter or a digit.
std::size_t words_in(std::string_view text);
// As many whole words as that, with "..." where some are left out.
void append_first_words(std::string& out, std::string_view text, std::size_t most);

}  // namespace firn::note

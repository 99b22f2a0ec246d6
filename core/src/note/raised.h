// What the shorter texts are made of: what a report raises, and what was not tested, in few words.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "note/words.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::note {

class Raised {
 public:
  Raised(const pit::View& pit, const firnbook::Report& report, Language language);

  // Signs of instability that were seen: "whumpf: seen".
  const std::vector<std::string>& signs() const { return signs_; }
  // Concerns in the report's order, without those that say little either way.
  const std::vector<const firnbook::Concern*>& concerns() const { return concerns_; }
  // Some finding raises concern and is neither sign nor part of a concern.
  bool other() const { return other_; }
  bool nothing() const { return signs_.empty() && concerns_.empty() && !other_; }
  // "cracking, slides", or nothing.
  const std::string& not_looked_for() const { return not_looked_for_; }
  bool has(firnbook::CautionKey key) const;

  // "at 17 cm (DH): broke suddenly here", with the name of the grains where `named`.
  std::string concern(const firnbook::Concern& concern, bool named) const;
  // Depth by depth, what did not load it: "107 cm by ECT, PST".
  std::vector<std::string> not_loaded(std::size_t most) const;
  // "2026-11-28", or as far as it is known.
  std::string date(bool with_hour) const;
  // On one line, whatever it was typed with.
  std::string_view title() const { return title_; }

 private:
  void find_signs();
  void find_concerns();

  const firnbook::Pit& pit_;
  const firnbook::Report& report_;
  Language language_;
  std::string title_;
  std::vector<std::string> signs_;
  std::vector<const firnbook::Concern*> concerns_;
  std::string not_looked_for_;
  bool other_ = false;
};

// Words as a reader counts them: what stands between blanks and holds a letter or a digit.
std::size_t words_in(std::string_view text);
// As many whole words as that, with "..." where some are left out.
std::string first_words(std::string_view text, std::size_t most);

}  // namespace firn::note

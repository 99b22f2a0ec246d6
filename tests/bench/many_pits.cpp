// A million different pits in one process: does memory stay flat, does time stay linear?
//
//   firnbook_many_pits [HOW_MANY]
//
// Pits are made one after another from a seed, by stated rules and invented: one to twelve layers, up to six
// tests. Each is read from field notes, interpreted and given back; the clock runs for the interpretation
// alone. Exit status 1 when a pit is refused, when memory grows by more than a tenth after the first step, or
// when a pit late in the run costs more than half as much again as an early one.
#include <firnbook/firnbook.h>
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>

namespace {

// Same numbers everywhere; the quality of the randomness does not matter here.
class Dice {
 public:
  std::uint32_t operator()(std::uint32_t sides) {
    state_ = state_ * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::uint32_t>(state_ >> 33) % sides;
  }
  template <std::size_t N>
  const char* operator()(const char* const (&words)[N]) {
    return words[(*this)(N)];
  }

 private:
  std::uint64_t state_ = 20270116;
};

std::string random_notes(Dice& dice) {
  static const char* const kHardness[] = {"F", "F+", "4F-", "4F", "4F+", "1F", "1F+", "P", "K"};
  static const char* const kForms[] = {"PPsd 2.0", "DF 1.0", "RG 0.3", "RGwp 0.3", "FC 1.5",
                                       "FCxr 1.0", "DH 3.0", "SH 6.0", "MFcr",     "MFcl 1.0"};
  static const char* const kCharacters[] = {"SP", "SC", "RP", "PC", "BRK"};
  static const char* const kAspects[] = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
  std::string notes = "time 2027-01-" + std::to_string(10 + dice(18)) + "T11:20-07:00\n";
  notes += "site " + std::to_string(1800 + dice(700)) + " m, " + dice(kAspects) + ", " +
           std::to_string(20 + dice(20)) + " deg\n";
  std::uint32_t depth = 0;
  const std::uint32_t layers = 1 + dice(12);
  std::string profile;
  for (std::uint32_t i = 0; i < layers; ++i) {
    const std::uint32_t bottom = depth + 1 + dice(30);
    profile += std::to_string(depth) + "-" + std::to_string(bottom) + " " + dice(kHardness) + " " +
               dice(kForms) + "\n";
    depth = bottom;
  }
  notes += "HS " + std::to_string(depth) + "\n" + profile;
  for (std::uint32_t tests = dice(7); tests > 0; --tests) {
    const std::string down = " down " + std::to_string(1 + dice(depth)) + "\n";
    const std::string tap = std::to_string(1 + dice(30));
    switch (dice(4)) {
      case 0:
        notes += "CT" + tap + " (" + dice(kCharacters) + ")" + down;
        break;
      case 1:
        notes += "ECTP" + tap + down;
        break;
      case 2:
        notes += "ECTN" + tap + down;
        break;
      default:
        notes += "PST " + std::to_string(10 + dice(80)) + "/100 (End)" + down;
    }
  }
  notes += dice(2) == 0 ? "sign whumpf yes\n" : "sign whumpf no, cracking no, slides none seen\n";
  return notes;
}

// Pages in use now, not the most there ever were: that is what would creep.
std::size_t resident_kb() {
  std::ifstream file("/proc/self/statm");
  std::size_t whole = 0;
  std::size_t resident = 0;
  file >> whole >> resident;
  constexpr std::size_t kPageKb = 4;
  return resident * kPageKb;
}

double seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

// Time of the interpretation, or a negative number when the pit was refused.
double interpret_one(firn_context* context, const std::string& notes) {
  firn_buffer pit = {};
  firn_buffer report = {};
  firn_error error = FIRN_INIT(firn_error);
  double taken = -1;
  if (firn_notes_read(context, notes.data(), notes.size(), nullptr, &pit, nullptr, &error) == FIRN_OK) {
    const double begin = seconds();
    if (firn_interpret(context, pit.data, pit.size, nullptr, &report, &error) == FIRN_OK)
      taken = seconds() - begin;
  }
  if (taken < 0) std::fprintf(stderr, "refused: %s\n%s", error.what, notes.c_str());
  firn_buffer_free(context, &report);
  firn_buffer_free(context, &pit);
  return taken;
}

}  // namespace

int main(int argc, char** argv) {
  const unsigned long wanted = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 1000000ul;
  firn_context* context = nullptr;
  if (wanted == 0 || firn_context_create(nullptr, &context, nullptr) != FIRN_OK) return 2;
  Dice dice;
  std::printf("%10s %12s %14s %12s\n", "pits", "seconds", "ns a pit", "memory KB");
  const unsigned long step = std::max(1ul, wanted / 10);
  double first_step = 0;
  double last_step = 0;
  double in_step = 0;
  double all = 0;
  std::size_t first_kb = 0;
  for (unsigned long i = 1; i <= wanted; ++i) {
    const double taken = interpret_one(context, random_notes(dice));
    if (taken < 0) return 1;
    in_step += taken;
    if (i % step != 0) continue;
    all += in_step;
    if (first_kb == 0) {
      first_kb = resident_kb();
      first_step = in_step;
    }
    last_step = in_step;
    in_step = 0;
    std::printf("%10lu %12.3f %14.0f %12zu\n", i, all, all / static_cast<double>(i) * 1e9, resident_kb());
  }
  const bool flat = resident_kb() * 10 <= first_kb * 11;
  const bool linear = last_step <= first_step * 1.5;
  if (!flat) std::fprintf(stderr, "memory grew from %zu KB\n", first_kb);
  if (!linear) std::fprintf(stderr, "the last tenth took %.3f s, the first %.3f s\n", last_step, first_step);
  firn_context_destroy(context);
  return flat && linear ? 0 : 1;
}

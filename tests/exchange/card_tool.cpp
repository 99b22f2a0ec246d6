// Cards for card_qr.py and card_reader.py, which have no library:
//   card_tool write NOTES OUT      OUT.firn, OUT.card and OUT.svg of the pit in NOTES
//   card_tool random COUNT OUT     OUT-0.firn, OUT-0.card ... of pits with anything in any field
//   card_tool read TEXT OUT        the pit whose card is the Base45 text in the file TEXT, as OUT.firn
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

#include "card_pits.h"
#include "exchange/card/card.h"
#include "notation/notes.h"

namespace {

using firn::recording::Bytes;
namespace card = firn::exchange::card;

std::string file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

template <class Content>
void write(const std::string& path, const Content& content) {
  std::ofstream out(path, std::ios::binary);
  out.write(reinterpret_cast<const char*>(content.data()), static_cast<std::streamsize>(content.size()));
}

int fail(const firn::Failure& failure) {
  std::fprintf(stderr, "%s: %s\n", failure.what.c_str(), failure.remedy.c_str());
  return 1;
}

int write_all(const std::string& notes_path, const std::string& out) {
  std::vector<firn::Failure> others;
  auto notes = firn::notation::read_notes(file(notes_path), {}, others);
  if (!notes) return fail(notes.failure());
  const Bytes pit = firn::recording::to_bytes(*notes->pit);
  firn::exchange::Notices notices;
  auto bytes = card::write_card(*firnbook::GetPit(pit.data()), {}, notices);
  if (!bytes) return fail(bytes.failure());
  std::string svg;
  const auto drawn = card::qr_svg(svg, card::to_base45(*bytes));
  if (!drawn) return fail(drawn.failure());
  write(out + ".firn", pit);
  write(out + ".card", *bytes);
  write(out + ".svg", svg);
  return 0;
}

int write_random(int count, const std::string& out) {
  for (int i = 0; i < count; ++i) {
    const auto numbers = i % 2 == 0 ? firn::tests::Numbers::usual : firn::tests::Numbers::mixed;
    const Bytes pit =
        firn::recording::to_bytes(*firn::tests::PitOfAnything(static_cast<std::uint64_t>(i), numbers).pit());
    firn::exchange::Notices notices;
    auto bytes = card::write_card(*firnbook::GetPit(pit.data()), {true}, notices);
    if (!bytes) return fail(bytes.failure());
    // Without what was left out.
    auto held = card::read_card(bytes->data(), bytes->size(), notices);
    if (!held) return fail(held.failure());
    write(out + "-" + std::to_string(i) + ".firn", firn::recording::to_bytes(**held));
    write(out + "-" + std::to_string(i) + ".card", *bytes);
  }
  return 0;
}

int read_one(const std::string& text_path, const std::string& out) {
  auto bytes = card::from_base45(file(text_path));
  if (!bytes) return fail(bytes.failure());
  firn::exchange::Notices notices;
  auto pit = card::read_card(bytes->data(), bytes->size(), notices);
  if (!pit) return fail(pit.failure());
  write(out + ".firn", firn::recording::to_bytes(**pit));
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 4) return 2;
  const std::string what = argv[1];
  if (what == "write") return write_all(argv[2], argv[3]);
  if (what == "random") return write_random(std::atoi(argv[2]), argv[3]);
  if (what == "read") return read_one(argv[2], argv[3]);
  return 2;
}

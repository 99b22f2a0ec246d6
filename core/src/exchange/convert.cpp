#include "exchange/convert.h"

#include <cstring>
#include <memory>
#include <utility>
#include <vector>

#include "bulletin/bulletin.h"
#include "exchange/caaml/caaml.h"
#include "exchange/card/card.h"
#include "exchange/json/json.h"
#include "exchange/table/table.h"
#include "notation/notes.h"
#include "pit/verify.h"
#include "recording/draft.h"
#include "recording/overlay.h"
#include "schemas/bulletin_generated.h"
#include "schemas/report_generated.h"
#include "support/place.h"

namespace firn::exchange {
namespace {

using recording::Bytes;

std::string_view view_of(const Bytes& bytes) {
  return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}
const std::uint8_t* data_of(std::string_view bytes) {
  return reinterpret_cast<const std::uint8_t*>(bytes.data());
}

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::string_view kBlanks = " \t\r\n";

std::string_view without_mark(std::string_view text) {
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  const std::size_t first = text.find_first_not_of(kBlanks);
  return first == std::string_view::npos ? std::string_view() : text.substr(first);
}

// Both say "bulletins": the open standard holds a list there, ours a table.
bool is_bulletin_json(std::string_view text) {
  constexpr std::string_view kKey = "\"bulletins\"";
  const std::size_t key = text.find(kKey);
  if (key == std::string_view::npos) return false;
  const std::size_t colon = text.find_first_not_of(kBlanks, key + kKey.size());
  if (colon == std::string_view::npos || text[colon] != ':') return false;
  const std::size_t value = text.find_first_not_of(kBlanks, colon + 1);
  return value != std::string_view::npos && text[value] == '[';
}

bool has_identifier(std::string_view bytes, const char* identifier) {
  return bytes.size() >= 8 && std::memcmp(bytes.data() + 4, identifier, 4) == 0;
}
bool is_firn(std::string_view bytes) {
  return has_identifier(bytes, firnbook::PitIdentifier()) ||
         has_identifier(bytes, firnbook::ReportIdentifier()) ||
         has_identifier(bytes, firnbook::BulletinsIdentifier());
}
// Blanks are characters of Base45, but what ends a line is not.
std::string_view without_line_end(std::string_view text) {
  while (!text.empty() && (text.back() == '\n' || text.back() == '\r')) text.remove_suffix(1);
  return text;
}
bool is_card_text(std::string_view bytes) {
  if (bytes.size() > 2 * card::kMostBytes) return false;
  const Result<Bytes> card = card::from_base45(without_line_end(bytes));
  return card && card::is_card(card->data(), card->size());
}

// --- the record on its way
// -----------------------------------------------------------------------------------

// The bytes of a schema, verified, and which schema it is.
struct Record {
  Root root = Root::pit;
  Bytes bytes;
  const flatbuffers::Table* table = nullptr;
  const firnbook::Pit& pit() const { return *reinterpret_cast<const firnbook::Pit*>(table); }
};

Result<Record> verified(Root root, Bytes bytes, const Limits& limits) {
  using Verify = bool (*)(flatbuffers::Verifier&);
  constexpr Verify kVerify[] = {[](flatbuffers::Verifier& v) { return firnbook::VerifyPitBuffer(v); },
                                [](flatbuffers::Verifier& v) { return firnbook::VerifyReportBuffer(v); },
                                [](flatbuffers::Verifier& v) { return firnbook::VerifyBulletinsBuffer(v); }};
  const char* const identifiers[] = {firnbook::PitIdentifier(), firnbook::ReportIdentifier(),
                                     firnbook::BulletinsIdentifier()};
  constexpr const char* kWords[] = {"pit", "report", "set of bulletins"};
  const auto which = static_cast<std::size_t>(root);
  const pit::Schema schema = {identifiers[which], kWords[which], kVerify[which]};
  // Vectors are aligned as new is, so these bytes stay where they are.
  pit::AlignedBytes aligned;
  Record record{root, std::move(bytes), nullptr};
  Result<const std::uint8_t*> data =
      pit::verify_bytes(record.bytes.data(), record.bytes.size(), {limits.max_bytes}, schema, aligned);
  if (!data) return data.failure();
  record.table = flatbuffers::GetRoot<flatbuffers::Table>(record.bytes.data());
  if (root == Root::pit && recording::content_of(record.pit()) > recording::kMostContent) {
    return failure_of(FIRN_TOO_LARGE,
                      "the pit holds more than 256 MB of text and values once they are unpacked",
                      "no record is that large; its bytes may be made to harm");
  }
  return record;
}

Result<Record> record_of(firnbook::PitT& pit, const Limits& limits) {
  return verified(Root::pit, recording::to_bytes(pit), limits);
}

Result<Record> from_firn(std::string_view bytes, const Limits& limits) {
  Root root = Root::pit;
  if (has_identifier(bytes, firnbook::ReportIdentifier())) root = Root::report;
  if (has_identifier(bytes, firnbook::BulletinsIdentifier())) root = Root::bulletins;
  return verified(root, Bytes(bytes.begin(), bytes.end()), limits);
}

// What JSON holds beyond the schema stays with the pit, as other people's data do.
constexpr const char kUnknownMember[] = "urn:firnbook:json:unknown";

Result<Record> from_json(std::string_view text, const Limits& limits, Notices& notices) {
  Result<JsonRead> read = read_json(text, limits, notices);
  if (!read) return read.failure();
  Result<Record> record = verified(read->root, std::move(read->bytes), limits);
  if (!record || record->root != Root::pit) return record;
  Result<std::unique_ptr<firnbook::PitT>> pit = recording::from_bytes(record->pit());
  // Of a newer minor version: it stays as it is.
  if (!pit) return record;
  for (const UnknownMember& member : read->unknown) {
    auto extension = std::make_unique<firnbook::ExtensionT>();
    extension->key = std::string(kUnknownMember) + "#" + member.pointer;
    extension->bytes.assign(member.text.begin(), member.text.end());
    (*pit)->extensions.push_back(std::move(extension));
  }
  return record_of(**pit, limits);
}

Result<Record> from_pit(Result<std::unique_ptr<firnbook::PitT>> read, const Limits& limits) {
  if (!read) return read.failure();
  return record_of(**read, limits);
}

Result<Record> from_notes(std::string_view text, const Conversion& conversion, Notices& notices) {
  notation::NotesOptions options;
  options.keep_unread = conversion.keep_unread;
  options.max_bytes = conversion.limits.max_bytes;
  std::vector<Failure> others;
  Result<notation::NotesRead> read = notation::read_notes(text, options, others);
  if (!read) return read.failure();
  for (const Failure& remark : read->remarks) {
    const bool was_kept = remark.status != FIRN_OK;
    notices.add(
        {was_kept ? NoticeKind::kept : NoticeKind::changed, remark.line, remark.column, {}, remark.what});
  }
  return record_of(*read->pit, conversion.limits);
}

Result<Record> from_bulletin_json(std::string_view text, const Limits& limits, Notices& notices) {
  flatbuffers::FlatBufferBuilder builder;
  bulletin::Messages messages;
  Done read = bulletin::read_json(text, builder, messages);
  if (!read) return read.failure();
  for (const bulletin::Message& message : messages.list) {
    notices.add({NoticeKind::not_understood, message.line, message.column, message.path, message.what});
  }
  for (std::size_t i = 0; i < messages.left_out; ++i) {
    notices.add({NoticeKind::not_understood, 0, 0, {}, "one more of this kind"});
  }
  return verified(Root::bulletins,
                  Bytes(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()), limits);
}

Result<Record> from_card(std::string_view bytes, const Limits& limits, Notices& notices) {
  return from_pit(card::read_card(data_of(bytes), bytes.size(), notices), limits);
}

Failure only_written(const char* what) {
  return failure_of(FIRN_BAD_ARGUMENT, std::string(what) + " is written only and not read",
                    "read the record in another format");
}

Result<Record> read(std::string_view bytes, Format from, const Conversion& conversion, Notices& notices) {
  const Limits& limits = conversion.limits;
  switch (from) {
    case Format::firn:
      return from_firn(bytes, limits);
    case Format::json:
      return from_json(bytes, limits, notices);
    case Format::caaml:
      return from_pit(read_caaml(bytes, limits, notices), limits);
    case Format::notes:
      return from_notes(bytes, conversion, notices);
    case Format::card:
      return from_card(bytes, limits, notices);
    case Format::card_text: {
      const Result<Bytes> card = card::from_base45(without_line_end(bytes));
      if (!card) return card.failure();
      return from_card(view_of(*card), limits, notices);
    }
    case Format::bulletin_json:
      return from_bulletin_json(bytes, limits, notices);
    case Format::card_picture:
      return only_written("a QR code");
    default:
      return only_written("a table");
  }
}

// What the observer marked as not to be passed on with the pit.
Result<Record> for_others(const firnbook::Pit& stored, const Limits& limits, Notices& notices) {
  Result<std::unique_ptr<firnbook::PitT>> pit = recording::from_bytes(stored);
  if (!pit) return pit.failure();
  for (std::size_t i = 0; i < (*pit)->remarks.size(); ++i) {
    std::unique_ptr<firnbook::RemarkT>& remark = (*pit)->remarks[i];
    if (remark == nullptr || !remark->confidential.value_or(false)) continue;
    const auto place = place_of(firnbook::Thing::remark, static_cast<std::int32_t>(i), kWholeThing);
    notices.add({NoticeKind::left_out, 0, 0, path_of(place), "is confidential, and the pit is passed on"});
    remark.reset();
  }
  return record_of(**pit, limits);
}

// --- out -------------------------------------------------------------------------------------------------

Done write_notes(const firnbook::Pit& pit, std::string& out, Notices& notices) {
  std::vector<firnbook::Place> lost;
  notation::write_notes(out, pit, lost);
  for (const firnbook::Place& place : lost) {
    notices.add({NoticeKind::left_out, 0, 0, path_of(place), "field notes cannot hold it"});
  }
  return done();
}

Done write_card(const firnbook::Pit& pit, const Conversion& conversion, std::string& out, Notices& notices) {
  const Result<Bytes> card = card::write_card(pit, {conversion.leave_out}, notices);
  if (!card) return card.failure();
  if (conversion.to == Format::card) {
    out += view_of(*card);
    return done();
  }
  const std::string text = card::to_base45(*card);
  if (conversion.to == Format::card_picture) return card::qr_svg(out, text);
  out += text;
  return done();
}

Done write_table(table::Table which, const firnbook::Pit& pit, const Conversion& conversion, std::string& out,
                 Notices& notices) {
  if (!conversion.rows_only) table::append_header(out, which);
  table::append_rows(out, which, pit, notices);
  return done();
}

Done write_pit(const firnbook::Pit& pit, const Conversion& conversion, std::string& out, Notices& notices) {
  switch (conversion.to) {
    case Format::caaml:
      return write_caaml(out, pit, notices);
    case Format::notes:
      return write_notes(pit, out, notices);
    case Format::card:
    case Format::card_text:
    case Format::card_picture:
      return write_card(pit, conversion, out, notices);
    case Format::layers_table:
      return write_table(table::Table::layers, pit, conversion, out, notices);
    case Format::tests_table:
      return write_table(table::Table::tests, pit, conversion, out, notices);
    case Format::pits_table:
      return write_table(table::Table::pits, pit, conversion, out, notices);
    default:
      return failure_of(FIRN_BAD_ARGUMENT, "the open JSON of bulletins is read only and not written",
                        "write JSON (FIRN_FORMAT_JSON) or the schema's bytes");
  }
}

}  // namespace

Format detect(std::string_view bytes) {
  if (is_firn(bytes)) return Format::firn;
  if (card::is_card(data_of(bytes), bytes.size())) return Format::card;
  const std::string_view text = without_mark(bytes);
  if (!text.empty() && text[0] == '<') return Format::caaml;
  if (!text.empty() && text[0] == '{') return is_bulletin_json(text) ? Format::bulletin_json : Format::json;
  return is_card_text(bytes) ? Format::card_text : Format::notes;
}

Done convert(std::string_view bytes, const Conversion& conversion, std::string& out, Notices& notices) {
  if (bytes.size() > conversion.limits.max_bytes) {
    return failure_of(FIRN_TOO_LARGE, "more bytes than the limit allows for a document",
                      "raise max_bytes in the options if this document is trusted");
  }
  const Format from = conversion.from == Format::detect ? detect(bytes) : conversion.from;
  Result<Record> record = read(bytes, from, conversion, notices);
  if (record && conversion.for_others && record->root == Root::pit) {
    record = for_others(record->pit(), conversion.limits, notices);
  }
  if (!record) return record.failure();
  if (conversion.to == Format::firn) {
    out += view_of(record->bytes);
    return done();
  }
  if (conversion.to == Format::json) {
    write_json(out, record->root, *record->table, conversion.indent, notices);
    return done();
  }
  if (record->root != Root::pit) {
    return failure_of(FIRN_BAD_ARGUMENT, "this format holds pits, and what was given is none",
                      "a report and bulletins go into JSON (FIRN_FORMAT_JSON) or the schema's bytes");
  }
  return write_pit(record->pit(), conversion, out, notices);
}

}  // namespace firn::exchange

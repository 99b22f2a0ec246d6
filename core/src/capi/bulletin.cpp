// Bulletins as they come in: from a file, or typed.
#include "firnbook/bulletin.h"

#include "bulletin/bulletin.h"
#include "capi/fields.h"
#include "capi/guard.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "support/text.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

using flatbuffers::FlatBufferBuilder;
using flatbuffers::Offset;

constexpr std::size_t kMostEntries = 1000;
constexpr std::int16_t kHighest = 9000;

void append_message(std::string& out, const bulletin::Message& message) {
  out += message.path.empty() ? "the file" : message.path;
  out += ", line ";
  append_unsigned(out, message.line);
  out += ", column ";
  append_unsigned(out, message.column);
  out += ": ";
  out += message.what;
  out += "; ";
  out += message.remedy;
  out += '\n';
}

// Keys and values of a file may hold anything; a message is one line.
void make_lines_whole(std::string& text, std::size_t from) {
  for (std::size_t i = from; i + 1 < text.size(); ++i) {
    if (static_cast<unsigned char>(text[i]) < 0x20 || text[i] == 0x7F) text[i] = ' ';
  }
}

Done read(firn_context& context, std::string_view json, firn_buffer* out, firn_buffer* messages) {
  if (json.size() > context.limits.max_notes_bytes) {
    return failure_of(FIRN_TOO_LARGE, "more bytes than the limit allows for a bulletin",
                      "raise max_notes_bytes in the context's options if this file is trusted");
  }
  FlatBufferBuilder& builder = context.work.builder;
  bulletin::Messages told;
  Done done_reading = bulletin::read_json(json, builder, told);
  if (!done_reading) return done_reading;
  std::string& lines = context.work.text;
  lines.clear();
  for (const bulletin::Message& message : told.list) {
    const std::size_t from = lines.size();
    append_message(lines, message);
    make_lines_whole(lines, from);
    context.log.write(FIRN_LOG_INFO, "firn_bulletin_read", message.what);
  }
  if (told.left_out != 0) {
    lines += "the file: ";
    append_unsigned(lines, told.left_out);
    lines += " more of this kind; mend the first ones and read it again\n";
  }
  Staged staged(context, out), staged_messages(context, messages);
  staged.fill(builder.GetBufferPointer(), builder.GetSize());
  staged_messages.fill(lines);
  staged.publish();
  staged_messages.publish();
  return done();
}

Failure out_of_range(const char* what, const char* remedy) {
  return failure_of(FIRN_BAD_ARGUMENT, what, remedy);
}

Done check_text(const char* text, const char* name) {
  if (text == nullptr || is_utf8(text)) return done();
  return failure_of(FIRN_BAD_UTF8, std::string(name) + " is not UTF-8", "give text as UTF-8");
}

Done check_scope(const firn_bulletin_scope& scope) {
  const bool lower = scope.lower_treeline > 1 || scope.lower_m < 0 || scope.lower_m > kHighest ||
                     (scope.lower_treeline == 1 && scope.lower_m != 0);
  const bool upper = scope.upper_treeline > 1 || scope.upper_m < 0 || scope.upper_m > kHighest ||
                     (scope.upper_treeline == 1 && scope.upper_m != 0);
  if (lower || upper) {
    return out_of_range("an elevation is outside 0 to 9000 m, or is given beside the treeline",
                        "give metres, or the treeline, or 0 for no limit");
  }
  if (scope.lower_m != 0 && scope.upper_m != 0 && scope.lower_m > scope.upper_m) {
    return out_of_range("lower_m lies above upper_m", "give the lower limit first");
  }
  constexpr unsigned kAspects = 0x3FE;  // N to NW, and flat
  if ((scope.aspects & ~kAspects) != 0) {
    return out_of_range("aspects holds a bit that is no aspect",
                        "give FIRN_ASPECT_BITs of N to NW, or 0 for all");
  }
  if (scope.period > FIRN_DAY_PERIOD_LATER) {
    return out_of_range("period is none of firn_day_period", "give one of them, or 0");
  }
  return done();
}

bool is_level(std::uint8_t level) {
  return (level >= FIRN_DANGER_LEVEL_LOW && level <= FIRN_DANGER_LEVEL_VERY_HIGH) ||
         level == FIRN_DANGER_LEVEL_NO_SNOW || level == FIRN_DANGER_LEVEL_NO_RATING;
}

bool is_type(std::uint8_t type) {
  return (type >= FIRN_PROBLEM_TYPE_NEW_SNOW && type <= FIRN_PROBLEM_TYPE_FAVOURABLE_SITUATION) ||
         (type >= FIRN_PROBLEM_TYPE_DRY_LOOSE && type <= FIRN_PROBLEM_TYPE_CORNICE);
}

Done check_rating(const firn_bulletin_rating& rating) {
  if (!is_level(rating.level)) return out_of_range("level is none of firn_danger_level", "give one of them");
  return check_scope(rating.scope);
}

Done check_problem(const firn_bulletin_problem& problem) {
  if (!is_type(problem.type)) return out_of_range("type is none of firn_problem_type", "give one of them");
  if (problem.level != 0 && !is_level(problem.level))
    return out_of_range("level is none of firn_danger_level", "give one of them, or 0");
  if (problem.size_tenths != 0 && (problem.size_tenths < 10 || problem.size_tenths > 50))
    return out_of_range("size_tenths is outside 10 to 50", "give the size in tenths, or 0");
  if (problem.stability > FIRN_SNOWPACK_STABILITY_VERY_POOR || problem.frequency > FIRN_FREQUENCY_MANY)
    return out_of_range("stability or frequency is none of its values", "give one of them, or 0");
  Done text = check_text(problem.comment, "comment");
  return text ? check_scope(problem.scope) : std::move(text);
}

// An element of a list whose elements may be larger or smaller than they are here.
template <class T>
T element(const T* list, std::size_t index) {
  T out = {};
  const std::size_t size = list->struct_size;
  const auto* bytes = reinterpret_cast<const unsigned char*>(list) + index * size;
  std::memcpy(&out, bytes, std::min(size, sizeof(T)));
  return out;
}

template <class T>
Done check_list(const T* list, std::size_t count, std::size_t first_version, const char* name,
                Done (*check)(const T&)) {
  if (count == 0) return done();
  if (list == nullptr) return null_argument(name);
  if (count > kMostEntries)
    return out_of_range("a list has more than 1000 elements", "no bulletin is that long");
  for (std::size_t i = 0; i < count; ++i) {
    const T one = element(list, i);
    Done size = check_struct_size(one.struct_size, first_version, name);
    if (!size) return size;
    if (one.struct_size != list->struct_size) {
      return failure_of(FIRN_BAD_STRUCT_SIZE, "the elements of a list are not of one size",
                        "set the struct_size of each");
    }
    Done fits = check(one);
    if (!fits) return fits;
  }
  return done();
}

bulletin::ScopeParts parts_of(const firn_bulletin_scope& scope) {
  bulletin::ScopeParts parts;
  parts.has_lower = scope.lower_m != 0 || scope.lower_treeline == 1;
  parts.has_upper = scope.upper_m != 0 || scope.upper_treeline == 1;
  parts.lower = {scope.lower_m, scope.lower_treeline == 1};
  parts.upper = {scope.upper_m, scope.upper_treeline == 1};
  for (std::uint8_t point = FIRN_COMPASS_POINT_N; point <= FIRN_COMPASS_POINT_NONE; ++point) {
    if ((scope.aspects >> point & 1u) != 0) parts.aspects.push_back(point);
  }
  parts.period = scope.period;
  return parts;
}

Offset<flatbuffers::String> text(const char* words, FlatBufferBuilder& builder) {
  return words == nullptr ? Offset<flatbuffers::String>() : bulletin::write_text(words, builder);
}

Offset<firnbook::DangerRating> write_rating(const firn_bulletin_rating& rating, FlatBufferBuilder& builder) {
  const auto scope = bulletin::write_scope(parts_of(rating.scope), builder);
  firnbook::DangerRatingBuilder table(builder);
  table.add_level(static_cast<firnbook::DangerLevel>(rating.level));
  if (!scope.IsNull()) table.add_scope(scope);
  return table.Finish();
}

Offset<firnbook::Problem> write_problem(const firn_bulletin_problem& problem, FlatBufferBuilder& builder) {
  const auto scope = bulletin::write_scope(parts_of(problem.scope), builder);
  const auto comment = text(problem.comment, builder);
  firnbook::ProblemBuilder table(builder);
  table.add_type(static_cast<firnbook::ProblemType>(problem.type));
  if (!scope.IsNull()) table.add_scope(scope);
  if (problem.stability != 0)
    table.add_stability(static_cast<firnbook::SnowpackStability>(problem.stability));
  if (problem.frequency != 0) table.add_frequency(static_cast<firnbook::Frequency>(problem.frequency));
  if (problem.size_tenths != 0) table.add_size_tenths(problem.size_tenths);
  if (problem.level != 0) table.add_level(static_cast<firnbook::DangerLevel>(problem.level));
  if (!comment.IsNull()) table.add_comment(comment);
  return table.Finish();
}

template <class Table, class T>
std::vector<Offset<Table>> write_all(const T* list, std::size_t count, FlatBufferBuilder& builder,
                                     Offset<Table> (*write)(const T&, FlatBufferBuilder&)) {
  std::vector<Offset<Table>> out;
  for (std::size_t i = 0; i < count; ++i) out.push_back(write(element(list, i), builder));
  return out;
}

Offset<firnbook::Bulletin> write_bulletin(const firn_bulletin_typed& typed, FlatBufferBuilder& builder) {
  const auto region_id = text(typed.region_id, builder);
  const auto region_name = text(typed.region_name, builder);
  firnbook::RegionBuilder region_table(builder);
  if (!region_id.IsNull()) region_table.add_id(region_id);
  if (!region_name.IsNull()) region_table.add_name(region_name);
  const std::vector<Offset<firnbook::Region>> region = {region_table.Finish()};
  const auto regions = bulletin::write_list(region, builder);
  const auto ratings = bulletin::write_list(
      write_all<firnbook::DangerRating>(typed.ratings, typed.rating_count, builder, write_rating), builder);
  const auto problems = bulletin::write_list(
      write_all<firnbook::Problem>(typed.problems, typed.problem_count, builder, write_problem), builder);
  const auto source = text(typed.source, builder);
  const auto language = text(typed.language, builder);
  const auto highlights = text(typed.highlights, builder);
  const firnbook::Moment published = moment_of(typed.published);
  const firnbook::TimeSpan valid = {moment_of(typed.valid.begin), moment_of(typed.valid.end)};
  firnbook::BulletinBuilder table(builder);
  table.add_schema_minor(pit::kSchemaMinor);
  table.add_regions(regions);
  if (!ratings.IsNull()) table.add_ratings(ratings);
  if (!problems.IsNull()) table.add_problems(problems);
  if (!source.IsNull()) table.add_source(source);
  if (!language.IsNull()) table.add_language(language);
  if (!highlights.IsNull()) table.add_highlights(highlights);
  if (typed.published.precision != 0) table.add_published(&published);
  if (typed.valid.begin.precision != 0 || typed.valid.end.precision != 0) table.add_valid(&valid);
  table.add_typed_by_hand(true);
  return table.Finish();
}

Done check_moment(const firn_moment& moment) {
  if (moment.precision <= FIRN_TIME_PRECISION_SECOND && moment.offset_known <= 1 &&
      moment.offset_min >= -1440 && moment.offset_min <= 1440) {
    return done();
  }
  return out_of_range("a moment has a precision, an offset_known or an offset_min that is out of range",
                      "look at firn_moment");
}

Done check(const firn_bulletin_typed& typed) {
  if (typed.none_issued > 1) return out_of_range("none_issued is neither 0 nor 1", "give 0 or 1");
  if (typed.none_issued == 1) return done();
  const bool has_id = typed.region_id != nullptr && *typed.region_id != 0;
  const bool has_name = typed.region_name != nullptr && *typed.region_name != 0;
  if (!has_id && !has_name)
    return out_of_range("the bulletin has no region",
                        "give region_id or region_name: a bulletin speaks of one");
  const struct {
    const char* text;
    const char* name;
  } texts[] = {{typed.region_id, "region_id"},
               {typed.region_name, "region_name"},
               {typed.source, "source"},
               {typed.language, "language"},
               {typed.highlights, "highlights"}};
  for (const auto& one : texts) {
    Done fits = check_text(one.text, one.name);
    if (!fits) return fits;
  }
  for (const firn_moment* moment : {&typed.published, &typed.valid.begin, &typed.valid.end}) {
    Done fits = check_moment(*moment);
    if (!fits) return fits;
  }
  Done ratings =
      check_list(typed.ratings, typed.rating_count, FIRN_FIRST_VERSION(firn_bulletin_rating, scope),
                 "firn_bulletin_rating", check_rating);
  if (!ratings) return ratings;
  return check_list(typed.problems, typed.problem_count, FIRN_FIRST_VERSION(firn_bulletin_problem, comment),
                    "firn_bulletin_problem", check_problem);
}

}  // namespace
}  // namespace firn::capi

firn_status firn_bulletin_read(firn_context* context, const char* json, size_t size, firn_buffer* bulletin,
                               firn_buffer* messages, firn_error* error) {
  return guard({context, error, __func__, {bulletin, messages}}, [&]() -> firn::Done {
    if (json == nullptr) return null_argument("json");
    if (bulletin == nullptr) return null_argument("bulletin");
    return read(*context, {json, size}, bulletin, messages);
  });
}

firn_status firn_bulletin_write(firn_context* context, const firn_bulletin_typed* typed,
                                firn_buffer* bulletin, firn_error* error) {
  return guard({context, error, __func__, {bulletin}}, [&]() -> firn::Done {
    if (typed == nullptr) return null_argument("typed");
    if (bulletin == nullptr) return null_argument("bulletin");
    firn::Result<firn_bulletin_typed> given =
        read_options(typed, FIRN_FIRST_VERSION(firn_bulletin_typed, problem_count), "firn_bulletin_typed");
    if (!given) return given.failure();
    firn::Done fits = check(*given);
    if (!fits) return fits;
    flatbuffers::FlatBufferBuilder& builder = context->work.builder;
    builder.Clear();
    std::vector<flatbuffers::Offset<firnbook::Bulletin>> all;
    if (given->none_issued == 0) all.push_back(write_bulletin(*given, builder));
    const auto list = builder.CreateVector(all.data(), all.size());
    firnbook::BulletinsBuilder table(builder);
    table.add_schema_minor(firn::pit::kSchemaMinor);
    table.add_bulletins(list);
    const auto root = table.Finish();
    firnbook::FinishBulletinsBuffer(builder, root);
    give(*context, bulletin, builder.GetBufferPointer(), builder.GetSize());
    return firn::done();
  });
}

// Header of the standard profile (ICSSG; from memory, medium): place, time, observer, elevation, aspect,
// slope, HS, weather, penetration. Age and place come first.
#include <algorithm>
#include <string>
#include <string_view>

#include "drawing/text_fit.h"
#include "drawing/wording.h"
#include "drawing/words_around.h"
#include "support/text.h"

namespace firn::drawing {
namespace {

constexpr std::uint32_t kMostNames = 6;
constexpr std::uint32_t kMostProbes = 8;
constexpr std::uint32_t kMostSigns = 12;
constexpr std::string_view kDegree = "\xC2\xB0";

// Writes pieces into a column through one reused string.
class Pieces {
 public:
  explicit Pieces(Column& column) : column_(column) {}
  std::string& fresh() {
    text_.clear();
    return text_;
  }
  std::string& text() { return text_; }
  void piece(Ink ink = Ink::plain) { column_.piece(ink, text_); }
  Column& column() { return column_; }

 private:
  Column& column_;
  std::string text_;
};

void put_time_and_people(Pieces& out, const firnbook::Pit& pit) {
  if (pit.time() != nullptr && pit.time()->begin().precision() != firnbook::TimePrecision::none) {
    append_moment(out.fresh(), pit.time()->begin());
    out.piece(Ink::strong);
  } else {
    out.column().piece(Ink::quiet, "time not recorded");
  }
  const std::uint32_t people = pit::size_of(pit.observers());
  if (people == 0) {
    out.column().piece(Ink::quiet, "observer not recorded");
    return;
  }
  out.fresh() += people == 1 ? "observer " : "observers ";
  for (std::uint32_t i = 0; i < std::min(people, kMostNames); ++i) {
    if (i > 0) out.text() += ", ";
    append_clipped(out.text(), pit::text(pit.observers()->Get(i)->name()), 10, false, 160);
  }
  if (people > kMostNames) out.text() += ", \xE2\x80\xA6";
  out.piece();
}

void put_place(Pieces& out, const pit::View& pit) {
  const firnbook::Site* site = pit.raw().site();
  if (site == nullptr) {
    out.column().piece(Ink::quiet, "place not recorded");
    return;
  }
  const std::string_view name = pit::text(site->name());
  const std::string_view title = pit::text(pit.raw().title());
  if (!title.empty() && !name.empty() && name != title) out.column().piece(Ink::plain, name);
  if (site->elevation_10um()) {
    append_fixed(out.fresh(), *site->elevation_10um(), 5);
    out.text() += " m";
    out.piece();
  }
  if (site->aspect_point()) {
    append_code<firnbook::CompassPoint>(out.fresh(), pit::number(site->aspect_point()));
    if (site->aspect_deg()) {
      out.text() += " (";
      append_integer(out.text(), *site->aspect_deg());
      out.text() += kDegree;
      out.text() += ')';
    }
    out.piece();
  } else if (site->aspect_deg()) {
    append_integer(out.fresh() += "aspect ", *site->aspect_deg());
    out.text() += kDegree;
    out.piece();
  }
  if (site->slope_deg()) {
    append_integer(out.fresh() += "slope ", *site->slope_deg());
    out.text() += kDegree;
    out.piece();
  }
}

void put_penetration(Pieces& out, std::string_view symbol, const flatbuffers::Optional<std::int32_t>& depth) {
  if (!depth) return;
  out.fresh() += symbol;
  out.text() += ' ';
  append_cm(out.text(), *depth);
  out.text() += " cm";
  out.piece();
}

void put_snow(Pieces& out, const pit::View& pit) {
  out.fresh() += pit.direction() == firnbook::Direction::slope_normal ? "DS " : "HS ";
  if (pit.hs() == pit::kUnknown) {
    out.text() += "not recorded";
    out.piece(Ink::quiet);
  } else {
    append_cm(out.text(), pit.hs());
    out.text() += " cm";
    out.piece();
  }
  if (pit.direction() == firnbook::Direction::slope_normal) {
    out.column().piece(Ink::plain, "depths at right angles to the slope");
  }
  const firnbook::Site* site = pit.raw().site();
  const std::uint32_t probes = site == nullptr ? 0 : pit::size_of(site->probes_10um());
  if (probes > 0) {
    out.fresh() += "probed ";
    for (std::uint32_t i = 0; i < std::min(probes, kMostProbes); ++i) {
      if (i > 0) out.text() += ", ";
      append_cm(out.text(), site->probes_10um()->Get(i));
    }
    out.text() += probes > kMostProbes ? ", \xE2\x80\xA6 cm" : " cm";
    out.piece();
  }
  const firnbook::Surface* surface = pit.raw().surface();
  if (surface == nullptr) return;
  put_penetration(out, "PF", surface->penetration_foot_10um());
  put_penetration(out, "PS", surface->penetration_ski_10um());
  put_penetration(out, "PR", surface->penetration_ram_10um());
}

void put_precipitation(Pieces& out, const firnbook::Weather& weather) {
  if (!weather.precipitation() && !weather.precipitation_rate()) return;
  out.fresh() += "precip";
  if (weather.precipitation()) {
    out.text() += ' ';
    append_code<firnbook::Precipitation>(out.text(), pit::number(weather.precipitation()));
  }
  if (weather.precipitation_rate()) {
    out.text() += ' ';
    append_code<firnbook::PrecipitationRate>(out.text(), pit::number(weather.precipitation_rate()));
  }
  out.piece();
}

void put_wind(Pieces& out, const firnbook::Weather& weather) {
  if (weather.wind() || weather.wind_speed_cms() || weather.wind_from_point() || weather.wind_from_deg()) {
    out.fresh() += "wind";
    if (weather.wind()) {
      append_code<firnbook::WindClass>(out.text() += ' ', pit::number(weather.wind()));
    }
    if (weather.wind_speed_cms()) {
      append_fixed(out.text() += ' ', *weather.wind_speed_cms(), 2);
      out.text() += " m/s";
    }
    if (weather.wind_from_point()) {
      append_code<firnbook::CompassPoint>(out.text() += " from ", pit::number(weather.wind_from_point()));
    } else if (weather.wind_from_deg()) {
      append_integer(out.text() += " from ", *weather.wind_from_deg());
      out.text() += kDegree;
    }
    out.piece();
  }
  if (weather.blowing_snow()) {
    append_code<firnbook::BlowingSnow>(out.fresh() += "blowing snow ", pit::number(weather.blowing_snow()));
    out.piece();
  }
}

void put_weather(Pieces& out, const firnbook::Weather& weather) {
  if (weather.sky()) {
    out.fresh() += "sky ";
    if (weather.sky_thin() && *weather.sky_thin()) out.text() += '-';
    append_code<firnbook::SkyCondition>(out.text(), pit::number(weather.sky()));
    out.piece();
  }
  if (weather.valley_fog_base_10um() || weather.valley_fog_top_10um()) {
    out.fresh() += "valley fog ";
    if (weather.valley_fog_base_10um()) append_fixed(out.text(), *weather.valley_fog_base_10um(), 5);
    out.text() += "\xE2\x80\x93";
    if (weather.valley_fog_top_10um()) append_fixed(out.text(), *weather.valley_fog_top_10um(), 5);
    out.text() += " m";
    out.piece();
  }
  put_precipitation(out, weather);
  put_wind(out, weather);
  if (weather.air_temperature_cdegc()) {
    append_degrees(out.fresh() += "air ", *weather.air_temperature_cdegc());
    out.piece();
  }
}

// Yes first, then what nobody looked for, then no: the order in which they should worry a reader.
std::int32_t reading_order(std::uint8_t answer) {
  if (answer == static_cast<std::uint8_t>(firnbook::Answer::yes)) return 0;
  return answer == static_cast<std::uint8_t>(firnbook::Answer::no) ? 2 : 1;
}

void put_sign(Pieces& out, const firnbook::Sign& sign) {
  const std::uint8_t kind = pit::number(sign.kind());
  append_code<firnbook::SignKind>(out.fresh(), kind);
  const std::uint8_t answer = pit::number(sign.answer());
  if (answer == 0) {
    out.text() += ": answer not recorded";
  } else {
    append_code<firnbook::Answer>(out.text() += ": ", answer);
  }
  if (sign.length_10um()) {
    append_fixed(out.text() += ", ", *sign.length_10um(), 5);
    out.text() += " m";
  }
  out.piece(reading_order(answer) == 0 ? Ink::strong : Ink::plain);
}

// True when some sign was seen.
bool put_signs(Pieces& out, const firnbook::Pit& pit) {
  const std::uint32_t count = pit::size_of(pit.signs());
  const std::uint32_t slides = pit::size_of(pit.slides());
  bool seen = false;
  std::uint32_t shown = 0;
  for (std::int32_t pass = 0; pass < 3; ++pass) {
    for (std::uint32_t i = 0; i < count; ++i) {
      const firnbook::Sign& sign = *pit.signs()->Get(i);
      if (reading_order(pit::number(sign.answer())) != pass) continue;
      seen = seen || pass == 0;
      if (++shown <= kMostSigns) put_sign(out, sign);
    }
    if (pass > 0 || slides == 0) continue;
    seen = true;
    append_integer(out.fresh(), slides);
    out.text() += slides == 1 ? " recent slide recorded" : " recent slides recorded";
    out.piece(Ink::strong);
  }
  if (shown > kMostSigns) {
    append_integer(out.fresh() += "\xE2\x80\xA6 ", shown - kMostSigns);
    out.text() += " more";
    out.piece();
  }
  if (count == 0 && slides == 0) out.column().piece(Ink::plain, "not recorded");
  return seen;
}

Tenths append_signs(std::string& out, const firnbook::Pit& pit, const Page& page, Tenths top) {
  const Tenths inset = page.font * 3 / 4;
  Column column(page.inner() - 2 * inset, page.font, page.row, Between::dot);
  column.begin_item(0, 0, 0, false);
  column.piece(Ink::plain, "Signs of instability");
  Pieces pieces(column);
  const bool seen = put_signs(pieces, pit);
  column.end_item();
  const Tenths height = column.total_height(0) + page.font / 2;
  append_rect(out, page.margin, top, page.inner(), height, " fill=\"#f2f2f2\"");
  append_rect(out, page.margin, top, page.font / 4, height, seen ? " fill=\"#9c3d10\"" : " fill=\"#999\"");
  column.append_stacked(out, page.margin + inset, top + page.font / 4);
  return top + height;
}

Tenths append_title(std::string& out, const firnbook::Pit& pit, const Page& page, Tenths top) {
  Column column(page.inner(), page.title_font, page.title_font * 5 / 4, Between::space);
  column.begin_item(0, 0, 0, false);
  std::string_view title = pit::text(pit.title());
  if (title.empty() && pit.site() != nullptr) title = pit::text(pit.site()->name());
  column.prose(Ink::strong, title.empty() ? std::string_view("Snow profile") : title, 2);
  column.end_item();
  out += "<g font-size=\"";
  append_tenths(out, page.title_font);
  out += "\">\n";
  const Tenths bottom = column.append_stacked(out, page.margin, top);
  out += "</g>\n";
  return bottom;
}

}  // namespace

Tenths append_header(std::string& out, const pit::View& pit, const Page& page, Tenths top) {
  top = append_title(out, pit.raw(), page, top) + page.font / 4;
  Column column(page.inner(), page.font, page.row, Between::dot);
  Pieces pieces(column);
  const auto line = [&](const auto& put) {
    column.begin_item(0, 0, 0, false);
    put();
    column.end_item();
  };
  if (pit.raw().practice() && *pit.raw().practice()) {
    line([&] { column.piece(Ink::tag, "PRACTICE: invented data"); });
  }
  line([&] { put_time_and_people(pieces, pit.raw()); });
  line([&] { put_place(pieces, pit); });
  line([&] { put_snow(pieces, pit); });
  if (pit.raw().weather() != nullptr) line([&] { put_weather(pieces, *pit.raw().weather()); });
  top = column.append_stacked(out, page.margin, top) + page.font / 2;
  return append_signs(out, pit.raw(), page, top);
}

}  // namespace firn::drawing

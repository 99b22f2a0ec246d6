/* Recording a pit. Since 0.1.

   A pit is the fold of its edits: each edit says one thing, such as one layer or one test. A recorder holds
   a set of edits and folds them; it does no I/O. Edits come in two ways, which may be mixed:
   - as bytes (schemas/edit.fbs), made by another program or read back from where they were stored;
   - as plain structs, one object per call. Each such call makes the edit, applies it, and gives its bytes,
     to be stored by the host, to whoever asks for them.

   The structs
   - Start with FIRN_INIT(firn_layer) and the like: that sets struct_size and nothing else.
   - A number counts only when its bit is set in `present` (FIRN_BIT(FIRN_FIELD_LAYER_HARDNESS)): an absent
     field means "not observed", and zero means zero. Bits are the field ids of codes.h.
   - Text counts when its pointer is not NULL and it is not empty, lists when their count is not 0; their bits
     may be left out. Text is UTF-8, ends with a NUL, holds no control characters but tab and newline, and is
     copied.
   - A bit in `unreliable` says "observed, but do not lean on it".
   - A bit for a field that the struct does not hold is FIRN_BAD_ARGUMENT, so that nothing is lost in silence.
   - Elements of a list carry their own struct_size, the same in each: it is the distance between them.
   - Units stand in the names as in schemas/pit.fbs: _10um hundredths of a millimetre, _cdegc hundredths of a
     degree Celsius, _dkgm3 tenths of kg/m3, _e7deg ten-millionths of a degree, _deg whole degrees.
   Numbers are stored as they are given; firn_check says what is out of range. */
#ifndef FIRNBOOK_RECORD_H
#define FIRNBOOK_RECORD_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/codes.h"
#include "firnbook/context.h"
#include "firnbook/export.h"
#include "firnbook/types.h"

#ifdef __cplusplus
extern "C" {
#endif

/* A set of edits and the pit they fold to. Opaque. Since 0.1. */
typedef struct firn_recorder firn_recorder;

/* Makes an empty recorder. The caller owns *recorder and gives it to firn_recorder_destroy. Since 0.1. */
FIRN_API firn_status firn_recorder_create(firn_context* context, firn_recorder** recorder, firn_error* error);

/* Gives a recorder back, before its context. NULL is fine. Never fails. Since 0.1. */
FIRN_API void firn_recorder_destroy(firn_recorder* recorder);

/* Adds one edit by its bytes, which are copied. The same edit twice is fine.
   Errors: those of firn_pit_verify for an edit; FIRN_BAD_EDIT, FIRN_NO_SUCH_TARGET, FIRN_DUPLICATE_EDIT,
   FIRN_NEWER_SCHEMA. Since 0.1. */
FIRN_API firn_status firn_recorder_apply(firn_recorder* recorder, const uint8_t* edit, size_t size,
                                         firn_error* error);

/* The pit as its edits fold, in canonical form: the same content gives the same bytes, whoever recorded it.
   Errors: FIRN_NO_SUCH_TARGET, FIRN_BAD_EDIT when the edits together make no sense. Since 0.1. */
FIRN_API firn_status firn_recorder_pit(firn_recorder* recorder, firn_buffer* pit, firn_error* error);

/* How many edits the recorder holds; 0 for NULL. Never fails. Since 0.1. */
FIRN_API size_t firn_recorder_edit_count(const firn_recorder* recorder);

/* Who records by structs, on which device, when. Since 0.1. */
typedef struct firn_author {
  uint32_t struct_size;
  uint32_t reserved;            /* 0 */
  uint64_t device;              /* a number of the host's for this device and journal, not 0 */
  uint64_t next_sequence;       /* sequence of the next edit of this device; 0 = 1 after the last one known */
  firn_moment made;             /* the host's clock; all zero when it has none. Never used for ordering */
  const char* observer;         /* name or initials; NULL = not given */
  const void* reserved_pointer; /* NULL */
} firn_author;

/* Sets the author of the edits that follow; may be called as often as the time moves on. Errors:
   FIRN_BAD_ARGUMENT for device 0, a sequence that was given out before, a moment out of range; FIRN_BAD_UTF8.
   Since 0.1. */
FIRN_API firn_status firn_recorder_author(firn_recorder* recorder, const firn_author* author,
                                          firn_error* error);

/* What the next edit of the author will carry: its logical clock and its sequence. Either pointer may be
   NULL. Errors: FIRN_WRONG_STATE before firn_recorder_author. Since 0.1. */
FIRN_API firn_status firn_recorder_next(const firn_recorder* recorder, uint64_t* clock, uint64_t* sequence,
                                        firn_error* error);

/* The pit as a whole: title, times and what stands for the record itself. Since 0.1. */
typedef struct firn_pit_head {
  uint32_t struct_size;
  int32_t profile_depth_10um; /* how deep the pit went */
  uint64_t present;           /* FIRN_FIELD_PIT_ bits */
  firn_time_span time;
  firn_moment reported;
  firn_moment edited;
  uint8_t purpose;        /* firn_purpose */
  uint8_t sharing;        /* firn_sharing */
  uint8_t reached_ground; /* 0 or 1, like the next two */
  uint8_t backfilled;
  uint8_t practice; /* invented for practice: may never be sent to a service */
  uint8_t reserved[3];
  const char* id; /* given by the host, such as a UUID */
  const char* title;
  const char* application;
  const char* application_version;
} firn_pit_head;

/* Somebody who was there. Since 0.1. */
typedef struct firn_observer {
  uint32_t struct_size;
  uint8_t training; /* firn_training */
  uint8_t reserved[3];
  uint64_t present; /* FIRN_FIELD_OBSERVER_ bits */
  const char* name; /* initials or a name */
  const char* id;
  const char* words;
  const void* reserved_pointer; /* NULL */
} firn_observer;

/* The dug place. Since 0.1. */
typedef struct firn_site {
  uint32_t struct_size;
  int32_t elevation_10um;
  uint64_t present; /* FIRN_FIELD_SITE_ bits, like `unreliable` */
  uint64_t unreliable;
  int32_t latitude_e7deg;
  int32_t longitude_e7deg;
  int32_t position_accuracy_10um;
  int32_t blurred_by_10um; /* the position was moved or rounded by up to this much */
  uint16_t aspect_deg;     /* clockwise from true north */
  uint8_t aspect_point;    /* firn_compass_point */
  uint8_t slope_deg;
  uint8_t elevation_source; /* firn_position_source */
  uint8_t position_source;  /* firn_position_source */
  uint8_t reserved[2];
  const char* name;
  const char* point_kind;
  const char* country; /* two capital letters */
  const char* region;
  const char* id;
  const char* point_id;
  const char* terrain;
  const int32_t* probes_10um; /* depth of the snow where the probe went in */
  size_t probe_count;
  const void* reserved_pointer; /* NULL */
} firn_site;

/* Why this place was dug, and how it compares with the terrain the question is about. Since 0.1. */
typedef struct firn_choice {
  uint32_t struct_size;
  int32_t interest_elevation_10um;
  uint64_t present; /* FIRN_FIELD_CHOICE_ bits, like `unreliable` */
  uint64_t unreliable;
  uint16_t interest_aspect_deg;
  uint8_t interest_aspect_point; /* firn_compass_point */
  uint8_t interest_slope_deg;
  uint8_t aspect; /* firn_comparison, like the next three */
  uint8_t elevation;
  uint8_t wind_loading;
  uint8_t incline;
  const char* words;
  const char* terrain_of_interest;
} firn_choice;

/* Weather at the pit. Since 0.1. */
typedef struct firn_weather {
  uint32_t struct_size;
  int32_t air_temperature_cdegc;
  uint64_t present; /* FIRN_FIELD_WEATHER_ bits, like `unreliable` */
  uint64_t unreliable;
  int32_t valley_fog_base_10um;
  int32_t valley_fog_top_10um;
  int32_t wind_speed_cms;          /* hundredths of a metre per second */
  uint16_t wind_from_deg;          /* where the wind blows FROM */
  uint8_t wind_from_point;         /* firn_compass_point */
  uint8_t wind;                    /* firn_wind_class */
  uint8_t sky;                     /* firn_sky_condition */
  uint8_t sky_thin;                /* 0 or 1 */
  uint8_t sky_family;              /* firn_code_family */
  uint8_t precipitation;           /* firn_precipitation */
  uint8_t precipitation_family;    /* firn_code_family */
  uint8_t precipitation_rate;      /* firn_precipitation_rate */
  uint8_t blowing_snow;            /* firn_blowing_snow */
  uint8_t blowing_snow_from_point; /* firn_compass_point */
  const char* words;
  const void* reserved_pointer; /* NULL */
} firn_weather;

/* The snow surface. Since 0.1. */
typedef struct firn_surface {
  uint32_t struct_size;
  int32_t temperature_cdegc;
  uint64_t present; /* FIRN_FIELD_SURFACE_ bits, like `unreliable` */
  uint64_t unreliable;
  int32_t amplitude_10um;
  int32_t amplitude_max_10um;
  int32_t wavelength_10um;
  int32_t wavelength_max_10um;
  int32_t penetration_ram_10um;  /* PR */
  int32_t penetration_foot_10um; /* PF */
  int32_t penetration_ski_10um;  /* PS */
  uint16_t feature_aspect_deg;
  uint8_t feature_aspect_point; /* firn_compass_point */
  uint8_t roughness;            /* firn_surface_roughness */
  const char* words;
  const void* reserved_pointer; /* NULL */
} firn_surface;

/* Heights of snow, and their water equivalents in hundredths of a millimetre of water. Since 0.1. */
typedef struct firn_snowpack {
  uint32_t struct_size;
  int32_t hs_10um;
  uint64_t present; /* FIRN_FIELD_SNOWPACK_ bits, like `unreliable` */
  uint64_t unreliable;
  firn_moment hin_cleared;
  int32_t hs_water_10um;
  int32_t hn24_10um;
  int32_t hn24_water_10um;
  int32_t hin_10um;
  int32_t hin_water_10um;
  int32_t hst_10um;
  int32_t hst_water_10um;
  uint8_t direction; /* firn_direction */
  uint8_t reserved[3];
} firn_snowpack;

/* A layer. Its name (usually a date) counts when name_date, name_kind or name_words is given. Since 0.1. */
typedef struct firn_layer {
  uint32_t struct_size;
  uint32_t reserved;
  uint64_t present; /* FIRN_FIELD_LAYER_ bits, like `unreliable` */
  uint64_t unreliable;
  firn_moment name_date; /* precision FIRN_TIME_PRECISION_NONE = no date */
  firn_time_span formed;
  firn_depth top;
  firn_depth bottom;
  int32_t grain_size_10um;
  int32_t grain_size_max_10um;
  uint8_t hardness; /* firn_hand_hardness, like the next two */
  uint8_t hardness_top;
  uint8_t hardness_bottom;
  uint8_t grain_form; /* firn_grain_form, like the next one */
  uint8_t grain_form_second;
  uint8_t grain_size_class; /* firn_grain_size_class, like the next one */
  uint8_t grain_size_max_class;
  uint8_t wetness;   /* firn_wetness */
  uint8_t concern;   /* firn_part_of_layer: the observer marked it as one of concern */
  uint8_t name_kind; /* firn_layer_name_kind, 0 = not said */
  uint8_t reserved_bytes[6];
  const char* words; /* the observer's own, beside the codes */
  const char* name_words;
  const uint8_t* candidates; /* firn_grain_form: what the words may mean, where no form was chosen */
  size_t candidate_count;
} firn_layer;

/* One temperature in the snow. Since 0.1. */
typedef struct firn_temperature {
  uint32_t struct_size;
  int32_t temperature_cdegc;
  uint64_t present; /* FIRN_FIELD_TEMPERATURE_READING_ bits, like `unreliable` */
  uint64_t unreliable;
  firn_depth depth;
  int32_t uncertainty_cdegc;
  uint32_t reserved;
} firn_temperature;

/* One density, an element of firn_density_profile. Since 0.1. */
typedef struct firn_density {
  uint32_t struct_size;
  int32_t density_dkgm3;
  uint64_t present; /* FIRN_FIELD_DENSITY_READING_ bits, like `unreliable` */
  uint64_t unreliable;
  firn_depth top;
  firn_depth bottom;
} firn_density;

/* Densities measured in one go. Since 0.1. */
typedef struct firn_density_profile {
  uint32_t struct_size;
  int32_t uncertainty_dkgm3;
  uint64_t present; /* FIRN_FIELD_DENSITY_PROFILE_ bits */
  int32_t probe_volume_mm3;
  int32_t probe_diameter_10um;
  int32_t probe_length_10um;
  int32_t probed_thickness_10um;
  uint8_t number;
  uint8_t method; /* firn_density_method */
  uint8_t reserved[6];
  const firn_density* readings;
  size_t reading_count;
} firn_density_profile;

/* One fracture in a test, as it was seen. An element of firn_test. Since 0.1. */
typedef struct firn_fracture {
  uint32_t struct_size;
  int32_t cut_10um; /* saw test: length of the cut when the crack ran */
  uint64_t present; /* FIRN_FIELD_FRACTURE_ bits, like `unreliable` */
  uint64_t unreliable;
  int64_t force_mn; /* shear frame: thousandths of a newton */
  firn_depth depth;
  uint8_t tap;              /* 1 to 30: tap of the first crack, the score of a compression test */
  uint8_t tap_crossed;      /* tap on which the crack had crossed the whole column */
  uint8_t stage;            /* firn_load_stage */
  uint8_t character;        /* firn_fracture_character */
  uint8_t quality;          /* firn_shear_quality */
  uint8_t fracture_surface; /* firn_fracture_surface */
  uint8_t crossing;         /* firn_crossing: extended column, P or N as the writer put it */
  uint8_t step;             /* rutschblock: loading step, 1 to 6 */
  uint8_t jump;             /* rutschblock: which jump of that step */
  uint8_t release;          /* firn_release_type */
  uint8_t saw_end;          /* firn_saw_end */
  uint8_t ease;             /* firn_shear_ease */
  uint8_t part;             /* firn_part_of_layer */
  uint8_t reserved[3];
  const char* words;
  const firn_layer* on; /* the layer it broke in, as the test line describes it; NULL = not said */
} firn_fracture;

/* A stability test. Since 0.1. */
typedef struct firn_test {
  uint32_t struct_size;
  int32_t column_width_10um; /* across the slope */
  uint64_t present;          /* FIRN_FIELD_STABILITY_TEST_ bits, like `unreliable` */
  uint64_t unreliable;
  int32_t column_length_10um; /* up the slope; the y of PST x/y */
  int32_t column_depth_10um;  /* how deep the column was isolated */
  int32_t slab_left_10um;     /* deep tap test: snow left above the layer */
  uint8_t kind;               /* firn_test_kind */
  uint8_t outcome;            /* firn_test_outcome */
  uint8_t not_valid_reason;   /* firn_not_valid_reason */
  uint8_t column_ends;        /* firn_column_ends */
  uint8_t slope_deg;
  uint8_t crossing_rule; /* firn_crossing_rule */
  uint8_t taps_given;    /* taps given in all, where the test was stopped early */
  uint8_t reserved[5];
  const firn_fracture* fractures;
  size_t fracture_count;
  const firn_depth* unbroken; /* layers somebody named that were loaded and did not break */
  size_t unbroken_count;
  const char* words;
  const void* reserved_pointer; /* NULL */
} firn_test;

/* A sign of instability: looked for or not, there or not. Since 0.1. */
typedef struct firn_sign {
  uint32_t struct_size;
  int32_t length_10um; /* cracking: how far cracks shot */
  uint64_t present;    /* FIRN_FIELD_SIGN_ bits, like `unreliable` */
  uint64_t unreliable;
  firn_moment seen;
  uint8_t kind;   /* firn_sign_kind */
  uint8_t answer; /* firn_answer */
  uint8_t reserved[6];
  const char* words;
  const void* reserved_pointer; /* NULL */
} firn_sign;

/* A recent slide. Since 0.1. */
typedef struct firn_slide {
  uint32_t struct_size;
  int32_t elevation_10um;
  uint64_t present; /* FIRN_FIELD_SLIDE_ bits, like `unreliable` */
  uint64_t unreliable;
  int32_t age_min; /* how old, in minutes, at the time of the pit */
  uint16_t count;
  uint16_t aspect_deg;
  uint8_t aspect_point; /* firn_compass_point */
  uint8_t kind;         /* firn_slide_kind */
  uint8_t trigger;      /* firn_trigger */
  uint8_t size_tenths;  /* destructive size: 15 is size 1.5 */
  uint8_t reserved[4];
  const char* words;
  const void* reserved_pointer; /* NULL */
} firn_slide;

/* A step of the procedure, ticked or not (procedure.h tells which there are). Since 0.1. */
typedef struct firn_step {
  uint32_t struct_size;
  uint8_t kind; /* firn_step_kind */
  uint8_t done; /* 0 or 1 */
  uint8_t reserved[2];
  uint64_t present; /* FIRN_FIELD_STEP_ bits */
  firn_moment made; /* when it was done */
  const char* words;
  const void* reserved_pointer; /* NULL */
} firn_step;

/* The observer's own reading and plan, in their words. Since 0.1. */
typedef struct firn_assessment {
  uint32_t struct_size;
  uint8_t confidence; /* firn_confidence */
  uint8_t reserved[3];
  uint64_t present; /* FIRN_FIELD_ASSESSMENT_ bits */
  const char* words;
  const char* plan;
} firn_assessment;

/* The bulletin as the observer found it. Since 0.1. */
typedef struct firn_bulletin_seen {
  uint32_t struct_size;
  uint8_t state; /* firn_bulletin_state */
  uint8_t reserved[3];
  uint64_t present; /* FIRN_FIELD_BULLETIN_SEEN_ bits */
  const char* id;
  const char* region;
  const char* words;
  const void* reserved_pointer; /* NULL */
} firn_bulletin_seen;

/* Anything that somebody wrote about the pit or a thing in it. Since 0.1. */
typedef struct firn_remark {
  uint32_t struct_size;
  uint8_t confidential; /* 0 or 1: not to be passed on with the pit */
  uint8_t reserved[3];
  uint64_t present; /* FIRN_FIELD_REMARK_ bits */
  const char* text;
  const firn_target* about; /* the thing it is about; NULL = the pit as a whole */
} firn_remark;

/* Setting what a pit has once. Fields that are present overlay what is there; others stay. `edit` may be
   NULL; it receives the bytes of the edit.
   Errors of every firn_record_ call: FIRN_WRONG_STATE before firn_recorder_author; FIRN_BAD_ARGUMENT for a
   mask bit of a field the struct does not hold, a yes-or-no field above 1;
   FIRN_BAD_UTF8; FIRN_TOO_LARGE when the edit exceeds max_edit_bytes; FIRN_BAD_EDIT when nothing is present.
   Since 0.1. */
FIRN_API firn_status firn_record_pit_head(firn_recorder* recorder, const firn_pit_head* head,
                                          firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_site(firn_recorder* recorder, const firn_site* site, firn_buffer* edit,
                                      firn_error* error);
FIRN_API firn_status firn_record_choice(firn_recorder* recorder, const firn_choice* choice, firn_buffer* edit,
                                        firn_error* error);
FIRN_API firn_status firn_record_weather(firn_recorder* recorder, const firn_weather* weather,
                                         firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_surface(firn_recorder* recorder, const firn_surface* surface,
                                         firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_snowpack(firn_recorder* recorder, const firn_snowpack* snowpack,
                                          firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_assessment(firn_recorder* recorder, const firn_assessment* assessment,
                                            firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_bulletin(firn_recorder* recorder, const firn_bulletin_seen* bulletin,
                                          firn_buffer* edit, firn_error* error);

/* Adding things a pit may have many of, in any order; lists are sorted by depth when the pit is made. With
   `change` NULL the thing is added, and *target (may be NULL) receives its name; else the fields that are
   present overlay those of the thing that *change names, and *target receives *change. `edit` as above.
   Errors as above, and FIRN_NO_SUCH_TARGET. Since 0.1. */
FIRN_API firn_status firn_record_observer(firn_recorder* recorder, const firn_observer* observer,
                                          const firn_target* change, firn_target* target, firn_buffer* edit,
                                          firn_error* error);
FIRN_API firn_status firn_record_layer(firn_recorder* recorder, const firn_layer* layer,
                                       const firn_target* change, firn_target* target, firn_buffer* edit,
                                       firn_error* error);
FIRN_API firn_status firn_record_temperature(firn_recorder* recorder, const firn_temperature* temperature,
                                             const firn_target* change, firn_target* target,
                                             firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_density_profile(firn_recorder* recorder, const firn_density_profile* profile,
                                                 const firn_target* change, firn_target* target,
                                                 firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_test(firn_recorder* recorder, const firn_test* test,
                                      const firn_target* change, firn_target* target, firn_buffer* edit,
                                      firn_error* error);
FIRN_API firn_status firn_record_sign(firn_recorder* recorder, const firn_sign* sign,
                                      const firn_target* change, firn_target* target, firn_buffer* edit,
                                      firn_error* error);
FIRN_API firn_status firn_record_slide(firn_recorder* recorder, const firn_slide* slide,
                                       const firn_target* change, firn_target* target, firn_buffer* edit,
                                       firn_error* error);
FIRN_API firn_status firn_record_step(firn_recorder* recorder, const firn_step* step,
                                      const firn_target* change, firn_target* target, firn_buffer* edit,
                                      firn_error* error);
FIRN_API firn_status firn_record_remark(firn_recorder* recorder, const firn_remark* remark,
                                        const firn_target* change, firn_target* target, firn_buffer* edit,
                                        firn_error* error);

/* Records what field notes say (examples/first-pit/NOTES.md): one line as it was written down, or many. What
   a pit has once is one edit, the things of its lists are another; a line is read without the lines recorded
   before it, so `depths from` and the like hold for one call. `text` needs no NUL. `remarks` may be NULL; it
   receives one line for each rounding that was made. Errors: those of firn_notes_read, whose message says
   what was expected and where; FIRN_BAD_EDIT when the notes say nothing; FIRN_TOO_LARGE for an edit beyond
   max_edit_bytes; FIRN_WRONG_STATE before firn_recorder_author. Nothing was recorded then, save that the
   first of two edits may stand when memory ran out before the second. Since 0.1. */
FIRN_API firn_status firn_record_notes(firn_recorder* recorder, const char* text, size_t size,
                                       firn_buffer* remarks, firn_error* error);

/* One more fracture of a test, or density of a profile, that was recorded before: `into` names the test or
   the profile. With `change` the one named by it is changed, and `into` is NULL. Errors as above, and
   FIRN_BAD_ARGUMENT unless one of the two is given. Since 0.1. */
FIRN_API firn_status firn_record_fracture(firn_recorder* recorder, const firn_fracture* fracture,
                                          const firn_target* into, const firn_target* change,
                                          firn_target* target, firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_density(firn_recorder* recorder, const firn_density* density,
                                         const firn_target* into, const firn_target* change,
                                         firn_target* target, firn_buffer* edit, firn_error* error);

/* Takes a thing out of the pit. Errors: FIRN_WRONG_STATE, FIRN_NO_SUCH_TARGET. Since 0.1. */
FIRN_API firn_status firn_record_remove(firn_recorder* recorder, const firn_target* target, firn_buffer* edit,
                                        firn_error* error);

/* Clears one field: of the thing that *target names, or with `target` NULL of what a pit has once, which
   `thing` names (FIRN_THING_PIT, FIRN_THING_SITE ...). `field` is a FIRN_FIELD_ number of that table. Errors:
   FIRN_WRONG_STATE, FIRN_NO_SUCH_TARGET, FIRN_BAD_EDIT for what cannot be cleared. Since 0.1. */
FIRN_API firn_status firn_record_clear(firn_recorder* recorder, const firn_target* target, uint8_t thing,
                                       uint16_t field, firn_buffer* edit, firn_error* error);

/* Cuts a layer in two at a depth inside it; *upper and *lower (may be NULL) receive the names of the halves.
   Errors: FIRN_WRONG_STATE, FIRN_NO_SUCH_TARGET, FIRN_BAD_EDIT. Since 0.1. */
FIRN_API firn_status firn_record_split_layer(firn_recorder* recorder, const firn_target* layer,
                                             const firn_depth* at, firn_target* upper, firn_target* lower,
                                             firn_buffer* edit, firn_error* error);

/* Joins a layer with its neighbour in order of depth; what both know comes from `layer`. Errors as above.
   Since 0.1. */
FIRN_API firn_status firn_record_merge_layers(firn_recorder* recorder, const firn_target* layer,
                                              const firn_target* neighbour, firn_buffer* edit,
                                              firn_error* error);

/* HS turned out different: moves every depth counted from the surface by `amount_10um`. Errors as above.
   Since 0.1. */
FIRN_API firn_status firn_record_shift_depths(firn_recorder* recorder, int32_t amount_10um, firn_buffer* edit,
                                              firn_error* error);

/* HS turned out different: multiplies every depth counted from the surface by amount_10um / base_10um, both
   above 0. Errors as above. Since 0.1. */
FIRN_API firn_status firn_record_rescale_depths(firn_recorder* recorder, int32_t amount_10um,
                                                int32_t base_10um, firn_buffer* edit, firn_error* error);

/* Takes back the edit (device, sequence), or puts it back. Errors as above. Since 0.1. */
FIRN_API firn_status firn_record_undo(firn_recorder* recorder, uint64_t device, uint64_t sequence,
                                      firn_buffer* edit, firn_error* error);
FIRN_API firn_status firn_record_redo(firn_recorder* recorder, uint64_t device, uint64_t sequence,
                                      firn_buffer* edit, firn_error* error);

/* What an undo button and a redo button of this device would name: *undo becomes the sequence of its last
   edit that counts, *redo that of the one taken back last, as long as the device recorded nothing since; 0
   where there is none. Both follow from the edits alone, so they are the same after a restart, and there is
   no limit to how often. Either pointer may be NULL. Errors: FIRN_BAD_ARGUMENT for device 0. Since 0.1. */
FIRN_API firn_status firn_recorder_undoable(const firn_recorder* recorder, uint64_t device, uint64_t* undo,
                                            uint64_t* redo, firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_RECORD_H */

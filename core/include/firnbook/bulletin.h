/* The public avalanche bulletin: read from the open JSON of CAAML v6, or typed by hand where no file exists,
   and how a pit lies to it. Bytes of bulletins are a Bulletins buffer (schemas/bulletin.fbs, file extension
   .firnbulletin). Since 0.1.

   A bulletin speaks of a region of at least 100 km2, never of one slope. Its ratings are told as they are:
   nothing that a pit holds lowers one, and a problem that one pit does not show is still there. The rules of
   the comparison and their sources: core/src/bulletin/README.md. */
#ifndef FIRNBOOK_BULLETIN_H
#define FIRNBOOK_BULLETIN_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/codes.h"
#include "firnbook/context.h"
#include "firnbook/export.h"
#include "firnbook/interpret.h"
#include "firnbook/types.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Reads a file of bulletins: {"bulletins": [...]} as the standard has it, one bulletin as an object, or a
   bare list. `json` needs no NUL. What is cut off, of another version or of a wrong type is told, and the
   rest is used: `messages` (may be NULL) receives one line each, such as
     bulletins[0].dangerRatings[1].mainValue, line 12, column 20: "extreme" is none of the values that ...
   with what is wrong and how to mend it, and is of size 0 when nothing was. An empty list of bulletins is
   understood as "none is issued". Values that are not known are kept. At most max_notes_bytes of the context
   are read, half a million values, and 200 levels of nesting. Errors: FIRN_NO_BULLETIN when there is none in
   the text (line and column in the error); FIRN_BAD_UTF8 for UTF-16; FIRN_TOO_LARGE. Since 0.1. */
FIRN_API firn_status firn_bulletin_read(firn_context* context, const char* json, size_t size,
                                        firn_buffer* bulletin, firn_buffer* messages, firn_error* error);

/* An aspect as a bit of firn_bulletin_scope.aspects: FIRN_ASPECT_BIT(FIRN_COMPASS_POINT_NE). Since 0.1. */
#define FIRN_ASPECT_BIT(point) (UINT32_C(1) << (point))

/* Where and when a rating or a problem holds; all zero: everywhere in the region, all day. Frozen layout.
   Since 0.1. */
typedef struct firn_bulletin_scope {
  uint32_t aspects;       /* FIRN_ASPECT_BITs; 0 = every aspect */
  int16_t lower_m;        /* from this elevation up, 0 to 9000; 0 = no limit */
  int16_t upper_m;        /* up to this elevation, 0 to 9000; 0 = no limit */
  uint8_t lower_treeline; /* 1 = from the treeline up; lower_m is 0 then */
  uint8_t upper_treeline; /* 1 = up to the treeline; upper_m is 0 then */
  uint8_t period;         /* firn_day_period; 0 = not said */
  uint8_t reserved;       /* 0 */
} firn_bulletin_scope;

/* A danger rating, typed. Since 0.1. */
typedef struct firn_bulletin_rating {
  uint32_t struct_size; /* sizeof(firn_bulletin_rating) */
  uint8_t level;        /* firn_danger_level */
  uint8_t reserved[3];  /* 0 */
  firn_bulletin_scope scope;
} firn_bulletin_rating;

/* An avalanche problem, typed: one of the types of CAAML, or of the nine of the conceptual model of avalanche
   hazard for regions outside of Europe. Since 0.1. */
typedef struct firn_bulletin_problem {
  uint32_t struct_size; /* sizeof(firn_bulletin_problem) */
  uint8_t type;         /* firn_problem_type */
  uint8_t level;        /* firn_danger_level; 0 = not said */
  uint8_t size_tenths;  /* destructive size in tenths, 10 to 50; 0 = not said */
  uint8_t stability;    /* firn_snowpack_stability; 0 = not said */
  uint8_t frequency;    /* firn_frequency; 0 = not said */
  uint8_t reserved[3];  /* 0 */
  firn_bulletin_scope scope;
  const char* comment; /* NULL = none */
} firn_bulletin_problem;

/* A bulletin, typed. All texts may be NULL and end with a NUL. Elements of the two lists lie struct_size of
   their first element apart. Since 0.1. */
typedef struct firn_bulletin_typed {
  uint32_t struct_size;    /* sizeof(firn_bulletin_typed) */
  uint32_t none_issued;    /* 1: no bulletin is issued; everything else is left out then */
  const char* region_id;   /* such as "XX-LW-01"; the id or the name must be there */
  const char* region_name; /* such as "Larchwater North" */
  const char* source;      /* who issued it */
  const char* language;    /* two letters, ISO 639-1 */
  const char* highlights;  /* their own words on an exceptionally dangerous situation */
  firn_moment published;   /* all zero = not said */
  firn_time_span valid;    /* all zero = not said */
  const firn_bulletin_rating* ratings;
  size_t rating_count; /* at most 1000 */
  const firn_bulletin_problem* problems;
  size_t problem_count; /* at most 1000 */
} firn_bulletin_typed;

/* Makes the bytes of a bulletin that somebody typed; it is marked so. Errors: FIRN_BAD_ARGUMENT for a value
   out of its range, or no region; FIRN_BAD_UTF8. Since 0.1. */
FIRN_API firn_status firn_bulletin_write(firn_context* context, const firn_bulletin_typed* typed,
                                         firn_buffer* bulletin, firn_error* error);

/* To hold bulletins beside a pit, give their bytes to firn_interpret (firn_interpret_options.bulletin). The
   report then says how the pit lies to the one for its region and time. The views below read that part of a
   report. */

/* How the pit lies to the bulletin. The texts belong to the report and are NULL when there is none. Since
 * 0.1. */
typedef struct firn_bulletin_comparison {
  uint32_t struct_size;
  uint32_t bulletin_crc32; /* CRC-32 of the bytes of the bulletins */
  int32_t bulletin;        /* position of the bulletin in its file; -1 = none was chosen */
  int32_t treeline_m;      /* as it was given; 0 = it was not */
  uint32_t rating_count;
  uint32_t problem_count;
  uint32_t unlisted_count;
  uint32_t evidence_count;
  uint8_t match;       /* firn_bulletin_match; 0 = no bulletin was held beside the pit. Say it first */
  uint8_t region_from; /* firn_region_from */
  uint8_t state;       /* firn_bulletin_state */
  uint8_t reserved[5];
  firn_moment published;
  firn_time_span valid;
  const char* bulletin_id;
  const char* source;
  const char* region_id;
  const char* region_name;
  const char* highlights; /* the service's own words */
} firn_bulletin_comparison;

/* A rating of the region that covers the pit's elevation and aspect, or may. The highest come first; nothing
   lowers one. Since 0.1. */
typedef struct firn_rating_match {
  uint32_t struct_size;
  int32_t rating; /* position in the bulletin */
  uint8_t level;  /* firn_danger_level; 0 = one that this version does not know, which may be the highest */
  uint8_t elevation;  /* firn_within */
  uint8_t aspects;    /* firn_within */
  uint8_t period;     /* firn_within; an earlier or later part of the day has no hour and is unknown */
  uint8_t day_period; /* firn_day_period; 0 = not said */
  uint8_t covers;     /* firn_within, all three together: inside or unknown */
  uint16_t reserved;
} firn_rating_match;

/* What the pit says about a problem of the bulletin. Since 0.1. */
typedef struct firn_problem_match {
  uint32_t struct_size;
  int32_t problem;         /* position in the bulletin */
  uint32_t first_evidence; /* for firn_report_bulletin_evidence */
  uint32_t evidence_count;
  uint8_t type;        /* firn_problem_type; 0 = one that this version does not know */
  uint8_t kind;        /* firn_problem_kind, what the pit was asked about */
  uint8_t level;       /* firn_danger_level; 0 = not said */
  uint8_t elevation;   /* firn_within */
  uint8_t aspects;     /* firn_within */
  uint8_t period;      /* firn_within */
  uint8_t day_period;  /* firn_day_period; 0 = not said */
  uint8_t place;       /* firn_within, elevation and aspects together */
  uint8_t answer;      /* firn_problem_answer; "not shown" never means that it is not there */
  uint8_t limit;       /* firn_speak_limit */
  uint8_t size_tenths; /* 0 = not said */
  uint8_t reserved;
} firn_problem_match;

/* What the pit shows and the bulletin does not list for this place: worth telling the warning service.
   Since 0.1. */
typedef struct firn_unlisted {
  uint32_t struct_size;
  uint32_t first_evidence; /* for firn_report_bulletin_evidence */
  uint32_t evidence_count;
  uint8_t kind;             /* firn_problem_kind; 0 = it fits none */
  uint8_t listed_elsewhere; /* 1 = the bulletin lists it for other aspects or elevations */
  uint16_t reserved;
} firn_unlisted;

/* A piece of evidence: what it is, and its position there. Since 0.1. */
typedef struct firn_bulletin_evidence {
  uint32_t struct_size;
  int32_t index; /* position among the concerns or findings of the report; stored position of a layer */
  uint8_t kind;  /* firn_evidence_kind */
  uint8_t reserved[3];
} firn_bulletin_evidence;

/* Reading that part of a report. Each call fills the struct the caller gives, whose struct_size is set
   (FIRN_INIT). Errors: FIRN_BAD_ARGUMENT for a position that is not there. Thread rule of the context. Since
   0.1. */
FIRN_API firn_status firn_report_bulletin(const firn_report* report, firn_bulletin_comparison* out,
                                          firn_error* error);
FIRN_API firn_status firn_report_bulletin_rating(const firn_report* report, uint32_t position,
                                                 firn_rating_match* out, firn_error* error);
FIRN_API firn_status firn_report_bulletin_problem(const firn_report* report, uint32_t position,
                                                  firn_problem_match* out, firn_error* error);
FIRN_API firn_status firn_report_bulletin_unlisted(const firn_report* report, uint32_t position,
                                                   firn_unlisted* out, firn_error* error);
FIRN_API firn_status firn_report_bulletin_evidence(const firn_report* report, uint32_t position,
                                                   firn_bulletin_evidence* out, firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_BULLETIN_H */

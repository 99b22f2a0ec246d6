/* Checks and interpretation, and small views into the report they make (schemas/report.fbs, file extension
   .firnreport). Since 0.1.

   A report can add caution and never takes it away: it holds no overall class, score or colour. Depths in
   a report are vertical or slope-normal as the pit's are, counted from the surface, in units of 10 um. */
#ifndef FIRNBOOK_INTERPRET_H
#define FIRNBOOK_INTERPRET_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/codes.h"
#include "firnbook/context.h"
#include "firnbook/export.h"
#include "firnbook/language.h"
#include "firnbook/types.h"

#ifdef __cplusplus
extern "C" {
#endif

/* One threshold and the value it shall have. Since 0.1. */
typedef struct firn_parameter {
  uint16_t key; /* firn_parameter_key */
  uint16_t reserved;
  int32_t value; /* in the unit of the parameter */
} firn_parameter;

/* What one parameter is. The texts are English, static, UTF-8 with a NUL, and never NULL: they live as long
   as the library is loaded. Set struct_size. Since 0.1. */
typedef struct firn_parameter_entry {
  uint32_t struct_size;
  uint16_t key;     /* firn_parameter_key */
  uint8_t method;   /* firn_method it belongs to; 0 = to the concerns or to what was not loaded */
  uint8_t verified; /* firn_verified: how the source is known */
  int32_t default_value;
  int32_t least;
  int32_t most;
  uint32_t reserved;
  const char* name;   /* "pst_percent" */
  const char* unit;   /* "percent", "10 um", "taps" */
  const char* source; /* where it comes from, and how that is known */
} firn_parameter_entry;

/* How many parameters there are. Any thread, no context. Errors: FIRN_NULL_ARGUMENT. Since 0.1. */
FIRN_API firn_status firn_parameter_count(uint32_t* count, firn_error* error);

/* The nth parameter, from 0. Any thread, no context. Errors: FIRN_NULL_ARGUMENT, FIRN_BAD_STRUCT_SIZE,
   FIRN_BAD_ARGUMENT for a position that is not there. Since 0.1. */
FIRN_API firn_status firn_parameter_at(uint32_t position, firn_parameter_entry* out, firn_error* error);

/* How to interpret. FIRN_INIT(firn_interpret_options) is the default. What is changed here, the report
   carries with it, so that it never passes for one made otherwise. Since 0.1. */
typedef struct firn_interpret_options {
  uint32_t struct_size;   /* sizeof(firn_interpret_options) */
  int32_t tolerance_10um; /* fractures, boundaries and layers this close count as one place; 500 to 10000
                             (0.5 to 10 cm), 0 = 2000 (2 cm) */
  const firn_parameter* parameters; /* those to change; the last of equal keys counts. May be NULL */
  uint32_t parameter_count;         /* 1000 at most */
  int32_t treeline_m;               /* how high the treeline is there, 1 to 9000; 0 = not known */
  /* Bulletins to hold beside the pit: bytes of firn_bulletin_read or firn_bulletin_write; NULL = none. */
  const uint8_t* bulletin;
  size_t bulletin_size;
  const char* region; /* id or name of the pit's region in the bulletin; NULL = as the pit's record says, or
                         the only one there is */
} firn_interpret_options;

/* The checks alone: a report without findings and concerns. Errors as firn_pit_verify. Since 0.1. */
FIRN_API firn_status firn_check(firn_context* context, const uint8_t* pit, size_t size, firn_buffer* report,
                                firn_error* error);

/* Checks, findings method by method, layers of concern, what the tests did not load, cautions. `options`
   may be NULL. Where a bulletin is given, the report also says how the pit lies to it (bulletin.h). Errors:
   those of firn_pit_verify, for the bulletin too; FIRN_BAD_ARGUMENT for an option or a parameter out of
   range, which is then named with its limits and its unit; FIRN_NULL_ARGUMENT for parameters that are counted
   and not given; FIRN_BAD_UTF8 for the region. Since 0.1. */
FIRN_API firn_status firn_interpret(firn_context* context, const uint8_t* pit, size_t size,
                                    const firn_interpret_options* options, firn_buffer* report,
                                    firn_error* error);

/* A report that was verified and copied, for reading. Opaque. Since 0.1. */
typedef struct firn_report firn_report;

/* Opens a report for reading. The caller owns *report and gives it back to firn_report_close. Errors:
   FIRN_TOO_SMALL, FIRN_TOO_LARGE, FIRN_WRONG_KIND, FIRN_DAMAGED. Since 0.1. */
FIRN_API firn_status firn_report_open(firn_context* context, const uint8_t* bytes, size_t size,
                                      firn_report** report, firn_error* error);

/* Gives a report back, before its context. NULL is fine. Never fails. Since 0.1. */
FIRN_API void firn_report_close(firn_report* report);

/* How much a report holds. Set struct_size; positions count from 0. Since 0.1. */
typedef struct firn_report_summary {
  uint32_t struct_size;
  uint32_t pit_crc32; /* CRC-32 of the bytes of the pit it was made from */
  uint32_t check_count;
  uint32_t finding_count;
  uint32_t concern_count;
  uint32_t not_loaded_count;
  uint32_t suggestion_count;
  uint32_t caution_count;
  uint32_t method_count;
  uint32_t schema_minor;    /* minor version of the schema its writer knew */
  int32_t tolerance_10um;   /* see firn_interpret_options; FIRN_UNKNOWN when absent */
  uint32_t parameter_count; /* how many parameters were changed for it */
  uint32_t loaded_count;
} firn_report_summary;

/* Something a rule noticed about the record. Since 0.1. */
typedef struct firn_check_entry {
  uint32_t struct_size;
  firn_place place;
  int32_t a, b, c;  /* what the rule counted or compared; firn_report_check_text puts them in words */
  uint16_t code;    /* firn_check_code */
  uint8_t severity; /* firn_severity */
  uint8_t reserved;
} firn_check_entry;

/* What one method found about one subject. Since 0.1. */
typedef struct firn_finding {
  uint32_t struct_size;
  firn_place subject;
  int32_t depth_10um; /* FIRN_UNKNOWN when there is none */
  int32_t a, b, c;    /* see firn_finding_key */
  uint16_t key;       /* firn_finding_key */
  uint8_t method;     /* firn_method */
  uint8_t verdict;    /* firn_verdict */
} firn_finding;

/* A layer or boundary that somebody travelling here should know about. Since 0.1. */
typedef struct firn_concern {
  uint32_t struct_size;
  int32_t layer;        /* stored position of the layer, or of the one above the boundary; -1 = none */
  int32_t layer_below;  /* stored position of the layer below the boundary; -1 = none */
  int32_t weaker_layer; /* the one the structure findings take as the weaker; -1 = none */
  int32_t top_10um;     /* FIRN_UNKNOWN when it cannot be told */
  int32_t bottom_10um;  /* FIRN_UNKNOWN when it cannot be told */
  uint32_t evidence_count;
  uint8_t kind;    /* firn_concern_kind, 0 = a kind this library does not know */
  uint8_t rank;    /* firn_concern_rank, 0 likewise */
  uint8_t reading; /* firn_concern_reading: its results read together */
  uint8_t reach;   /* firn_concern_reach: who could reach it */
} firn_concern;

/* A test that loaded a concern: it reached that deep, or something broke there. Eight at most for one
   concern. Since 0.1. */
typedef struct firn_loaded_by {
  uint32_t struct_size;
  int32_t concern;   /* position among the concerns */
  int32_t test;      /* stored position of the test */
  uint8_t test_kind; /* firn_test_kind */
  uint8_t reserved[3];
} firn_loaded_by;

/* A layer that tests of one kind did not load. Since 0.1. */
typedef struct firn_not_loaded {
  uint32_t struct_size;
  int32_t concern; /* position among the concerns; -1 = none */
  int32_t test;    /* stored position of the test; -1 = none was made */
  int32_t depth_10um;
  uint8_t test_kind; /* firn_test_kind */
  uint8_t reason;    /* firn_not_loaded_reason */
  uint16_t reserved;
} firn_not_loaded;

/* The observation that would tell most for least. Since 0.1. */
typedef struct firn_suggestion {
  uint32_t struct_size;
  int32_t concern; /* position among the concerns; -1 = about the whole pit */
  int32_t depth_10um;
  uint16_t step; /* firn_next_step */
  uint16_t reserved;
} firn_suggestion;

/* Something to bear in mind. Those particular to this pit come first. Since 0.1. */
typedef struct firn_caution {
  uint32_t struct_size;
  firn_place place;
  int32_t a, b;
  uint16_t key;     /* firn_caution_key */
  uint8_t specific; /* 1 = particular to this pit, 0 = true of every pit */
  uint8_t reserved;
} firn_caution;

/* A method that was applied, and how well its source is known. Since 0.1. */
typedef struct firn_method_used {
  uint32_t struct_size;
  uint8_t method;   /* firn_method */
  uint8_t verified; /* firn_verified */
  uint16_t reserved;
} firn_method_used;

/* Reading a report. Each call fills the struct the caller gives, whose struct_size is set (FIRN_INIT).
   Errors: FIRN_BAD_ARGUMENT for a position that is not there. Thread rule of the context. Since 0.1. */
FIRN_API firn_status firn_report_summarise(const firn_report* report, firn_report_summary* out,
                                           firn_error* error);
FIRN_API firn_status firn_report_check(const firn_report* report, uint32_t position, firn_check_entry* out,
                                       firn_error* error);
FIRN_API firn_status firn_report_finding(const firn_report* report, uint32_t position, firn_finding* out,
                                         firn_error* error);
FIRN_API firn_status firn_report_concern(const firn_report* report, uint32_t position, firn_concern* out,
                                         firn_error* error);
/* Position among the findings of the nth piece of evidence of a concern. Since 0.1. */
FIRN_API firn_status firn_report_evidence(const firn_report* report, uint32_t concern, uint32_t nth,
                                          uint32_t* finding, firn_error* error);
FIRN_API firn_status firn_report_loaded_by(const firn_report* report, uint32_t position, firn_loaded_by* out,
                                           firn_error* error);
FIRN_API firn_status firn_report_not_loaded(const firn_report* report, uint32_t position,
                                            firn_not_loaded* out, firn_error* error);
FIRN_API firn_status firn_report_suggestion(const firn_report* report, uint32_t position,
                                            firn_suggestion* out, firn_error* error);
FIRN_API firn_status firn_report_caution(const firn_report* report, uint32_t position, firn_caution* out,
                                         firn_error* error);
FIRN_API firn_status firn_report_method(const firn_report* report, uint32_t position, firn_method_used* out,
                                        firn_error* error);

/* The nth parameter that was changed for this report, and its default, which may be NULL. Since 0.1. */
FIRN_API firn_status firn_report_parameter(const firn_report* report, uint32_t position, firn_parameter* out,
                                           int32_t* default_value, firn_error* error);

/* Chooses the firn_language of the texts below, from the next call on; English until then. Errors:
   FIRN_BAD_ARGUMENT for a number that is none. Since 0.1. */
FIRN_API firn_status firn_report_set_language(firn_report* report, uint8_t language, firn_error* error);

/* The same in words, as the note has them. Buffers are the caller's (firn_buffer_free of the
   report's context); of size 0 for a key of a newer version that has no words here. `remedy` may be NULL when
   nobody wants it. Errors: FIRN_BAD_ARGUMENT for a position that is not there.
   Since 0.1. */
FIRN_API firn_status firn_report_check_text(const firn_report* report, uint32_t position,
                                            firn_buffer* message, firn_buffer* remedy, firn_error* error);
/* A finding is told with the test or sign it is about, so this needs the bytes of the pit as well. Errors: as
   above, those of firn_pit_verify, FIRN_OTHER_PIT. Since 0.1. */
FIRN_API firn_status firn_report_finding_text(const firn_report* report, uint32_t position,
                                              const uint8_t* pit, size_t pit_size, firn_buffer* text,
                                              firn_error* error);
FIRN_API firn_status firn_report_not_loaded_text(const firn_report* report, uint32_t position,
                                                 firn_buffer* text, firn_error* error);
FIRN_API firn_status firn_report_suggestion_text(const firn_report* report, uint32_t position,
                                                 firn_buffer* text, firn_error* error);
FIRN_API firn_status firn_report_caution_text(const firn_report* report, uint32_t position, firn_buffer* text,
                                              firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_INTERPRET_H */

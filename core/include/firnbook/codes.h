/* Numbers of the schemas: every enumeration, and the field ids of every table of a pit.
   Made from the schemas by tests/capi/codes_header.cpp; change the schema, not this file.

   Struct fields that hold one of these are uint8_t or uint16_t, so that a number from a newer
   writer passes through. Since 0.1. */
/* clang-format off */
#ifndef FIRNBOOK_CODES_H
#define FIRNBOOK_CODES_H

#ifdef __cplusplus
extern "C" {
#endif

/* Grain form (ICSSG 2009). The tens digit is the main class. Since 0.1. */
typedef enum firn_grain_form {
  FIRN_GRAIN_FORM_PP = 10, /* "PP" precipitation particles */
  FIRN_GRAIN_FORM_PPCO = 11, /* "PPco" columns */
  FIRN_GRAIN_FORM_PPND = 12, /* "PPnd" needles */
  FIRN_GRAIN_FORM_PPPL = 13, /* "PPpl" plates */
  FIRN_GRAIN_FORM_PPSD = 14, /* "PPsd" stellars, dendrites */
  FIRN_GRAIN_FORM_PPIR = 15, /* "PPir" irregular crystals */
  FIRN_GRAIN_FORM_PPGP = 16, /* "PPgp" graupel */
  FIRN_GRAIN_FORM_PPHL = 17, /* "PPhl" hail */
  FIRN_GRAIN_FORM_PPIP = 18, /* "PPip" ice pellets */
  FIRN_GRAIN_FORM_PPRM = 19, /* "PPrm" rime */
  FIRN_GRAIN_FORM_MM = 20, /* "MM" machine made snow */
  FIRN_GRAIN_FORM_MMRP = 21, /* "MMrp" round polycrystalline particles */
  FIRN_GRAIN_FORM_MMCI = 22, /* "MMci" crushed ice particles */
  FIRN_GRAIN_FORM_DF = 30, /* "DF" decomposing and fragmented precipitation particles */
  FIRN_GRAIN_FORM_DFDC = 31, /* "DFdc" partly decomposed precipitation particles */
  FIRN_GRAIN_FORM_DFBK = 32, /* "DFbk" wind-broken precipitation particles */
  FIRN_GRAIN_FORM_RG = 40, /* "RG" rounded grains */
  FIRN_GRAIN_FORM_RGSR = 41, /* "RGsr" small rounded particles */
  FIRN_GRAIN_FORM_RGLR = 42, /* "RGlr" large rounded particles */
  FIRN_GRAIN_FORM_RGWP = 43, /* "RGwp" wind packed */
  FIRN_GRAIN_FORM_RGXF = 44, /* "RGxf" faceted rounded particles */
  FIRN_GRAIN_FORM_FC = 50, /* "FC" faceted crystals */
  FIRN_GRAIN_FORM_FCSO = 51, /* "FCso" solid faceted particles */
  FIRN_GRAIN_FORM_FCSF = 52, /* "FCsf" near surface faceted particles */
  FIRN_GRAIN_FORM_FCXR = 53, /* "FCxr" rounding faceted particles */
  FIRN_GRAIN_FORM_DH = 60, /* "DH" depth hoar */
  FIRN_GRAIN_FORM_DHCP = 61, /* "DHcp" hollow cups */
  FIRN_GRAIN_FORM_DHPR = 62, /* "DHpr" hollow prisms */
  FIRN_GRAIN_FORM_DHCH = 63, /* "DHch" chains of depth hoar */
  FIRN_GRAIN_FORM_DHLA = 64, /* "DHla" large striated crystals */
  FIRN_GRAIN_FORM_DHXR = 65, /* "DHxr" rounding depth hoar */
  FIRN_GRAIN_FORM_SH = 70, /* "SH" surface hoar */
  FIRN_GRAIN_FORM_SHSU = 71, /* "SHsu" surface hoar crystals */
  FIRN_GRAIN_FORM_SHCV = 72, /* "SHcv" cavity or crevasse hoar */
  FIRN_GRAIN_FORM_SHXR = 73, /* "SHxr" rounding surface hoar */
  FIRN_GRAIN_FORM_MF = 80, /* "MF" melt forms */
  FIRN_GRAIN_FORM_MFCL = 81, /* "MFcl" clustered rounded grains */
  FIRN_GRAIN_FORM_MFPC = 82, /* "MFpc" rounded polycrystals */
  FIRN_GRAIN_FORM_MFSL = 83, /* "MFsl" slush */
  FIRN_GRAIN_FORM_MFCR = 84, /* "MFcr" melt-freeze crust */
  FIRN_GRAIN_FORM_IF = 90, /* "IF" ice formations */
  FIRN_GRAIN_FORM_IFIL = 91, /* "IFil" ice layer */
  FIRN_GRAIN_FORM_IFIC = 92, /* "IFic" ice column */
  FIRN_GRAIN_FORM_IFBI = 93, /* "IFbi" basal ice */
  FIRN_GRAIN_FORM_IFRC = 94, /* "IFrc" rain crust */
  FIRN_GRAIN_FORM_IFSC = 95 /* "IFsc" sun crust, firnspiegel */
} firn_grain_form;

/* Hand hardness. The number IS the hand-hardness index in sixths of a step: F = 1 = 6/6, "+" and "-"
   are a third of a step (common practice), a pair such as F-4F lies half way. Since 0.1. */
typedef enum firn_hand_hardness {
  FIRN_HAND_HARDNESS_FIST_MINUS = 4, /* "F-" */
  FIRN_HAND_HARDNESS_FIST = 6, /* "F" */
  FIRN_HAND_HARDNESS_FIST_PLUS = 8, /* "F+" */
  FIRN_HAND_HARDNESS_FIST_TO_FOUR_FINGER = 9, /* "F-4F" */
  FIRN_HAND_HARDNESS_FOUR_FINGER_MINUS = 10, /* "4F-" */
  FIRN_HAND_HARDNESS_FOUR_FINGER = 12, /* "4F" */
  FIRN_HAND_HARDNESS_FOUR_FINGER_PLUS = 14, /* "4F+" */
  FIRN_HAND_HARDNESS_FOUR_FINGER_TO_ONE_FINGER = 15, /* "4F-1F" */
  FIRN_HAND_HARDNESS_ONE_FINGER_MINUS = 16, /* "1F-" */
  FIRN_HAND_HARDNESS_ONE_FINGER = 18, /* "1F" */
  FIRN_HAND_HARDNESS_ONE_FINGER_PLUS = 20, /* "1F+" */
  FIRN_HAND_HARDNESS_ONE_FINGER_TO_PENCIL = 21, /* "1F-P" */
  FIRN_HAND_HARDNESS_PENCIL_MINUS = 22, /* "P-" */
  FIRN_HAND_HARDNESS_PENCIL = 24, /* "P" */
  FIRN_HAND_HARDNESS_PENCIL_PLUS = 26, /* "P+" */
  FIRN_HAND_HARDNESS_PENCIL_TO_KNIFE = 27, /* "P-K" */
  FIRN_HAND_HARDNESS_KNIFE_MINUS = 28, /* "K-" */
  FIRN_HAND_HARDNESS_KNIFE = 30, /* "K" */
  FIRN_HAND_HARDNESS_KNIFE_PLUS = 32, /* "K+" */
  FIRN_HAND_HARDNESS_KNIFE_TO_ICE = 33, /* "K-I" */
  FIRN_HAND_HARDNESS_ICE = 36 /* "I" */
} firn_hand_hardness;

/* Liquid water content by eye and hand. The number is the ICSSG class in halves of a step. Since 0.1. */
typedef enum firn_wetness {
  FIRN_WETNESS_D = 2, /* "D" dry */
  FIRN_WETNESS_D_M = 3, /* "D-M" */
  FIRN_WETNESS_M = 4, /* "M" moist */
  FIRN_WETNESS_M_W = 5, /* "M-W" */
  FIRN_WETNESS_W = 6, /* "W" wet */
  FIRN_WETNESS_W_V = 7, /* "W-V" */
  FIRN_WETNESS_V = 8, /* "V" very wet */
  FIRN_WETNESS_V_S = 9, /* "V-S" */
  FIRN_WETNESS_S = 10 /* "S" soaked */
} firn_wetness;

/* Grain size in words (ICSSG); each class is closed below and open above. Since 0.1. */
typedef enum firn_grain_size_class {
  FIRN_GRAIN_SIZE_CLASS_VERY_FINE = 1, /* "very fine" below 0.2 mm */
  FIRN_GRAIN_SIZE_CLASS_FINE = 2, /* "fine" 0.2 to 0.5 mm */
  FIRN_GRAIN_SIZE_CLASS_MEDIUM = 3, /* "medium" 0.5 to 1 mm */
  FIRN_GRAIN_SIZE_CLASS_COARSE = 4, /* "coarse" 1 to 2 mm */
  FIRN_GRAIN_SIZE_CLASS_VERY_COARSE = 5, /* "very coarse" 2 to 5 mm */
  FIRN_GRAIN_SIZE_CLASS_EXTREME = 6 /* "extreme" above 5 mm */
} firn_grain_size_class;

/* Surface roughness (ICSSG). Since 0.1. */
typedef enum firn_surface_roughness {
  FIRN_SURFACE_ROUGHNESS_RSM = 1, /* "rsm" smooth */
  FIRN_SURFACE_ROUGHNESS_RWA = 2, /* "rwa" wavy */
  FIRN_SURFACE_ROUGHNESS_RCV = 3, /* "rcv" concave furrows */
  FIRN_SURFACE_ROUGHNESS_RCX = 4, /* "rcx" convex furrows */
  FIRN_SURFACE_ROUGHNESS_RRD = 5 /* "rrd" random furrows */
} firn_surface_roughness;

/* Which book a weather code was written from: the same letters can differ between them. Since 0.1. */
typedef enum firn_code_family {
  FIRN_CODE_FAMILY_METAR = 1, /* "METAR" as in CAAML */
  FIRN_CODE_FAMILY_OGRS = 2, /* "OGRS" */
  FIRN_CODE_FAMILY_SWAG = 3 /* "SWAG" */
} firn_code_family;

/* Sky condition. The okta limits differ between the code families, so only the code is kept. Since 0.1. */
typedef enum firn_sky_condition {
  FIRN_SKY_CONDITION_CLR = 1, /* "CLR" */
  FIRN_SKY_CONDITION_FEW = 2, /* "FEW" */
  FIRN_SKY_CONDITION_SCT = 3, /* "SCT" */
  FIRN_SKY_CONDITION_BKN = 4, /* "BKN" */
  FIRN_SKY_CONDITION_OVC = 5, /* "OVC" */
  FIRN_SKY_CONDITION_X = 6 /* "X" sky hidden */
} firn_sky_condition;

/* Precipitation. 1 to 99: METAR as in CAAML, with its intensity; from 101: kinds of the guidelines,
   whose rate stands in PrecipitationRate. Since 0.1. */
typedef enum firn_precipitation {
  FIRN_PRECIPITATION_LIGHT_DZ = 1, /* "-DZ" */
  FIRN_PRECIPITATION_DZ = 2, /* "DZ" drizzle */
  FIRN_PRECIPITATION_HEAVY_DZ = 3, /* "+DZ" */
  FIRN_PRECIPITATION_LIGHT_RA = 4, /* "-RA" */
  FIRN_PRECIPITATION_RA = 5, /* "RA" rain */
  FIRN_PRECIPITATION_HEAVY_RA = 6, /* "+RA" */
  FIRN_PRECIPITATION_LIGHT_SN = 7, /* "-SN" */
  FIRN_PRECIPITATION_SN = 8, /* "SN" snow */
  FIRN_PRECIPITATION_HEAVY_SN = 9, /* "+SN" */
  FIRN_PRECIPITATION_LIGHT_SG = 10, /* "-SG" */
  FIRN_PRECIPITATION_SG = 11, /* "SG" snow grains */
  FIRN_PRECIPITATION_HEAVY_SG = 12, /* "+SG" */
  FIRN_PRECIPITATION_LIGHT_IC = 13, /* "-IC" */
  FIRN_PRECIPITATION_IC = 14, /* "IC" ice crystals */
  FIRN_PRECIPITATION_HEAVY_IC = 15, /* "+IC" */
  FIRN_PRECIPITATION_LIGHT_PE = 16, /* "-PE" */
  FIRN_PRECIPITATION_PE = 17, /* "PE" ice pellets */
  FIRN_PRECIPITATION_HEAVY_PE = 18, /* "+PE" */
  FIRN_PRECIPITATION_LIGHT_GR = 19, /* "-GR" */
  FIRN_PRECIPITATION_GR = 20, /* "GR" hail */
  FIRN_PRECIPITATION_HEAVY_GR = 21, /* "+GR" */
  FIRN_PRECIPITATION_LIGHT_GS = 22, /* "-GS" */
  FIRN_PRECIPITATION_GS = 23, /* "GS" small hail or snow pellets */
  FIRN_PRECIPITATION_HEAVY_GS = 24, /* "+GS" */
  FIRN_PRECIPITATION_UP = 25, /* "UP" unknown precipitation */
  FIRN_PRECIPITATION_NIL = 26, /* "Nil" none */
  FIRN_PRECIPITATION_RASN = 27, /* "RASN" rain and snow */
  FIRN_PRECIPITATION_FZRA = 28, /* "FZRA" freezing rain */
  FIRN_PRECIPITATION_GUIDELINE_NONE = 101, /* OGRS "NIL", SWAG "NO": none */
  FIRN_PRECIPITATION_GUIDELINE_RAIN = 102, /* OGRS "R", SWAG "RA": rain */
  FIRN_PRECIPITATION_GUIDELINE_SNOW = 103, /* OGRS "S", SWAG "SN": snow */
  FIRN_PRECIPITATION_GUIDELINE_MIXED = 104, /* "RS" mixed rain and snow */
  FIRN_PRECIPITATION_GUIDELINE_GRAUPEL = 105, /* OGRS "G", SWAG "GR": graupel or hail */
  FIRN_PRECIPITATION_GUIDELINE_FREEZING_RAIN = 106 /* "ZR" freezing rain */
} firn_precipitation;

/* Rate of precipitation in the guidelines: snow in cm per hour, rain in four classes. Since 0.1. */
typedef enum firn_precipitation_rate {
  FIRN_PRECIPITATION_RATE_S_1 = 1, /* "S-1" below about 0.5 cm/h */
  FIRN_PRECIPITATION_RATE_S1 = 2, /* "S1" */
  FIRN_PRECIPITATION_RATE_S2 = 3, /* "S2" */
  FIRN_PRECIPITATION_RATE_S3 = 4, /* "S3" */
  FIRN_PRECIPITATION_RATE_S4 = 5, /* "S4" */
  FIRN_PRECIPITATION_RATE_S5 = 6, /* "S5" */
  FIRN_PRECIPITATION_RATE_S6 = 7, /* "S6" */
  FIRN_PRECIPITATION_RATE_S7 = 8, /* "S7" */
  FIRN_PRECIPITATION_RATE_S8 = 9, /* "S8" */
  FIRN_PRECIPITATION_RATE_S9 = 10, /* "S9" */
  FIRN_PRECIPITATION_RATE_S10 = 11, /* "S10" */
  FIRN_PRECIPITATION_RATE_RV = 21, /* "RV" trace of rain */
  FIRN_PRECIPITATION_RATE_RL = 22, /* "RL" up to 2.5 mm/h */
  FIRN_PRECIPITATION_RATE_RM = 23, /* "RM" 2.6 to 7.5 mm/h */
  FIRN_PRECIPITATION_RATE_RH = 24 /* "RH" above 7.5 mm/h */
} firn_precipitation_rate;

/* Wind by class; the same letters in CAAML and the guidelines. Since 0.1. */
typedef enum firn_wind_class {
  FIRN_WIND_CLASS_C = 1, /* "C" calm */
  FIRN_WIND_CLASS_L = 2, /* "L" light */
  FIRN_WIND_CLASS_M = 3, /* "M" moderate */
  FIRN_WIND_CLASS_S = 4, /* "S" strong */
  FIRN_WIND_CLASS_X = 5 /* "X" extreme */
} firn_wind_class;

/* Blowing snow (guidelines). Since 0.1. */
typedef enum firn_blowing_snow {
  FIRN_BLOWING_SNOW_NONE = 1, /* "None" */
  FIRN_BLOWING_SNOW_PREVIOUS = 2, /* "Prev" earlier, not now */
  FIRN_BLOWING_SNOW_LIGHT = 3, /* "L" */
  FIRN_BLOWING_SNOW_MODERATE = 4, /* "M" */
  FIRN_BLOWING_SNOW_INTENSE = 5, /* "I" */
  FIRN_BLOWING_SNOW_UNKNOWN = 6 /* "U" */
} firn_blowing_snow;

/* A direction by name: of a slope's fall line, or where the wind blows from. Since 0.1. */
typedef enum firn_compass_point {
  FIRN_COMPASS_POINT_N = 1, /* "N" */
  FIRN_COMPASS_POINT_NE = 2, /* "NE" */
  FIRN_COMPASS_POINT_E = 3, /* "E" */
  FIRN_COMPASS_POINT_SE = 4, /* "SE" */
  FIRN_COMPASS_POINT_S = 5, /* "S" */
  FIRN_COMPASS_POINT_SW = 6, /* "SW" */
  FIRN_COMPASS_POINT_W = 7, /* "W" */
  FIRN_COMPASS_POINT_NW = 8, /* "NW" */
  FIRN_COMPASS_POINT_NONE = 9, /* "n/a" a flat place */
  FIRN_COMPASS_POINT_VARIABLE = 10 /* "V" variable (wind only) */
} firn_compass_point;

/* Character of a fracture in a compression or deep tap test. Since 0.1. */
typedef enum firn_fracture_character {
  FIRN_FRACTURE_CHARACTER_SP = 1, /* "SP" sudden planar, "pop" */
  FIRN_FRACTURE_CHARACTER_SC = 2, /* "SC" sudden collapse, "drop" */
  FIRN_FRACTURE_CHARACTER_RP = 3, /* "RP" resistant planar */
  FIRN_FRACTURE_CHARACTER_PC = 4, /* "PC" progressive compression */
  FIRN_FRACTURE_CHARACTER_BRK = 5, /* "BRK" non-planar break */
  FIRN_FRACTURE_CHARACTER_SDN = 11, /* "SDN" sudden, not told apart */
  FIRN_FRACTURE_CHARACTER_RES = 12 /* "RES" resistant, not told apart */
} firn_fracture_character;

/* Shear quality. Since 0.1. */
typedef enum firn_shear_quality {
  FIRN_SHEAR_QUALITY_Q1 = 1, /* "Q1" clean, fast */
  FIRN_SHEAR_QUALITY_Q2 = 2, /* "Q2" average */
  FIRN_SHEAR_QUALITY_Q3 = 3 /* "Q3" uneven */
} firn_shear_quality;

/* Fracture surface in the family CAAML calls Swiss. Since 0.1. */
typedef enum firn_fracture_surface {
  FIRN_FRACTURE_SURFACE_CLEAN = 1, /* "Clean" */
  FIRN_FRACTURE_SURFACE_ROUGH = 2, /* "Rough" */
  FIRN_FRACTURE_SURFACE_IRREGULAR = 3 /* "Irregular" */
} firn_fracture_surface;

/* How much of a rutschblock came away. Since 0.1. */
typedef enum firn_release_type {
  FIRN_RELEASE_TYPE_WB = 1, /* "WB" whole block */
  FIRN_RELEASE_TYPE_MB = 2, /* "MB" most of the block */
  FIRN_RELEASE_TYPE_EB = 3 /* "EB" edge only */
} firn_release_type;

/* Kind of stability test. Since 0.1. */
typedef enum firn_test_kind {
  FIRN_TEST_KIND_NONE = 0, /* no kind given (only inside structs) */
  FIRN_TEST_KIND_CT = 1, /* "CT" compression test */
  FIRN_TEST_KIND_ECT = 2, /* "ECT" extended column test */
  FIRN_TEST_KIND_PST = 3, /* "PST" propagation saw test */
  FIRN_TEST_KIND_RB = 4, /* "RB" rutschblock */
  FIRN_TEST_KIND_DT = 5, /* "DT" deep tap test */
  FIRN_TEST_KIND_ST = 6, /* "ST" shovel shear test */
  FIRN_TEST_KIND_HAND_SHEAR = 7, /* "hand shear" */
  FIRN_TEST_KIND_SHEAR_FRAME = 8, /* "SF" shear frame */
  FIRN_TEST_KIND_OTHER = 9 /* "other" described in words */
} firn_test_kind;

/* What came of a test as a whole. Since 0.1. */
typedef enum firn_test_outcome {
  FIRN_TEST_OUTCOME_FRACTURED = 1, /* something broke: see the fractures */
  FIRN_TEST_OUTCOME_NO_FRACTURE = 2, /* CTN, ECTX, DTN, STN, RB7: loaded to the end and nothing broke. A result, not missing data. */
  FIRN_TEST_OUTCOME_NOT_VALID = 3 /* the column was no valid test: see the reason */
} firn_test_outcome;

/* Why a test was not valid. Since 0.1. */
typedef enum firn_not_valid_reason {
  FIRN_NOT_VALID_REASON_SANK_IN = 1, /* the shovel or the skis sank into soft snow */
  FIRN_NOT_VALID_REASON_BROKE_WHILE_CUTTING = 2, /* the column broke elsewhere while it was being cut */
  FIRN_NOT_VALID_REASON_COLUMN_DISTURBED = 3, /* the column wobbled, tilted or stood on rocks or bushes */
  FIRN_NOT_VALID_REASON_LOADING = 4, /* the loading went wrong */
  FIRN_NOT_VALID_REASON_SLOPE_TOO_GENTLE = 5, /* the slope was too gentle for the test */
  FIRN_NOT_VALID_REASON_OTHER = 99 /* something else, in words */
} firn_not_valid_reason;

/* The load under which something broke in a tapping test. Since 0.1. */
typedef enum firn_load_stage {
  FIRN_LOAD_STAGE_ISOLATING = 1, /* "V" while cutting or isolating the column */
  FIRN_LOAD_STAGE_WRIST = 2, /* "E" taps 1 to 10, from the wrist */
  FIRN_LOAD_STAGE_ELBOW = 3, /* "M" taps 11 to 20, from the elbow */
  FIRN_LOAD_STAGE_SHOULDER = 4 /* "H" taps 21 to 30, from the shoulder */
} firn_load_stage;

/* Ease of a shovel shear or hand shear. Since 0.1. */
typedef enum firn_shear_ease {
  FIRN_SHEAR_EASE_C = 1, /* "C" collapse while cutting */
  FIRN_SHEAR_EASE_V = 2, /* "V" very easy */
  FIRN_SHEAR_EASE_E = 3, /* "E" easy */
  FIRN_SHEAR_EASE_M = 4, /* "M" moderate */
  FIRN_SHEAR_EASE_H = 5 /* "H" hard */
} firn_shear_ease;

/* Whether an extended column broke right across. Since 0.1. */
typedef enum firn_crossing {
  FIRN_CROSSING_CROSSED = 1, /* "P" */
  FIRN_CROSSING_NOT_CROSSED = 2 /* "N" */
} firn_crossing;

/* When a crossing counts as "P": the guidelines differ, so a writer's own P or N carries its rule.
   Since 0.1. */
typedef enum firn_crossing_rule {
  FIRN_CROSSING_RULE_SAME_TAP = 1, /* on the tap of the first crack (SWAG since 2016) */
  FIRN_CROSSING_RULE_ONE_MORE_TAP = 2 /* on that tap or the next (Swiss service; older practice) */
} firn_crossing_rule;

/* How a propagation saw test ended. Since 0.1. */
typedef enum firn_saw_end {
  FIRN_SAW_END_END = 1, /* "End" ran to the end of the column */
  FIRN_SAW_END_SF = 2, /* "SF" stopped at a break through the slab */
  FIRN_SAW_END_ARR = 3 /* "Arr" arrested by itself */
} firn_saw_end;

/* How the ends of a saw-test column were cut. Since 0.1. */
typedef enum firn_column_ends {
  FIRN_COLUMN_ENDS_VERTICAL = 1, /* vertical */
  FIRN_COLUMN_ENDS_SLOPE_NORMAL = 2 /* at right angles to the slope */
} firn_column_ends;

/* Which part of a layer is meant. Since 0.1. */
typedef enum firn_part_of_layer {
  FIRN_PART_OF_LAYER_ALL = 1, /* "all" */
  FIRN_PART_OF_LAYER_TOP = 2, /* "top" */
  FIRN_PART_OF_LAYER_BOTTOM = 3 /* "bottom" */
} firn_part_of_layer;

/* What the date in a layer's name says. Since 0.1. */
typedef enum firn_layer_name_kind {
  FIRN_LAYER_NAME_KIND_BURIED = 1, /* the day it was buried */
  FIRN_LAYER_NAME_KIND_FORMED = 2, /* the day it formed */
  FIRN_LAYER_NAME_KIND_ASSUMED = 3 /* somebody's assumption */
} firn_layer_name_kind;

/* Zero of a depth or height. Since 0.1. */
typedef enum firn_datum {
  FIRN_DATUM_UNKNOWN = 0, /* the writer did not say */
  FIRN_DATUM_SURFACE = 1, /* depth, counted down from the snow surface */
  FIRN_DATUM_GROUND = 2 /* height, counted up from the ground */
} firn_datum;

/* Direction in which a depth was measured. Since 0.1. */
typedef enum firn_direction {
  FIRN_DIRECTION_UNKNOWN = 0, /* the writer did not say */
  FIRN_DIRECTION_VERTICAL = 1, /* along the plumb line */
  FIRN_DIRECTION_SLOPE_NORMAL = 2 /* at right angles to the slope */
} firn_direction;

/* An answer that keeps "did not look" apart from "no". Since 0.1. */
typedef enum firn_answer {
  FIRN_ANSWER_YES = 1,
  FIRN_ANSWER_NO = 2,
  FIRN_ANSWER_NOT_LOOKED_FOR = 3
} firn_answer;

/* What a pit was dug for. Since 0.1. */
typedef enum firn_purpose {
  FIRN_PURPOSE_QUICK_PIT = 1,
  FIRN_PURPOSE_TEST_PROFILE = 2,
  FIRN_PURPOSE_FULL_PROFILE = 3,
  FIRN_PURPOSE_SERVICE_REPORT = 4,
  FIRN_PURPOSE_FRACTURE_LINE = 5,
  FIRN_PURPOSE_TEACHING = 6
} firn_purpose;

/* How one property of the pit's site compares with the terrain of interest. Since 0.1. */
typedef enum firn_comparison {
  FIRN_COMPARISON_SAME = 1,
  FIRN_COMPARISON_SIMILAR = 2,
  FIRN_COMPARISON_DIFFERENT = 3,
  FIRN_COMPARISON_LESS = 4, /* gentler, lower or less loaded than the terrain of interest */
  FIRN_COMPARISON_MORE = 5, /* steeper, higher or more loaded than the terrain of interest */
  FIRN_COMPARISON_UNKNOWN = 6
} firn_comparison;

/* What a field sign is about. Since 0.1. */
typedef enum firn_sign_kind {
  FIRN_SIGN_KIND_WHUMPF = 1,
  FIRN_SIGN_KIND_CRACKING = 2,
  FIRN_SIGN_KIND_SLIDES = 3,
  FIRN_SIGN_KIND_REMOTE_TRIGGER = 4,
  FIRN_SIGN_KIND_HOLLOW_SOUND = 5,
  FIRN_SIGN_KIND_WIND_LOADING = 6,
  FIRN_SIGN_KIND_HEAVY_PRECIPITATION = 7,
  FIRN_SIGN_KIND_RAPID_WARMING = 8,
  FIRN_SIGN_KIND_PINWHEELS = 9,
  FIRN_SIGN_KIND_SNOW_SHEDDING_FROM_TREES = 10
} firn_sign_kind;

/* What set a slide off. Since 0.1. */
typedef enum firn_trigger {
  FIRN_TRIGGER_NATURAL = 1,
  FIRN_TRIGGER_PERSON = 2,
  FIRN_TRIGGER_REMOTE = 3,
  FIRN_TRIGGER_EXPLOSIVE = 4,
  FIRN_TRIGGER_MACHINE = 5,
  FIRN_TRIGGER_CORNICE = 6,
  FIRN_TRIGGER_UNKNOWN = 7
} firn_trigger;

/* What a slide was made of. Since 0.1. */
typedef enum firn_slide_kind {
  FIRN_SLIDE_KIND_SLAB = 1,
  FIRN_SLIDE_KIND_LOOSE = 2,
  FIRN_SLIDE_KIND_GLIDE = 3,
  FIRN_SLIDE_KIND_CORNICE = 4,
  FIRN_SLIDE_KIND_UNKNOWN = 5
} firn_slide_kind;

/* How sure the observer was. Since 0.1. */
typedef enum firn_confidence {
  FIRN_CONFIDENCE_LOW = 1,
  FIRN_CONFIDENCE_FAIR = 2,
  FIRN_CONFIDENCE_HIGH = 3
} firn_confidence;

/* Avalanche training of an observer. Since 0.1. */
typedef enum firn_training {
  FIRN_TRAINING_NONE = 1,
  FIRN_TRAINING_INTRODUCTORY = 2,
  FIRN_TRAINING_RECREATIONAL = 3,
  FIRN_TRAINING_PROFESSIONAL = 4,
  FIRN_TRAINING_FORECASTER = 5,
  FIRN_TRAINING_STUDENT = 6
} firn_training;

/* Whether a bulletin was to be had on the day. Since 0.1. */
typedef enum firn_bulletin_state {
  FIRN_BULLETIN_STATE_ISSUED = 1,
  FIRN_BULLETIN_STATE_NONE_ISSUED = 2, /* none is issued for the region at this time of the season */
  FIRN_BULLETIN_STATE_NOT_LOOKED_AT = 3
} firn_bulletin_state;

/* Who may see the record. Since 0.1. */
typedef enum firn_sharing {
  FIRN_SHARING_PRIVATE_ONLY = 1,
  FIRN_SHARING_PARTNERS = 2,
  FIRN_SHARING_SERVICE = 3,
  FIRN_SHARING_PUBLIC = 4
} firn_sharing;

/* Where an elevation or a position came from. Since 0.1. */
typedef enum firn_position_source {
  FIRN_POSITION_SOURCE_GNSS = 1,
  FIRN_POSITION_SOURCE_MAP = 2,
  FIRN_POSITION_SOURCE_BAROMETER = 3,
  FIRN_POSITION_SOURCE_ESTIMATE = 4
} firn_position_source;

/* Why a value is absent, where a writer said so (CAAML's nil reasons). Since 0.1. */
typedef enum firn_absent_reason {
  FIRN_ABSENT_REASON_INAPPLICABLE = 1,
  FIRN_ABSENT_REASON_MISSING = 2,
  FIRN_ABSENT_REASON_TEMPLATE = 3,
  FIRN_ABSENT_REASON_UNKNOWN = 4,
  FIRN_ABSENT_REASON_WITHHELD = 5,
  FIRN_ABSENT_REASON_OTHER = 6 /* in words */
} firn_absent_reason;

/* How a density was measured. Since 0.1. */
typedef enum firn_density_method {
  FIRN_DENSITY_METHOD_SNOW_TUBE = 1, /* "Snow Tube" */
  FIRN_DENSITY_METHOD_SNOW_CYLINDER = 2, /* "Snow Cylinder" */
  FIRN_DENSITY_METHOD_SNOW_CUTTER = 3, /* "Snow Cutter" */
  FIRN_DENSITY_METHOD_DENOTH_PROBE = 4, /* "Denoth Probe" */
  FIRN_DENSITY_METHOD_OTHER = 99 /* "other" */
} firn_density_method;

/* How liquid water was measured. Since 0.1. */
typedef enum firn_liquid_water_method {
  FIRN_LIQUID_WATER_METHOD_DENOTH_PROBE = 1, /* "Denoth Probe" */
  FIRN_LIQUID_WATER_METHOD_SNOW_FORK = 2, /* "Snow Fork" */
  FIRN_LIQUID_WATER_METHOD_OTHER = 99 /* "other" */
} firn_liquid_water_method;

/* How specific surface area was measured. Since 0.1. */
typedef enum firn_surface_area_method {
  FIRN_SURFACE_AREA_METHOD_ICE_CUBE = 1, /* "Ice Cube" */
  FIRN_SURFACE_AREA_METHOD_OTHER = 99 /* "other" */
} firn_surface_area_method;

/* How penetration resistance was measured. Since 0.1. */
typedef enum firn_hardness_method {
  FIRN_HARDNESS_METHOD_SNOW_MICRO_PEN = 1, /* "SnowMicroPen" */
  FIRN_HARDNESS_METHOD_RAM_SONDE = 2, /* "Ram Sonde" */
  FIRN_HARDNESS_METHOD_PUSH_PULL_GAUGE = 3, /* "Push-Pull Gauge" */
  FIRN_HARDNESS_METHOD_OTHER = 99 /* "other" */
} firn_hardness_method;

/* How strength was measured. Since 0.1. */
typedef enum firn_strength_method {
  FIRN_STRENGTH_METHOD_SHEAR_FRAME = 1, /* "Shear Frame" */
  FIRN_STRENGTH_METHOD_OTHER = 99 /* "other" */
} firn_strength_method;

/* Which strength. Since 0.1. */
typedef enum firn_strength_kind {
  FIRN_STRENGTH_KIND_COMPRESSIVE = 1, /* "compressive" */
  FIRN_STRENGTH_KIND_TENSILE = 2, /* "tensile" */
  FIRN_STRENGTH_KIND_SHEAR = 3 /* "shear" */
} firn_strength_kind;

/* What an impurity is. Since 0.1. */
typedef enum firn_impurity {
  FIRN_IMPURITY_BLACK_CARBON = 1, /* "Black Carbon" */
  FIRN_IMPURITY_DUST = 2, /* "Dust" */
  FIRN_IMPURITY_ISOTOPES = 3 /* "Isotopes" */
} firn_impurity;

/* How an impurity was measured. Since 0.1. */
typedef enum firn_impurity_method {
  FIRN_IMPURITY_METHOD_OTHER = 99 /* "other" */
} firn_impurity_method;

/* Unit of a fraction. Since 0.1. */
typedef enum firn_fraction_unit {
  FIRN_FRACTION_UNIT_PERCENT = 1, /* "%" */
  FIRN_FRACTION_UNIT_PPM = 2, /* "ppm" */
  FIRN_FRACTION_UNIT_PPB = 3 /* "ppb" */
} firn_fraction_unit;

/* A step of the procedure around a pit and its tests. What each one asks for, what it guards against
   and where it comes from: core/src/procedure/CATALOGUE.md. Since 0.1. */
typedef enum firn_step_kind {
  FIRN_STEP_KIND_KIT_WITHIN_REACH = 1,
  FIRN_STEP_KIND_PACK_CLOSED = 2,
  FIRN_STEP_KIND_PHONE_AWAY_FROM_TRANSCEIVER = 3,
  FIRN_STEP_KIND_REPRESENTATIVE_SPOT = 4,
  FIRN_STEP_KIND_SPOT_OF_LITTLE_CONSEQUENCE = 5,
  FIRN_STEP_KIND_NOBODY_AND_NOTHING_ABOVE = 6,
  FIRN_STEP_KIND_PROBED_FOR_EVEN_DEPTH = 7,
  FIRN_STEP_KIND_SLOPE_STEEP_ENOUGH = 8, /* rutschblock only: no other test has a slope minimum */
  FIRN_STEP_KIND_DUG_FROM_BELOW = 9,
  FIRN_STEP_KIND_WALL_VERTICAL_AND_SHADED = 10,
  FIRN_STEP_KIND_COMPRESSION_COLUMN_ISOLATED = 11,
  FIRN_STEP_KIND_EXTENDED_COLUMN_ISOLATED = 12,
  FIRN_STEP_KIND_DEEP_TAP_COLUMN_ISOLATED = 13,
  FIRN_STEP_KIND_SAW_COLUMN_ISOLATED = 14,
  FIRN_STEP_KIND_RUTSCHBLOCK_ISOLATED = 15,
  FIRN_STEP_KIND_SHEAR_COLUMN_ISOLATED = 16,
  FIRN_STEP_KIND_PIT_FILLED_IN = 17
} firn_step_kind;

/* How finely a moment is known. `none` stands for "no moment given" inside a TimeSpan. Since 0.1. */
typedef enum firn_time_precision {
  FIRN_TIME_PRECISION_NONE = 0,
  FIRN_TIME_PRECISION_YEAR = 1,
  FIRN_TIME_PRECISION_MONTH = 2,
  FIRN_TIME_PRECISION_DAY = 3,
  FIRN_TIME_PRECISION_MINUTE = 4,
  FIRN_TIME_PRECISION_SECOND = 5
} firn_time_precision;

/* The tables of this schema as things that a remark, a check or a finding can be about. Since 0.1. */
typedef enum firn_thing {
  FIRN_THING_PIT = 0,
  FIRN_THING_SITE = 1,
  FIRN_THING_OBSERVER = 2,
  FIRN_THING_WEATHER = 3,
  FIRN_THING_SURFACE = 4,
  FIRN_THING_SNOWPACK = 5,
  FIRN_THING_LAYER = 6,
  FIRN_THING_TEMPERATURE = 7,
  FIRN_THING_DENSITY_PROFILE = 8,
  FIRN_THING_DENSITY = 9,
  FIRN_THING_LIQUID_WATER_PROFILE = 10,
  FIRN_THING_LIQUID_WATER = 11,
  FIRN_THING_SURFACE_AREA_PROFILE = 12,
  FIRN_THING_SURFACE_AREA = 13,
  FIRN_THING_HARDNESS_PROFILE = 14,
  FIRN_THING_HARDNESS = 15,
  FIRN_THING_STRENGTH_PROFILE = 16,
  FIRN_THING_STRENGTH = 17,
  FIRN_THING_IMPURITY_PROFILE = 18,
  FIRN_THING_IMPURITY = 19,
  FIRN_THING_TEST = 20,
  FIRN_THING_FRACTURE = 21,
  FIRN_THING_SIGN = 22,
  FIRN_THING_SLIDE = 23,
  FIRN_THING_PROBE = 24,
  FIRN_THING_CHOICE = 25,
  FIRN_THING_ASSESSMENT = 26,
  FIRN_THING_PHOTO = 27,
  FIRN_THING_BULLETIN = 28,
  FIRN_THING_OPERATION = 29,
  FIRN_THING_UNREAD = 30,
  FIRN_THING_REMARK = 31,
  FIRN_THING_BOUNDARY = 32, /* the boundary below layer `index`, in order of depth */
  FIRN_THING_STEP = 33
} firn_thing;

/* Field ids of a Remark: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_remark_field {
  FIRN_FIELD_REMARK_TEXT = 0,
  FIRN_FIELD_REMARK_ABOUT = 1,
  FIRN_FIELD_REMARK_CONFIDENTIAL = 2
} firn_remark_field;

/* Field ids of a Absence: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_absence_field {
  FIRN_FIELD_ABSENCE_ABOUT = 0,
  FIRN_FIELD_ABSENCE_REASON = 1,
  FIRN_FIELD_ABSENCE_WORDS = 2
} firn_absence_field;

/* Field ids of a Extension: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_extension_field {
  FIRN_FIELD_EXTENSION_KEY = 0,
  FIRN_FIELD_EXTENSION_BYTES = 1,
  FIRN_FIELD_EXTENSION_ABOUT = 2
} firn_extension_field;

/* Field ids of a Unread: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_unread_field {
  FIRN_FIELD_UNREAD_LINE = 0,
  FIRN_FIELD_UNREAD_TEXT = 1,
  FIRN_FIELD_UNREAD_EXPECTED = 2
} firn_unread_field;

/* Field ids of a Observer: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_observer_field {
  FIRN_FIELD_OBSERVER_NAME = 0,
  FIRN_FIELD_OBSERVER_TRAINING = 1,
  FIRN_FIELD_OBSERVER_ID = 2,
  FIRN_FIELD_OBSERVER_WORDS = 3
} firn_observer_field;

/* Field ids of a Operation: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_operation_field {
  FIRN_FIELD_OPERATION_NAME = 0,
  FIRN_FIELD_OPERATION_ID = 1,
  FIRN_FIELD_OPERATION_CONTACTS = 2
} firn_operation_field;

/* Field ids of a Site: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_site_field {
  FIRN_FIELD_SITE_NAME = 0,
  FIRN_FIELD_SITE_POINT_KIND = 1,
  FIRN_FIELD_SITE_ELEVATION_10UM = 2,
  FIRN_FIELD_SITE_ELEVATION_SOURCE = 3,
  FIRN_FIELD_SITE_ASPECT_POINT = 4,
  FIRN_FIELD_SITE_ASPECT_DEG = 5,
  FIRN_FIELD_SITE_SLOPE_DEG = 6,
  FIRN_FIELD_SITE_LATITUDE_E7DEG = 7,
  FIRN_FIELD_SITE_LONGITUDE_E7DEG = 8,
  FIRN_FIELD_SITE_POSITION_ACCURACY_10UM = 9,
  FIRN_FIELD_SITE_POSITION_SOURCE = 10,
  FIRN_FIELD_SITE_COUNTRY = 11,
  FIRN_FIELD_SITE_REGION = 12,
  FIRN_FIELD_SITE_ID = 13,
  FIRN_FIELD_SITE_POINT_ID = 14,
  FIRN_FIELD_SITE_BLURRED_BY_10UM = 15,
  FIRN_FIELD_SITE_PROBES_10UM = 16,
  FIRN_FIELD_SITE_TERRAIN = 17,
  FIRN_FIELD_SITE_UNRELIABLE = 18
} firn_site_field;

/* Field ids of a Choice: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_choice_field {
  FIRN_FIELD_CHOICE_WORDS = 0,
  FIRN_FIELD_CHOICE_TERRAIN_OF_INTEREST = 1,
  FIRN_FIELD_CHOICE_ASPECT = 2,
  FIRN_FIELD_CHOICE_ELEVATION = 3,
  FIRN_FIELD_CHOICE_WIND_LOADING = 4,
  FIRN_FIELD_CHOICE_INCLINE = 5,
  FIRN_FIELD_CHOICE_INTEREST_ASPECT_POINT = 6,
  FIRN_FIELD_CHOICE_INTEREST_ASPECT_DEG = 7,
  FIRN_FIELD_CHOICE_INTEREST_ELEVATION_10UM = 8,
  FIRN_FIELD_CHOICE_INTEREST_SLOPE_DEG = 9,
  FIRN_FIELD_CHOICE_UNRELIABLE = 10
} firn_choice_field;

/* Field ids of a Weather: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_weather_field {
  FIRN_FIELD_WEATHER_SKY = 0,
  FIRN_FIELD_WEATHER_SKY_THIN = 1,
  FIRN_FIELD_WEATHER_SKY_FAMILY = 2,
  FIRN_FIELD_WEATHER_VALLEY_FOG_BASE_10UM = 3,
  FIRN_FIELD_WEATHER_VALLEY_FOG_TOP_10UM = 4,
  FIRN_FIELD_WEATHER_PRECIPITATION = 5,
  FIRN_FIELD_WEATHER_PRECIPITATION_FAMILY = 6,
  FIRN_FIELD_WEATHER_PRECIPITATION_RATE = 7,
  FIRN_FIELD_WEATHER_AIR_TEMPERATURE_CDEGC = 8,
  FIRN_FIELD_WEATHER_WIND = 9,
  FIRN_FIELD_WEATHER_WIND_SPEED_CMS = 10,
  FIRN_FIELD_WEATHER_WIND_FROM_POINT = 11,
  FIRN_FIELD_WEATHER_WIND_FROM_DEG = 12,
  FIRN_FIELD_WEATHER_BLOWING_SNOW = 13,
  FIRN_FIELD_WEATHER_BLOWING_SNOW_FROM_POINT = 14,
  FIRN_FIELD_WEATHER_WORDS = 15,
  FIRN_FIELD_WEATHER_UNRELIABLE = 16
} firn_weather_field;

/* Field ids of a Surface: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_surface_field {
  FIRN_FIELD_SURFACE_ROUGHNESS = 0,
  FIRN_FIELD_SURFACE_AMPLITUDE_10UM = 1,
  FIRN_FIELD_SURFACE_AMPLITUDE_MAX_10UM = 2,
  FIRN_FIELD_SURFACE_WAVELENGTH_10UM = 3,
  FIRN_FIELD_SURFACE_WAVELENGTH_MAX_10UM = 4,
  FIRN_FIELD_SURFACE_FEATURE_ASPECT_POINT = 5,
  FIRN_FIELD_SURFACE_FEATURE_ASPECT_DEG = 6,
  FIRN_FIELD_SURFACE_PENETRATION_RAM_10UM = 7,
  FIRN_FIELD_SURFACE_PENETRATION_FOOT_10UM = 8,
  FIRN_FIELD_SURFACE_PENETRATION_SKI_10UM = 9,
  FIRN_FIELD_SURFACE_TEMPERATURE_CDEGC = 10,
  FIRN_FIELD_SURFACE_WORDS = 11,
  FIRN_FIELD_SURFACE_UNRELIABLE = 12
} firn_surface_field;

/* Field ids of a Snowpack: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_snowpack_field {
  FIRN_FIELD_SNOWPACK_HS_10UM = 0,
  FIRN_FIELD_SNOWPACK_HS_WATER_10UM = 1,
  FIRN_FIELD_SNOWPACK_HN24_10UM = 2,
  FIRN_FIELD_SNOWPACK_HN24_WATER_10UM = 3,
  FIRN_FIELD_SNOWPACK_HIN_10UM = 4,
  FIRN_FIELD_SNOWPACK_HIN_WATER_10UM = 5,
  FIRN_FIELD_SNOWPACK_HIN_CLEARED = 6,
  FIRN_FIELD_SNOWPACK_HST_10UM = 7,
  FIRN_FIELD_SNOWPACK_HST_WATER_10UM = 8,
  FIRN_FIELD_SNOWPACK_DIRECTION = 9,
  FIRN_FIELD_SNOWPACK_UNRELIABLE = 10
} firn_snowpack_field;

/* Field ids of a LayerName: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_layer_name_field {
  FIRN_FIELD_LAYER_NAME_DATE = 0,
  FIRN_FIELD_LAYER_NAME_KIND = 1,
  FIRN_FIELD_LAYER_NAME_WORDS = 2
} firn_layer_name_field;

/* Field ids of a Layer: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_layer_field {
  FIRN_FIELD_LAYER_TOP = 0,
  FIRN_FIELD_LAYER_BOTTOM = 1,
  FIRN_FIELD_LAYER_HARDNESS = 2,
  FIRN_FIELD_LAYER_HARDNESS_TOP = 3,
  FIRN_FIELD_LAYER_HARDNESS_BOTTOM = 4,
  FIRN_FIELD_LAYER_GRAIN_FORM = 5,
  FIRN_FIELD_LAYER_GRAIN_FORM_SECOND = 6,
  FIRN_FIELD_LAYER_GRAIN_SIZE_10UM = 7,
  FIRN_FIELD_LAYER_GRAIN_SIZE_MAX_10UM = 8,
  FIRN_FIELD_LAYER_GRAIN_SIZE_CLASS = 9,
  FIRN_FIELD_LAYER_GRAIN_SIZE_MAX_CLASS = 10,
  FIRN_FIELD_LAYER_WETNESS = 11,
  FIRN_FIELD_LAYER_WORDS = 12,
  FIRN_FIELD_LAYER_CANDIDATES = 13,
  FIRN_FIELD_LAYER_NAME = 14,
  FIRN_FIELD_LAYER_FORMED = 15,
  FIRN_FIELD_LAYER_CONCERN = 16,
  FIRN_FIELD_LAYER_UNRELIABLE = 17
} firn_layer_field;

/* Field ids of a TemperatureReading: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_temperature_reading_field {
  FIRN_FIELD_TEMPERATURE_READING_DEPTH = 0,
  FIRN_FIELD_TEMPERATURE_READING_TEMPERATURE_CDEGC = 1,
  FIRN_FIELD_TEMPERATURE_READING_UNCERTAINTY_CDEGC = 2,
  FIRN_FIELD_TEMPERATURE_READING_UNRELIABLE = 3
} firn_temperature_reading_field;

/* Field ids of a DensityReading: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_density_reading_field {
  FIRN_FIELD_DENSITY_READING_TOP = 0,
  FIRN_FIELD_DENSITY_READING_BOTTOM = 1,
  FIRN_FIELD_DENSITY_READING_DENSITY_DKGM3 = 2,
  FIRN_FIELD_DENSITY_READING_UNRELIABLE = 3
} firn_density_reading_field;

/* Field ids of a DensityProfile: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_density_profile_field {
  FIRN_FIELD_DENSITY_PROFILE_NUMBER = 0,
  FIRN_FIELD_DENSITY_PROFILE_METHOD = 1,
  FIRN_FIELD_DENSITY_PROFILE_UNCERTAINTY_DKGM3 = 2,
  FIRN_FIELD_DENSITY_PROFILE_PROBE_VOLUME_MM3 = 3,
  FIRN_FIELD_DENSITY_PROFILE_PROBE_DIAMETER_10UM = 4,
  FIRN_FIELD_DENSITY_PROFILE_PROBE_LENGTH_10UM = 5,
  FIRN_FIELD_DENSITY_PROFILE_PROBED_THICKNESS_10UM = 6,
  FIRN_FIELD_DENSITY_PROFILE_READINGS = 7
} firn_density_profile_field;

/* Field ids of a LiquidWaterReading: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_liquid_water_reading_field {
  FIRN_FIELD_LIQUID_WATER_READING_TOP = 0,
  FIRN_FIELD_LIQUID_WATER_READING_BOTTOM = 1,
  FIRN_FIELD_LIQUID_WATER_READING_LIQUID_WATER_E4 = 2,
  FIRN_FIELD_LIQUID_WATER_READING_UNRELIABLE = 3
} firn_liquid_water_reading_field;

/* Field ids of a LiquidWaterProfile: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_liquid_water_profile_field {
  FIRN_FIELD_LIQUID_WATER_PROFILE_NUMBER = 0,
  FIRN_FIELD_LIQUID_WATER_PROFILE_METHOD = 1,
  FIRN_FIELD_LIQUID_WATER_PROFILE_UNCERTAINTY_E4 = 2,
  FIRN_FIELD_LIQUID_WATER_PROFILE_PROBED_THICKNESS_10UM = 3,
  FIRN_FIELD_LIQUID_WATER_PROFILE_READINGS = 4
} firn_liquid_water_profile_field;

/* Field ids of a SurfaceAreaReading: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_surface_area_reading_field {
  FIRN_FIELD_SURFACE_AREA_READING_TOP = 0,
  FIRN_FIELD_SURFACE_AREA_READING_BOTTOM = 1,
  FIRN_FIELD_SURFACE_AREA_READING_SURFACE_AREA_E2M2KG = 2,
  FIRN_FIELD_SURFACE_AREA_READING_UNRELIABLE = 3
} firn_surface_area_reading_field;

/* Field ids of a SurfaceAreaProfile: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_surface_area_profile_field {
  FIRN_FIELD_SURFACE_AREA_PROFILE_NUMBER = 0,
  FIRN_FIELD_SURFACE_AREA_PROFILE_METHOD = 1,
  FIRN_FIELD_SURFACE_AREA_PROFILE_UNCERTAINTY_E2M2KG = 2,
  FIRN_FIELD_SURFACE_AREA_PROFILE_PROBED_THICKNESS_10UM = 3,
  FIRN_FIELD_SURFACE_AREA_PROFILE_READINGS = 4,
  FIRN_FIELD_SURFACE_AREA_PROFILE_DENSE_DEPTH_CM = 5,
  FIRN_FIELD_SURFACE_AREA_PROFILE_DENSE_M2KG = 6
} firn_surface_area_profile_field;

/* Field ids of a HardnessReading: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_hardness_reading_field {
  FIRN_FIELD_HARDNESS_READING_TOP = 0,
  FIRN_FIELD_HARDNESS_READING_BOTTOM = 1,
  FIRN_FIELD_HARDNESS_READING_RESISTANCE_MN = 2,
  FIRN_FIELD_HARDNESS_READING_HAMMER_G = 3,
  FIRN_FIELD_HARDNESS_READING_TUBE_G = 4,
  FIRN_FIELD_HARDNESS_READING_DROPS = 5,
  FIRN_FIELD_HARDNESS_READING_DROP_HEIGHT_10UM = 6,
  FIRN_FIELD_HARDNESS_READING_UNRELIABLE = 7
} firn_hardness_reading_field;

/* Field ids of a HardnessProfile: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_hardness_profile_field {
  FIRN_FIELD_HARDNESS_PROFILE_NUMBER = 0,
  FIRN_FIELD_HARDNESS_PROFILE_METHOD = 1,
  FIRN_FIELD_HARDNESS_PROFILE_UNCERTAINTY_MN = 2,
  FIRN_FIELD_HARDNESS_PROFILE_INDENTATION_AREA_MM2 = 3,
  FIRN_FIELD_HARDNESS_PROFILE_READINGS = 4,
  FIRN_FIELD_HARDNESS_PROFILE_DENSE_DEPTH_CM = 5,
  FIRN_FIELD_HARDNESS_PROFILE_DENSE_N = 6
} firn_hardness_profile_field;

/* Field ids of a StrengthReading: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_strength_reading_field {
  FIRN_FIELD_STRENGTH_READING_TOP = 0,
  FIRN_FIELD_STRENGTH_READING_BOTTOM = 1,
  FIRN_FIELD_STRENGTH_READING_STRENGTH_PA = 2,
  FIRN_FIELD_STRENGTH_READING_CHARACTER = 3,
  FIRN_FIELD_STRENGTH_READING_QUALITY = 4,
  FIRN_FIELD_STRENGTH_READING_FRACTURE_SURFACE = 5,
  FIRN_FIELD_STRENGTH_READING_UNRELIABLE = 6
} firn_strength_reading_field;

/* Field ids of a StrengthProfile: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_strength_profile_field {
  FIRN_FIELD_STRENGTH_PROFILE_NUMBER = 0,
  FIRN_FIELD_STRENGTH_PROFILE_KIND = 1,
  FIRN_FIELD_STRENGTH_PROFILE_METHOD = 2,
  FIRN_FIELD_STRENGTH_PROFILE_UNCERTAINTY_PA = 3,
  FIRN_FIELD_STRENGTH_PROFILE_PROBED_AREA_MM2 = 4,
  FIRN_FIELD_STRENGTH_PROFILE_READINGS = 5
} firn_strength_profile_field;

/* Field ids of a ImpurityReading: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_impurity_reading_field {
  FIRN_FIELD_IMPURITY_READING_TOP = 0,
  FIRN_FIELD_IMPURITY_READING_BOTTOM = 1,
  FIRN_FIELD_IMPURITY_READING_MASS_FRACTION_E6 = 2,
  FIRN_FIELD_IMPURITY_READING_MASS_FRACTION_UNIT = 3,
  FIRN_FIELD_IMPURITY_READING_VOLUME_FRACTION_E6 = 4,
  FIRN_FIELD_IMPURITY_READING_VOLUME_FRACTION_UNIT = 5,
  FIRN_FIELD_IMPURITY_READING_UNRELIABLE = 6,
  FIRN_FIELD_IMPURITY_READING_UNIT_WORDS = 7
} firn_impurity_reading_field;

/* Field ids of a ImpurityProfile: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_impurity_profile_field {
  FIRN_FIELD_IMPURITY_PROFILE_NUMBER = 0,
  FIRN_FIELD_IMPURITY_PROFILE_IMPURITY = 1,
  FIRN_FIELD_IMPURITY_PROFILE_METHOD = 2,
  FIRN_FIELD_IMPURITY_PROFILE_UNCERTAINTY_E6 = 3,
  FIRN_FIELD_IMPURITY_PROFILE_UNCERTAINTY_UNIT = 4,
  FIRN_FIELD_IMPURITY_PROFILE_PROBED_THICKNESS_10UM = 5,
  FIRN_FIELD_IMPURITY_PROFILE_READINGS = 6,
  FIRN_FIELD_IMPURITY_PROFILE_UNCERTAINTY_UNIT_WORDS = 7
} firn_impurity_profile_field;

/* Field ids of a Fracture: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_fracture_field {
  FIRN_FIELD_FRACTURE_DEPTH = 0,
  FIRN_FIELD_FRACTURE_TAP = 1,
  FIRN_FIELD_FRACTURE_TAP_CROSSED = 2,
  FIRN_FIELD_FRACTURE_STAGE = 3,
  FIRN_FIELD_FRACTURE_CHARACTER = 4,
  FIRN_FIELD_FRACTURE_QUALITY = 5,
  FIRN_FIELD_FRACTURE_FRACTURE_SURFACE = 6,
  FIRN_FIELD_FRACTURE_CROSSING = 7,
  FIRN_FIELD_FRACTURE_STEP = 8,
  FIRN_FIELD_FRACTURE_JUMP = 9,
  FIRN_FIELD_FRACTURE_RELEASE = 10,
  FIRN_FIELD_FRACTURE_CUT_10UM = 11,
  FIRN_FIELD_FRACTURE_SAW_END = 12,
  FIRN_FIELD_FRACTURE_EASE = 13,
  FIRN_FIELD_FRACTURE_FORCE_MN = 14,
  FIRN_FIELD_FRACTURE_ON = 15,
  FIRN_FIELD_FRACTURE_PART = 16,
  FIRN_FIELD_FRACTURE_WORDS = 17,
  FIRN_FIELD_FRACTURE_UNRELIABLE = 18
} firn_fracture_field;

/* Field ids of a StabilityTest: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_stability_test_field {
  FIRN_FIELD_STABILITY_TEST_KIND = 0,
  FIRN_FIELD_STABILITY_TEST_OUTCOME = 1,
  FIRN_FIELD_STABILITY_TEST_FRACTURES = 2,
  FIRN_FIELD_STABILITY_TEST_NOT_VALID_REASON = 3,
  FIRN_FIELD_STABILITY_TEST_COLUMN_WIDTH_10UM = 4,
  FIRN_FIELD_STABILITY_TEST_COLUMN_LENGTH_10UM = 5,
  FIRN_FIELD_STABILITY_TEST_COLUMN_DEPTH_10UM = 6,
  FIRN_FIELD_STABILITY_TEST_SLAB_LEFT_10UM = 7,
  FIRN_FIELD_STABILITY_TEST_COLUMN_ENDS = 8,
  FIRN_FIELD_STABILITY_TEST_SLOPE_DEG = 9,
  FIRN_FIELD_STABILITY_TEST_CROSSING_RULE = 10,
  FIRN_FIELD_STABILITY_TEST_TAPS_GIVEN = 11,
  FIRN_FIELD_STABILITY_TEST_UNBROKEN = 12,
  FIRN_FIELD_STABILITY_TEST_WORDS = 13,
  FIRN_FIELD_STABILITY_TEST_UNRELIABLE = 14
} firn_stability_test_field;

/* Field ids of a Sign: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_sign_field {
  FIRN_FIELD_SIGN_KIND = 0,
  FIRN_FIELD_SIGN_ANSWER = 1,
  FIRN_FIELD_SIGN_LENGTH_10UM = 2,
  FIRN_FIELD_SIGN_SEEN = 3,
  FIRN_FIELD_SIGN_WORDS = 4,
  FIRN_FIELD_SIGN_UNRELIABLE = 5
} firn_sign_field;

/* Field ids of a Slide: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_slide_field {
  FIRN_FIELD_SLIDE_KIND = 0,
  FIRN_FIELD_SLIDE_TRIGGER = 1,
  FIRN_FIELD_SLIDE_SIZE_TENTHS = 2,
  FIRN_FIELD_SLIDE_ASPECT_POINT = 3,
  FIRN_FIELD_SLIDE_ASPECT_DEG = 4,
  FIRN_FIELD_SLIDE_ELEVATION_10UM = 5,
  FIRN_FIELD_SLIDE_AGE_MIN = 6,
  FIRN_FIELD_SLIDE_COUNT = 7,
  FIRN_FIELD_SLIDE_WORDS = 8,
  FIRN_FIELD_SLIDE_UNRELIABLE = 9
} firn_slide_field;

/* Field ids of a Assessment: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_assessment_field {
  FIRN_FIELD_ASSESSMENT_WORDS = 0,
  FIRN_FIELD_ASSESSMENT_PLAN = 1,
  FIRN_FIELD_ASSESSMENT_CONFIDENCE = 2
} firn_assessment_field;

/* Field ids of a BulletinSeen: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_bulletin_seen_field {
  FIRN_FIELD_BULLETIN_SEEN_STATE = 0,
  FIRN_FIELD_BULLETIN_SEEN_ID = 1,
  FIRN_FIELD_BULLETIN_SEEN_REGION = 2,
  FIRN_FIELD_BULLETIN_SEEN_WORDS = 3
} firn_bulletin_seen_field;

/* Field ids of a Photo: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_photo_field {
  FIRN_FIELD_PHOTO_REFERENCE = 0,
  FIRN_FIELD_PHOTO_TAKEN = 1,
  FIRN_FIELD_PHOTO_ABOUT = 2,
  FIRN_FIELD_PHOTO_WORDS = 3,
  FIRN_FIELD_PHOTO_SHA256 = 4
} firn_photo_field;

/* Field ids of a Step: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_step_field {
  FIRN_FIELD_STEP_KIND = 0,
  FIRN_FIELD_STEP_DONE = 1,
  FIRN_FIELD_STEP_MADE = 2,
  FIRN_FIELD_STEP_WORDS = 3
} firn_step_field;

/* Field ids of a Pit: positions in its `present` and `unreliable` masks. Since 0.1. */
typedef enum firn_pit_field {
  FIRN_FIELD_PIT_SCHEMA_MINOR = 0,
  FIRN_FIELD_PIT_ID = 1,
  FIRN_FIELD_PIT_TITLE = 2,
  FIRN_FIELD_PIT_PURPOSE = 3,
  FIRN_FIELD_PIT_TIME = 4,
  FIRN_FIELD_PIT_REPORTED = 5,
  FIRN_FIELD_PIT_EDITED = 6,
  FIRN_FIELD_PIT_OBSERVERS = 7,
  FIRN_FIELD_PIT_OPERATION = 8,
  FIRN_FIELD_PIT_SITE = 9,
  FIRN_FIELD_PIT_CHOICE = 10,
  FIRN_FIELD_PIT_WEATHER = 11,
  FIRN_FIELD_PIT_SURFACE = 12,
  FIRN_FIELD_PIT_SNOWPACK = 13,
  FIRN_FIELD_PIT_PROFILE_DEPTH_10UM = 14,
  FIRN_FIELD_PIT_REACHED_GROUND = 15,
  FIRN_FIELD_PIT_LAYERS = 16,
  FIRN_FIELD_PIT_TEMPERATURES = 17,
  FIRN_FIELD_PIT_DENSITIES = 18,
  FIRN_FIELD_PIT_LIQUID_WATER = 19,
  FIRN_FIELD_PIT_SURFACE_AREA = 20,
  FIRN_FIELD_PIT_HARDNESS = 21,
  FIRN_FIELD_PIT_STRENGTH = 22,
  FIRN_FIELD_PIT_IMPURITIES = 23,
  FIRN_FIELD_PIT_TESTS = 24,
  FIRN_FIELD_PIT_SIGNS = 25,
  FIRN_FIELD_PIT_SLIDES = 26,
  FIRN_FIELD_PIT_ASSESSMENT = 27,
  FIRN_FIELD_PIT_BULLETIN = 28,
  FIRN_FIELD_PIT_BACKFILLED = 29,
  FIRN_FIELD_PIT_PHOTOS = 30,
  FIRN_FIELD_PIT_REMARKS = 31,
  FIRN_FIELD_PIT_ABSENCES = 32,
  FIRN_FIELD_PIT_UNREAD = 33,
  FIRN_FIELD_PIT_EXTENSIONS = 34,
  FIRN_FIELD_PIT_SHARING = 35,
  FIRN_FIELD_PIT_PRACTICE = 36,
  FIRN_FIELD_PIT_APPLICATION = 37,
  FIRN_FIELD_PIT_APPLICATION_VERSION = 38,
  FIRN_FIELD_PIT_STEPS = 39,
  FIRN_FIELD_PIT_UNREAD_EDITS = 40
} firn_pit_field;

/* Danger rating of a region. It can never be computed from a pit. Since 0.1. */
typedef enum firn_danger_level {
  FIRN_DANGER_LEVEL_LOW = 1, /* "low" */
  FIRN_DANGER_LEVEL_MODERATE = 2, /* "moderate" */
  FIRN_DANGER_LEVEL_CONSIDERABLE = 3, /* "considerable" */
  FIRN_DANGER_LEVEL_HIGH = 4, /* "high" */
  FIRN_DANGER_LEVEL_VERY_HIGH = 5, /* "very_high" */
  FIRN_DANGER_LEVEL_NO_SNOW = 11, /* "no_snow" */
  FIRN_DANGER_LEVEL_NO_RATING = 12 /* "no_rating" */
} firn_danger_level;

/* Avalanche problem: 1 to 8 as in CAAML, from 21 the types of the conceptual model of avalanche hazard.
   Since 0.1. */
typedef enum firn_problem_type {
  FIRN_PROBLEM_TYPE_NEW_SNOW = 1, /* "new_snow" */
  FIRN_PROBLEM_TYPE_WIND_SLAB = 2, /* "wind_slab" */
  FIRN_PROBLEM_TYPE_PERSISTENT_WEAK_LAYERS = 3, /* "persistent_weak_layers" */
  FIRN_PROBLEM_TYPE_WET_SNOW = 4, /* "wet_snow" */
  FIRN_PROBLEM_TYPE_GLIDING_SNOW = 5, /* "gliding_snow" */
  FIRN_PROBLEM_TYPE_CORNICES = 6, /* "cornices" */
  FIRN_PROBLEM_TYPE_NO_DISTINCT_AVALANCHE_PROBLEM = 7, /* "no_distinct_avalanche_problem" */
  FIRN_PROBLEM_TYPE_FAVOURABLE_SITUATION = 8, /* "favourable_situation" */
  FIRN_PROBLEM_TYPE_DRY_LOOSE = 21,
  FIRN_PROBLEM_TYPE_WET_LOOSE = 22,
  FIRN_PROBLEM_TYPE_STORM_SLAB = 23,
  FIRN_PROBLEM_TYPE_MODEL_WIND_SLAB = 24,
  FIRN_PROBLEM_TYPE_PERSISTENT_SLAB = 25,
  FIRN_PROBLEM_TYPE_DEEP_PERSISTENT_SLAB = 26,
  FIRN_PROBLEM_TYPE_WET_SLAB = 27,
  FIRN_PROBLEM_TYPE_GLIDE = 28,
  FIRN_PROBLEM_TYPE_CORNICE = 29
} firn_problem_type;

/* Since 0.1. */
typedef enum firn_snowpack_stability {
  FIRN_SNOWPACK_STABILITY_GOOD = 1,
  FIRN_SNOWPACK_STABILITY_FAIR = 2,
  FIRN_SNOWPACK_STABILITY_POOR = 3,
  FIRN_SNOWPACK_STABILITY_VERY_POOR = 4
} firn_snowpack_stability;

/* Since 0.1. */
typedef enum firn_frequency {
  FIRN_FREQUENCY_NONE = 1,
  FIRN_FREQUENCY_FEW = 2,
  FIRN_FREQUENCY_SOME = 3,
  FIRN_FREQUENCY_MANY = 4
} firn_frequency;

/* Since 0.1. */
typedef enum firn_day_period {
  FIRN_DAY_PERIOD_ALL_DAY = 1,
  FIRN_DAY_PERIOD_EARLIER = 2,
  FIRN_DAY_PERIOD_LATER = 3
} firn_day_period;

/* Since 0.1. */
typedef enum firn_tendency {
  FIRN_TENDENCY_DECREASING = 1,
  FIRN_TENDENCY_STEADY = 2,
  FIRN_TENDENCY_INCREASING = 3
} firn_tendency;

/* Parts of a scope; the numbers are bits. Since 0.1. */
typedef enum firn_scope_part {
  FIRN_SCOPE_PART_ELEVATION = 1,
  FIRN_SCOPE_PART_ASPECTS = 2,
  FIRN_SCOPE_PART_PERIOD = 4
} firn_scope_part;

/* Since 0.1. */
typedef enum firn_severity {
  FIRN_SEVERITY_NONE = 0,
  FIRN_SEVERITY_ERROR = 1, /* the record contradicts itself or cannot be */
  FIRN_SEVERITY_WARNING = 2, /* probably a slip, or outside a method's limits */
  FIRN_SEVERITY_HINT = 3 /* worth a look */
} firn_severity;

/* Codes of the checks, in blocks of a hundred: 1 geometry, 2 vocabulary and sizes, 3 temperatures, 4
   density, 5 tests, 6 site and time, 7 weather, 8 completeness. Numbers are never reused. What each one
   says, how to mend it and where it comes from: core/src/checking/CATALOGUE.md. Since 0.1. */
typedef enum firn_check_code {
  FIRN_CHECK_CODE_NONE = 0,
  FIRN_CHECK_CODE_LAYER_WITHOUT_TOP = 101,
  FIRN_CHECK_CODE_LAYER_WITHOUT_BOTTOM = 102,
  FIRN_CHECK_CODE_LAYER_UPSIDE_DOWN = 103,
  FIRN_CHECK_CODE_LAYERS_OVERLAP = 104,
  FIRN_CHECK_CODE_GAP_BETWEEN_LAYERS = 105,
  FIRN_CHECK_CODE_LAYER_BELOW_GROUND = 106,
  FIRN_CHECK_CODE_LAYERS_DO_NOT_REACH_GROUND = 107,
  FIRN_CHECK_CODE_DEPTH_DATUM_UNKNOWN = 108,
  FIRN_CHECK_CODE_DEPTH_WITHOUT_HS = 109,
  FIRN_CHECK_CODE_DEPTH_BELOW_SNOW = 110,
  FIRN_CHECK_CODE_NEGATIVE_DEPTH = 111,
  FIRN_CHECK_CODE_DIRECTIONS_MIXED = 112,
  FIRN_CHECK_CODE_LAYERS_OUT_OF_ORDER = 113,
  FIRN_CHECK_CODE_NEGATIVE_HS = 114,
  FIRN_CHECK_CODE_FIRST_LAYER_NOT_AT_SURFACE = 115,
  FIRN_CHECK_CODE_READING_UPSIDE_DOWN = 116,
  FIRN_CHECK_CODE_SIZE_NOT_POSITIVE = 201,
  FIRN_CHECK_CODE_SIZE_IMPOSSIBLE = 202,
  FIRN_CHECK_CODE_SIZE_MAX_BELOW_SIZE = 203,
  FIRN_CHECK_CODE_UNKNOWN_CODE = 204,
  FIRN_CHECK_CODE_HARDNESS_TWICE = 205,
  FIRN_CHECK_CODE_WORDS_WITHOUT_CODE = 206,
  FIRN_CHECK_CODE_ICE_SOFTER_THAN_KNIFE = 207,
  FIRN_CHECK_CODE_SIZE_CONTRADICTS_FORM = 208,
  FIRN_CHECK_CODE_SURFACE_HOAR_THICK = 209,
  FIRN_CHECK_CODE_NEW_SNOW_HARD = 210,
  FIRN_CHECK_CODE_CRUST_SOFT = 211,
  FIRN_CHECK_CODE_SURFACE_FACETS_THICK = 212,
  FIRN_CHECK_CODE_SIZE_CLASS_CONTRADICTS_SIZE = 213,
  FIRN_CHECK_CODE_SECOND_FORM_REPEATS_FIRST = 214,
  FIRN_CHECK_CODE_SECOND_FORM_WITHOUT_FIRST = 215,
  FIRN_CHECK_CODE_SLUSH_NOT_SOAKED = 216,
  FIRN_CHECK_CODE_SNOW_ABOVE_FREEZING = 301,
  FIRN_CHECK_CODE_SNOW_SLIGHTLY_ABOVE_FREEZING = 302,
  FIRN_CHECK_CODE_WET_BUT_COLD = 303,
  FIRN_CHECK_CODE_TEMPERATURE_TOO_LOW = 304,
  FIRN_CHECK_CODE_TWO_TEMPERATURES_AT_ONE_DEPTH = 305,
  FIRN_CHECK_CODE_GRADIENT_UNUSUAL = 306,
  FIRN_CHECK_CODE_SURFACE_TEMPERATURE_CONTRADICTS_READING = 307,
  FIRN_CHECK_CODE_DENSITY_IMPOSSIBLE = 401,
  FIRN_CHECK_CODE_DENSITY_UNUSUAL = 402,
  FIRN_CHECK_CODE_WATER_DIFFERS_FROM_DENSITIES = 403,
  FIRN_CHECK_CODE_READING_ACROSS_LAYERS = 404,
  FIRN_CHECK_CODE_READINGS_OVERLAP = 405,
  FIRN_CHECK_CODE_NEW_SNOW_DENSITY_UNUSUAL = 406,
  FIRN_CHECK_CODE_NEW_SNOW_DEEPER_THAN_SNOW = 407,
  FIRN_CHECK_CODE_WATER_EXCEEDS_ICE = 408,
  FIRN_CHECK_CODE_NEW_SNOW_NEGATIVE = 409,
  FIRN_CHECK_CODE_TAP_OUT_OF_RANGE = 501,
  FIRN_CHECK_CODE_BAND_CONTRADICTS_TAP = 502,
  FIRN_CHECK_CODE_CROSSING_BEFORE_CRACK = 503,
  FIRN_CHECK_CODE_CROSSING_CONTRADICTS_TAPS = 504,
  FIRN_CHECK_CODE_NO_FRACTURE_WITH_RESULT = 505,
  FIRN_CHECK_CODE_FRACTURED_WITHOUT_FRACTURE = 506,
  FIRN_CHECK_CODE_FRACTURE_WITHOUT_DEPTH = 507,
  FIRN_CHECK_CODE_FRACTURE_DEPTH_DATUM_UNKNOWN = 508,
  FIRN_CHECK_CODE_FRACTURE_BELOW_SNOW = 509,
  FIRN_CHECK_CODE_FRACTURE_FAR_FROM_LAYER_NAMED = 510,
  FIRN_CHECK_CODE_SAW_CUT_LONGER_THAN_COLUMN = 511,
  FIRN_CHECK_CODE_SAW_CUT_NOT_POSITIVE = 512,
  FIRN_CHECK_CODE_SAW_COLUMN_LENGTH_UNUSUAL = 513,
  FIRN_CHECK_CODE_RUTSCHBLOCK_STEP_OUT_OF_RANGE = 514,
  FIRN_CHECK_CODE_RUTSCHBLOCK_SLOPE_TOO_GENTLE = 515,
  FIRN_CHECK_CODE_TEST_DEPTH_BEYOND_USEFUL = 516,
  FIRN_CHECK_CODE_QUALITY_ON_EXTENDED_COLUMN = 517,
  FIRN_CHECK_CODE_CHARACTER_ON_EXTENDED_COLUMN = 518,
  FIRN_CHECK_CODE_NOT_VALID_WITHOUT_REASON = 519,
  FIRN_CHECK_CODE_TEST_WITHOUT_RESULT = 520,
  FIRN_CHECK_CODE_CROSSING_UNKNOWN = 521,
  FIRN_CHECK_CODE_CROSSING_DEPENDS_ON_RULE = 522,
  FIRN_CHECK_CODE_SAW_STOPPED_AT_FULL_CUT = 523,
  FIRN_CHECK_CODE_EXTENDED_COLUMN_DEEP = 524,
  FIRN_CHECK_CODE_FRACTURE_AWAY_FROM_BOUNDARIES = 525,
  FIRN_CHECK_CODE_TEST_WITHOUT_KIND = 526,
  FIRN_CHECK_CODE_SAW_LENGTH_MISSING = 527,
  FIRN_CHECK_CODE_FRACTURE_WITHOUT_LOAD = 528,
  FIRN_CHECK_CODE_COLUMN_SIZE_UNUSUAL = 529,
  FIRN_CHECK_CODE_RUTSCHBLOCK_ABOVE_PENETRATION = 530,
  FIRN_CHECK_CODE_RUTSCHBLOCK_BEYOND_USEFUL = 531,
  FIRN_CHECK_CODE_DEEP_TAP_SHALLOW = 532,
  FIRN_CHECK_CODE_DEEP_TAP_SLAB_UNUSUAL = 533,
  FIRN_CHECK_CODE_SLAB_VERY_SOFT = 534,
  FIRN_CHECK_CODE_RELEASE_MISSING = 535,
  FIRN_CHECK_CODE_JUMP_OUT_OF_RANGE = 536,
  FIRN_CHECK_CODE_RESULT_OF_ANOTHER_TEST = 537,
  FIRN_CHECK_CODE_RUTSCHBLOCK_SLOPE_UNKNOWN = 538,
  FIRN_CHECK_CODE_UNBROKEN_CONTRADICTS_FRACTURE = 539,
  FIRN_CHECK_CODE_FRACTURE_BELOW_COLUMN = 540,
  FIRN_CHECK_CODE_TAPS_GIVEN_CONTRADICT = 541,
  FIRN_CHECK_CODE_STOPPED_EARLY = 542,
  FIRN_CHECK_CODE_SAW_END_MISSING = 543,
  FIRN_CHECK_CODE_PROBING_UNEVEN = 601,
  FIRN_CHECK_CODE_PROBES_TOO_FEW = 602,
  FIRN_CHECK_CODE_HS_DIFFERS_FROM_PROBES = 603,
  FIRN_CHECK_CODE_SLOPE_OUT_OF_RANGE = 604,
  FIRN_CHECK_CODE_ASPECT_OUT_OF_RANGE = 605,
  FIRN_CHECK_CODE_ASPECT_ON_FLAT_GROUND = 606,
  FIRN_CHECK_CODE_TIME_WITHOUT_OFFSET = 607,
  FIRN_CHECK_CODE_COORDINATES_OUT_OF_RANGE = 608,
  FIRN_CHECK_CODE_LAYER_NAMED_AFTER_THE_PIT = 609,
  FIRN_CHECK_CODE_TIME_MISSING = 610,
  FIRN_CHECK_CODE_ELEVATION_OUT_OF_RANGE = 611,
  FIRN_CHECK_CODE_POINT_CONTRADICTS_DEGREES = 612,
  FIRN_CHECK_CODE_OFFSET_OUT_OF_RANGE = 613,
  FIRN_CHECK_CODE_COORDINATE_MISSING = 614,
  FIRN_CHECK_CODE_TIME_ENDS_BEFORE_BEGIN = 615,
  FIRN_CHECK_CODE_PROBE_NEGATIVE = 616,
  FIRN_CHECK_CODE_CHANGED_BEFORE_DUG = 617,
  FIRN_CHECK_CODE_LAYER_FORMED_AFTER_THE_PIT = 618,
  FIRN_CHECK_CODE_WIND_CONTRADICTS_ITSELF = 701,
  FIRN_CHECK_CODE_CALM_WITH_DIRECTION = 702,
  FIRN_CHECK_CODE_WIND_SPEED_NEGATIVE = 703,
  FIRN_CHECK_CODE_PRECIPITATION_FROM_CLEAR_SKY = 704,
  FIRN_CHECK_CODE_AIR_TEMPERATURE_OUT_OF_RANGE = 705,
  FIRN_CHECK_CODE_SKI_SINKS_DEEPER_THAN_FOOT = 706,
  FIRN_CHECK_CODE_PENETRATION_BELOW_SNOW = 707,
  FIRN_CHECK_CODE_PENETRATION_NEGATIVE = 708,
  FIRN_CHECK_CODE_SIGNS_NOT_LOOKED_FOR = 801,
  FIRN_CHECK_CODE_LINE_NOT_UNDERSTOOD = 802,
  FIRN_CHECK_CODE_NOT_BACKFILLED = 803,
  FIRN_CHECK_CODE_SIGNS_NOT_RECORDED = 804,
  FIRN_CHECK_CODE_SIGN_WITHOUT_ANSWER = 805,
  FIRN_CHECK_CODE_SLIDES_CONTRADICT_SIGN = 806,
  FIRN_CHECK_CODE_EDITS_NOT_READ = 807,
  FIRN_CHECK_CODE_LENGTH_WITHOUT_SIGN = 808,
  FIRN_CHECK_CODE_SIGN_ANSWERED_TWICE = 809,
  FIRN_CHECK_CODE_SLIDE_SIZE_OUT_OF_RANGE = 810,
  FIRN_CHECK_CODE_SLIDE_AGE_NEGATIVE = 811,
  FIRN_CHECK_CODE_ASPECT_SAID_SAME_BUT_APART = 901,
  FIRN_CHECK_CODE_ELEVATION_SAID_SAME_BUT_APART = 902,
  FIRN_CHECK_CODE_INCLINE_SAID_SAME_BUT_APART = 903,
  FIRN_CHECK_CODE_INTEREST_STEEPER = 904,
  FIRN_CHECK_CODE_INTEREST_WITHOUT_COMPARISON = 905,
  FIRN_CHECK_CODE_SITE_CANNOT_BE_COMPARED = 906,
  FIRN_CHECK_CODE_LESS_LOADED_THAN_INTEREST = 907,
  FIRN_CHECK_CODE_PURPOSE_LAYERS = 1001,
  FIRN_CHECK_CODE_PURPOSE_HARDNESS = 1002,
  FIRN_CHECK_CODE_PURPOSE_FORMS = 1003,
  FIRN_CHECK_CODE_PURPOSE_SIZES = 1004,
  FIRN_CHECK_CODE_PURPOSE_WETNESS = 1005,
  FIRN_CHECK_CODE_PURPOSE_TEMPERATURES = 1006,
  FIRN_CHECK_CODE_PURPOSE_TESTS = 1007,
  FIRN_CHECK_CODE_PURPOSE_HS = 1008,
  FIRN_CHECK_CODE_PURPOSE_ELEVATION = 1009,
  FIRN_CHECK_CODE_PURPOSE_ASPECT = 1010,
  FIRN_CHECK_CODE_PURPOSE_SLOPE = 1011,
  FIRN_CHECK_CODE_PURPOSE_OBSERVERS = 1012,
  FIRN_CHECK_CODE_PURPOSE_WEATHER = 1013,
  FIRN_CHECK_CODE_PURPOSE_PLACE = 1014,
  FIRN_CHECK_CODE_PURPOSE_SHARING = 1015,
  FIRN_CHECK_CODE_PURPOSE_SLIDES = 1016,
  FIRN_CHECK_CODE_PRACTICE_FOR_SERVICE = 1017,
  FIRN_CHECK_CODE_TEMPERATURES_FAR_APART = 1018,
  FIRN_CHECK_CODE_SAW_ENDS_NOT_RECORDED = 1019
} firn_check_code;

/* Methods of interpretation. One method, one file in the library. Since 0.1. */
typedef enum firn_method {
  FIRN_METHOD_NONE = 0,
  FIRN_METHOD_FIELD_SIGNS = 1,
  FIRN_METHOD_COMPRESSION_TEST = 2,
  FIRN_METHOD_EXTENDED_COLUMN_SWISS = 3,
  FIRN_METHOD_SAW_TEST = 4,
  FIRN_METHOD_YELLOW_FLAGS = 5,
  FIRN_METHOD_TEMPERATURE_GRADIENT = 6,
  FIRN_METHOD_UNCLASSED_TESTS = 7,
  FIRN_METHOD_SHEAR_QUALITY = 8,
  FIRN_METHOD_EXTENDED_COLUMN_SCHEMES = 9, /* extended column: the two-way reading, three classes and four classes side by side */
  FIRN_METHOD_EXTENDED_COLUMN_EARLY = 10, /* extended column: not crossed, but cracked on an early tap */
  FIRN_METHOD_EXTENDED_COLUMN_SEVERAL = 11, /* two and more extended columns */
  FIRN_METHOD_DEEP_TAP_TEST = 12,
  FIRN_METHOD_RUTSCHBLOCK_SWISS = 13,
  FIRN_METHOD_SWISS_PRECEDENCE = 14, /* which test decides the class of a profile in the Swiss service's scheme, and nothing else */
  FIRN_METHOD_SHEAR_TESTS = 15, /* shovel and hand shear: where, never how strong */
  FIRN_METHOD_THRESHOLD_SUM = 16,
  FIRN_METHOD_LEMONS = 17,
  FIRN_METHOD_WEAK_LAYER_BUILD = 18,
  FIRN_METHOD_DENSITY_ESTIMATE = 19,
  FIRN_METHOD_WATER_EQUIVALENT = 20,
  FIRN_METHOD_SLAB_STRESS = 21,
  FIRN_METHOD_STRENGTH_ESTIMATE = 22,
  FIRN_METHOD_SKIER_STABILITY = 23,
  FIRN_METHOD_CRITICAL_CRACK_LENGTH = 24 /* off unless the caller gives Poisson's ratio */
} firn_method;

/* How the source of a method or a number is known to the library's authors. Since 0.1. */
typedef enum firn_verified {
  FIRN_VERIFIED_NONE = 0,
  FIRN_VERIFIED_READ = 1, /* read in the source itself */
  FIRN_VERIFIED_READ_SECONDARY = 2, /* read in a secondary source */
  FIRN_VERIFIED_MEMORY = 3, /* from memory, not checked against a text */
  FIRN_VERIFIED_PRACTICE = 4 /* ours, derived or common practice */
} firn_verified;

/* What a finding says about its subject under its own method. Since 0.1. */
typedef enum firn_verdict {
  FIRN_VERDICT_NONE = 0,
  FIRN_VERDICT_RAISES = 1, /* raises concern */
  FIRN_VERDICT_NOT_MET = 2, /* a criterion that is not met: takes nothing away from what others raise */
  FIRN_VERDICT_SAYS_LITTLE = 3, /* says little either way */
  FIRN_VERDICT_UNKNOWN = 4, /* could not be judged, something was not observed */
  FIRN_VERDICT_RAISED_NOTHING = 5, /* raised nothing under this method */
  FIRN_VERDICT_FACT = 6 /* a stated fact that other findings rest on */
} firn_verdict;

/* What was found. Numbers: a, b, c as said for the key; 0 where nothing is said or nothing was
   observed. Since 0.1. */
typedef enum firn_finding_key {
  FIRN_FINDING_KEY_NONE = 0,
  FIRN_FINDING_KEY_SIGN_SEEN = 1,
  FIRN_FINDING_KEY_SIGN_NOT_SEEN = 2,
  FIRN_FINDING_KEY_SIGN_NOT_LOOKED_FOR = 3,
  FIRN_FINDING_KEY_SLIDE_SEEN = 4, /* a = size in tenths, b = age in minutes (-1 = not recorded), c = Trigger */
  FIRN_FINDING_KEY_SIGN_ANSWER_UNKNOWN = 5, /* a sign was listed without an answer, or with one this library does not know */
  FIRN_FINDING_KEY_CT_SUDDEN = 20,
  FIRN_FINDING_KEY_CT_RESISTANT = 21,
  FIRN_FINDING_KEY_CT_BREAK = 22,
  FIRN_FINDING_KEY_CT_CHARACTER_UNKNOWN = 23,
  FIRN_FINDING_KEY_CT_NO_FRACTURE = 24, /* a = taps given in all */
  FIRN_FINDING_KEY_CT_QUALITY_ONE = 25, /* shear quality Q1 where no sudden character was recorded; c = ShearQuality */
  FIRN_FINDING_KEY_ECT_CROSSED_BEFORE_22 = 40,
  FIRN_FINDING_KEY_ECT_CROSSED_FROM_22 = 41,
  FIRN_FINDING_KEY_ECT_NOT_CROSSED = 42,
  FIRN_FINDING_KEY_ECT_NO_FRACTURE = 43,
  FIRN_FINDING_KEY_ECT_CROSSING_UNKNOWN = 44,
  FIRN_FINDING_KEY_ECT_CROSSED_TAP_UNKNOWN = 45, /* crossed, but on which tap was not recorded */
  FIRN_FINDING_KEY_ECT_IN_IGNORED_TOP = 46, /* in the top centimetres that one version of the scheme leaves out; only where a parameter asks for it */
  FIRN_FINDING_KEY_PST_PROPAGATION_LIKELY = 60,
  FIRN_FINDING_KEY_PST_CRITERION_NOT_MET = 61,
  FIRN_FINDING_KEY_PST_UNKNOWN = 62,
  FIRN_FINDING_KEY_PST_NO_FRACTURE = 63, /* sawn to the end, and the crack never ran by itself */
  FIRN_FINDING_KEY_FLAG_GRAIN_SIZE = 80,
  FIRN_FINDING_KEY_FLAG_HARDNESS = 81,
  FIRN_FINDING_KEY_FLAG_GRAIN_FORM = 82,
  FIRN_FINDING_KEY_FLAG_SIZE_DIFFERENCE = 83,
  FIRN_FINDING_KEY_FLAG_HARDNESS_DIFFERENCE = 84,
  FIRN_FINDING_KEY_FLAG_DEPTH = 85,
  FIRN_FINDING_KEY_FLAG_COUNT = 86, /* a = flags met, b = flags unknown, c = 1 when the weaker layer lies above the boundary */
  FIRN_FINDING_KEY_GRADIENT_STRONG = 100,
  FIRN_FINDING_KEY_GRADIENT_WEAK = 101,
  FIRN_FINDING_KEY_TEST_RECORDED = 120,
  FIRN_FINDING_KEY_TEST_NOT_VALID = 121, /* a = TestKind, b = NotValidReason */
  FIRN_FINDING_KEY_TEST_FRACTURE = 122, /* something broke here in such a test, or in one that was not valid. a = step (rutschblock) or tap, b = ReleaseType or ShearEase, c = TestKind */
  FIRN_FINDING_KEY_MARKED_BY_OBSERVER = 140, /* the observer marked this layer as one of concern. a = PartOfLayer. Theirs, not computed: no method. */
  FIRN_FINDING_KEY_ECT_SCHEMES = 150, /* a = class of 2 (Simenhois and Birkeland), b = of 3 (Winkler and Schweizer), c = of 4 (Techel and others) */
  FIRN_FINDING_KEY_ECT_RULES_DIFFER = 151, /* crossed one tap after the first crack: P by the wider rule, N by the narrower. a = tap, b = tap crossed */
  FIRN_FINDING_KEY_ECT_NOT_CROSSED_EARLY = 152, /* not crossed, but cracked below ten taps. a = tap (0 = counted by letter alone) */
  FIRN_FINDING_KEY_ECT_COLUMNS_AGREE = 155,
  FIRN_FINDING_KEY_ECT_COLUMNS_DIFFER = 156,
  FIRN_FINDING_KEY_ECT_LONG_COLUMN_CROSSED = 157, /* a column of two metres and more crossed where one of usual width did. a = width in 10 um */
  FIRN_FINDING_KEY_SHEAR_QUALITY_OTHER = 160, /* shear quality Q2 or Q3. a = tap, b = LoadStage, c = ShearQuality */
  FIRN_FINDING_KEY_PST_ENDS_SLOPE_NORMAL = 165, /* ends at right angles to the slope */
  FIRN_FINDING_KEY_PST_LENGTH_OFF_RULE = 166, /* a = length in 10 um, b = length by the rule */
  FIRN_FINDING_KEY_RB_CLASS_ONE = 170,
  FIRN_FINDING_KEY_RB_CLASS_TWO = 171,
  FIRN_FINDING_KEY_RB_CLASS_THREE = 172,
  FIRN_FINDING_KEY_RB_NO_FRACTURE = 173,
  FIRN_FINDING_KEY_RB_CLASS_UNKNOWN = 174,
  FIRN_FINDING_KEY_RB_SLOPE_GENTLE = 175, /* a = slope in degrees, b = least slope without a second observer, c = with one */
  FIRN_FINDING_KEY_RB_OUTSIDE_DEPTH = 176, /* broke outside of what this test loads. a = ski penetration in 10 um, b = deepest that it loads */
  FIRN_FINDING_KEY_SWISS_CLASS_OF_PIT = 180, /* a = class of 3, 1 the most critical; b = TestKind that decided; c = how many tests of that kind had a class */
  FIRN_FINDING_KEY_SHEAR_LOCATED = 185, /* shovel or hand shear. a = ShearEase, c = TestKind */
  FIRN_FINDING_KEY_THRESHOLD_SUM = 190, /* bits: 0 grain-size difference, 1 grain size, 2 hardness difference, 3 hardness, 4 grain form, 5 depth */
  FIRN_FINDING_KEY_LEMONS = 191, /* bits: 0 depth, 1 thickness, 2 hardness difference, 3 grain form, 4 grain-size difference */
  FIRN_FINDING_KEY_WEAK_LAYER_BUILD = 192, /* a = thickness of the weaker layer in 10 um (0 = unknown), b = hardness right above it in sixths (0 = unknown), c = mask: 0 thin, 1 not deep */
  FIRN_FINDING_KEY_GRADIENT_NEAR_CRUST = 195, /* a crust lies within or beside two readings. a and b as for the gradient, c = stored position of the crust */
  FIRN_FINDING_KEY_DENSITY_ESTIMATED = 200, /* a = density, b = hardness in sixths, c = GrainForm; subject = the layer */
  FIRN_FINDING_KEY_WATER_EQUIVALENT = 201, /* down to depth. a = water equivalent in hundredths of a millimetre, b = mean density, c = percent of the height whose density was not measured */
  FIRN_FINDING_KEY_SLAB_LOAD = 202, /* above a boundary. a = load in tenths of kg/m2, b = mean density, c as above */
  FIRN_FINDING_KEY_SLAB_STRESS = 203, /* a = shear stress of the slab, b = of a skier on the surface, c = slope in degrees */
  FIRN_FINDING_KEY_STRENGTH_ESTIMATED = 204, /* a = shear strength, b = density it rests on (0 = measured strength), c = stored position of the layer */
  FIRN_FINDING_KEY_SKIER_INDEX_LOW = 205,
  FIRN_FINDING_KEY_SKIER_INDEX_BETWEEN = 206,
  FIRN_FINDING_KEY_SKIER_INDEX_HIGH = 207,
  FIRN_FINDING_KEY_SKIER_INDEX_IN_TRACK = 208, /* the layer lies above ski penetration: no Sk. c = ski penetration in 10 um */
  FIRN_FINDING_KEY_SKIER_INDEX_NO_PENETRATION = 209, /* ski penetration cannot be told: no Sk. c = 0 */
  FIRN_FINDING_KEY_SKIER_INDEX_NOT_PERSISTENT = 210, /* grains that are not persistent: the correction that Sk needs was not found. c = 0 */
  FIRN_FINDING_KEY_SKIER_INDEX_SLAB_ALONE = 211, /* S below 1 on the pit's own slope, where the slab stands: the strength is off, and says nothing. c = 0 */
  FIRN_FINDING_KEY_CRITICAL_CRACK_LENGTH = 215 /* a = length in 10 um (0 = the slab alone is too much), b = shear strength, c = slope in degrees */
} firn_finding_key;

/* Why a concern stands where it stands: the first rule of the order that placed it. Since 0.1. */
typedef enum firn_concern_rank {
  FIRN_CONCERN_RANK_PROPAGATED = 1, /* a fracture ran across a column or to the end of a saw cut */
  FIRN_CONCERN_RANK_SUDDEN = 2, /* a fracture started suddenly, or a whole rutschblock came away */
  FIRN_CONCERN_RANK_BROKE = 3, /* something broke, resistant or with its character not recorded */
  FIRN_CONCERN_RANK_STRUCTURE = 4, /* structure alone */
  FIRN_CONCERN_RANK_LITTLE = 5 /* a break that says little either way */
} firn_concern_rank;

/* What a concern is about. Since 0.1. */
typedef enum firn_concern_kind {
  FIRN_CONCERN_KIND_LAYER = 1,
  FIRN_CONCERN_KIND_BOUNDARY = 2,
  FIRN_CONCERN_KIND_DEPTH_ONLY = 3 /* a depth at which something broke while no layer or boundary is known there; without a depth when that cannot be told either */
} firn_concern_kind;

/* The results at one place read together: tests answer different questions (does it start, does it
   run), so they are no votes. README.md of the interpretation has the rules. Since 0.1. */
typedef enum firn_concern_reading {
  FIRN_CONCERN_READING_NONE = 0,
  FIRN_CONCERN_READING_STARTS_AND_RUNS = 1, /* broke under an ordinary load, and a crack ran */
  FIRN_CONCERN_READING_RUNS_HARD_TO_START = 2, /* a crack ran, and whatever broke here took hard loading */
  FIRN_CONCERN_READING_RUNS_START_NOT_TESTED = 3, /* a crack ran from a saw cut; whether it starts was not tested */
  FIRN_CONCERN_READING_RAN_AND_DID_NOT = 4, /* a crack ran in one test and did not in another */
  FIRN_CONCERN_READING_STARTS_RUN_NOT_TESTED = 5, /* broke, and no test shows whether a crack runs */
  FIRN_CONCERN_READING_STARTED_DID_NOT_RUN = 6, /* broke, and no crack ran where that was watched */
  FIRN_CONCERN_READING_NOT_TESTED = 7 /* nothing broke properly: structure, a mark, or a break that says little */
} firn_concern_reading;

/* Who could reach a concern from the surface. Since 0.1. */
typedef enum firn_concern_reach {
  FIRN_CONCERN_REACH_NONE = 0,
  FIRN_CONCERN_REACH_ONE_RIDER = 1, /* within reach of one rider */
  FIRN_CONCERN_REACH_LARGE_LOAD_OR_THIN_SLAB = 2 /* deeper: a large additional load, or one rider where the slab is thinner */
} firn_concern_reach;

/* Why a test did not load a layer. Since 0.1. */
typedef enum firn_not_loaded_reason {
  FIRN_NOT_LOADED_REASON_NONE = 0,
  FIRN_NOT_LOADED_REASON_ENDED_ABOVE = 1, /* another fracture higher up ended the test */
  FIRN_NOT_LOADED_REASON_BEYOND_USEFUL_DEPTH = 2, /* deeper than the test is useful */
  FIRN_NOT_LOADED_REASON_NOT_VALID = 3, /* the column was no valid test */
  FIRN_NOT_LOADED_REASON_NOT_DONE = 4, /* this kind of test was not done in this pit */
  FIRN_NOT_LOADED_REASON_OTHER_LAYER = 5, /* the test was made in another layer */
  FIRN_NOT_LOADED_REASON_UNKNOWN = 6 /* the record does not say whether the test went on below what broke */
} firn_not_loaded_reason;

/* The observation that would tell most for least. Since 0.1. */
typedef enum firn_next_step {
  FIRN_NEXT_STEP_NONE = 0,
  FIRN_NEXT_STEP_LOOK_FOR_SIGNS = 1,
  FIRN_NEXT_STEP_DEEP_TAP_TEST = 2,
  FIRN_NEXT_STEP_SAW_TEST = 3,
  FIRN_NEXT_STEP_EXTENDED_COLUMN = 4,
  FIRN_NEXT_STEP_REPEAT_TEST = 5,
  FIRN_NEXT_STEP_LOOK_AT_CRYSTALS = 6,
  FIRN_NEXT_STEP_PROBE_MORE = 7,
  FIRN_NEXT_STEP_READ_BULLETIN = 8
} firn_next_step;

/* Cautions. Numbers: a and b as said for the key, else 0. Since 0.1. */
typedef enum firn_caution_key {
  FIRN_CAUTION_KEY_NONE = 0,
  FIRN_CAUTION_KEY_SIGN_OF_INSTABILITY_SEEN = 1, /* a = SignKind (slides for a recorded slide), b = how many signs and slides */
  FIRN_CAUTION_KEY_SIGNS_NOT_LOOKED_FOR = 2, /* whumpf, cracking, slides: a = mask of those nobody answered for, bit n = SignKind n */
  FIRN_CAUTION_KEY_PROBING_UNEVEN = 3, /* a, b = smallest and largest probe depth in 10 um */
  FIRN_CAUTION_KEY_NO_BULLETIN = 4,
  FIRN_CAUTION_KEY_BULLETIN_NOT_LOOKED_AT = 5, /* b = 1 when the record does not say whether anybody looked */
  FIRN_CAUTION_KEY_LAYER_REACHED_BY_ONE_TEST_ONLY = 6, /* a = depth in 10 um, b = position of the concern; place = the test */
  FIRN_CAUTION_KEY_LAYER_NOT_LOADED = 7, /* a = depth in 10 um, b = position of the concern */
  FIRN_CAUTION_KEY_TEST_NOT_VALID = 8, /* a = how many; place = the first */
  FIRN_CAUTION_KEY_SHALLOW_SNOW = 9, /* a = HS in 10 um */
  FIRN_CAUTION_KEY_NO_TESTS = 10,
  FIRN_CAUTION_KEY_NO_LAYERS = 11,
  FIRN_CAUTION_KEY_RECORD_HAS_ERRORS = 12, /* a = how many */
  FIRN_CAUTION_KEY_RESTS_ON_UNRELIABLE = 13, /* place = the value */
  FIRN_CAUTION_KEY_PRACTICE_PIT = 14,
  FIRN_CAUTION_KEY_SITE_DIFFERS = 15, /* a = Comparison; place = the property */
  FIRN_CAUTION_KEY_NOT_BACKFILLED = 16,
  FIRN_CAUTION_KEY_NEWER_SCHEMA = 17,
  FIRN_CAUTION_KEY_SITE_UNKNOWN = 18,
  FIRN_CAUTION_KEY_STEP_NOT_DONE = 30, /* somebody wrote that a step that guards people was not done. a = StepKind; place = the step */
  FIRN_CAUTION_KEY_STEP_NOT_TICKED = 31, /* the list of steps was used, and nobody ticked this one, which guards people. a = StepKind */
  FIRN_CAUTION_KEY_BULLETIN_EXPIRED = 40, /* a = hours since it ran out, rounded down */
  FIRN_CAUTION_KEY_BULLETIN_NOT_YET_VALID = 41, /* a = hours until it begins, rounded down */
  FIRN_CAUTION_KEY_BULLETIN_OTHER_REGION = 42,
  FIRN_CAUTION_KEY_BULLETIN_REGION_UNKNOWN = 43, /* several regions, and nobody said which is the pit's */
  FIRN_CAUTION_KEY_BULLETIN_TIME_UNKNOWN = 44, /* whether it holds for the pit's time cannot be told */
  FIRN_CAUTION_KEY_BULLETIN_OUTSIDE_EVERY_PROBLEM = 45, /* a = how many problems it lists; the pit lies outside of each one's aspects or elevations */
  FIRN_CAUTION_KEY_BULLETIN_NONE_ISSUED = 46, /* the list of bulletins was empty: none is issued */
  FIRN_CAUTION_KEY_BULLETIN_NO_RATING_COVERS = 47,
  FIRN_CAUTION_KEY_BULLETIN_INCOMPLETE = 48, /* the file broke off or could not be read in this bulletin */
  FIRN_CAUTION_KEY_BULLETIN_REGION_ASSUMED = 49, /* the only region of the file was taken to be the pit's */
  FIRN_CAUTION_KEY_BULLETIN_PLACE_UNKNOWN = 50, /* a = bits of ScopePart that the pit's record does not tell: elevation 1, aspects 2, period (time) 4 */
  FIRN_CAUTION_KEY_BULLETIN_TREELINE_UNKNOWN = 51, /* a limit is the treeline, and nobody said how high that is */
  FIRN_CAUTION_KEY_BULLETIN_PROBLEM_NOT_SHOWN = 52, /* a = how many problems the pit did not show */
  FIRN_CAUTION_KEY_BULLETIN_UNLISTED = 53, /* a = how many kinds of problem the pit shows and the bulletin does not list for this place */
  FIRN_CAUTION_KEY_BULLETIN_CONTRADICTS_RECORD = 54, /* the record says that none was issued, and one was given */
  FIRN_CAUTION_KEY_BULLETIN_TYPED_BY_HAND = 55,
  FIRN_CAUTION_KEY_BULLETIN_NOT_UNDERSTOOD = 56, /* a = ratings and problems with a value that this version does not know */
  FIRN_CAUTION_KEY_ONE_PIT_IS_ONE_POINT = 101,
  FIRN_CAUTION_KEY_SNOW_VARIES = 102,
  FIRN_CAUTION_KEY_TESTS_MISS = 103,
  FIRN_CAUTION_KEY_PIT_IS_OF_ITS_TIME = 104,
  FIRN_CAUTION_KEY_DEFER_TO_BULLETIN_AND_PEOPLE = 105,
  FIRN_CAUTION_KEY_ABSENCE_IS_NO_PROOF = 106
} firn_caution_key;

/* Thresholds that the caller may change. Their limits and sources: firn_parameter_at, and METHODS.md.
   Since 0.1. */
typedef enum firn_parameter_key {
  FIRN_PARAMETER_KEY_NONE = 0,
  FIRN_PARAMETER_KEY_TOLERANCE_10UM = 1,
  FIRN_PARAMETER_KEY_ECT_LAST_TAP_OF_LOWER_CLASS = 2,
  FIRN_PARAMETER_KEY_ECT_TAPS_TO_CROSS = 3,
  FIRN_PARAMETER_KEY_ECT_IGNORED_TOP_10UM = 4,
  FIRN_PARAMETER_KEY_ECT_THREE_LAST_TAP = 5,
  FIRN_PARAMETER_KEY_ECT_FOUR_LAST_TAP_ONE = 6,
  FIRN_PARAMETER_KEY_ECT_FOUR_LAST_TAP_TWO = 7,
  FIRN_PARAMETER_KEY_ECT_FOUR_LAST_TAP_NOT_CROSSED = 8,
  FIRN_PARAMETER_KEY_ECT_EARLY_BELOW_TAP = 9,
  FIRN_PARAMETER_KEY_ECT_LONG_COLUMN_10UM = 10,
  FIRN_PARAMETER_KEY_PST_PERCENT = 11,
  FIRN_PARAMETER_KEY_PST_USUAL_LENGTH_10UM = 12,
  FIRN_PARAMETER_KEY_RB_LEAST_SLOPE_DEG = 13,
  FIRN_PARAMETER_KEY_RB_LEAST_SLOPE_OBSERVED_DEG = 14,
  FIRN_PARAMETER_KEY_RB_REACH_BELOW_SKIS_10UM = 15,
  FIRN_PARAMETER_KEY_FLAG_SIZE_10UM = 16,
  FIRN_PARAMETER_KEY_FLAG_HARDNESS_SIXTHS = 17,
  FIRN_PARAMETER_KEY_FLAG_SIZE_DIFFERENCE_10UM = 18,
  FIRN_PARAMETER_KEY_FLAG_HARDNESS_DIFFERENCE_SIXTHS = 19,
  FIRN_PARAMETER_KEY_FLAG_DEPTH_FROM_10UM = 20,
  FIRN_PARAMETER_KEY_FLAG_DEPTH_TO_10UM = 21,
  FIRN_PARAMETER_KEY_FLAG_WARNING_COUNT = 22,
  FIRN_PARAMETER_KEY_SUM_SIZE_DIFFERENCE_10UM = 23,
  FIRN_PARAMETER_KEY_SUM_SIZE_10UM = 24,
  FIRN_PARAMETER_KEY_SUM_HARDNESS_DIFFERENCE_TENTHS = 25,
  FIRN_PARAMETER_KEY_SUM_HARDNESS_TENTHS = 26,
  FIRN_PARAMETER_KEY_SUM_DEPTH_FROM_10UM = 27,
  FIRN_PARAMETER_KEY_SUM_DEPTH_TO_10UM = 28,
  FIRN_PARAMETER_KEY_SUM_WARNING_COUNT = 29,
  FIRN_PARAMETER_KEY_LEMON_DEPTH_10UM = 30,
  FIRN_PARAMETER_KEY_LEMON_THICKNESS_10UM = 31,
  FIRN_PARAMETER_KEY_LEMON_HARDNESS_DIFFERENCE_SIXTHS = 32,
  FIRN_PARAMETER_KEY_LEMON_SIZE_DIFFERENCE_10UM = 33,
  FIRN_PARAMETER_KEY_WEAK_LAYER_THIN_10UM = 34,
  FIRN_PARAMETER_KEY_WEAK_LAYER_DEPTH_10UM = 35,
  FIRN_PARAMETER_KEY_GRADIENT_CDEGC_PER_M = 36,
  FIRN_PARAMETER_KEY_LOAD_UNKNOWN_PERCENT = 37,
  FIRN_PARAMETER_KEY_INDEX_SLOPE_DEG = 38,
  FIRN_PARAMETER_KEY_INDEX_LOW_THOUSANDTHS = 39,
  FIRN_PARAMETER_KEY_INDEX_HIGH_THOUSANDTHS = 40,
  FIRN_PARAMETER_KEY_SLAB_POISSON_THOUSANDTHS = 41,
  FIRN_PARAMETER_KEY_RIDER_REACH_10UM = 42,
  FIRN_PARAMETER_KEY_ECT_USEFUL_DEPTH_10UM = 43,
  FIRN_PARAMETER_KEY_CT_USEFUL_DEPTH_10UM = 44,
  FIRN_PARAMETER_KEY_USUAL_COLUMN_DEPTH_10UM = 45,
  FIRN_PARAMETER_KEY_DEEP_TAP_FROM_10UM = 46,
  FIRN_PARAMETER_KEY_SHALLOW_SNOW_10UM = 47
} firn_parameter_key;

/* How the bulletins that were given stand to the pit. Since 0.1. */
typedef enum firn_bulletin_match {
  FIRN_BULLETIN_MATCH_NONE = 0,
  FIRN_BULLETIN_MATCH_MATCHES = 1, /* one of them holds for the region at the pit's time */
  FIRN_BULLETIN_MATCH_NONE_ISSUED = 2, /* the list was empty: none is issued */
  FIRN_BULLETIN_MATCH_EXPIRED = 3, /* the last one for the region ran out before the pit was dug */
  FIRN_BULLETIN_MATCH_NOT_YET_VALID = 4, /* the first one for the region begins after the pit was dug */
  FIRN_BULLETIN_MATCH_OTHER_REGION = 5, /* none of them is for the region */
  FIRN_BULLETIN_MATCH_REGION_UNKNOWN = 6, /* several regions, and nobody said which is the pit's */
  FIRN_BULLETIN_MATCH_TIME_UNKNOWN = 7 /* for the region, but whether it holds at the pit's time cannot be told */
} firn_bulletin_match;

/* Who said which region the pit lies in. Since 0.1. */
typedef enum firn_region_from {
  FIRN_REGION_FROM_NONE = 0,
  FIRN_REGION_FROM_CALLER = 1, /* whoever asked for the comparison */
  FIRN_REGION_FROM_RECORD = 2, /* the pit's record names it */
  FIRN_REGION_FROM_ONLY_ONE = 3 /* the file knows no other */
} firn_region_from;

/* Where the pit lies to a limit. What cannot be told is never `outside`. Since 0.1. */
typedef enum firn_within {
  FIRN_WITHIN_NONE = 0,
  FIRN_WITHIN_INSIDE = 1,
  FIRN_WITHIN_OUTSIDE = 2,
  FIRN_WITHIN_UNKNOWN = 3
} firn_within;

/* Kinds of avalanche problem that a pit can be asked about, those of EAWS. The types of the conceptual
   model are mapped to them one way. Since 0.1. */
typedef enum firn_problem_kind {
  FIRN_PROBLEM_KIND_NONE = 0,
  FIRN_PROBLEM_KIND_NEW_SNOW = 1,
  FIRN_PROBLEM_KIND_WIND_SLAB = 2,
  FIRN_PROBLEM_KIND_PERSISTENT_WEAK_LAYERS = 3,
  FIRN_PROBLEM_KIND_WET_SNOW = 4,
  FIRN_PROBLEM_KIND_GLIDING_SNOW = 5,
  FIRN_PROBLEM_KIND_CORNICES = 6,
  FIRN_PROBLEM_KIND_NO_DISTINCT_AVALANCHE_PROBLEM = 7,
  FIRN_PROBLEM_KIND_FAVOURABLE_SITUATION = 8
} firn_problem_kind;

/* What the pit says about a problem of the bulletin. Since 0.1. */
typedef enum firn_problem_answer {
  FIRN_PROBLEM_ANSWER_NONE = 0,
  FIRN_PROBLEM_ANSWER_SHOWN = 1, /* the pit lies inside, and shows it */
  FIRN_PROBLEM_ANSWER_SHOWN_PLACE_UNKNOWN = 2, /* the pit shows it, and whether it lies inside cannot be told */
  FIRN_PROBLEM_ANSWER_NOT_SHOWN = 3, /* looked at and not seen. One pit does not take the problem away */
  FIRN_PROBLEM_ANSWER_CANNOT_SPEAK = 4, /* what would show it was not recorded, or no pit can show it */
  FIRN_PROBLEM_ANSWER_OUTSIDE = 5 /* the pit lies outside: whatever it holds says nothing about those slopes */
} firn_problem_answer;

/* Why a pit cannot speak to a problem. Since 0.1. */
typedef enum firn_speak_limit {
  FIRN_SPEAK_LIMIT_NONE = 0,
  FIRN_SPEAK_LIMIT_NOT_SEEN_IN_A_PIT = 1, /* glide cracks and cornices are seen from afar, not in a pit */
  FIRN_SPEAK_LIMIT_NO_LAYERS = 2,
  FIRN_SPEAK_LIMIT_GRAINS_NOT_RECORDED = 3, /* a layer's grains were not recorded */
  FIRN_SPEAK_LIMIT_WETNESS_NOT_RECORDED = 4, /* neither wetness nor temperature was recorded */
  FIRN_SPEAK_LIMIT_NOT_TESTED = 5, /* no valid test reached the snow in question */
  FIRN_SPEAK_LIMIT_NOT_TO_THE_GROUND = 6, /* the profile ends above the ground */
  FIRN_SPEAK_LIMIT_NOTHING_TO_LOOK_FOR = 7, /* the bulletin names no problem to look for */
  FIRN_SPEAK_LIMIT_TYPE_UNKNOWN = 8, /* a type of problem that this version does not know */
  FIRN_SPEAK_LIMIT_HARDNESS_NOT_RECORDED = 9 /* the hardness of a layer near the surface was not recorded */
} firn_speak_limit;

/* What a piece of evidence is. Since 0.1. */
typedef enum firn_evidence_kind {
  FIRN_EVIDENCE_KIND_NONE = 0,
  FIRN_EVIDENCE_KIND_CONCERN = 1, /* position in Report.concerns */
  FIRN_EVIDENCE_KIND_FINDING = 2, /* position in Report.findings */
  FIRN_EVIDENCE_KIND_LAYER = 3 /* stored position of a layer */
} firn_evidence_kind;

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_CODES_H */

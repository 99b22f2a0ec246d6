# Generated code of the schemas, made at build time.
#
# FIRNBOOK_FLATC and FIRNBOOK_FLATBUFFERS_INCLUDE may be given to use another FlatBuffers release or to
# cross-compile; compiler and headers must be of one release.

find_program(FIRNBOOK_FLATC flatc REQUIRED DOC "FlatBuffers compiler")
find_path(FIRNBOOK_FLATBUFFERS_INCLUDE flatbuffers/flatbuffers.h REQUIRED
          DOC "Folder that holds flatbuffers/flatbuffers.h"
          NO_CMAKE_FIND_ROOT_PATH)

set(FIRNBOOK_SCHEMA_DIR "${PROJECT_SOURCE_DIR}/schemas")
set(FIRNBOOK_GENERATED_DIR "${PROJECT_BINARY_DIR}/generated")
set(FIRNBOOK_SCHEMAS vocabulary pit bulletin edit report comparison)

# The object API (the mutable form) is for pit alone: everything else reads in place.
set(firnbook_generated)
foreach(schema IN LISTS FIRNBOOK_SCHEMAS)
  set(extra)
  if(schema STREQUAL "pit")
    set(extra --gen-object-api)
  endif()
  set(output "${FIRNBOOK_GENERATED_DIR}/schemas/${schema}_generated.h")
  add_custom_command(
    OUTPUT "${output}"
    COMMAND "${FIRNBOOK_FLATC}" --cpp --scoped-enums --reflect-names ${extra}
            -I "${FIRNBOOK_SCHEMA_DIR}" -o "${FIRNBOOK_GENERATED_DIR}/schemas"
            "${FIRNBOOK_SCHEMA_DIR}/${schema}.fbs"
    DEPENDS "${FIRNBOOK_SCHEMA_DIR}/${schema}.fbs" "${FIRNBOOK_SCHEMA_DIR}/vocabulary.fbs"
            "${FIRNBOOK_SCHEMA_DIR}/pit.fbs"
    COMMENT "Generating C++ for ${schema}.fbs" VERBATIM)
  list(APPEND firnbook_generated "${output}")
endforeach()
add_custom_target(firnbook_generate DEPENDS ${firnbook_generated})

# Only flatbuffers/ itself is put on the include path: when cross-compiling, the folder around it holds
# the build machine's other headers.
set(firnbook_flatbuffers_shim "${PROJECT_BINARY_DIR}/generated/include")
file(MAKE_DIRECTORY "${firnbook_flatbuffers_shim}")
if(NOT EXISTS "${firnbook_flatbuffers_shim}/flatbuffers")
  file(CREATE_LINK "${FIRNBOOK_FLATBUFFERS_INCLUDE}/flatbuffers"
       "${firnbook_flatbuffers_shim}/flatbuffers" SYMBOLIC)
endif()

add_library(firnbook_schemas INTERFACE)
target_include_directories(firnbook_schemas SYSTEM INTERFACE
  "${firnbook_flatbuffers_shim}" "${FIRNBOOK_GENERATED_DIR}")
add_dependencies(firnbook_schemas firnbook_generate)

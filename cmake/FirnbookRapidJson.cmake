# Headers of RapidJSON for the one file that reads JSON. Nothing of it is linked or shows in a public header.
find_path(FIRNBOOK_RAPIDJSON_INCLUDE rapidjson/reader.h DOC "Folder that holds rapidjson/reader.h"
          NO_CMAKE_FIND_ROOT_PATH)
if(NOT FIRNBOOK_RAPIDJSON_INCLUDE)
  message(FATAL_ERROR "RapidJSON's headers were not found. Install them (Debian: rapidjson-dev), or give their "
                      "folder as FIRNBOOK_RAPIDJSON_INCLUDE")
endif()

# As for FlatBuffers: only this folder, never what lies around it.
if(NOT EXISTS "${firnbook_flatbuffers_shim}/rapidjson")
  file(CREATE_LINK "${FIRNBOOK_RAPIDJSON_INCLUDE}/rapidjson" "${firnbook_flatbuffers_shim}/rapidjson" SYMBOLIC)
endif()

# Headers of spdlog and fmt for the one file that uses them. No imported targets: those would link compiled
# libraries of the build machine, also when cross-compiling.
if(NOT FIRNBOOK_WITH_SPDLOG)
  return()
endif()

find_path(FIRNBOOK_SPDLOG_INCLUDE spdlog/logger.h DOC "Folder that holds spdlog/logger.h"
          NO_CMAKE_FIND_ROOT_PATH)
if(NOT FIRNBOOK_SPDLOG_INCLUDE)
  message(FATAL_ERROR "spdlog's headers were not found. Install them (Debian: libspdlog-dev), give their folder "
                      "as FIRNBOOK_SPDLOG_INCLUDE, or build without: -DFIRNBOOK_WITH_SPDLOG=OFF")
endif()
# Debian's spdlog uses fmt as a package of its own, others carry it inside.
find_path(FIRNBOOK_FMT_INCLUDE fmt/format.h DOC "Folder that holds fmt/format.h" NO_CMAKE_FIND_ROOT_PATH)

# As for FlatBuffers: only these two folders, never what lies around them.
foreach(part spdlog fmt)
  string(TOUPPER "FIRNBOOK_${part}_INCLUDE" folder)
  if(${folder} AND NOT EXISTS "${firnbook_flatbuffers_shim}/${part}")
    file(CREATE_LINK "${${folder}}/${part}" "${firnbook_flatbuffers_shim}/${part}" SYMBOLIC)
  endif()
endforeach()

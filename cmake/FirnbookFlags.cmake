# Flags of our own code. `firnbook_flags` is about meaning (same bytes everywhere) and size;
# `firnbook_warnings` is for developers. Neither is installed.

option(FIRNBOOK_SANITIZE "Build with the address and undefined-behaviour sanitizers" OFF)
option(FIRNBOOK_COVERAGE "Build for gcov" OFF)
option(FIRNBOOK_FUZZ "Build the fuzz targets as fuzzers (clang)" OFF)

add_library(firnbook_flags INTERFACE)
# A fused multiply-add rounds once instead of twice, so arm64 would print other last digits than x86-64.
target_compile_options(firnbook_flags INTERFACE -ffp-contract=off)
# One section a function, so that the linker can leave out what nobody calls.
target_compile_options(firnbook_flags INTERFACE -ffunction-sections -fdata-sections)

# How the core is optimised in Release: what runs for every pit for speed, what runs once a pit at most for
# size. FIRNBOOK_SMALL, for the library inside a phone's app, asks for size everywhere, lets the linker see
# all of the code at once and keeps the addresses to be filled in at loading short; it takes clang and lld.
option(FIRNBOOK_SMALL "The smallest library there can be (clang and lld)" OFF)
set(FIRNBOOK_OPTIMISE_HOTTEST $<$<CONFIG:Release>:-O3>)
set(FIRNBOOK_OPTIMISE_HOT $<$<CONFIG:Release>:-O2>)
set(FIRNBOOK_OPTIMISE_COLD $<$<CONFIG:Release>:-Os>)
set(FIRNBOOK_LINK_SMALL)
if(FIRNBOOK_SMALL)
  if(NOT CMAKE_CXX_COMPILER_ID MATCHES "Clang")
    message(FATAL_ERROR "FIRNBOOK_SMALL takes clang; this is ${CMAKE_CXX_COMPILER}")
  endif()
  # The first that can tell glibc of short addresses is lld 15.
  find_program(FIRNBOOK_LLD REQUIRED
               NAMES ld.lld-20 ld.lld-19 ld.lld-18 ld.lld-17 ld.lld-16 ld.lld-15 ld.lld)
  # For programs that link our archives too: what is in them is no machine code yet.
  add_link_options("--ld-path=${FIRNBOOK_LLD}")
  # Whoever may throw keeps its unwind table, which is what running out of memory needs; the rest needs none.
  set(FIRNBOOK_OPTIMISE_HOT -Oz -flto -fno-asynchronous-unwind-tables)
  set(FIRNBOOK_OPTIMISE_HOTTEST ${FIRNBOOK_OPTIMISE_HOT})
  set(FIRNBOOK_OPTIMISE_COLD ${FIRNBOOK_OPTIMISE_HOT})
  target_compile_definitions(firnbook_flags INTERFACE FIRNBOOK_SMALL)
  set(FIRNBOOK_LINK_SMALL -flto "LINKER:-O2" "LINKER:--icf=all" "LINKER:-z,pack-relative-relocs")
endif()

add_library(firnbook_warnings INTERFACE)
target_compile_options(firnbook_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wdouble-promotion -Wformat=2
  -Wundef -Wcast-align -Wimplicit-fallthrough
  $<$<COMPILE_LANGUAGE:CXX>:-Wnon-virtual-dtor -Woverloaded-virtual -Wold-style-cast>
  $<$<BOOL:${FIRNBOOK_WERROR}>:-Werror>)

if(PROJECT_IS_TOP_LEVEL)
  if(FIRNBOOK_SANITIZE)
    add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
    add_link_options(-fsanitize=address,undefined)
  endif()
  if(FIRNBOOK_FUZZ)
    if(NOT CMAKE_CXX_COMPILER_ID MATCHES "Clang")
      message(FATAL_ERROR "FIRNBOOK_FUZZ takes clang; this is ${CMAKE_CXX_COMPILER}")
    endif()
    add_compile_options(-fsanitize=fuzzer-no-link)
  endif()
  if(FIRNBOOK_COVERAGE)
    add_compile_options(--coverage)
    add_link_options(--coverage)
  endif()
  find_program(FIRNBOOK_CCACHE ccache)
  foreach(language C CXX)
    if(FIRNBOOK_CCACHE AND NOT CMAKE_${language}_COMPILER_LAUNCHER)
      set(CMAKE_${language}_COMPILER_LAUNCHER "${FIRNBOOK_CCACHE}")
    endif()
  endforeach()
endif()

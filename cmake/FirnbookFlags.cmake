# Flags of our own code. `firnbook_flags` is about meaning (same bytes everywhere) and size;
# `firnbook_warnings` is for developers. Neither is installed.

option(FIRNBOOK_SANITIZE "Build with the address and undefined-behaviour sanitizers" OFF)
option(FIRNBOOK_COVERAGE "Build for gcov" OFF)

add_library(firnbook_flags INTERFACE)
# A fused multiply-add rounds once instead of twice, so arm64 would print other last digits than x86-64.
target_compile_options(firnbook_flags INTERFACE -ffp-contract=off)
# One section a function, so that the linker can leave out what nobody calls.
target_compile_options(firnbook_flags INTERFACE -ffunction-sections -fdata-sections)

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

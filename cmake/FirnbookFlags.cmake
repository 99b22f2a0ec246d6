# Flags of our own code. `firnbook_flags` is about meaning (same bytes everywhere); `firnbook_warnings`
# is for developers. Neither is installed.

add_library(firnbook_flags INTERFACE)
# A fused multiply-add rounds once instead of twice, so arm64 would print other last digits than x86-64.
target_compile_options(firnbook_flags INTERFACE -ffp-contract=off)

add_library(firnbook_warnings INTERFACE)
target_compile_options(firnbook_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wdouble-promotion -Wformat=2
  -Wundef -Wcast-align -Wimplicit-fallthrough
  $<$<COMPILE_LANGUAGE:CXX>:-Wnon-virtual-dtor -Woverloaded-virtual -Wold-style-cast>
  $<$<BOOL:${FIRNBOOK_WERROR}>:-Werror>)

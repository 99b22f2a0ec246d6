#!/bin/sh
# Every public header compiles alone, as C11, C17 and C++17, with every compiler that is named.
#
#   sh tests/checks/headers.sh INCLUDE VERSION_INCLUDE COMPILER...
#
# INCLUDE: folder of firnbook/; VERSION_INCLUDE: the folder where firnbook/version.h was made.
# COMPILER: gcc or clang; the C++ compiler is found by its name (g++, clang++).
set -eu

include=$1
generated=$2
shift 2
count=0
for header in "$include"/firnbook/*.h "$generated"/firnbook/version.h; do
  name=firnbook/$(basename "$header")
  for compiler in "$@"; do
    case $compiler in *gcc) plus=${compiler%gcc}g++ ;; *) plus=$compiler++ ;; esac
    for standard in c11 c17 c++17; do
      case $standard in c++*) run=$plus language=c++ ;; *) run=$compiler language=c ;; esac
      # Twice, since a header without a guard compiles once.
      printf '#include <%s>\n#include <%s>\n' "$name" "$name" |
        "$run" -x "$language" -std="$standard" -pedantic -Wall -Wextra -Werror -fsyntax-only \
          -I "$include" -I "$generated" - || { echo "headers: $name as $standard with $run" >&2; exit 1; }
      count=$((count + 1))
    done
  done
done
[ "$count" -gt 0 ] || { echo "headers: none found in $include" >&2; exit 1; }
echo "headers: $count compilations"

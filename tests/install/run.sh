#!/bin/sh
# Installs the library and builds a C program of somebody else's against it in three ways.
#
#   sh tests/install/run.sh BUILD      BUILD: a build folder in which the target firnbook can be built
#
# Works in BUILD/install-test, which it empties first.
set -eu

root=$(cd "$(dirname "$0")/../.." && pwd)
build=$(cd "$1" && pwd)
work=$build/install-test
rm -rf "$work"
mkdir -p "$work"

cmake --build "$build" --target firnbook --parallel "$(nproc)"
cmake --install "$build" --prefix "$work/first" >"$work/install.log"
# Whatever knows where it was installed breaks here.
mv "$work/first" "$work/prefix"
# With the headers named one by one: a header that is not installed is missed here.
for header in "$root"/core/include/firnbook/*.h; do
  [ -f "$work/prefix/include/firnbook/$(basename "$header")" ] || { echo "not installed: $header" >&2; exit 1; }
done

echo "find_package:"
cmake -S "$root/tests/install/found" -B "$work/found" -G Ninja -DCMAKE_PREFIX_PATH="$work/prefix" >"$work/found.log"
cmake --build "$work/found" >>"$work/found.log" || { cat "$work/found.log" >&2; exit 1; }
"$work/found/consumer"

echo "pkg-config:"
pc=$(dirname "$(find "$work/prefix" -name firnbook.pc)")
flags=$(PKG_CONFIG_PATH=$pc pkg-config --cflags --libs firnbook)
libs=$(PKG_CONFIG_PATH=$pc pkg-config --variable=libdir firnbook)
# shellcheck disable=SC2086 # flags are several words
${CC:-cc} -std=c11 -Wall -Wextra -Wpedantic -Werror "$root/tests/install/consumer.c" -o "$work/consumer" $flags
LD_LIBRARY_PATH=$libs "$work/consumer"

echo "as a part of another project:"
cmake -S "$root/tests/install/fetched" -B "$work/fetched" -G Ninja -DFIRNBOOK_CHECKOUT="$root" >"$work/fetched.log"
cmake --build "$work/fetched" --target consumer --parallel "$(nproc)" >>"$work/fetched.log" || { cat "$work/fetched.log" >&2; exit 1; }
"$work/fetched/consumer"

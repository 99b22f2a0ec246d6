#!/bin/sh
# From field notes to a record, an interpretation and a picture.
#
#   sh examples/first-pit/run.sh [NOTES]
#
# NOTES is a file of field notes (default: larch-bowl-entry.txt beside this script). Installs the packages
# that are missing (Debian, Ubuntu), builds in build/release, prints the note, and writes pit.firn,
# report.firn, profile.svg and note.txt into build/first-pit/.
set -eu

here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
notes=${1:-$here/larch-bowl-entry.txt}
build=$root/build/release
out=$root/build/first-pit

if [ ! -f "$notes" ] || [ ! -r "$notes" ]; then
  echo "run.sh: there are no field notes to read at $notes" >&2
  exit 2
fi

quietly() { # log command...
  log=$1
  shift
  "$@" >"$log" 2>&1 || { cat "$log" >&2; echo "run.sh: this failed: $*" >&2; exit 1; }
}

sh "$root/cmake/setup.sh" build
mkdir -p "$build" "$out"
echo "run.sh: building in $build (the first time takes a minute or two)"
quietly "$build/configure.log" cmake -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release \
  -DFIRNBOOK_EXAMPLES=ON -DFIRNBOOK_TESTS=OFF
quietly "$build/build.log" cmake --build "$build" --target first_pit --parallel "$(nproc)"
echo

"$build/examples/first-pit/first_pit" "$notes" "$out"

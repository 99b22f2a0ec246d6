#!/bin/sh
# The commands that README.md and the recorder's page show work as they stand, on a clean copy of what is committed.
#
#   sh tests/checks/readme.sh COPY      COPY: the folder for the clean copy, emptied first
#
# A command equal to FIRNBOOK_SKIP is left out: CI has run it already.
# Commands are the lines of their blocks marked ```sh.
set -eu

root=$(cd "$(dirname "$0")/../.." && pwd)
copy=$1
rm -rf "$copy"
git clone -q "$root" "$copy"
cd "$copy"
commands=$(awk '/^```sh$/ {inside = 1; next} /^```/ {inside = 0} inside' README.md examples/recorder/README.md)
[ -n "$commands" ] || { echo "readme: README.md shows no commands" >&2; exit 1; }
echo "$commands" | while read -r command; do
  [ -n "$command" ] && [ "$command" != "${FIRNBOOK_SKIP:-}" ] || continue
  echo "readme: $command"
  sh -c "$command" </dev/null || { echo "readme: this failed: $command" >&2; exit 1; }
done

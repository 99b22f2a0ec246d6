#!/bin/sh
# The library shows what core/firnbook.exports lists, and nothing else.
#
#   sh tests/checks/exports.sh LIBRARY [NM]
set -eu

root=$(cd "$(dirname "$0")/../.." && pwd)
library=$1
nm=${2:-nm}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# The name of the symbol version itself (A) is no symbol that anything links to.
"$nm" -D --defined-only "$library" | awk '$(NF-1) != "A" {sub(/@.*/, "", $NF); print $NF}' | LC_ALL=C sort -u >"$work/shown"
grep -v -e '^#' -e '^$' "$root/core/firnbook.exports" | LC_ALL=C sort -u >"$work/listed"

status=0
if grep -v '^firn_' "$work/shown"; then
  echo "exports: the symbols above are shown and are not ours to show" >&2
  status=1
fi
if ! diff "$work/listed" "$work/shown" >"$work/difference"; then
  cat "$work/difference" >&2
  echo "exports: < is listed in core/firnbook.exports only, > is shown by $library only" >&2
  status=1
fi
[ "$status" != 0 ] || echo "exports: $(wc -l <"$work/shown") symbols, all firn_, all listed"
exit "$status"

#!/bin/sh
# The stripped library is at most LIMIT bytes. The C++ runtime stands beside it, not in it.
#
#   sh tests/checks/size.sh LIBRARY LIMIT [TOOL PREFIX]
set -eu

library=$1
limit=$2
tool=${3:-}
stripped=$(mktemp)
trap 'rm -f "$stripped"' EXIT

"${tool}strip" --strip-unneeded -o "$stripped" "$library"
bytes=$(wc -c <"$stripped")
if "${tool}readelf" -dW "$library" | grep -E 'NEEDED.*(spdlog|fmt|flatbuffers)'; then
  echo "size: the libraries above are needed beside it and do not count: link them in" >&2
  exit 1
fi
echo "| part | bytes |"
echo "|---|---:|"
"${tool}size" -A -d "$stripped" | awk '$1 ~ /^\./ && $2 > 1000 {printf "| %s | %d |\n", $1, $2}'
echo "| file, stripped | $bytes |"
echo "| limit | $limit |"
[ "$bytes" -le "$limit" ] || { echo "size: $((bytes - limit)) bytes too many" >&2; exit 1; }

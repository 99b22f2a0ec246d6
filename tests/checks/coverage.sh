#!/bin/sh
# Branch coverage of the rules by their own tests, folder by folder; at least PERCENT of each is wanted.
#
#   sh tests/checks/coverage.sh [PERCENT]
#
# Branches that only an exception takes are not counted (--exclude-throw-branches): the compiler makes one after
# every call that might run out of memory, and the core throws none of its own.
set -eu

least=${1:-95}
root=$(cd "$(dirname "$0")/../.." && pwd)
build=$root/build/coverage
programs="unit/checking_test unit/interpretation_said_test unit/interpretation_test published/published_checking_test
published/interpretation_published_test readings/readings_test"

cd "$root"
cmake --preset coverage >/dev/null
# shellcheck disable=SC2046
cmake --build "$build" --parallel "${FIRN_JOBS:-2}" --target $(for program in $programs; do basename "$program"; done)
find "$build" -name '*.gcda' -delete
for program in $programs; do "$build/tests/$program" --gtest_brief=1 --gtest_filter='-Hostile.TenThousand*:Size.Work*'; done
status=0
for folder in checking interpretation; do
  echo "core/src/$folder"
  gcovr --root "$root" --object-directory "$build" --filter "core/src/$folder/" --exclude-throw-branches \
    --branches --print-summary --fail-under-branch "$least" --output "$build/$folder.txt" "$build" || status=1
done
echo "file by file: $build/checking.txt and interpretation.txt"
exit "$status"

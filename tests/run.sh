#!/bin/sh
# Builds and runs the test suite.
#
#   sh tests/run.sh [CTEST OPTIONS]
#
# Installs the packages that are missing (Debian, Ubuntu) and builds in build/tests. Options go to ctest, such as
# "-R notes" for the tests with that name.
set -eu

root=$(cd "$(dirname "$0")/.." && pwd)
build=$root/build/tests

sh "$root/cmake/setup.sh" build tests
cmake -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DFIRNBOOK_TESTS=ON -DFIRNBOOK_EXAMPLES=ON
cmake --build "$build" --parallel "$(nproc)"
ctest --test-dir "$build" --parallel "$(nproc)" --output-on-failure "$@"

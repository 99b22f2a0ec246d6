#!/bin/sh
# Installs the distribution's packages that a part of this project needs, when they are missing.
#
#   sh cmake/setup.sh build tests
#
# Parts: build (the library and its example), tests, bench, install, checks (clang and its tools), cross
# (arm64 and 32-bit arm with their emulator), pictures (two SVG renderers).
# Only on Debian and Ubuntu, as root or through sudo; elsewhere it says what to install and exits 2.
# Two small libraries are built into ours, for every processor alike, so that their sources are wanted: they
# are unpacked into /usr/src/firnbook.
set -eu

# One line a package: part, how to see that it is there (a command, a file, or a file among the sources),
# Debian's name for it.
# gcc stands beside g++ because the C consumer and the examples are C.
needs='
build    cmd:g++                                       g++
build    cmd:gcc                                       gcc
build    cmd:cmake                                     cmake
build    cmd:ninja                                     ninja-build
build    cmd:flatc                                     flatbuffers-compiler
build    file:/usr/include/flatbuffers/flatbuffers.h   libflatbuffers-dev
build    file:/usr/include/spdlog/spdlog.h             libspdlog-dev
build    file:/usr/include/fmt/format.h                libfmt-dev
build    file:/usr/include/rapidjson/reader.h          rapidjson-dev
build    src:pugixml/src/pugixml.cpp                   pugixml
build    src:qr-code-generator/c/qrcodegen.c           qr-code-generator
tests    file:/usr/include/gtest/gtest.h               libgtest-dev
tests    file:/usr/include/pugixml.hpp                 libpugixml-dev
tests    cmd:python3                                   python3
tests    file:/usr/lib/python3/dist-packages/flatbuffers/__init__.py python3-flatbuffers
tests    cmd:xmllint                                   libxml2-utils
tests    file:/usr/lib/python3/dist-packages/jsonschema/__init__.py python3-jsonschema
tests    cmd:zbarimg                                   zbar-tools
tests    cmd:rsvg-convert                              librsvg2-bin
bench    file:/usr/include/benchmark/benchmark.h       libbenchmark-dev
bench    file:/usr/include/simdjson.h                  libsimdjson-dev
install  cmd:pkg-config                                pkg-config
install  cmd:git                                       git
checks   cmd:clang++                                   clang
checks   cmd:clang-format                              clang-format
checks   cmd:clang-tidy                                clang-tidy
checks   cmd:ccache                                    ccache
checks   cmd:python3                                   python3
checks   cmd:git                                       git
cross    cmd:aarch64-linux-gnu-g++                     g++-aarch64-linux-gnu
cross    cmd:clang++                                   clang
cross    cmd:ld.lld-16                                 lld-16
cross    cmd:llvm-ar                                   llvm
cross    cmd:arm-linux-gnueabihf-g++                   g++-arm-linux-gnueabihf
cross    cmd:qemu-aarch64-static                       qemu-user-static
cross    file:/usr/src/googletest/CMakeLists.txt       googletest
pictures cmd:rsvg-convert                              librsvg2-bin
pictures cmd:chromium                                  chromium
pictures file:/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf fonts-dejavu-core
pictures cmd:python3                                   python3
'

sources=/usr/src/firnbook

is_there() {
  case $1 in
    src:*) [ -e "$sources/${1#src:}" ] ;;
    cmd:*) command -v "${1#cmd:}" >/dev/null 2>&1 ;;
    file:*) [ -e "${1#file:}" ] ;;
  esac
}

missing= missing_sources=
for part in "$@"; do
  known=
  while read -r of test package; do
    [ "$of" = "$part" ] || continue
    known=1
    is_there "$test" && continue
    case $test in src:*) missing_sources="${missing_sources:+$missing_sources }$package"; continue ;; esac
    case " $missing " in *" $package "*) ;; *) missing="${missing:+$missing }$package" ;; esac
  done <<EOF
$needs
EOF
  [ -n "$known" ] || { echo "setup: there is no part called $part" >&2; exit 2; }
done

if [ -n "$missing$missing_sources" ]; then
  if ! command -v apt-get >/dev/null 2>&1; then
    echo "setup: this is neither Debian nor Ubuntu. Please install what these Debian packages hold," >&2
    echo "setup: then run the same command again: $missing" >&2
    [ -z "$missing_sources" ] ||
      echo "setup: and unpack the sources of these into $sources/NAME: $missing_sources" >&2
    exit 2
  fi
  as_root=
  if [ "$(id -u)" != 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
      echo "setup: please run this as root, then the same command again:" >&2
      echo "setup:   apt-get install $missing" >&2
      [ -z "$missing_sources" ] ||
        echo "setup:   and unpack the sources of these into $sources/NAME: $missing_sources" >&2
      exit 2
    fi
    as_root=sudo
  fi
fi

if [ -n "$missing" ]; then
  echo "setup: installing the packages that are missing: $missing"
  log=$(mktemp)
  if ! { $as_root apt-get update -qq && $as_root env DEBIAN_FRONTEND=noninteractive \
           apt-get install -y -qq --no-install-recommends $missing; } >"$log" 2>&1 </dev/null; then
    cat "$log" >&2
    rm -f "$log"
    echo "setup: apt-get failed (see above). Packages wanted: $missing" >&2
    exit 2
  fi
  rm -f "$log"
fi

# The machine's own list of archives says from where and how they are signed; only the kind is changed, in a
# copy, so that nothing on the machine is set up differently afterwards.
fetch_sources() { # scratch folder, packages...
  work=$1
  shift
  mkdir -p "$work/parts" "$work/lists/partial" "$work/got"
  for list in /etc/apt/sources.list.d/*.sources; do
    [ -e "$list" ] && sed 's/^Types:.*/Types: deb-src/' "$list" >"$work/parts/${list##*/}"
  done
  for list in /etc/apt/sources.list /etc/apt/sources.list.d/*.list; do
    [ -e "$list" ] && sed -n 's/^deb\(-src\)\{0,1\} /deb-src /p' "$list" >"$work/parts/$(basename "$list" .list).list"
  done
  set -- -o Dir::Etc::sourcelist=/dev/null -o "Dir::Etc::sourceparts=$work/parts" -o "Dir::State::lists=$work/lists" \
    -o APT::Sandbox::User=root -- "$@"
  options=
  while [ "$1" != -- ]; do options="$options $1"; shift; done
  shift
  # An archive without sources (a vendor's) is no reason to stop: what is wanted comes from another.
  apt-get $options update -qq || :
  $as_root mkdir -p "$sources"
  for package in "$@"; do
    mkdir "$work/got/$package"
    # The authors' own archive, unchanged; the distribution's patches are about its packaging.
    (cd "$work/got/$package" && apt-get $options source -qq --download-only --tar-only "$package") &&
      $as_root rm -rf "$sources/$package" && $as_root mkdir "$sources/$package" &&
      $as_root tar -xf "$work/got/$package/"*.orig.tar.* --strip-components=1 -C "$sources/$package" || return 1
  done
}
if [ -n "$missing_sources" ]; then
  echo "setup: unpacking sources into $sources: $missing_sources"
  work=$(mktemp -d)
  if ! fetch_sources "$work" $missing_sources >"$work/log" 2>&1 </dev/null; then
    cat "$work/log" >&2
    rm -rf "$work"
    echo "setup: the sources did not come (see above). Wanted in $sources/NAME: $missing_sources" >&2
    exit 2
  fi
  rm -rf "$work"
fi

# The project needs CMake 3.25 (Debian 12, Ubuntu 24.04): say so before CMake does in its own words.
case " $* " in
  *" build "*)
    version=$(cmake --version | sed -n 's/^cmake version \([0-9]*\)\.\([0-9]*\).*/\1 \2/p')
    major=${version% *} minor=${version#* }
    if [ "$major" -lt 3 ] || { [ "$major" -eq 3 ] && [ "$minor" -lt 25 ]; }; then
      echo "setup: CMake 3.25 or newer is needed, this is $major.$minor." >&2
      echo "setup: Debian 12, Ubuntu 24.04 and newer have one; or take it from cmake.org." >&2
      exit 2
    fi ;;
esac

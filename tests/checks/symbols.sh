#!/bin/sh
# What the library asks of the system, and what it keeps for itself: no floating-point library beyond sqrt,
# no locale, clock, stdio, files, environment, thread-local or process control, no global mutable state.
#
#   sh tests/checks/symbols.sh LIBRARY ALLOWED [OBJECTS...]
#
# LIBRARY: the shared library. ALLOWED: a file of symbols that may stand there all the same, each with its
# reason (allowed-symbols.txt), or /dev/null. OBJECTS: static libraries of our own modules, held to the
# rules without any exception, and to having no variable.
# NM and READELF name the binutils of another processor; LIBM the libm whose functions are refused.
set -eu

library=$1
allowed=$2
shift 2
nm=${NM:-nm}
readelf=${READELF:-readelf}
objdump=${OBJDUMP:-objdump}
libm=${LIBM:-$(ldconfig -p 2>/dev/null | sed -n 's/.*libm\.so\.6 .*x86-64.*=> //p' | head -1)}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
status=0

# glibc's libm differs between processors, so everything it exports is refused but the square root, which
# IEEE 754 pins down to the last bit.
"$nm" -D --defined-only "$libm" | awk '$2 ~ /[TtWiVu]/ {sub(/@.*/, "", $NF); print $NF}' | LC_ALL=C sort -u |
  grep -v -x -e sqrt -e sqrtf >"$work/libm"
[ "$(wc -l <"$work/libm")" -gt 100 ] || { echo "symbols: $libm shows no functions" >&2; exit 2; }

# Patterns over plain and mangled names.
cat >"$work/patterns" <<'EOF'
locale
^(is|to)w?(alnum|alpha|cntrl|digit|graph|lower|print|punct|space|upper|xdigit)(_l)?$
^__ctype_
ctype
^(strto|wcsto|ato)[a-z]+(_l)?$
^str(coll|xfrm|ftime|ptime)(_l)?$
^(mb|wc)[a-z]*to[a-z]*$
facet
num_put|num_get
^(clock|time|times|ftime|gmtime|localtime|mktime|timegm|tzset|nanosleep|usleep|sleep|gettimeofday|settimeofday|clock_[a-z]+|timespec_get|gmtime_r|localtime_r)$
chrono
^_?_?(f|s|sn|vf|vs|vsn|vas|as|d|vd|w|fw|sw|v)?w?(printf|scanf)(_chk)?$
^__isoc[0-9]+_[a-z]*scanf$
^f?put(s|c|char|wc|ws)$
^f(open|close|read|write|flush|seek|seeko|tell|getc|gets|dopen|ileno|error)(64)?$
^(std(in|out|err)|perror|remove|rename|tmpfile|open|openat|creat|close|read|write|pread|pwrite|lseek|stat|fstat|lstat|access|unlink|mkdir|opendir|readdir|getcwd|mmap|munmap|dlopen|dlsym|isatty|syslog)(64)?$
ios_base|[io]stream|ostream|filebuf|stringbuf|filesystem
^(getenv|secure_getenv|setenv|putenv|abort|exit|_exit|quick_exit|atexit|system|fork|raise|kill|signal|sigaction|__assert_fail|__assert)$
^(rand|srand|random|drand48|getrandom|arc4random|getpid|gettid|getuid|sysconf|uname|syscall|socket|connect|send|recv)(_r)?$
random_device
^(__tls_get_addr|__cxa_thread_atexit|__cxa_thread_atexit_impl|__emutls_get_address|pthread_[a-z_]+|thrd_[a-z]+|mtx_[a-z]+)$
_ZNSt6thread|condition_variable|_ZTH
regex
EOF

undefined() {
  "$nm" "$@" 2>/dev/null | awk 'NF > 1 && $(NF-1) ~ /^[Uwv]$/ {sub(/@.*/, "", $NF); print $NF}' | LC_ALL=C sort -u
}
refused() { # names on standard input
  cat >"$work/names"
  { grep -E -f "$work/patterns" "$work/names" || :; grep -F -x -f "$work/libm" "$work/names" || :; } | LC_ALL=C sort -u
}
report() { # file, what
  [ -s "$1" ] || return 0
  c++filt <"$1" | sed "s/^/  /" >&2
  echo "symbols: $2" >&2
  status=1
}

sed -e 's/[[:space:]]*#.*//' -e '/^$/d' "$allowed" | LC_ALL=C sort -u >"$work/allowed"
undefined -D "$library" | refused >"$work/found"
LC_ALL=C comm -23 "$work/found" "$work/allowed" >"$work/new"
LC_ALL=C comm -13 "$work/found" "$work/allowed" >"$work/stale"
report "$work/new" "$library asks for the symbols above"
report "$work/stale" "the symbols above are allowed and no longer there: take them out of $allowed"

"$readelf" -sW "$library" | awk '$4 == "TLS" {print $NF}' >"$work/tls"
report "$work/tls" "$library has the thread-local variables above"

for object in "$@"; do
  undefined "$object" | refused >"$work/found"
  report "$work/found" "our own $object asks for the symbols above"
  # Constants whose pointers the loader fills in (.data.rel.ro) are read-only afterwards; DW.ref sections are
  # pointers of the unwinder, of the same kind. FlatBuffers keeps one byte a vector type to point at when
  # the vector is empty (flatbuffers::data); nothing is ever written there. What GCC puts into .data without a
  # name are the elements of constant lists: no code can name them, so none can change them.
  "$objdump" -t "$object" |
    awk '/ O / && match($0, /\.(data|bss|tdata|tbss)[^ \t]*/) {
      section = substr($0, RSTART, RLENGTH)
      if (section !~ /^\.data\.rel\.(ro|local\.DW\.ref)/ && $NF !~ /_ZZN11flatbuffers4data/) print $NF, section
    }' >"$work/variables"
  report "$work/variables" "our own $object has the variables above (global mutable state)"
done

[ "$status" != 0 ] || echo "symbols: $library asks for $(wc -l <"$work/allowed") of the refused, all of them allowed; $# objects of ours for none"
exit "$status"

#!/bin/sh
# Two renderers draw the pictures: right size, not blank, in full and at the width of a phone.
#
#   sh tests/checks/pictures.sh OUT SVG...
set -eu

here=$(cd "$(dirname "$0")" && pwd)
out=$1
shift
mkdir -p "$out"
out=$(cd "$out" && pwd)

# Chromium as root in a container has no sandbox of its own to use; the picture is our own file.
browser() { # PNG width height URL
  chromium --headless --no-sandbox --disable-gpu --disable-dev-shm-usage --hide-scrollbars \
    --user-data-dir="$out/chromium" --force-device-scale-factor=1 \
    --screenshot="$1" --window-size="$2,$3" "$4" >"$out/chromium.log" 2>&1 ||
    { cat "$out/chromium.log" >&2; exit 1; }
}

for svg in "$@"; do
  name=$(basename "$svg" .svg)
  width=$(sed -n 's/.*<svg[^>]*viewBox="0 0 \([0-9]*\) [0-9.]*".*/\1/p' "$svg" | head -1)
  height=$(sed -n 's/.*<svg[^>]*viewBox="0 0 [0-9]* \([0-9]*\)[0-9.]*".*/\1/p' "$svg" | head -1)
  [ -n "$width" ] && [ -n "$height" ] || { echo "pictures: $svg has no viewBox that starts at 0 0" >&2; exit 1; }
  for wanted in "$width" 360; do
    rsvg-convert --width "$wanted" --keep-aspect-ratio --background-color white "$svg" -o "$out/$name-rsvg-$wanted.png"
    python3 "$here/png.py" "$out/$name-rsvg-$wanted.png" "$wanted"
    tall=$(((height * wanted + width - 1) / width))
    cat "$svg" >"$out/$name-shown.svg"
    printf '<!doctype html><body style="margin:0;background:#fff"><img src="%s-shown.svg" width="%s">\n' "$name" "$wanted" \
      >"$out/$name-$wanted.html"
    browser "$out/$name-chromium-$wanted.png" "$wanted" "$tall" "file://$out/$name-$wanted.html"
    python3 "$here/png.py" "$out/$name-chromium-$wanted.png" "$wanted" "$tall"
  done
done

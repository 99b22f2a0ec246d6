#!/usr/bin/env python3
"""QR codes drawn by us, read by an independent reader (zbarimg) from pictures 360 pixels wide: as they are,
blurred, turned, and both. The pit that comes out must be the one that went in.

    card_qr.py CARD_TOOL FOLDER NOTES...

rsvg-convert draws the pictures; blurring and turning are SVG's own.
"""

import math
import pathlib
import re
import subprocess
import sys

WIDTH = 360
# How it lies before the camera: degrees of turning, and blur as the standard deviation in pixels.
VIEWS = [(turn, blur) for turn in (0, 7, 30, 45, 90, 187) for blur in (0, 0.8, 1.5)]


def view(svg, turn, blur):
    """The code in a square picture, as large as it can be once turned."""
    angle = math.radians(turn)
    side = WIDTH / (abs(math.cos(angle)) + abs(math.sin(angle)))
    body = re.sub(r'width="\d+" height="\d+"', f'x="{-side / 2}" y="{-side / 2}" width="{side}" height="{side}"', svg, count=1)
    assert body != svg
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{WIDTH}">'
        f'<filter id="blur" x="0" y="0" width="1" height="1"><feGaussianBlur stdDeviation="{blur or 0.01}"/></filter>'
        f'<g{" filter=" + chr(34) + "url(#blur)" + chr(34) if blur else ""}>'
        f'<rect width="{WIDTH}" height="{WIDTH}" fill="#fff"/>'
        f'<g transform="translate({WIDTH / 2} {WIDTH / 2}) rotate({turn})">{body}</g></g></svg>'
    )


def read(picture):
    done = subprocess.run(["zbarimg", "--quiet", "--raw", str(picture)], capture_output=True)
    # The reader ends its text with a line feed; blanks at the end are characters of the card.
    return done.stdout[:-1] if done.stdout.endswith(b"\n") else done.stdout


def check(tool, folder, notes):
    name = folder / notes.stem
    subprocess.run([tool, "write", notes, name], check=True)
    svg = name.with_suffix(".svg").read_text()
    pit = name.with_suffix(".firn").read_bytes()
    failed = 0
    for turn, blur in VIEWS:
        drawing = folder / f"{notes.stem}-{turn}-{blur}.svg"
        picture = drawing.with_suffix(".png")
        drawing.write_text(view(svg, turn, blur))
        subprocess.run(["rsvg-convert", "--output", picture, drawing], check=True)
        text = folder / "text"
        text.write_bytes(read(picture))
        back = folder / "back"
        done = subprocess.run([tool, "read", text, back], capture_output=True, text=True)
        same = done.returncode == 0 and back.with_suffix(".firn").read_bytes() == pit
        if not same:
            failed += 1
            print(f"{notes.name}, turned by {turn}, blurred by {blur}: not read. {done.stderr.strip()}")
    size = name.with_suffix(".card").stat().st_size
    print(f"{notes.name}: card of {size} bytes, {len(VIEWS) - failed} of {len(VIEWS)} pictures read")
    return failed


def main():
    tool, folder = sys.argv[1], pathlib.Path(sys.argv[2])
    folder.mkdir(parents=True, exist_ok=True)
    failed = [check(tool, folder, pathlib.Path(notes)) for notes in sys.argv[3:]]
    if not failed or any(failed):
        sys.exit(1)


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Says whether a PNG file is a picture: of the width that is expected, and not blank.

    png.py FILE WIDTH [HEIGHT]

Prints size, number of greys and share of ink. Reads 8-bit grey, RGB and RGBA without interlacing, which is
what the renderers of the picture check write; no imaging library is needed.
"""

import struct
import sys
import zlib


def chunks(data):
    if data[:8] != b"\x89PNG\r\n\x1a\n":
        raise ValueError("not a PNG file")
    at = 8
    while at < len(data):
        size, kind = struct.unpack(">I4s", data[at : at + 8])
        yield kind, data[at + 8 : at + 8 + size]
        at += 12 + size


def paeth(a, b, c):
    p = a + b - c
    pa, pb, pc = abs(p - a), abs(p - b), abs(p - c)
    if pa <= pb and pa <= pc:
        return a
    return b if pb <= pc else c


def rows(raw, width, height, channels):
    stride = width * channels
    before = bytearray(stride)
    for y in range(height):
        start = y * (stride + 1)
        kind, line = raw[start], bytearray(raw[start + 1 : start + 1 + stride])
        for i in range(stride):
            left = line[i - channels] if i >= channels else 0
            above = before[i]
            corner = before[i - channels] if i >= channels else 0
            add = (0, left, above, (left + above) // 2, paeth(left, above, corner))[kind]
            line[i] = (line[i] + add) & 255
        yield line
        before = line


def greys(path):
    """Width, height and the brightness of each pixel, drawn on white."""
    data = open(path, "rb").read()
    packed = b""
    for kind, body in chunks(data):
        if kind == b"IHDR":
            width, height, depth, colour, _, _, interlace = struct.unpack(">IIBBBBB", body)
            channels = {0: 1, 2: 3, 4: 2, 6: 4}.get(colour)
            if depth != 8 or interlace or not channels:
                raise ValueError("a kind of PNG this check does not read")
        elif kind == b"IDAT":
            packed += body
    out = []
    for line in rows(zlib.decompress(packed), width, height, channels):
        for i in range(0, len(line), channels):
            pixel = line[i : i + channels]
            alpha = pixel[-1] if channels in (2, 4) else 255
            colour = pixel[0] if channels < 3 else (pixel[0] * 2 + pixel[1] * 5 + pixel[2]) // 8
            out.append(255 - (255 - colour) * alpha // 255)
    return width, height, out


def main():
    path, wanted = sys.argv[1], [int(word) for word in sys.argv[2:]]
    width, height, brightness = greys(path)
    ink = sum(1 for value in brightness if value < 200) / len(brightness)
    shades = len(set(brightness))
    print(f"{path}: {width} x {height}, {shades} greys, {100 * ink:.1f} % ink")
    if [width, height][: len(wanted)] != wanted:
        sys.exit(f"{path}: {wanted} was wanted")
    # A profile is mostly paper with bars, lines and words: neither blank nor black.
    if shades < 8 or not 0.01 < ink < 0.7:
        sys.exit(f"{path}: this does not look like a drawing")


if __name__ == "__main__":
    main()

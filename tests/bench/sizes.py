#!/usr/bin/env python3
"""How many bytes a pit takes in each format, as it is and gzipped: the demo pit, and the median of the kit.

    python3 tests/bench/sizes.py
"""

import gzip
import statistics
from pathlib import Path

KIT = Path(__file__).resolve().parents[1] / "conformance" / "kit"
FORMATS = (".firn", ".card", ".notes.txt", ".json", ".caaml.xml")


def sizes(name, ending):
    content = (KIT / (name + ending)).read_bytes()
    return len(content), len(gzip.compress(content, 9, mtime=0))


def main():
    names = sorted(path.stem for path in KIT.glob("*.firn"))
    print("| format | demo pit | gzipped | median of the kit | gzipped |\n|---|---:|---:|---:|---:|")
    for ending in FORMATS:
        demo = sizes("tarn-shoulder", ending)
        all_of_them = [sizes(name, ending) for name in names]
        medians = [statistics.median_low(column) for column in zip(*all_of_them)]
        print(f"| {ending} | {demo[0]} | {demo[1]} | {medians[0]} | {medians[1]} |")


main()

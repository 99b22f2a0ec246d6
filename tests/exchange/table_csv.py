#!/usr/bin/env python3
"""Tables read by an independent reader, Python's csv: each cell is what the pit holds, and none is a formula.

    table_csv.py TABLE_TOOL FOLDER NOTES...
"""

import csv
import pathlib
import random
import re
import subprocess
import sys

NUMBER = re.compile(r"-?\d+(\.\d+)?")
STARTS = "=+-@＝＋－＠"

HOSTILE = [
    "=1+1", "+1", "-1", "@SUM(A1:A9)", "=cmd|' /C calc'!A0", "\t=1", "\r=1", "\n=1", "  =1", " ;=1", "a;=1+1", "a;  +1",
    "a\t=1", "a\n=1", "a\r\n-1", "＝1+1", "＋1", "－1", "＠A", "'", "''", "'=1", "''=1", "a;'=1", "'a", '"', '""', '"=1',
    'a "quoted" word', ",", "a,b", ",=1", "a,\n=1", " blanks around ", " ", "\n", "\r", "\t", "\r\n", ";", ";;=", "a;",
    "שלג", "\U0001F3D4 ridge", "\ufeff=1", "\u00a0=1", "\u200b=1", "=HYPERLINK(\"a\",\"b\")", "1e999", "-7.5", "007",
    "TRUE", "x" * 100000, "4F-", "-SN",
]
PIECES = ["=", "+", "-", "@", "'", '"', ",", ";", "\t", "\r", "\n", " ", "a", "1", "＝", "ü", "|", "(", "\\"]


def texts():
    dice = random.Random(5)
    made = ["".join(dice.choice(PIECES) for _ in range(dice.randint(1, 9))) for _ in range(4000)]
    return HOSTILE + made


def rows_of(tool, folder, table, *arguments):
    out = folder / f"{table}.csv"
    subprocess.run([tool, table, out, *map(str, arguments)], check=True)
    data = out.read_bytes()
    assert data.endswith(b"\r\n")
    with open(out, encoding="utf-8", newline="") as file:
        rows = list(csv.reader(file, strict=True))
    headings = rows[0]
    assert len(set(headings)) == len(headings), headings
    for row in rows[1:]:
        assert len(row) == len(headings), row
        for cell in row:
            formula = cell[:1] in ("\t", "\r", "\n") or cell.lstrip(" ")[:1] in tuple(STARTS) and cell.strip()
            assert not formula or NUMBER.fullmatch(cell), repr(cell)
    return [dict(zip(headings, row)) for row in rows[1:]]


def plain(cell):
    """The text as it was: README.md of the tables, "Formulas"."""
    out, may_begin, at = [], True, 0
    while at < len(cell):
        c = cell[at]
        if may_begin and c == "'":
            # Ours stands before something that it made harmless, and nowhere else.
            at += 1
            c = cell[at]
            assert c in STARTS + "'" or (c in "\t\r\n" and not out), repr(cell)
        else:
            assert not (may_begin and c in STARTS + "'"), repr(cell)
        out.append(c)
        may_begin = c in ";\t\r\n" or (may_begin and c == " ")
        at += 1
    return "".join(out)


def check_texts(tool, folder):
    wanted = texts()
    file = folder / "texts"
    file.write_bytes(b"".join(text.encode() + b"\0" for text in wanted))
    for table, columns in (("layers", ("words", "title")), ("tests", ("test_words", "pit")), ("pits", ("assessment",))):
        rows = rows_of(tool, folder, table, "texts", file)
        assert len(rows) == len(wanted), (len(rows), len(wanted))
        for row, text in zip(rows, wanted):
            for column in columns:
                assert plain(row[column]) == text, (row[column], text)
    print(f"{len(wanted)} texts came back from three tables")


def check_demo(tool, folder, notes):
    layers = rows_of(tool, folder, "layers", "notes", *notes)
    tarn = [row for row in layers if row["pit"].startswith("Tarn")]
    assert len(layers) == 10 and len(tarn) == 7
    last = tarn[-1]
    wanted = {
        "time": "2027-01-16T11:20-07:00", "layer": "7", "top_cm": "107", "top_datum": "surface", "bottom_cm": "140",
        "hardness": "4F-", "grain_form": "FC", "grain_form_second": "DH", "grain_size_mm": "2", "grain_size_max_mm": "3",
        "wetness": "", "words": "", "unreliable": "",
    }
    assert {key: last[key] for key in wanted} == wanted, last
    assert tarn[3]["name_date"] == "2027-01-02" and tarn[3]["name_kind"] == "buried", tarn[3]
    assert tarn[2]["grain_size_mm"] == "0.3" and tarn[2]["hardness"] == "1F-", tarn[2]

    tests = rows_of(tool, folder, "tests", "notes", *notes)
    kinds = [row["kind"] for row in tests if row["pit"].startswith("Tarn")]
    assert kinds == ["CT", "CT", "CT", "ECT", "PST"], kinds
    saw = tests[-1]
    wanted = {"cut_cm": "32", "column_length_cm": "100", "saw_end": "End", "depth_cm": "68", "tap": "", "on_grain_form": "SH"}
    assert {key: saw[key] for key in wanted} == wanted, saw

    pits = rows_of(tool, folder, "pits", "notes", *notes)
    wanted = {
        "pit": "Tarn Shoulder, Larchwater Range", "elevation_m": "2215", "aspect_point": "NE", "slope_deg": "31",
        "probes_cm": "139 142 137 141", "air_temperature_degc": "-7.5", "precipitation": "'-SN", "hs_cm": "140",
        "penetration_foot_cm": "35", "sign_whumpf": "no", "sign_cracking": "yes", "sign_slides": "not looked for",
        "layers": "7", "temperatures": "6", "tests": "5", "backfilled": "yes", "latitude_deg": "", "observers": "KL, MT",
    }
    assert {key: pits[1][key] for key in wanted} == wanted, pits[1]
    # One day with another, by what they are joined with.
    assert {row["pit"] for row in layers} == {row["pit"] for row in pits}
    print("both demo pits stand in the tables as they were noted")


def main():
    tool, folder, notes = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3:]
    folder.mkdir(parents=True, exist_ok=True)
    check_demo(tool, folder, notes)
    check_texts(tool, folder)
    for table in ("layers", "tests", "pits"):
        rows = rows_of(tool, folder, table, "random", 2000)
        print(f"{table}: {len(rows)} rows of 2000 pits with anything in any field")
        assert len(rows) >= 1000


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""A reader of cards in another language, written from core/src/exchange/card/README.md, TABLES.md and letters.def
alone. What it reads must be what FlatBuffers' own compiler shows of the pit.

    card_reader.py SOURCE_DIR FLATC CARD_TOOL FOLDER NOTES...
"""

import json
import pathlib
import re
import subprocess
import sys

RANDOM = 200  # pits with anything in any field


# --- the three files --------------------------------------------------------------------------------------

def unquoted(text):
    return re.sub(r"\\(\d{3}|.)", lambda m: chr(int(m[1], 8)) if m[1].isdigit() else {"n": "\n"}.get(m[1], m[1]), text).encode(
        "latin-1"
    )


def read_letters(text):
    """From (length, code) to a piece; "" is the end and None a run of bytes."""
    pieces, code, last = {}, 0, 0
    for match in re.finditer(r'^LETTERS(?:_(END|RAW))?\((\d+)(?:, "(.*)")?\)$', text, re.M):
        length = int(match[2])
        code <<= length - last
        pieces[length, code] = "" if match[1] == "END" else None if match[1] == "RAW" else unquoted(match[3])
        code, last = code + 1, length
    return pieces


def numbers(text):
    return [int(n) for n in re.findall(r"-?\d+", text)]


class Table:
    def __init__(self, text):
        self.order = int(re.search(r"^Shapes, order (\d+):", text, re.M)[1])
        self.shapes = [[f for f in line.split(", ") if f] for line in re.findall(r"^\d+\. (?!one by one)(.*)$", text, re.M)]
        usual = re.search(r"^\d+\. one by one; usual: ?(.*)$", text, re.M)[1]
        self.usual = [f for f in usual.split(", ") if f]
        rows = re.findall(r"^\| (\d+) \| (\w+) \| ([\w ]+?) \|(.*)\|$", text, re.M)
        self.fields = [(name, way, what.strip()) for _, name, way, what in rows]


def read_tables(text):
    return {part.split("\n", 1)[0].strip(): Table(part) for part in re.split(r"^## ", text, flags=re.M)[1:]}


# --- bits -------------------------------------------------------------------------------------------------

def crc32c(data):
    crc = 0xFFFFFFFF
    for byte in data:
        crc ^= byte
        for _ in range(8):
            crc = crc >> 1 ^ (0x82F63B78 if crc & 1 else 0)
    return crc ^ 0xFFFFFFFF


class Bits:
    def __init__(self, data):
        self.bits = "".join(f"{byte:08b}" for byte in data)
        self.at = 0

    def fixed(self, width):
        if self.at + width > len(self.bits):
            raise ValueError("the card ends too early")
        self.at += width
        return int(self.bits[self.at - width : self.at] or "0", 2)

    def golomb(self, order):
        zeros = 0
        while not self.fixed(1):
            zeros += 1
        return (((1 << zeros) | self.fixed(zeros)) - 1) << order | self.fixed(order)

    def signed(self, order):
        n = self.golomb(order)
        return -(n + 1) // 2 if n & 1 else n // 2

    def choice(self, last):
        c = 0
        while c < last and self.fixed(1):
            c += 1
        return c


# --- the reader -------------------------------------------------------------------------------------------

class Reader:
    def __init__(self, bits, tables, letters):
        self.bits, self.tables, self.letters = bits, tables, letters
        self.frame = (1, 1)
        self.boundaries = []
        self.offsets = {True: (0, 0), False: (0, 0)}
        self.last_s, self.first = 1767225600, True
        self.texts = []

    def table(self, name, before=None):
        table, bits, out = self.tables[name], self.bits, {}
        rank = bits.golomb(table.order)
        if rank < len(table.shapes):
            present = table.shapes[rank]
        else:
            names = [f for f, way, _ in table.fields if way != "never"]
            present = [f for f in names if f in table.usual and bits.fixed(1)]
            if bits.fixed(1):
                present += [f for f in names if f not in table.usual and bits.fixed(1)]
                if bits.fixed(1):
                    raise ValueError("late fields")
        for field, way, what in table.fields:
            if field in present:
                out[field] = self.value(field, way, what, out, before)
                if name == "pit" and field == "layers":
                    tops = [layer["top"] for layer in out["layers"] if "top" in layer]
                    self.boundaries = (tops + [out["layers"][-1]["bottom"]] if "bottom" in out["layers"][-1] else tops)[:255]
        return out

    def value(self, field, way, what, out, before):
        bits = self.bits
        before = before or {}
        order = int(what[6:].split(":")[0]) if what.startswith("order ") else 0
        if way == "flag":
            return bool(bits.fixed(1))
        if way == "code":
            return self.code(what)
        if way == "codes":
            return [self.code(what) for _ in range(bits.golomb(0) + 1)]
        if way == "number":
            return self.number(what)
        if way == "change":
            return self.number(what) + before.get(field, 0)
        if way == "marks":
            ids = []
            for i in range(bits.golomb(0) + 1):
                ids.append(bits.golomb(3) if i == 0 else ids[-1] + 1 + bits.golomb(1))
            return sum(1 << n for n in ids)
        if way == "text":
            return self.text()
        if way == "moment":
            return self.moment()
        if way == "time span":
            begin = self.moment()
            empty = {"local_s": 0, "offset_min": 0, "precision": 0, "offset_known": 0}
            return {"begin": begin, "end": self.moment() if bits.fixed(1) else empty}
        if way == "place":
            thing, index, sub, field = bits.golomb(4), bits.signed(2) - 1, bits.signed(1) - 1, bits.golomb(0)
            return {"index": index, "sub": sub, "field": field - 1 if field else 65535, "thing": thing}
        if way == "numbers":
            values = []
            for i in range(bits.golomb(2) + 1):
                units = "signed; 1000 (order 3) 100 (order 6) 1 (order 12)" if i else "1000 (order 6) 100 (order 9) 1 (order 16)"
                values.append((values[-1] if i else 0) + self.number(units))
            return values
        if way == "table":
            return self.table(what)
        if way == "tables":
            elements = []
            for _ in range(bits.golomb(order) + 1):
                elements.append(self.table(what.split(": ")[1], elements[-1] if elements else None))
            return elements
        if way == "next top":
            if bits.fixed(1):
                return before.get("bottom", self.framed(0))
            return self.depth(order, before.get("bottom"))
        if way == "next depth":
            return self.depth(order, before.get("depth"))
        if way == "below top":
            return self.depth(order, out.get("top", before.get("bottom")))
        if way == "at boundary":
            return self.at_boundary(order, out.get("top") if field == "bottom" else None)
        if way == "boundaries":
            return [self.at_boundary(order, None) for _ in range(bits.golomb(0) + 1)]
        raise ValueError(way)

    def code(self, what):
        order, *values = numbers(what)
        rank = self.bits.golomb(order)
        return values[rank] if rank < len(values) else rank - len(values)

    def number(self, what):
        found = numbers(what)
        units = list(zip(found[::2], found[1::2]))
        chosen = self.bits.choice(len(units))
        if chosen == len(units):
            return self.bits.signed(14)
        unit, order = units[chosen]
        return unit * (self.bits.signed(order) if what.startswith("signed") else self.bits.golomb(order))

    def framed(self, value):
        return {"value_10um": value, "datum": self.frame[0], "direction": self.frame[1]}

    def depth(self, order, base):
        chosen = self.bits.choice(4)
        if chosen == 4:
            self.frame = (self.bits.golomb(1), self.bits.golomb(1))
            chosen = self.bits.choice(3)
        value = self.bits.signed(14) if chosen == 3 else (1000, 500, 100)[chosen] * self.bits.golomb(order + (0, 1, 3)[chosen])
        if base is None or (base["datum"], base["direction"]) != self.frame:
            return self.framed(value)
        return self.framed(base["value_10um"] + (-value if self.frame[0] == 2 else value))

    def at_boundary(self, order, base):
        if self.boundaries and self.bits.fixed(1):
            return self.boundaries[self.bits.fixed((len(self.boundaries) - 1).bit_length())]
        return self.depth(order, base)

    def moment(self):
        bits = self.bits
        precision = self.code("order 1: 4 3 5 1 2 0")
        on_clock = precision in (4, 5)
        if not bits.fixed(1):
            known = bits.golomb(0)
            known = 1 - known if known < 2 else known
            self.offsets[on_clock] = (bits.signed(5) * 15 if bits.fixed(1) else bits.signed(10), known)
        offset, known = self.offsets[on_clock]
        unit = {4: 60, 5: 1}.get(precision, 86400)
        if bits.fixed(1):
            local = bits.signed(32)
        else:
            order = ({4: 21, 5: 27}.get(precision, 10), {4: 8, 5: 14}.get(precision, 5))[not self.first]
            local = (self.last_s // unit + bits.signed(order)) * unit
        self.first = False
        if abs(local) <= 1 << 40:
            self.last_s = local
        return {"local_s": local, "offset_min": offset, "precision": precision, "offset_known": known}

    def text(self):
        if self.texts and self.bits.fixed(1):
            return self.texts[-1 - self.bits.golomb(2)]
        out = b""
        while True:
            piece = self.piece()
            if piece == "":
                break
            out += piece if piece is not None else bytes(self.bits.fixed(8) for _ in range(self.bits.golomb(3) + 1))
        text = out.decode("utf-8", "surrogateescape")
        if len(out) <= 100:
            self.texts = (self.texts + [text])[-64:]
        return text

    def piece(self):
        code = 0
        for length in range(1, 17):
            code = code << 1 | self.bits.fixed(1)
            if (length, code) in self.letters:
                return self.letters[length, code]
        raise ValueError("no such piece")


def read_card(card, tables, letters):
    if crc32c(card[:-4]) != int.from_bytes(card[-4:], "big"):
        raise ValueError("damaged")
    bits = Bits(card[:-4])
    if bits.fixed(4) != 1:
        raise ValueError("written by a newer version")
    bits.fixed(4)
    bits.fixed(1)
    pit = Reader(bits, tables, letters).table("pit")
    if len(bits.bits) - bits.at > 7 or "1" in bits.bits[bits.at :]:
        raise ValueError("something stands behind the pit")
    return pit


# --- what FlatBuffers' compiler shows ---------------------------------------------------------------------

def numbers_of_names(schemas):
    """(enumeration, name) to number, and (table, field) to type."""
    names, types = {}, {}
    for file in ("vocabulary.fbs", "pit.fbs"):
        text = re.sub(r"//.*", "", (schemas / file).read_text())
        for enum, body in re.findall(r"enum (\w+) : \w+ \{(.*?)\}", text, re.S):
            names.update({(enum, name): int(n) for name, n in re.findall(r"(\w+) = (\d+)", body)})
        for table, body in re.findall(r"(?:table|struct) (\w+) \{(.*?)\n\}", text, re.S):
            types.update({(table, name): kind for name, kind in re.findall(r"(\w+):\[?(\w+)\]?", body)})
    return names, types


def plain(value, table, names, types):
    if isinstance(value, dict):
        return {k: plain(v, types.get((table, k)), names, types) for k, v in value.items() if k != "schema_minor"}
    if isinstance(value, list):
        return [plain(v, table, names, types) for v in value]
    return names[table, value] if isinstance(value, str) and table != "string" else value


def shown(flatc, schemas, firn, folder):
    """The pit as JSON; None where it holds text that JSON cannot."""
    arguments = [flatc, "--json", "--strict-json", "--raw-binary", "--natural-utf8", "-o", folder, schemas / "pit.fbs", "--", firn]
    done = subprocess.run(arguments, capture_output=True)
    if done.returncode != 0:
        return None
    # Some control characters stand as they are in it.
    return json.loads(firn.with_suffix(".json").read_bytes().decode("utf-8", "surrogateescape"), strict=False)


def main():
    source, flatc, tool, folder = pathlib.Path(sys.argv[1]), sys.argv[2], sys.argv[3], pathlib.Path(sys.argv[4])
    folder.mkdir(parents=True, exist_ok=True)
    here = source / "core/src/exchange/card"
    tables = read_tables((here / "TABLES.md").read_text())
    letters = read_letters((here / "letters.def").read_text())
    names, types = numbers_of_names(source / "schemas")
    for notes in map(pathlib.Path, sys.argv[5:]):
        subprocess.run([tool, "write", notes, folder / notes.stem], check=True)
    subprocess.run([tool, "random", str(RANDOM), folder / "random"], check=True)
    compared = 0
    for card in sorted(folder.glob("*.card")):
        read = read_card(card.read_bytes(), tables, letters)
        pit = shown(flatc, source / "schemas", card.with_suffix(".firn"), folder)
        if pit is None:
            continue
        wanted = plain(pit, "Pit", names, types)
        if read != wanted:
            sys.exit(f"{card.name} was read as\n{read}\nand is\n{wanted}")
        compared += 1
    print(f"{compared} cards read as the pits that they are")
    if compared < len(sys.argv) - 5 + RANDOM // 4:
        sys.exit("too few of the pits could be shown")


if __name__ == "__main__":
    main()

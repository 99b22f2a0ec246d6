#!/usr/bin/env python3
"""A reader of pits that knows nothing of the library: the FlatBuffers runtime for Python and schemas/*.fbs.

    reader.py SCHEMAS FILE.firn               prints the pit as JSON
    reader.py SCHEMAS --kit FOLDER            reads every pit of the kit, holds it against its JSON

It takes the schemas as text, so that what it proves is that the schemas alone say how a pit is read. The JSON
is that of core/src/exchange/json/README.md. Exit status 77 (skipped) when the runtime is not there.
"""

import base64
import datetime
import json
import pathlib
import re
import struct
import sys

try:
    import flatbuffers.table
except ImportError:
    print("skipped: the FlatBuffers runtime for Python (Debian: python3-flatbuffers) is not there")
    sys.exit(77)

# Size and struct's letter of what a schema calls scalars.
SCALARS = {
    "bool": (1, "?"), "byte": (1, "b"), "ubyte": (1, "B"), "short": (2, "h"), "ushort": (2, "H"),
    "int": (4, "i"), "uint": (4, "I"), "long": (8, "q"), "ulong": (8, "Q"), "float": (4, "f"),
}


class Schema:
    """Enumerations, structs and tables of schema files, as their text says."""

    def __init__(self, folder):
        self.enums, self.structs, self.tables = {}, {}, {}
        for name in ("vocabulary", "pit"):
            self.read((pathlib.Path(folder) / f"{name}.fbs").read_text(encoding="utf-8"), name == "vocabulary")

    def read(self, text, has_codes):
        for kind, name, base, body in re.findall(r"^(enum|struct|table)\s+(\w+)\s*(?::\s*(\w+))?\s*\{(.*?)\}",
                                                 text, re.M | re.S):
            if kind == "enum":
                self.enums[name] = (base, dict(self.values(body, has_codes)))
            elif kind == "struct":
                self.structs[name] = self.members(body)
            else:
                self.tables[name] = self.fields(body)

    @staticmethod
    def values(body, has_codes):
        """Numbers and spellings: a trade's code stands in quotes in the comment, other names have blanks."""
        comment, number = "", -1
        for line in body.splitlines():
            code, _, said = line.partition("//")
            comment += said
            for name, given in re.findall(r"(\w+)\s*(?:=\s*(\d+))?\s*,?", code):
                number = int(given) if given else number + 1
                quoted = re.search(r'"([^"]*)"', comment)
                spelling = name.replace("_", " ").strip() if has_codes else name
                yield number, quoted[1] if quoted and has_codes else spelling
                comment = ""

    @staticmethod
    def members(body):
        body = re.sub(r"//.*", "", body)
        return [(name, kind) for name, kind in re.findall(r"(\w+)\s*:\s*(\w+)", body)]

    @staticmethod
    def fields(body):
        body = re.sub(r"//.*", "", body)
        fields = {}
        for name, kind, attributes in re.findall(r"(\w+)\s*:\s*(\[?\w+\]?)[^;(]*\(([^)]*)\)\s*;", body):
            number = int(re.search(r"id:\s*(\d+)", attributes)[1])
            fields[number] = (name, kind, "deprecated" in attributes)
        return fields

    def size_and_alignment(self, kind):
        if kind in self.enums:
            kind = self.enums[kind][0]
        if kind in SCALARS:
            return SCALARS[kind][0], SCALARS[kind][0]
        size, alignment = 0, 1
        for _, member in self.structs[kind]:
            own, aligned = self.size_and_alignment(member)
            size = -(-size // aligned) * aligned + own
            alignment = max(alignment, aligned)
        return -(-size // alignment) * alignment, alignment


class Reader:
    def __init__(self, schema, data):
        self.schema, self.data = schema, data

    def pit(self):
        if self.data[4:8] != b"FIRN":
            raise ValueError("not a pit")
        root = struct.unpack_from("<I", self.data, 0)[0]
        return {"pit": self.table("Pit", root)}

    def table(self, name, position):
        table = flatbuffers.table.Table(self.data, position)
        out = {}
        for number, (field, kind, deprecated) in sorted(self.schema.tables[name].items()):
            offset = table.Offset(4 + 2 * number)
            if offset == 0 or deprecated:
                continue
            if field == "unreliable":
                out[field] = self.mask(name, self.scalar("ulong", position + offset))
            elif kind.startswith("["):
                out[field] = self.list(kind[1:-1], table.Vector(offset), table.VectorLen(offset))
            elif kind == "string":
                out[field] = table.String(position + offset).decode("utf-8")
            elif kind in self.schema.tables:
                out[field] = self.table(kind, table.Indirect(position + offset))
            else:
                out[field] = self.value(kind, position + offset)
        return out

    def list(self, kind, start, count):
        if kind == "ubyte":
            return base64.b64encode(bytes(self.data[start:start + count])).decode()
        if kind == "string" or kind in self.schema.tables:
            out = []
            for i in range(count):
                at = start + 4 * i
                target = at + struct.unpack_from("<I", self.data, at)[0]
                if kind == "string":
                    size = struct.unpack_from("<I", self.data, target)[0]
                    out.append(bytes(self.data[target + 4:target + 4 + size]).decode("utf-8"))
                else:
                    out.append(self.table(kind, target))
            return out
        size, _ = self.schema.size_and_alignment(kind)
        return [self.value(kind, start + size * i) for i in range(count)]

    def scalar(self, kind, at):
        return struct.unpack_from("<" + SCALARS[kind][1], self.data, at)[0]

    def value(self, kind, at):
        if kind in self.schema.enums:
            base, names = self.schema.enums[kind]
            number = self.scalar(base, at)
            return names.get(number, number)
        if kind in SCALARS:
            return self.scalar(kind, at)
        members, position = {}, 0
        for name, member in self.schema.structs[kind]:
            size, alignment = self.schema.size_and_alignment(member)
            position = -(-position // alignment) * alignment
            members[name] = self.value(member, at + position)
            position += size
        if kind == "Moment":
            return moment(members)
        return self.place(members) if kind == "Place" else members

    def place(self, members):
        out = {"thing": members["thing"]}
        for name in ("index", "sub"):
            if members[name] != -1:
                out[name] = members[name]
        if members["field"] != 65535:
            fields = self.fields_of(members["thing"])
            out["field"] = fields[members["field"]][0] if members["field"] in fields else members["field"]
        return out

    def fields_of(self, thing):
        """The fields of a thing: its table has its name, save where a test, reading or list is called shorter."""
        names = {"test": "StabilityTest", "temperature": "TemperatureReading", "bulletin": "BulletinSeen"}
        for part in ("density", "liquid_water", "surface_area", "hardness", "strength", "impurity"):
            names[part] = "".join(word.title() for word in part.split("_")) + "Reading"
        name = names.get(thing, "".join(word.title() for word in str(thing).split("_")))
        return self.schema.tables.get(name, {})

    def mask(self, name, bits):
        fields = self.schema.tables[name]
        return [fields[bit][0] if bit in fields else bit for bit in range(64) if bits >> bit & 1]


def moment(parts):
    """As ISO 8601 where that says all of it."""
    if parts["precision"] == "none" and not (parts["local_s"] or parts["offset_min"] or parts["offset_known"]):
        return None
    lengths = {"year": 4, "month": 7, "day": 10, "minute": 16, "second": 19}
    length = lengths.get(parts["precision"])
    offset, known = parts["offset_min"], parts["offset_known"]
    if length is None or known > 1 or (known == 0 and offset) or (known and length < 16) or abs(offset) >= 24 * 60:
        return parts
    try:
        clock = datetime.datetime(1970, 1, 1) + datetime.timedelta(seconds=parts["local_s"])
    except OverflowError:
        # The year 0 is beyond Python; its moments stand in the kit as they do here.
        return parts
    text = clock.isoformat()
    if text[length:] not in "-01-01T00:00:00" or not "0000-01-01T00:00:00".endswith(text[length:]):
        return parts
    zone = f"{'-' if offset < 0 else '+'}{abs(offset) // 60:02}:{abs(offset) % 60:02}" if known else ""
    return text[:length] + zone


def floats(value):
    """Floats to 32 bits, so that decimals compare as what they stand for."""
    if isinstance(value, float):
        return struct.unpack("<f", struct.pack("<f", value))[0]
    if isinstance(value, list):
        return [floats(part) for part in value]
    if isinstance(value, dict):
        return {key: floats([float(part) for part in value[key]] if key.startswith("dense_") else part)
                for key, part in value.items()}
    return value


def first_difference(a, b, path=""):
    if isinstance(a, dict) and isinstance(b, dict):
        for key in sorted(a.keys() | b.keys()):
            if a.get(key, "absent") != b.get(key, "absent"):
                return first_difference(a.get(key, "absent"), b.get(key, "absent"), f"{path}.{key}")
    if isinstance(a, list) and isinstance(b, list) and len(a) == len(b):
        for i, (left, right) in enumerate(zip(a, b)):
            if left != right:
                return first_difference(left, right, f"{path}[{i}]")
    return f"{path}: read {str(a)[:80]}, the kit has {str(b)[:80]}"


def known_part(schema, value):
    """What a schema knows of a record: an older one passes over what was appended since."""
    names = {name for fields in schema.tables.values() for name, _, _ in fields.values()}
    names |= {name for members in schema.structs.values() for name, _ in members} | {"pit"}
    if isinstance(value, list):
        return [known_part(schema, part) for part in value]
    if isinstance(value, dict):
        return {key: known_part(schema, part) for key, part in value.items() if key in names}
    return value


def hold_against_kit(schema, folder):
    passed = failed = 0
    for path in sorted(folder.glob("*.firn")):
        read = floats(Reader(schema, bytearray(path.read_bytes())).pit())
        expected = floats(known_part(schema, json.loads(path.with_suffix(".json").read_text(encoding="utf-8"))))
        if read == expected:
            passed += 1
        else:
            failed += 1
            print(f"{path.name}{first_difference(read, expected)}")
    print(f"{passed} pits read as the kit has them, {failed} not")
    return 0 if passed >= 60 and not failed else 1


def main():
    schema = Schema(sys.argv[1])
    if sys.argv[2] == "--kit":
        return hold_against_kit(schema, pathlib.Path(sys.argv[3]))
    data = bytearray(pathlib.Path(sys.argv[2]).read_bytes())
    print(json.dumps(Reader(schema, data).pit(), indent=2, ensure_ascii=False))
    return 0


if __name__ == "__main__":
    sys.exit(main())

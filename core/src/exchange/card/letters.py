#!/usr/bin/env python3
"""Makes letters.def, the static code for texts on a card, from the invented field remarks below.

    letters.py > letters.def

The code is frozen with version 1 of the card: a changed table would read old cards wrong. The script stays so
that everybody can see how the table came about; tests/exchange/card_letters.py compares the two.

How: pieces of two to nine bytes are taken from the remarks, those that save most first, as long as a greedy
reading (the longest piece that fits, at each place) gets shorter; then lengths of a Huffman code are made from
how often that reading uses each piece. Every printable ASCII character and the letters of the languages of
Western Europe have a place whether they occur or not.
"""

import heapq

REMARKS = """
new snow over an old crust, well bonded to it
wind slab on the lee side, hollow when struck
small facets above the crust, easy to brush out
large depth hoar near the ground, cups and striations
surface hoar on the small meadow, laid over by the wind
the slab was 30 cm thick and came away in one piece
loose new snow, sluffing on steep rolls
gentle slope, short and with a flat run-out
same aspect and elevation as the bowl above
same aspect, elevation and wind loading as the main slope
lower and less steep than the slope we want to ride
higher up and more wind loaded than our line
we will stay on low angle terrain today
staying on ridges and on low angle slopes below the trees
turning around at the saddle, too much new snow
keep away from convex rolls and from thin spots near rocks
the weak layer is thicker toward the ridge
thick slab, shallow near the trees, thins out to the west
wind from the south west in the night, drifts at the edge
crust breaks under the ski, moist below
moist to the ground, no freeze last night
melt-freeze crust with facets below it
graupel in the upper layer, rounded grains in the slab
decomposing fragments, soft, dry
rain crust of last week, 2 cm, still firm
basal facets, wet and large, to the ground
the ground is warm, grass, not frozen
probe went in evenly, with stones at two places
sun came out at noon, the surface got sticky
shade all day at this place, cold
test site ten metres below the ridge, undisturbed
two columns side by side gave the same result
second column broke one tap later, same layer
the saw test ran to the end of the column
cracks shot out two metres in front of the skis
whumpf on the flat on the way up, felt by all
old slab avalanche in the gully, size 2, one day old
natural loose slides on the sunny side this afternoon
no tracks, nobody there before us
snow depth varies a lot, 60 to 150 cm within a few steps
hard slab, pencil, over fist hard sugary snow
sugary snow, falls out of the wall
thin ice layer, not everywhere
buried surface hoar, about 6 mm, stands upright
the layer of early January, buried on the 12th
not sure about the grain form, gloves and wind
thermometer not read, left in the pack
fog, no view of the slope above
light snow all day, little wind in the trees
moderate wind at the pass with blowing snow
bulletin says considerable above the tree line
one hole tells about this place only
first profile of the winter, for practice
pit for the course, filled in again
pit filled in, nothing left open
Upper Meadow, north ridge, east bowl, west side, south face
North Couloir entry, Lower Basin, Hidden Lake Pass
Spruce Hut, Stone Creek, Long Ridge, Round Hill, Old Mine Road
West Shoulder, Big Moraine, Little Glacier, Dry Valley, Far Peak Range
Pine Saddle, White Water Range, Black Rock Spur, Glacier Bench
KL, MT, AB, JS, RW, HD, EM, NP, observer, guide, student
open slope above the tree line, glade, in the trees, ridge, gully, moraine
slope of interest, start of the run, edge of the bowl
cornice over the lee slope, about 2 m
whumpfing and shooting cracks around the pit
the lower half is slightly moist, the upper part dry
slab of the last storm, 40 cm, right side up
upside down: dense over light snow
failed on isolation, could not be tested
column broke while cutting, not valid
did not break even with hard blows
kein Anriss an der Säule, Altschnee gut verfestigt
Triebschnee auf Oberflächenreif, störanfällig
Schwimmschnee am Boden, grosse Becherkristalle
kantige Formen über der Kruste, 1 bis 2 mm
Neuschnee der letzten Nacht, locker, etwa 25 cm
Schmelzkruste mit feuchtem Schnee darunter
gleiche Exposition und Höhe wie der Hang oben
flacher und kürzer als der Hang, den wir fahren wollen
Wummgeräusch beim Aufstieg, Risse vor den Ski
Wind aus Südwest, Verfrachtung am Grat
wir bleiben heute im flachen Gelände unter der Waldgrenze
Obere Alp, Nordhang, Kleiner Sattel, Langer Grat, Weisses Tal
Profil für die Übung, wieder zugeschüttet
neige soufflée sur une croûte, plaque fine
faces planes sous la croûte, se brosse facilement
givre de profondeur au sol, gros grains
neige fraîche légère, environ 20 cm
même orientation et altitude que la pente visée
fissures devant les skis, bruit sourd à la montée
pente douce, courte, à l'abri du vent
nous restons sur des pentes faibles aujourd'hui
Grand Replat, Col du Milieu, Petite Combe, versant nord
vent modéré du nord-ouest, neige transportée au col
"""

LATIN = "äöüßÄÖÜéèêëàâçîïôûùæøåñíóáú°–’"
CANDIDATES, LEAST, COST = 700, 3, 4
END, RAW = "", None  # the end of the text, and a run of bytes that no piece fits


def singles():
    return [bytes([c]) for c in range(32, 127)] + [b"\n"] + [c.encode() for c in LATIN]


def parse(text, pieces, longest):
    at = 0
    while at < len(text):
        for size in range(min(longest, len(text) - at), 0, -1):
            piece = text[at : at + size]
            if piece in pieces:
                yield piece
                at += size
                break
        else:
            raise ValueError(text)


def count(lines, pieces):
    longest = max(map(len, pieces))
    counts = dict.fromkeys(pieces, 0)
    for line in lines:
        for piece in parse(line, pieces, longest):
            counts[piece] += 1
    return counts


def lengths(weights):
    """Huffman code lengths; ties are broken by the order of the symbols, so that every machine agrees."""
    heap = [(weight, number, (symbol,)) for number, (symbol, weight) in enumerate(weights)]
    heapq.heapify(heap)
    length = {symbol: 0 for symbol, _ in weights}
    number = len(heap)
    while len(heap) > 1:
        a, b = heapq.heappop(heap), heapq.heappop(heap)
        for symbol in a[2] + b[2]:
            length[symbol] += 1
        heapq.heappush(heap, (a[0] + b[0], number, a[2] + b[2]))
        number += 1
    return length


def weigh(counts, lines):
    # Four for each use and one for being there: what did not occur here may well occur elsewhere.
    weights = [(piece, 4 * uses + 1) for piece, uses in sorted(counts.items())]
    # Half of a pit's texts are shorter than these lines; few hold bytes of other scripts.
    return weights + [(END, 8 * len(lines)), (RAW, 4)]


def bits(counts, lines):
    weights = weigh(counts, lines)
    length = lengths(weights)
    return sum(uses * length[piece] for piece, uses in counts.items()) + length[END] * len(lines)


def grams(lines):
    found = {}
    for line in lines:
        for size in range(2, 10):
            for at in range(len(line) - size + 1):
                piece = line[at : at + size]
                # Whole characters only, and no blank inside: those are phrases of these remarks.
                if b" " in piece[1:-1] or any(b > 126 for b in piece):
                    continue
                found[piece] = found.get(piece, 0) + 1
    return sorted((p for p in found if found[p] >= 5), key=lambda p: (-found[p] * (len(p) - 1), p))


def choose(lines):
    """All candidates at first; those that are hardly used go, then each whose going costs next to nothing."""
    single = set(singles())
    pieces = single | set(grams(lines)[:CANDIDATES])
    while True:
        counts = count(lines, pieces)
        rare = {p for p in pieces - single if counts[p] < LEAST}
        if not rare:
            break
        pieces -= rare
    now = bits(counts, lines)
    for piece in sorted(pieces - single, key=lambda p: (counts[p], p)):
        tried = count(lines, pieces - {piece})
        then = bits(tried, lines)
        if then <= now + COST:
            pieces.discard(piece)
            counts, now = tried, then
    return counts


def quoted(piece):
    out = ""
    for byte in piece:
        c = chr(byte)
        out += {'"': '\\"', "\\": "\\\\", "\n": "\\n"}.get(c, c if 32 <= byte < 127 else f"\\{byte:03o}")
    return f'"{out}"'


def main():
    lines = [line.encode() for line in REMARKS.strip().split("\n")]
    counts = choose(lines)
    length = lengths(weigh(counts, lines))
    rank = {END: b"\x00", RAW: b"\x01"}
    order = sorted(length, key=lambda s: (length[s], rank.get(s, s)))
    print("// Made by letters.py, which says how. Shortest codes first; the codes of one length count up.")
    for symbol in order:
        if symbol == END:
            print(f"LETTERS_END({length[symbol]})")
        elif symbol is RAW:
            print(f"LETTERS_RAW({length[symbol]})")
        else:
            print(f"LETTERS({length[symbol]}, {quoted(symbol)})")


if __name__ == "__main__":
    main()

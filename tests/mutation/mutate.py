#!/usr/bin/env python3
"""How well the tests hold the rules: every comparison and every number of checking/ and interpretation/ is
changed in turn, and a test has to notice.

    python3 tests/mutation/mutate.py [--keep FOLDER] [--jobs N] [--only PART] [--every N] [--least PERCENT]
                                      [--random] [--write]

All mutants are built at once into one copy of the sources, each behind a switch that the environment sets, so
that a mutant costs a run of the tests and no build. Comparisons are changed in two ways (the neighbour that
treats the limit otherwise, and the opposite), whole numbers by one up and one down, others by a hundredth. A
mutant that no test notices is listed with its place; equivalents.txt says of some why no test can. Exit status
1 when fewer than PERCENT (90) are noticed.
"""

import argparse
import concurrent.futures
import json
import os
import re
import resource
import shutil
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
MODULES = ("checking", "interpretation")
# Words and lookups of words: nothing in there is a rule.
LEFT_OUT = {"catalogue.cpp"}
# Quick tests that tell much first. Random bytes take a hundred times as long and notice little that a row does
# not: they run with --random, on what the others left. What measures time is left out: a loaded machine would
# notice mutants that are none.
TIMED = "-Size.WorkGrowsWithThePitAndNotWithItsSquare:Hostile.TenThousand*"
RANDOM = "Hostile.Any*:*.HostileNumbers:Union.*"
TESTS = {
    "checking": [("unit/checking_test", TIMED + ":Size.*"), ("published/published_checking_test", "*"),
                 ("readings/readings_test", "*"), ("unit/checking_test", "Size.*" + TIMED)],
    "interpretation": [("unit/interpretation_said_test", "*"), ("unit/interpretation_test", TIMED + ":" + RANDOM),
                       ("published/interpretation_published_test", "*"), ("readings/readings_test", "*")],
}
HEADER = """#pragma once
#include <cstdlib>
#include <type_traits>
namespace firn::mutant {
inline int active() {
  static const int id = [] {
    const char* text = std::getenv("FIRN_MUTANT");
    return text == nullptr ? -1 : std::atoi(text);
  }();
  return id;
}
// A number, or the one above or below it; of those with a fraction, the one a hundredth larger or smaller.
template <int kUp, class T>
T number(T value) {
  const T step = std::is_floating_point_v<T> ? static_cast<T>(value / 100) : static_cast<T>(1);
  if (active() == kUp) return static_cast<T>(value + step);
  if (active() == kUp + 1) return static_cast<T>(value - step);
  return value;
}
enum class Is { less, less_equal, greater, greater_equal, equal, not_equal };
template <class A, class B>
bool holds(Is is, const A& a, const B& b) {
  if constexpr (std::is_arithmetic_v<A> && std::is_arithmetic_v<B>) {
    switch (is) {
      case Is::less: return a < b;
      case Is::less_equal: return a <= b;
      case Is::greater: return a > b;
      case Is::greater_equal: return a >= b;
      case Is::equal: return a == b;
      default: return a != b;
    }
  } else {
    switch (is) {
      case Is::equal: return a == b;
      case Is::not_equal: return !(a == b);
      default: break;
    }
    if constexpr (has_order<A, B>::value) {
      switch (is) {
        case Is::less: return a < b;
        case Is::less_equal: return !(b < a);
        case Is::greater: return b < a;
        default: return !(a < b);
      }
    }
    return false;
  }
}
template <int kId, Is kWas, Is kNeighbour, Is kOpposite>
struct Comparison {};
template <class A, int kId, Is kWas, Is kNeighbour, Is kOpposite>
struct Half {
  const A& a;
};
template <class A, int kId, Is kWas, Is kNeighbour, Is kOpposite>
Half<A, kId, kWas, kNeighbour, kOpposite> operator<(const A& a, Comparison<kId, kWas, kNeighbour, kOpposite>) {
  return {a};
}
template <class A, class B, int kId, Is kWas, Is kNeighbour, Is kOpposite>
bool operator<(const Half<A, kId, kWas, kNeighbour, kOpposite>& half, const B& b) {
  const Is is = active() == kId ? kNeighbour : active() == kId + 1 ? kOpposite : kWas;
  return holds(is, half.a, b);
}
template <class A, int kId, Is kWas, Is kNeighbour, Is kOpposite>
Half<A, kId, kWas, kNeighbour, kOpposite> operator==(const A& a,
                                                     Comparison<kId, kWas, kNeighbour, kOpposite>) {
  return {a};
}
template <class A, class B, int kId, Is kWas, Is kNeighbour, Is kOpposite>
bool operator==(const Half<A, kId, kWas, kNeighbour, kOpposite>& half, const B& b) {
  return holds(active() == kId ? kOpposite : kWas, half.a, b);
}
}  // namespace firn::mutant
"""
HEADER = HEADER.replace(
    "enum class Is",
    """template <class A, class B, class = void>
struct has_order : std::false_type {};
template <class A, class B>
struct has_order<A, B, std::void_t<decltype(std::declval<const A&>() < std::declval<const B&>()),
                                   decltype(std::declval<const B&>() < std::declval<const A&>())>>
    : std::true_type {};
enum class Is""",
).replace("#include <type_traits>", "#include <type_traits>\n#include <utility>")

# How a comparison is written so that it binds as before, and what becomes of it.
OPERATORS = {
    "<": ("<", "less", "less_equal", "greater_equal"),
    "<=": ("<", "less_equal", "less", "greater"),
    ">": ("<", "greater", "greater_equal", "less_equal"),
    ">=": ("<", "greater_equal", "greater", "less"),
    "==": ("==", "equal", "equal", "not_equal"),
    "!=": ("==", "not_equal", "not_equal", "equal"),
}
TOKEN = re.compile(r'"(?:\\.|[^"\\])*"|\'(?:\\.|[^\'\\])\'|//.*$|(?<= )(?:<=|>=|==|!=|<|>)(?= )'
                   r"|(?<![\w.'])(?:\d+\.\d+(?:e-?\d+)?|\d+e-?\d+|\d+u?)(?![\w.'])")


class Mutants:
    def __init__(self):
        self.places = []  # (file, line number, what)

    def new(self, count, file, line, what):
        first = len(self.places)
        self.places.extend((file, line, f"{what} -> {to}") for to in count)
        return first


def is_quiet(line):
    """Lines in which a number is no rule: sizes of arrays, template arguments, labels, other people's syntax."""
    stripped = line.strip()
    return (
        not stripped
        or stripped.startswith(("//", "#", "case ", "static_assert", "template", "enum ", "using ", "friend "))
        or "operator" in stripped
        or "static_cast<std::size_t>(firnbook::" in stripped
    )


def mutate_line(line, file, number, mutants):
    def change(match):
        token = match.group(0)
        if token[0] in "\"'/":
            return token
        before, after = line[: match.start()], line[match.end():]
        if token in OPERATORS:
            binds, was, neighbour, opposite = OPERATORS[token]
            if re.search(r"\bnullptr\b", after[:12]) or re.search(r"nullptr\s*$", before):
                return token
            kinds = [opposite] if binds == "==" else [neighbour, opposite]
            first = mutants.new(kinds, file, number, token)
            is_ = "::firn::mutant::Is::"
            return (f"{binds} ::firn::mutant::Comparison<{first}, {is_}{was}, {is_}{neighbour}, "
                    f"{is_}{opposite}>() {binds}")
        if re.search(r"\[\s*$", before) or re.search(r"\w<[\w:, ]*$", before) or "= default" in line:
            return token
        value = token.rstrip("u")
        to = [str(int(value) + 1), str(int(value) - 1)] if value.isdigit() else ["1 % more", "1 % less"]
        first = mutants.new(to, file, number, token)
        return f"::firn::mutant::number<{first}>({token})"

    return TOKEN.sub(change, line)


def at_run_time(line):
    """A switch is read when the program runs, so nothing that holds one can be a constant expression."""
    if "constexpr" not in line or "if constexpr" in line:
        return line
    if re.search(r"constexpr\s+[\w:<>,*& ]*?\b\w+\s*\(", line) and "=" not in line.split("(")[0]:
        return line.replace("inline constexpr", "inline").replace("constexpr", "inline")
    return line.replace("static constexpr", "static const").replace("constexpr", "const")


def transform(text, file, mutants, kept):
    out = ['#include "support/mutant.h"']
    for number, line in enumerate(text.split("\n"), 1):
        if (file, number) in kept:
            out.append(line)
            continue
        changed = at_run_time(line)
        if not is_quiet(changed):
            changed = mutate_line(changed, file, number, mutants)
        out.append(changed)
    return "\n".join(out)


def write_tree(tree, kept):
    mutants = Mutants()
    for module in MODULES:
        for path in sorted((ROOT / "core/src" / module).glob("*.[ch]*")):
            if not is_mutated(path):
                continue
            name = f"core/src/{module}/{path.name}"
            text = path.read_text()
            changed = transform(text, name, mutants, kept)
            if path.suffix == ".h":
                changed = changed.replace('#include "support/mutant.h"\n', "", 1).replace(
                    "#pragma once\n", '#pragma once\n#include "support/mutant.h"\n', 1)
            target = tree / name
            if not target.exists() or target.read_text() != changed:
                target.write_text(changed)
    return mutants


def is_mutated(path):
    return path.parent.name in MODULES and path.parent.parent.name == "src" and path.suffix in (".cpp", ".h") \
        and path.name not in LEFT_OUT


def copy_sources(tree):
    files = subprocess.run(["git", "-C", str(ROOT), "ls-files"], check=True, capture_output=True, text=True)
    for name in files.stdout.split("\n"):
        if not name or is_mutated(Path(name)):
            continue
        (tree / name).parent.mkdir(parents=True, exist_ok=True)
        if (ROOT / name).is_file():
            shutil.copy2(ROOT / name, tree / name)
    header = tree / "core/src/support/mutant.h"
    if not header.exists() or header.read_text() != HEADER:
        header.write_text(HEADER)


def targets():
    return sorted({Path(program).name for tests in TESTS.values() for program, _ in tests})


def lines_in_the_way(output, kept):
    """The lines of the compiler's errors; where nothing is left to undo in one, those of the constants it names:
    the size of an array is wrong where it stands, and the cause is the constant that became none."""
    lines = set()
    for match in re.finditer(r"(core/src/(?:%s)/\w+\.(?:cpp|h)):(\d+):\d+: error" % "|".join(MODULES), output):
        file, number = match.group(1), int(match.group(2)) - 1  # one line stands above the text as it was
        lines.add((file, number))
        if (file, number) not in kept:
            continue
        text = (ROOT / file).read_text().split("\n")
        for name in re.findall(r"\bk[A-Z]\w+", text[number - 1]):
            lines.update((file, i) for i, line in enumerate(text, 1) if re.search(rf"\b{name} =", line))
    return lines


def build(tree, jobs, kept):
    """Builds; answers the lines that cannot be told at run time, empty when all is well."""
    folder = tree / "build"
    if not (folder / "build.ninja").exists():
        subprocess.run(["cmake", "-S", str(tree), "-B", str(folder), "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug",
                        "-DFIRNBOOK_WITH_SPDLOG=OFF", "-DFIRNBOOK_WERROR=OFF",
                        "-DCMAKE_CXX_FLAGS=-O1 -g0 -w -Wno-narrowing -fpermissive"], check=True,
                       stdout=subprocess.DEVNULL)
    done = subprocess.run(["ninja", "-C", str(folder), "-k", "0", f"-j{jobs}", *targets()], capture_output=True,
                          text=True)
    if done.returncode == 0:
        return set()
    lines = lines_in_the_way(done.stdout, kept)
    if not lines:
        sys.exit(done.stdout[-4000:] + done.stderr[-2000:])
    return lines


# A mutant that never ends is stopped by the processor time it takes, whatever else the machine does; one that
# takes all memory, by its size.
LIMITED = 'ulimit -t "$0" && ulimit -v 4000000 && exec "$@"'
limits = {}


def run(tree, test, mutant):
    program, tests = test
    environment = dict(os.environ, FIRN_MUTANT=str(mutant), GTEST_FAIL_FAST="1", GTEST_BRIEF="1")
    command = ["sh", "-c", LIMITED, str(limits.get(test, 600)), str(tree / "build/tests" / program),
               f"--gtest_filter={tests}"]
    done = subprocess.run(command, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return done.returncode == 0


def run_without(tree):
    for test in {test for tests in TESTS.values() for test in tests}:
        before = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime
        if not run(tree, test, -1):
            sys.exit(f"{test} fails without a mutant")
        limits[test] = 2 + int(5 * (resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime - before))


def survives(tree, mutant, file):
    module = file.split("/")[2]
    return all(run(tree, test, mutant) for test in TESTS[module])


class Equivalents:
    """Mutants of which somebody says why no test can notice them: rows of equivalents.txt, each a file, a part
    of the line, the change and the reason. A row that fits no mutant that survives is out of date."""

    def __init__(self, path):
        rows = [line for line in path.read_text().split("\n") if line and not line.startswith("#")]
        self.rows = [tuple(part.strip() for part in row.split(" | ")) for row in rows]
        for row in self.rows:
            if len(row) != 4:
                sys.exit(f"{path.name}: four parts wanted: {row}")
        self.used = set()

    def reason(self, file, code, what):
        for row in self.rows:
            if file.endswith(row[0]) and row[1] in code and row[2] == what:
                self.used.add(row)
                return row[3]
        return None

    def stale(self, file_part):
        return [row for row in self.rows if row not in self.used and file_part in row[0]]


def write_survivors(path, head, survivors):
    lines = ["# Mutants that no test notices", "", head, "", "Written by `mutate.py --write`, without the tests of "
             "random bytes unless `--random` was given.", ""]
    for title, wanted in (("## Not noticed", False), ("## Cannot be noticed: the change changes nothing", True)):
        lines += [title, ""]
        for file, code, what, reason in survivors:
            if (reason is not None) == wanted:
                lines.append(f"- `{file}`: `{code}`, {what}" + (f": {reason}" if reason else ""))
        lines.append("")
    path.write_text("\n".join(lines).rstrip() + "\n")


def line_of(place):
    file, number = place
    lines = (ROOT / file).read_text().split("\n") if (ROOT / file).exists() else []
    return lines[number - 1] if number <= len(lines) else ""


def build_all(tree, jobs):
    """Lines that the compiler needed as they are the last time, and that are still the same, it needs again."""
    copy_sources(tree)
    memory = tree / "kept.json"
    before = json.loads(memory.read_text()) if memory.exists() else []
    kept = {(file, number) for file, number, text in before if line_of((file, number)) == text}
    while True:
        mutants = write_tree(tree, kept)
        more = build(tree, jobs, kept)
        if not more:
            memory.write_text(json.dumps([(*place, line_of(place)) for place in sorted(kept)]))
            return mutants, kept
        if more <= kept:
            sys.exit(f"these lines do not build: {sorted(more)}")
        kept |= more


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--keep", type=Path, default=ROOT / "build/mutation")
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    parser.add_argument("--only", default="", help="files whose path holds this")
    parser.add_argument("--every", type=int, default=1, help="a sample: every Nth mutant")
    parser.add_argument("--least", type=float, default=90)
    parser.add_argument("--random", action="store_true", help="random bytes too: takes half an hour more")
    parser.add_argument("--write", action="store_true", help="write survivors.md; for a run of all mutants")
    options = parser.parse_args()
    tree = options.keep.resolve()
    tree.mkdir(parents=True, exist_ok=True)
    mutants, kept = build_all(tree, options.jobs)
    if options.random:
        TESTS["interpretation"].append(("unit/interpretation_test", RANDOM))
    run_without(tree)
    chosen = [i for i, place in enumerate(mutants.places) if options.only in place[0]][:: options.every]
    known = Equivalents(HERE / "equivalents.txt")
    survivors = []
    with concurrent.futures.ThreadPoolExecutor(options.jobs) as pool:
        for i, alive in zip(chosen, pool.map(lambda i: survives(tree, i, mutants.places[i][0]), chosen)):
            if not alive:
                continue
            file, line, what = mutants.places[i]
            code = (ROOT / file).read_text().split("\n")[line - 1].strip()
            reason = known.reason(file, code, what)
            survivors.append((file.replace("core/src/", ""), code, what, reason))
            print(f"{file}:{line}: {code}: {what}" + (f" (equivalent: {reason})" if reason else ""), flush=True)
    equivalent = sum(1 for survivor in survivors if survivor[3])
    noticed = len(chosen) - len(survivors)
    percent = 100.0 * noticed / max(1, len(chosen))
    head = (f"{noticed} of {len(chosen)} mutants noticed ({percent:.1f} %), {len(survivors) - equivalent} not, "
            f"{equivalent} cannot be; {len(kept)} lines left as they are because the compiler needs them.")
    print(head)
    if options.every == 1:
        for row in known.stale(options.only):
            print("equivalents.txt: fits no survivor: " + " | ".join(row))
    if options.write:
        write_survivors(HERE / "survivors.md", head, survivors)
    return 0 if percent >= options.least else 1


if __name__ == "__main__":
    sys.exit(main())

"""Reads vCards with other people's programs (vobject, ical.js), and by the rules of RFC 6350 that neither asks for.

usage: vcards.py FOLDER NPM      FOLDER holds pairs NAME.vcf and NAME.json, the list of what its cards were made from:
                                 KINSHEAF_CARDS=FOLDER cargo test contacts::card; NPM is a folder with ical.js in it
Needs vobject (PyPI) for this Python and Node. Sections are those of IETF RFC 6350 (2011) unless another is named.

One line per check; the last line counts.
"""

import json
import re
import subprocess
import sys
from pathlib import Path

import vobject

HERE = Path(__file__).parent
# How often a property may stand in a card: sections 6.1.4, 6.2.2, 6.7.9, 6.7.6, 6.7.4, 6.2.1.
AT_MOST_ONE = ["KIND", "N", "VERSION", "UID", "REV", "PRODID"]
KINDS = ["individual", "group", "org", "location"]
# RFC 3966, section 3: a global number, and an extension of digits. E.164 allows 15 digits.
TEL = re.compile(r"tel:\+\d{3,15}(;ext=\d+)?")
UUID = re.compile(r"urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
LINE = re.compile(r"(?P<name>[A-Z-]+)(?P<params>(;[A-Z-]+=[^;:\"]+)*):(?P<value>.*)", re.S)
passed = failed = 0


def check(card, promise, kept, why=""):
    global passed, failed
    passed, failed = passed + bool(kept), failed + (not kept)
    print(f"{'ok  ' if kept else 'FAIL'} {card}: {promise}{'' if kept else f': {why}'}")


def unescaped(text):
    """Section 3.4, read from left to right: an escaped backslash escapes nothing."""
    return re.sub(r"\\(.)", lambda m: "\n" if m[1] in "nN" else m[1], text, flags=re.S)


def parts(value):
    """A compound value at the semicolons that are not escaped."""
    return [unescaped(part) for part in re.findall(r"((?:[^;\\]|\\.)*)(?:;|$)", value, re.S)[: value.count(";") + 1]]


def is_utf8(line):
    try:
        line.decode("utf-8")
        return True
    except UnicodeDecodeError:
        return False


def look_at_lines(name, raw):
    """The bytes: ends of lines, their length, and no letter cut between two."""
    check(name, "every line ends in CR LF, and no CR or LF stands alone (3.2)", raw.endswith(b"\r\n") and not re.search(rb"\r(?!\n)|(?<!\r)\n", raw))
    physical = raw.split(b"\r\n")[:-1]
    long = [line for line in physical if len(line) > 75]
    check(name, "no line is longer than 75 octets (3.2)", not long, long[:2])
    cut = [line for line in physical if not is_utf8(line)]
    check(name, "each line is UTF-8 by itself: no letter is cut (3.2)", not cut, cut[:2])
    bare = [line for line in physical if not line.strip()]
    check(name, "no line is empty", not bare)


def look_at_card(name, lines):
    """One card by the rules of the standard; gives its properties as [name, parameters, value]."""
    matched = [LINE.fullmatch(line) for line in lines]
    check(name, "each line is a property (3.3)", all(matched), [line for line, it in zip(lines, matched) if not it])
    found = [(it["name"], it["params"], it["value"]) for it in matched if it]
    names = [it[0] for it in found]
    check(name, "begins, says its version right after, and ends (6.1.1, 6.7.9)", lines[:2] == ["BEGIN:VCARD", "VERSION:4.0"] and lines[-1] == "END:VCARD", lines[:2])
    check(name, "begins and ends once", names.count("BEGIN") == names.count("END") == 1, names)
    check(name, "has a name to show (6.2.1)", any(it[0] == "FN" and it[2].strip() for it in found))
    many = [it for it in AT_MOST_ONE if names.count(it) > 1]
    check(name, "what may stand once does not stand twice", not many, many)
    value = {it[0]: it[2] for it in found}
    check(name, "its kind is one of the standard's (6.1.4)", value.get("KIND", "individual") in KINDS, value.get("KIND"))
    check(name, "its UID is a UUID as a URN (6.7.6; RFC 9562)", UUID.fullmatch(value.get("UID", "")), value.get("UID"))
    check(name, "its REV is a moment in UTC (4.3.5)", re.fullmatch(r"\d{8}T\d{6}Z", value.get("REV", "")), value.get("REV"))
    sizes = {"N": 5, "ADR": 7}
    wrong = [(it[0], it[2]) for it in found if len(parts(it[2])) != sizes.get(it[0], len(parts(it[2])))]
    check(name, "names have five parts and addresses seven (6.2.2, 6.3.1)", not wrong, wrong)
    numbers = [it for it in found if it[0] == "TEL"]
    wrong = [it for it in numbers if "VALUE=uri" in it[1] and not TEL.fullmatch(it[2])]
    wrong += [it for it in numbers if "VALUE=uri" not in it[1] and ("VALUE=text" not in it[1] or it[2].startswith("tel:"))]
    check(name, "a number is a global tel link or says that it is text (6.4.1; RFC 3966)", not wrong, wrong)
    return found


def told(found):
    """The same keys as the source has."""
    of = lambda name: [it[2] for it in found if it[0] == name]
    one = lambda name: unescaped(of(name)[0]) if of(name) else None
    return {
        "fn": one("FN"), "kind": one("KIND"), "n": parts(of("N")[0])[1] if of("N") else None, "org": one("ORG"),
        "tel": [unescaped(it) for it in of("TEL")], "email": one("EMAIL"), "adr": parts(of("ADR")[0])[2] if of("ADR") else None,
        "tz": one("TZ"), "note": one("NOTE"), "categories": one("CATEGORIES"), "rev": one("REV"),
    }


def flat(value):
    while isinstance(value, list):
        value = value[0] if len(value) == 1 else " ".join(value)
    return value


def by_ical(file, npm):
    out = subprocess.run(["node", HERE / "vcards.mjs", file, npm], capture_output=True, timeout=60, check=True).stdout
    cards = []
    for card in json.loads(out):
        of = lambda name: [it[3] for it in card["properties"] if it[0] == name]
        one = lambda name: flat(of(name)[0]) if of(name) else None
        cards.append({
            "fn": one("fn"), "kind": one("kind"), "n": of("n")[0][1] if of("n") else None, "org": one("org"),
            "tel": of("tel"), "email": one("email"), "adr": of("adr")[0][2] if of("adr") else None,
            "tz": one("tz"), "note": one("note"), "categories": one("categories"),
            "rev": re.sub("[-:]", "", one("rev")),
        })
    return cards


def by_vobject(text):
    cards = []
    for card in vobject.readComponents(text):
        of = lambda name: [line.value for line in card.lines() if line.name == name]
        one = lambda name: flat(of(name)[0]) if of(name) else None
        cards.append({
            "fn": one("FN"), "kind": one("KIND"), "n": of("N")[0].given if of("N") else None, "org": one("ORG"),
            "tel": of("TEL"), "email": one("EMAIL"), "adr": of("ADR")[0].street if of("ADR") else None,
            "tz": one("TZ"), "note": one("NOTE"), "categories": one("CATEGORIES"), "rev": one("REV"),
        })
    return cards


def compare(name, reader, read, sources):
    check(name, f"{reader} finds {len(sources)} cards", len(read) == len(sources), len(read))
    for found, source in zip(read, sources):
        # ical.js 2.2.1 takes the semicolon after an escaped backslash for an escaped one, and so joins two parts.
        if reader == "ical.js" and source["fn"].endswith("\\"):
            continue
        wrong = {key: (found.get(key), wanted) for key, wanted in source.items() if found.get(key) != wanted}
        check(name, f"{reader} reads what was typed of {source['fn'][:24]!r}", not wrong, str(wrong)[:600])


def look_at(file, npm):
    name, raw = file.stem, file.read_bytes()
    sources = json.loads(file.with_suffix(".json").read_text())
    look_at_lines(name, raw)
    lines = raw.decode("utf-8", "replace").replace("\r\n ", "").split("\r\n")[:-1]
    starts = [at for at, line in enumerate(lines) if line == "BEGIN:VCARD"] + [len(lines)]
    own = [told(look_at_card(name, lines[a:b])) for a, b in zip(starts, starts[1:])]
    compare(name, "the standard", own, sources)
    compare(name, "ical.js", by_ical(file, npm), sources)
    compare(name, "vobject", by_vobject(raw.decode("utf-8", "replace")), sources)


def main():
    found = sorted(Path(sys.argv[1]).glob("*.vcf"))
    for file in found:
        look_at(file, sys.argv[2])
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not found else 0


if __name__ == "__main__":
    sys.exit(main())

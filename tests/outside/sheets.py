"""Looks at printed sheets with other people's eyes: qpdf, poppler and pdfua.

usage: sheets.py FOLDER      FOLDER holds pairs NAME.pdf and NAME.json, the data the sheet was made from:
                             KINSHEAF_SAMPLES=FOLDER cargo test samples
Needs qpdf and poppler-utils (Debian) and pdfua (PyPI) for this Python. pdfua sees 12 kinds of fault and certifies nothing; its
rule UA-14-001 stumbles over arrays among table attributes and is passed over by pdfua itself.

One line per check; the last line counts. Paper sizes and the clear binding edge: US Letter 612 x 792 pt, A4 (ISO 216)
595.28 x 841.89 pt, 0.75 in kept clear for a three-hole punch (common practice, no source).
"""

import json
import re
import subprocess
import sys
import unicodedata
from pathlib import Path

SIZES = {"us-letter": (612, 792), "a4": (595.28, 841.89)}
BINDING = 54  # 0.75 in, in points
HEAD, FOOT = 64, 76  # what the running head and the foot may take of a page, in points
LARGE_HEAD, LARGE_FOOT = 106, 106  # the same of a sheet in large print
CARD, MARK = (252, 144), 13  # a business card, and the length of the marks at its corners, in points
NOT_WORDS = {"paper", "lang", "printed_on"}
passed = failed = 0


def check(sheet, promise, kept, why=""):
    global passed, failed
    passed, failed = passed + bool(kept), failed + (not kept)
    print(f"{'ok  ' if kept else 'FAIL'} {sheet}: {promise}{'' if kept else f': {why}'}")


def run(*command):
    done = subprocess.run([str(part) for part in command], capture_output=True, timeout=120)
    return done.returncode, done.stdout.decode("utf-8", "replace"), done.stderr.decode("utf-8", "replace")


def squeezed(text):
    """Text as a reader knows it: composed, without white space, control and format characters (joiners, bidi marks)."""
    return "".join(c for c in unicodedata.normalize("NFC", text) if not c.isspace() and unicodedata.category(c) not in ("Cc", "Cf"))


def pages_of(pdf, count, box=()):
    return [squeezed(run("pdftotext", "-raw", "-enc", "UTF-8", "-r", 72, *box, "-f", n, "-l", n, pdf, "-")[1]) for n in range(1, count + 1)]


def strings(value):
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, item in value.items():
            if key not in NOT_WORDS:
                yield from strings(item)
    elif isinstance(value, list):
        for item in value:
            yield from strings(item)


def boxed(text, drawn):
    """`text` with what was drawn nowhere as the sheet shows it: one box for a letter and the marks that go with it."""
    marks = lambda c: unicodedata.combining(c) or "\ufe00" <= c <= "\ufe0f"
    return "".join(c if c in drawn else "" if marks(c) else "□" for c in text)


def parts(text):
    """Right to left, the program that reads the text back orders words by sight: there each run of letters is looked for alone."""
    if any(unicodedata.bidirectional(c) in ("R", "AL") for c in text):
        return re.findall(r"\w+", text)
    return [text]


def stands_in(text, pages):
    """Whole on one page, or in pieces of six letters and more on pages that follow each other."""
    return any(begins_on(text, pages[place:]) for place in range(len(pages)))


def begins_on(text, pages):
    if not pages or text in pages[0]:
        return bool(pages)
    piece = next((n for n in range(len(text) - 1, 5, -1) if text[:n] in pages[0]), 0)
    return piece > 0 and begins_on(text[piece:], pages[1:])


def words(pdf):
    _, out, _ = run("pdftotext", "-bbox", pdf, "-")
    return [(float(x), text) for x, text in re.findall(r'<word xMin="([-\d.]+)"[^>]*>(.*?)</word>', out)]


def fonts(pdf):
    _, out, _ = run("pdffonts", pdf)
    return [line.split() for line in out.splitlines()[2:]]


def look_at(pdf):
    name, data = pdf.stem, json.loads(pdf.with_suffix(".json").read_text())
    code, out, err = run("qpdf", "--check", pdf)
    check(name, "qpdf finds no fault", code == 0, out + err)

    _, info, _ = run("pdfinfo", "-f", 1, "-l", 999, pdf)
    count = int(re.search(r"^Pages:\s+(\d+)", info, re.M).group(1))
    check(name, "tagged", re.search(r"^Tagged:\s+yes", info, re.M), info)
    check(name, "carries its title", re.search(rf"^Title:\s+{re.escape(data['title'])}", info, re.M), info)
    check(name, "carries the date it was printed on", data["printed_on"] in run("pdfinfo", "-isodates", pdf)[1], info)
    check(name, "claims PDF/UA-1", "<pdfuaid:part>1</pdfuaid:part>" in run("pdfinfo", "-meta", pdf)[1])

    wide, high = SIZES[data["paper"]]
    sizes = [tuple(map(float, pair)) for pair in re.findall(r"^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+)", info, re.M)]
    right = all(abs(x - wide) < 0.1 and abs(y - high) < 0.1 for x, y in sizes)
    check(name, f"each page is {data['paper']}", len(sizes) == count and right, sizes)

    check_type(name, pdf)
    if data["title"] == "Wallet card":
        check_card(name, pdf)
    check_words(name, pdf, data, count, int(high))

    code, out, err = run(sys.executable, "-m", "pdfua", "check", pdf)
    check(name, "pdfua finds no fault", code == 0 and "PASS" in out, out + err)


def check_type(name, pdf):
    rows = fonts(pdf)
    check(name, "every font is in the file and maps back to text", rows and all(row[-5:-2] == ["yes"] * 3 for row in rows), rows)
    placed = words(pdf)
    check(name, "the binding edge is clear", placed and min(x for x, _ in placed) >= BINDING, [w for w in placed if w[0] < BINDING])


def check_words(name, pdf, data, count, high):
    whole = pages_of(pdf, count)
    owner = [squeezed(part) for part in (data["person"]["name"], data["person"]["born"], data["print"]["code"], data["print"]["at"])]
    bare = [n for n, page in enumerate(whole, 1) if not all(part in page for part in owner) or f"Page{n}of{count}" not in page]
    check(name, "each page says whose it is, when printed, and which of how many", not bare, f"pages {bare}")

    head, foot = (LARGE_HEAD, LARGE_FOOT) if "sharers" in data else (HEAD, FOOT)
    body = pages_of(pdf, count, ("-x", 0, "-y", head, "-W", 700, "-H", high - head - foot))
    drawn = set("".join(whole))
    wanted = [boxed(squeezed(part), drawn) for text in strings(data) for part in parts(text)]
    lost = [text for text in wanted if not stands_in(text, body) and not all(text in page for page in whole)]
    check(name, f"all that was given is printed ({len(wanted)} strings)", wanted and not lost, lost[:5])
    if "taking" in data.get("medicines", {}):
        meant = f"{len(data['medicines']['taking'])}medicine"
        check(name, "the medicines are counted", not data["medicines"]["taking"] or meant in "".join(body), meant)


def card_of(pdf):
    """Where the card lies on the first page, by its marks: left, top, right, bottom, and the height of its fold."""
    _, svg, _ = run("pdftocairo", "-svg", "-f", 1, "-l", 1, pdf, "-")
    marks, fold = [], None
    number = r"(-?[\d.]+)"
    for path in re.findall(r"<path [^>]*stroke-width[^>]*>", svg):
        to = re.search(rf'd="M {number} {number} L {number} {number} "', path)
        at = re.search(rf'transform="matrix\({number},0,0,{number},{number},{number}\)"', path)
        if not to or not at:
            continue
        x0, y0, x1, y1 = map(float, to.groups())
        # A4 is no whole number of points: there the whole drawing is a little smaller.
        wide, high, left, top = map(float, at.groups())
        left, top = left / wide, top / high
        if "dasharray" in path:
            fold = (left + x0, left + x1, top + y0)
        elif abs(abs(x1 - x0) + abs(y1 - y0) - MARK) < 0.1:
            marks.append((left + x0, top + y0, x1 - x0, y1 - y0))
    return marks, fold


def check_card(name, pdf):
    """A business card is 3.5 x 2 in; this one is two of them above each other, to be folded."""
    marks, fold = card_of(pdf)
    down = sorted({round(x, 1) for x, _, dx, _ in marks if abs(dx) < 0.1})
    across = sorted({round(y, 1) for _, y, _, dy in marks if abs(dy) < 0.1})
    check(name, "eight marks at four corners", len(marks) == 8 and len(down) == 2 and len(across) == 2, marks)
    if len(down) != 2 or len(across) != 2 or not fold:
        return check(name, "a line to fold on", False, fold)
    (left, right), (top, bottom) = down, across
    size = (right - left, bottom - top)
    check(name, "the card is 252 x 288 pt", abs(size[0] - CARD[0]) < 0.3 and abs(size[1] - 2 * CARD[1]) < 0.3, size)
    middle = abs(fold[0] - left) < 0.3 and abs(fold[1] - right) < 0.3 and abs(fold[2] - top - CARD[1]) < 0.3
    check(name, "folded, it is 252 x 144 pt", middle, fold)
    _, out, _ = run("pdftotext", "-bbox", "-f", 1, "-l", 1, pdf, "-")
    found = re.findall(r'<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)</word>', out)
    lying = [(*map(float, it[:4]), it[4]) for it in found]
    on = [it for it in lying if it[3] > top + 1 and it[1] < bottom - 1]
    outside = [it for it in on if it[0] < left + 2 or it[2] > right - 2 or it[1] < top or it[3] > bottom]
    over = [it for it in on if it[1] < fold[2] - 1 < fold[2] + 1 < it[3]]
    check(name, f"each of {len(on)} words on the card lies inside it", on and not outside, outside)
    check(name, "no word lies on the fold", not over, over)


def main():
    found = sorted(Path(sys.argv[1]).glob("*.pdf"))
    for pdf in found:
        look_at(pdf)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not found else 0


if __name__ == "__main__":
    sys.exit(main())

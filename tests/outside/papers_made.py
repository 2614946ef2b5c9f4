"""Makes papers of twelve kinds as a phone or a scanner gives them, with what truly stands on each.

usage: papers_made.py FOLDER [--held-out 140] [--seed 20261126]

60 papers to be confirmed, and held-out ones of the same mixture of kinds that share no layout and no wording with them
(`papers_words.py`). Each is drawn at 200 dots an inch, then turned by up to 1.5 degrees, blurred and sown with noise.
All people, places and numbers are invented. FOLDER gets the pictures and papers.json.
"""

import argparse
import json
import random
from datetime import date, timedelta
from pathlib import Path

from PIL import Image, ImageDraw, ImageFilter, ImageFont
from papers_words import KINDS

DPI = 200
WIDTH, HEIGHT = int(8.5 * DPI), 11 * DPI
FONTS = Path("/usr/share/fonts/truetype")
FACES = {
    "serif": "liberation/LiberationSerif", "sans": "liberation/LiberationSans", "mono": "liberation/LiberationMono",
    "dejavu": "dejavu/DejaVuSans", "dejavu serif": "dejavu/DejaVuSerif", "narrow": "liberation/LiberationSansNarrow",
}
TODAY = date(2026, 11, 25)
PERSON = "Ottoline Varga"
STREET = ["12 Harbor Street", "Duluth, Minnesota"]
CONFIRMED = 60
TURN, BLUR, NOISE = 1.5, (0.3, 1.0), (4, 16)


def face(name, points, bold=False):
    plain = "" if name.startswith("dejavu") else "-Regular"
    return ImageFont.truetype(FONTS / f"{FACES[name]}{'-Bold' if bold else plain}.ttf", round(points * DPI / 72))


class Sheet:
    """A page, and the words that were put on it."""

    def __init__(self):
        self.image = Image.new("L", (WIDTH, HEIGHT), 255)
        self.draw = ImageDraw.Draw(self.image)
        self.lines = []

    def put(self, x, y, text, font, most=None):
        """Text from x on, broken where it is wider than most; gives where it ends."""
        words, line = text.split(), ""
        rows = []
        for word in words:
            longer = f"{line} {word}".strip()
            if line and self.draw.textlength(longer, font) > (most or WIDTH):
                rows.append(line)
                line = word
            else:
                line = longer
        for row in [*rows, line]:
            self.draw.text((x, y), row, 20, font)
            self.lines.append(row)
            y += round(font.size * 1.35)
        return y

    def middle(self, y, text, font):
        return self.put((WIDTH - self.draw.textlength(text, font)) / 2, y, text, font)

    def right(self, y, text, font):
        return self.put(WIDTH - 200 - self.draw.textlength(text, font), y, text, font)


def left_head(s, it):
    y = s.put(200, 160, it["sender"], face("sans", 20, True))
    y = s.put(200, y, f"{it['street']} · {it['phone']}", face("sans", 9))
    s.draw.line((200, y + 20, WIDTH - 200, y + 20), 60, 3)
    y = s.put(200, y + 90, PERSON, face("sans", 11))
    for row in STREET:
        y = s.put(200, y, row, face("sans", 11))
    y = s.put(200, y + 60, it["day"], face("sans", 11))
    y = s.put(200, y + 70, it["heading"], face("sans", 14, True)) if it["heading"] else y + 40
    for row in it["rows"]:
        y = s.put(200, y + 22, row, face("sans", 11), 1250)


def middle_head(s, it):
    y = s.middle(150, it["sender"].upper(), face("serif", 18, True))
    y = s.middle(y, it["street"], face("serif", 10))
    y = s.middle(y, f"Telephone {it['phone']}", face("serif", 10))
    y = s.put(220, y + 90, f"Date: {it['day']}", face("serif", 12))
    y = s.put(220, y + 20, f"Re: {PERSON}", face("serif", 12))
    y = s.put(220, y + 60, it["heading"], face("serif", 15, True)) if it["heading"] else y + 30
    for row in it["rows"]:
        y = s.put(220, y + 26, row, face("serif", 12), 1230)


def printout(s, it):
    y = s.put(160, 140, it["sender"], face("mono", 12, True))
    y = s.put(160, y, f"{it['street']}  {it['phone']}", face("mono", 9))
    y = s.put(160, y + 50, f"NAME: {PERSON}", face("mono", 10))
    y = s.put(160, y, f"DATE: {it['day']}", face("mono", 10))
    y = s.put(160, y + 50, it["heading"].upper(), face("mono", 12)) if it["heading"] else y + 30
    for row in it["rows"]:
        y = s.put(160, y + 14, row, face("mono", 10), 1380)


def right_head(s, it):
    y = s.right(170, it["sender"], face("dejavu serif", 15, True))
    y = s.right(y, it["street"], face("dejavu serif", 8))
    y = s.right(y, it["phone"], face("dejavu serif", 8))
    y = s.right(y + 80, it["day"], face("dejavu serif", 10))
    y = s.put(240, y + 10, f"To {PERSON}", face("dejavu serif", 10))
    y = s.put(240, y, ", ".join(STREET), face("dejavu serif", 10))
    y = s.put(240, y + 90, it["heading"], face("dejavu serif", 13)) if it["heading"] else y + 60
    for row in it["rows"]:
        y = s.put(240, y + 30, row, face("dejavu serif", 10), 1200)


def boxes(s, it):
    s.draw.rectangle((150, 130, WIDTH - 150, 300), outline=40, width=4)
    y = s.put(180, 150, it["sender"], face("dejavu", 16, True))
    s.put(180, y + 4, f"{it['street']} | {it['phone']}", face("dejavu", 8))
    y = s.put(150, 350, it["heading"], face("dejavu", 13, True)) if it["heading"] else 350
    y = s.put(150, y + 20, f"Issued {it['day']} for {PERSON}", face("dejavu", 10)) + 20
    for row in it["rows"]:
        top = y
        y = s.put(180, y + 16, row, face("dejavu", 9), 1300)
        s.draw.rectangle((150, top, WIDTH - 150, y + 10), outline=150, width=2)
        y += 10


def narrow_foot(s, it):
    y = s.put(300, 200, it["heading"], face("narrow", 22, True)) if it["heading"] else 200
    y = s.put(300, y + 30, f"{PERSON}, {STREET[1]}", face("narrow", 12))
    y = s.put(300, y + 10, it["day"], face("narrow", 12))
    y += 40
    for row in it["rows"]:
        y = s.put(300, y + 24, row, face("narrow", 12), 1100)
    s.draw.line((300, y + 70, WIDTH - 300, y + 70), 90, 2)
    s.put(300, y + 90, f"{it['sender']}, {it['street']}, {it['phone']}", face("narrow", 10), 1100)


LAYOUTS = {True: [left_head, middle_head, printout], False: [right_head, boxes, narrow_foot]}


def said(day, how):
    """A day as papers write it."""
    return {
        "us": f"{day:%B} {day.day}, {day.year}", "plain": f"{day.day} {day:%B} {day.year}",
        "slashes": f"{day.month}/{day.day}/{day.year}", "iso": day.isoformat(), "short": f"{day:%b} {day.day}, {day.year}",
    }[how]


def words_of(chance, wording, slots):
    heading, sentences = wording
    first, rest = sentences[:1], sentences[1:]
    kept = sorted(chance.sample(range(len(rest)), min(len(rest), chance.randint(4, 6))))
    fill = lambda text: text.format(**{key: value() for key, value in slots.items()})
    return fill(heading), [fill(it) for it in [*first, *(rest[at] for at in kept)]]


def paper(chance, kind, confirmed):
    _, senders, known, unknown = KINDS[kind]
    how = chance.choice(["us", "us", "plain", "slashes", "iso", "short"])
    day = TODAY - timedelta(chance.randint(1, 900))
    near = lambda back, forth: said(TODAY + timedelta(chance.randint(-back, forth)), how)
    sender, phone = chance.choice(senders), f"218-555-01{chance.randint(0, 99):02}"
    slots = {
        "person": lambda: PERSON, "sender": lambda: sender, "phone": lambda: phone,
        "day": lambda: near(-5, 60), "past": lambda: near(900, -900 + 890),
        "money": lambda: f"${chance.randint(3, 900)}.{chance.randint(0, 99):02}",
        "number": lambda: str(chance.randint(100_000, 99_999_999)),
    }
    wording = chance.randrange(2)
    heading, rows = words_of(chance, (known if confirmed else unknown)[wording], slots)
    layout = chance.choice(LAYOUTS[confirmed])
    sheet = Sheet()
    layout(sheet, {"sender": sender, "street": f"{chance.randint(1, 90)} Canal Street, Duluth", "phone": phone,
                   "day": said(day, how), "heading": heading, "rows": rows})
    told = {"kind": kind, "confirmed": confirmed, "sender": sender, "dated": day.isoformat(), "written": said(day, how),
            "template": f"{layout.__name__}, wording {wording}", "text": "\n".join(sheet.lines)}
    return worn(chance, sheet.image), told


def worn(chance, image):
    """As it comes: a little crooked, not quite sharp, with the grain of a sensor."""
    turn, blur, noise = chance.uniform(-TURN, TURN), chance.uniform(*BLUR), chance.uniform(*NOISE)
    image = image.rotate(turn, Image.Resampling.BICUBIC, fillcolor=255).filter(ImageFilter.GaussianBlur(blur))
    # Effects draw on a chance of their own: bytes of ours keep a seed's papers the same.
    grain = Image.frombytes("L", (WIDTH // 2, HEIGHT // 2), chance.randbytes(WIDTH // 2 * (HEIGHT // 2)))
    grain = grain.resize(image.size, Image.Resampling.BILINEAR)
    share = noise / 73.9  # the standard deviation of even bytes
    return Image.blend(image, Image.blend(image, grain, 0.5), min(1.0, 2 * share))


def mixture(many):
    """So many papers of each kind, in the proportions of the confirmed ones."""
    whole = {kind: max(1, round(it[0] * many / CONFIRMED)) for kind, it in KINDS.items()}
    commonest = max(whole, key=whole.get)
    whole[commonest] += many - sum(whole.values())
    return [kind for kind, of in whole.items() for _ in range(of)]


def main():
    ask = argparse.ArgumentParser()
    ask.add_argument("folder", type=Path)
    ask.add_argument("--confirmed", type=int, default=CONFIRMED)
    ask.add_argument("--held-out", type=int, default=140)
    ask.add_argument("--seed", type=int, default=20261126)
    asked = ask.parse_args()
    chance = random.Random(asked.seed)
    asked.folder.mkdir(parents=True, exist_ok=True)
    all_ = [(kind, True) for kind in mixture(asked.confirmed)] + [(kind, False) for kind in mixture(asked.held_out)]
    chance.shuffle(all_)
    told = []
    for at, (kind, confirmed) in enumerate(all_):
        image, it = paper(chance, kind, confirmed)
        # Some come as a PDF that holds nothing but the picture, as scanners make them.
        it["file"] = f"{at:03}.{'pdf' if at % 8 == 0 else 'png'}"
        image.save(asked.folder / it["file"], **({"resolution": DPI} if at % 8 == 0 else {"dpi": (DPI, DPI)}))
        told.append(it)
    about = f"{DPI} dpi, turned by up to {TURN} degrees, blur {BLUR[0]} to {BLUR[1]} pixels, noise of {NOISE[0]} to {NOISE[1]} levels of 255"
    made = {"seed": asked.seed, "made": about, "papers": told}
    (asked.folder / "papers.json").write_text(json.dumps(made, indent=1, ensure_ascii=False))
    print(f"{len(told)} papers, seed {asked.seed}: {about}")


if __name__ == "__main__":
    main()

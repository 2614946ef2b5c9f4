"""Photographs letters twice, and others that look much like them, to see which of them a rule calls the same paper.

usage: papers_alike.py FOLDER [--letters 16] [--seed 20261126]

Of each letter four pictures: two of the letter itself, one of another letter of the same sender, layout and length
("other"), and one of the next of its kind, in which only the day and the numbers differ ("next"). The wordings are those
of `papers_words.py`. FOLDER gets the pictures and alike.json. How a picture is taken is drawn from the ranges below.
"""

import argparse
import json
import random
from datetime import timedelta
from pathlib import Path

from PIL import Image, ImageChops, ImageEnhance, ImageFilter
from papers_made import DPI, KINDS, LAYOUTS, PERSON, TODAY, Sheet, said

TURN, SHIFT = 2.0, 0.015
SCALE, BRIGHT, SHADE = (0.6, 1.2), (0.7, 1.1), 0.25
BLUR, NOISE, QUALITY = (0.3, 1.0), (4, 16), (45, 95)
# How a phone lays a picture on its side: the mark of EXIF and the turn that it stands for (TIFF 6.0, tag 274).
ASIDE = {1: 0, 3: 180, 6: 90, 8: 270}


def sheet(layout, it):
    drawn = Sheet()
    layout(drawn, it)
    return drawn.image, "\n".join(drawn.lines)


def filled(chance, wording, day, sender, phone):
    """The words of a wording, each place in it filled in anew."""
    slots = {
        "person": lambda: PERSON, "sender": lambda: sender, "phone": lambda: phone, "day": lambda: said(day, "us"),
        "past": lambda: said(day - timedelta(chance.randint(20, 400)), "us"),
        "money": lambda: f"${chance.randint(3, 900)}.{chance.randint(0, 99):02}",
        "number": lambda: str(chance.randint(100_000, 99_999_999)),
    }
    fill = lambda text: text.format(**{key: value() for key, value in slots.items()})
    heading, sentences = wording
    return {"heading": fill(heading), "rows": [fill(it) for it in sentences], "day": said(day, "us"), "sender": sender, "phone": phone}


def of_one(chance, at):
    """A letter, another like it, and the next of its kind."""
    kind = sorted(KINDS)[at % len(KINDS)]
    _, senders, known, unknown = KINDS[kind]
    layouts = [*LAYOUTS[True], *LAYOUTS[False]]
    layout, sender, phone = layouts[at % len(layouts)], chance.choice(senders), f"218-555-01{chance.randint(0, 99):02}"
    street = {"street": f"{chance.randint(1, 90)} Canal Street, Duluth"}
    heading, sentences = chance.choice(known + unknown)
    some = (heading, sorted(chance.sample(sentences, min(5, len(sentences))), key=sentences.index))
    # Under the same heading, as many sentences of any other paper of that kind.
    others = [it for _, all_ in known + unknown for it in all_ if it not in some[1]]
    other = (heading, chance.sample(others, min(len(some[1]), len(others))))
    day = TODAY - timedelta(chance.randint(40, 900))
    later = day + timedelta(30)
    made = lambda wording, on: sheet(layout, filled(chance, wording, on, sender, phone) | street)
    return kind, layout.__name__, {"letter": made(some, day), "other": made(other, later), "next": made(some, later)}


def taken(chance, image):
    """A photograph of a sheet: crooked, off the middle, in uneven light, with grain; and how a phone marks it."""
    turn, zoom = chance.uniform(-TURN, TURN), chance.uniform(*SCALE)
    image = image.rotate(turn, Image.Resampling.BICUBIC, fillcolor=255)
    shift = lambda side: round(chance.uniform(-SHIFT, SHIFT) * side)
    image = image.transform(image.size, Image.Transform.AFFINE, (1, 0, shift(image.width), 0, 1, shift(image.height)), fillcolor=255)
    image = image.resize((round(image.width * zoom), round(image.height * zoom)), Image.Resampling.LANCZOS)
    # The light falls off to one side.
    light = Image.linear_gradient("L").rotate(chance.choice((0, 90, 180, 270))).resize(image.size)
    image = ImageChops.multiply(image, light.point(lambda it: 255 - round(it * chance_shade)) if (chance_shade := chance.uniform(0, SHADE)) else light)
    image = ImageEnhance.Brightness(image).enhance(chance.uniform(*BRIGHT)).filter(ImageFilter.GaussianBlur(chance.uniform(*BLUR)))
    grain = Image.frombytes("L", (image.width // 2, image.height // 2), chance.randbytes((image.width // 2) * (image.height // 2)))
    share = chance.uniform(*NOISE) / 73.9  # the standard deviation of even bytes
    image = Image.blend(image, Image.blend(image, grain.resize(image.size, Image.Resampling.BILINEAR), 0.5), min(1.0, 2 * share))
    mark = chance.choice(sorted(ASIDE))
    return image.rotate(ASIDE[mark], expand=True), mark, chance.randint(*QUALITY)


def main():
    ask = argparse.ArgumentParser()
    ask.add_argument("folder", type=Path)
    ask.add_argument("--letters", type=int, default=16)
    ask.add_argument("--seed", type=int, default=20261126)
    asked = ask.parse_args()
    chance = random.Random(asked.seed)
    asked.folder.mkdir(parents=True, exist_ok=True)
    told = []
    for at in range(asked.letters):
        kind, layout, all_ = of_one(chance, at)
        for what, (image, text) in [("letter", all_["letter"]), ("again", all_["letter"]), ("other", all_["other"]), ("next", all_["next"])]:
            picture, mark, quality = taken(chance, image)
            exif = Image.Exif()
            exif[274] = mark
            file = f"{at:03}-{what}.jpg"
            picture.save(asked.folder / file, quality=quality, exif=exif)
            told.append({"letter": at, "what": what, "file": file, "kind": kind, "layout": layout, "text": text})
    about = (f"drawn at {DPI} dpi, taken at {SCALE[0]} to {SCALE[1]} of it, turned by up to {TURN} degrees, off by up to {SHIFT:.1%} of a side, "
             f"brightness {BRIGHT[0]} to {BRIGHT[1]}, light falling off by up to {SHADE:.0%}, blur {BLUR[0]} to {BLUR[1]} pixels, "
             f"noise of {NOISE[0]} to {NOISE[1]} levels of 255, JPEG quality {QUALITY[0]} to {QUALITY[1]}, any EXIF turn")
    made = {"seed": asked.seed, "made": about, "papers": told}
    (asked.folder / "alike.json").write_text(json.dumps(made, indent=1, ensure_ascii=False))
    print(f"{len(told)} pictures of {asked.letters} letters, seed {asked.seed}: {about}")


main()

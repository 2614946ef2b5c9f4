"""Wall times and the moments they stand for, worked out by Python's zoneinfo, as CSV on standard output.

    python3 tests/outside/zone_cases.py > tests/suite/fixtures/zone_cases.csv

Columns: zone, what the case shows, the wall time asked for, the moment in UTC, the wall time at that moment.
A time that comes twice is the first of the two (fold=0), and one that does not exist is read with the offset before
the gap, which is what PEP 495 does for fold=0 and what RFC 5545 section 3.3.5 asks for.
"""

import sys
from datetime import datetime, timedelta, timezone
from pathlib import Path
from zoneinfo import ZoneInfo

ZONES = """
    America/New_York America/Chicago America/Denver America/Phoenix America/Los_Angeles America/Anchorage
    Pacific/Honolulu America/Halifax America/St_Johns America/Santiago America/Sao_Paulo Europe/London Europe/Dublin
    Europe/Budapest Antarctica/Troll Asia/Kolkata Asia/Kathmandu Asia/Tokyo Australia/Adelaide Australia/Sydney
    Australia/Lord_Howe Australia/Eucla Pacific/Auckland Pacific/Chatham Pacific/Kiritimati
""".split()

# Rules change by law; these years lie far enough back that every copy of the database tells the same.
FIRST, LAST = datetime(2023, 1, 1), datetime(2025, 1, 1)


def turns(zone):
    """Each change of the clocks: the last minute before it and the offsets on either side."""
    at, step = FIRST.replace(tzinfo=timezone.utc), timedelta(minutes=30)
    while at < LAST.replace(tzinfo=timezone.utc):
        before, after = (moment.astimezone(zone).utcoffset() for moment in (at, at + step))
        if before != after:
            yield at + step, before, after
        at += step


def cases(zone):
    yield "winter or summer", datetime(2024, 1, 1, 12, 0)
    yield "winter or summer", datetime(2024, 7, 1, 12, 0)
    yield "leap day", datetime(2024, 2, 29, 23, 59)
    for moment, before, after in turns(zone):
        old = (moment + before).replace(tzinfo=None)
        new = (moment + after).replace(tzinfo=None)
        kind = "gap" if after > before else "overlap"
        first, last = min(old, new), max(old, new)
        minute = timedelta(minutes=1)
        yield f"before the {kind}", first - minute
        yield f"start of the {kind}", first
        yield f"inside the {kind}", first + (last - first) / 2
        yield f"end of the {kind}", last - minute
        yield f"after the {kind}", last
        yield f"next day after the {kind}", last + timedelta(days=1)


def main():
    release = Path("/usr/share/zoneinfo/tzdata.zi").read_text().splitlines()[0].lstrip("# ")
    print(f"# made by tests/outside/zone_cases.py: zoneinfo of Python {sys.version.split()[0]}, tzdata {release}")
    print("zone,case,wall,utc,wall_at_that_moment")
    for name in ZONES:
        zone = ZoneInfo(name)
        for case, wall in cases(zone):
            utc = wall.replace(tzinfo=zone, fold=0).astimezone(timezone.utc)
            again = utc.astimezone(zone)
            print(",".join([name, case, *(f"{moment:%Y-%m-%dT%H:%M}" for moment in (wall, utc, again))]))


main()

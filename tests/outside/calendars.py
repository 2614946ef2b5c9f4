"""Reads calendars that we write with other people's programs, and compares every moment with what our pages show.

usage: calendars.py FILE     FILE is written by KINSHEAF_CALENDARS=FILE cargo test --lib calendar::random

Source: IETF RFC 5545 (2009) as PyPI icalendar parses it and PyPI recurring-ical-events expands it. Of every calendar: lines end
in CRLF and are no longer than 75 octets (3.1); each event has UID, DTSTAMP and DTSTART once (3.6.1); UNTIL is in UTC
(3.3.10); the zone that it carries has, at each change of the clocks and an hour around it, the offset that Python's
zoneinfo has (3.6.5). Then the series is expanded: the same moments, the same ones cancelled.

One line per calendar that differs; then how many of each kind were compared, and the seed. The last line counts.
"""

import json
import sys
from collections import Counter
from datetime import datetime, timedelta, timezone
from importlib.metadata import version
from zoneinfo import ZoneInfo

import icalendar
import recurring_ical_events


def instant(text):
    return datetime.fromisoformat(text.replace("Z", "+00:00"))


def form(text):
    """What is wrong with the lines."""
    wrong = []
    raw = text.encode()
    if raw.replace(b"\r\n", b"").count(b"\n") or raw.replace(b"\r\n", b"").count(b"\r"):
        wrong.append("a line that does not end in CRLF")
    longest = max(len(line) for line in raw.split(b"\r\n"))
    if longest > 75:
        wrong.append(f"a line of {longest} octets")
    for event in text.replace("\r\n ", "").split("BEGIN:VEVENT\r\n")[1:]:
        names = Counter(line.split(":")[0].split(";")[0] for line in event.split("END:VEVENT")[0].split("\r\n"))
        for name in ("UID", "DTSTAMP", "DTSTART", "SEQUENCE", "STATUS", "SUMMARY"):
            if names[name] != 1:
                wrong.append(f"{name} stands {names[name]} times")
    for part in text.replace("\r\n ", "").split("UNTIL=")[1:]:
        if not part.split("\r\n")[0].split(";")[0].endswith("Z"):
            wrong.append("an UNTIL that is no moment in UTC")
    return wrong


def zones(calendar, name, start, stop):
    """What is wrong with the zone that it carries."""
    carried = [it.to_tz(lookup_tzid=False) for it in calendar.walk("VTIMEZONE")]
    if len(carried) != 1:
        return [f"{len(carried)} zones"]
    known, moment, wrong = ZoneInfo(name), start - timedelta(days=2), []
    while moment < stop + timedelta(days=2):
        ours, theirs = (moment.astimezone(it).utcoffset() for it in (carried[0], known))
        if ours != theirs:
            wrong.append(f"at {moment}: {ours}, and zoneinfo has {theirs}")
            break
        moment += timedelta(minutes=30) if near(known, moment) else timedelta(hours=12)
    return wrong


def near(zone, moment):
    day = timedelta(hours=13)
    return (moment - day).astimezone(zone).utcoffset() != (moment + day).astimezone(zone).utcoffset()


def expanded(calendar, start, stop):
    found = []
    for event in recurring_ical_events.of(calendar).between(start - timedelta(days=2), stop + timedelta(days=2)):
        at = event["DTSTART"].dt.astimezone(timezone.utc)
        if start <= at < stop:
            found.append(f"{at:%Y-%m-%dT%H:%M:%SZ} {event['STATUS']}")
    return sorted(found)


def main():
    told = json.load(open(sys.argv[1]))
    passed, failed, moments, kinds = 0, 0, 0, Counter()
    for number, series in enumerate(told["series"], 1):
        start, stop = instant(series["from"]), instant(series["to"])
        wrong = form(series["calendar"])
        calendar = icalendar.Calendar.from_ical(series["calendar"])
        wrong += zones(calendar, series["zone"], start, stop)
        theirs, ours = expanded(calendar, start, stop), sorted(series["ours"])
        if theirs != ours:
            lost, more = sorted(set(theirs) - set(ours))[:3], sorted(set(ours) - set(theirs))[:3]
            wrong.append(f"only they: {lost}; only we: {more}; {len(theirs)} and {len(ours)}")
        if wrong:
            failed += 1
            print(f"FAIL series {number}, {series['zone']}, {series['rule']}: " + "; ".join(wrong))
        else:
            passed += 1
        moments += len(ours)
        kinds[series["zone"]] += 1
        kinds["with some that differ"] += series["said"] > 0
        kinds["with some moved"] += series["moved"] > 0
        kinds["with some cancelled"] += any(it.endswith("CANCELLED") for it in ours)
        kinds["with a time in a change of the clocks"] += series["unusual"] > 0
        kinds["with an end by count"] += "COUNT" in series["rule"]
        kinds["with an end by day"] += "UNTIL" in series["rule"]
    print(f"icalendar {version('icalendar')}, recurring-ical-events {version('recurring-ical-events')}; seed “{told['seed']}”; {moments} moments; " + ", ".join(f"{kind}: {count}" for kind, count in sorted(kinds.items())))
    for kind, count in kinds.items():
        if not count:
            failed += 1
            print(f"FAIL none of this kind was compared: {kind}")
    if len(told["series"]) < 300 or sum("/" in kind for kind in kinds) < 6:
        failed += 1
        print("FAIL fewer than 300 series in 6 zones")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())

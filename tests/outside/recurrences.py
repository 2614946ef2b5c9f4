"""Lays out schedules of medicines with python-dateutil, and compares every one with what we lay out.

usage: recurrences.py FILE     FILE is written by KINSHEAF_SCHEDULES=FILE cargo test --lib schedule::random

Source: IETF RFC 5545 (2009), 3.3.10 and 3.8.5.3, as python-dateutil's rrule reads it (PyPI). Weeks begin on Monday, which
is the RFC's own default. Every n hours is counted on the wall clock, so the rule is asked with the clocks of a place where
they change twice a year; what it gives is read as a wall time. The end day is the last on which anything falls.

One line per schedule that differs; then how many of each kind were compared, and the seed. The last line counts.
"""

import json
import sys
from collections import Counter
from datetime import date, datetime, time, timedelta

from dateutil import __version__ as version
from dateutil import rrule, tz

ZONE = tz.gettz("America/Chicago")
DAYS = dict(mon=rrule.MO, tue=rrule.TU, wed=rrule.WE, thu=rrule.TH, fri=rrule.FR, sat=rrule.SA, sun=rrule.SU)
# The order of a day: our four standard times begin at these hours (Institute of Medicine, 2008).
BEGINS = dict(morning=time(6), noon=time(11), evening=time(16), bedtime=time(21))


def clock(name):
    return BEGINS.get(name) or time.fromisoformat(name)


def hours(step, first, last):
    """Each moment of a rule by the hour, as a wall time."""
    [(name, amount)] = step["times"]
    begins = datetime.combine(date.fromisoformat(step["from"]), clock(name), ZONE)
    until = datetime.combine(last, time(23, 59), ZONE)
    for moment in rrule.rrule(rrule.HOURLY, interval=step["every"], dtstart=begins, until=until):
        if moment.date() >= first:
            yield moment.date(), moment.time(), f"{moment:%H:%M}", amount


def days(step, first, last):
    """Each day of a rule by the day or the week, with the step's times."""
    begins = datetime.combine(date.fromisoformat(step["from"]), time())
    until = datetime.combine(last, time(23, 59))
    if step["rhythm"] == "days":
        rule = rrule.rrule(rrule.DAILY, interval=step["every"], dtstart=begins, until=until)
    else:
        chosen = [DAYS[it] for it in step["weekdays"].split()]
        rule = rrule.rrule(rrule.WEEKLY, interval=step["every"], wkst=rrule.MO, byweekday=chosen, dtstart=begins, until=until)
    for day in rule:
        if day.date() >= first:
            for name, amount in step["times"]:
                yield day.date(), clock(name), name, amount


def theirs(schedule):
    first, last = date.fromisoformat(schedule["first"]), date.fromisoformat(schedule["last"])
    doses = []
    for step in schedule["steps"]:
        end = min(last, date.fromisoformat(step["until"])) if step["until"] else last
        doses += (hours if step["rhythm"] == "hours" else days)(step, first, end)
    # Two at the same minute stand in the order in which they are written.
    doses.sort(key=lambda it: it[:2])
    return [f"{day} {name} {amount}" for day, _, name, amount in doses]


def changes(schedule):
    """Whether the days that are laid out hold a change of the clocks."""
    first, last = date.fromisoformat(schedule["first"]), date.fromisoformat(schedule["last"])
    offsets = {datetime.combine(first + timedelta(it), time(12), ZONE).utcoffset() for it in range((last - first).days)}
    return len(offsets) > 1


def main():
    told = json.load(open(sys.argv[1]))
    passed, failed, doses, kinds = 0, 0, 0, Counter()
    for number, schedule in enumerate(told["schedules"], 1):
        ours, expected = schedule["ours"], theirs(schedule)
        if ours == expected:
            passed += 1
        else:
            failed += 1
            lost, more = sorted(set(expected) - set(ours))[:3], sorted(set(ours) - set(expected))[:3]
            print(f"FAIL schedule {number}: {schedule['steps']}\n  only dateutil: {lost}\n  only we: {more}")
        doses += len(expected)
        kinds.update(step["rhythm"] for step in schedule["steps"])
        kinds["steps that follow each other"] += len(schedule["steps"]) > 1
        kinds["begun on 29 February"] += any(step["from"].endswith("-02-29") for step in schedule["steps"])
        kinds["hours over a change of the clocks"] += changes(schedule) and any(it["rhythm"] == "hours" for it in schedule["steps"])
        kinds["with an end"] += schedule["steps"][-1]["until"] is not None
    print(f"python-dateutil {version}; seed “{told['seed']}”; {doses} doses; " + ", ".join(f"{kind}: {count}" for kind, count in sorted(kinds.items())))
    for kind in ("days", "weekdays", "hours", "steps that follow each other", "begun on 29 February", "hours over a change of the clocks", "with an end"):
        if not kinds[kind]:
            failed += 1
            print(f"FAIL none of this kind was compared: {kind}")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())

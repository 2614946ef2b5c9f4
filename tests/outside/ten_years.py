#!/usr/bin/env python3
"""What a long record costs: tests/outside/ten_years.py PROGRAM [YEARS]

Tells the demo's month, and the demo with ten years before it (the same at each telling), each in a folder of its
own. Then asks pages of Ottoline's record as Ines, who never said that she has read, and as Juno, who has: 300 times
each, one after the other, in turns between the two records, so that a busy machine is busy for both. The time is
the server's own, from its log ("micros": all layers, from the first byte read to the answer made).

Figures to look at. It fails where Today takes 8 ms or more, or more than 1.3 times what it takes in the month.
"""
import os, re, socket, subprocess, sys, tempfile, time, urllib.error, urllib.request

program, years = os.path.abspath(sys.argv[1]), sys.argv[2] if len(sys.argv) > 2 else "10"
PATHS = ["/today", "/medicines", "/sheets/emergency", "/history", "/contacts"]
TIMES = 300


class Stay(urllib.request.HTTPRedirectHandler):
    def redirect_request(self, *_):
        return None


class Demo:
    def __init__(self, *words):
        self.folder = tempfile.mkdtemp()
        self.log = open(os.path.join(self.folder, "log"), "w+")
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        env = {"PATH": os.environ["PATH"], "KINSHEAF_LISTEN": f"127.0.0.1:{self.port}", "RUST_LOG": "info"}
        data = os.path.join(self.folder, "data")
        began = time.monotonic()
        self.child = subprocess.Popen([program, "demo", "--data", data, *words], env=env, stdout=self.log, stderr=self.log)
        while "Listening" not in self.said():
            assert self.child.poll() is None and time.monotonic() - began < 900, self.said()
            time.sleep(0.1)
        told = re.search(r"^Told: .*$", self.said(), re.M)
        print(f"{told[0] if told else 'A month'} (told in {time.monotonic() - began:.1f} s)")
        self.cookies = {name: self.enter(name) for name in ("Ines", "Juno")}

    def said(self):
        with open(self.log.name) as log:
            return re.sub(r"\x1b\[[0-9;]*m", "", log.read())

    def enter(self, name):
        link = re.search(rf"^{name} .*?: (\S+)$", self.said(), re.M)[1]
        try:
            urllib.request.build_opener(Stay).open(link)
        except urllib.error.HTTPError as answer:
            return "; ".join(it.split(";")[0] for it in answer.headers.get_all("Set-Cookie"))

    def ask(self, name, path):
        page = urllib.request.Request(f"http://127.0.0.1:{self.port}/p/1{path}", None, {"Cookie": self.cookies[name]})
        with urllib.request.urlopen(page) as answer:
            answer.read()

    def times(self):
        self.child.terminate()
        assert self.child.wait(60) == 0, "it did not stop well"
        found = re.findall(r'method=GET path="?(/p/1/[^" ]*)"? status=200 micros=(\d+)', self.said())
        return [(path.removeprefix("/p/1"), int(micros) / 1000) for path, micros in found]


month, long = Demo(), Demo("--years", years)
asked = []
for name in ("Ines", "Juno"):
    for path in PATHS:
        asked += [(name, path)] * TIMES
        for _ in range(TIMES):
            month.ask(name, path)
            long.ask(name, path)
taken = {}
for record, demo in (("month", month), ("years", long)):
    times = demo.times()
    assert len(times) == len(asked), "the log and what was asked differ"
    for (name, path), (told, took) in zip(asked, times):
        assert path == told
        taken.setdefault((name, path, record), []).append(took)

failed = 0
for name in ("Ines", "Juno"):
    for path in PATHS:
        middle = {it: sorted(taken[name, path, it])[TIMES // 2] for it in ("month", "years")}
        high = sorted(taken[name, path, "years"])[TIMES * 95 // 100]
        ratio = middle["years"] / middle["month"]
        wrong = path == "/today" and (middle["years"] >= 8 or ratio > 1.3)
        failed += wrong
        print(f"{'not ok' if wrong else 'ok    '} {name} {path}: median {middle['years']:.2f} ms (95 % {high:.2f}), in the month {middle['month']:.2f} ms, {ratio:.2f} times")
print(f"{2 - failed} passed, {failed} failed")
sys.exit(1 if failed else 0)

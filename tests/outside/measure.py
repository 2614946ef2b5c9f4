#!/usr/bin/env python3
"""How fast the release starts, what it holds when idle, and what pages take: tests/outside/measure.py PROGRAM

Makes a folder with the demo's family, then ten times starts `serve` on it and asks for the sign-in page
until it answers (from exec to the whole first page, over loopback, asked every 2 ms). Then signs in nobody,
waits ten seconds, and reads resident memory (VmRSS) and its private part (Rss of Anonymous) from /proc.
Then the demo, with medicines added to make 30 lines: each page is asked 1,000 times, one after the other,
and the server's own time of each request is read from its log ("micros": all layers, from the first byte
read to the answer made).

Each medicine is in the schedule, at two of four times of the day drawn from the seed, and the day is asked 1,000 times as well.
At last a list of 60 lines is laid beside 60 medicines, and the comparison asked 300 times.

Figures to look at: the limits are those of the project (0.2 s, 40 MB, 3 ms; 10 ms for the day; 50 ms for the comparison); it
fails above them. First it prints the machine and the seed.
"""
import os, platform, random, re, socket, subprocess, sys, tempfile, time, urllib.error, urllib.parse, urllib.request

SEED = 20261125
program = os.path.abspath(sys.argv[1])
folder = tempfile.mkdtemp()


def free_port():
    with socket.socket() as it:
        it.bind(("127.0.0.1", 0))
        return it.getsockname()[1]


def start(*words, log=None):
    port = free_port()
    env = {"PATH": os.environ["PATH"], "KINSHEAF_LISTEN": f"127.0.0.1:{port}", "KINSHEAF_DATA": folder, "RUST_LOG": "info" if log else "warn"}
    began = time.perf_counter()
    child = subprocess.Popen([program, *words], env=env, stdout=log or subprocess.DEVNULL, stderr=log)
    while time.perf_counter() - began < 60:
        try:
            with urllib.request.urlopen(f"http://127.0.0.1:{port}/sign-in", timeout=5) as page:
                assert b"Sign in" in page.read()
                return child, time.perf_counter() - began, port
        except (ConnectionError, urllib.error.URLError):
            time.sleep(0.002)
    child.kill()
    raise SystemExit("the server did not answer within a minute")


def stop(child):
    child.terminate()
    assert child.wait(20) == 0, "it did not stop well"


def memory(pid, name):
    with open(f"/proc/{pid}/status") as status:
        return next(int(line.split()[1]) for line in status if line.startswith(name)) / 1024


def machine():
    """The processor, how many of it, and the system."""
    with open("/proc/cpuinfo") as info:
        names = {line.partition(":")[2].strip() for line in info if line.startswith("model name")}
    return f"{', '.join(sorted(names)) or platform.machine()}, {os.cpu_count()} at once, {platform.system()} {platform.release()}"


print(f"machine: {machine()}; seed {SEED}")
child, _, _ = start("demo", "--data", folder)
stop(child)
times = []
for _ in range(10):
    child, took, _ = start("serve")
    times.append(took * 1000)
    stop(child)
times.sort()
child, _, port = start("serve")
time.sleep(10)
resident, own = memory(child.pid, "VmRSS"), memory(child.pid, "RssAnon")
for _ in range(300):
    urllib.request.urlopen(f"http://127.0.0.1:{port}/sign-in").read()
after = memory(child.pid, "VmRSS")
stop(child)
print(f"start to first page: median {(times[4] + times[5]) / 2:.0f} ms, {times[0]:.0f} to {times[-1]:.0f} ms (10 times)")
print(f"idle memory: {resident:.1f} MB resident, of it {own:.1f} MB its own; {after:.1f} MB after 300 pages")


class Stay(urllib.request.HTTPRedirectHandler):
    def redirect_request(self, *_):
        return None


def pages():
    """The server's time for pages of a record with 30 medicines, in milliseconds: median, 95 %, slowest."""
    log = open(os.path.join(folder, "log"), "w+")
    child, _, port = start("demo", "--data", folder, log=log)
    link = re.search(r"^Ines .*?: (\S+)$", open(log.name).read(), re.M)[1]
    opener = urllib.request.build_opener(Stay)
    try:
        opener.open(link)
    except urllib.error.HTTPError as answer:
        cookie = "; ".join(it.split(";")[0] for it in answer.headers.get_all("Set-Cookie"))
    headers = {"Cookie": cookie, "Sec-Fetch-Site": "same-origin"}
    base = f"http://127.0.0.1:{port}/p/1"

    def sent(path, fields):
        """Sends a form; gives where its answer leads."""
        try:
            opener.open(urllib.request.Request(base + path, urllib.parse.urlencode(fields).encode(), headers))
        except urllib.error.HTTPError as answer:
            assert answer.status == 303, answer.status
            return answer.headers["Location"]

    drawn = random.Random(SEED)

    def add(numbers):
        for number in numbers:
            own = sent("/medicines/add", {"name": f"Medicine {number}", "dose": "1 tablet", "times": "in the morning", "supply": "prescription"})
            often = {"from_on": "1 Jan 2020", "rhythm": "every day, or every so many days", "every": "1", "unit": "tablet"}
            often |= {time: drawn.choice(["1", "2", "0.5"]) for time in drawn.sample(["morning", "noon", "evening", "bedtime"], 2)}
            sent(own.removeprefix("/p/1") + "/steps/add", often)

    add(range(21))
    figures = {}
    day = urllib.request.urlopen(urllib.request.Request(base + "/medicines/day", None, headers)).read()
    assert len(set(re.findall(rb"Medicine \d+", day))) == 21, "the day does not hold what was added"
    for path in ["/medicines", "/medicines/day", "/sheets/emergency", "/history"]:
        for _ in range(1000):
            urllib.request.urlopen(urllib.request.Request(base + path, None, headers)).read()
    add(range(21, 51))
    lines = "\n".join(f"Medicine{number} {number} mg tablet, 1 tablet in the evening" for number in range(60))
    lists = sent("/reconciliation/add", {"paper": "another list", "dated_on": "1 Jan 2020", "source": "measured", "lines": lines})
    compared = lists.removeprefix("/p/1").removesuffix("/lines")
    for _ in range(300):
        urllib.request.urlopen(urllib.request.Request(base + compared, None, headers)).read()
    stop(child)
    found = re.sub(r"\x1b\[[0-9;]*m", "", open(log.name).read())
    for path in ["/medicines", "/medicines/day", "/sheets/emergency", "/history", compared]:
        took = sorted(int(it) / 1000 for it in re.findall(rf"method=GET path=\"?/p/1{path}\"? status=200 micros=(\d+)", found))
        figures[path] = took[len(took) // 2], took[len(took) * 95 // 100], took[-1], len(took)
    figures["60 medicines beside 60 lines"] = figures.pop(compared)
    return figures


figures = pages()
for path, (median, most, slowest, count) in figures.items():
    print(f"{path}: median {median:.2f} ms, 95 % {most:.2f} ms, slowest {slowest:.2f} ms ({count} times)")
sound = times[-1] < 200, resident <= 40, figures["/medicines"][0] < 3, figures["/medicines/day"][0] < 10, figures["60 medicines beside 60 lines"][0] < 50
print(f"{sum(sound)} passed, {len(sound) - sum(sound)} failed")
sys.exit(0 if all(sound) else 1)

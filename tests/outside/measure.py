#!/usr/bin/env python3
"""How fast the release starts, and what it holds when idle: tests/outside/measure.py PROGRAM

Makes a folder with the demo's family, then ten times starts `serve` on it and asks for the sign-in page
until it answers (from exec to the whole first page, over loopback, asked every 2 ms). Then signs in nobody,
waits ten seconds, and reads resident memory (VmRSS) and its private part (Rss of Anonymous) from /proc.
Figures to look at: the limits are those of the project (0.2 s, 40 MB); it fails above them.
"""
import os, socket, subprocess, sys, tempfile, time, urllib.request

program = os.path.abspath(sys.argv[1])
folder = tempfile.mkdtemp()


def free_port():
    with socket.socket() as it:
        it.bind(("127.0.0.1", 0))
        return it.getsockname()[1]


def start(*words):
    port = free_port()
    env = {"PATH": os.environ["PATH"], "KINSHEAF_LISTEN": f"127.0.0.1:{port}", "KINSHEAF_DATA": folder, "RUST_LOG": "warn"}
    began = time.perf_counter()
    child = subprocess.Popen([program, *words], env=env, stdout=subprocess.DEVNULL)
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
sound = times[-1] < 200, resident <= 40
print(f"{sum(sound)} passed, {2 - sum(sound)} failed")
sys.exit(0 if all(sound) else 1)

#!/usr/bin/env python3
"""A full disk: tests/outside/full_disk.py PROGRAM (as root: mounts a small tmpfs, and takes it down again).

Fills the disk under a running server, adds medicines until one is refused, and looks at what is then true:
a clear page and no failure (503), nothing half kept of a paper, reading goes on, the emergency sheet prints, nothing answered is lost
after room is made, and the history verifies.
"""
import os, re, socket, subprocess, sys, tempfile, time, urllib.error, urllib.parse, urllib.request

program = os.path.abspath(sys.argv[1])
folder = tempfile.mkdtemp()
passed, failed = 0, 0


def check(what, holds):
    global passed, failed
    passed, failed = passed + bool(holds), failed + (not holds)
    print("ok  " if holds else "FAIL", what)


class Stay(urllib.request.HTTPRedirectHandler):
    def redirect_request(self, *_):
        return None


opener = urllib.request.build_opener(Stay)


def ask(path, cookie="", form=None, pile=None):
    data = urllib.parse.urlencode(form).encode() if form is not None else None
    headers = {"Cookie": cookie, "Sec-Fetch-Site": "same-origin"}
    if pile is not None:
        part = b'--cut\r\nContent-Disposition: form-data; name="papers"; filename="scan.pdf"\r\n\r\n'
        data, headers["Content-Type"] = part + pile + b"\r\n--cut--\r\n", "multipart/form-data; boundary=cut"
    request = urllib.request.Request(base + path, data, headers)
    try:
        answer = opener.open(request, timeout=60)
    except urllib.error.HTTPError as it:
        answer = it
    return answer.status, answer.headers, answer.read()


subprocess.run(["mount", "-t", "tmpfs", "-o", "size=24m", "tmpfs", folder], check=True)
child = None
try:
    with socket.socket() as it:
        it.bind(("127.0.0.1", 0))
        port = it.getsockname()[1]
    base = f"http://127.0.0.1:{port}"
    env = {"PATH": os.environ["PATH"], "KINSHEAF_LISTEN": f"127.0.0.1:{port}", "KINSHEAF_DATA": folder, "RUST_LOG": "error"}
    child = subprocess.Popen([program, "demo", "--data", folder], env=env, stdout=subprocess.PIPE, text=True)
    link = None
    for line in child.stdout:
        if line.startswith("Ines"):
            link = line.split(": ", 1)[1].strip()
        if line.startswith("Listening"):
            break
    _, headers, _ = ask(urllib.parse.urlparse(link).path)
    cookie = "; ".join(it.split(";")[0] for it in headers.get_all("Set-Cookie"))
    with open(os.path.join(folder, "filler"), "wb") as filler:
        try:
            while True:
                filler.write(b"x" * 65536)
                filler.flush()
        except OSError:
            pass
    kept, refused = [], None
    for number in range(2000):
        status, _, page = ask("/p/1/medicines/add", cookie, {"name": f"Full{number}x", "supply": "prescription"})
        if status != 303:
            refused = status, page
            break
        kept.append(f"Full{number}x")
    check("a change that cannot be kept is refused as busy, with a page", refused and refused[0] == 503 and b"Nothing was kept" in refused[1])
    def lying():
        return [name for _, _, names in os.walk(os.path.join(folder, "files")) for name in names]

    before = lying()
    status, headers, page = ask("/p/1/papers/tray/add", cookie, pile=b"%PDF-1.7\n" + b" " * 3_000_000)
    if status == 303:
        _, _, page = ask(headers["Location"], cookie)
    told = b"disk of the server is full" in page or b"Nothing was kept" in page
    check("a paper that finds no room is told so, and nothing of it is kept", told and lying() == before)
    status, _, page = ask("/p/1/medicines", cookie)
    check("reading goes on", status == 200 and all(it.encode() in page for it in kept))
    status, _, page = ask("/p/1/sheets/emergency", cookie)
    check("the emergency sheet is shown", status == 200)
    status, _, page = ask("/p/1/sheets/emergency/print", cookie, {})
    check("and printed", status == 200 and page.startswith(b"%PDF"))
    os.remove(os.path.join(folder, "filler"))
    status, _, _ = ask("/p/1/medicines/add", cookie, {"name": "Room again", "supply": "prescription"})
    check("with room again the next change is kept", status == 303)
    child.terminate()
    check("it stops well", child.wait(30) == 0)
    verified = subprocess.run([program, "verify"], env=env, stdout=subprocess.PIPE, text=True)
    check("the history verifies", verified.returncode == 0)
finally:
    if child and child.poll() is None:
        child.kill()
        child.wait()
    subprocess.run(["umount", folder], check=True)
print(f"{passed} passed, {failed} failed")
sys.exit(1 if failed else 0)

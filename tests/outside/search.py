#!/usr/bin/env python3
"""The search beside SQLite asked by hand, and how long it takes: tests/outside/search.py PROGRAM PAGES

Tells the demo, and writes so many pages of made text (from a seed) into its record as pages of papers. Then
asks for whole words, beginnings and accents, and compares each page that was found with what an index of words
gives that Python's own SQLite makes over the same pages, asked by hand. Fifty words with one typing error each
must be shown for the right word, with the same pages. What people type in odd ways must be answered.

The server's own time of each search is read from its log ("micros": all layers). With 20,000 pages or more the
median of each sort of question must be below 20 ms (a release build); with fewer they are figures to look at.
"""
import html, os, random, re, socket, sqlite3, subprocess, sys, tempfile, time, unicodedata, urllib.error, urllib.parse, urllib.request

SEED = 20261125
program, pages = os.path.abspath(sys.argv[1]), int(sys.argv[2])
folder = tempfile.mkdtemp()
drawn = random.Random(SEED)

# Typed, meant: one letter left out, one too many, another one, two that changed places.
ERRORS = [it.split(":") for it in """
warfrin:warfarin metoprlol:metoprolol sertralne:sertraline lisnopril:lisinopril amlodpine:amlodipine gabapntin:gabapentin
furosmide:furosemide digxin:digoxin potasium:potassium discarge:discharge orthpedic:orthopedic cataact:cataract
warffarin:warfarin metoprollol:metoprolol serttraline:sertraline lissinopril:lisinopril ammlodipine:amlodipine gabbapentin:gabapentin
furrosemide:furosemide digooxin:digoxin pottassium:potassium disccharge:discharge orthoppedic:orthopedic cattaract:cataract
xwarfarin:warfarin wartarin:warfarin metoprorol:metoprolol sertroline:sertraline lisinapril:lisinopril amlodapine:amlodipine
gabapantin:gabapentin furosomide:furosemide digaxin:digoxin potessium:potassium discherge:discharge orthapedic:orthopedic
cataroct:cataract insurence:insurance pharmecy:pharmacy predisone:prednisone warafrin:warfarin metporolol:metoprolol
sertarline:sertraline lisniopril:lisinopril amldoipine:amlodipine gabpaentin:gabapentin furoesmide:furosemide dgioxin:digoxin
potsasium:potassium dishcarge:discharge
""".split()]
MEANT = sorted({right for _, right in ERRORS})
ACCENTS = ["Métoprolol", "résumé", "Żmuda", "naïve", "Ångström", "crème", "Señora", "Übelkeit", "façade", "Dvořák"]
assert len(ERRORS) == 50 and len({typed for typed, _ in ERRORS}) == 50


def within_one(a, b):
    """Whether one edit at most lies between two words (counted another way than the program does)."""
    if abs(len(a) - len(b)) > 1:
        return False
    head = 0
    while head < min(len(a), len(b)) and a[head] == b[head]:
        head += 1
    rest_a, rest_b = a[head:], b[head:]
    swapped = len(rest_a) > 1 and len(rest_b) > 1 and rest_a[0] == rest_b[1] and rest_a[1] == rest_b[0] and rest_a[2:] == rest_b[2:]
    return rest_a[1:] == rest_b[1:] or rest_a[1:] == rest_b or rest_a == rest_b[1:] or swapped


for typed, right in ERRORS:
    assert typed != right and within_one(typed, right), (typed, right)


def made_words(count):
    """Words that nobody says; none is near a word of the errors, or begins with one."""
    parts = [a + b for a in "bdfgklmnprstvz" for b in "aeiou"]
    words = set()
    while len(words) < count:
        word = "".join(drawn.choice(parts) for _ in range(drawn.randint(2, 5)))
        near = any(within_one(word, it) or word.startswith(it) for pair in ERRORS for it in pair)
        words.update([] if near else [word])
    return sorted(words)


words = made_words(4000)
drawn.shuffle(words)
weights = [1 / (place + 1) for place in range(len(words))]


def page_text():
    text = drawn.choices(words, weights, k=drawn.randint(120, 280))
    for own, often in ((MEANT, 0.3), (ACCENTS, 0.3)):
        if drawn.random() < often:
            text[drawn.randrange(len(text))] = drawn.choice(own)
    text.insert(0, f"{drawn.randint(1, 500)} mg")
    return ". ".join(" ".join(text[at:at + 12]).capitalize() for at in range(0, len(text), 12))


def start(log=None):
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    env = {"PATH": os.environ["PATH"], "KINSHEAF_LISTEN": f"127.0.0.1:{port}", "RUST_LOG": "info" if log else "warn"}
    child = subprocess.Popen([program, "demo", "--data", folder], env=env, stdout=log or subprocess.DEVNULL, stderr=log)
    for _ in range(6000):
        assert child.poll() is None, "the demo ended"
        try:
            with urllib.request.urlopen(f"http://127.0.0.1:{port}/sign-in", timeout=5):
                return child, port
        except (ConnectionError, urllib.error.URLError):
            time.sleep(0.01)
    child.kill()
    raise SystemExit("the server did not answer within a minute")


def stop(child):
    child.terminate()
    assert child.wait(60) == 0, "it did not stop well"


print(f"{pages} pages; seed {SEED}; SQLite of Python {sqlite3.sqlite_version}")
child, _ = start()
stop(child)
db = sqlite3.connect(os.path.join(folder, "kinsheaf.db"))
hand = sqlite3.connect(":memory:")
hand.execute("create virtual table page using fts5(text, tokenize = 'unicode61 remove_diacritics 2')")
places = {}
# The papers of the demo that everyone who sees papers sees. A page is found by the title of its paper as well, so a title
# with a word that is asked for would find more than the pages have.
filed = [it for it, title in db.execute("select id, coalesce(title, '') || ' ' || coalesce(sent_as, '') from paper where person_id = 1 and struck = 0 and state <> 'joined' and stewards_only = 0 and kind is not 'directive'")
         if not any(word[:3] in title.lower() for word in MEANT)]
assert filed, "the demo has no papers"
# The demo's own papers are not read meanwhile: their words would be found among the made ones.
db.execute("update paper_text set state = 'not read', words = null, reason = 'not for this check'")
db.execute("""insert into paper_text (person_id, file, form, state, due_at, reason)
    select distinct person_id, file, 'picture', 'not read', '2026-01-01T00:00:00Z', 'not for this check' from paper_page page
    where not exists (select 1 from paper_text text where text.person_id = page.person_id and text.file = page.file)""")
db.execute("delete from page_text")
began = time.monotonic()
for number in range(pages):
    paper, place, text = filed[number % len(filed)], number // len(filed) + 1, page_text()
    db.execute("insert into page_text (person_id, paper, place, text) values (1, ?, ?, ?)", (paper, place, text))
    hand.execute("insert into page (rowid, text) values (?, ?)", (number + 1, text))
    places[number + 1] = (paper, place)
db.commit()
db.close()
print(f"written and indexed in {time.monotonic() - began:.1f} s")

log = open(os.path.join(folder, "log"), "w+")
child, port = start(log)


class Stay(urllib.request.HTTPRedirectHandler):
    def redirect_request(self, *_):
        return None


link = re.search(r"^Ines .*?: (\S+)$", open(log.name).read(), re.M)[1]
try:
    urllib.request.build_opener(Stay).open(link)
except urllib.error.HTTPError as answer:
    cookie = "; ".join(it.split(";")[0] for it in answer.headers.get_all("Set-Cookie"))

asked = []


def ask(sort, **fields):
    query = urllib.parse.urlencode(fields)
    request = urllib.request.Request(f"http://127.0.0.1:{port}/p/1/search?{query}", None, {"Cookie": cookie})
    asked.append(sort)
    with urllib.request.urlopen(request) as answer:
        assert answer.status == 200
        return answer.read().decode()


def found(sort, typed, most=15):
    """How many pages, and those on the first pages of what was found."""
    seen, count, at, papers = [], 0, 1, 0
    while at <= most:
        body = ask(sort, q=typed, kind="paper", page=at)
        for row in body.split("<h3>")[1:]:
            paper, place = re.match(r'<a href="/p/1/papers/(\d+)">', row), re.search(r", page (\d+)", row)
            # A paper is found by its own kind and title too, and is no page.
            papers += bool(paper) and not place
            seen += [(int(paper[1]), int(place[1]))] if paper and place else []
        counted = re.search(r"(\d+) to (\d+) of (\d+)|(\d+) things were|(One) thing was", body)
        count = (int(counted[3] or counted[4] or 1) if counted else 0) - papers
        if len(seen) >= count:
            break
        at += 1
    return count, seen, html.unescape(body)


def by_hand(question):
    rows = hand.execute("select rowid from page where page match ?", (question,))
    return {places[rowid] for rowid, in rows}


passed, faults = 0, []


def check(name, fits):
    global passed
    passed += bool(fits)
    if not fits:
        faults.append(name)
        print(f"FAIL {name}")


def compare(sort, typed, question):
    """The same pages, each once; of very many the number and that all shown are among them."""
    count, seen, _ = found(sort, typed)
    expected = by_hand(question)
    check(f"{sort} {typed!r}: {count} found, by hand {len(expected)}", count == len(expected) and len(seen) == len(set(seen))
          and (set(seen) == expected if len(seen) == count else set(seen) <= expected) and bool(expected))


rare, common = words[-400:], words[:3]
there = [it for it in rare if by_hand(f'"{it}"')]
ask("first after a start", q="warfarin")
for word in there[:20] + MEANT + common:
    compare("a word", word, f'"{word}" *')
for word in there[20:30] + MEANT:
    compare("a beginning", word[:max(3, len(word) - 3)], f'"{word[:max(3, len(word) - 3)]}" *')
for pair in zip(MEANT[::2], common * 4):
    compare("two words", " ".join(pair), f'"{pair[0]}" * AND "{pair[1]}" *')
for word in ACCENTS:
    plain = "".join(it for it in unicodedata.normalize("NFD", word) if not unicodedata.combining(it))
    for typed in (word, plain, plain.upper(), unicodedata.normalize("NFD", word)):
        compare("an accent", typed, f'"{word}" *')
for typed, right in ERRORS:
    count, seen, body = found("an error", typed)
    own = found("a word", right)
    fits = f"shown for “{right}”" in body and (count, seen) == own[:2] and count > 0
    check(f"an error {typed!r} is not shown for {right!r}", fits)
# Whole words stand before beginnings.
_, seen, _ = found("a word", MEANT[0][:-1], 1)
whole = by_hand(f'"{MEANT[0]}"')
check("the beginning of a word finds it", set(seen) <= whole | by_hand(f'"{MEANT[0][:-1]}" *'))
for odd in ['"', '""', "*", "a*b", "AND", "warfarin OR", "NEAR(a b", "text : x", "-warfarin", "^", "(", "' or 1=1 --", "\0", "%", "<b>", "💊", "é" * 5000,
            "{title}:", "warfarin)", "\\", ";", "a" * 3000, "\u202e", "1/2", "555-0101"]:
    body = ask("odd", q=odd)
    check(f"odd {odd[:20]!r} is answered", "<h1>Search</h1>" in body)
for _ in range(200):
    ask("a rare word", q=drawn.choice(there))
    ask("a word of many pages", q=common[0])
    ask("an error", q=drawn.choice(ERRORS)[0])
    ask("two letters", q=drawn.choice(words)[:2])
stop(child)

said = re.sub(r"\x1b\[[0-9;]*m", "", open(log.name).read())
times = [int(it) / 1000 for it in re.findall(r'method=GET path="?/p/1/search"? status=200 micros=(\d+)', said)]
check("the log has each search once, and none of what was asked", len(times) == len(asked) and "warfarin" not in said)
taken = {}
for sort, took in zip(asked, times):
    taken.setdefault(sort, []).append(took)
for sort, each in taken.items():
    each.sort()
    median = each[len(each) // 2]
    print(f"{sort}: median {median:.2f} ms, 95 % {each[len(each) * 95 // 100]:.2f} ms, slowest {each[-1]:.2f} ms ({len(each)} times)")
    if pages >= 20000 and sort not in ("first after a start", "odd"):
        check(f"{sort} takes {median:.1f} ms", median < 20)
print(f"{passed} passed, {len(faults)} failed")
sys.exit(1 if faults else 0)

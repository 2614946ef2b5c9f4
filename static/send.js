// Sends the files of the form in pieces before the form itself, which then only names them: a lost connection costs one
// piece. Each file is known by its name, size and day, so that after a reload or a restart it is gone on with. Without
// it the form brings them whole.
'use strict';
const form = document.querySelector('form[data-sends]');
if (form && window.fetch && window.localStorage) {
  const PIECE = 512 * 1024;
  const DAY = 24 * 60 * 60 * 1000;
  const way = document.querySelector('[data-way]');
  const status = way.querySelector('[role="status"]');
  const rows = way.querySelector('ul');
  const stop = way.querySelector('button');
  let stopped = null;

  const known = (file) => `sending ${form.dataset.sends} ${file.name} ${file.size} ${file.lastModified}`;
  for (const key of Object.keys(localStorage)) {
    if (key.startsWith('sending ') && !(Date.now() - JSON.parse(localStorage[key]).at < DAY)) localStorage.removeItem(key);
  }
  form.querySelector('[data-says]').hidden = false;

  class Refused extends Error {}
  const rest = (milliseconds) => new Promise((over) => {
    const done = () => {
      clearTimeout(waits);
      removeEventListener('online', done);
      stopped.signal.removeEventListener('abort', done);
      over();
    };
    const waits = setTimeout(done, milliseconds);
    addEventListener('online', done);
    stopped.signal.addEventListener('abort', done);
  });

  async function ask(method, address, more = {}) {
    const answer = await fetch(address, { method, signal: stopped.signal, ...more });
    if (answer.redirected) throw new Refused('You are signed out. Sign in in another tab, and press again here.');
    if ([403, 413, 429, 507].includes(answer.status)) {
      const plain = answer.headers.get('content-type')?.startsWith('text/plain');
      throw new Refused(plain ? await answer.text() : 'It was not taken. Look at the tray in another tab.');
    }
    if (answer.status >= 500) throw new TypeError('the server is not well');
    return answer;
  }
  const offset = (answer) => Number(answer.headers.get('upload-offset'));

  // Where it stands: on from where it was, or from the beginning.
  async function begun(file) {
    const kept = JSON.parse(localStorage.getItem(known(file)) ?? 'null');
    if (kept) {
      const stands = await ask('HEAD', kept.address);
      if (stands.ok) return { address: kept.address, at: offset(stands) };
    }
    const answer = await ask('POST', form.dataset.sends, { headers: { 'upload-length': file.size } });
    if (!answer.ok) throw new Refused('It was not taken. Look at the tray in another tab.');
    const address = answer.headers.get('location');
    localStorage.setItem(known(file), JSON.stringify({ address, at: Date.now() }));
    return { address, at: 0 };
  }

  async function through(file, shows) {
    for (let tries = 0; ;) {
      try {
        let { address, at } = await begun(file);
        shows(at);
        while (at < file.size) {
          const headers = { 'content-type': 'application/partial-upload', 'upload-offset': at };
          const answer = await ask('PATCH', address, { headers, body: file.slice(at, at + PIECE) });
          if (!answer.ok) throw new TypeError('it stands elsewhere');
          at = offset(answer);
          tries = 0;
          shows(at);
        }
        return address.split('/').pop();
      } catch (e) {
        if (stopped.signal.aborted || e instanceof Refused) throw e;
        const seconds = Math.min(30, 2 ** tries++);
        if (tries > 1) status.textContent = 'No connection. It is tried again by itself, and goes on where it was.';
        await rest(1000 * seconds);
      }
    }
  }

  function row(file) {
    const item = document.createElement('li');
    const name = document.createElement('h3');
    const part = document.createElement('progress');
    const says = document.createElement('p');
    const inner = document.createElement('div');
    name.textContent = file.name;
    part.max = Math.max(1, file.size);
    part.value = 0;
    part.setAttribute('aria-label', file.name);
    says.className = 'soft';
    says.textContent = 'waits';
    inner.append(name, part, says);
    item.append(inner);
    rows.append(item);
    return { part, says };
  }

  async function send(files) {
    stopped = new AbortController();
    rows.replaceChildren();
    way.hidden = false;
    stop.hidden = false;
    const shown = files.map(row);
    const told = [];
    for (const [at, file] of files.entries()) {
      const { part, says } = shown[at];
      if (file.size > Number(form.dataset.mostBytes) || at >= Number(form.dataset.mostFiles)) {
        says.textContent = 'is not sent';
        told.push(`- ${file.size} ${file.name}`);
        continue;
      }
      status.textContent = `${at + 1} of ${files.length}: ${file.name}`;
      try {
        const token = await through(file, (bytes) => {
          part.value = bytes;
          says.textContent = `${Math.floor(100 * bytes / Math.max(1, file.size))} %`;
          status.textContent = `${at + 1} of ${files.length}: ${file.name}`;
        });
        part.value = part.max;
        says.textContent = 'has come';
        told.push(`${token} ${file.size} ${file.name}`);
      } catch (e) {
        if (stopped.signal.aborted) return null;
        says.textContent = e instanceof Refused ? e.message : 'It could not be sent.';
        return null;
      }
    }
    return told;
  }

  form.addEventListener('submit', async (event) => {
    const inputs = [...form.querySelectorAll('input[type="file"]')];
    const files = inputs.flatMap((it) => [...it.files]);
    if (files.length === 0) return;
    event.preventDefault();
    const button = form.querySelector('button');
    button.disabled = true;
    way.scrollIntoView({ block: 'nearest' });
    const told = await send(files).catch(() => null);
    button.disabled = false;
    stop.hidden = true;
    if (!told) {
      status.textContent = stopped.signal.aborted ? 'Stopped. What has come stays for a day: press “Put them in the tray” to go on.' : 'Not all of it could be sent. What has come stays for a day: press “Put them in the tray” to go on.';
      return;
    }
    inputs.forEach((it) => { it.disabled = true; });
    for (const it of told) {
      const field = document.createElement('input');
      field.type = 'hidden';
      field.name = 'in_pieces';
      field.value = it;
      form.append(field);
    }
    status.textContent = 'All have come.';
    stopped = null;
    form.submit();
  });
  stop.addEventListener('click', () => stopped?.abort());
  addEventListener('beforeunload', (event) => { if (stopped && !stopped.signal.aborted && form.querySelector('button').disabled) event.preventDefault(); });
  // Shown again by the back button: as it was at first.
  addEventListener('pageshow', (event) => { if (event.persisted) location.reload(); });
}

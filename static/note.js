// Keeps the note of a visit on the server as it is typed: a few seconds after typing pauses, and when the page is
// left. Without it the same is done by the press "Keep as a draft".
'use strict';
const note = document.querySelector('form[data-keeps]');
if (note) {
  const status = note.querySelector('[aria-live]');
  const count = note.elements.namedItem('count');
  const version = note.elements.namedItem('draft_version');
  let waits = 0;
  let typed = note.hasAttribute('data-again');
  let sending = false;
  let done = false;

  const say = (words) => { if (status.textContent !== words) status.textContent = words; };

  async function keep(last) {
    clearTimeout(waits);
    if (!typed || done || (sending && !last)) return;
    typed = false;
    sending = true;
    count.value = Number(count.value) + 1;
    try {
      const body = new URLSearchParams(new FormData(note));
      const answer = await fetch(note.dataset.keeps, { method: 'POST', body, keepalive: last || body.toString().length < 60000 });
      const told = answer.headers.get('content-type')?.startsWith('application/json') ? await answer.json() : null;
      if (answer.ok && told) version.value = told.version;
      if (told) say(told.says);
      else { say('not kept: look at it in another tab before you go on'); typed = true; }
    } catch {
      say('not kept: no connection. It is tried again');
      typed = true;
      waits = setTimeout(keep, 10000);
    } finally {
      sending = false;
    }
    if (typed && !waits) waits = setTimeout(keep, 3000);
  }

  note.addEventListener('input', () => {
    typed = true;
    clearTimeout(waits);
    waits = setTimeout(keep, 3000);
  });
  note.addEventListener('submit', () => { done = true; clearTimeout(waits); });
  document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'hidden') keep(true); });
  // Before the page is unloaded: a request of a page that is gone is dropped where a service worker stands between.
  addEventListener('beforeunload', () => keep(true));
  addEventListener('pagehide', () => keep(true));
  addEventListener('pageshow', () => { done = false; });
  if (typed) waits = setTimeout(keep, 1000);
}

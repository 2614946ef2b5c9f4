// Single keys on a page that lists them: one presses what it is listed for, or goes to that field. They are off until
// someone switches them on, which this device remembers (WCAG 2.2, 2.1.4); in a field a key is a letter as ever.
'use strict';
const listed = document.querySelector('[data-keys]');
if (listed) {
  const on = listed.querySelector('input');
  const kept = (value) => {
    try {
      if (value !== undefined) localStorage.setItem('keys', value);
      return localStorage.getItem('keys');
    } catch { return null; /* not to be remembered here */ }
  };
  // Also on a page the browser shows again as it was left: it may have been switched elsewhere since.
  const set = () => { on.checked = kept() === 'on'; };
  set();
  window.addEventListener('pageshow', set);
  on.addEventListener('change', () => { kept(on.checked ? 'on' : 'off'); on.blur(); });
  listed.hidden = false;

  const types = (it) => it.matches('textarea, select, input:not([type="checkbox"], [type="radio"])');
  document.addEventListener('keydown', (event) => {
    if (!on.checked || event.ctrlKey || event.altKey || event.metaKey || event.isComposing || event.repeat) return;
    if (event.key === 'Escape' && types(event.target)) return event.target.blur();
    if (types(event.target)) return;
    const row = [...listed.querySelectorAll('[data-for]')].find((it) => it.querySelector('kbd').textContent === event.key);
    const meant = row && document.getElementById(row.dataset.for);
    if (!meant) return;
    event.preventDefault();
    if (types(meant)) meant.focus(); else meant.click();
  });
}

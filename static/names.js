// Completes the name of a medicine from the names in the house (`import-names`). Without it, or without any names,
// the field is typed in as ever.
'use strict';
const field = document.querySelector('input[list="name-list"]');
if (field) {
  const names = new URL('../names', document.currentScript.src);
  let asked = '';
  field.addEventListener('input', async () => {
    const start = field.value.trim();
    if (start.length < 2 || start === asked) return;
    asked = start;
    try {
      const answer = await fetch(`${names}?start=${encodeURIComponent(start)}`);
      if (!answer.ok || start !== asked) return;
      const options = (await answer.json()).map((name) => new Option('', name));
      field.list.replaceChildren(...options);
    } catch { /* without a network nothing is proposed */ }
  });
}

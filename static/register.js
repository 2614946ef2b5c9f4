// Has the browser keep the shell of the house (see sw.js): its look and the page for when there is no network.
// Where that is not allowed, every page works as it does without.
'use strict';
if ('serviceWorker' in navigator) {
  const house = new URL('../', document.currentScript.src);
  navigator.serviceWorker.register(new URL('sw.js', house), { scope: house.pathname }).catch(() => {});
}

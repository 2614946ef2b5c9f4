// Keeps the shell of the house on this phone: its look, its icons, and one page for when there is no network.
// Never a page of a record, never what is sent, never anything that needs a sign-in: only the addresses listed here
// are kept, and they are asked for without cookies.
'use strict';
const KEPT = {{ prefix|safe }};
const NOW = KEPT + {{ mark|safe }};
const OFFLINE = {{ offline|safe }};
const SHELL = {{ shell|safe }};

const keep = async () => {
  const cache = await caches.open(NOW);
  await cache.addAll(SHELL.map(at => new Request(at, { credentials: 'omit', cache: 'reload' })));
  await self.skipWaiting();
};

const forget = async () => {
  const names = await caches.keys();
  await Promise.all(names.filter(name => name.startsWith(KEPT) && name !== NOW).map(name => caches.delete(name)));
  await self.clients.claim();
};

const kept = async at => (await caches.open(NOW)).match(at);

self.addEventListener('install', event => event.waitUntil(keep()));
self.addEventListener('activate', event => event.waitUntil(forget()));
self.addEventListener('fetch', event => {
  const { request } = event;
  const at = new URL(request.url);
  if (request.method !== 'GET' || at.origin !== self.location.origin) return;
  if (request.mode === 'navigate') {
    event.respondWith(fetch(request).catch(async () => await kept(OFFLINE) ?? Response.error()));
  } else if (SHELL.includes(at.pathname)) {
    event.respondWith(kept(at.pathname).then(answer => answer ?? fetch(request)));
  }
});

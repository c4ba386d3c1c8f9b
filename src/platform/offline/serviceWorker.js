/*
 * Keeps the whole program on this machine after the first visit, so that it opens without a network. A newer version is fetched
 * whole and waits until the person agrees: one page never runs on the files of two versions.
 *
 * Plain script: it is copied as it stands, with `version` and `files` written in front of it by the build.
 */

/* global version, files */

const prefix = 'gradewright-';
const own = prefix + version;

self.addEventListener('install', (event) => {
  // Past the browser's own cache, which may still hold files of the version before.
  const fresh = files.map((file) => new Request(file, { cache: 'reload' }));
  event.waitUntil(caches.open(own).then((cache) => cache.addAll(fresh)));
});

self.addEventListener('activate', (event) => {
  const tidy = async () => {
    const names = await caches.keys();
    await Promise.all(
      names.filter((name) => name.startsWith(prefix) && name !== own).map((name) => caches.delete(name)),
    );
    await self.clients.claim();
  };
  event.waitUntil(tidy());
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  const answer = async () => {
    const cache = await caches.open(own);
    const kept = await cache.match(request.mode === 'navigate' ? './' : request);
    return kept ?? fetch(request);
  };
  event.respondWith(answer());
});

self.addEventListener('message', (event) => {
  if (event.data === 'take over') self.skipWaiting();
});

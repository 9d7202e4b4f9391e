// Keeps the files of the page on the roof, whole and of one version, so that it opens without a connection. It keeps nothing else: what the
// service answers under /api goes past it, and the page itself keeps what it needs of that.

const CACHE = 'seamledger-roof-@version@';
const FILES = ['/roof/', '/roof/roof.webmanifest', '/icon.svg', '/css/base.css', '/css/roof.css', '/js/dom.js', '/js/phone/main.js',
  '/js/phone/ask.js', '/js/phone/events.js', '/js/phone/list.js', '/js/phone/place.js', '/js/phone/plan.js', '/js/phone/queue.js',
  '/js/phone/record.js', '/js/phone/roof.js', '/js/phone/scan.js', '/js/phone/service.js', '/js/phone/shelf.js', '/js/phone/standing.js',
  '/js/phone/words.js', '/js/phone/checklist.js', '/js/phone/photos.js', '/js/phone/drawing.js', '/js/phone/names.js',
  '/js/ledger/placenames.js', '/js/phone/day.js'];

addEventListener('install', e => e.waitUntil(caches.open(CACHE)
  .then(c => c.addAll(FILES.map(f => new Request(f, {cache: 'reload'})))).then(() => skipWaiting())));

addEventListener('activate', e => e.waitUntil(caches.keys()
  .then(all => Promise.all(all.filter(c => c.startsWith('seamledger-roof-') && c !== CACHE).map(c => caches.delete(c))))
  .then(() => clients.claim())));

addEventListener('fetch', e => {
  const url = new URL(e.request.url);
  if (e.request.method !== 'GET' || url.origin !== location.origin || !FILES.includes(url.pathname)) return;
  e.respondWith(caches.open(CACHE).then(c => c.match(url.pathname)).then(kept => kept ?? fetch(e.request)));
});

// Keeps the whole book on the device: after the first visit nothing is asked of the network.
const EDITION = "@EDITION@";
const FILES = @FILES@;

self.addEventListener("install", event => event.waitUntil(
  caches.open(EDITION).then(kept => kept.addAll(FILES.map(file => new Request(file, { cache: "no-cache" }))))
));
self.addEventListener("activate", event => event.waitUntil(
  caches.keys().then(all => Promise.all(all.filter(name => name !== EDITION).map(name => caches.delete(name)))).then(() => self.clients.claim())
));
self.addEventListener("message", event => { if (event.data === "take over") self.skipWaiting(); });
self.addEventListener("fetch", event => {
  const address = new URL(event.request.url);
  if (event.request.method !== "GET" || address.origin !== self.location.origin) return;
  event.respondWith(caches.open(EDITION).then(async kept => await kept.match(event.request, { ignoreSearch: true }) ?? fetched(event.request, kept)));
});

// The plain tables are not among the files: who needs them fetches them once, and then they are kept too.
async function fetched(request, kept) {
  const answer = await fetch(request.url);
  if (answer.ok && request.url.endsWith("/tables.html")) await kept.put(request.url, answer.clone());
  return answer;
}

// The service worker: keeps this edition's files, so that pages open without a network.
// Small files are fetched at once; Python's large ones when a page first asks for them. They lie in
// a store of their own, named after their bytes, so that a newer edition fetches only what is new.
const EDITION = "{{edition}}";
const PYTHON = "{{python}}";
const SMALL = {{small}};
const LARGE = /\/python\/(?!kitchenmath)/;

self.addEventListener("install", event => event.waitUntil((async () => {
  const store = await caches.open(`kitchen-${EDITION}`);
  await store.addAll(SMALL.map(name => new Request(name, { cache: "no-cache" })));
})()));

self.addEventListener("activate", event => event.waitUntil((async () => {
  const keep = [`kitchen-${EDITION}`, `kitchen-python-${PYTHON}`];
  const scope = new URL(self.registration.scope).pathname;
  for (const name of await caches.keys())
    if (name.startsWith("kitchen-") && !keep.includes(name) && (await isOurs(name, scope))) await caches.delete(name);
  await self.clients.claim();
})()));

// Two editions may lie on one host, in two folders: one never throws away what the other keeps.
async function isOurs(name, scope) {
  const requests = await (await caches.open(name)).keys();
  return requests.every(each => new URL(each.url).pathname.startsWith(scope));
}

self.addEventListener("message", event => event.data === "take over" && self.skipWaiting());

self.addEventListener("fetch", event => {
  const address = new URL(event.request.url);
  if (event.request.method !== "GET" || address.origin !== location.origin) return;
  event.respondWith(answer(event.request, address));
});

async function answer(request, address) {
  address.search = address.hash = "";
  if (address.pathname.endsWith("/")) address.pathname += "index.html";
  const store = await caches.open(LARGE.test(address.pathname) ? `kitchen-python-${PYTHON}` : `kitchen-${EDITION}`);
  const kept = await store.match(address.href);
  if (kept) return kept;
  const fresh = await fetch(request);
  if (fresh.ok && fresh.status === 200) await store.put(address.href, fresh.clone());
  return fresh;
}

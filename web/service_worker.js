// Keeps one whole version of the page, and answers from that version alone.
//
// A new version is fetched completely into a store of its own, each file checked against the hash it was built with;
// it takes over when the last page of the old one is closed. So no page ever sees files of two versions.
"use strict";

const STORES = "quietpin-";
const STORE = `${STORES}{{version}}`;
// Name and hash of every file.
const FILES = {{files}};
const ENTRY = "index.html";

async function fetchAll() {
  const store = await caches.open(STORE);
  try {
    await Promise.all(FILES.map(async ([name, integrity]) => {
      const answer = await fetch(new Request(name, { cache: "reload", integrity }));
      if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
      await store.put(name, answer);
    }));
  } catch (error) {
    // Half a version is of no use; the browser tries again at the next visit.
    await caches.delete(STORE);
    throw error;
  }
}

async function takeOver() {
  for (const name of await caches.keys()) {
    if (name.startsWith(STORES) && name !== STORE) await caches.delete(name);
  }
  // At the very first visit there is an open page without a worker: take it on.
  await clients.claim();
}

// The file that a request means, or nothing if it is none of ours.
function fileOf(request) {
  const url = new URL(request.url);
  const home = new URL(registration.scope);
  if (request.method !== "GET" || url.origin !== home.origin || !url.pathname.startsWith(home.pathname)) return null;
  const name = url.pathname.slice(home.pathname.length) || ENTRY;
  return FILES.some(([known]) => known === name) ? name : null;
}

async function answer(name, request) {
  const store = await caches.open(STORE);
  return (await store.match(name)) ?? fetch(request);
}

addEventListener("install", (event) => event.waitUntil(fetchAll()));
addEventListener("activate", (event) => event.waitUntil(takeOver()));
addEventListener("fetch", (event) => {
  const name = fileOf(event.request);
  if (name !== null) event.respondWith(answer(name, event.request));
});

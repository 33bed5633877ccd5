// Keeps the page for use without a network. All files of one build form one
// revision under one cache name; they are answered from that cache first, and a
// newer revision waits until the person says so.

interface LifeEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface RequestEvent extends LifeEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", listener: (event: LifeEvent) => void): void;
  addEventListener(type: "fetch", listener: (event: RequestEvent) => void): void;
  addEventListener(type: "message", listener: (event: MessageEvent & LifeEvent) => void): void;
}
declare const self: Scope;

// Put in by the build: what it emitted for the first picture and for later, and
// a hash over all of it.
declare const FILES: readonly string[];
declare const LATER: readonly string[];
declare const REVISION: string;

const PREFIX = "overspread-";
const CACHE = PREFIX + REVISION;

async function keepAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  // `no-cache` asks the server again, so no stale copy enters a new revision.
  const requests = FILES.map(
    (name) => new Request(new URL(name, self.registration.scope), { cache: "no-cache" }),
  );
  await cache.addAll(requests);
}

/** Keeps what the first picture does not need: from an older revision, if that
 * had the same, else from the server. */
async function keepLater(): Promise<void> {
  const cache = await caches.open(CACHE);
  for (const name of LATER) {
    const address = new URL(name, self.registration.scope);
    if ((await cache.match(address)) !== undefined) continue;
    const older = await caches.match(address);
    if (older === undefined) await cache.add(address);
    else await cache.put(address, older);
  }
}

async function dropOlder(): Promise<void> {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX));
  // The revision before this one stays, for pages of it that are still open.
  const older = names.filter((name) => name !== CACHE).slice(0, -1);
  await Promise.all(older.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function found(name: string | Request): Promise<Response | undefined> {
  const cache = await caches.open(CACHE);
  return (
    (await cache.match(name, { ignoreSearch: true })) ??
    (await caches.match(name, { ignoreSearch: true }))
  );
}

async function answer(request: Request): Promise<Response> {
  const url = new URL(request.url);
  const asked = url.href === self.registration.scope || request.mode === "navigate";
  const name = asked && !isFile(url) ? new URL("index.html", self.registration.scope).href : request;
  // What cannot be read here is to be had from where it came.
  const kept = await found(name).catch(() => undefined);
  return kept ?? fetch(request);
}

/** Whether an address names a file that was emitted beside the page. */
function isFile(url: URL): boolean {
  return [...FILES, ...LATER].some((name) => new URL(name, self.registration.scope).pathname === url.pathname);
}

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(dropOlder()));
self.addEventListener("message", (event) => {
  if (event.data === "skip-waiting") void self.skipWaiting();
  // What cannot be fetched now is asked for again at the next visit.
  if (event.data === "keep-later") event.waitUntil(keepLater().catch(() => undefined));
});
self.addEventListener("fetch", (event) => {
  const own = event.request.url.startsWith(self.registration.scope);
  if (own && event.request.method === "GET") event.respondWith(answer(event.request));
});

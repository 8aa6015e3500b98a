// Kept for use with no network; and an update never mixes two versions.
import { after, before, test } from "node:test";
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { cp, mkdtemp, readFile, rename, rm, writeFile } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { stands, type } from "./fitter.mjs";
import { PATIENCE, PHONE, dist, kept, launch, open, serve, started, until, watched } from "./support.mjs";

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser?.close(); });

/** A copy of the built page that may be changed while it is served. */
async function copyServed(use) {
  const folder = await mkdtemp(path.join(os.tmpdir(), "quietpin-"));
  await cp(dist, folder, { recursive: true });
  const server = await serve(folder);
  const { context, trouble } = await watched(browser);
  try {
    await use({ folder, context, trouble, address: server.address });
  } finally {
    await context.close();
    server.stop();
    await rm(folder, { recursive: true });
  }
}

const integrity = (bytes) => `sha256-${createHash("sha256").update(bytes).digest("base64")}`;

/** The page says which edition of it this is: its title names what is on the screen. */
const marked = (text, edition) => text.replace("<title>", `<meta name="edition" content="${edition}"><title>`);
const edition = (page) => page.evaluate(() => document.querySelector("meta[name=edition]")?.content ?? "first");

/** Puts another edition in place, as a new version would be; a whole one also has its own worker. */
async function publish(folder, name, { whole }) {
  const entry = path.join(folder, "index.html");
  const worker = path.join(folder, "service_worker.js");
  const before = await readFile(entry, "utf8");
  const text = marked(before, name);
  const script = (await readFile(worker, "utf8"))
    .replace(/(STORE ?= ?`\$\{STORES\})[^`]*/, `$1${name}`)
    .replace(integrity(before), whole ? integrity(text) : integrity("something else"));
  await writeFile(entry, text);
  await writeFile(worker, script);
}

const stores = (page) => page.evaluate(() => caches.keys());

/** Asks for a new version, and waits until it is there or thrown away. */
async function update(page) {
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update().catch(() => {}));
  await until(page, "the update has come to an end", async () => !(await navigator.serviceWorker.ready).installing);
}

/** Puts another version in place of the one that is served: the further parts have other names. */
async function republish(folder) {
  const entry = path.join(folder, "index.html");
  let text = await readFile(entry, "utf8");
  for (const name of new Set(text.match(/(answers|details)[\w.]*-[0-9a-f]+\.wasm/g))) {
    const next = name.replace(/-[0-9a-f]{4}/, "-0000");
    await rename(path.join(folder, name), path.join(folder, next));
    text = text.replaceAll(name, next);
  }
  await writeFile(entry, marked(text, "next"));
}

test("a version that is published while the page loads for the first time is told, and had by trying again", () =>
  copyServed(async ({ folder, address }) => {
    // the worker of the first version would find half of it: it is none
    const { context } = await watched(browser, { ...PHONE, serviceWorkers: "block" });
    const page = await context.newPage();
    let release;
    const held = new Promise((resolve) => { release = resolve; });
    await page.route(/\/answers[^/]*\.wasm$/, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(address);
    await page.getByRole("heading", { level: 1 }).first().waitFor();
    await type(page, "injectors.resistance", "2.4 ohm");
    await republish(folder);
    release();
    const told = page.getByRole("alert").filter({ hasText: "could not be loaded" });
    await told.waitFor();
    assert.match(await told.innerText(), /newer Quietpin/);
    assert.doesNotMatch(await told.innerText(), /connection/);
    await told.getByRole("button", { name: "Try again" }).click();
    await page.locator('meta[name=edition][content="next"]').waitFor({ state: "attached" });
    await started(page);
    assert.equal(await stands(page, "injectors.resistance"), "2.4 ohm");
    await context.close();
  }));

test("the page loads again with no network", () => copyServed(async ({ context, trouble, address }) => {
  const page = await open(context, address);
  await kept(page);
  await context.setOffline(true);
  await page.reload();
  await started(page);
  await open(context, `${address}?from=home`);
  assert.deepEqual(trouble, []);
}));

/**
 * A page that the new version has taken over. A page that is opened while the browser still puts the last one away belongs
 * to the old version as well, and keeps it: it is closed, and opened again.
 */
async function openedByTheNew(context, address) {
  for (const end = Date.now() + PATIENCE; Date.now() < end;) {
    const next = await open(context, address);
    for (let asked = 0; asked < 20; asked += 1) {
      if ((await stores(next)).length === 1) return next;
      await next.waitForTimeout(50);
    }
    await next.close();
  }
  throw new Error("after a minute still not true: the new version takes over");
}

test("a new version takes over when the last page is closed, and not before", () =>
  copyServed(async ({ folder, context, address }) => {
    const page = await open(context, address);
    await kept(page);
    await publish(folder, "next", { whole: true });
    await update(page);
    assert.equal((await stores(page)).length, 2, "the new version is there, the old one is kept");
    await page.reload();
    await started(page);
    assert.equal(await edition(page), "first", "an open page stays with its version");
    await page.close();
    const next = await openedByTheNew(context, address);
    await next.reload();
    assert.equal(await edition(next), "next");
  }));

test("a version that arrives broken is thrown away", () => copyServed(async ({ folder, context, address }) => {
  const page = await open(context, address);
  await kept(page);
  const before = await stores(page);
  await publish(folder, "torn", { whole: false });
  await update(page);
  assert.deepEqual(await stores(page), before);
  await page.close();
  await context.setOffline(true);
  const again = await open(context, address);
  assert.equal(await edition(again), "first");
}));

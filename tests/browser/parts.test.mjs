// The program comes in parts: the first shows the form, the second answers. What is typed in between is not lost.
import { test } from "node:test";
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { go, numbers, reads, shown, stands, type, verdict, workshop } from "./fitter.mjs";
import { PHONE, kept, launch, open, singleFile, started, watched } from "./support.mjs";

const visit = workshop();
const SECOND = /\/answers-[0-9a-f]+\.wasm$/;
const THIRD = /\/details-[0-9a-f]+\.wasm$/;

// Without a service worker: it would have fetched the second part for itself, and hand it out whatever the test does.
const UNKEPT = { ...PHONE, serviceWorkers: "block" };

/** A page whose second part does what `treat` does with its request; and what went wrong in it but for that. */
async function formOnly(browser, address, treat) {
  const { context, trouble } = await watched(browser, UNKEPT);
  const page = await context.newPage();
  await page.route(SECOND, treat);
  await page.goto(address);
  await page.getByRole("heading", { level: 1 }).first().waitFor();
  const expected = /Service Worker registration blocked|Failed to load resource/;
  return { page, context, unexpected: () => trouble.filter((it) => !expected.test(it)) };
}

test("what is typed before the answers are there is answered when they come", () => visit(async ({ browser, address }) => {
  let release;
  const held = new Promise((resolve) => { release = resolve; });
  const { page, context, unexpected } = await formOnly(browser, address, async (route) => {
    await held;
    await route.continue();
  });
  await type(page, "injectors.resistance", "2.4 ohm");
  await type(page, "injectors.output_limit", "4 A");
  assert.equal(await verdict(page, "injectors").innerText(), "One moment…");
  assert.equal(await page.locator("main[aria-busy]").count(), 1, "it answered without its second part");
  const stored = await page.evaluate(() => Object.values(localStorage).join());
  assert.match(stored, /2\.4 ohm/, "what was typed was not kept at once");
  await (await shown(page, "injectors.output_limit")).focus();
  release();
  await started(page);
  assert.doesNotMatch(await page.locator("main").innerText(), /One moment/);
  assert.doesNotMatch(await verdict(page, "injectors").innerText(), /Not answered yet/);
  assert.equal(await stands(page, "injectors.resistance"), "2.4 ohm");
  const hand = await page.evaluate(() => document.activeElement.id);
  assert.equal(hand, "at-injectors.output_limit", "the answers took the keyboard out of the field");
  assert.deepEqual(unexpected(), []);
  await context.close();
}));

for (const [how, fail] of [
  ["no connection", (route) => route.abort()],
  ["a server that refuses", (route) => route.fulfill({ status: 503, body: "" })],
  ["half a file", (route) => route.fulfill({ status: 200, contentType: "application/wasm", body: "\0asm" })],
]) {
  test(`answers that can't be had are told of, and can be asked for again: ${how}`, () => visit(async ({ browser, address }) => {
    const { page, context, unexpected } = await formOnly(browser, address, fail);
    const told = page.getByRole("alert").filter({ hasText: "could not be loaded" });
    await told.waitFor();
    await type(page, "injectors.resistance", "2.4 ohm");
    for (const at of ["injectors", "list"]) {
      await go(page, at);
      assert.doesNotMatch(await page.locator("main").innerText(), /One moment/, `${at} promises what does not come`);
    }
    await told.getByRole("button", { name: "Try again" }).click();
    await told.waitFor();
    await page.unroute(SECOND);
    await told.getByRole("button", { name: "Try again" }).click();
    await started(page);
    assert.equal(await told.count(), 0);
    await reads(page, "injectors", /^(?!Not answered yet|One moment)/);
    assert.equal(await stands(page, "injectors.resistance"), "2.4 ohm");
    assert.deepEqual(unexpected(), []);
    await context.close();
  }));
}

test("details that can't be had are told of, and can be asked for again; the answers stand", () => visit(async ({ browser, address }) => {
  const { context, trouble } = await watched(browser, UNKEPT);
  const page = await context.newPage();
  await page.route(THIRD, (route) => route.abort());
  await page.goto(address);
  const told = page.getByRole("alert").filter({ hasText: "Every answer stands" });
  await told.waitFor();
  await page.getByRole("button", { name: /Look at the demo/ }).click();
  await reads(page, "injectors", /^(?!Not answered yet|One moment)/);
  assert.equal(await page.locator(".figures, .picture, details.more").count(), 0, "the third part is there");
  await page.unroute(THIRD);
  await told.getByRole("button", { name: "Try again" }).click();
  await page.locator(".picture").first().waitFor();
  await (await numbers(page, "injectors")).locator(".figures").waitFor();
  assert.equal(await told.count(), 0);
  assert.deepEqual(trouble.filter((it) => !/Service Worker registration blocked|Failed to load resource/.test(it)), []);
  await context.close();
}));

test("the second part is asked for once, after the form is painted", () => visit(async ({ context, address }) => {
  const page = await open(context, address);
  const { asked, painted } = await page.evaluate(() => ({
    asked: performance.getEntriesByType("resource").filter((it) => it.name.includes("/answers-")).map((it) => it.startTime),
    painted: performance.getEntriesByName("first-contentful-paint").map((it) => it.startTime),
  }));
  assert.equal(asked.length, 1);
  assert.ok(asked[0] >= painted[0], `asked for at ${asked} ms, painted at ${painted} ms`);
}));

test("all parts are kept for use with no network", () => visit(async ({ page }) => {
  await kept(page);
  const names = await page.evaluate(async () => {
    const store = await caches.open((await caches.keys())[0]);
    return (await store.keys()).map((it) => new URL(it.url).pathname);
  });
  for (const part of [SECOND, THIRD, /\/quietpin-[0-9a-f]+\.wasm$/]) {
    assert.equal(names.filter((it) => part.test(it)).length, 1, `${part} among ${names}`);
  }
}));

test("the page in one file answers, and holds all parts itself", async () => {
  const browser = await launch();
  const { context, trouble } = await watched(browser);
  const page = await open(context, singleFile);
  await type(page, "injectors.resistance", "2.4 ohm");
  await reads(page, "injectors", /^(?!Not answered yet|One moment)/);
  assert.match(await readFile(new URL(singleFile), "utf8"), /id="program">AGFzbQ[\s\S]*id="answers">AGFzbQ[\s\S]*id="details">AGFzbQ/);
  assert.deepEqual(trouble, []);
  await browser.close();
});

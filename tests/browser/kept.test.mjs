// What was typed is never lost: not by a reload, no network, a crash, a restart, nor by a browser that keeps nothing.
import { test } from "node:test";
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { chromium } from "playwright-core";
import { PATIENCE, PHONE, kept, launchOptions, open, patient, singleFile, started, until } from "./support.mjs";
import { FOUR, go, notices, plans, reads, stands, type, typeAll, typed, workshop } from "./fitter.mjs";

const visit = workshop();

/** Something in every kind of field, with a mistake that must be kept as it was typed. */
const TYPED = {
  ...FOUR,
  "injectors.resistance": "2.4 mH",
  "injectors.output_limit": "3,5 A",
  "cranking.speed": "200 rpm",
  "relays.0.relay_on_at": "fast",
  "temperatures.cold": "-25 °C",
};

async function isAllThere(page) {
  assert.deepEqual(await typed(page, Object.keys(TYPED)), TYPED);
}

test("with no network, all that was typed is there after a reload", () => visit(async ({ page, context }) => {
  await kept(page);
  await typeAll(page, TYPED);
  await context.setOffline(true);
  await page.reload();
  await isAllThere(page);
  await reads(page, "channels.ignition_mode", /: 4 channels/);
  await type(page, "channels.ignition_mode", "paired-double");
  await reads(page, "channels.ignition_mode", /: 2 channels/);
  await page.reload();
  await reads(page, "channels.ignition_mode", /: 2 channels/);
}));

test("a page that is closed without warning has kept all", () => visit(async ({ page, context, address }) => {
  await typeAll(page, TYPED);
  await page.close({ runBeforeUnload: false });
  await isAllThere(await open(context, address));
}));

test("a page that crashes has kept all", () => visit(async ({ page, context, address }) => {
  await typeAll(page, TYPED);
  const crashed = page.waitForEvent("crash");
  const cdp = await context.newCDPSession(page);
  cdp.send("Page.crash").catch(() => {});
  await crashed;
  await isAllThere(await open(context, address));
}));

test("a browser that is closed and started again has kept all", () => visit(async ({ address }) => {
  const profile = await mkdtemp(path.join(os.tmpdir(), "quietpin-profile-"));
  const start = async () => patient(await chromium.launchPersistentContext(profile, { ...launchOptions(), ...PHONE }));
  try {
    const first = await start();
    await typeAll(await open(first, address), TYPED);
    await first.close();
    const second = await start();
    await isAllThere(await open(second, address));
    await second.close();
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}));

/** A browser with this profile, in a group of processes of its own, which dies at once. */
async function mortal(profile) {
  const { executablePath, args } = launchOptions();
  const start = [...args, "--remote-debugging-port=0", `--user-data-dir=${profile}`, "about:blank"];
  const child = spawn(executablePath, start, { detached: true, stdio: "ignore" });
  const gone = new Promise((done) => { child.on("exit", done); });
  const kill = async () => {
    process.kill(-child.pid, "SIGKILL");
    await gone;
  };
  try {
    const port = await debuggingPort(profile);
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    return { context: patient(browser.contexts()[0]), kill };
  } catch (error) {
    await kill();
    throw error;
  }
}

/** The port that the browser writes down once it is there. */
async function debuggingPort(profile) {
  for (const end = Date.now() + PATIENCE; Date.now() < end;) {
    const text = await readFile(path.join(profile, "DevToolsActivePort"), "utf8").catch(() => "");
    if (text.includes("\n")) return text.split("\n")[0];
    await new Promise((done) => { setTimeout(done, 50); });
  }
  throw new Error("after a minute the browser is not there");
}

/** Waits until the database holds what is typed last: only what is on the disk can be read from it after it was written. */
const isInDatabase = (page) => until(page, "the last text is in the database", async () => {
  const request = indexedDB.open("quietpin");
  const database = await new Promise((done, fail) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });
  const all = database.transaction("kept").objectStore("kept").getAll();
  const values = await new Promise((done) => { all.onsuccess = () => done(all.result); });
  database.close();
  return values.some((it) => it.includes("-25 °C"));
});

test("what was typed survives a browser that is killed, and the loss of its simple storage", () => visit(async ({ address }) => {
  const profile = await mkdtemp(path.join(os.tmpdir(), "quietpin-profile-"));
  let browser;
  try {
    browser = await mortal(profile);
    const page = await open(browser.context, address);
    await typeAll(page, TYPED);
    const start = Date.now();
    await isInDatabase(page);
    console.log(`a keystroke was on the disk after ${Date.now() - start} ms at the most`);
    await browser.kill();
    // of this the last minute may be lost; here, all of it is
    await rm(path.join(profile, "Default", "Local Storage"), { recursive: true });
    await rm(path.join(profile, "DevToolsActivePort"), { force: true });
    browser = await mortal(profile);
    await isAllThere(await open(browser.context, address));
  } finally {
    await browser?.kill().catch(() => {});
    await rm(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}));

test("the newer of both copies is opened", () => visit(async ({ page, context, address }) => {
  await typeAll(page, FOUR);
  await until(page, "both copies are there", async () => (await indexedDB.databases()).length > 0);
  await page.evaluate(() => {
    const name = Object.keys(localStorage).find((it) => it.startsWith("quietpin.plan."));
    const [line, ...text] = localStorage.getItem(name).split("\n");
    // another page, of a program that keeps no second copy, kept this later
    const later = `${Number(line.split(" ")[0]) + 1000} ${line}`;
    localStorage.setItem(name, [later, ...text].join("\n").replace("1-3-4-2", "1-2-4-3"));
  });
  await page.close();
  const again = await open(context, address);
  assert.equal(await stands(again, "engine.order"), "1-2-4-3");
}));

test("a browser without a database keeps the first copy", () => visit(async ({ context, address }) => {
  await context.addInitScript(() => {
    Object.defineProperty(window, "indexedDB", { get() { throw new DOMException("denied", "SecurityError"); } });
  });
  const page = await open(context, address);
  await typeAll(page, TYPED);
  await page.reload();
  await isAllThere(page);
}));

test("a database that never answers keeps nobody waiting for long", () => visit(async ({ context, address }) => {
  await context.addInitScript(() => { IDBFactory.prototype.open = () => ({}); });
  const page = await open(context, address);
  await typeAll(page, FOUR);
  await page.reload();
  await started(page);
  assert.deepEqual(await typed(page, Object.keys(FOUR)), FOUR);
}));

test("a plan that was not answered to the end opens without answers, and is answered when that is asked for", () =>
  visit(async ({ page, context, address }) => {
    await typeAll(page, FOUR);
    await page.close();
    const again = await context.newPage();
    await again.route("**/favicon.ico", (route) => route.fulfill({ status: 204 }));
    // a file of the same server, in which no program answers meanwhile
    await again.goto(`${address}LICENSES-third-party.txt`);
    await again.evaluate(() => {
      localStorage.setItem(`quietpin.answering.${localStorage.getItem("quietpin.open")}`, "");
    });
    await again.goto(address);
    const told = again.getByRole("alert").filter({ hasText: "did not finish answering this plan" });
    await told.waitFor();
    assert.deepEqual(await typed(again, Object.keys(FOUR)), FOUR);
    for (const at of ["channels.ignition_mode", "engine", "list"]) {
      await go(again, at);
      assert.doesNotMatch(await again.locator("main").innerText(), /4 channels|One moment/, at);
    }
    await type(again, "engine.order", "1-2-4-3");
    const sheet = await plans(again);
    assert.ok(await sheet.getByRole("button", { name: "New, blank" }).isVisible(), "the plans are out of reach");
    await again.reload();
    await told.getByRole("button", { name: "Answer it now" }).click();
    await reads(again, "channels.ignition_mode", /: 4 channels/);
    assert.equal(await stands(again, "engine.order"), "1-2-4-3");
    await again.reload();
    await reads(again, "channels.ignition_mode", /: 4 channels/);
    assert.equal(await told.count(), 0, "it was answered to the end");
  }));

test("the one file answers and keeps, with no server", () => visit(async ({ context }) => {
  const page = await open(context, singleFile);
  await typeAll(page, TYPED);
  await reads(page, "channels.ignition_mode", /^Not yet proved: 4 channels, one for each cylinder$/);
  await go(page, "list");
  assert.ok(await page.getByText("This is the single-file page").isVisible());
  await page.reload();
  await isAllThere(page);
}));

const full = () => {
  Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
};
const denied = () => {
  Object.defineProperty(window, "localStorage", { get() { throw new DOMException("denied", "SecurityError"); } });
};

async function worksWithout(page) {
  await typeAll(page, FOUR);
  await reads(page, "channels.ignition_mode", /^Not yet proved: 4 channels, one for each cylinder$/);
  assert.match(await notices(page).innerText(), /does not keep the plan.*Save the plan as a file/);
  assert.deepEqual(await typed(page, Object.keys(FOUR)), FOUR);
  const sheet = await plans(page);
  const download = page.waitForEvent("download");
  await sheet.getByRole("button", { name: "Save as a file" }).click();
  const saved = JSON.parse(await readFile(await (await download).path(), "utf8"));
  assert.equal(saved.engine.order, "1-3-4-2");
}

for (const [how, init] of [["full", full], ["denied", denied]]) {
  test(`where the storage is ${how}, the page says so and works on`, () => visit(async ({ context, address }) => {
    await context.addInitScript(init);
    await worksWithout(await open(context, address));
  }));
  test(`the one file, where the storage is ${how}, says so and works on`, () => visit(async ({ context }) => {
    await context.addInitScript(init);
    await worksWithout(await open(context, singleFile));
  }));
}

test("a storage that fills up meanwhile loses nothing", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  await page.evaluate(full);
  await type(page, "engine.order", "1-2-4-3");
  assert.match(await notices(page).innerText(), /does not keep the plan/);
  await page.getByRole("button", { name: "OK" }).click();
  assert.equal(await notices(page).count(), 0);
  assert.equal(await stands(page, "engine.order"), "1-2-4-3");
}));

const BROKEN = "{\"quietpin\": 1, \"engine\": {\"cylinders\": \"6\"";

test("a kept plan that can't be read is set aside, untouched, and can be saved", () =>
  visit(async ({ page, context, address }) => {
    await page.evaluate((text) => {
      localStorage.setItem("quietpin.plan.1", text);
      localStorage.setItem("quietpin.open", "1");
    }, BROKEN);
    await page.close();
    const again = await open(context, address);
    assert.match(await notices(again).innerText(), /can.t be read.*untouched/);
    const download = again.waitForEvent("download");
    await again.getByRole("button", { name: "Save the old text as a file" }).click();
    assert.equal(await readFile(await (await download).path(), "utf8"), BROKEN);
    await typeAll(again, FOUR);
    await again.reload();
    assert.deepEqual(await typed(again, Object.keys(FOUR)), FOUR);
    assert.equal(await again.evaluate(() => localStorage.getItem("quietpin.plan.1")), BROKEN, "the old text was touched");
  }));

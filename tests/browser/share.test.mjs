// A plan to another phone with no network: as codes that a decoder of its own reads off the screen (ISO/IEC 18004), as a
// link, and as text that is pasted.
import { after, before, test } from "node:test";
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { createRequire } from "node:module";
import { demo, notices, openPlan as opened, plans, stands, type, workshop } from "./fitter.mjs";
import { PHONE, launch, open, singleFile, started, until, watched } from "./support.mjs";

const visit = workshop();
const decoder = createRequire(import.meta.url).resolve("jsqr/dist/jsQR.js");

let browser;
let camera;
before(async () => {
  browser = await launch();
  camera = await browser.newPage();
  await camera.addScriptTag({ path: decoder });
});
after(async () => { await browser?.close(); });

/** What a decoder reads in a picture. */
const read = (png) => camera.evaluate(async (source) => {
  const image = new Image();
  image.src = source;
  await image.decode();
  const canvas = new OffscreenCanvas(image.width, image.height).getContext("2d");
  canvas.drawImage(image, 0, 0);
  const { data, width, height } = canvas.getImageData(0, 0, image.width, image.height);
  return window.jsQR(data, width, height)?.data;
}, `data:image/png;base64,${png.toString("base64")}`);

/** Opens the fold that shows the codes. */
async function codes(page) {
  const sheet = await plans(page);
  const fold = sheet.locator("details", { hasText: "To another phone" });
  if (await fold.getAttribute("open") === null) await fold.locator("> summary").tap();
  await fold.locator("p").first().waitFor();
  return fold;
}

/** Scans every code that a page shows. */
async function scanned(page) {
  const fold = await codes(page);
  const found = [];
  for (;;) {
    const count = await fold.locator(".symbol").getAttribute("aria-label");
    const text = await read(await fold.locator(".symbol").screenshot());
    assert.ok(text, `${count} is not read off the screen`);
    found.push(text);
    const next = fold.getByRole("button", { name: "Next" });
    if (await next.count() === 0 || await next.isDisabled()) return found;
    await next.tap();
    // the next one is drawn in a task of its own
    await fold.locator(`.symbol:not([aria-label="${count}"])`).waitFor();
  }
}

const kept = (page) => page.evaluate(() =>
  Object.keys(localStorage).filter((name) => name.startsWith("quietpin.plan.")).length);

/** Signs in which a compressor finds nothing, the same at each run. */
const noise = (length, from) => {
  let text = "";
  for (let at = 0; text.length < length; at += 1) text += createHash("sha256").update(`${from} ${at}`).digest("base64");
  return text.slice(0, length);
};

/** Opens a demo with notes that take several codes. */
async function longDemo(page, name, length = 3300) {
  await (await plans(page)).getByRole("button", { name: "New, from the demo" }).tap();
  await page.evaluate(([name, notes]) => {
    const key = `quietpin.plan.${localStorage.getItem("quietpin.open")}`;
    const kept = localStorage.getItem(key);
    const from = kept.indexOf("{");
    // later than what the database has by now
    const times = kept.slice(0, from).replace(/^\d+/, (time) => String(Number(time) + 1));
    localStorage.setItem(key, times + JSON.stringify({ ...JSON.parse(kept.slice(from)), name, notes }));
  }, [name, noise(length, name)]);
  await page.reload();
  await started(page);
}

/** A phone of its own, with a plan of its own open. */
async function otherPhone(address, use) {
  const { context, trouble } = await watched(browser);
  try {
    const page = await open(context, address);
    await type(page, "engine.cylinders", "4");
    await use({ context, page });
    assert.deepEqual(trouble, [], "something went wrong in the page");
  } finally {
    await context.close();
  }
}

const scan = (context, link) => open(context, link);
const told = (page, text) => notices(page).filter({ hasText: text }).waitFor();
/** An order that is not theirs. */
const shuffled = (all) => [...all.filter((_, at) => at % 2 === 1), ...all.filter((_, at) => at % 2 === 0)];

test("the demo goes to another phone in one code, large enough to be scanned", () => visit(async ({ page, address }) => {
  await demo(page);
  const links = await scanned(page);
  assert.equal(links.length, 1);
  assert.equal(await page.getByRole("button", { name: "Next" }).count(), 0, "there is nothing to step through");
  assert.ok(links[0].startsWith(`${address}#plan=`), links[0]);
  const symbol = page.locator(".symbol");
  const modules = Number((await symbol.getAttribute("viewBox")).split(" ")[2]);
  const { width } = await symbol.boundingBox();
  assert.ok(width / modules >= 1.5, `${width} px for ${modules} modules`);
  assert.equal(await page.locator("#plan-link").inputValue(), links[0]);
  await otherPhone(address, async ({ context, page: own }) => {
    const before = await opened(own);
    const there = await scan(context, links[0]);
    await told(there, "came from another phone and is open");
    assert.deepEqual(await opened(there), await opened(page));
    assert.equal(await there.locator(".plan-name").innerText().then((it) => it.trim()),
      (await page.locator(".plan-name").innerText()).trim());
    assert.equal(new URL(there.url()).hash, "", "the plan is taken off the address");
    assert.equal(await kept(there), 2, "beside the plan that was there");
    await there.reload();
    await started(there);
    assert.equal(await kept(there), 2, "and not once more");
    assert.deepEqual(await opened(there), await opened(page));
    await own.reload();
    await (await plans(there)).getByRole("button", { name: "Plan without a name" }).tap();
    assert.deepEqual(await opened(there), before, "nothing of it was touched");
  });
}));

test("a series of codes is opened in any order, each by a page of its own", () => visit(async ({ page, address }) => {
  await longDemo(page, "Long");
  const links = await scanned(page);
  assert.ok(links.length >= 4, `${links.length} codes`);
  await otherPhone(address, async ({ context }) => {
    const [last, ...first] = shuffled(links).reverse();
    for (const [at, link] of first.entries()) {
      const there = await scan(context, link);
      await told(there, `${at + 1} of ${links.length} codes so far: `);
      assert.equal(await kept(there), 1, "nothing is opened yet");
      await there.close();
    }
    const there = await scan(context, last);
    await told(there, "The plan “Long” came from another phone and is open");
    assert.deepEqual(await opened(there), await opened(page));
  });
}));

test("links that are opened in one page, one after the other, gather too", () => visit(async ({ page, address }) => {
  await longDemo(page, "Long", 1200);
  const links = await scanned(page);
  await otherPhone(address, async ({ page: there }) => {
    for (const link of links) {
      await there.evaluate((hash) => { location.hash = hash; }, new URL(link).hash);
      await until(there, "the fragment is taken", () => location.hash === "");
    }
    await told(there, "The plan “Long” came");
    assert.equal(await notices(there).count(), 1, "what was missing is not said any more");
    assert.deepEqual(await opened(there), await opened(page));
  });
}));

test("a damaged code is told, and nothing is opened", () => visit(async ({ page, address }) => {
  await demo(page);
  const [link] = await scanned(page);
  await otherPhone(address, async ({ context, page: there }) => {
    const before = await opened(there);
    const at = await scan(context, link.slice(0, -20));
    await told(at, "damaged, or not all of it is here: scan it again");
    const slip = link.replace(/.(?=.{30}$)/, (sign) => (sign === "7" ? "8" : "7"));
    for (const [bad, says] of [[link.replace("#plan=A", "#plan=B"), "made by a newer Quietpin"], [slip, "damaged"],
      [`${address}#plan=A0Z`, "damaged"], [`${address}#plan=`, "damaged"]]) {
      await at.getByRole("button", { name: "OK", exact: true }).tap();
      await at.evaluate((hash) => { location.hash = hash; }, bad.slice(address.length));
      await told(at, says);
      assert.equal(new URL(at.url()).hash, "");
      assert.equal(await kept(at), 1);
      assert.deepEqual(await opened(at), before);
    }
  });
}));

test("codes of two plans are told apart", () => visit(async ({ page, address }) => {
  await longDemo(page, "One", 1200);
  const ones = await scanned(page);
  await longDemo(page, "Other", 1300);
  const others = await scanned(page);
  await otherPhone(address, async ({ page: there }) => {
    const sheet = await plans(there);
    await sheet.getByText("From another phone").first().tap();
    const paste = (text) => there.getByLabel("Paste what was scanned").fill(text);
    await paste(ones[0]);
    await sheet.getByText(/^From another phone, 1 of/).waitFor();
    await paste(others[0]);
    await sheet.getByText("This code is of another plan than those before it").waitFor();
    assert.equal(await kept(there), 1);
    for (const text of others.slice(1)) await paste(text);
    await sheet.getByText("The plan “Other” came from another phone").waitFor();
    assert.equal((await opened(there)).name, "Other");
    for (const text of ones.slice(1)) await paste(text);
    await sheet.getByText("The plan “One” came from another phone").waitFor();
    assert.equal((await opened(there)).name, "One");
  });
}));

test("what was scanned is pasted in the one file, which tells what is missing", () => visit(async ({ context }) => {
  const from = await open(context, singleFile);
  await longDemo(from, "Long");
  const texts = await scanned(from);
  assert.ok(texts.every((it) => it.startsWith("#plan=")), "there is no address to open");
  await otherPhone(singleFile, async ({ page }) => {
    const sheet = await plans(page);
    await sheet.getByText("From another phone").first().tap();
    const box = page.getByLabel("Paste what was scanned");
    await box.fill(texts[0].slice(0, 200));
    await sheet.getByText("damaged, or not all of it is here").waitFor();
    await box.fill("hello");
    await sheet.getByText("This is not a code of a plan").waitFor();
    assert.equal(await box.inputValue(), "hello", "what can't be read is left to be looked at");
    const left = [1, 3];
    for (const [at, text] of texts.entries()) if (!left.includes(at)) await box.fill(text);
    await sheet.locator(".count", { hasText: `${texts.length - 2} of ${texts.length} codes so far: codes 2 and 4 are missing.` }).waitFor();
    assert.equal(await box.inputValue(), "", "the box is empty for the next");
    await page.reload();
    await started(page);
    await plans(page);
    await sheet.locator(".count", { hasText: "2 and 4 are missing." }).waitFor();
    await box.fill(left.map((at) => texts[at]).join("\n"));
    await sheet.getByText("The plan “Long” came from another phone").waitFor();
    assert.deepEqual(await opened(page), await opened(from));
    assert.equal(await sheet.locator(".count").count(), 0, "nothing waits any more");
  });
}));

test("codes that wait are forgotten where somebody wants that", () => visit(async ({ page, address }) => {
  await longDemo(page, "Long", 1200);
  const [link] = await scanned(page);
  await otherPhone(address, async ({ context }) => {
    const there = await scan(context, link);
    const sheet = await plans(there);
    await sheet.getByRole("button", { name: "Forget these codes" }).tap();
    await sheet.getByText("They are forgotten").waitFor();
    assert.equal(await there.evaluate(() => localStorage.getItem("quietpin.scanned")), null);
  });
}));

test("the link is copied by one tap, and follows the plan", () => visit(async ({ page, context }) => {
  await context.grantPermissions(["clipboard-read"]);
  await demo(page);
  const fold = await codes(page);
  const link = page.locator("#plan-link");
  const before = await link.inputValue();
  await page.getByLabel("Name of this plan").fill("Another name");
  await until(page, "the link follows", `document.getElementById("plan-link").value !== ${JSON.stringify(before)}`);
  await fold.getByRole("button", { name: "Copy the link" }).tap();
  await fold.getByRole("button", { name: "Copied" }).waitFor();
  assert.equal(await page.evaluate(() => navigator.clipboard.readText()), await link.inputValue());
}));

test("a code is black on white in the dark too", () => visit(async ({ page }) => {
  await demo(page);
  const symbol = (await codes(page)).locator(".symbol");
  assert.equal(await read(await symbol.screenshot()), await page.locator("#plan-link").inputValue());
  const painted = await symbol.locator("path").evaluateAll((all) => all.map((it) => getComputedStyle(it).fill));
  assert.deepEqual(painted, ["rgb(255, 255, 255)", "rgb(0, 0, 0)"]);
}, { ...PHONE, colorScheme: "dark" }));

test("a plan that takes too many codes is to be saved as a file", () => visit(async ({ page }) => {
  await longDemo(page, "Endless", 20_000);
  const fold = await codes(page);
  await fold.getByText("save it as a file instead").waitFor();
  assert.equal(await fold.locator(".symbol").count(), 0);
}));

test("where the browser keeps nothing, what is pasted gathers all the same", () => visit(async ({ page, context }) => {
  await longDemo(page, "Long", 1200);
  const texts = await scanned(page);
  await context.addInitScript(() => {
    Object.defineProperty(window, "localStorage", { get() { throw new DOMException("denied", "SecurityError"); } });
  });
  const there = await open(context, singleFile);
  const sheet = await plans(there);
  await sheet.getByText("From another phone").first().tap();
  for (const text of texts) await there.getByLabel("Paste what was scanned").fill(text);
  await sheet.getByText("The plan “Long” came from another phone").waitFor();
  assert.equal(await stands(there, "engine.cylinders"), "6");
}));

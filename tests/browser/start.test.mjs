// The page starts: from a server, and from its one file. Where it cannot, or stops, it says so.
import { after, before, test } from "node:test";
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { kept, launch, open, patient, serve, singleFile, watched } from "./support.mjs";

let server;
let browser;
before(async () => {
  server = await serve();
  browser = await launch();
});
after(async () => {
  await browser?.close();
  server?.stop();
});

async function startsQuietly(address) {
  const { context, trouble } = await watched(browser);
  const page = await open(context, address);
  assert.equal(await page.title(), "Quietpin");
  assert.match(await page.getByRole("heading", { level: 1 }).first().innerText(), /Quietpin/);
  assert.equal(await page.getByText("Quietpin is loading").count(), 0, "the text shown while loading is gone");
  await page.waitForLoadState("networkidle");
  assert.deepEqual(trouble, []);
  await context.close();
}

test("the page starts from a server", () => startsQuietly(server.address));
test("the page starts from its one file, with no server", () => startsQuietly(singleFile));

test("the policy of the served page lets nothing else in", async () => {
  const { context, trouble } = await watched(browser);
  const page = await open(context, server.address);
  await page.evaluate(() => fetch("https://elsewhere.invalid/").catch(() => {}));
  await page.evaluate(() => { document.body.setAttribute("style", "color: red"); });
  await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "window.entered = true";
    document.head.append(script);
  });
  assert.equal(await page.evaluate(() => window.entered), undefined);
  // once by the page's own, and once by the server's
  const breaches = new Set(trouble.filter((entry) => entry.startsWith("policy: ")).map((entry) => entry.split(" ")[1]));
  assert.deepEqual([...breaches].sort(), ["connect-src", "script-src-elem", "style-src-attr"]);
  await context.close();
});

test("the licences of what the page is made with are linked, and kept with it", async () => {
  const { context, trouble } = await watched(browser);
  const page = await open(context, server.address);
  await kept(page);
  await context.setOffline(true);
  const link = page.getByRole("link", { name: /Licences/ });
  const text = await link.evaluate(async (it) => (await fetch(it.href)).text());
  assert.match(text, /yew 0\.\d+[\s\S]*WITHOUT WARRANTY/);
  assert.deepEqual(trouble, []);
  assert.match(await readFile(new URL(singleFile), "utf8"), /id="licences">[\s\S]*yew 0\.\d+/);
  await context.close();
});

test("the server forbids to show the page inside another", async () => {
  const answer = await fetch(server.address);
  assert.equal(answer.headers.get("x-frame-options"), "DENY");
  const policy = answer.headers.get("content-security-policy");
  assert.match(policy, /default-src 'none'.*frame-ancestors 'none'/);
});

test("where nobody forbids it, the page itself does not work inside another", async () => {
  const { context } = await watched(browser);
  const page = await context.newPage();
  await page.route("**/around.html", (route) => {
    route.fulfill({ contentType: "text/html", body: `<iframe src="${server.address}"></iframe>` });
  });
  await page.route(server.address, async (route) => {
    const answer = await route.fetch();
    const headers = { ...answer.headers() };
    delete headers["x-frame-options"];
    delete headers["content-security-policy"];
    await route.fulfill({ response: answer, headers });
  });
  await page.goto(`${server.address}around.html`);
  const inside = page.frameLocator("iframe");
  await inside.getByText("does not work inside another page").waitFor();
  assert.equal(await inside.getByRole("heading", { level: 1 }).count(), 0, "it works all the same");
  const opened = context.waitForEvent("page");
  await inside.getByRole("link", { name: "Open it in a page of its own." }).click();
  await (await opened).getByRole("heading", { level: 1 }).first().waitFor();
  await context.close();
});

test("a program that cannot be loaded is told calmly", async () => {
  const { context } = await watched(browser);
  const page = await context.newPage();
  await page.route(/\.wasm$/, (route) => route.abort());
  await page.goto(server.address);
  const dialog = page.getByRole("dialog", { name: "Quietpin could not start." });
  await dialog.waitFor();
  assert.ok(await dialog.getByRole("button", { name: "Load the page again" }).isVisible());
  await context.close();
});

test("a browser without JavaScript is told what to do", async () => {
  const plain = await launch(["--blink-settings=scriptEnabled=false"]);
  const page = await patient(await plain.newContext()).newPage();
  await page.goto(server.address);
  // What is laid out, seen from outside: no script runs in the page, ours neither.
  const cdp = await page.context().newCDPSession(page);
  const { documents, strings } = await cdp.send("DOMSnapshot.captureSnapshot", { computedStyles: [] });
  const shown = documents[0].layout.text.map((index) => strings[index] ?? "").join(" ");
  await plain.close();
  assert.match(shown, /Switch JavaScript on/);
});

// The shortest module that traps: one function, whose body is `unreachable`.
const TRAP = [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 116, 0, 0, 10, 5, 1, 3, 0, 0, 11];

test("a trap stops the answers, and what is kept can be saved", async () => {
  const { context } = await watched(browser);
  const page = await open(context, server.address);
  await page.evaluate((bytes) => {
    localStorage.setItem("quietpin.example", "as typed");
    localStorage.setItem("other", "not ours");
    const { t } = new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array(bytes))).exports;
    setTimeout(t);
  }, TRAP);
  const dialog = page.getByRole("dialog", { name: "Quietpin has stopped because of a mistake of its own." });
  await dialog.waitFor();
  const download = page.waitForEvent("download");
  await dialog.getByRole("button", { name: "Save a copy of what is kept here" }).click();
  const saved = JSON.parse(await readFile(await (await download).path(), "utf8"));
  assert.equal(saved["quietpin.example"], "as typed");
  assert.equal("other" in saved, false, "nothing of other programs");
  await context.close();
});

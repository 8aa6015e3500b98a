// What the tests in a browser share: the server, the browser, and pages that report whatever goes wrong in them.
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import path from "node:path";
import { chromium } from "playwright-core";

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "..", "..");
export const dist = path.join(root, "dist");
/** The page in one file, as a phone opens it from its own storage. */
export const singleFile = pathToFileURL(path.join(dist, "quietpin.html")).href;

export const PHONE = { viewport: { width: 360, height: 640 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true };
export const DESK = { viewport: { width: 1280, height: 800 } };

/** How long a step may take, in milliseconds: a busy machine is ten times slower, and a step that is done waits for nothing. */
export const PATIENCE = 60_000;

/** Serves a folder with the project's own server, on a free port. */
export async function serve(folder = dist) {
  if (!existsSync(folder)) throw new Error(`${folder} is not there: run cargo xtask build first`);
  const [program, ...start] = process.env.QUIETPIN_XTASK
    ? [process.env.QUIETPIN_XTASK]
    : ["cargo", "run", "--quiet", "--package", "xtask", "--"];
  const options = { cwd: root, stdio: ["ignore", "pipe", "inherit"] };
  const child = spawn(program, [...start, "serve", "--port", "0", "--folder", folder], options);
  const address = await addressFrom(child);
  return { address, stop: () => child.kill() };
}

function addressFrom(child) {
  return new Promise((resolve, reject) => {
    let text = "";
    child.stdout.on("data", (chunk) => {
      text += chunk;
      const found = text.match(/http:\/\/127\.0\.0\.1:\d+\//);
      if (found) resolve(found[0]);
    });
    child.on("error", reject);
    child.on("exit", (code) => reject(new Error(`the server ended (${code}): ${text}`)));
  });
}

/** Chromium without a window. A missing browser fails the test. */
export function launch(more = []) {
  return chromium.launch(launchOptions(more));
}

/** How the browser is started, also where it keeps a profile. */
export function launchOptions(more = []) {
  return {
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    timeout: 2 * PATIENCE,
    args: [
      "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
      "--disable-background-networking", "--disable-component-update", "--disable-sync",
      // A page that asks another host finds none, whatever part of the browser asks.
      "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
      ...more,
    ],
  };
}

/**
 * A context of its own (nothing stored) whose pages are watched. `trouble` fills with every error or warning on the
 * console, every exception, every breach of the page's policy and every request to another host.
 */
export async function watched(browser, options = PHONE) {
  const context = patient(await browser.newContext({ locale: "en-GB", ...options }));
  const trouble = [];
  await context.exposeBinding("reportBreach", (_, breach) => trouble.push(`policy: ${breach}`));
  await context.addInitScript(() => {
    addEventListener("securitypolicyviolation", (event) => {
      window.reportBreach(`${event.effectiveDirective} ${event.blockedURI}`);
    });
  });
  context.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) trouble.push(`console: ${message.text()}`);
  });
  context.on("weberror", (event) => trouble.push(`exception: ${event.error()}`));
  context.on("request", (request) => {
    if (!isOwn(request.url())) trouble.push(`request: ${request.url()}`);
  });
  return { context, trouble };
}

/** The same context, whose pages may take their time: to load, and with each step. */
export function patient(context) {
  context.setDefaultTimeout(PATIENCE);
  return context;
}

function isOwn(url) {
  return ["file:", "data:", "blob:"].includes(new URL(url).protocol) || new URL(url).hostname === "127.0.0.1";
}

/** Waits until the program has put up its heading, and its second part answers. */
export async function started(page) {
  await page.getByRole("heading", { level: 1 }).first().waitFor();
  await page.locator("main:not([aria-busy], .unanswered)").waitFor();
}

/** Opens an address and waits until the page answers. */
export async function open(context, address) {
  const page = await context.newPage();
  await page.goto(address);
  await started(page);
  return page;
}

/**
 * Waits until `check`, run in the page, says yes. It asks again and again: an event may have come before one listens for
 * it, and the page's own wait takes a promise for an answer.
 */
export async function until(page, what, check) {
  for (const end = Date.now() + PATIENCE; !(await page.evaluate(check));) {
    if (Date.now() > end) throw new Error(`after a minute still not true: ${what}`);
    await page.waitForTimeout(50);
  }
}

/** Waits until the page is kept for use with no network. */
export function kept(page) {
  return until(page, "the page is kept", () => navigator.serviceWorker.controller?.state === "activated");
}

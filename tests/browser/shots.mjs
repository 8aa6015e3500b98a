// Pictures of the page: node shots.mjs FOLDER. The one in README.md goes to web/shots.
import { mkdir } from "node:fs/promises";
import path from "node:path";
import { demo, go } from "./fitter.mjs";
import { DESK, PHONE, launch, open, root, serve, watched } from "./support.mjs";

const folder = process.argv[2];
if (!folder) throw new Error("usage: node shots.mjs FOLDER");

const SIZES = { phone: PHONE, desk: DESK };
const SCHEMES = ["light", "dark"];

async function opened(browser, address, size, scheme) {
  const { context } = await watched(browser, { ...SIZES[size], colorScheme: scheme, reducedMotion: "reduce" });
  const page = await open(context, address);
  await page.evaluate(() => document.fonts.ready);
  return { context, page };
}

/** What is taken of the demo: the list, a card that is tapped, one that is typed, the sheet for the car. */
const SHOWN = { list: "list", bench: "channels.coils_wired", load: "loads.0", sheet: "sheet" };

async function shoot(browser, address, size, scheme) {
  const { context, page } = await opened(browser, address, size, scheme);
  const picture = (name) => page.screenshot({ path: path.join(folder, `${size}-${name}.png`), fullPage: true });
  await picture(`blank-${scheme}`);
  await demo(page);
  for (const [name, at] of Object.entries(SHOWN)) {
    await go(page, at);
    await picture(`${name}-${scheme}`);
  }
  if (scheme === "light") {
    await page.emulateMedia({ media: "print" });
    await picture("print");
  }
  await context.close();
}

async function readme(browser, address) {
  const { context, page } = await opened(browser, address, "phone", "light");
  await demo(page);
  await go(page, SHOWN.bench);
  const shots = path.join(root, "web", "shots");
  await mkdir(shots, { recursive: true });
  await page.screenshot({ path: path.join(shots, "phone.png") });
  await context.close();
}

await mkdir(folder, { recursive: true });
const server = await serve();
const browser = await launch();
try {
  for (const size of Object.keys(SIZES)) {
    for (const scheme of SCHEMES) await shoot(browser, server.address, size, scheme);
  }
  await readme(browser, server.address);
} finally {
  await browser.close();
  server.stop();
}

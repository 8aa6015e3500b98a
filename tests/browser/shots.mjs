// Pictures of the page: node shots.mjs FOLDER
import { mkdir } from "node:fs/promises";
import path from "node:path";
import { DESK, PHONE, launch, open, serve, watched } from "./support.mjs";

const folder = process.argv[2];
if (!folder) throw new Error("usage: node shots.mjs FOLDER");

const SIZES = { phone: PHONE, desk: DESK };
const SCHEMES = ["light", "dark"];

async function shoot(browser, address, size, scheme) {
  const { context } = await watched(browser, { ...SIZES[size], colorScheme: scheme, reducedMotion: "reduce" });
  const page = await open(context, address);
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: path.join(folder, `${size}-${scheme}.png`), fullPage: true });
  if (scheme === "light") {
    await page.emulateMedia({ media: "print" });
    await page.screenshot({ path: path.join(folder, `${size}-print.png`), fullPage: true });
  }
  await context.close();
}

await mkdir(folder, { recursive: true });
const server = await serve();
const browser = await launch();
try {
  for (const size of Object.keys(SIZES)) {
    for (const scheme of SCHEMES) await shoot(browser, server.address, size, scheme);
  }
} finally {
  await browser.close();
  server.stop();
}

// What a person does on the page, and reads there. The tests say what is done, this file says how.
import { after, before } from "node:test";
import assert from "node:assert/strict";
import { PHONE, launch, open, serve, until, watched } from "./support.mjs";

/**
 * A server and a browser for the tests of one file. What it returns runs one test: on a page of its own with nothing
 * stored, and with nothing going wrong on the console or in the page's policy meanwhile.
 */
export function workshop() {
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
  return async (use, options = PHONE) => {
    const { context, trouble } = await watched(browser, options);
    try {
      const page = await open(context, server.address);
      await use({ page, context, browser, address: server.address });
      assert.deepEqual(trouble, [], "something went wrong in the page");
    } finally {
      await context.close();
    }
  };
}

/**
 * The same for tests that leave a page as they found it: one page serves them all, put in order by `begin`. After a test that
 * fails the next one has a page of its own.
 */
export function bench(begin) {
  let server;
  let browser;
  let opened;
  const putAway = async () => {
    const { context, trouble } = opened ?? {};
    opened = undefined;
    await context?.close();
    assert.deepEqual(trouble ?? [], [], "something went wrong in the page");
  };
  before(async () => {
    server = await serve();
    browser = await launch();
  });
  after(async () => {
    await putAway();
    await browser?.close();
    server?.stop();
  });
  return async (use) => {
    if (!opened) {
      const { context, trouble } = await watched(browser, PHONE);
      const page = await open(context, server.address);
      await begin(page);
      opened = { context, trouble, page };
    }
    try {
      await use(opened.page);
    } catch (error) {
      await putAway();
      throw error;
    }
  };
}

/** Goes to an address of the page: the list of questions, a card, all of them. */
export async function go(page, address) {
  await page.evaluate((it) => new Promise((done) => {
    const before = location.href;
    // what is drawn for it comes in a task of its own
    const drawn = () => requestAnimationFrame(() => requestAnimationFrame(done));
    addEventListener("hashchange", drawn, { once: true });
    location.hash = it;
    if (location.href === before) {
      removeEventListener("hashchange", drawn);
      drawn();
    }
  }), address);
}

/** Goes to the card of a place, where it is not on the screen. */
async function seen(page, place, address) {
  if (await place.count() === 0) await go(page, address);
  return place;
}

/** The field of a place in the plan, such as `engine.order`. */
export const field = (page, path) => page.locator(`:is(input, select)[id="at-${path}"]`);

/** The same, once its card is on the screen. */
export async function shown(page, path) {
  const place = await seen(page, field(page, path), path);
  await place.waitFor({ state: "attached" });
  return place;
}

/** The answer about a subject, such as `channels.ignition_mode` or `loads.0`. */
export const answer = (page, subject) => page.locator(`article[id="answer-${subject}"]`);

/** The same, once its card is on the screen. */
export const answered = (page, subject) => seen(page, answer(page, subject), subject);

/** The verdict on a subject, as it is read. */
export const verdict = (page, subject) => answer(page, subject).locator(".verdict p");

/** Words with a plain space between number and unit, which keep together on the page. */
export const plain = (words) => words.replaceAll("\u00a0", " ");

/** Waits until a verdict reads like this; a space of the pattern is any space. */
export async function reads(page, subject, pattern) {
  await answered(page, subject);
  const hasText = new RegExp(pattern.source.replaceAll(" ", "\\s"), pattern.flags);
  const place = verdict(page, subject).filter({ hasText });
  await place.waitFor().catch(async () => {
    const said = (await verdict(page, subject).allInnerTexts()).map(plain);
    assert.match(said.join(), pattern, `the verdict on ${subject}`);
  });
}

/** Opens the numbers and the working of an answer, where they are folded. */
export async function numbers(page, subject) {
  const fold = (await answered(page, subject)).locator("details.more");
  await fold.waitFor({ state: "attached" });
  if (await fold.getAttribute("open") === null) await fold.locator("> summary").click();
  await fold.locator("> .folded").waitFor();
  return fold;
}

/** The texts of a table's rows, cell by cell. */
export async function rows(page, subject, caption) {
  const fold = await numbers(page, subject);
  const table = fold.locator("table", { has: page.locator("caption", { hasText: caption }) });
  const all = await table.locator("tbody tr").evaluateAll(
    (found) => found.map((row) => [...row.cells].map((it) => it.textContent)),
  );
  return all.map((cells) => cells.map(plain));
}

/** What is to be done, folded away or not; and what cures what was found, which stands with it and not twice. */
export const toDo = async (page, subject) => {
  const steps = (await answered(page, subject)).locator(".to-do li, .found.here .cure, .found.here details > ul > li > p");
  return [...new Set((await steps.allTextContents()).map(plain))];
};

/** The findings, on the list of questions. */
export async function findings(page) {
  await go(page, "list");
  return page.locator("#at-found");
}

/** The findings as they are read there, with plain spaces. */
export const found = async (page) => plain(await (await findings(page)).innerText());

/** What was found about a subject, in full on its card. */
export async function foundOn(page, address) {
  await go(page, address);
  return page.locator(".found.here li");
}

/** What is wrong with a field, once the hand has left it. */
export async function problem(page, path) {
  const place = await shown(page, path);
  await place.evaluate((it) => it.blur());
  const said = page.locator(`[id="problem-${path}"]`);
  await said.waitFor();
  return plain(await said.innerText());
}

/** Presses a button; its card is gone to first, where it is not on the screen. */
export async function press(page, name, address) {
  const button = page.getByRole("button", { name }).first();
  await seen(page, button, address);
  await unfold(button);
  await button.click();
}

/** Adds a load, a relay or an output by its button on the overview. */
export const add = (page, name) => press(page, name, "outputs");

/** Takes back what was done last. */
export const undo = (page) => page.getByRole("button", { name: "Undo", exact: true }).tap();

/** Opens whatever is folded around a place, by its summary, as a finger would. */
export async function unfold(place) {
  const closed = place.locator("xpath=ancestor::details[not(@open)]");
  while (await closed.count()) {
    const summary = closed.first().locator("xpath=./summary");
    await summary.click();
  }
}

/** Types into a field letter by letter, or chooses; nothing puts the keyboard back into the field meanwhile. */
export async function type(page, path, text) {
  const place = await shown(page, path);
  await unfold(place);
  if (await place.evaluate((it) => it.tagName === "SELECT")) {
    await place.selectOption(text);
    await followed(page);
    return;
  }
  await place.click();
  await place.selectText();
  await page.keyboard.press("Delete");
  await page.keyboard.type(text);
  await followed(page);
}

/** Waits until what was typed is answered. */
export const followed = (page) => page.locator("main:not([data-due])").waitFor();

/** Types a whole plan, given by place. */
export async function typeAll(page, plan) {
  for (const [path, text] of Object.entries(plan)) await type(page, path, text);
}

/** What stands in a field. */
export const stands = async (page, path) => (await shown(page, path)).inputValue();

/** What stands in these fields. */
export async function typed(page, paths) {
  const found = {};
  for (const path of paths) found[path] = await stands(page, path);
  return found;
}

/** Opens the demo from the blank start. */
export async function demo(page) {
  await go(page, "list");
  await page.getByRole("button", { name: /Look at the demo/ }).click();
  await page.locator("#at-found ol").waitFor();
}

/** The addresses of all cards, in their order, as the bar leads through them; the last one is on the screen then. */
export async function cards(page) {
  const all = ["engine"];
  await go(page, "engine");
  for (const after = page.locator("nav.bar a.after"); await after.count();) {
    const lead = await after.getAttribute("href");
    if (all.includes(lead.slice(1))) throw new Error(`from ${all.at(-1)} the bar leads back to ${lead}`);
    await after.tap();
    await page.waitForFunction((it) => location.hash === it && document.activeElement.id === "title", lead);
    all.push(lead.slice(1));
  }
  return all;
}

/** Opens the list of plans, where it is closed: it opens by itself at its address. */
export async function plans(page) {
  const sheet = page.locator("details.plans");
  if (await page.evaluate(() => location.hash) !== "#plans") {
    await go(page, "plans");
    await page.locator("details.plans[open]").waitFor();
  }
  if (await sheet.getAttribute("open") === null) await sheet.locator("> summary").click();
  return sheet;
}

/** Opens everything that is folded, and what is folded in there. */
export async function unfoldAll(page) {
  const closed = page.locator("details:not([open])");
  for (let rounds = 0; await closed.count(); rounds += 1) {
    if (rounds > 9) throw new Error("some fold does not stay open");
    await closed.evaluateAll((all) => {
      for (const it of all) it.open = true;
    });
    // numbers are made once they are unfolded
    await until(page, "what is unfolded is there", () => [...document.querySelectorAll("details.more[open]")]
      .every((it) => it.querySelector(".folded")));
  }
}

/** The plan that is open, as it is kept; before it may stand a line that says when. */
export const openPlan = (page) => page.evaluate(() => {
  const kept = localStorage.getItem(`quietpin.plan.${localStorage.getItem("quietpin.open")}`);
  return JSON.parse(kept.slice(kept.indexOf("{")));
});

/** What the page has to say beside its report. */
export const notices = (page) => page.locator(".notices .notice");

/** A four-cylinder engine with its coils in sequence: the three things that the first question asks. */
export const FOUR = { "engine.cylinders": "4", "engine.order": "1-3-4-2", "channels.ignition_mode": "sequential" };

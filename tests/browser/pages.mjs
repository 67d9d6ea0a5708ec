// Looks at pages of firstfill in a real browser. Usage: node pages.mjs CHROMIUM KIND=PAGE..., KIND being lesson or report.
// Prints what is wrong, a line each, and ends with 1; ends with 0 when nothing is. SHOTS names a folder for pictures.
import { chromium } from "playwright-core";
import { existsSync, mkdirSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { Look } from "./look.mjs";
import { lesson } from "./lesson.mjs";
import { report } from "./report.mjs";

const [executablePath, ...asked] = process.argv.slice(2);
const FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync"];
const KINDS = { lesson, report };

const wrong = [];
// a profile of its own, which goes with it
const browser = await chromium.launch({ executablePath, headless: true, args: FLAGS });
for (const one of asked) {
  const [kind, file] = [one.slice(0, one.indexOf("=")), one.slice(one.indexOf("=") + 1)];
  const name = basename(dirname(file));
  const shots = process.env.SHOTS && join(process.env.SHOTS, name);
  if (shots) mkdirSync(shots, { recursive: true });
  const look = new Look(browser, file, shots);
  try {
    look.must(existsSync(file), "there is no " + file);
    await KINDS[kind](look);
  } catch (error) {
    look.wrong.push("stopped: " + error.message);
  }
  wrong.push(...look.wrong.map((words) => name + ": " + words));
}
await browser.close();
for (const words of wrong) console.log(words);
process.exit(wrong.length ? 1 : 0);

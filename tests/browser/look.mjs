// What is asked of any page: no errors, no network, rules of accessibility, room on a phone, whole sheets, keys.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
export const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 };
export const DESK = { viewport: { width: 1200, height: 900 } };
// A4 in points, and what a browser may be off by
const [SHEET_WIDE, SHEET_HIGH, OFF] = [595, 842, 2];

export class Look {
  constructor(browser, file, shots) {
    Object.assign(this, { browser, file, shots, wrong: [] });
  }
  must(holds, words) {
    if (!holds) this.wrong.push(words);
  }
  async visit(options, see) {
    const context = await this.browser.newContext(options);
    const page = await context.newPage();
    page.on("console", (said) => this.must(!["error", "warning"].includes(said.type()), "console: " + said.text()));
    page.on("pageerror", (error) => this.wrong.push("script: " + error.message));
    page.on("request", (request) =>
      this.must(/^(file|data):/.test(request.url()), "asks the network for " + request.url()));
    await page.goto("file://" + resolve(this.file));
    await see(page);
    await context.close();
  }
  async shot(page, name, fullPage = true) {
    if (this.shots) await page.screenshot({ path: join(this.shots, name + ".png"), fullPage });
  }
  async isAccessible(page, where) {
    await page.evaluate(axe);
    const found = await page.evaluate(() => axe.run(document, { resultTypes: ["violations"] }));
    for (const rule of found.violations) {
      const places = rule.nodes.slice(0, 3).map((node) => node.target.join(" "));
      this.wrong.push(where + ": " + rule.id + ", " + rule.help + ": " + places.join("; "));
    }
  }
  async fits(page, where) {
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    this.must(over <= 0, where + ": " + over + " px wider than the screen");
  }
  // the first thing that Tab reaches leads to the text, and every other one shows that it is reached
  async isWalkedByKeys(page) {
    await page.keyboard.press("Tab");
    this.must(await page.evaluate(() => document.activeElement.matches(".skip")), "the first Tab does not reach the skip link");
    await page.keyboard.press("Enter");
    this.must(await page.evaluate(() => document.activeElement.id === "main"), "the skip link does not lead to the text");
    const count = await page.evaluate(() => document.querySelectorAll("main :is(a[href], input, button, [tabindex='0'])").length);
    const seen = new Set();
    for (let i = 0; i < count; i++) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate(() => {
        const all = [...document.querySelectorAll("main *")], own = document.activeElement;
        return { place: all.indexOf(own), outline: getComputedStyle(own).outlineStyle };
      });
      if (at.place >= 0) seen.add(at.place);
      this.must(at.place < 0 || at.outline !== "none", "what Tab reaches is not outlined");
    }
    this.must(seen.size === count || count === 0, "Tab reaches " + seen.size + " of " + count + " things");
  }
  async isWholeOnPaper(page) {
    await page.emulateMedia({ media: "print" });
    const pdf = await page.pdf({ format: "A4", preferCSSPageSize: true, path: this.shots && join(this.shots, "print.pdf") });
    const boxes = [...pdf.toString("latin1").matchAll(/\/MediaBox \[([^\]]*)\]/g)].map((box) => box[1].trim().split(/\s+/).map(Number));
    this.must(boxes.length > 1, "paper: " + boxes.length + " sheets");
    const isWhole = ([, , wide, high]) => Math.abs(wide - SHEET_WIDE) < OFF && Math.abs(high - SHEET_HIGH) < OFF;
    this.must(boxes.every(isWhole), "paper: a sheet is no A4");
    const { torn, cut } = await page.evaluate(() => {
      const whole = [...document.querySelectorAll(".plot, .chart, h2, h3, tr")];
      const isKept = (style) => style.breakInside === "avoid" || style.breakAfter === "avoid";
      const right = document.documentElement.clientWidth + 1;
      const isOver = (one) => one.getBoundingClientRect().right > right && getComputedStyle(one).position !== "absolute";
      return {
        torn: whole.filter((one) => !isKept(getComputedStyle(one))).length,
        cut: [...document.querySelectorAll("main *")].filter(isOver).map((one) => one.tagName + "." + one.className),
      };
    });
    this.must(torn === 0, "paper: " + torn + " things may be torn between two sheets");
    this.must(cut.length === 0, "paper: cut off are " + cut.slice(0, 3).join(", "));
  }
  // every picture says in words what it shows, with numbers; a picture that only adorns is hidden
  async isTold(page, where) {
    const mute = await page.evaluate(() => [...document.querySelectorAll("main svg")].filter((one) => {
      if (one.closest("[aria-hidden=true]")) return false;
      const ids = (one.getAttribute("aria-labelledby") || "").split(" ").filter(Boolean);
      const words = (one.getAttribute("aria-label") || "") + ids.map((id) => document.getElementById(id)?.textContent || "").join(" ") +
        (one.querySelector("desc")?.textContent || "");
      return !/\d/.test(words) || words.length < 20;
    }).length);
    this.must(mute === 0, where + ": " + mute + " pictures do not say in words what they show");
  }
}
export const words = (page, selector) => page.locator(selector).innerText();

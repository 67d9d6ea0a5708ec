// Looks at a page of firstfill in a real browser. Usage: node pages.mjs CHROMIUM lesson|report PAGE [SHOTS]
// Prints what is wrong, a line each, and ends with 1; ends with 0 when nothing is.
import { chromium } from "playwright-core";
import { createRequire } from "node:module";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";

const [executablePath, kind, file, shots] = process.argv.slice(2);
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync"];
const PHONE = { width: 360, height: 740 };
const DESK = { width: 1180, height: 900 };
const url = "file://" + resolve(file);
const wrong = [];
const must = (holds, words) => { if (!holds) wrong.push(words); };
const home = mkdtempSync(join(tmpdir(), "firstfill-browser-"));
const open = (options) => chromium.launchPersistentContext(mkdtempSync(join(home, "profile-")), {
  executablePath, headless: true, args: FLAGS, ...options });

const visit = async (options, look) => {
  const context = await open(options);
  const page = await context.newPage();
  page.on("console", (said) => must(said.type() !== "error" && said.type() !== "warning", "console: " + said.text()));
  page.on("pageerror", (error) => wrong.push("script: " + error.message));
  page.on("request", (request) => must(/^(file|data):/.test(request.url()), "asks the network for " + request.url()));
  await page.goto(url);
  await look(page);
  await context.close();
};

const accessible = async (page, where) => {
  await page.evaluate(axe);
  const found = await page.evaluate(() => axe.run(document, { resultTypes: ["violations"] }));
  for (const rule of found.violations)
    wrong.push(where + ": " + rule.id + ", " + rule.help + ": " + rule.nodes.slice(0, 3).map((n) => n.target.join(" ")).join("; "));
};
const noScroll = async (page, where) => {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  must(over <= 0, where + ": " + over + " px wider than the screen");
};
const shot = async (page, name, fullPage = true) => { if (shots) await page.screenshot({ path: join(shots, name + ".png"), fullPage }); };

// the numbers of curves.csv by step
const curves = () => {
  const [head, ...lines] = readFileSync(join(dirname(file), "curves.csv"), "utf8").trim().split("\n").map((line) => line.split(","));
  const steps = new Map();
  for (const [step, ...cells] of lines) {
    if (!steps.has(step)) steps.set(step, []);
    steps.get(step).push(cells.map(Number));
  }
  return { traces: head.slice(2), steps };
};
// the points of a path, back in days and values
const drawn = (page) => page.evaluate(() => {
  const data = JSON.parse(document.getElementById("data").textContent), found = {};
  document.querySelectorAll(".plot").forEach((plot, place) => {
    const { low, high } = data.panels[place];
    for (const path of plot.querySelectorAll("[data-curve]")) {
      const points = path.getAttribute("d").slice(1).split("L").map((two) => two.split(" ").map(Number));
      found[path.dataset.curve] = {
        near: { day: (0.06 * (data.last - data.first)) / 1000, value: (0.06 * (high - low)) / 400 },
        points: points.map(([x, y]) => [data.first + (x * (data.last - data.first)) / 1000, high - (y * (high - low)) / 400]),
      };
    }
  });
  return { found, label: document.getElementById("step-words").textContent };
});
const equalsTable = async (page, table) => {
  const { found, label } = await drawn(page);
  const rows = table.steps.get(label);
  must(rows, "no rows of " + label + " in curves.csv");
  for (const [trace, { near, points }] of Object.entries(found)) {
    must(points.length === rows?.length, label + ": " + points.length + " points drawn, " + rows?.length + " in curves.csv");
    const off = points.find(([day, value], i) =>
      Math.abs(day - rows[i][0]) > near.day + 5e-5 || Math.abs(value - rows[i][1 + Number(trace)]) > near.value);
    must(!off, label + ": " + table.traces[trace] + " is not that of curves.csv near day " + off?.[0]);
  }
};

const marksApart = async (page, where) => {
  const hit = await page.evaluate(() => [...document.querySelectorAll(".canvas")].some((canvas) => {
    const boxes = [...canvas.querySelectorAll(".mark")].map((mark) => mark.getBoundingClientRect());
    return boxes.some((a, i) => boxes.slice(i + 1).some((b) =>
      a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom));
  }));
  must(!hit, where + ": marks lie over each other");
};
// every sheet of a PDF is a whole A4
const wholeSheets = (pdf, where) => {
  const boxes = [...pdf.toString("latin1").matchAll(/\/MediaBox \[([^\]]*)\]/g)].map((found) => found[1].trim().split(/\s+/).map(Number));
  must(boxes.length > 1, where + ": " + boxes.length + " sheets");
  must(boxes.every(([, , w, h]) => Math.abs(w - 595) < 2 && Math.abs(h - 842) < 2), where + ": a sheet is no A4");
};
const words = (page, selector) => page.locator(selector).innerText();

const lesson = async () => {
  const table = curves();
  await visit({ viewport: DESK, reducedMotion: "reduce" }, async (page) => {
    const count = Number(await page.getAttribute("#step", "max"));
    must(table.steps.size === count + 1, "curves.csv has another number of steps");
    await shot(page, "light");
    await accessible(page, "light");
    await page.focus("#step");
    for (let i = 0; i < count; i++) await page.keyboard.press("ArrowLeft");
    let [label, headline] = ["", ""];
    for (let step = 0; step <= count; step++) {
      const [now, result] = [await words(page, "#step-words"), await words(page, "#headline")];
      must(now !== label && result !== headline, "the arrow key does not move step " + step);
      must((await page.getAttribute("#step", "aria-valuetext")) === now, now + ": the slider does not say its step");
      const heard = await page.locator(".plot desc").allTextContents();
      must(heard.every((one) => one.includes(now) && /\d/.test(one)), now + ": a curve is not told in words");
      [label, headline] = [now, result];
      await equalsTable(page, table);
      await marksApart(page, now);
      await page.keyboard.press("ArrowRight");
    }
    const before = await words(page, "#reading");
    await page.focus("#day");
    await page.keyboard.press("ArrowRight");
    must((await words(page, "#reading")) !== before, "the day is not moved by keyboard");
    const day = await words(page, "#day-words");
    const canvas = page.locator(".canvas").first();
    await canvas.scrollIntoViewIfNeeded();
    await canvas.hover({ position: { x: 40, y: 60 } });
    must((await words(page, "#day-words")) !== day, "pointing reads nothing");
    await page.mouse.move(5, 5);
    must((await words(page, "#day-words")) === day, "the day of interest is lost after pointing");
    await page.keyboard.press("Home");
    await page.emulateMedia({ media: "print" });
    const sheet = await page.pdf({ format: "A4", preferCSSPageSize: true, path: shots && join(shots, "print.pdf") });
    wholeSheets(sheet, "paper");
    const torn = await page.evaluate(() => [...document.querySelectorAll(".plot, h2, h3, tr")].filter((one) =>
      getComputedStyle(one).breakInside !== "avoid" && getComputedStyle(one).breakAfter !== "avoid").length);
    must(torn === 0, torn + " things may be torn between two sheets");
    const cut = await page.evaluate(() => [...document.querySelectorAll("main *")].filter((one) =>
      one.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && getComputedStyle(one).position !== "absolute").length);
    must(cut === 0, cut + " things are cut off on paper");
    must(!(await page.locator("#controls").isVisible()), "sliders are printed");
    must(await page.locator("#print-step").isVisible(), "paper does not say which step it shows");
  });
  await visit({ viewport: DESK, colorScheme: "dark" }, async (page) => { await shot(page, "dark"); await accessible(page, "dark"); });
  await visit({ viewport: PHONE, hasTouch: true, isMobile: true, deviceScaleFactor: 2 }, async (page) => {
    await noScroll(page, "phone");
    const label = await words(page, "#step-words");
    await page.locator("#step").scrollIntoViewIfNeeded();
    const box = await page.locator("#step").boundingBox();
    const at = Number(await page.inputValue("#step")), most = Number(await page.getAttribute("#step", "max"));
    await page.touchscreen.tap(box.x + (at < most / 2 ? 0.97 : 0.03) * box.width, box.y + box.height / 2);
    must((await words(page, "#step-words")) !== label, "touch does not move the slider");
    await marksApart(page, "phone");
    await noScroll(page, "phone, moved");
    await shot(page, "phone-view", false);
    await accessible(page, "phone");
    await shot(page, "phone");
  });
  await visit({ viewport: DESK, javaScriptEnabled: false }, async (page) => {
    must((await page.locator("[data-curve]").first().getAttribute("d"))?.length > 50, "without script no curve");
    must(!(await page.locator("#controls").isVisible()), "without script there are dead sliders");
  });
};

const report = async () => {
  await visit({ viewport: DESK }, async (page) => { await shot(page, "light"); await accessible(page, "light"); await noScroll(page, "light");
    await page.emulateMedia({ media: "print" }); wholeSheets(await page.pdf({ format: "A4", path: shots && join(shots, "print.pdf") }), "paper"); });
  await visit({ viewport: DESK, colorScheme: "dark" }, async (page) => { await shot(page, "dark"); await accessible(page, "dark"); });
  await visit({ viewport: PHONE, isMobile: true, deviceScaleFactor: 2 }, async (page) => { await noScroll(page, "phone"); await shot(page, "phone"); await accessible(page, "phone"); });
};

try {
  must(existsSync(file), "there is no " + file);
  await (kind === "lesson" ? lesson() : report());
} catch (error) {
  wrong.push("stopped: " + error.message);
} finally {
  rmSync(home, { recursive: true, force: true });
}
for (const words of wrong) console.log(words);
process.exit(wrong.length ? 1 : 0);

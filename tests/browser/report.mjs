// The page of a run, a comparison or a sweep.
import { DESK, PHONE } from "./look.mjs";

export const report = async (look) => {
  await look.visit(DESK, async (page) => {
    await look.shot(page, "light");
    await look.isAccessible(page, "light");
    await look.fits(page, "light");
    await look.isTold(page, "light");
    await look.isWalkedByKeys(page);
    await look.isWholeOnPaper(page);
  });
  await look.visit({ ...DESK, colorScheme: "dark" }, async (page) => {
    await look.shot(page, "dark");
    await look.isAccessible(page, "dark");
  });
  await look.visit(PHONE, async (page) => {
    await look.fits(page, "phone");
    await look.shot(page, "phone");
    await look.isAccessible(page, "phone");
  });
  await look.visit({ ...PHONE, colorScheme: "dark" }, async (page) => {
    await look.shot(page, "phone-dark");
    await look.fits(page, "phone, dark");
  });
};

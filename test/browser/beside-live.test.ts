import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import type { Session } from "../../src/explorer/session/session.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { read } from "../brief/reading.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { coarse, writePage } from "./page-file.ts";
import { sharedPage } from "./shared-page.ts";

const demo = coarse(read(readFileSync("reports/latch-plunger.yaml", "utf8"), "reports/latch-plunger.yaml"));
const shared = sharedPage(() => writePage(sweep(demo, { sample: 500, byWire: true })));

it.each(["12 mm", "9.5 mm"])(
  "a kept spring stays where a bore of %s no longer has room for it, and says what it breaks",
  async (bore) => {
    const { page, said } = await shared();
    await page.locator("#keep").click();
    await page.evaluate(async (bore) => {
      const { session } = document.getElementById("run") as HTMLElement & { readonly session: Session };
      const done = new Promise<void>((resolve) => session.listen(() => !session.busy && resolve()));
      session.put("envelope.bore", bore);
      await done;
    }, bore);
    const list = page.getByRole("list", { name: "Compared springs that do not fit any more" });
    expect(await list.textContent()).toBe("A: Does not fit any more: breaks outside diameter at solid.");
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(said).toEqual([]);
  },
);

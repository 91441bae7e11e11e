import { execFileSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { brotliDecompressSync } from "node:zlib";
import { type Browser, chromium } from "playwright-core";

/** Where an unpacked browser stays between runs. */
const CACHE = fileURLToPath(new URL("../../node_modules/.cache/chromium/", import.meta.url));

const FONTS = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir prefix="relative">fonts</dir><cachedir prefix="xdg">fontconfig</cachedir></fontconfig>
`;

interface Executable {
  readonly file: string;
  readonly environment: Readonly<Record<string, string>>;
}

/**
 * Start Chromium: the one that CHROMIUM_PATH names, else the one that stands in node_modules with its own libraries and fonts.
 *
 * @throws where letters would be invisible: without fonts Chromium still draws and prints, with every letter missing
 */
export async function launchBrowser(): Promise<Browser> {
  const { file, environment } = executable();
  const browser = await chromium.launch({
    executablePath: file,
    headless: true,
    env: { ...(process.env as Record<string, string>), ...environment },
    args: ["--no-sandbox", "--disable-gpu", "--font-render-hinting=none"],
  });
  const page = await browser.newPage();
  await page.setContent('<span id="letters">Ag</span>');
  const height = await page.evaluate(() => document.getElementById("letters")?.getBoundingClientRect().height ?? 0);
  await page.close();
  if (height > 0) return browser;
  await browser.close();
  throw new Error("Chromium has no usable font: text would be invisible");
}

function executable(): Executable {
  const named = process.env.CHROMIUM_PATH;
  if (named) return { file: named, environment: {} };
  if (process.platform !== "linux" || process.arch !== "x64") {
    throw new Error("the packaged Chromium runs on Linux x64 only: set CHROMIUM_PATH");
  }
  const pack = packageFolder();
  const { version } = JSON.parse(readFileSync(path.join(pack, "package.json"), "utf8")) as { version: string };
  const folder = path.join(CACHE, version);
  if (!existsSync(path.join(folder, "chromium"))) unpack(path.join(pack, "bin"), folder);
  const libraries = [path.join(folder, "al2023", "lib"), process.env.LD_LIBRARY_PATH].filter(Boolean).join(":");
  return {
    file: path.join(folder, "chromium"),
    environment: { LD_LIBRARY_PATH: libraries, FONTCONFIG_FILE: path.join(folder, "fonts", "fonts.conf") },
  };
}

/** The package does not export its package.json: walk up from its entry. */
function packageFolder(): string {
  let folder = path.dirname(createRequire(import.meta.url).resolve("@sparticuz/chromium"));
  while (!existsSync(path.join(folder, "bin", "chromium.br"))) {
    const parent = path.dirname(folder);
    if (parent === folder) throw new Error("@sparticuz/chromium: bin/chromium.br not found");
    folder = parent;
  }
  return folder;
}

/** Unpack once, into a folder that takes its name at the end, so that parallel runs never see half a browser. */
function unpack(packed: string, folder: string): void {
  const part = `${folder}.part-${process.pid}`;
  const read = (name: string) => brotliDecompressSync(readFileSync(path.join(packed, name)));
  const untar = (name: string, into: string) => {
    mkdirSync(into, { recursive: true });
    execFileSync("tar", ["-xf", "-", "--no-same-owner", "-C", into], { input: read(name) });
  };
  untar("al2023.tar.br", path.join(part, "al2023"));
  untar("fonts.tar.br", path.join(part, "fonts"));
  untar("swiftshader.tar.br", part); // must stand beside the executable
  writeFileSync(path.join(part, "fonts", "fonts.conf"), FONTS); // the packed one names a folder that is not there
  writeFileSync(path.join(part, "chromium"), read("chromium.br"));
  chmodSync(path.join(part, "chromium"), 0o755);
  try {
    renameSync(part, folder);
  } catch (error) {
    rmSync(part, { recursive: true, force: true });
    if (!existsSync(path.join(folder, "chromium"))) throw error; // else another run was first
  }
}

/** A real browser, where Debian's chromium (or the one CHROMIUM names) is installed. */
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium } from 'playwright-core';

const EXECUTABLE = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

/** In CI the browser tests may not be passed over in silence. */
export const chromiumFound = existsSync(EXECUTABLE);
if (!chromiumFound && process.env['CI'])
  throw new Error(`No chromium at ${EXECUTABLE}: in CI the browser tests may not be skipped.`);
if (!chromiumFound)
  console.warn(`No chromium at ${EXECUTABLE}: the browser tests are skipped. Install it, or name it in CHROMIUM.`);

export const SIZES = { phone: { width: 360, height: 760 }, desk: { width: 1280, height: 900 } } as const;

export const openBrowser = (
  size: keyof typeof SIZES,
  options: { javaScriptEnabled?: boolean } = {},
  switches: readonly string[] = [],
): Promise<BrowserContext> =>
  chromium.launchPersistentContext(mkdtempSync(join(tmpdir(), 'standstill-chromium-')), {
    executablePath: EXECUTABLE,
    headless: true,
    viewport: SIZES[size],
    ...options,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--disable-dev-shm-usage',
      ...switches,
    ],
  });

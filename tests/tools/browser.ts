import { type Browser, chromium } from 'playwright-core';

/** How long a page is waited for before a test gives up, ms: a busy computer is slow, and slow is not broken. */
const patienceMs = 60_000;

/** Chromium as installed on this computer; `CHROMIUM` names another one. */
export async function openBrowser(): Promise<Browser> {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  const newContext = browser.newContext.bind(browser);
  browser.newContext = async (options) => {
    const context = await newContext(options);
    context.setDefaultTimeout(patienceMs);
    return context;
  };
  return browser;
}

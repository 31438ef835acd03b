import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { DaemonProcess } from '../daemon-process.ts';
import { PageClient } from '../page-client.ts';

export interface Look {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly colorScheme: 'light' | 'dark';
  readonly media: 'screen' | 'print';
}

const onDesktop = { width: 1280, height: 800, media: 'screen' } as const;

/** How each screen is looked at; the first is how it stands while a scene is played. */
const looks: readonly Look[] = [
  { ...onDesktop, name: 'desktop', colorScheme: 'light' },
  { ...onDesktop, name: 'dark', colorScheme: 'dark' },
  { ...onDesktop, name: 'tablet', width: 1024, height: 768, colorScheme: 'light' },
  { ...onDesktop, name: 'phone', width: 390, height: 844, colorScheme: 'light' },
  { ...onDesktop, name: 'upright', width: 768, height: 1024, colorScheme: 'dark' },
];

/** A sheet of A4 at 96 pixels an inch. */
const onPaper: Look = { name: 'print', width: 794, height: 1123, colorScheme: 'light', media: 'print' };

export interface Shot {
  readonly screen: string;
  readonly look: Look;
  readonly file: string;
  /** How far the page goes beyond its window, in pixels. */
  readonly below: number;
}

/** A daemon with a page before it, and a camera. */
export class Studio {
  readonly shots: Shot[] = [];
  readonly url: string;
  readonly page: Page;
  readonly #daemon: DaemonProcess;
  readonly #client: PageClient;
  readonly #folder: string;

  private constructor(daemon: DaemonProcess, page: Page, client: PageClient, folder: string) {
    this.url = daemon.url;
    this.page = page;
    this.#daemon = daemon;
    this.#client = client;
    this.#folder = folder;
  }

  /** Starts `wayscribe …args` and puts pictures into `folder`. */
  static async open(page: Page, folder: string, ...args: string[]): Promise<Studio> {
    await mkdir(folder, { recursive: true });
    const daemon = await DaemonProcess.start(...args);
    return new Studio(daemon, page, await PageClient.open(daemon.url), folder);
  }

  async close(): Promise<void> {
    this.#client.close();
    await this.#daemon.stop();
  }

  /** An empty desk: whatever is on is put aside. */
  async start(): Promise<void> {
    await this.do('leave');
    await this.page.goto('about:blank');
    await this.#see(looks[0]!);
    await this.page.goto(this.url);
    await this.shown('set-up');
  }

  /** What a page can ask for, asked behind its back. A refusal is passed over: nothing may be on. */
  async do(what: 'leave' | 'finish'): Promise<void> {
    await this.#client.ask({ do: what });
  }

  /** Lets the simulated instrument walk until so much of the survey is taken, and the page shows it. */
  async walk(share: number): Promise<void> {
    const client = this.#client;
    await client.until(() => client.session !== null && !client.session.ended);
    const all = client.session!.placements.length;
    const enough = () => client.session!.counted.size >= Math.floor(all * share) || !client.session!.next;
    await client.ask({ do: 'sim-walk', on: true });
    await client.until(enough);
    await client.ask({ do: 'sim-walk', on: false });
    await this.page.waitForFunction(
      (seq) => Number(document.querySelector<HTMLElement>('[data-testid="root"]')?.dataset.seq) >= seq,
      client.session!.seq,
    );
  }

  async shown(testId: string): Promise<void> {
    await this.page.getByTestId(testId).first().waitFor();
  }

  async press(key: string, shown: string): Promise<void> {
    await this.page.keyboard.press(key);
    await this.page.locator(shown).first().waitFor();
  }

  async click(testId: string, shown: string): Promise<void> {
    await this.page.getByTestId(testId).first().click();
    await this.page.locator(shown).first().waitFor();
  }

  /** Takes the screen in every look, or in the first and last only, and on paper where it is made for that. */
  async shoot(screen: string, { print = false, few = false } = {}): Promise<void> {
    const chosen = few ? [looks[0]!, looks.at(-1)!] : looks;
    for (const look of print ? [...chosen, onPaper] : chosen) await this.#take(screen, look, this.page);
    await this.#see(looks[0]!);
  }

  /** A page of its own, as the report is: on the desktop and on paper. */
  async shootOther(screen: string, page: Page): Promise<void> {
    for (const look of [looks[0]!, onPaper]) await this.#take(screen, look, page);
  }

  async #take(screen: string, look: Look, page: Page): Promise<void> {
    await this.#see(look, page);
    const below = await page.evaluate(() => {
      const { scrollHeight, clientHeight } = document.documentElement;
      return scrollHeight - clientHeight;
    });
    const file = `${screen.replaceAll(' ', '-')}.${look.name}.png`;
    const screenshot = { path: join(this.#folder, file), fullPage: true };
    // Taken as high as the page is, nothing of it may stick to the window.
    await sticks(page, false);
    await page.screenshot(screenshot);
    await sticks(page, true);
    this.shots.push({ screen, look, file, below });
  }

  async #see({ width, height, colorScheme, media }: Look, page = this.page): Promise<void> {
    await page.emulateMedia({ colorScheme, media, reducedMotion: 'reduce' });
    await page.setViewportSize({ width, height });
    // A report runs no scripts, so no frame of it can be waited for; nor does it draw anything by itself.
    if (page !== this.page) return;
    await page.evaluate(
      () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
    );
  }
}

async function sticks(page: Page, on: boolean): Promise<void> {
  await page.evaluate(
    (position) => {
      for (const foot of document.querySelectorAll<HTMLElement>('.sheet > .foot'))
        foot.style.position = position;
    },
    on ? '' : 'static',
  );
}

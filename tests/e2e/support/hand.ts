import type { Locator, Page } from 'playwright-core';

/** Enters by hand and counts: every field that is filled in, every choice made, every button pressed. */
export class Hand {
  entries = 0;
  constructor(private readonly page: Page) {}

  async fill(name: string, text: string): Promise<void> {
    this.entries += 1;
    await this.shown(this.page.getByLabel(name, { exact: true })).fill(text);
  }

  async choose(name: string, label: string): Promise<void> {
    this.entries += 1;
    await this.shown(this.page.getByLabel(name, { exact: true })).selectOption({ label });
  }

  async press(name: string, role: 'button' | 'link' = 'button'): Promise<void> {
    this.entries += 1;
    await this.shown(this.page.getByRole('main').getByRole(role, { name, exact: true })).click();
  }

  async tick(name: string): Promise<void> {
    this.entries += 1;
    await this.page.getByRole('radio', { name }).check();
  }

  /** What is closed is there, but nobody could enter anything in it. */
  private shown(found: Locator): Locator {
    return found.filter({ visible: true }).first();
  }
}

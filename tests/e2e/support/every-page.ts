import type { Page } from 'playwright-core';
import { de } from '../../../apps/web/words/de/index.js';
import { pasting } from '../../../apps/web/words/de/pasting.js';
import { settings } from '../../../apps/web/words/de/settings.js';
import type { FullWorkshop } from './full-workshop.js';
import { openDetails, settled } from './page-texts.js';

/** A page of the app, in a state worth reading. */
export interface Shown {
  readonly name: string;
  readonly path: string;
  /** Brings up what is not there from the start; the page speaks German. */
  readonly bring?: (page: Page) => Promise<void>;
}

const { run, now, library, form, patterns, plan, tide } = de;

/** Every page that a workshop has, with what can be opened on it. */
export function everyPage({ runs, things }: FullWorkshop): Shown[] {
  return [
    { name: 'now', path: '/' },
    { name: 'now-mishap', path: '/', bring: askMishap },
    {
      name: 'now-times',
      path: '/',
      bring: (page) => press(page, new RegExp(`^${now.otherTimes.slice(0, 7)}`)),
    },
    { name: 'now-logged', path: '/', bring: logNotYet },
    { name: 'runs', path: '/runs', bring: (page) => press(page, new RegExp(`^${run.giveUp.ask}`)) },
    ...(['planned', 'begun', 'stuck', 'curing'] as const).flatMap((kind) => ofRun(kind, runs[kind])),
    { name: 'run-tried', path: `/runs/${runs.stuck}`, bring: tryRemedy },
    { name: 'run-stage', path: `/runs/${runs.planned}`, bring: (page) => showStage(page) },
    { name: 'run-moving', path: `/runs/${runs.planned}`, bring: moveStage },
    { name: 'run-mishap', path: `/runs/${runs.begun}/log`, bring: seeAnswers },
    { name: 'plan', path: '/plan' },
    ...[0, 1, 2].map((i) => ({
      name: `plan-${String(i)}`,
      path: '/plan',
      bring: (page: Page) => chooseDesign(page, i),
    })),
    { name: 'plan-by', path: '/plan', bring: countBack },
    // Last of its page, which keeps the incomplete groups.
    { name: 'plan-groups', path: '/plan', bring: partWays },
    { name: 'guide-mould', path: '/plan?step=mould', bring: nameAll },
    { name: 'guide-recipe', path: '/plan?step=recipe', bring: nameAll },
    { name: 'guide-hours', path: '/plan?step=hours' },
    { name: 'guide-start', path: '/plan?step=start' },
    { name: 'makings', path: '/makings' },
    ...(['designs', 'recipes', 'moulds', 'fats'] as const).flatMap((kind) => [
      ...things[kind].slice(0, 2).map((id, i) => ({
        name: `${kind}-${String(i)}`,
        path: `/makings/${kind}/${id}`,
        bring: shownFully,
      })),
      { name: `${kind}-new`, path: `/makings/${kind}/new`, bring: saveEmpty },
    ]),
    { name: 'design-pattern', path: '/makings/designs/new', bring: choosePattern },
    { name: 'design-stages', path: '/makings/designs/new', bring: addToDesign },
    { name: 'recipe-extras', path: '/makings/recipes/new', bring: addToRecipe },
    { name: 'recipe-pasted', path: '/makings/recipes/new', bring: pasteRecipe },
    { name: 'mould-shape', path: '/makings/moulds/new', bring: describeShape },
    ...['olive', 'beeswax', 'stearic-acid'].map((key) => ({
      name: `fat-${key}`,
      path: `/makings/fats/shipped/${key}`,
    })),
    { name: 'fat-own', path: '/makings/fats/new?as=olive', bring: nameAll },
    {
      name: 'archive',
      path: `/makings/moulds/${things.moulds[0] ?? ''}`,
      bring: (page) => press(page, library.archive),
    },
    { name: 'stock', path: '/makings/stock' },
    { name: 'stock-material', path: '/makings/stock/g/olive' },
    { name: 'stock-to-buy', path: '/makings/stock/to-buy' },
    { name: 'stock-own', path: '/makings/stock/piece/nu-zulip' },
    { name: 'stock-keep', path: `/makings/stock/keep/${runs.begun}/deep` },
    { name: 'tools', path: '/makings/tools' },
    { name: 'shelf', path: '/shelf' },
    { name: 'hours', path: '/hours', bring: (page) => press(page, `+ ${de.hours.addException}`) },
    { name: 'lessons', path: '/lessons' },
    { name: 'settings', path: '/settings', bring: addDevice },
    { name: 'nothing', path: '/nowhere' },
  ];
}

function ofRun(kind: string, id: string): Shown[] {
  const isOpen = kind !== 'curing';
  return [
    { name: `${kind}-plan`, path: `/runs/${id}`, ...(kind === 'begun' && { bring: askRemedies }) },
    { name: `${kind}-amounts`, path: `/runs/${id}/amounts` },
    { name: `${kind}-sheet`, path: `/runs/${id}/sheet` },
    { name: `${kind}-log`, path: `/runs/${id}/log` },
    { name: `${kind}-plans`, path: `/runs/${id}/plans`, ...(isOpen && { bring: showMoves }) },
  ];
}

/** What an empty workshop says instead. */
export const emptyPages: readonly Shown[] = [
  { name: 'empty-now', path: '/' },
  { name: 'empty-runs', path: '/runs' },
  { name: 'empty-plan', path: '/plan', bring: nameAll },
  { name: 'empty-makings', path: '/makings' },
  { name: 'empty-stock', path: '/makings/stock' },
  { name: 'empty-shelf', path: '/shelf' },
  { name: 'empty-lessons', path: '/lessons' },
];

async function press(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('main').getByRole('button', { name }).first().click();
  await settled(page);
}

async function logNotYet(page: Page): Promise<void> {
  await press(page, new RegExp(`^${now.done}: `));
  await page.locator('.said .button').first().waitFor();
}

async function askRemedies(page: Page): Promise<void> {
  await press(page, run.remedies.ask);
  // Dozens of plans are made for it, and the machine may be busy. Where none of them helps, it says so.
  await page.locator('.run-remedies').waitFor({ state: 'attached', timeout: 90_000 });
}

async function tryRemedy(page: Page): Promise<void> {
  // A run without a plan asks by itself.
  await page.locator('.run-remedies > li').first().waitFor({ timeout: 90_000 });
  await press(page, new RegExp(`^${run.remedies.try}`));
  await page.locator('.run-tried').waitFor();
}

async function showStage(page: Page, nth = 1): Promise<void> {
  const mark = page.locator('[data-mark]').nth(nth);
  await mark.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: tide.close }).waitFor();
}

async function moveStage(page: Page): Promise<void> {
  await showStage(page, 2);
  await press(page, tide.move);
  await press(page, tide.moving.on);
  await page.getByText(tide.moving.trying).waitFor({ state: 'hidden' });
}

async function seeAnswers(page: Page): Promise<void> {
  await page.locator('details > summary').first().click();
  await sayHowItWent(page);
}

async function sayHowItWent(page: Page): Promise<void> {
  await page.getByRole('radio', { name: run.mishap.happened.seized }).check();
  await page.locator('.run-answers').waitFor();
  await page.locator('[aria-busy="true"]').waitFor({ state: 'hidden', timeout: 90_000 });
}

async function askMishap(page: Page): Promise<void> {
  await press(page, new RegExp(`^${now.wentWrong}`));
  await sayHowItWent(page);
}

async function showMoves(page: Page): Promise<void> {
  const buttons = page.getByRole('button', { name: new RegExp(`^${run.plans.show}`) });
  while ((await buttons.count()) > 0) await buttons.first().click();
  await page.getByText(run.plans.showing).first().waitFor({ state: 'hidden' });
}

async function chooseDesign(page: Page, nth: number): Promise<void> {
  await page.getByRole('radio').nth(nth).check();
  await page.locator('.outcome h3').first().waitFor();
}

async function partWays(page: Page): Promise<void> {
  await chooseDesign(page, 0);
  await page.getByRole('radio', { name: plan.groups.parted }).check();
  await page.getByLabel(plan.groups.pieces, { exact: true }).last().fill('1');
  await page.getByText(plan.groups.unready).waitFor();
}

async function countBack(page: Page): Promise<void> {
  await chooseDesign(page, 0);
  await page.getByRole('radio', { name: plan.aims.by }).check();
  await page.getByText(plan.countingBack).waitFor({ state: 'hidden' });
}

async function shownFully(page: Page): Promise<void> {
  await page.getByRole('button', { name: form.save }).waitFor();
}

async function saveEmpty(page: Page): Promise<void> {
  await press(page, form.save);
  await page.getByRole('group').first().waitFor();
}

/** What the page fills in is its user's from then on, in the language of that moment: as if it were written anew. */
async function nameAll(page: Page): Promise<void> {
  await openDetails(page);
  for (const field of await page.locator('main input:not([type]):not([inputmode])').all()) {
    if (await field.isVisible()) await field.fill('Zunamex');
  }
  await settled(page);
}

async function choosePattern(page: Page): Promise<void> {
  await page.getByRole('radio', { name: patterns.names.loaf }).check();
}

async function addToDesign(page: Page): Promise<void> {
  await page.getByRole('radio', { name: patterns.names.coated }).check();
  await press(page, patterns.take);
  for (const addition of Object.values(patterns.additions)) await press(page, `+ ${addition}`);
  for (const kind of ['patch', 'stamp']) await page.locator('#add-stage').selectOption(kind);
  await openDetails(page);
  await press(page, new RegExp(`^${library.without}`));
  await nameAll(page);
}

async function addToRecipe(page: Page): Promise<void> {
  await press(page, `+ ${library.addFragrance}`);
  for (const adding of await page.getByRole('button', { name: `+ ${form.add}` }).all()) {
    if (await adding.isVisible()) await adding.click();
  }
}

/** A line of each sort that a pasted text may hold. */
async function pasteRecipe(page: Page): Promise<void> {
  await page.getByText(pasting.title).click();
  await page.getByLabel(pasting.text).fill('Zuzu\nPalm\nPalm 5\nNaOH');
  await press(page, pasting.read);
  await page.getByRole('list', { name: pasting.lines }).waitFor();
}

async function describeShape(page: Page): Promise<void> {
  await page.getByRole('radio', { name: library.mouldWays.shape }).check();
}

async function addDevice(page: Page): Promise<void> {
  await press(page, settings.add);
  await page.locator('.code').waitFor();
  await press(page, settings.signOut);
}

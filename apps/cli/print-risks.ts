import type { Risk } from '#contract';
import type { Texts } from '#words';
import { wrap } from './text-layout.js';

const WIDTH = 100;

/** Something made, with what may go wrong with it. */
export interface AtRisk {
  /** As it stands in a sentence, in marks where somebody gave it. */
  readonly title: string;
  readonly risks: readonly Risk[];
}

/**
 * Prints the risks of what is made in a run, each in full once: at the first that has it, with the names of all that do. Harm is
 * repeated at each, in short, as it is to be read where it is done.
 */
export class RiskPrinter {
  readonly #titles = new Map<string, string[]>();

  /** @param all whatever is made, in the order of print */
  constructor(
    all: readonly AtRisk[],
    private readonly texts: Texts,
  ) {
    for (const { title, risks } of all) {
      for (const risk of risks) {
        const titles = this.#titles.get(keyOf(risk)) ?? [];
        if (!titles.includes(title)) this.#titles.set(keyOf(risk), [...titles, title]);
      }
    }
  }

  /** Those of one thing that are of a level, as lines. */
  lines({ title, risks }: AtRisk, which: 'high' | 'other'): string[] {
    return risks
      .filter(({ level }) => (level === 'high') === (which === 'high'))
      .flatMap((risk) => this.#line(risk, title) ?? [])
      .map((text) => wrap(`! ${text}`, 4, WIDTH, 2));
  }

  #line(risk: Risk, title: string): string | undefined {
    const { texts } = this;
    const titles = this.#titles.get(keyOf(risk)) ?? [title];
    const text = texts.of(risk);
    if (titles[0] !== title) return risk.level === 'high' ? text : undefined;
    const full = `${text} ${texts.remedyOf(risk)}`;
    return titles.length === 1 ? full : `${texts.and(titles)}: ${full}`;
  }
}

function keyOf(risk: Risk): string {
  return JSON.stringify(risk);
}

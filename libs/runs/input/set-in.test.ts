import { describe, expect, it } from 'vitest';
import type { PieceDesign } from '#contract';
import { impliedOrder } from '#runs';
import { askedBy, piece } from '../../../tests/support/told-stages.js';

const asked = askedBy(impliedOrder);

/** Pieces in which a part is said to be set into another. */
const into = (embed: string, host: string, stages: readonly string[]): string[] => {
  const whole = piece([...stages, `set-in ${embed}`]);
  const told = whole.stages.map((stage) => (stage.kind === 'set-in' ? { ...stage, onto: host } : stage));
  return asked(`set-in ${embed}`, [...stages, `set-in ${embed}`], { stages: told });
};

describe('a part that is made before and set into another', () => {
  it('is out of its mould by then, and fresh enough to bond: common practice, no source', () => {
    expect(into('moon', 'base', ['pour moon', 'unmould moon', 'pour base', 'unmould base'])).toEqual([
      ...['after unmould-moon', 'after unmould-base', 'moon before embeds-until'],
    ]);
  });

  it('may be as dry as it likes once it is misted', () => {
    const stages = ['pour moon', 'unmould moon', 'mist moon', 'pour base', 'unmould base'];
    expect(into('moon', 'base', stages)).not.toContain('moon before embeds-until');
  });

  it('bears being picked up where it was piped on paper', () => {
    expect(into('foam', 'base', ['pipe foam', 'pour base'])).toEqual([
      ...['base holds-layer', 'base before takes-decor-until'],
      ...['foam piping-turnable', 'foam before embeds-until'],
    ]);
  });

  it('is what it goes into itself where nothing says otherwise, as soap that decor is set into', () => {
    const stages = ['pour base', 'unmould base', 'pipe foam', 'set-in foam'];
    expect(asked('set-in foam', stages)).toEqual(['foam before piping-skinned']);
  });
});

describe('what was set in', () => {
  const stages = [
    'pour base',
    'unmould base',
    'press-decor shells',
    'set-in shells',
    'turn base',
    'wrap base',
  ];
  const links = (more?: Partial<PieceDesign>) =>
    impliedOrder(piece(stages, more)).links.filter(({ from }) => from === 'set-in-shells');

  it('sets before the piece is turned, and longer before it is wrapped: common practice, no source', () => {
    expect(links()).toEqual([
      { from: 'set-in-shells', to: 'turn-base', atLeastMin: 4 * 60 },
      { from: 'set-in-shells', to: 'wrap-base', atLeastMin: 24 * 60 },
    ]);
  });

  it('has the time that the maker gives it, where they do', () => {
    const own = [{ from: 'set-in-shells', to: 'turn-base', atLeastMin: 10 }];
    expect(links({ links: own }).map(({ to }) => to)).toEqual(['wrap-base']);
  });

  it('does not hold up what is done before', () => {
    const turned = ['pour base', 'unmould base', 'turn base', 'press-decor shells', 'set-in shells'];
    expect(impliedOrder(piece(turned)).links.filter(({ from }) => from === 'set-in-shells')).toEqual([]);
  });
});

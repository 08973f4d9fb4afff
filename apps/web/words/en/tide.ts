export const tide = {
  title: 'Tide chart',
  table: 'Tide table',
  summary: (stages: number, parts: number, from: string, to: string) =>
    `${stages} stages on ${parts} ribbons, from ${from} to ${to}.`,
  how: 'Each ribbon is a part, and grows thicker as its soap firms. A lens shows when a stage may start: widest where that is best. Tap a stage for its times and why.',
  day: 'A day',
  box: 'Tide chart. Arrow keys move in time, plus and minus come closer and go farther. Tab goes to the stages.',
  stages: 'Stages, in order. Arrow keys go from one to the next, Enter shows one, M moves it.',
  closer: 'Closer',
  farther: 'Farther',
  earlier: 'Earlier',
  later: 'Later',
  making: 'The making',
  whole: 'With the cure',
  now: 'Now',
  cured: (when: string) => `likely cured ${when}`,
  markLabel: (m: {
    number: number;
    title: string;
    state: string;
    opens: string;
    best: string;
    lastCall: string;
    why: string;
  }) =>
    `${m.number}. ${m.title}, ${m.state}. Opens ${m.opens}, best ${m.best}, last call ${m.lastCall}. ${m.why}`,
  doneLabel: (m: { number: number; title: string; state: string; at: string }) =>
    `${m.number}. ${m.title}, ${m.state} ${m.at}.`,
  status: { planned: 'planned', done: 'done', spoilt: 'spoilt' },
  lost: (odds: string) => `It goes wrong here in ${odds} runs.`,
  none: 'no last call',
  number: 'No.',
  stage: 'Stage',
  opens: 'Opens',
  best: 'Best',
  lastCall: 'Last call',
  surely: 'Open in 9 of 10 cases',
  surelySpan: (from: string, to: string) => `${from} to ${to}`,
  surelyFrom: (from: string) => `from ${from}`,
  surelyNever: 'at no time',
  why: 'Why',
  was: (when: string) => `was ${when}`,
  added: 'new',
  gone: 'Left out with this change',
  close: 'Close',
  inTable: 'In the tide table',
  move: 'Move it',
  moving: {
    title: (stage: string) => `Where should “${stage}” go?`,
    how: 'Drag it, or use the buttons or arrow keys. Nothing is kept until you say so.',
    back: '15 min earlier',
    on: '15 min later',
    lastSitting: 'Sitting before',
    nextSitting: 'Sitting after',
    trying: 'Working it out …',
    odds: (there: string, here: string) => `Odds here: ${there}; where it was: ${here}.`,
    moves: (count: number) =>
      count === 0
        ? 'No other stage moves.'
        : count === 1
          ? 'One other stage moves.'
          : `${count} other stages move.`,
    cannot: 'It cannot be there:',
    keep: 'Keep it there',
    leave: 'Leave it where it was',
    kept: 'Kept. Later plans move it as little as any other stage.',
  },
  legend: {
    hours: 'your hours',
    night: 'night',
    sitting: 'sitting',
    done: 'done',
    forecast: 'forecast',
    window: 'when a stage may start',
    risk: 'where it goes wrong most',
    before: 'where it was',
  },
};

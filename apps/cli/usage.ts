import type { Language } from '#words';
import { demoNames } from './demos.js';
import type { CommandName } from './options.js';
import { printed, type PrintedWords } from './words/index.js';

type Words = PrintedWords['usage'];

/** How a command is called. */
export function usageOf(command: CommandName, language: Language): string {
  const words = printed[language].usage;
  const { file, number } = words;
  const own = command === 'plan' ? ` [--at 2026-11-27T18:00] [--seed ${number}] [--remedies]` : '';
  const call = `npm run ${command} -- ${file} [--count ${number}] [--lang en|de] [--units metric|us] [--json]`;
  const head = `${words.usage}: `;
  const indent = ' '.repeat(head.length);
  return [
    `${head}${call}${own}`,
    ...also(command, words).map((line) => `${indent}${line}`),
    `${indent}npm run ${command} -- --schema         ${words.schema}`,
    `${indent}npm run ${command} -- --file-schema    ${words.fileSchema}`,
    words.files(demoNames().join(', ')),
    words.count,
    command === 'plan' ? words.planStatuses : words.statuses,
  ].join('\n');
}

function also(command: CommandName, words: Words): string[] {
  switch (command) {
    case 'plan':
      return [
        `--remedies ${words.remedies}`,
        `npm run plan -- ${words.file} --odds 0.9 [--ready-by 2027-01-16] [--run ${words.key}]`,
        `${' '.repeat(36)}${words.odds}`,
      ];
    case 'amounts':
      return [`npm run amounts -- --fats          ${words.fats}`];
    case 'clocks':
      return [`npm run clocks -- --rules          ${words.rules}`];
  }
}

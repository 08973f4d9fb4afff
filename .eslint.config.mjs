import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const pureLibraries = ['units', 'chemistry', 'clocks', 'planner', 'hours', 'runs', 'contract', 'shelf'];

const noNow = 'Pure code is told the time; it does not look at a clock.';
const noChance = 'Pure code is handed a seeded Random; its answers can be repeated.';
const noSecureContext = 'Missing on pages over plain http; newId() of apps/web/api works on all.';
const environment = 'The environment is read once, in the config.ts of a program.';

export default tseslint.config(
  {
    ignores: [
      'dist/',
      '.benchtide/',
      'node_modules/',
      'libs/storage/generated/',
      'apps/web/api/schema.d.ts',
      'tests/output/',
      'tests/fixtures/',
    ],
  },
  {
    linterOptions: { reportUnusedDisableDirectives: 'error' },
  },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: {
        project: [
          'libs/tsconfig.pure.json',
          'libs/tsconfig.node.json',
          'apps/tsconfig.json',
          'apps/web/tsconfig.json',
          'apps/web/offline/tsconfig.json',
          'tests/tsconfig.json',
        ],
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/explicit-module-boundary-types': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', ignoreRestSiblings: true, destructuredArrayIgnorePattern: '^_' },
      ],
      // The decorators of the API need imports that look like types to stay; the compiler settles the rest.
      '@typescript-eslint/consistent-type-imports': 'off',
      // A method may be async because the interface it fills is.
      '@typescript-eslint/require-await': 'off',
      eqeqeq: 'error',
      'no-restricted-properties': ['error', { object: 'process', property: 'env', message: environment }],
      'no-restricted-imports': [
        'error',
        { name: 'node:process', importNames: ['env'], message: environment },
      ],
    },
  },
  {
    // The built-in database is a program that is looked for on the PATH and handed it.
    files: ['apps/*/config.ts', 'libs/storage/embedded/*.ts', 'tests/**', '**/*.test.ts'],
    rules: { 'no-restricted-properties': 'off', 'no-restricted-imports': 'off' },
  },
  {
    files: ['**/*.test.ts', 'tests/**/*.ts'],
    // Expectations on parsed answers read better without a cast at each step; the assertion is the check.
    rules: {
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  {
    // A text says by itself what it is, and the other languages are held to its type.
    files: ['apps/web/words/en/*.ts'],
    rules: { '@typescript-eslint/explicit-module-boundary-types': 'off' },
  },
  {
    files: ['apps/web/**/*.ts', 'apps/web/**/*.tsx'],
    rules: {
      'no-restricted-syntax': [
        'error',
        { selector: "MemberExpression[property.name='randomUUID']", message: noSecureContext },
      ],
    },
  },
  {
    files: ['apps/web/**/*.tsx'],
    plugins: { 'react-hooks': reactHooks },
    rules: {
      ...reactHooks.configs.recommended.rules,
      // Handlers may be async; what fails in them is theirs to show.
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
    },
  },
  {
    files: [`libs/{${pureLibraries.join(',')}}/**/*.ts`],
    ignores: ['**/*.test.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: noNow },
        { object: 'DateTime', property: 'now', message: noNow },
        { object: 'DateTime', property: 'local', message: noNow },
        { object: 'DateTime', property: 'utc', message: noNow },
        { object: 'Math', property: 'random', message: noChance },
        { object: 'globalThis', message: 'Pure code has no surroundings.' },
      ],
      'no-restricted-syntax': [
        'error',
        { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: noNow },
        { selector: "CallExpression[callee.name='Date']", message: noNow },
      ],
      'no-console': 'error',
    },
  },
);

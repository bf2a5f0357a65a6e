import tseslint from 'typescript-eslint';

/** The rooms of the core from the ground up: each may import from those before it, never from those after it. */
export const ROOMS = [
  ['result', 'unit', 'rounding', 'median', 'angle', 'pushTo', 'formulaText'],
  ['require'],
  ['insideOffset'],
  ['stock/'],
  ['boards/'],
  ['arc', 'machine', 'lumber', 'dimension', 'feetInches'],
  ['lengthText', 'callout'],
  ['blank/'],
  ['head/'],
  ['stockList', 'onHand'],
  ['standards'],
  ['standardsJson', 'shopRange', 'extras', 'settingUnit'],
  ['notSet'],
  ['schedule/'],
  ['quote/'],
  ['pdf/'],
  ['takeoff/'],
  ['check/'],
  ['job/', 'revision/', 'tickets/'],
  ['drawing/'],
  ['workbook/'],
];

const OUTSIDE_CORE = ['functions', 'taskpane', 'cli', 'bench', 'tests'];

/** Matches an import of the room from a file in src/ ("./room") or in one of its folders ("../room"). */
function importOf(room) {
  return room.endsWith('/') ? `^\\.{1,2}/(\\.\\./)*${room}` : `^\\.{1,2}/(\\.\\./)*${room}$`;
}

function filesOf(room) {
  return room.endsWith('/') ? `src/${room}**/*.ts` : `src/${room}.ts`;
}

const roomRules = ROOMS.map((rooms, level) => ({
  files: rooms.map(filesOf),
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          ...ROOMS.slice(level + 1)
            .flat()
            .map((above) => ({
              regex: importOf(above),
              message: `src/${above} stands above this room: imports only go downward (see ROOMS in eslint.config.js).`,
            })),
          {
            regex: `^(\\.\\./)+(${OUTSIDE_CORE.join('|')})/`,
            message: 'The core knows nothing of its hosts.',
          },
          {
            regex: '^(node:|@microsoft/|office-|fs$|path$|react|@univerjs/)',
            message: 'The core imports nothing of Node, Office or a page; give it bytes or plain values.',
          },
        ],
      },
    ],
  },
}));

const HOST_GLOBALS = [
  'window',
  'document',
  'navigator',
  'localStorage',
  'fetch',
  'process',
  'Buffer',
  'require',
].concat(['Office', 'Excel', 'CustomFunctions', 'OfficeRuntime'], ['setTimeout', 'setInterval', 'console', 'alert']);

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'artifacts/'] },
  ...tseslint.configs.strict,
  {
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-invalid-void-type': 'off', // Result<void> is what a deed without a value gives
      // With noUncheckedIndexedAccess an index the code has just proven needs the mark.
      '@typescript-eslint/no-non-null-assertion': 'off',
      eqeqeq: ['error', 'smart'],
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true, named: true, defaultFrom: true } }],
    },
  },
  { files: ['*.config.*'], rules: { 'no-restricted-exports': 'off' } },
  {
    // What needs types: a promise that nobody waits for swallows what went wrong.
    files: ['**/*.ts', '**/*.tsx'],
    ignores: ['*.config.ts'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      // A handler gives its promise to the page or the grid: each deed reports its own failure.
      '@typescript-eslint/no-misused-promises': [
        'error',
        { checksVoidReturn: { attributes: false, arguments: false } },
      ],
      '@typescript-eslint/await-thenable': 'error',
    },
  },
  {
    files: ['src/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...HOST_GLOBALS.map((name) => ({ name, message: 'The core runs in Excel, a page and Node alike.' })),
      ],
      'no-console': 'error',
    },
  },
  ...roomRules,
  {
    // A test knows what it just made: an assertion that fails is a failed test.
    files: ['tests/**/*.ts', 'bench/**/*.ts'],
    rules: { '@typescript-eslint/no-explicit-any': 'off' },
  },
);

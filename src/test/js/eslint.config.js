import js from '@eslint/js';
import globals from 'globals';

const MODULES = 'src/main/resources/META-INF/resources/modules/**/*.js';
const TESTS = 'src/test/js/*.js';

export default [
  { ignores: ['**/node_modules/'] },
  js.configs.recommended,
  {
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      'array-callback-return': 'error',
      'curly': ['error', 'multi-line'],
      'eqeqeq': 'error',
      'max-lines': ['error', 300],
      'no-duplicate-imports': 'error',
      'no-else-return': 'error',
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-nested-ternary': 'error',
      'no-param-reassign': 'error',
      'no-script-url': 'error',
      'no-self-compare': 'error',
      'no-shadow': 'error',
      'no-unused-expressions': 'error',
      'no-use-before-define': ['error', { functions: false, variables: false }],
      'no-var': 'error',
      'object-shorthand': 'error',
      'prefer-const': 'error',
      'prefer-template': 'off',
    },
  },
  {
    files: [MODULES],
    languageOptions: { globals: globals.browser },
    rules: {
      // Markup is made by lit-html alone, which shows text as text.
      'no-restricted-properties': ['error',
        { property: 'innerHTML', message: 'Render a template of lit-html.' },
        { property: 'outerHTML', message: 'Render a template of lit-html.' },
        { property: 'insertAdjacentHTML', message: 'Render a template of lit-html.' }],
      'no-restricted-syntax': ['error',
        { selector: "ImportDeclaration[source.value=/unsafe-/]", message: 'Nothing is rendered as markup that came as text.' }],
      'no-console': 'error',
    },
  },
  { files: [TESTS], languageOptions: { globals: globals.node } },
];

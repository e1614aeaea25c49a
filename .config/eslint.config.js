import { resolve } from 'node:path';
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'data/', 'coverage/'] },
  tseslint.configs.strictTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: resolve(import.meta.dirname, '..') } },
    rules: {
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-assertions': ['error', { assertionStyle: 'never' }],
      'max-lines': ['error', { max: 300 }],
      'no-console': 'error',
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true, named: true, defaultFrom: true, namedFrom: true, namespaceFrom: true } }],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
    },
  },
  // Branded constructors are the one place that casts.
  { files: ['src/cure/units.ts', 'src/repair/ids.ts', 'src/clerk/message.ts'], rules: { '@typescript-eslint/consistent-type-assertions': 'off' } },
  { files: ['**/*.config.js', '**/*.config.ts'], rules: { 'no-restricted-exports': 'off' } },
  { files: ['**/*.js'], extends: [tseslint.configs.disableTypeChecked] },
);

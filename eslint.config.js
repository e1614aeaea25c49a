export { default } from './.config/eslint.config.js';

import { execSync } from 'node:child_process';

/** The journeys talk to the built program, so it is built first. */
export function setup(): void {
  execSync('npm run --silent build', { stdio: 'inherit' });
}

import { posix } from 'node:path';
import ts from 'typescript';
import type { SourceFile } from './source-files.js';

/** What a room may import: rooms, single files (`clerk/ports`), and packages besides zod and luxon. */
interface Rule {
  readonly rooms: readonly string[];
  readonly packages?: readonly string[];
  /** No clock, no chance, no file, no network: everything comes in as a value. */
  readonly pure?: true;
}

const BOOK = ['repair', 'cure'];
const PORTS = ['clerk/ports', 'clerk/message', 'clerk/desk', 'clerk/lane-of', 'reply', ...BOOK, 'errors', 'log'];

/** The longest name that fits is the room of a file. */
const RULES: Readonly<Record<string, Rule>> = {
  // Least squares have one answer for one input: no clock, no chance.
  cure: { rooms: [], packages: ['ml-levenberg-marquardt'], pure: true },
  repair: { rooms: ['cure'], pure: true },
  plan: { rooms: BOOK, pure: true },
  grammar: { rooms: BOOK, pure: true },
  // A refused line is answered in the reader's own terms.
  reply: { rooms: [...BOOK, 'grammar/reading'], packages: ['intl-messageformat'], pure: true },
  record: { rooms: [...BOOK, 'reply'] },
  clerk: { rooms: [...BOOK, 'plan', 'grammar', 'reply', 'errors', 'log'] },
  clock: { rooms: PORTS, packages: ['node-cron'] },
  store: { rooms: PORTS, packages: ['better-sqlite3'] },
  outbox: { rooms: PORTS },
  chat: { rooms: PORTS },
  'chat/page': { rooms: ['chat', ...PORTS], packages: ['hono', '@hono/*'] },
  'chat/page/client': { rooms: [] },
  // The outbox names the port through which it sends; a remote chat implements it.
  'chat/slack': { rooms: ['chat', 'outbox', ...PORTS], packages: ['@slack/*'] },
  config: { rooms: [...BOOK, 'errors'], packages: ['yaml'] },
  errors: { rooms: [] },
  closing: { rooms: [] },
  log: { rooms: ['config'], packages: ['pino'] },
  app: { rooms: ['config', 'errors', 'log', 'closing', ...BOOK, 'plan', 'grammar', 'reply', 'clerk', 'clock', 'store', 'outbox', 'chat', 'chat/page', 'chat/slack'], packages: ['hono', '@hono/*'] },
  'practice-shop': { rooms: ['config', 'errors'] },
  'book-care': { rooms: ['store'] },
  main: { rooms: ['app', 'book-care', 'practice-shop', 'config', 'errors', 'log'] },
};

const EVERYWHERE = ['zod', 'luxon'];
const CLOCKS_AND_CHANCE = ['Date.now', 'Math.random', 'DateTime.now', 'DateTime.local', 'DateTime.utc', 'performance.now'];
const IMPURE_GLOBALS = ['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'fetch', 'console', 'crypto', 'require'];

/** Every import that goes the wrong way and every reach past the ports, as `file: what`. */
export function wrongArrows(files: readonly SourceFile[]): string[] {
  return files.flatMap((file) => {
    const room = roomOf(file.path);
    if (room === null) return [`${file.path}: belongs to no room`];
    const rule = RULES[room] ?? { rooms: [] };
    const source = ts.createSourceFile(file.path, file.text, ts.ScriptTarget.ES2023, true);
    const found = reaches(source);
    const wrong = [
      ...found.imports.flatMap((target) => wrongImport(file.path, room, rule, target)),
      ...(found.process && room !== 'main' ? ['touches process, which only main.ts may'] : []),
      ...(rule.pure === true ? found.impure.map((name) => `uses ${name} in a pure room`) : []),
    ];
    return wrong.map((what) => `${file.path}: ${what}`);
  });
}

function roomOf(path: string): string | null {
  const inside = path.replace(/^src\//, '').replace(/\.ts$/, '');
  const rooms = Object.keys(RULES).filter((room) => inside === room || inside.startsWith(`${room}/`));
  return rooms.sort((one, other) => other.length - one.length)[0] ?? null;
}

function wrongImport(path: string, room: string, rule: Rule, target: string): string[] {
  if (target.startsWith('node:')) {
    if (rule.pure === true) return [`imports ${target} in a pure room`];
    return target === 'node:process' && room !== 'main' ? ['imports node:process, which only main.ts may'] : [];
  }
  if (!target.startsWith('.')) return packageAllowed(rule, target) ? [] : [`imports ${target}, which ${room} may not`];
  const file = posix.join(posix.dirname(path), target).replace(/\.js$/, '.ts');
  const other = roomOf(file);
  const single = file.replace(/^src\//, '').replace(/\.ts$/, '');
  if (other === room || (other !== null && rule.rooms.includes(other)) || rule.rooms.includes(single)) return [];
  return [`imports ${file}, and ${room} may not import ${other ?? 'what belongs to no room'}`];
}

function packageAllowed(rule: Rule, target: string): boolean {
  const [scope = '', name = ''] = target.split('/');
  const found = target.startsWith('@') ? `${scope}/${name}` : scope;
  return [...EVERYWHERE, ...(rule.packages ?? [])].some((allowed) => allowed === found || (allowed.endsWith('/*') && found.startsWith(allowed.slice(0, -1))));
}

interface Reaches {
  readonly imports: string[];
  readonly impure: string[];
  process: boolean;
}

/** What a file reaches for, read from its syntax, so that comments and texts do not count. */
function reaches(source: ts.SourceFile): Reaches {
  const found: Reaches = { imports: [], impure: [], process: false };
  const visit = (node: ts.Node): void => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier !== undefined && ts.isStringLiteral(node.moduleSpecifier)) found.imports.push(node.moduleSpecifier.text);
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) found.imports.push(node.argument.literal.text);
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) found.imports.push(literalOf(node.arguments[0]));
    if (ts.isPropertyAccessExpression(node) && CLOCKS_AND_CHANCE.includes(node.getText(source))) found.impure.push(node.getText(source));
    if (ts.isNewExpression(node) && node.expression.getText(source) === 'Date' && (node.arguments?.length ?? 0) === 0) found.impure.push('new Date()');
    if (ts.isIdentifier(node) && isFree(node)) {
      if (node.text === 'process') found.process = true;
      if (IMPURE_GLOBALS.includes(node.text)) found.impure.push(node.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** A computed import cannot be checked, so it stands as a name that no room may import. */
function literalOf(argument: ts.Expression | undefined): string {
  return argument !== undefined && ts.isStringLiteralLike(argument) ? argument.text : 'something computed';
}

/** A name by itself or on globalThis, and not a member of something else that happens to be called the same. */
function isFree(node: ts.Identifier): boolean {
  const parent = node.parent;
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) return parent.expression.getText() === 'globalThis';
  const named = ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent) || ts.isPropertyDeclaration(parent) || ts.isMethodDeclaration(parent) || ts.isMethodSignature(parent);
  return !(named && parent.name === node);
}

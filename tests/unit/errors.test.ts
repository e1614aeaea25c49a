import { describe, expect, it } from 'vitest';
import { ClerkError } from '../../src/errors.js';

describe('an error of the clerk', () => {
  it('has its code, words that say what to do, and its cause', () => {
    const cause = new Error('EADDRINUSE');
    const error = new ClerkError({ code: 'port-taken', host: '127.0.0.1', port: 4780 }, cause);
    expect(error).toBeInstanceOf(Error);
    expect({ name: error.name, code: error.code, cause: error.cause }).toEqual({ name: 'ClerkError', code: 'port-taken', cause });
    expect(error.message).toBe('Port 4780 on 127.0.0.1 is taken by another program. Name a free one in CURECLERK_PORT (0 takes any).');
  });

  it('lists every problem of the settings on a line of its own', () => {
    const error = new ClerkError({ code: 'settings-refused', problems: ['one', 'two'] });
    expect(error.message.split('\n')).toEqual(['The settings cannot be used:', '  - one', '  - two']);
    expect('cause' in error).toBe(false);
  });
});

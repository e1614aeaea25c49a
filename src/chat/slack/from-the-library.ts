/**
 * Whether an unhandled rejection came out of the chat library: it carries one of its codes, was thrown in its
 * files, or is the empty rejection its WebSocket code gives when a connection ends while another is opened.
 */
export function fromTheLibrary(reason: unknown): boolean {
  if (reason === undefined) return true;
  if (!(reason instanceof Error)) return false;
  const code = 'code' in reason && typeof reason.code === 'string' ? reason.code : '';
  return code.startsWith('slack_') || /[\\/]node_modules[\\/]@slack[\\/]/.test(reason.stack ?? '');
}

/** A timer that never keeps a closing process alive; returns how to call it off. */
export function realSleep(ms: number, wake: () => void): () => void {
  const timer = setTimeout(wake, Math.ceil(ms));
  timer.unref();
  return () => {
    clearTimeout(timer);
  };
}

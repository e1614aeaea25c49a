/** Runs `work` one at a time: wishes during a run become one more run after it. */
export function coalesce(work: () => Promise<void>): () => void {
  let wishes = 0;
  let running = false;
  const run = async (): Promise<void> => {
    running = true;
    for (let met = -1; met !== wishes; ) {
      met = wishes;
      await work();
    }
    running = false;
  };
  return () => {
    wishes += 1;
    if (!running) void run();
  };
}

import { createTask, type ScheduledTask, type TaskContext } from 'node-cron';
import { instant, type Instant } from '../cure/units.js';

/**
 * Calls `onBell` at the times of each bell, in the shop's zone, with the moment it was meant for.
 * A bell that was missed while the machine slept is called late, with its true moment; it is for the listener to judge.
 * A listener that throws is told to `onError`. Disposing stops all bells.
 */
export function ringBells<B extends { readonly expression: string }>(
  bells: readonly B[],
  zone: string,
  onBell: (bell: B, dueAt: Instant) => void,
  onError: (error: unknown) => void,
): Disposable {
  const tasks = bells.map((bell) => startBell(bell.expression, zone, (dueAt) => { onBell(bell, dueAt); }, onError));
  return {
    [Symbol.dispose]: () => {
      for (const task of tasks) void task.destroy();
    },
  };
}

function startBell(expression: string, zone: string, onBell: (dueAt: Instant) => void, onError: (error: unknown) => void): ScheduledTask {
  const ring = ({ date }: TaskContext): void => {
    try {
      onBell(instant(date.getTime()));
    } catch (error) {
      onError(error);
    }
  };
  const task = createTask(expression, ring, { timezone: zone, unref: true });
  task.on('execution:missed', ring);
  void task.start();
  return task;
}

import { readConfig, type ConfigRead, type Environment } from '../config.js';

/**
 * The settings of the practice shop: the example files, a fresh folder, a standing clock and no chat platform. Of the real
 * shop's settings only the port and the log level are taken, so nothing of the two can mix.
 */
export function readPracticeConfig({ CURECLERK_PORT, CURECLERK_LOG }: Environment, freshFolder: string, begins: string): ConfigRead {
  return readConfig({ CURECLERK_PORT, CURECLERK_LOG, CURECLERK_DATA: freshFolder, CURECLERK_CLOCK: begins });
}

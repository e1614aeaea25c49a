import { Room } from './room.js';

const SECOND = 1_000;
/** The clocks are compared, and a connection that died quietly is noticed. */
const LOOK_EVERY = 30 * SECOND;

const room = new Room();
room.look();
setInterval(() => { room.tick(); }, SECOND);
setInterval(room.look, LOOK_EVERY);
addEventListener('offline', () => { room.cutOff(); });
addEventListener('online', room.look);
document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'visible') room.look(); });

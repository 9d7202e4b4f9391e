// What of the service does not work now: one that stopped in the background must not look like one that has nothing to do.

import {h, put} from './dom.js';
import * as api from './api.js';

const LOOK_AGAIN_MS = 10000;
const PARTS = {analyses: 'analysing models', recalculation: 'computing results again', clock: 'the service’s clock', 'event streams': 'telling progress'};

export const watchOf = server => 'watch ' + server;

const partText = part => part.startsWith('watch ') ? `watching server ${part.slice(6)}` : PARTS[part] ?? part;

/** What does not work, in a few words. */
export const faultWords = f => `${partText(f.part)} fails inside the program`;

const faultText = f => `Since ${new Date(f.since).toLocaleString()} ${faultWords(f)}. `
  + (f.stopped ? 'It has stopped for good: whoever runs this service has to start it again.' : 'It is tried again by itself.') + ' The service’s log says why.';

/** Looks now and then, and says what is wrong above everything else. */
export function mountHealth(root) {
  let drawn = '';
  const look = async () => {
    // Where nobody answers, whatever the user does next says so.
    const {faults = []} = await api.health().catch(() => ({}));
    const now = JSON.stringify(faults.map(faultText));
    if (now === drawn) return;
    drawn = now;
    put(root, faults.length > 0 && h('section', {class: 'trouble', 'aria-label': 'What does not work'}, h('h2', {}, 'A part of this service does not work'), faults.map(f => h('p', {}, faultText(f)))));
  };
  look();
  setInterval(look, LOOK_AGAIN_MS);
}

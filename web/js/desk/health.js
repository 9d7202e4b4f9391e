// What of the service does not work now: one that stopped in the background must not look like one that has nothing to do.

import {h, put, say} from '../dom.js';
import {faultWords} from '../parts/faults.js';
import * as api from '../api.js';

const LOOK_AGAIN_MS = 10000;
const AWAY_LOOK_MS = 5000;

const faultText = f => `Since ${new Date(f.since).toLocaleString()} ${faultWords(f)}. `
  + (f.stopped ? 'It has stopped for good: whoever runs this service has to start it again.' : 'It is tried again by itself.')
  + ' The service’s log says why.';

const faultsSection = faults => h('section', {class: 'trouble', 'aria-label': 'What does not work'},
  h('h2', {}, 'A part of this service does not work'), faults.map(f => h('p', {}, faultText(f))));

/** Looks now and then, and at once where a request found the storage away; says what is wrong above everything else. */
export function mountHealth(root) {
  let drawn = '';
  let timer = null;
  let away = '';
  const look = async () => {
    clearTimeout(timer);
    // Where nobody answers, whatever the user does next says so.
    const health = await api.health().catch(() => ({}));
    const faults = health.faults ?? [];
    const detail = api.isStorageAway(health) ? health.detail : '';
    if (away && !detail && health.status) say('The storage is back.');
    away = detail;
    const now = JSON.stringify([detail, faults.map(faultText)]);
    if (now !== drawn) put(root, detail && h('p', {class: 'trouble', role: 'alert'}, detail), faults.length > 0 && faultsSection(faults));
    drawn = now;
    timer = setTimeout(look, detail ? AWAY_LOOK_MS : LOOK_AGAIN_MS);
  };
  addEventListener('storage-away', look);
  look();
}

// Says above everything that the storage is away, such as in use by another server, until it is back.

import {h, put, say} from './dom.js';
import * as api from './api.js';

const PAUSE = 5000;

export function mountStorage(root) {
  let timer = null;
  const look = () => api.health().then(() => {
    timer = null;
    put(root);
    say('The storage is back.');
  }, () => { timer = setTimeout(look, PAUSE); });
  addEventListener('storage-away', e => {
    if (root.textContent !== e.detail) put(root, h('p', {class: 'trouble'}, e.detail));
    timer ??= setTimeout(look, PAUSE);
  });
}

// Pointer and keys on the table.

import {set} from '../state.js';
import {ROW} from './lines.js';

/** @param {import('./grid.js').Grid} grid */
export function listen(grid) {
  const {root} = grid;
  root.addEventListener('scroll', () => requestAnimationFrame(() => grid.draw()), {passive: true});
  root.addEventListener('click', e => {
    const at = e.target.closest('[data-at]');
    if (!at) return;
    const r = grid.data.rows[at.dataset.at];
    grid.active = Number(at.dataset.at);
    if (r.j) set({selected: r.j.id, face: '', pane: 'detail'}); else grid.fold(r);
  });
  root.addEventListener('keydown', e => {
    if (e.target !== root || e.ctrlKey || e.metaKey || e.altKey) return;
    if (press(grid, e.key)) e.preventDefault();
  });
}

/** Does what a key means; whether it means anything. */
function press(grid, key) {
  const page = Math.max(1, Math.floor(grid.root.clientHeight / ROW) - 2), r = grid.data.rows[grid.active];
  const step = {ArrowDown: 1, ArrowUp: -1, PageDown: page, PageUp: -page, Home: -1e9, End: 1e9}[key];
  const isGroup = r?.group !== undefined;
  if (step) grid.moveTo(grid.active + step);
  else if (isGroup && folds(r, key)) grid.fold(r);
  else if (key === 'Enter' && r?.j) document.querySelector('.detail-panel')?.focus();
  else return false;
  return true;
}

const folds = (r, key) => key === 'Enter' || key === ' ' || key === (r.closed ? 'ArrowRight' : 'ArrowLeft');

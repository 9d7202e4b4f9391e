// Which columns show: those that the user chose, or as many as there is room for, so that the table needs no scrolling sideways.

import {state} from '../state.js';
import {COLUMNS} from './columns.js';

const WIDEST_BAR_PX = 18;
/** Names of details are long: before columns that matter less show, this much more is theirs. */
const NAME_ROOM_PX = 72, DETAIL_RANK = 4;

/** The layout of the table now; `template` is that of a row's grid, `name` is how many a group's name takes. */
export const layout = {columns: COLUMNS, template: '', name: 2, width: 0};

/**
 * Lays the columns out for a room of so many pixels.
 * @param {number} room
 * @returns {boolean} whether anything is otherwise than before
 */
export function layOut(room) {
  const columns = state.columns ? COLUMNS.filter(c => state.columns.includes(c.id) || c.rank < 2) : fitting(room - WIDEST_BAR_PX);
  const template = columns.map(track).join(' '), name = columns.findIndex(c => c.id === 'length');
  if (template === layout.template) return false;
  Object.assign(layout, {columns, template, name, width: columns.reduce((t, c) => t + c.width, 0)});
  return true;
}

function fitting(room) {
  const chosen = new Set();
  let left = room;
  for (const c of [...COLUMNS].sort((a, b) => a.rank - b.rank)) {
    if (left - (c.rank > DETAIL_RANK ? NAME_ROOM_PX : 0) < c.width && c.rank > 1) break;
    left -= c.width;
    chosen.add(c);
  }
  return COLUMNS.filter(c => chosen.has(c));
}

const track = c => c.grow ? `minmax(${c.width}px, ${c.grow}fr)` : `${c.width}px`;

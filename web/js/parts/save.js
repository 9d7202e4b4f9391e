// Tables as files for a spreadsheet.

import {h} from '../dom.js';
import {state} from '../state.js';

/** A cell that a spreadsheet would take for a formula gets an apostrophe in front, so that a name in a model cannot run there. */
const cell = v => {
  const text = String(v);
  const safe = typeof v === 'string' && /^[=+\-@\t\r]/.test(text) ? "'" + text : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

/** A file's name with model and revision: {@code school-revision-3-order.csv}. */
export const fileName = (what, ending = 'csv') =>
  `${state.analysis.title.replace(/\.(ifc|ifczip|gz|zip)$/gi, '').replace(/[^\p{L}\p{N}._-]+/gu, '-')}-revision-${state.analysis.revision}`
    + `-${what}.${ending}`;

/**
 * Saves rows of cells as comma-separated values.
 * @param {string} name of the file
 * @param {(string|number)[][]} rows
 */
export function save(name, rows) {
  const lines = rows.map(r => r.map(cell).join(',') + '\r\n');
  const url = URL.createObjectURL(new Blob(['\ufeff' + lines.join('')], {type: 'text/csv'}));
  h('a', {href: url, download: name}).click();
  URL.revokeObjectURL(url);
}

// Sums below the table, and the table as a link, a file and on paper.

import {h, link, put, say} from '../dom.js';
import {address, state} from '../state.js';
import * as api from '../api.js';
import {fileName} from '../parts/save.js';
import * as u from '../units.js';
import {COLUMNS, groupText} from './columns.js';

const MOST_PRINTED = 3000;

export function drawTotals(root, data) {
  const t = data.totals;
  put(root, h('span', {}, `${u.count(t.count)} of ${counted()}`), h('span', {}, u.run(t.lengthM)),
    t.tapeM > 0 && h('span', {}, `Tape ${u.run(t.tapeM)}`), t.beadM > 0 && h('span', {}, `Bead ${u.run(t.beadM)}`),
    t.screws > 0 && h('span', {}, `Fasteners ${u.count(t.screws)}`),
    link('Copy link', copyLink, {title: 'A link that shows this table again'}),
    h('a', {href: api.junctionsAt(state.analysis.id), download: fileName('junctions')}, 'All junctions as CSV'));
}

/** All lines of the table in words. */
function counted() {
  const {junctions, lines} = state.ledger, joints = lines.length - junctions.length;
  return joints ? `${u.count(lines.length)} lines, ${u.count(joints)} of them panel joints` : `${u.count(lines.length)} junctions`;
}

async function copyLink() {
  await navigator.clipboard?.writeText(location.origin + '/' + address());
  say('The link is on the clipboard.');
}

/** Paper has no scroll bar: all rows in view of the filter are laid out for printing, up to a limit. */
export function beforePrint(root, rows) {
  let sheet = null;
  addEventListener('beforeprint', () => {
    if (!root.isConnected || !state.ledger) return;
    const all = rows();
    sheet = h('table', {class: 'print-only plain'},
      h('thead', {}, h('tr', {}, COLUMNS.map(c => h('th', {class: c.num ? 'num' : ''}, c.title)))),
      h('tbody', {}, all.slice(0, MOST_PRINTED).map(printed)),
      all.length > MOST_PRINTED && h('caption', {}, `The first ${MOST_PRINTED} of ${all.length} rows. Save as CSV for all.`));
    root.append(sheet);
  });
  addEventListener('afterprint', () => sheet?.remove());
}

function printed(r) {
  if (r.j) return h('tr', {}, COLUMNS.map(c => h('td', {class: c.num ? 'num' : ''}, c.cell(r.j))));
  return h('tr', {class: 'group'}, h('th', {colspan: 2}, groupText(r.group), ` (${r.totals.count})`),
    h('th', {class: 'num'}, u.run(r.totals.lengthM)), COLUMNS.slice(3).map(c => h('th', {class: 'num'}, c.sum?.(r.totals))));
}

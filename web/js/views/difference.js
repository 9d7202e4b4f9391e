// What changed from one revision to another.

import {h, link, num, table} from '../dom.js';
import {set} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {amounts, staleLink} from '../parts/differences.js';
import {restOf, titleOf} from '../parts/findingwords.js';
import * as u from '../units.js';

const MOST_ROWS = 400;
const BY = {id: 'id', place: 'place', elements: 'elements'};

/**
 * @param {object} c as the service compares two revisions
 * @param {boolean} isLater whether what is compared with is the later of the two
 */
export function difference(c, isLater) {
  const same = !c.changed.length && !c.added.length && !c.removed.length;
  return h('section', {class: 'changed'},
    h('h3', {}, same ? `Nothing changed ${isLater ? 'against' : 'since'} ${c.fromWords}` : counts(c, isLater)),
    !same && h('p', {class: 'quiet'}, 'In the plan and in 3-D: ',
      ['added', 'changed', 'gone'].map(k => h('span', {class: 'key'}, h('i', {class: 'sign ' + k, 'aria-hidden': 'true'}), k, ' '))),
    c.decisionsGone.length > 0 && h('p', {class: 'overridden'},
      `✎ Overridden in ${c.fromWords}, about lines that are gone: ${c.decisionsGone.map(gone).join('; ')}`),
    staleLink() && h('p', {}, staleLink()),
    lines('Added', c.added, l => [pick(l), u.length(l.lengthM)]),
    lines('Gone', c.removed, l => [kindText(l.kind), u.length(l.lengthM)]),
    lines('Changed', c.changed, p => [pick(p.after, p.before), lengthsOf(p),
      `${p.changes.join(', ')} (matched by ${BY[p.by]})`]),
    findingsThatDiffer(c),
    lengthsByKind(c.lengths.filter(l => Math.abs(l.afterM - l.beforeM) >= 5e-4)),
    h('h3', {}, 'Difference in the order'), amounts(c));
}

const counts = (c, isLater) => `${isLater ? `Against ${c.fromWords}, which is later` : `Since ${c.fromWords}`}: `
  + `${u.count(c.added.length)} added, ${u.count(c.removed.length)} gone, ${u.count(c.changed.length)} changed, `
  + `${u.count(c.same)} as before`;

const gone = d => `${d.junction} (${[d.kind && kindText(d.kind), d.detail].filter(Boolean).join(', ')}: ${d.reason})`;

/** Both lengths, or the one where they read the same. */
function lengthsOf(p) {
  const [before, after] = [p.before, p.after].map(l => u.length(l.lengthM));
  return before === after ? after : `${before} → ${after}`;
}

/** Kinds that have as much as before say nothing. */
const lengthsByKind = list => list.length > 0 && [h('h3', {}, 'Length by kind'),
  table(['Kind', ...['Before', 'Now', 'Difference'].map(text => ({text, num: true}))], list.map(lengths))];

function lengths(l) {
  const by = l.afterM - l.beforeM;
  return h('tr', {}, h('td', {}, kindText(l.kind)), num(u.run(l.beforeM)), num(u.run(l.afterM)),
    num(`${by >= 0 ? '+' : '−'}${u.run(Math.abs(by))}`));
}

/** Findings and overrides, as the comparison of the command line has them. */
function findingsThatDiffer(c) {
  const still = c.stillFindings.length;
  return [findings('New findings', c.newFindings), findings('Findings that are gone', c.goneFindings),
    still > 0 && h('p', {class: 'quiet'}, `${u.count(still)} ${still === 1 ? 'finding is' : 'findings are'} still there`),
    c.overridesUnfit.length > 0 && [h('h3', {}, 'Overrides that no longer fit'), h('ul', {}, c.overridesUnfit.map(unfit))]];
}

function findings(title, list) {
  const item = f => h('li', {class: f.severity}, h('b', {}, titleOf(f)), ' ', restOf(f), ' ', h('code', {}, f.code), ' ',
    f.junction && h('code', {}, f.junction), f.accepted && ' (accepted)');
  return list.length > 0 && [h('h3', {}, `${title} (${u.count(list.length)})`),
    h('ul', {class: 'notes'}, list.slice(0, MOST_ROWS).map(item)),
    list.length > MOST_ROWS && h('p', {}, `and ${u.count(list.length - MOST_ROWS)} more`)];
}

function unfit(o) {
  const chosen = [o.kind && kindText(o.kind), o.detail].filter(Boolean).join(', ');
  const why = o.changes.includes('gone') ? 'the line is gone' : `what changed: ${o.changes.join(', ')}`;
  return h('li', {}, h('code', {}, o.junction), `: ${chosen}; ${why}. ${o.reason}`);
}

function pick(l, before) {
  return [link(kindText(l.kind), () => set({selected: l.id, pane: 'detail'})),
    before && before.kind !== l.kind && ` (was ${kindText(before.kind)})`];
}

function lines(title, list, cells) {
  const row = l => h('tr', {}, cells(l).map((x, i) => h('td', {class: i === 1 ? 'num' : ''}, x)));
  return list.length > 0 && [h('h3', {}, title),
    table(['Junction', {text: 'Length', num: true}, 'What'].slice(0, cells(list[0]).length), list.slice(0, MOST_ROWS).map(row)),
    list.length > MOST_ROWS && h('p', {}, `and ${u.count(list.length - MOST_ROWS)} more`)];
}

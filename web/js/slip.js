// The slip of the chosen junction: what it is, why, what it takes, how each number came about, and what a person says about it.

import {h, put, field, choice, say} from './dom.js';
import {set, state, watch, filter} from './state.js';
import {KINDS, kindText, REVIEW, SEVERITY, SEALS} from './marks.js';
import {kindOf, detailOf, modelOf} from './ledger.js';
import {swatch} from './legend.js';
import {section} from './section.js';
import {byRules, decidesAnew, detailOptions, follow, handNotes, titleOf} from './decisions.js';
import {alongLine} from './coverage.js';
import {remarks, sentence} from './findings.js';
import * as api from './api.js';
import * as u from './units.js';

export function mountSlip(root) {
  const draw = () => state.ledger && put(root, content());
  watch(['selected', 'ledger', 'units', 'reviews', 'marks', 'face', 'deciding', 'effect'], changed => {
    if (!root.isConnected) return;
    // A note that is being written stays: only what stands around it would be drawn anew.
    if (root.contains(document.activeElement) && document.activeElement.matches('textarea, input') && !changed.has('selected') && !changed.has('units')) return;
    draw();
    if (changed.has('selected')) root.scrollTop = 0;
  });
  draw();
}

function content() {
  const j = state.ledger.byId.get(state.selected);
  if (j) return junction(j);
  const f = state.ledger.faces.get(state.face);
  if (f) return face(f);
  return h('div', {class: 'empty'}, h('h2', {}, 'No junction chosen'),
    h('p', {}, 'Pick a line in the plan or in 3-D, or a row of the ledger. Its drawing, its reasons and everything that it takes appear here.'),
    state.ledger.junctions.length > 0 && h('p', {}, h('button', {on: {click: () => set({selected: longest().id})}}, `Begin with the longest: ${kindText(longest().kind).toLowerCase()}, ${u.length(longest().lengthM)}`)));
}

/** What a junction takes comes when it is looked at; only its own place is filled then, so that what somebody is writing below stays. */
function parts(j) {
  const ledger = state.ledger, root = h('div', {}), fill = whole => put(root, whole.trouble ? h('p', {class: 'quiet'}, whole.trouble) : taken({...j, ...whole}));
  if (ledger.whole.has(j.id)) return fill(ledger.whole.get(j.id));
  put(root, h('p', {class: 'quiet'}, 'Fetching what it takes…'));
  api.junction(state.analysis.id, j.id).then(whole => { ledger.whole.set(j.id, whole); fill(whole); }, e => fill({trouble: e.message}));
  return root;
}

const longest = () => state.ledger.junctions.reduce((a, b) => b.lengthM > a.lengthM ? b : a);

function face(f) {
  const rows = [['Slope', `${u.degrees(f.slopeDegrees)} · ${f.risePer12?.toFixed(2)}:12`], ['Falls towards', compass(f.fallAzimuthDegrees)], ['Area', u.area(f.areaM2)],
    ['Plan area', u.area(f.planAreaM2)], ['Perimeter', u.run(f.perimeterM)], f.seams && ['Seams', `${u.count(f.seams.count)}, ${u.run(f.seams.lengthM)}`], f.curved && ['Form', 'Curved']];
  return [h('h2', {}, `Roof face ${f.id}`), facts(rows), h('p', {}, h('button', {on: {click: () => { filter('face', f.id); set({tab: 'ledger', pane: 'book'}); }}}, 'Show its junctions')), elementsOf(f.elements)];
}

const compass = az => `${['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'][Math.round(az / 45) % 8]} (${u.degrees(az)})`;
const facts = rows => h('dl', {class: 'facts'}, rows.filter(Boolean).map(([k, v]) => [h('dt', {}, k), h('dd', {}, v)]));

function junction(j) {
  const r = state.reviews.get(j.id), kind = kindOf(j, state.reviews);
  return [
    h('header', {class: 'slip-head'}, swatch(j.seal), h('h2', {}, kindText(kind), ' ', h('span', {class: 'length'}, u.length(j.lengthM))),
      h('button', {class: 'link', title: 'Close', 'aria-label': 'Close the junction', on: {click: () => set({selected: '', pane: 'book'})}}, '×')),
    handNotes(j, r),
    h('p', {class: 'lead'}, SEALS[j.seal].text, detailOf(j, state.reviews) && [' · detail ', h('b', {title: detailOf(j, state.reviews)}, titleOf(detailOf(j, state.reviews)))], ' · faces ',
      j.faces.map((id, i) => [i ? ', ' : '', h('button', {class: 'link', on: {click: () => set({face: id, selected: ''})}}, id)])),
    findingsOf(j),
    section(j),
    parts(j), hold(j), alongLine(j), elementsOf(j.elements), review(j, r)];
}

function taken(j) {
  return [why(j),
    part('Metal', ['Part', 'Pieces', 'Length'], (j.metal ?? []).map(m => [[m.part, on(m)], u.count(m.pieces), u.run(m.lengthM)])),
    part('Closures to cut', ['Part', 'Count', 'Length', 'Bevel'], (j.closures ?? []).map(c => [[c.part, on(c), c.shorterThanMinimum && ', short'], u.count(c.count), u.length(c.lengthM), u.degrees(c.bevelDegrees)])),
    part('Sealant', ['Where', 'What', 'Lines', 'Length'], (j.seals ?? []).map(x => [[x.place, on(x)], [x.form, x.exposure === 'exposed' ? ', visible' : ', hidden', x.role === 'secondary' ? ', second line' : ''].join(''), u.count(x.lines), u.run(x.lengthM)])),
    part('Fasteners', ['Line', 'Count', 'Apart'], (j.fasteners ?? []).map(x => [[x.place, on(x), x.throughTape && ', through tape'], u.count(x.count), u.small(x.spacingM)])),
    behind(j),
    steps(j), measured(j)];
}

const on = x => x.face ? ` on ${x.face}` : '';

/** What the detail relies on where no sealant is left, and where the detail comes from. */
function behind(j) {
  const d = state.ledger.details.get(j.detail);
  return d && h('section', {}, h('h3', {}, 'Without any sealant'), h('p', {}, d.withoutSealant, ' ', d.metalFirst === true ? 'The metal alone still leads the water off.' : 'The joint relies on its sealant.'),
    d.source && h('p', {class: 'quiet'}, `Source of the detail: ${d.source}`));
}

function findingsOf(j) {
  return j.found.length > 0 && h('ul', {class: 'notes'}, j.found.map(f => {
    const accepted = state.marks.get(f.place)?.state === 'accepted';
    return h('li', {class: f.severity + (accepted ? ' accepted' : '')}, h('b', {}, `${SEVERITY[f.severity]?.sign ?? ''} ${sentence(f.message)}`), (f.action ?? f.advice) && h('span', {}, " " + (f.action ?? f.advice)), f.reason && h('small', {}, ` ${f.reason}`), h('small', {}, ` ${f.code}`), remarks(f));
  }));
}

function why(j) {
  const e = j.explanation;
  if (!e) return null;
  return h('section', {}, h('h3', {}, j.decided ? `What the rules say: ${kindText(byRules(j).kind).toLowerCase()}` : `Why ${kindText(j.kind).toLowerCase()}`),
    h('p', {}, e.shapes?.length === 1 ? ['Its measured facts fit one shape and no other: ', h('code', {}, e.shapes[0]), '.']
      : e.shapes?.length ? ['More than one shape claims it: ', e.shapes.map((x, i) => [i ? ', ' : '', h('code', {}, x)]), '.']
        : ['No shape claims it.', e.nearest && [' The nearest is ', h('code', {}, e.nearest), '.']]),
    e.missed?.length > 0 && h('ul', {}, e.missed.map(m => h('li', {}, m))));
}

function part(title, heads, rows) {
  return rows.length > 0 && h('section', {}, h('h3', {}, title), h('div', {class: 'scroll'}, h('table', {class: 'plain'},
    h('thead', {}, h('tr', {}, heads.map((t, i) => h('th', {scope: 'col', class: i && !['What'].includes(t) ? 'num' : ''}, t)))),
    h('tbody', {}, rows.map(r => h('tr', {}, r.map((c, i) => h('td', {class: typeof c === 'string' && /^[−\d,.\s′″/–°]+( ?(m|mm|ft|in))?$/.test(c) ? 'num' : ''}, c))))))));
}

/** Each number with the formula and the values that it came from. */
function steps(j) {
  const list = j.steps ?? j.arithmetic ?? [];
  return list.length > 0 && h('section', {}, h('h3', {}, 'Step by step'), h('ol', {class: 'steps'}, list.map(x => typeof x === 'string' ? h('li', {}, x)
    : h('li', {}, h('span', {}, x.what ?? x.name ?? ''), ' ', (x.formula || x.rule) && h('code', {}, x.formula ?? x.rule), ' ', x.values && h('span', {class: 'quiet'}, x.values), ' ',
      (x.result ?? x.value) !== undefined && h('b', {}, `= ${x.result ?? x.value}${x.unit ? ' ' + x.unit : ''}`), x.source && h('small', {}, ` ${x.source}`)))));
}

const holdPoints = j => j.holdPoints ?? state.ledger.details.get(j.detail)?.holdPoints ?? [];
const hold = j => holdPoints(j).length > 0 && h('section', {class: 'hold'}, h('h3', {}, 'Stop and look'), h('ul', {}, holdPoints(j).map(x => h('li', {}, typeof x === 'string' ? x : [h('b', {}, `Before ${x.before}: `), x.check]))));

function measured(j) {
  const known = Object.entries(j.facts ?? {});
  return known.length > 0 && h('section', {}, h('h3', {}, 'Measured'), facts(known.map(([k, v]) => [u.words(k), typeof v === 'boolean' ? (v ? 'yes' : 'no') : u.byName(k, v)])));
}

function elementsOf(ids) {
  const copy = async id => { await navigator.clipboard?.writeText(id); say(`${id} is on the clipboard.`); };
  return ids.length > 0 && h('section', {}, h('h3', {}, 'In the model'), h('ul', {class: 'elements'}, ids.map(id => {
    const e = state.ledger.elements.get(id);
    return h('li', {}, h('span', {}, e ? `${e.ifcClass} ${e.name}` : ''), ' ', modelOf(state.ledger, e) && [h('small', {class: 'of'}, modelOf(state.ledger, e)), ' '], h('code', {}, id), ' ',
      h('button', {class: 'link', 'aria-label': `Copy GlobalId ${id}`, on: {click: () => copy(id)}}, 'Copy'), ' ',
      h('button', {class: 'link', 'aria-label': `Show junctions of ${id}`, on: {click: () => { filter('element', id); set({tab: 'ledger', pane: 'book'}); }}}, 'Its junctions'));
  })));
}

function review(j, r) {
  const v = {state: r?.state ?? 'open', note: r?.note ?? '', kind: r?.kind ?? '', detail: r?.detail ?? '', reason: r?.reason ?? '', stale: r?.stale ?? false, version: r?.version ?? 0};
  const note = h('textarea', {rows: 2, maxlength: 4000});
  note.value = v.note;
  const reason = h('input', {value: v.reason, maxlength: 4000});
  const kind = choice([['', `As the rules say: ${kindText(byRules(j).kind)}`], ...Object.entries(KINDS)], v.kind, () => {});
  const detail = choice([['', 'As the rules say, for the kind above'], ...detailOptions()], v.detail, () => {});
  const message = h('p', {role: 'alert'});
  const save = async to => {
    try {
      const stored = await api.putReview(state.analysis.id, j.id, {version: v.version, state: to ?? v.state, note: note.value, kind: kind.value, detail: detail.value, reason: reason.value});
      set({reviews: new Map(state.reviews).set(j.id, stored)});
      document.activeElement?.blur();
      say(`Saved: ${REVIEW[stored.state].text}`);
      if (decidesAnew(v, stored)) await follow(j.id);
    } catch (e) { put(message, e.message); }
  };
  return h('section', {class: 'review'}, h('h3', {}, 'Review'),
    r?.carried && h('p', {class: 'quiet'}, 'Carried over from the revision before.'),
    h('div', {class: 'states', role: 'group', 'aria-label': 'State'}, Object.entries(REVIEW).filter(([k]) => k !== 'recheck' || v.state === 'recheck').map(([k, x]) => h('button', {'aria-pressed': String(v.state === k), on: {click: () => save(k)}}, `${x.sign} ${x.text}`))),
    field('Note', note),
    h('details', {open: v.kind || v.detail ? true : null}, h('summary', {}, 'Decide kind or detail by hand'), field('Kind', kind), field('Detail', detail), field('Reason', reason, 'Needed; it shows wherever the junction does.')),
    message, h('p', {}, h('button', {class: 'main', on: {click: () => save()}}, 'Save')));
}

// The order of work: a plan of days for a crew, where it waits, and when sealants may be applied in the weather.

import {choice, field, h, link, put, say, scrolling, table} from '../dom.js';
import {set, state, watch} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import {fileName, saveBlob} from '../parts/save.js';
import {area, capital, count, run} from '../units.js';
import {written} from '../units/written.js';
import * as api from '../api.js';
import {windows} from './windows.js';

const SUN = [['none', 'none, or night'], ['overcast', 'overcast'], ['hazy', 'hazy'], ['full', 'full']];
const FORMS = [['pdf', 'Sheets for the roof (PDF)'], ['text', 'Plan as text'], ['json', 'Plan as JSON']];

export function mountSequence(root) {
  const parts = {answer: h('div', {}), form: h('div', {}), plan: h('div', {}), said: null};
  // The answer comes first; who wants another one unfolds what it was asked with.
  put(root, parts.answer, h('details', {class: 'crew-and-weather'}, h('summary', {}, 'Another crew, or the weather'), parts.form),
    parts.plan);
  let shownFor = '';
  watch(['units'], () => parts.said?.of === state.analysis?.id && show(parts));
  root.addEventListener('shown', () => {
    if (shownFor === state.analysis.id) return;
    shownFor = state.analysis.id;
    const asked = asking(parts);
    put(parts.form, asked.form);
    asked.ask();
  });
}

function show({answer, plan, said}) {
  const steps = new Map(said.plan.steps.map(s => [s.id, s]));
  put(answer, summary(said));
  put(plan, days(said.plan, steps));
}

/** The form that states crew and weather. */
function asking(parts) {
  const inputs = {air: text('12C'), humidity: text('80'), wind: text('2 m/s'), metal: text('measured'), crew: text(''),
    from: text('MM-DD')};
  const file = h('input', {type: 'file', accept: '.epw,.csv,.txt', on: {change: () => { choose(); ask(); }}});
  const sun = choice(SUN, 'none', () => {});
  const answer = h('p', {role: 'alert', class: 'refused'});
  const without = h('button', {type: 'button', class: 'button', hidden: true, on: {click: () => { file.value = ''; choose(); ask(); }}},
    'Without the file');
  const now = h('fieldset', {}, h('legend', {}, 'or the weather of now'), field('Air', inputs.air), field('Humidity, %', inputs.humidity),
    field('Sun', sun), field('Wind', inputs.wind), field('Metal', inputs.metal));
  /** One kind of weather at a time: what can't be filled in doesn't count. */
  const choose = () => {
    now.disabled = file.files.length > 0;
    without.hidden = file.files.length === 0;
  };
  const wish = () => ({...Object.fromEntries(Object.entries(inputs).map(([k, el]) => [k, el.matches(':disabled') ? '' : el.value.trim()])),
    sun: inputs.air.value.trim() && !now.disabled ? sun.value : ''});
  const ask = async () => {
    const id = state.analysis.id, query = wish();
    put(answer);
    try {
      const said = await api.sequence(id, query, file.files[0]);
      parts.said = {of: id, plan: said, query, file: file.files[0]};
      if (state.analysis?.id === id) show(parts);
    } catch (e) {
      put(answer, e.message);
    }
  };
  const form = h('form', {class: 'weather', on: {submit: e => { e.preventDefault(); ask(); }}},
    field('People in the crew', inputs.crew),
    field('Weather file', file, 'EPW, or a table: time,air_C,humidity_%,sun_W/m2,wind_m/s,rain_mm'),
    without, field('Begins on its day', inputs.from), now,
    h('button', {class: 'button'}, 'Plan the days'), answer);
  return {form, ask};
}

const text = placeholder => h('input', {placeholder, size: 8});

function summary({plan, query, file}) {
  const locked = plan.steps.filter(s => s.locked).length;
  const crew = some(plan.crew.people, 'person', 'people');
  return [h('h2', {}, `${some(plan.steps.length, 'step')} in ${some(plan.days.length, 'day')} for ${crew}`),
    h('p', {class: 'doings'}, FORMS.map(([format, words]) => download(format, words, query, file))),
    plan.cycle.length > 0 && h('p', {class: 'refused', role: 'alert'}, `No order does all of this: ${plan.cycle.join(', ')}`),
    h('p', {}, `${some(plan.holdPoints.length, 'hold point')}; ${some(locked, 'step stays', 'steps stay')} locked until a named person has `
      + 'looked. Days, waits and temperatures of metal are estimates; the data sheets govern.')];
}

const days = (plan, steps) => [plan.weather && windows(plan.weather), waits(plan, steps), h('h3', {}, 'Days'),
  plan.days.map((d, i) => day(d, i === 0, steps))];

function download(format, words, query, file) {
  const name = fileName('sequence', {text: 'txt'}[format] ?? format);
  if (!file) return [h('a', {class: 'button', href: api.sequenceAt(state.analysis.id, {...query, format}), download: name}, words), ' '];
  return [h('button', {type: 'button', class: 'button', on: {click: () => save(query, format, file, name)}}, words), ' '];
}

/** What the weather of a file gives, as a file. */
async function save(query, format, file, name) {
  try {
    saveBlob(name, await api.sequence(state.analysis.id, {...query, format}, file, 'blob'));
  } catch (e) {
    say(e.message);
  }
}

const some = (n, one, several = one + 's') => `${count(n)} ${n === 1 ? one : several}`;

/** A line, node or face by what it is and its id. */
function place(id) {
  const {byId, nodes, nodeKinds} = state.ledger, j = byId.get(id), n = nodes.get(id);
  const name = j ? kindText(kindOf(j)) : n ? capital(nodeKinds.get(n.kind)?.label ?? n.kind) : 'Face';
  return link(`${name} ${id}`, () => set(/^F/.test(id) ? {face: id, selected: ''} : {selected: id, face: ''}));
}
/** Hours after midnight as 07:30. */
function clock(hour) {
  const minutes = Math.round(hour * 60), two = n => String(n).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

const at = (step, steps) => [steps.get(step).label, ' at ', place(steps.get(step).place)];

/** Where the crew waits, and from when on locked steps may be looked at. */
const waits = (said, steps) => [h('h3', {}, 'Critical waits'),
  said.waits.length === 0 ? h('p', {}, 'The crew never stands still.') : h('ul', {}, said.waits.map(w => h('li', {},
    `Day ${w.day}, ${clock(w.from)} until day ${w.untilDay}, ${clock(w.until)}: `,
    w.for === 'weather' ? 'no weather to seal in for ' : 'beads stand under ', at(w.step, steps)))),
  h('details', {}, h('summary', {}, 'When each locked step may be looked at'),
    scrolling('Holds', table(['Step', 'Beads gunned by', 'From then on'], said.holds.map(x => h('tr', {}, h('td', {}, at(x.step, steps)),
      h('td', {}, `day ${x.day}, ${clock(x.gunned)}`), h('td', {}, `day ${x.readyDay}, ${clock(x.ready)}`))))))];

const amount = s => s.per.endsWith('area') ? area(s.amount) : s.per === 'each' ? some(s.amount, 'piece') : run(s.amount);

function day(d, open, steps) {
  const rows = d.tasks.map(t => {
    const step = steps.get(t.step);
    return h('tr', {}, h('td', {}, clock(t.from)),
      h('td', {}, !t.begins && '… ', step.label, !t.ends && ' …', step.locked && ' (locked)'),
      h('td', {}, place(step.place)), h('td', {class: 'num'}, amount(step)));
  });
  return h('details', {open}, h('summary', {}, `Day ${d.day}${d.date ? `, ${d.date}` : ''}: ${some(d.tasks.length, 'task')}`),
    scrolling(`Day ${d.day}`, table(['From', 'Work', 'Place', {text: 'Amount', num: true}], rows)),
    d.carryUp.length > 0 && h('p', {}, h('b', {}, 'Carry up: '), written(d.carryUp.map(c => `${c.amount} ${c.what}`).join('; '))));
}

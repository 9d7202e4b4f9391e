// The order of work: a plan of days for a crew, where it waits, and when sealants may be applied in the weather.

import {choice, field, h, link, put, say, scrolling, table} from '../dom.js';
import {set, state} from '../state.js';
import {fileName, saveBlob} from '../parts/save.js';
import {count} from '../units.js';
import * as api from '../api.js';
import {windows} from './windows.js';

const SUN = [['none', 'none, or night'], ['overcast', 'overcast'], ['hazy', 'hazy'], ['full', 'full']];
const FORMS = [['pdf', 'Sheets for the roof (PDF)'], ['text', 'Plan as text'], ['json', 'Plan as JSON']];

export function mountSequence(root) {
  const parts = {form: h('div', {}), plan: h('div', {})};
  put(root, parts.form, parts.plan);
  let shownFor = '';
  root.addEventListener('shown', () => {
    if (shownFor === state.analysis.id) return;
    shownFor = state.analysis.id;
    const asked = asking(parts.plan);
    put(parts.form, asked.form);
    asked.ask();
  });
}

/** The form that states crew and weather. */
function asking(plan) {
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
      if (state.analysis?.id === id) put(plan, content(said, query, file.files[0]));
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

function content(said, query, file) {
  const places = new Map(said.steps.map(s => [s.id, s])), locked = said.steps.filter(s => s.locked).length;
  return [h('h2', {}, `${count(said.steps.length)} steps in ${count(said.days.length)} days for ${said.crew.people}`),
    h('p', {class: 'doings'}, FORMS.map(([format, words]) => download(format, words, query, file))),
    said.cycle.length > 0 && h('p', {class: 'refused', role: 'alert'}, `No order does all of this: ${said.cycle.join(', ')}`),
    h('p', {}, `${count(said.holdPoints.length)} hold points; ${count(locked)} steps stay locked until somebody with a name has looked. `,
      'Days, waits and temperatures of metal are estimates; the data sheets govern.'),
    said.weather && windows(said.weather), waits(said, places), h('h3', {}, 'Days'), said.days.map((d, i) => day(d, i === 0, places))];
}

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

const place = id => link(id, () => set(/^F/.test(id) ? {face: id} : {selected: id, face: ''}));
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

const unit = per => per.endsWith('area') ? 'm²' : per === 'each' ? 'pc' : 'm';

function day(d, open, steps) {
  const rows = d.tasks.map(t => {
    const step = steps.get(t.step);
    return h('tr', {}, h('td', {}, clock(t.from)),
      h('td', {}, !t.begins && '… ', step.label, !t.ends && ' …', step.locked && ' (locked)'),
      h('td', {}, place(step.place)), h('td', {class: 'num'}, `${step.amount.toFixed(1)} ${unit(step.per)}`));
  });
  return h('details', {open}, h('summary', {}, `Day ${d.day}${d.date ? `, ${d.date}` : ''}: ${count(d.tasks.length)} tasks`),
    scrolling(`Day ${d.day}`, table(['From', 'Work', 'Place', {text: 'Amount', num: true}], rows)),
    d.carryUp.length > 0 && h('p', {}, h('b', {}, 'Carry up: '), d.carryUp.map(c => `${c.amount} ${c.what}`).join('; ')));
}

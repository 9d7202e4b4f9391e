// Several models as one building: revisions from servers, chosen one after the other, and files.

import {h, link, put, say} from '../dom.js';
import {bytes} from '../units.js';
import {go} from '../navigate.js';
import {filePicker, isSystem, takesDrops, uploadBar} from '../parts/dropper.js';
import * as api from '../api.js';

const isSystemItem = c => Boolean(c.file) && isSystem(c.file);
const nameOf = c => c.file ? c.file.name : c.text;

/**
 * The list of what is chosen; nothing to see while it is empty.
 * @param {(title: string, detail: string) => void} fail
 * @returns {{root: Element, add: (item: {server: string, project: number, revision: number, text: string}) => void}}
 */
export function together(fail) {
  let chosen = [];   // {server, project, revision, text} or {file}
  const root = h('div', {class: 'together'});
  const input = filePicker('Files to analyse with them', files => {
    take(files);
    input.value = '';
  });
  const bar = uploadBar();
  takesDrops(root, take);

  function take(files) {
    chosen = [...chosen.filter(c => !c.file || !files.some(f => f.name === c.file.name)), ...files.map(file => ({file}))];
    draw();
  }

  /** One building has one revision of a project: another one takes its place. */
  function add(item) {
    const place = chosen.findIndex(c => !c.file && c.server === item.server && c.project === item.project);
    if (place >= 0) chosen[place] = item; else chosen.push(item);
    say(`${item.text} is chosen`);
    draw();
  }

  function draw() {
    if (!chosen.length) return put(root);
    const drop = c => {
      chosen = chosen.filter(x => x !== c);
      draw();
    };
    put(root, list(chosen, drop), buttons(chosen, () => start(chosen, bar, fail), () => input.click()), input, bar);
  }

  return {root, add};
}

const list = (chosen, drop) => [h('h3', {}, 'Together, as one building'), h('ul', {class: 'chosen'}, chosen.map(c => h('li', {},
  c.file ? `${c.file.name} (${isSystemItem(c) ? 'roof system' : bytes(c.file.size)})` : c.text, ' ',
  link('Leave out', () => drop(c), {'aria-label': `Leave out ${nameOf(c)}`}))))];

function buttons(chosen, analyse, choose) {
  const models = chosen.filter(c => !isSystemItem(c)).length;
  const words = models === 1 ? 'Analyse this model' : `Analyse these ${models} models together`;
  return [models < 2 && h('p', {class: 'quiet'}, 'Choose further revisions above, of any server, or add files.'),
    h('p', {}, h('button', {class: 'main', disabled: models === 0, on: {click: analyse}}, words), ' ',
      h('button', {on: {click: choose}}, 'Add files…'))];
}

async function start(chosen, bar, fail) {
  const system = chosen.filter(isSystemItem).pop()?.file;
  const files = chosen.filter(c => c.file && !isSystemItem(c)).map(c => c.file);
  const served = chosen.filter(c => !c.file).map(({server, project, revision}) => ({server, project, revision}));
  bar.hidden = false;
  try {
    const {id} = await api.upload(files, system, null, f => { bar.value = f; }, served);
    await go(id);
  } catch (e) {
    fail('The models were not accepted', e.message);
  } finally {
    bar.hidden = true;
  }
}

// Several models as one building: revisions from servers, chosen one after the other, and files.

import {h, put, say} from './dom.js';
import * as api from './api.js';
import {bytes} from './units.js';
import {go} from './start.js';

/** The list of what is chosen; nothing to see while it is empty. Add to it with `add`. */
export function together(open, fail) {
  let chosen = [];   // {server, project, revision, text} or {file}
  const root = h('div', {class: 'together'});
  const input = h('input', {type: 'file', multiple: true, accept: '.ifc,.ifczip,.gz,.zip,.json', class: 'unseen', 'aria-label': 'Files to analyse with them', on: {change: () => { take([...input.files]); input.value = ''; }}});
  const bar = h('progress', {max: 1, value: 0, hidden: true, 'aria-label': 'Upload'});
  root.addEventListener('dragover', e => { e.preventDefault(); root.classList.add('over'); });
  root.addEventListener('dragleave', () => root.classList.remove('over'));
  root.addEventListener('drop', e => { e.preventDefault(); root.classList.remove('over'); take([...e.dataTransfer.files]); });

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

  const isSystem = c => c.file?.name.toLowerCase().endsWith('.json');

  async function start() {
    const system = chosen.filter(isSystem).pop()?.file;
    const files = chosen.filter(c => c.file && !isSystem(c)).map(c => c.file);
    const served = chosen.filter(c => !c.file).map(({server, project, revision}) => ({server, project, revision}));
    bar.hidden = false;
    try {
      const {id} = await api.upload(files, system, null, f => { bar.value = f; }, served);
      await go(id, open);
    } catch (e) {
      fail('The models were not taken', e.message);
    } finally {
      bar.hidden = true;
    }
  }

  function draw() {
    const models = chosen.filter(c => !isSystem(c)).length;
    if (!chosen.length) return put(root);
    const drop = c => { chosen = chosen.filter(x => x !== c); draw(); };
    put(root, h('h3', {}, 'Together, as one building'),
      h('ul', {class: 'chosen'}, chosen.map(c => h('li', {}, c.file ? `${c.file.name} (${isSystem(c) ? 'roof system' : bytes(c.file.size)})` : c.text, ' ',
        h('button', {class: 'link', 'aria-label': `Leave out ${c.file ? c.file.name : c.text}`, on: {click: () => drop(c)}}, 'Leave out')))),
      models < 2 && h('p', {class: 'quiet'}, 'Choose further revisions above, of any server, or add files.'),
      h('p', {}, h('button', {class: 'main', disabled: models === 0, on: {click: start}}, models === 1 ? 'Analyse this model' : `Analyse these ${models} models together`), ' ',
        h('button', {on: {click: () => input.click()}}, 'Add files…')), input, bar);
  }

  return {root, add};
}

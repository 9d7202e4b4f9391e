// The place to drop models on.

import {h} from '../dom.js';
import {go} from '../navigate.js';
import {dropped, modelsOf, unpacked} from './gather.js';
import * as api from '../api.js';

const ACCEPTED = '.ifc,.ifczip,.gz,.zip,.json';

/** A field to choose files with, which a button opens. */
export function filePicker(label, take) {
  return h('input', {type: 'file', multiple: true, accept: ACCEPTED, class: 'unseen', 'aria-label': label,
    on: {change: e => unpacked([...e.currentTarget.files]).then(take)}});
}

/** The same for a folder with all that may be a model in it. */
function folderPicker(take) {
  return h('input', {type: 'file', webkitdirectory: true, class: 'unseen', 'aria-label': 'A folder of models to analyse', tabindex: -1,
    on: {change: e => unpacked(modelsOf([...e.currentTarget.files])).then(take)}});
}

export const uploadBar = () => h('progress', {max: 1, value: 0, hidden: true, 'aria-label': 'Upload'});

export const isSystem = file => file.name.toLowerCase().endsWith('.json');

/**
 * Lets files be dropped on an element, which shows that it would take them.
 * @param {EventTarget} [area] where they may be let go, while the element is on the page; what an element in it takes is not taken twice
 */
export function takesDrops(root, take, area = root) {
  const on = (type, fn) => area.addEventListener(type, function listen(e) {
    if (!root.isConnected) area.removeEventListener(type, listen);
    else if (!e.defaultPrevented && e.dataTransfer.types.includes('Files')) fn(e);
  });
  on('dragover', e => {
    e.preventDefault();
    root.classList.add('over');
  });
  on('dragleave', () => root.classList.remove('over'));
  on('drop', e => {
    e.preventDefault();
    root.classList.remove('over');
    dropped(e.dataTransfer).then(take);
  });
}

/**
 * The place to drop models on; with a project, what is dropped becomes its next revision.
 * @param {(title: string, detail: string) => void} fail
 * @param {string} [project]
 * @param {string} [title]
 */
export function dropper(fail, project, title = 'Drop IFC models here') {
  const input = filePicker('Models to analyse', files => send(files)), folder = folderPicker(files => send(files)), bar = uploadBar();
  const box = h('section', {class: 'drop', 'aria-label': 'New analysis'},
    h('h2', {}, title),
    h('p', {}, 'IFC2X3, IFC4 or IFC4X3, plain, gzipped or zipped. Several, also in a folder or an archive, are read as one building. '
      + 'A .json file among them is taken as the roof system.'),
    h('p', {}, h('button', {class: 'main', on: {click: () => input.click()}}, 'Choose files…'), ' ',
      h('button', {on: {click: () => folder.click()}}, 'Choose a folder…')), input, folder, bar);
  async function send(files) {
    const models = files.filter(f => !isSystem(f));
    if (!models.length) return fail('No model among these files', 'Choose at least one file ending in .ifc, .ifczip or .ifc.gz.');
    const empty = models.find(f => !f.size);
    if (empty) return fail(`${empty.name} is empty`, 'It has no bytes: save or download it again.');
    bar.hidden = false;
    try {
      const {id} = await api.upload(models, files.find(isSystem), project, f => { bar.value = f; });
      await go(id);
    } catch (e) {
      fail('The models were not accepted', e.message);
    } finally {
      bar.hidden = true;
      input.value = folder.value = '';
    }
  }
  // A browser opens in the page's place what is let go beside the box.
  takesDrops(box, send, document);
  return box;
}

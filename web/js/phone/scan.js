// Finds a place by its tag: the code on the printed sheet, where this browser reads codes, or the id typed.

import {h, put} from '../dom.js';
import {byTag} from './roof.js';

const LOOK_MS = 250;

/** @param {(place: object) => void} go */
export function finder(go) {
  const told = h('p', {class: 'found', role: 'status'});
  const input = h('input',
    {type: 'text', id: 'tag', autocomplete: 'off', autocapitalize: 'none', spellcheck: 'false', placeholder: 'J…'});
  const look = text => {
    const place = byTag(text);
    if (place) go(place); else put(told, `No single place of this roof begins with ${text || 'nothing'}.`);
  };
  const camera = h('div', {class: 'scan'});
  return h('form', {class: 'finder', on: {submit: e => { e.preventDefault(); look(input.value); }}},
    h('label', {for: 'tag'}, 'Tag'), input, h('button', {class: 'big main'}, 'Find'),
    'BarcodeDetector' in window && navigator.mediaDevices
      && h('button', {class: 'big', type: 'button', on: {click: () => scan(camera, look, told)}}, 'Scan'),
    told, camera);
}

async function scan(root, look, told) {
  let stream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({video: {facingMode: 'environment'}});
  } catch {
    return put(told, 'The camera can\'t be used; type the tag.');
  }
  const video = h('video', {muted: true, playsinline: true}), reader = new BarcodeDetector({formats: ['qr_code']});
  const end = () => { stream.getTracks().forEach(t => t.stop()); put(root); };
  put(root, video, h('button', {class: 'big', type: 'button', on: {click: end}}, 'Stop'));
  video.srcObject = stream;
  await video.play();
  while (stream.active && root.isConnected) {
    const [code] = await reader.detect(video).catch(() => []);
    if (code) {
      end();
      return look(code.rawValue);
    }
    await new Promise(r => setTimeout(r, LOOK_MS));
  }
  end();
}

// Photos: taken with the telephone, scaled before they wait, shown again.

import {h} from '../dom.js';
import {photograph} from './events.js';
import {open} from './roof.js';
import * as service from './service.js';

const EDGE = 1600, MOST_BYTES = 16 << 20;

/** Smaller, upright and without anything but pixels; as it is where its place is wanted, or where this browser can't read it. */
async function scaled(file, withPlace) {
  if (withPlace) return file;
  try {
    const image = await createImageBitmap(file), k = Math.min(1, EDGE / Math.max(image.width, image.height));
    const canvas = h('canvas', {width: Math.round(image.width * k), height: Math.round(image.height * k)});
    canvas.getContext('2d').drawImage(image, 0, 0, canvas.width, canvas.height);
    image.close();
    return await new Promise(resolve => canvas.toBlob(b => resolve(b ?? file), 'image/jpeg', 0.8));
  } catch {
    return file;
  }
}

/** A button that takes a photo of a place. */
export function camera(place, item) {
  const withPlace = h('input', {type: 'checkbox', id: 'with-place'});
  const input = h('input', {type: 'file', accept: 'image/jpeg,image/png', capture: 'environment', class: 'unseen', tabindex: -1,
    'aria-label': 'Photo', on: {change: async () => {
      const [file] = input.files;
      input.value = '';
      if (!file) return;
      if (file.size > MOST_BYTES) return alert(`A photo may have ${MOST_BYTES >> 20} MiB.`);
      await photograph(place, item, await scaled(file, withPlace.checked), withPlace.checked);
    }}});
  return h('div', {class: 'camera'}, input, h('button', {class: 'big', on: {click: () => input.click()}}, 'Photo'),
    h('label', {class: 'ask-tick'}, withPlace, ' keep where it was taken'));
}

/** The photos among some events. */
export function gallery(events) {
  const photos = events.filter(e => e.kind === 'photo');
  return photos.length > 0 && h('div', {class: 'gallery'}, photos.map(e => {
    const image = h('img', {alt: `Photo by ${e.by}`, loading: 'lazy'});
    picture(e).then(blob => { if (blob) image.src = URL.createObjectURL(blob); }).catch(() => { image.alt += ', not on this telephone'; });
    return image;
  }));
}

const picture = async e => e.blob ?? (e.photo ? service.photo(open.roof, open.roof.analysis, e.photo) : null);

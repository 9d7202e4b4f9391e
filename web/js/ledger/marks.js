// What seals a junction decides how it is drawn: colour, width and dashes each tell the classes apart by themselves. The one colour code of
// page and printed sheets stands in palette.json, which the program's drawings read too.

const palette = await (await fetch(new URL('../../palette.json', import.meta.url))).json();

/** Classes of junctions by what seals them, as they are listed; a colour is a property of the style, which follows light and dark. */
export const SEALS = Object.fromEntries(palette.seals.map(e => [e.id, {text: e.text, colour: `var(--seal-${e.id})`, width: e.width,
  dash: e.dash.length ? e.dash : null}]));

const rule = ground => palette.seals.map(e => `--seal-${e.id}: ${e[ground]};`).join(' ');
const sheet = new CSSStyleSheet();
sheet.replaceSync(`:root { ${rule('light')} } :root[data-theme="dark"] { ${rule('dark')} }
  @media screen and (prefers-color-scheme: dark) { :root:not([data-theme="light"]) { ${rule('dark')} } }
  @media print { :root, :root[data-theme="dark"] { ${rule('light')} } }`);
document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];

/** The class of a junction, from its seals and metal. */
export function sealClass(j) {
  const seals = j.seals ?? [];
  const forms = new Set(seals.map(x => x.form));
  if (seals.some(x => x.form === 'bead' && x.exposure === 'exposed')) return 'exposed';
  if (forms.has('tape')) return forms.has('bead') ? 'tape-bead' : 'tape';
  if (forms.has('bead')) return 'bead';
  if (forms.has('in-seam')) return 'in-seam';
  return j.kind === 'unclassified' || !j.metalParts ? 'none' : 'metal';
}

/** What kinds are called, by id, in the order in which they are listed: the result says it, as its rules do. */
export const KINDS = {};

/**
 * Takes the kinds of a result. One that an earlier version of the program stored has none: its kinds are then called by their ids.
 * @param {import('../types.js').Kind[]} [kinds]
 * @param {{kind: string}[]} junctions
 */
export function takeKinds(kinds, junctions = []) {
  Object.keys(KINDS).forEach(id => delete KINDS[id]);
  for (const k of kinds ?? junctions.map(j => ({id: j.kind, label: j.kind.replaceAll('-', ' ')}))) {
    KINDS[k.id] = k.label[0].toUpperCase() + k.label.slice(1);
  }
}

export const kindText = kind => KINDS[kind] ?? kind;

export const REVIEW = {
  open: {text: 'Not looked at', sign: '○'},
  checked: {text: 'Checked', sign: '●'},
  question: {text: 'Question', sign: '?'},
  recheck: {text: 'Check again: it changed', sign: '◐'},
};

export const SEVERITY = {
  violation: {text: 'Violation', sign: '■'},
  warning: {text: 'Warning', sign: '▲'},
  info: {text: 'Note', sign: '·'},
};

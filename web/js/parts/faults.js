// Faults of the service in words.

const PARTS = {analyses: 'analysing models', recalculation: 'computing results again', clock: 'the service’s clock',
  'event streams': 'telling progress'};

/** The name by which the service reports the watch of a server. */
export const watchOf = server => 'watch ' + server;

const partText = part => part.startsWith('watch ') ? `watching server ${part.slice(6)}` : PARTS[part] ?? part;

/** What does not work, in a few words. */
export const faultWords = f => `${partText(f.part)} fails inside the program`;

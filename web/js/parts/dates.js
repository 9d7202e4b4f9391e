// Dates as users here write them.

const TO_THE_MINUTE = {year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', minute: '2-digit'};

export const when = instant => new Date(instant).toLocaleString(undefined, TO_THE_MINUTE);

/** When a revision was checked in; empty where it comes from no server. */
export const checkedIn = a => a.origin?.checkedIn ? when(a.origin.checkedIn) : '';

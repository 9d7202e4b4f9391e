// The shapes of what the service sends and the page makes of it, for editors and readers. Lengths are metres, areas square metres, angles
// degrees; a point is [x, y, z] in the model's world, +Y north, +Z up.

/** @typedef {[number, number, number]} Point */

/**
 * @typedef {object} Face a roof face
 * @property {string} id
 * @property {string[]} elements GlobalIds
 * @property {number} slopeDegrees
 * @property {number} fallAzimuthDegrees from north, clockwise
 * @property {number} areaM2
 * @property {number} planAreaM2
 * @property {number} perimeterM
 * @property {Point[][][]} facets each a list of rings; outsides counter-clockwise seen from above, holes clockwise
 * @property {{count: number, lengthM: number, lines?: Point[][]}} [seams]
 */

/**
 * @typedef {object} Junction
 * @property {string} id
 * @property {string} kind see the kinds of the result
 * @property {number} lengthM
 * @property {Point[]} path
 * @property {string[]} faces ids
 * @property {string[]} elements GlobalIds
 * @property {string} [detail]
 * @property {{kind?: string, detail?: string, reason: string, byRules: {kind: string, detail: string}}} [decided] its manual override
 * @property {{element: string, as: string, lengthM: number}[]} [modelled] flashings and gutters of the model along it
 * @property {number} place its number in the result
 * @property {string} seal class of what seals it, a key of SEALS
 * @property {number} slope of its flattest face; NaN where it has none
 * @property {number} tapeM
 * @property {number} beadM
 * @property {number} inSeamM
 * @property {number} screws
 * @property {Finding[]} found
 * @property {boolean} [isJoint] whether it lies within a face, where panels are divided, and no face ends
 */

/**
 * @typedef {object} Finding
 * @property {string} code
 * @property {'violation'|'warning'|'info'} severity
 * @property {string} message
 * @property {string} [action] what to do
 * @property {string} [reason] why it matters
 * @property {string} [who] does it: architect, engineer or roofer
 * @property {number} [risk] how much a leak is to be feared there, of 100
 * @property {string} [junction] id
 * @property {string[]} [junctions] ids of all lines that it is about
 * @property {string[]} [elements] GlobalIds
 * @property {number} place its number in the result
 * @property {{model: number, movement: string}} [placement] where a misplaced model would fit
 */

/**
 * @typedef {object} RoofNode where lines end and meet
 * @property {string} id
 * @property {string} kind see the kinds of nodes of the result
 * @property {Point} at
 * @property {string[]} junctions ids
 * @property {string[]} faces ids
 * @property {number} pieces of metal there
 * @property {Finding[]} found
 */

/**
 * @typedef {object} Kind of a junction, as the result names it
 * @property {string} id
 * @property {string} label in small letters
 * @property {string} [meaning]
 * @property {string} [family]
 * @property {string} [planLine]
 */

/**
 * @typedef {object} Outline the result without what a single junction requires, indexed
 * @property {object} raw as the service sent it
 * @property {Map<string, Face>} faces
 * @property {Finding[]} findings
 * @property {Junction[]} junctions where faces end
 * @property {Junction[]} lines these, then the joints within faces, at which panels are divided
 * @property {Map<string, Junction>} byId all lines
 * @property {Map<string, RoofNode>} nodes
 * @property {Map<string, {id: string, label: string, meaning: string, title: string, note: string, source: string}>} nodeKinds
 * @property {Map<string, object>} whole junctions with all that they require, fetched when one is looked at
 * @property {object[]} [panels] where each is fixed and how far it moves; fetched when they are looked at
 * @property {Map<string, object>} details
 * @property {Map<string, string>} choices titles of details to choose from
 * @property {Map<string, {globalId: string, ifcClass: string, name: string, model: number}>} elements
 * @property {{lo: Point, hi: Point}} box
 * @property {number} totalM
 * @property {number} coverageM of a panel
 * @property {number} seamM height of a seam
 */

/**
 * @typedef {object} Review what a user said of a junction
 * @property {string} junction
 * @property {'open'|'checked'|'question'|'recheck'} state
 * @property {string} note
 * @property {string} kind override, or empty
 * @property {string} detail override, or empty
 * @property {string} reason
 * @property {boolean} stale whether the line changed since it was overridden
 * @property {number} version
 */

/**
 * @typedef {object} Mark what users did about a finding
 * @property {string} id
 * @property {number} place of the finding
 * @property {'open'|'accepted'} state
 * @property {string} reason
 * @property {string} acceptedBy
 * @property {string} acceptedAt
 * @property {string} assignee
 * @property {{author: string, created: string, text: string}[]} comments
 * @property {number} version
 */

/**
 * @typedef {object} Revision an analysis of a project
 * @property {string} id
 * @property {string} label
 * @property {string} title
 * @property {string} words what it is called in a sentence
 * @property {'queued'|'running'|'done'|'failed'|'cancelled'} state
 * @property {string} created
 * @property {{comment?: string, checkedIn?: string}} [origin] where it came from a server of models
 * @property {{detail: string}} [problem]
 * @property {string} [ledgerSha256]
 */

/**
 * @typedef {object} OrderLine
 * @property {string} what
 * @property {string} [size]
 * @property {string} net
 * @property {string} gross with waste; empty where none is added
 * @property {string} buy
 * @property {string} cost as a decimal; empty where it has no price
 * @property {string[]} how the number came about
 */

/** @typedef {{name: string, before: number|null, after: number|null}} Amount a number of the order in two results */

/**
 * How far a piece of work is, told by whoever does it to whoever waits for it: the only way in which a long loop can be watched or stopped.
 * And work that several threads share, which is watched and stopped as if one did it.
 */
package org.seamledger.progress;

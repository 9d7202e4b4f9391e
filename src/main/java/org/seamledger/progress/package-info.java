/**
 * How far a piece of work is, told by whoever does it to whoever waits for it: the only way in which a long loop can be watched or stopped.
 */
package org.seamledger.progress;

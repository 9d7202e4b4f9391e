/**
 * What is done on the roof, as a chain of events: who ticked which hold point, what failed, what deviates, which line is signed off.
 *
 * <p>Events are only ever added. Each holds the hash of the one before it, so that a change of any of them shows
 * ({@link org.seamledger.journal.EventChain}). How things stand is worked out from the events each time
 * ({@link org.seamledger.journal.SiteRecord}); nothing that is stored says so, and nothing can contradict them.
 */
package org.seamledger.journal;

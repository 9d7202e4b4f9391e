/**
 * The queue of analyses that several processes share: tickets for what waits, and workers that take it. A ticket is handed out by a library
 * on the database, which notices the death of who has it and hands it out again; whose turn it is says {@code ledger}, how it runs {@code
 * run}.
 */
package org.seamledger.queue;

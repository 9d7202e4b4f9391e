/**
 * Watches projects on servers of models: a new revision is analysed by itself, and the answer is left with it.
 *
 * <p>{@link org.seamledger.watch.ServerWatch} is the whole way of one server: ask which revisions there are, note the new ones, and take
 * each in order through download, analysis and answer. Storage says how far each revision is ({@link
 * org.seamledger.ledger.WatchedRevision.Stage}), and the server says which documents it has, so that a process may die at any point: the
 * next one goes on where that one was, and neither analyses a revision again nor leaves a document twice. {@link
 * org.seamledger.watch.Watching} runs one such watch a server, each on a thread of its own, so that a slow server holds nobody else up.
 *
 * <p>Which server may be asked is the operator's list ({@link org.seamledger.watch.Servers}); nothing here takes an address.
 */
package org.seamledger.watch;

/**
 * Many models, each a building by itself: what becomes of each, tables over all, and one order.
 *
 * <p>Input: {@link org.seamledger.portfolio.PortfolioModel}s and a {@link org.seamledger.run.Analyzer}. Output: a folder.
 *
 * <ol>
 * <li>{@link org.seamledger.portfolio.PortfolioRun} has every model analysed that isn't yet, several at a time as memory allows, and
 *     makes a {@link org.seamledger.portfolio.ModelEntry} of each, a model that fails among them.
 * <li>{@link org.seamledger.portfolio.EntryStore} keeps entries, one file each, so that a run that was cut off goes on where it was. It
 *     also remembers at which models the process died.
 * <li>{@link org.seamledger.portfolio.PortfolioTables} goes through the entries in the models' order and writes tables, pictures and the
 *     order; {@link org.seamledger.portfolio.PortfolioPage} the page. Neither how many threads there were, nor what was done when, is seen
 *     in them.
 * </ol>
 */
package org.seamledger.portfolio;

/**
 * The one list of everything that is bought for a takeoff, each thing once, and what it costs.
 *
 * <p>Input: a {@link org.seamledger.takeoff.Takeoff}. Output: {@link org.seamledger.order.OrderList}. Parts, seals and fasteners are
 * taken up by the names that details give them: what a new detail is made of is ordered without a change here.
 *
 * <ol>
 * <li>Each family of things has a class that drafts its lines from what was counted at junctions and laid out on faces:
 *     {@link org.seamledger.order.PanelLines}, {@link org.seamledger.order.TrimLines} and so on.
 * <li>A {@link org.seamledger.order.LineDraft} keeps which junction and face each amount comes from, so that a line can be divided by
 *     kind, face, storey, model and detail ({@link org.seamledger.order.Subtotals}).
 * <li>Waste is added and packs are rounded up once, for the project. Stock lengths are cut by {@link org.seamledger.order.stock.StockPlan}.
 * <li>{@link org.seamledger.order.PriceList} reads prices; {@link org.seamledger.order.PricedOrder} multiplies, in decimals.
 * </ol>
 */
package org.seamledger.order;

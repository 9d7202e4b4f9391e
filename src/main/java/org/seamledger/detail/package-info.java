/**
 * What the rules say of each junction: its kind, the sealing detail that belongs there, and the findings of the design. Knows the rules'
 * results as words and numbers; after this package nobody knows that a graph existed.
 *
 * <p>The rules that choose a detail see the facts of the line ({@code org.seamledger.junction}), its {@code kind}, and these, which
 * whoever asks for details adds:
 *
 * <table>
 * <caption>Facts for details</caption>
 * <tr><th>name</th><th>value</th></tr>
 * <tr><td>ridgeVented</td><td>flag: the system's ridge is vented</td></tr>
 * <tr><td>counterflashing</td><td>{@code reglet} or {@code surface-mounted}: how the system ends flashings at walls</td></tr>
 * <tr><td>fixedAt</td><td>{@code eave}, {@code ridge}, {@code middle} or {@code both-ends}: where the system's panels can't move</td></tr>
 * <tr><td>sealSeamsBelowDegrees</td><td>seams of flatter faces are sealed: the limit as an angle</td></tr>
 * <tr><td>cricketAboveM</td><td>curbs wider than this across the fall get a cricket</td></tr>
 * <tr><td>onSeam</td><td>flag, pipes: a seam runs through it or through its boot</td></tr>
 * </table>
 */
package org.seamledger.detail;

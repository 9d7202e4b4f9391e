/**
 * What the rules say of each junction: its kind, the sealing detail that belongs there, and the findings of the design. Knows the rules'
 * results as words and numbers; after this package nobody knows that a graph existed.
 *
 * <p>{@link org.seamledger.detail.Kinds} needs nothing but the measured facts of a line. {@link org.seamledger.detail.Details} sees them,
 * the {@code kind}, and these, which whoever asks for details adds:
 *
 * <table>
 * <caption>Facts for details</caption>
 * <tr><th>name</th><th>value</th></tr>
 * <tr><td>ridgeVented</td><td>flag: the system's ridge is vented</td></tr>
 * <tr><td>counterflashing</td><td>{@code reglet} or {@code surface-mounted}: how the system ends flashings at walls</td></tr>
 * <tr><td>fixedAt</td><td>{@code eave}, {@code ridge}, {@code middle} or {@code both-ends}: where the system's panels can't move</td></tr>
 * <tr><td>sealSeamsBelowDegrees</td><td>seams of flatter faces are sealed: the limit as an angle</td></tr>
 * <tr><td>cricketAboveM</td><td>things wider than this across the fall get a cricket</td></tr>
 * <tr><td>onSeam</td><td>flag, pipes: a seam runs through it or through its boot</td></tr>
 * </table>
 *
 * <p>{@link org.seamledger.detail.DesignReview} sees all of these too, finds {@code kind}, {@code lengthM}, {@code detail},
 * {@code metalFirst}, {@code beadOnly}, {@code sealantExposed} and a face's {@code slopeDegrees} by itself, and is given the rest. A fact
 * that can't be had is left out, and then breaks no rule.
 *
 * <table>
 * <caption>Facts for the findings of the design</caption>
 * <tr><th>of</th><th>name</th><th>value</th></tr>
 * <tr><td>junction</td><td>tapeSpacingM</td><td>greatest distance between the fasteners of a line through tape</td></tr>
 * <tr><td>junction</td><td>tapeCoverageShare</td><td>least share, 0 to 1, of such a line within the fasteners' reach</td></tr>
 * <tr><td>valley</td><td>flowWidthM</td><td>width of the design rain's flow at the low end, square to the line</td></tr>
 * <tr><td>valley</td><td>cleatLineM</td><td>width free between the cleats there</td></tr>
 * <tr><td>wall</td><td>eaveAtLowEnd</td><td>flag: an eave ends at the line's low end</td></tr>
 * <tr><td>penetration</td><td>leadingSide</td><td>flag: the one side at which findings about the whole thing are said</td></tr>
 * <tr><td>penetration</td><td>toValleyM</td><td>from its edge to the nearest valley of the same face</td></tr>
 * <tr><td>penetration</td><td>toPenetrationM</td><td>from its edge to the nearest other penetration's on the same face</td></tr>
 * <tr><td>eave, valley</td><td>dropSlopeDegrees</td><td>slope of the lower face that the water drops on; left out where there is none</td></tr>
 * <tr><td>face</td><td>panelLengthM</td><td>length of the longest panel</td></tr>
 * <tr><td>face</td><td>movementM</td><td>that panel's change of length between the site's lowest and highest metal temperature</td></tr>
 * <tr><td>system</td><td>panelMetal, flashingMetal, fastenerMetal</td><td>words of the metals</td></tr>
 * <tr><td>system</td><td>panelThicknessM</td><td>thickness of the sheet</td></tr>
 * <tr><td>system</td><td>fastenerContact</td><td>fastener in panel: {@code compatible}, {@code small-noble}, {@code corrodes}</td></tr>
 * <tr><td>system</td><td>flashingContact</td><td>flashing on panel: {@code compatible}, {@code corrodes}</td></tr>
 * <tr><td>system</td><td>movementGapM</td><td>room at a panel's free end</td></tr>
 * <tr><td>system</td><td>lockedStressMPa</td><td>stress in a panel pinned at both ends</td></tr>
 * <tr><td>system</td><td>tapeWidthM, tapeSpreadM</td><td>the tape's width as laid, and pressed by the planned share</td></tr>
 * <tr><td>system</td><td>lipM</td><td>width of the fastening lip</td></tr>
 * <tr><td>system</td><td>closureHeightM, seamHeightM</td><td>heights</td></tr>
 * <tr><td>system</td><td>closureProudM</td><td>closure and pressed tape together, less the seam's height</td></tr>
 * <tr><td>system</td><td>lowestSlopeDegrees</td><td>the panel maker's lowest slope</td></tr>
 * <tr><td>system</td><td>flashingClearanceM</td><td>room that a penetration's flashing needs around it</td></tr>
 * <tr><td>system</td><td>acidCuring</td><td>flag: the sealant gives off acetic acid</td></tr>
 * <tr><td>system</td><td>installAirC, sealantLowestC, sealantHighestC</td><td>air at work and the sealant's limits, °C</td></tr>
 * <tr><td>system</td><td>metalAboveDewPointK, dewPointMarginK</td><td>metal at work less the dew point, and the margin asked for, K</td></tr>
 * <tr><td>system</td><td>slumpStressPa, yieldStressPa</td><td>what a vertical bead's weight asks for, and the data sheet's value (0: unknown)</td></tr>
 * <tr><td>system</td><td>freeEdgeM</td><td>length of all eaves, rakes and high edges of the roof</td></tr>
 * </table>
 */
package org.seamledger.detail;

/**
 * Roof faces and their neighbours in, junction lines with measured facts out. Pure geometry: no trade name is decided here.
 *
 * <p>The facts of a line, all that the rules see ({@code a} is a face's rise across the line: the angle, in degrees, at which the face
 * rises when you walk from the line into the face at a right angle to the line in plan; negative where it falls away):
 *
 * <table>
 * <caption>Facts</caption>
 * <tr><th>name</th><th>meaning</th></tr>
 * <tr><td>faceCount</td><td>1 or 2: roof faces that end at the line</td></tr>
 * <tr><td>against</td><td>what the (one) face ends at: {@code face} where faceCount is 2; {@code nothing} for a free edge; {@code wall};
 *     {@code penetration} for a side of a polygonal penetration; {@code round} for the closed line of a round one;
 *     {@code opening} for a side of a hole that nothing fills</td></tr>
 * <tr><td>inclinationDegrees</td><td>angle of the line to the horizontal, 0 to 90 (0 for round)</td></tr>
 * <tr><td>lowRiseDegrees, highRiseDegrees</td><td>the smaller and the larger {@code a} of the faces; equal for one face</td></tr>
 * <tr><td>foldDegrees</td><td>two faces: angle between their normals, positive where convex, negative where concave</td></tr>
 * <tr><td>obliquityDegrees</td><td>plan angle between the line and the slope of the face, 0 parallel to it, 90 perpendicular; the first
 * face's;
 *     90 for a level face</td></tr>
 * <tr><td>otherObliquityDegrees</td><td>the same for the second face</td></tr>
 * <tr><td>slopeDegrees, otherSlopeDegrees</td><td>slope of the first and second face</td></tr>
 * <tr><td>minSlopeDegrees</td><td>the smaller slope</td></tr>
 * <tr><td>upstandM</td><td>walls and penetrations: greatest height above the roof surface along the line, as far as it was
 * measured</td></tr>
 * <tr><td>widthAcrossFallM</td><td>penetrations and openings: extent of the whole, perpendicular to the slope</td></tr>
 * <tr><td>depthAlongFallM</td><td>and its plan extent parallel to the slope</td></tr>
 * <tr><td>diameterM</td><td>round things: diameter, from the narrow width of the line's ellipse</td></tr>
 * <tr><td>neighbourClass</td><td>IFC class of what the face ends at, or of what fills the hole, such as IfcWall</td></tr>
 * <tr><td>roofHole</td><td>penetrations: whether the roof was modelled with a hole for the thing: {@code none}, {@code partly} where the
 * thing does
 *     not stand in it whole, {@code whole}</td></tr>
 * <tr><td>service</td><td>penetrations: true for a pipe, a duct, a cable tray or another part of the building's services</td></tr>
 * <tr><td>oblique</td><td>true for a free edge neither parallel to the slope nor level</td></tr>
 * <tr><td>curved</td><td>true where a face at the line is curved</td></tr>
 * <tr><td>gapM</td><td>two faces: the gap between their edges as modelled, where there is one</td></tr>
 * </table>
 */
package org.seamledger.junction;

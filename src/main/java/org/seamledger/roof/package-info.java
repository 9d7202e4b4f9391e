/**
 * Elements of a building in, the exposed surface of its roofs out: faces with outlines, and for every stretch of outline what is on its
 * other side.
 *
 * <h2>Input</h2>
 *
 * <p>A {@link org.seamledger.element.Building} in metres, Z up, near the origin, so that coordinates have a micrometre to spare. Roof
 * elements
 * are solids or sheets of triangles; closed ones give sections by the even-odd rule, so the orientation of their triangles does not matter.
 * Openings are taken away from roof elements; those of walls stay closed, but for unfilled ones that take their top away. Elements
 * without a body, or without an end, are left out. Two arguments say how exact all this is: {@link org.seamledger.geometry.Tolerance} for
 * what lies together, and {@link org.seamledger.roof.SurfaceLimits} for what is slack, joint, relief or rounding. Neither is global.
 *
 * <h2>Guarantee</h2>
 *
 * <p>{@link org.seamledger.roof.Roof}: every facet is flat, connected, and faces up; facets whose planes lie together don't overlap;
 * each facet is in one
 * face; the outline of every facet appears once, whole, as {@link org.seamledger.roof.BoundaryEdge}s with the facet to their left seen
 * from above,
 * each with exactly one {@link org.seamledger.roof.Contact}. So the lengths around a face, without those inside it, are its perimeter.
 * The same elements in another order give the same faces; the same input the same bits.
 *
 * <h2>Algorithm</h2>
 *
 * <p>{@link org.seamledger.roof.RoofBuilder} takes each group of roof elements whose boxes come together in plan through these steps:
 *
 * <ol>
 * <li>Planes that may carry surface: of every element, not near to vertical, those that lie together made one ({@code SurfacePlanes}).
 * <li>Top surface in every plane ({@code TopSurfaceFinder}):
 *     <ol>
 *     <li>the section just below less the section just above, of each element ({@code OwnSurface});
 *     <li>one plane for what is modelled in relief ({@code Relief});
 *     <li>an area that two planes carry which all but lie together counts once ({@code CountedOnce});
 *     <li>cut edges and reveals go ({@code CutEdges}, with {@code Thickness} and {@code SmoothAreas});
 *     <li>inner layers go ({@code OuterLayers});
 *     <li>what other elements cover or pierce is not free ({@code Covering}).
 *     </ol>
 * <li>Obstacles: walls, penetrations and holes in each surface, by sections just above it and with the plane lifted
 *     ({@code ObstacleFinder}, with {@code Standing}, {@code Heights}, {@code Bundles}, {@code RoundOutline}, {@code WallRows},
 *     {@link org.seamledger.roof.Passage}).
 * <li>Exposure: the free surface less obstacles, without pieces that lie hidden inside the building ({@code Exposure}).
 * <li>Meeting: edges of convex neighbours are moved on to the line in which their planes intersect ({@code Meeting}, with {@code FoldLine},
 *     {@code MovedEdge}).
 * <li>Contacts: each stretch of outline gets what it ends at: the best of what runs beside it ({@code EdgeMatcher}, {@code Beside}),
 * then what
 *     follows from the rest of its closed line ({@code RingContacts}).
 * </ol>
 *
 * <p>Over all groups, facets become faces: flat ones drawn in pieces, and curved ones ({@code FaceJoiner}, with {@code CurvedRuns}, and
 * with {@code NarrowGaps} for what slivers leave open inside a curve).
 *
 * <p>{@link org.seamledger.roof.CoverageCheck} then asks of every roof element where its upward area went ({@code UpwardArea}): it knows
 * the faces, and nothing of these steps.
 *
 * <h2>Degenerate input</h2>
 *
 * <p>No roof element, or none with a body: a roof without faces. A vertical plane, or one steeper than the limit, carries nothing: no
 * face. A
 * triangle without area gives no plane. A closed body no thicker than what lies together is a sheet. A sheet has no thickness and no
 * inside: it is its own top, and stands for a build-up of a usual depth where it covers something. Slivers and specks below the limits
 * vanish; a facet that is left without area is none. Planes that turn
 * by too little have no line of intersection: their facets keep their outlines, and meet across the gap if at all. Coordinates that are not
 * finite can't occur: {@link org.seamledger.geometry.Vec3} refuses them.
 */
package org.seamledger.roof;

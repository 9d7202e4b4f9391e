package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Tolerance;

/**
 * The exposed surface of a roof.
 *
 * @param faces in the order of their ids
 * @param facets every flat connected piece, by index
 * @param faceOfFacet for each facet the index of its face
 * @param edges the outlines of all facets, each stretch once a facet
 * @param tolerance how exact the models were taken to be
 * @param limits by which surface was told from slack
 */
public record Roof(List<RoofFace> faces, List<Facet> facets, List<Integer> faceOfFacet, List<BoundaryEdge> edges,
    Tolerance tolerance, SurfaceLimits limits) {

  public Roof {
    faces = List.copyOf(faces);
    facets = List.copyOf(facets);
    faceOfFacet = List.copyOf(faceOfFacet);
    edges = List.copyOf(edges);
  }

  /** The face that a facet, by its index, belongs to. */
  public RoofFace face(int facet) {
    return faces.get(faceOfFacet.get(facet));
  }
}

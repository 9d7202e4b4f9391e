package org.seamledger.quantity;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.KindedJunction;
import org.seamledger.progress.Progress;
import org.seamledger.progress.SharedWork;
import org.seamledger.quantity.layout.Division;
import org.seamledger.quantity.layout.FaceLayout;
import org.seamledger.quantity.layout.RoundOnFace;
import org.seamledger.quantity.system.FixedAt;
import org.seamledger.roof.RoofFace;

/** Panels and seams of a whole roof. */
public final class RoofLayout {

  /** Below this slope, degrees, a face gets no seams: within survey noise of level. */
  private static final double LEVEL = 0.5;

  /** Nobody steps a roof every 10 ft: common practice. */
  private static final double LEAST_PART = 3.048;

  private final SortedMap<String, FaceLayout> byFace;
  /** The same, found quicker. */
  private final Map<String, FaceLayout> layouts;
  private final Map<String, RoofFace> faces;
  private final RoofSystem system;

  private RoofLayout(SortedMap<String, FaceLayout> byFace, Map<String, RoofFace> faces, RoofSystem system) {
    this.byFace = Collections.unmodifiableSortedMap(byFace);
    this.layouts = new HashMap<>(byFace);
    this.faces = faces;
    this.system = system;
  }

  /**
   * Lays panels and seams on every face.
   *
   * @param progress receives the progress, face by face
   */
  public static RoofLayout of(List<RoofFace> faces, RoofSystem system, Progress progress) {
    Division division = division(system);
    List<FaceLayout> layouts = SharedWork.of(faces, progress, (face, part) -> layout(face, system, division));
    SortedMap<String, FaceLayout> byFace = new TreeMap<>();
    Map<String, RoofFace> byId = new HashMap<>();
    for (int i = 0; i < layouts.size(); i++) {
      byId.put(faces.get(i).id(), faces.get(i));
      byFace.put(faces.get(i).id(), layouts.get(i));
    }
    return new RoofLayout(byFace, byId, system);
  }

  private static FaceLayout layout(RoofFace face, RoofSystem system, Division division) {
    return face.slopeDegrees() < LEVEL || isTooWide(face, system) ? FaceLayout.seamless(face)
        : FaceLayout.of(face, system.panel().coverage().value(), system.layout().start(), system.layout().offset().value(),
            system.panel().minimumPiece().value(), division);
  }

  /**
   * How long panels may be: as their movement has room at a free end, and as the system can make them. Where there is hardly any room, or
   * where panels can't move at all, it is the room that is wrong and not the panels: nothing is parted then.
   */
  private static Division division(RoofSystem system) {
    double move = system.panel().movementGap().value() / PanelJoints.movementM(1, system);
    boolean parts = system.panel().fixedAt() != FixedAt.BOTH_ENDS && move >= LEAST_PART;
    return new Division(parts ? move : Double.POSITIVE_INFINITY, system.panel().longest().value());
  }

  static boolean isTooWide(RoofFace face, RoofSystem system) {
    return FaceLayout.isTooWide(face, system.panel().coverage().value());
  }

  /** By id of the face, sorted. */
  public SortedMap<String, FaceLayout> byFace() {
    return byFace;
  }

  /** @throws IllegalArgumentException for a face that is not of this roof */
  public FaceLayout face(String id) {
    FaceLayout layout = layouts.get(id);
    if (layout == null) {
      throw new IllegalArgumentException("no face " + id);
    }
    return layout;
  }

  RoofFace roofFace(String id) {
    return faces.get(id);
  }

  /** True where seams of the face get a sealant in the seam. */
  public boolean seamsSealed(String face) {
    return !layouts.get(face).seams().isEmpty() && system.sealsSeamsAt(faces.get(face).slopeDegrees());
  }

  /** Where a round thing stands among the seams of its face, its boot's flange included. */
  public RoundOnFace round(KindedJunction junction) {
    return RoundOnFace.of(junction.junction().path(), face(junction.junction().faces().get(0)),
        system.pipes().fastenerCircleMargin().value());
  }

  /** Widest seam spacing of faces, metres; 0 where they have no panels. */
  double coverageM(List<String> ids) {
    return ids.stream().map(this::face).filter(f -> !f.panels().isEmpty()).mapToDouble(FaceLayout::coverageM).max().orElse(0);
  }
}

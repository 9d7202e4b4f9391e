package org.seamledger.quantity;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What the whole project takes. Net is what the drawing says, order adds the waste of the material; whole rolls, cartridges and boxes are
 * rounded up once, here.
 *
 * @param metalFirstM length of the junctions whose metal alone leads the water off
 * @param detailedM length of all junctions that have a detail
 */
public record ProjectQuantities(Tape tape, Bead bead, InSeam inSeam, GunSealant lapSealant, Fasteners fasteners, Closures closures,
    Caps caps, Plugs plugs, List<Part> parts, List<Boot> boots, List<Curb> curbs, double metalFirstM, double detailedM) {

  public ProjectQuantities {
    parts = List.copyOf(parts);
    boots = List.copyOf(boots);
    curbs = List.copyOf(curbs);
  }

  /** @param lapsM what of the net length seals laps of parts, where the system seals them with tape */
  public record Tape(double netM, double lapsM, double orderM, long rolls) {
  }

  /**
   * @param concealed behind something
   * @param exposed in view: another product where the concealed one can't stand light
   */
  public record Bead(double netM, double netMl, double orderMl, long cartridges, Part concealed, Part exposed) {
    /** A product of its own, with its own rounding. */
    public record Part(double netM, double netMl, double orderMl, long cartridges) {
    }
  }

  /** Seams of flat faces, sealed along their length. */
  public record InSeam(double netM, double orderM, List<String> faces) {
    public InSeam {
      faces = List.copyOf(faces);
    }
  }

  /** Non-curing sealant from the gun, in laps of parts and in the ends of seams. */
  public record GunSealant(double netM, double lapsM, double seamEndsM, double netMl, double orderMl, long cartridges) {
  }

  /**
   * @param order pieces with waste, in whole boxes
   * @param byPlace net, by what they fasten
   */
  public record Fasteners(long net, long order, SortedMap<String, Long> byPlace) {
    public Fasteners {
      byPlace = Collections.unmodifiableSortedMap(new TreeMap<>(byPlace));
    }
  }

  /** Pieces between seams. */
  public record Closures(long pieces, double lengthM, long order, int shorterThanMinimum) {
  }

  /** Caps of ridges, hips and high edges, in stock lengths. */
  public record Caps(long pieces, double lengthM, long laps) {
  }

  /**
   * @param seamEnds at the ends of seams
   * @param corners at the ends of closure lines
   */
  public record Plugs(long pieces, long seamEnds, long corners) {
  }

  /**
   * One kind of metal part.
   *
   * @param girthM width of its sheet
   * @param order pieces with waste
   */
  public record Part(String part, long pieces, double lengthM, long laps, double girthM, long order) {
  }

  /** Boots of one size. */
  public record Boot(double diameterM, long count) {
  }

  /** Curbs of one size: extents across and along the fall, in plan. */
  public record Curb(double widthM, double depthM, long count) {
  }

  /** Share of the junctions' length for which metal alone leads the water off; 1 where there is no junction. */
  public double metalFirstShare() {
    return detailedM == 0 ? 1 : metalFirstM / detailedM;
  }
}

package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.seamledger.detail.Detail;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.geometry.Vec2;

/**
 * What stands in a section, in millimetres, before it comes to paper. Families put metal and ground here, and the places where tape,
 * sealant and fasteners can be, by the ids that {@code shapes/details-content.ttl} lists; which of these are drawn is the detail's own
 * business. What anything is called is only written beside it.
 *
 * @param gap room that keeps drawn sheets apart, which in truth touch; grows as the scale shrinks
 * @param units of the words
 */
public record SectionScene(Detail detail, double gap, DrawingUnits units, List<Shape> shapes,
    List<Label> labels, List<Dimension> dimensions, List<Note> notes,
    Map<String, List<List<List<Vec2>>>> sealPlaces, Map<String, List<Screw>> screwPlaces, Map<String, List<Vec2>> parts) {

  /** A line or an area; areas are closed. {@code part} is the id of the detail's part that it draws, or empty. */
  public record Shape(String type, List<Vec2> points, boolean area, String part) {
  }

  /** Words, and the places that a leader may go to. */
  public record Label(String words, List<Vec2> at) {
  }

  /** A distance between two places, drawn beside them by an offset. */
  public record Dimension(Vec2 from, Vec2 to, Vec2 offset, String words) {
  }

  /** Words at a place, turned. */
  public record Note(Vec2 at, double degrees, String words) {
  }

  /** A fastener from its head to its point. */
  public record Screw(Vec2 head, Vec2 point) {
  }

  SectionScene(Detail detail, double gap, DrawingUnits units) {
    this(detail, gap, units, new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new LinkedHashMap<>(),
        new LinkedHashMap<>(),
        new LinkedHashMap<>());
  }

  boolean has(String part) {
    return detail.metal().stream().anyMatch(m -> m.id().equals(part));
  }

  /** The first of these parts that the detail has, or the empty string. */
  String part(String... ids) {
    return Stream.of(ids).filter(this::has).findFirst().orElse("");
  }

  boolean hasSeal(String place) {
    return detail.seals().stream().anyMatch(s -> s.id().equals(place));
  }

  boolean hasTape(String place) {
    return detail.seals().stream().anyMatch(s -> s.form() == Seal.Form.TAPE && s.id().equals(place));
  }

  void area(String type, List<Vec2> points) {
    shapes.add(new Shape(type, List.copyOf(points), true, ""));
  }

  void line(String type, Vec2... points) {
    shapes.add(new Shape(type, List.of(points), false, ""));
  }

  /** What belongs to the faces, and to the detail that lists it among these. */
  void facePart(String id, Vec2... points) {
    boolean listed = detail.withFaces().stream().anyMatch(f -> f.id().equals(id));
    shapes.add(new Shape(id, List.of(points), false, listed ? id : ""));
  }

  /** Words at what belongs to the faces, with where it is counted if the detail lists it. */
  void faceLabel(String id, String words, Vec2... at) {
    label(words + detail.withFaces().stream().filter(f -> f.id().equals(id)).findFirst()
        .map(f -> ", counted with the faces: " + f.orderLine()).orElse(""), at);
  }

  /** A part of the detail; its first drawing carries the label. */
  void metal(String part, List<Vec2> points) {
    shapes.add(new Shape(part.startsWith("vented") ? "metal vented" : "metal", List.copyOf(points), false, part));
    parts.putIfAbsent(part, List.copyOf(points));
  }

  /** Where a seal can lie, one place for each of its lines; a second call for the same id is the other face. */
  void sealPlace(String id, List<List<Vec2>> places) {
    sealPlaces.computeIfAbsent(id, w -> new ArrayList<>()).add(places);
  }

  void screwPlace(String id, Vec2 head, Vec2 point) {
    screwPlaces.computeIfAbsent(id, w -> new ArrayList<>()).add(new Screw(head, point));
  }

  void label(String words, Vec2... at) {
    labels.add(new Label(words, List.of(at)));
  }

  void dimension(Vec2 from, Vec2 to, Vec2 offset, String words) {
    dimensions.add(new Dimension(from, to, offset, words));
  }

  void note(Vec2 at, double degrees, String words) {
    notes.add(new Note(at, degrees, words));
  }
}

package org.seamledger.export.wording;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.quantity.RoofSystem;

/** The values of a roof system, each with where it comes from: the system that was named, or else the program's own values. */
public final class SystemAssumptions {

  private static final String NO_SOURCE = "common practice, no source";

  /** Of the program's own values; all others are {@link #NO_SOURCE}. */
  private static final Map<String, String> SOURCES = Map.ofEntries(
      Map.entry("curbs.cricketAbove", "International Residential Code R903.2.2: crickets behind penetrations wider than 30 in"),
      Map.entry("limits.sealSeamsBelow", "International Building Code 1507.4.2, from memory: 3:12 without lap sealant"),
      Map.entry("limits.lowestSlope", "International Building Code 1507.4.2, from memory: 1/4:12 for standing seams"),
      Map.entry("walls.upstand", "UFGS 07600: at least 8 in up a vertical surface"),
      Map.entry("fasteners.wedgeSpacing", "UFGS 07600: wedges every 18 in in a reglet"),
      Map.entry("fasteners.wallEmbedment", "UFGS 07600: a reglet 1 1/4 in deep"),
      Map.entry("site.rainfall", "International Plumbing Code 2018, appendix B: New Orleans, one hour, 100 years"),
      Map.entry("site.fiveMinuteRainfall", "twice the hour's: between 8.94 in/h (NOAA Atlas 14, a station in North Carolina) and 10.96 in/h"
          + " (New York), both of 100 years"),
      Map.entry("tape.compression", "volume balance: tape 3/16 in × 7/8 in fills a flange of 1 in at 12.5 %"),
      Map.entry("purchase.clips.fieldSpacing", "common practice; guide specifications allow up to 5 ft in the field (UFC 3-110-03)"),
      Map.entry("purchase.clips.edgeSpacing", "common practice; guide specifications allow up to 30 in at edges (UFC 3-110-03)"),
      Map.entry("purchase.clips.cornerSpacing", "common practice; guide specifications allow up to 30 in at corners (UFC 3-110-03)"));

  private SystemAssumptions() {
  }

  /**
   * A value.
   *
   * @param group where it stands in the system's file, such as {@code purchase.clips}; empty for the outermost
   * @param name as in the system's file
   * @param value with its unit
   * @param source a publication, the roof system's name, or that there is none
   */
  public record Assumed(String group, String name, String value, String source) {
  }

  /** All values in the order of the system's file. */
  public static List<Assumed> of(RoofSystem system) {
    Map<String, String> own = new LinkedHashMap<>();
    flatten("", RoofSystem.DEFAULT.toMap(), own);
    Map<String, String> stated = new LinkedHashMap<>();
    flatten("", system.toMap(), stated);
    List<Assumed> rows = new ArrayList<>();
    stated.forEach((path, value) -> {
      int dot = path.lastIndexOf('.');
      String source = value.equals(own.get(path)) ? SOURCES.getOrDefault(path, NO_SOURCE) : "the roof system " + system.name();
      rows.add(new Assumed(path.substring(0, Math.max(0, dot)), path.substring(dot + 1), value, source));
    });
    return rows;
  }

  private static void flatten(String group, Map<?, ?> values, Map<String, String> flat) {
    values.forEach((name, value) -> {
      String path = group.isEmpty() ? name.toString() : group + '.' + name;
      if (value instanceof Map<?, ?> inner) {
        flatten(path, inner, flat);
      } else {
        flat.put(path, String.valueOf(value));
      }
    });
  }
}

package org.seamledger.order;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.detail.FastenerType;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.layout.Seam;
import org.seamledger.quantity.system.ClipSettings;
import org.seamledger.roof.RoofFace;

/** Clips in the seams, closer together in the wind's edge and corner zones, and their screws. */
final class ClipLines {

  private ClipLines() {
  }

  static List<OrderLine> of(OrderSource source) {
    ClipSettings settings = source.system().purchase().clips();
    WindZones zones = WindZones.of(source);
    LineDraft clips = new LineDraft("clip", OrderGroup.CLIPS, "clips", "piece");
    Map<WindZones.Zone, double[]> sums = new TreeMap<>();
    for (RoofFace face : source.takeoff().faces()) {
      for (Seam seam : source.takeoff().quantities().layout().face(face.id()).seams()) {
        for (Seam.Stretch stretch : seam.stretches()) {
          clips.add("", face.id(), count(zones.along(face.id(), stretch), settings, sums));
        }
      }
    }
    if (!clips.isNeeded()) {
      return List.of();
    }
    describe(clips, settings, zones, sums);
    LineDraft screws = new LineDraft("fastener:clip-screw", OrderGroup.FASTENERS, "clip screws", "piece");
    OrderLine line = clips.size(spacing(WindZones.Zone.FIELD, settings) + " / " + spacing(WindZones.Zone.EDGE, settings) + " / "
        + spacing(WindZones.Zone.CORNER, settings) + " apart in field / edge / corner")
        .inPacks(source.system().waste().fasteners().value(), source.system().purchase().packs().clips(), "box");
    line.shares().forEach(s -> screws.add(s.junction(), s.face(), s.amount() * settings.screws()));
    screws.step(settings.screws() + " in each of " + MeasureFormat.plain(line.net(), 0) + " clips");
    return List.of(line, FastenerLines.boxes(screws, FastenerType.PANCAKE_SCREW, 0, source.system()));
  }

  private static org.seamledger.measure.Measure spacing(WindZones.Zone zone, ClipSettings settings) {
    return switch (zone) {
      case FIELD -> settings.fieldSpacing();
      case EDGE -> settings.edgeSpacing();
      case CORNER -> settings.cornerSpacing();
    };
  }

  /** One at the low end, and then so many that none is further from the last than its zone allows. */
  private static int count(List<WindZones.Length> lengths, ClipSettings settings, Map<WindZones.Zone, double[]> sums) {
    int count = 0;
    for (WindZones.Length part : lengths) {
      int here = (int) Math.ceil(part.lengthM() / spacing(part.zone(), settings).value() - 1e-4) + (count == 0 ? 1 : 0);
      count += here;
      double[] sum = sums.computeIfAbsent(part.zone(), z -> new double[2]);
      sum[0] += part.lengthM();
      sum[1] += here;
    }
    return count;
  }

  private static void describe(LineDraft clips, ClipSettings settings, WindZones zones, Map<WindZones.Zone, double[]> sums) {
    clips.step("zones " + MeasureFormat.formatBoth(zones.widthM()) + " wide: " + zones.basis());
    sums.forEach((zone, sum) -> clips.step(zone.name().toLowerCase(java.util.Locale.ROOT) + ": " + MeasureFormat.formatBoth(sum[0])
        + " of seam, at most " + spacing(zone, settings) + " apart: " + MeasureFormat.plain(sum[1], 0)));
    clips.step("one more at the low end of each seam; the load of each zone, and with it the spacing, is the licensed engineer's");
  }
}

package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.detail.Fastening;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.RoofSystem;

/** Fasteners by type, in boxes; those of the clips are a line of their own. */
final class FastenerLines {

  private FastenerLines() {
  }

  static List<OrderLine> of(OrderSource source) {
    Map<String, LineDraft> drafts = new TreeMap<>();
    Map<String, TreeMap<String, Long>> places = new TreeMap<>();
    for (JunctionQuantities q : source.counted()) {
      for (FastenerRow row : q.fasteners()) {
        String type = type(source, q, row);
        drafts.computeIfAbsent(type, k -> new LineDraft("fastener:" + type, OrderGroup.FASTENERS, type.replace('-', ' '), "piece"))
            .add(q.junction(), row.face(), row.count());
        places.computeIfAbsent(type, k -> new TreeMap<>()).merge(row.place(), (long) row.count(), Long::sum);
      }
    }
    List<OrderLine> lines = new ArrayList<>();
    drafts.forEach((type, draft) -> {
      draft.step(places.get(type).entrySet().stream().map(e -> e.getKey() + " " + e.getValue()).collect(Collectors.joining(", ")));
      if (draft.isNeeded()) {
        lines.add(boxes(draft, source.system()));
      }
    });
    return lines;
  }

  static OrderLine boxes(LineDraft draft, RoofSystem system) {
    return draft.size(system.fasteners().metal().word()).inPacks(system.waste().fasteners().value(), system.purchase().packs().screws(), "box");
  }

  private static String type(OrderSource source, JunctionQuantities q, FastenerRow row) {
    String id = source.junction(q).detail().fastenings().stream().filter(f -> f.place().equals(row.place())).map(Fastening::id).findFirst()
        .orElse("");
    return switch (id) {
      case "cover", "boot", "plate", "flange", "trim" -> "stitch-screw";
      case "wedges" -> "reglet-wedge";
      case "receiver-bar", "curb-flange" -> "wall-anchor";
      default -> "deck-screw";
    };
  }
}

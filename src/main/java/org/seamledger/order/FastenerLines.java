package org.seamledger.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.detail.FastenerType;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.system.PackSettings;

/** Fasteners by type and length, in boxes; those of the clips are a line of their own. */
final class FastenerLines {

  /** A product: lengths to the millimetre, so that 1 1/4 in and 32 mm are one. */
  private record Product(FastenerType type, long millimetres) {
    double lengthM() {
      return millimetres * 1e-3;
    }
  }

  private FastenerLines() {
  }

  static List<OrderLine> of(OrderSource source) {
    Map<Product, LineDraft> drafts =
        new TreeMap<>(Comparator.comparing((Product p) -> p.type().word()).thenComparing(Product::millimetres));
    Map<Product, TreeMap<String, Long>> places =
        new TreeMap<>(Comparator.comparing((Product p) -> p.type()).thenComparing(Product::millimetres));
    for (JunctionQuantities q : source.counted()) {
      for (FastenerRow row : q.fasteners()) {
        Product product = new Product(row.type(), Math.round(row.lengthM() * 1e3));
        places.computeIfAbsent(product, k -> new TreeMap<>()).merge(row.place() + ", " + row.joins().word(), (long) row.count(), Long::sum);
        drafts.computeIfAbsent(product, k -> new LineDraft("", OrderGroup.FASTENERS, k.type().label(), "piece"))
            .add(q.junction(), row.face(), row.count());
      }
    }
    List<OrderLine> lines = new ArrayList<>();
    drafts.forEach((product, draft) -> {
      if (draft.isNeeded()) {
        String id = "fastener:" + product.type().word();
        boolean known = lines.stream().anyMatch(l -> l.id().equals(id));
        draft.step(places.get(product).entrySet().stream().map(e -> e.getValue() + " " + e.getKey()).collect(Collectors.joining("; ")));
        // The shortest of a type has the type's own id; ids must differ.
        lines.add(
            boxes(
                draft.product(new ProductKey(id, product.millimetres() * 10))
                    .named(known ? id + ":" + Math.round(product.lengthM() * 1000) : id),
                product.type(), product.lengthM(),
                source.system()));
      }
    });
    return lines;
  }

  static OrderLine boxes(LineDraft draft, FastenerType type, double lengthM, RoofSystem system) {
    PackSettings packs = system.purchase().packs();
    return draft.size(system.fasteners().metal().word() + (lengthM > 0 ? ", " + OrderSource.size(lengthM) + " long" : ""))
        .inPacks(system.waste().fasteners().value(), type == FastenerType.RIVET ? packs.rivets() : packs.screws(), "box");
  }
}

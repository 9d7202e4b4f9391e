package org.seamledger.export.section;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seamledger.detail.Decided;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.KindedJunction;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;

/**
 * What the section at one line shows of it, as it is kept.
 *
 * @param kind its place among the kinds of all lines
 * @param detail its place among the details of all lines
 */
record StoredLine(List<Vec3> path, List<String> faces, Map<String, Object> facts, int kind, int detail, Optional<Decided> decided,
    List<MetalLine> metal, List<SealLine> seals, List<FastenerRow> fasteners, List<SectionCut.Face> cut, OptionalDouble pipeRoomM,
    String elements) {

  private static final Explanation NOT_KEPT = new Explanation(List.of(), "", List.of());

  static StoredLine of(SectionSubject subject, int kind, int detail) {
    Junction line = subject.line().junction().junction();
    JunctionQuantities counted = subject.counted();
    return new StoredLine(line.path(), line.faces(), line.facts().asMap(), kind, detail, subject.line().decided(),
        counted.metal(), counted.seals(), counted.fasteners(), subject.cut().faces(), subject.cut().pipeRoomM(),
        subject.elements());
  }

  SectionSubject subject(String id, StoredSections.Common common) throws IOException {
    Junction line = new Junction(id, path, faces, List.of(), Facts.of(facts));
    DetailedJunction detailed = new DetailedJunction(new KindedJunction(line, common.kinds().get(kind), NOT_KEPT),
        common.detail(detail), decided);
    return new SectionSubject(common.sheet(), common.system(), detailed,
        new JunctionQuantities(id, metal, seals, fasteners, List.of(), 0, 0, List.of()),
        new SectionCut(cut, fasteners, pipeRoomM), elements);
  }
}

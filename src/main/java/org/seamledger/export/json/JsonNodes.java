package org.seamledger.export.json;

import java.io.IOException;
import java.util.Map;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeKind;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.takeoff.Takeoff;

/** Where lines end and meet, in the JSON ledger, and the kinds that such nodes can have. */
public final class JsonNodes {

  private final Takeoff takeoff;
  private final JsonOutput json;
  private final JsonJunctions lines;

  public JsonNodes(Takeoff takeoff, JsonOutput json, JsonJunctions lines) {
    this.takeoff = takeoff;
    this.json = json;
    this.lines = lines;
  }

  public void write() throws IOException {
    json.objects("nodes", takeoff.nodes(), this::node);
    json.objects("nodeKinds", takeoff.nodeKinds(), this::kind);
  }

  private void node(KindedNode node) throws IOException {
    json.word("id", node.id());
    json.term("kind", node.kind().id());
    json.point("at", takeoff.world(node.node().at()));
    json.words("junctions", node.node().junctions());
    json.words("faces", node.node().faces());
    json.object("facts", () -> told(node.facts().asMap()));
    requirements(takeoff.quantities().byJunction().get(node.id()));
    json.objects("holdPoints", takeoff.sequence().holdPoints(node.id()), lines::placed);
    json.words("findings", lines.codes(node.id()));
  }

  /** Counts of 0 are left out: there are two dozen. */
  private void told(Map<String, Object> facts) throws IOException {
    for (Map.Entry<String, Object> fact : facts.entrySet()) {
      if (!fact.getValue().equals(0)) {
        json.tree(fact.getKey(), fact.getValue());
      }
    }
  }

  private void requirements(JunctionQuantities takes) throws IOException {
    json.objects("metal", takes.metal(), lines::metal);
    json.objects("seals", takes.seals(), lines::seal);
    json.objects("fasteners", takes.fasteners(), lines::fasteners);
    json.words("steps", takes.steps());
  }

  private void kind(NodeKind kind) throws IOException {
    json.word("id", kind.id());
    json.word("label", kind.label());
    json.word("meaning", kind.meaning());
    json.word("title", kind.content().title());
    json.word("note", kind.content().note());
    json.objects("holdPoints", kind.content().holdPoints(), lines::holdPoint);
    json.word("source", kind.content().source());
  }
}

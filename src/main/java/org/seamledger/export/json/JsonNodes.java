package org.seamledger.export.json;

import java.io.IOException;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeKind;
import org.seamledger.takeoff.Takeoff;

/** Where lines end and meet, in the JSON ledger, and the kinds that such nodes can have. */
public final class JsonNodes {

  private final Takeoff takeoff;
  private final JsonOutput json;
  private final Map<String, SortedSet<String>> codes;

  public JsonNodes(Takeoff takeoff, JsonOutput json) {
    this.takeoff = takeoff;
    this.json = json;
    this.codes = takeoff.codesByJunction();
  }

  public void write() throws IOException {
    json.objects("nodes", takeoff.nodes(), this::node);
    json.objects("nodeKinds", takeoff.nodeKinds(), this::kind);
  }

  private void node(KindedNode node) throws IOException {
    json.word("id", node.id());
    json.word("kind", node.kind().id());
    json.point("at", takeoff.world(node.node().at()));
    json.words("junctions", node.node().junctions());
    json.words("faces", node.node().faces());
    json.tree("facts", node.facts().asMap());
    json.objects("metal", java.util.List.of(), m -> {});
    json.objects("seals", java.util.List.of(), m -> {});
    json.words("findings", codes.getOrDefault(node.id(), new TreeSet<>()));
  }

  private void kind(NodeKind kind) throws IOException {
    json.word("id", kind.id());
    json.word("label", kind.label());
    json.word("meaning", kind.meaning());
  }
}

package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.element.Element;
import org.seamledger.element.NamedElement;
import org.seamledger.finding.Finding;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;
import org.seamledger.ifc.product.ElementClass;
import org.seamledger.ifc.product.Scope;
import org.seamledger.ifc.product.Storeys;

/** Class, name, model and storey of every element that a building holds or a finding names. */
final class Mentions {

  private final List<Scope> scopes;
  private final List<Map<Long, String>> storeys = new ArrayList<>();
  private final SortedMap<String, NamedElement> named = new TreeMap<>();

  private Mentions(List<Scope> scopes) {
    this.scopes = scopes;
    scopes.forEach(s -> storeys.add(Storeys.of(s, new TreeSet<>(s.model().mentioned().values()))));
  }

  static List<NamedElement> of(List<Scope> scopes, List<List<Element>> elements, List<Finding> findings) {
    Mentions mentions = new Mentions(scopes);
    elements.forEach(list -> list.forEach(mentions::add));
    Set<String> others = new LinkedHashSet<>();
    findings.forEach(f -> others.addAll(f.elements()));
    others.removeAll(mentions.named.keySet());
    others.forEach(mentions::add);
    return List.copyOf(mentions.named.values());
  }

  private void add(Element e) {
    // Of several elements with one GlobalId the later ones have a number behind it, and the storey of the first.
    String inFile = e.globalId().replaceFirst("~\\d+$", "");
    Map<String, Long> known = scopes.get(e.model()).model().mentioned();
    Long id = known.getOrDefault(e.globalId(), known.get(inFile));
    named.put(e.globalId(), new NamedElement(e.globalId(), e.ifcClass(), e.name(), e.model(), storey(e.model(), id)));
  }

  private void add(String globalId) {
    for (int i = 0; i < scopes.size(); i++) {
      Model model = scopes.get(i).model();
      Long id = model.mentioned().get(globalId);
      if (id != null) {
        try {
          Entity e = model.get(id);
          ElementClass c = scopes.get(i).classOf(id);
          named.put(globalId, new NamedElement(globalId, c == null ? e.keyword() : c.name(), e.text(2), i, storey(i, id)));
          return;
        } catch (EntityProblem p) {
          // The finding that names it stands for what is wrong with it.
        }
      }
    }
  }

  private String storey(int model, Long id) {
    return id == null ? "" : storeys.get(model).getOrDefault(id, "");
  }
}

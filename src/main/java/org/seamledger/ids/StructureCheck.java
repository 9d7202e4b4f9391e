package org.seamledger.ids;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import javax.xml.XMLConstants;
import javax.xml.namespace.QName;
import org.seamledger.ids.XmlRule.Attribute;
import org.seamledger.ids.XmlRule.Child;

/** Holds a document to its rules; what doesn't fit is told with its place. */
final class StructureCheck {

  private static final int LONGEST_SHOWN = 80;

  private final String file;
  private final List<IdsProblem> problems = new ArrayList<>();
  private final Set<String> identifiers = new HashSet<>();

  private StructureCheck(String file) {
    this.file = file;
  }

  /** @return nothing where the structure is right */
  static List<IdsProblem> of(XmlNode root, QName name, XmlRule rule, String file) {
    StructureCheck check = new StructureCheck(file);
    if (!root.name().equals(name)) {
      check.add(root, show(name) + " in the namespace " + name.getNamespaceURI(), show(root.name())
          + (root.name().getNamespaceURI().isEmpty() ? " in none" : " in " + root.name().getNamespaceURI()));
    } else {
      check.element(root, rule);
    }
    return check.problems;
  }

  private void add(XmlNode at, String expected, String found) {
    problems.add(new IdsProblem(file, at.line(), at.column(), expected, found));
  }

  private void element(XmlNode node, XmlRule rule) {
    attributes(node, rule);
    if (rule.isOpen()) {
      return;
    }
    if (rule.text() != null) {
      text(node, rule.text());
      return;
    }
    if (!node.text().isBlank()) {
      add(node, "elements alone inside " + show(node.name()), "the text " + quote(node.text().strip()));
    }
    if (rule.isChoice()) {
      oneOf(node, rule);
    } else {
      children(node, rule);
    }
  }

  private void text(XmlNode node, XmlType type) {
    if (!node.children().isEmpty()) {
      add(node.children().get(0), "text alone inside " + show(node.name()), show(node.children().get(0).name()));
    } else if (!type.accepts().test(node.text())) {
      add(node, type.expected() + " in " + show(node.name()), quote(node.text()));
    }
  }

  private void attributes(XmlNode node, XmlRule rule) {
    for (Map.Entry<QName, String> entry : node.attributes().entrySet()) {
      QName name = entry.getKey();
      Attribute attribute = name.getNamespaceURI().isEmpty() ? rule.attributes().get(name.getLocalPart()) : null;
      if (attribute == null) {
        if (!isWelcome(name, rule)) {
          add(node, rule.attributes().isEmpty() ? "no attribute of " + show(node.name())
              : "no attribute of " + show(node.name()) + " but " + String.join(", ", rule.attributes().keySet()),
              "the attribute " + name
                  .getLocalPart());
        }
      } else if (!attribute.type().accepts().test(entry.getValue())) {
        add(node, attribute.type().expected() + " as " + name.getLocalPart() + " of " + show(node.name()), quote(entry.getValue()));
      } else if (attribute.type() == XmlType.NC_NAME && !identifiers.add(entry.getValue().strip())) {
        add(node, "an identifier of its own", "the identifier " + quote(entry.getValue()) + " again");
      }
    }
    rule.attributes().forEach((name, attribute) -> {
      if (attribute.required() && node.attribute(name).isEmpty()) {
        add(node, "the attribute " + name + " of " + show(node.name()), "none");
      }
    });
  }

  private static boolean isWelcome(QName name, XmlRule rule) {
    String space = name.getNamespaceURI();
    if (space.equals(XMLConstants.W3C_XML_SCHEMA_INSTANCE_NS_URI)) {
      return name.getLocalPart().equals("schemaLocation") || name.getLocalPart().equals("noNamespaceSchemaLocation");
    }
    return rule.takesForeignAttributes() && !space.isEmpty() && !space.equals(IdsGrammar.XS);
  }

  /** The children by rank, each as often as its rule says. A wrong one is told once, with what could stand there; the rest is left. */
  private void children(XmlNode node, XmlRule rule) {
    Map<Child, Integer> counts = new HashMap<>();
    int rank = 0;
    for (XmlNode child : node.children()) {
      Child fits = rule.child(child.name());
      boolean late = fits == null || fits.rank() < rank || counts.getOrDefault(fits, 0) >= fits.most() || lacks(rule, counts, fits.rank());
      if (late) {
        add(child, possible(rule, counts, rank) + " inside " + show(node.name()), show(child.name()));
        return;
      }
      counts.merge(fits, 1, Integer::sum);
      rank = fits.rank();
      element(child, fits.rule());
    }
    if (lacks(rule, counts, Integer.MAX_VALUE)) {
      add(node, possible(rule, counts, rank) + " inside " + show(node.name()), node.children().isEmpty() ? "nothing" : "its end");
    }
  }

  private static boolean lacks(XmlRule rule, Map<Child, Integer> counts, int before) {
    return rule.children().stream().anyMatch(c -> c.rank() < before && counts.getOrDefault(c, 0) < c.least());
  }

  /** What could come next: everything up to the first that has to. */
  private static String possible(XmlRule rule, Map<Child, Integer> counts, int rank) {
    List<String> names = new ArrayList<>();
    for (Child child : rule.children()) {
      int count = counts.getOrDefault(child, 0);
      if (child.rank() >= rank && count < child.most()) {
        names.add(show(child.name()));
        if (count < child.least()) {
          break;
        }
      }
    }
    return names.isEmpty() ? "nothing more" : String.join(", ", names);
  }

  private void oneOf(XmlNode node, XmlRule rule) {
    for (XmlNode child : node.children()) {
      Child fits = rule.child(child.name());
      if (fits == null) {
        add(child, names(rule.children()) + " inside " + show(node.name()), show(child.name()));
        return;
      }
      element(child, fits.rule());
    }
    if (node.children().size() != 1) {
      add(node.children().isEmpty() ? node : node.children().get(1), "one of " + names(rule.children()) + " inside " + show(node.name()),
          node.children().isEmpty() ? "none" : "another");
    }
  }

  private static String names(List<Child> rules) {
    return rules.stream().map(r -> show(r.name())).collect(Collectors.joining(", "));
  }

  static String show(QName name) {
    return (name.getNamespaceURI().equals(IdsGrammar.XS) ? "<xs:" : "<") + name.getLocalPart() + ">";
  }

  static String quote(String text) {
    return "'" + (text.length() <= LONGEST_SHOWN ? text : text.substring(0, LONGEST_SHOWN) + "…") + "'";
  }
}

package org.seamledger.ids;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.PatternSyntaxException;
import javax.xml.namespace.QName;
import org.seamledger.ids.ValueConstraint.Bound;
import org.seamledger.ids.ValueConstraint.Lengths;
import org.seamledger.ids.ValueConstraint.XmlPattern;

/** Makes facets of elements whose structure is right; restrictions that mean nothing become problems. */
final class FacetReader {

  private final String file;
  private final List<IdsProblem> problems;

  FacetReader(String file, List<IdsProblem> problems) {
    this.file = file;
    this.problems = problems;
  }

  IdsFacet facet(XmlNode node) {
    IdsFacet.At at = new IdsFacet.At(node.line(), node.column());
    return switch (node.name().getLocalPart()) {
      case "entity" -> entity(node);
      case "attribute" -> new IdsFacet.AttributeFacet(at, required(node, "name"), optional(node, "value"));
      case "classification" -> new IdsFacet.ClassificationFacet(at, required(node, "system"), optional(node, "value"));
      case "property" -> new IdsFacet.PropertyFacet(at, required(node, "propertySet"), required(node, "baseName"), node
          .attribute("dataType"),
          optional(node, "value"));
      case "material" -> new IdsFacet.MaterialFacet(at, optional(node, "value"));
      default -> new IdsFacet.PartOfFacet(at, node.attribute("relation"), entity(node.child("entity").orElseThrow()));
    };
  }

  private IdsFacet.EntityFacet entity(XmlNode node) {
    return new IdsFacet.EntityFacet(new IdsFacet.At(node.line(), node.column()), required(node, "name"), optional(node, "predefinedType"));
  }

  private ValueConstraint required(XmlNode node, String child) {
    return constraint(node.child(child).orElseThrow());
  }

  private Optional<ValueConstraint> optional(XmlNode node, String child) {
    return node.child(child).map(this::constraint);
  }

  private ValueConstraint constraint(XmlNode node) {
    XmlNode value = node.children().get(0);
    return value.is("simpleValue") ? ValueConstraint.simple(value.text()) : restriction(value);
  }

  private void problem(XmlNode node, String expected, String found) {
    problems.add(new IdsProblem(file, node.line(), node.column(), expected, found));
  }

  private ValueConstraint restriction(XmlNode node) {
    Optional<XsdBase> base = base(node);
    List<String> values = new ArrayList<>();
    List<XmlPattern> patterns = new ArrayList<>();
    List<Bound> bounds = new ArrayList<>();
    int least = -1;
    int most = -1;
    boolean restricts = false;
    for (XmlNode facet : node.children()) {
      String value = facet.attribute("value").orElse("");
      suits(facet, base, value);
      switch (facet.name().getLocalPart()) {
        case "enumeration" -> values.add(value);
        case "pattern" -> pattern(facet, value).ifPresent(patterns::add);
        case "minInclusive" -> bounds.add(new Bound(value.strip(), true, true));
        case "minExclusive" -> bounds.add(new Bound(value.strip(), true, false));
        case "maxInclusive" -> bounds.add(new Bound(value.strip(), false, true));
        case "maxExclusive" -> bounds.add(new Bound(value.strip(), false, false));
        case "length" -> {
          least = length(value);
          most = least;
        }
        case "minLength" -> least = length(value);
        case "maxLength" -> most = length(value);
        default -> {
          continue;
        }
      }
      restricts = true;
    }
    if (!restricts) {
      problem(node, "an enumeration, a pattern, bounds or a length inside <xs:restriction>", "none");
    }
    return new ValueConstraint(base, values, patterns, bounds, new Lengths(least, most));
  }

  private Optional<XsdBase> base(XmlNode node) {
    QName name = node.attribute("base").map(node::resolve).orElse(null);
    Optional<XsdBase> base = name == null || !name.getNamespaceURI().equals(IdsGrammar.XS) ? Optional.empty() : XsdBase.named(name
        .getLocalPart());
    if (base.isEmpty()) {
      problem(node, "xs:string, xs:boolean, xs:integer, xs:double, xs:date, xs:dateTime, xs:time or xs:duration as base of "
          + "<xs:restriction>",
          node.attribute("base").map(StructureCheck::quote).orElse("none"));
    }
    return base;
  }

  /** Which restriction goes with which base: IDS 1.0, restrictions.md and developer-guide.md, "Restrictions". */
  private void suits(XmlNode facet, Optional<XsdBase> base, String value) {
    String name = facet.name().getLocalPart();
    switch (name) {
      case "annotation" -> {
        // For human readers.
      }
      case "simpleType", "totalDigits", "fractionDigits", "whiteSpace" ->
          problem(facet, "an enumeration, a pattern, bounds or a length; IDS has no other restriction", StructureCheck.show(facet.name()));
      case "pattern", "length", "minLength", "maxLength" -> {
        if (base.isPresent() && base.get() != XsdBase.STRING) {
          problem(facet, "<xs:" + name + "> in a restriction of xs:string only", "base " + base.get());
        }
      }
      default -> {
        if (base.isPresent() && !base.get().accepts(name.equals("enumeration") ? value : value.strip())) {
          problem(facet, "a value of " + base.get() + " in <xs:" + name + ">", StructureCheck.quote(value));
        } else if (!name.equals("enumeration") && base.isPresent() && (base.get() == XsdBase.STRING || base.get() == XsdBase.BOOLEAN)) {
          problem(facet, "<xs:" + name + "> in a restriction of numbers or dates only", "base " + base.get());
        }
      }
    }
  }

  private Optional<XmlPattern> pattern(XmlNode node, String source) {
    try {
      return Optional.of(new XmlPattern(source, XsdPattern.compile(source)));
    } catch (PatternSyntaxException e) {
      problem(node, e.getDescription() + " at character " + (e.getIndex() + 1) + " of the pattern", StructureCheck.quote(source));
      return Optional.empty();
    }
  }

  private static int length(String value) {
    try {
      return Integer.parseInt(value.strip());
    } catch (NumberFormatException e) {
      return Integer.MAX_VALUE;
    }
  }
}

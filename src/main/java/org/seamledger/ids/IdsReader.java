package org.seamledger.ids;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.xml.namespace.QName;
import javax.xml.stream.XMLStreamException;
import org.seamledger.schema.IfcRelease;

/** Reads IDS files: well-formed, of the right structure, and of a meaning that the schemas of IFC allow; else it says what is wrong. */
public final class IdsReader {

  private static final QName ROOT = new QName(IdsGrammar.IDS, "ids");
  private static final int MOST_BYTES = 64 << 20;
  private static final XmlRule RULES = IdsGrammar.root();

  private final String file;
  private final List<IdsProblem> problems = new ArrayList<>();
  private final FacetReader facets;

  private IdsReader(String file) {
    this.file = file;
    this.facets = new FacetReader(file, problems);
  }

  /**
   * @param file what the user calls it
   * @throws IOException where it can't be read
   */
  public static IdsDocument read(InputStream in, String file) throws IOException {
    IdsReader reader = new IdsReader(file);
    byte[] text = in.readNBytes(MOST_BYTES + 1);
    Optional<IdsProblem> unreadable = text.length > MOST_BYTES
        ? Optional.of(new IdsProblem(file, 0, 0, "a file of at most " + (MOST_BYTES >> 20) + " MiB", "a larger one"))
        : Utf8Check.of(text, file);
    if (unreadable.isPresent()) {
      return new IdsDocument(file, "", List.of(), List.of(unreadable.get()));
    }
    try {
      return reader.document(XmlTree.read(new ByteArrayInputStream(text)));
    } catch (XMLStreamException e) {
      return reader.malformed(e);
    }
  }

  private IdsDocument malformed(XMLStreamException e) {
    int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
    int column = e.getLocation() == null ? 0 : e.getLocation().getColumnNumber();
    String message = String.valueOf(e.getMessage()).lines().reduce((first, last) -> last).orElse("").replaceFirst("^Message: ", "");
    return new IdsDocument(file, "", List.of(), List.of(new IdsProblem(file, Math.max(line, 0), Math.max(column, 0),
        "a well-formed XML document", message)));
  }

  /** Whether the structure alone is right: what a validating parser with the standard's schema would say. */
  static List<IdsProblem> structure(XmlNode root, String file) {
    return StructureCheck.of(root, ROOT, RULES, file);
  }

  private IdsDocument document(XmlNode root) {
    problems.addAll(structure(root, file));
    if (!problems.isEmpty()) {
      return new IdsDocument(file, "", List.of(), problems);
    }
    List<Specification> specifications = new ArrayList<>();
    for (XmlNode node : root.child("specifications").orElseThrow().children()) {
      int before = problems.size();
      Specification specification = specification(node);
      if (problems.size() == before) {
        problems.addAll(IdsAudit.of(specification, file));
      }
      specifications.add(specification);
    }
    String title = root.child("info").flatMap(i -> i.child("title")).map(XmlNode::text).orElse("");
    return new IdsDocument(file, title, problems.isEmpty() ? specifications : List.of(), problems);
  }

  private Specification specification(XmlNode node) {
    XmlNode applicability = node.child("applicability").orElseThrow();
    List<IfcRelease> releases = Arrays.stream(node.attribute("ifcVersion").orElse("").strip().split("\\s+")).filter(v -> !v.isEmpty())
        .distinct().map(IfcRelease::valueOf).toList();
    if (releases.isEmpty()) {
      problem(node, "IFC2X3, IFC4 or IFC4X3_ADD2 as ifcVersion", "none");
    }
    Occurrence occurrence = occurrence(applicability);
    List<Requirement> requirements = new ArrayList<>();
    node.child("requirements").ifPresent(r -> r.children().forEach(f -> requirements.add(requirement(f))));
    if (occurrence == Occurrence.PROHIBITED && !requirements.isEmpty()) {
      problem(node.child("requirements").orElseThrow(), "no requirements, as elements of this kind are prohibited", "some");
    }
    if (applicability.children().isEmpty()) {
      problem(applicability, "a facet that says what <applicability> is for", "none");
    }
    return new Specification(node.attribute("name").orElse(""), node.attribute("identifier").orElse(""),
        node.attribute("description").orElse(""), node.attribute("instructions").orElse(""), releases, occurrence,
        applicability.children().stream().map(facets::facet).toList(), requirements);
  }

  /** IDS 1.0, developer-guide.md, "Optionality": three pairs are allowed; both are 1 where they aren't stated, by XML Schema. */
  private Occurrence occurrence(XmlNode node) {
    String least = number(node.attribute("minOccurs").orElse("1"));
    String most = number(node.attribute("maxOccurs").orElse("1"));
    if (most.equals("unbounded") && least.equals("1")) {
      return Occurrence.REQUIRED;
    }
    if (most.equals("0") && least.equals("0")) {
      return Occurrence.PROHIBITED;
    }
    if (!most.equals("unbounded") || !least.equals("0")) {
      problem(node, "minOccurs and maxOccurs 1 and unbounded (required), 0 and unbounded (optional), or 0 and 0 (prohibited)", least
          + " and " + most);
    }
    return Occurrence.OPTIONAL;
  }

  private static String number(String text) {
    String word = text.strip();
    return word.equals("unbounded") ? word : word.replaceFirst("^[+-]", "").replaceFirst("^0+(?=.)", "");
  }

  private Requirement requirement(XmlNode node) {
    Occurrence occurrence = switch (node.attribute("cardinality").orElse("required")) {
      case "optional" -> Occurrence.OPTIONAL;
      case "prohibited" -> Occurrence.PROHIBITED;
      default -> Occurrence.REQUIRED;
    };
    return new Requirement(facets.facet(node), occurrence, node.attribute("instructions").orElse(""));
  }

  private void problem(XmlNode node, String expected, String found) {
    problems.add(new IdsProblem(file, node.line(), node.column(), expected, found));
  }
}

package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.Severity;

/**
 * Models at a gate in the XML of test reports that pipelines show: a suite a model, a case an issue, or a case a specification where
 * specifications were asked. What keeps the gate shut is a failure, what somebody accepted is skipped, what is milder passes with its
 * message as output, and a model that can't be read is an error. The elements and attributes are those of Maven Surefire's report schema
 * (surefire-test-report.xsd 3.0); no time is stated, so that the same models give the same bytes.
 */
public final class JUnitReport {

  private final XMLStreamWriter xml;
  private final Severity limit;

  private JUnitReport(XMLStreamWriter xml, Severity limit) {
    this.xml = xml;
    this.limit = limit;
  }

  /** One case: what is wrong with it, which may be nothing. */
  private record Case(String name, List<GateModel.Issue> issues) {

    boolean fails(Severity limit) {
      return issues.stream().anyMatch(i -> i.counts(limit));
    }

    boolean isSkipped(Severity limit) {
      return !fails(limit) && !issues.isEmpty() && issues.stream().allMatch(i -> i.accepted().isPresent());
    }
  }

  /** @param limit severity from which on an issue that nobody accepted is a failure */
  public static void write(List<GateModel> models, Severity limit, OutputStream out) throws IOException {
    try {
      XMLStreamWriter xml = XMLOutputFactory.newFactory().createXMLStreamWriter(out, StandardCharsets.UTF_8.name());
      new JUnitReport(xml, limit).document(models);
      xml.flush();
      out.flush();
    } catch (XMLStreamException e) {
      throw new IOException(e);
    }
  }

  private void document(List<GateModel> models) throws XMLStreamException {
    xml.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
    xml.writeCharacters("\n");
    xml.writeStartElement("testsuites");
    for (GateModel m : models) {
      suite(m);
    }
    xml.writeCharacters("\n");
    xml.writeEndElement();
    xml.writeCharacters("\n");
    xml.writeEndDocument();
  }

  private static List<Case> cases(GateModel m) {
    List<Case> cases = new ArrayList<>();
    if (m.rules().isEmpty()) {
      m.issues().forEach(i -> cases.add(new Case(i.rule().id() + (i.junction().isEmpty() ? "" : " " + i.junction()), List.of(i))));
    } else {
      m.rules().forEach(r -> cases.add(new Case(r.id() + " " + r.name(), m.issues().stream().filter(i -> i.rule().equals(r)).toList())));
    }
    if (cases.isEmpty()) {
      cases.add(new Case("reading", List.of()));
    }
    return cases;
  }

  private void suite(GateModel m) throws XMLStreamException {
    List<Case> cases = cases(m);
    line(1);
    xml.writeStartElement("testsuite");
    xml.writeAttribute("name", OneLine.of(m.name()));
    xml.writeAttribute("tests", Integer.toString(cases.size()));
    xml.writeAttribute("errors", m.problem().isPresent() ? "1" : "0");
    xml.writeAttribute("skipped", Long.toString(cases.stream().filter(c -> c.isSkipped(limit)).count()));
    xml.writeAttribute("failures", Long.toString(cases.stream().filter(c -> c.fails(limit)).count()));
    for (Case c : cases) {
      line(2);
      xml.writeStartElement("testcase");
      xml.writeAttribute("name", c.name());
      xml.writeAttribute("classname", OneLine.of(m.name()));
      if (m.problem().isPresent()) {
        outcome("error", OneLine.of(m.problem().get()), "model/unreadable", OneLine.of(m.problem().get()));
      } else {
        outcome(c);
      }
      line(2);
      xml.writeEndElement();
    }
    line(1);
    xml.writeEndElement();
  }

  private void outcome(Case c) throws XMLStreamException {
    if (c.fails(limit)) {
      GateModel.Issue first = c.issues().stream().filter(i -> i.counts(limit)).findFirst().orElseThrow();
      int more = c.issues().size() - 1;
      outcome("failure", first.message() + (more > 0 ? " (and " + more + " more)" : ""), first.rule().id(), body(c));
    } else if (c.isSkipped(limit)) {
      Acceptance a = c.issues().get(0).accepted().orElseThrow();
      line(3);
      xml.writeEmptyElement("skipped");
      xml.writeAttribute("message", "accepted by " + OneLine.of(a.by()) + (a.when().isEmpty() ? "" : " on " + a.when()) + ": "
          + OneLine.of(a.reason()));
      output(body(c));
    } else if (!c.issues().isEmpty()) {
      output(body(c));
    }
  }

  private void outcome(String element, String message, String type, String body) throws XMLStreamException {
    line(3);
    xml.writeStartElement(element);
    xml.writeAttribute("message", message);
    xml.writeAttribute("type", type);
    xml.writeCharacters(body);
    xml.writeEndElement();
  }

  private void output(String body) throws XMLStreamException {
    line(3);
    xml.writeStartElement("system-out");
    xml.writeCharacters(body);
    xml.writeEndElement();
  }

  private static String body(Case c) {
    StringBuilder text = new StringBuilder();
    for (GateModel.Issue i : c.issues()) {
      text.append(i.severity().word()).append(": ").append(i.message()).append('\n');
      for (GateModel.Concerned e : i.elements()) {
        text.append("  ").append(OneLine.of((e.ifcClass() + " " + e.globalId() + " " + e.name()).strip()))
            .append(e.storey().isEmpty() ? "" : ", storey " + OneLine.of(e.storey())).append(", ").append(OneLine.of(e.file()))
            .append('\n');
      }
    }
    GateModel.Rule rule = c.issues().get(0).rule();
    return text + (rule.reason().isEmpty() ? "" : "Why: " + rule.reason() + "\n")
        + (rule.action().isEmpty() ? "" : "What to do: " + rule.action() + "\n");
  }

  private void line(int depth) throws XMLStreamException {
    xml.writeCharacters("\n" + "  ".repeat(depth));
  }
}

package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.finding.Severity;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Findings in the forms that other programs take. */
class FindingsTravelTest {

  private static final Takeoff ACCEPTED = Takeoffs.boatHouse("=roof; \"A\" <1>",
      List.of(new AcceptedFinding("kind/unclassified", "rake1", List.of("0roof"), 1, new Acceptance("A. Roofer", "2024-05-31", "=seen"))));

  private static List<String> csv(Takeoff takeoff) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FindingsCsv.write(takeoff, out);
    return List.of(out.toString(StandardCharsets.UTF_8).split("\r\n"));
  }

  @Test
  void csvHasOneRowAFindingAndOneValueACell() throws IOException {
    List<String> rows = csv(Takeoffs.boatHouse());
    assertThat(rows).hasSize(4);
    assertThat(rows.get(0)).isEqualTo("code,severity,message,reason,action,junction,face,kind,elementGlobalIds,class,name,storey,file,"
        + "accepted,acceptedBy,acceptedWhen,acceptedReason,who,risk,junctions");
    assertThat(rows.get(1)).startsWith("kind/unclassified,warning,no shape claims this line,,")
        .endsWith(",rake1,F1,unclassified,0roof,IfcSlab,Roof of the boat house,Loft,boat-house.ifc,no,,,,roofer,40,rake1");
    assertThat(rows.get(2)).contains("design/by-hand,info,the eave is level,water may stand,look at it,eave1,F1,eave,,,,,,no,,,");
  }

  /** What a spreadsheet takes for a formula, in half or full width, and what parts cells elsewhere. */
  @Test
  void nothingInACellIsAFormula() throws IOException {
    assertThat(csv(ACCEPTED).get(1)).contains(",\"'=roof; \"\"A\"\" <1>\",Loft,")
        .endsWith(",yes,A. Roofer,2024-05-31,'=seen,roofer,40,rake1");
    assertThat(List.of("＝1", "＋1", "－1", "＠x", "a;b").stream().map(Rows::cell)).containsExactly("'＝1", "'＋1", "'－1", "'＠x", "\"a;b\"");
  }

  private static JsonNode json(Takeoff takeoff) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    JsonLedger.write(takeoff, out);
    return new ObjectMapper().readTree(out.toByteArray());
  }

  @Test
  void jsonNamesTheElementsAndWhoAccepted() throws IOException {
    JsonNode finding = json(ACCEPTED).path("findings").path(0);
    assertThat(finding.path("elements").path(0).textValue()).isEqualTo("0roof");
    JsonNode element = finding.path("elementDetails").path(0);
    assertThat(List.of("globalId", "class", "storey", "file").stream().map(f -> element.path(f).textValue())).containsExactly("0roof",
        "IfcSlab", "Loft", "boat-house.ifc");
    assertThat(finding.path("accepted").toString()).isEqualTo("{\"by\":\"A. Roofer\",\"when\":\"2024-05-31\",\"reason\":\"=seen\"}");
    assertThat(json(Takeoffs.boatHouse()).path("findings").path(0).has("accepted")).isFalse();
  }

  @Test
  void theReportSaysWhoAccepted() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    TextReport.write(ACCEPTED, out);
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("    accepted by A. Roofer on 2024-05-31: =seen\n")
        .contains("1 warning, 2 notes; of them 1 accepted");
  }

  /**
   * Properties that SARIF 2.1.0 requires: version and runs (3.13.2, 3.13.4), tool.driver.name (3.18.2, 3.19.8), a rule's id (3.49.3), a
   * result's message (3.27.11) with text (3.11.8), executionSuccessful (3.20.14), a suppression's kind (3.35.2); levels by 3.27.10.
   */
  @Test
  void sarifHasWhatTheStandardRequires() throws IOException {
    List<GateModel> models = List.of(GateModel.of(ACCEPTED, List.of("sub dir/boat-house.ifc")),
        GateModel.unreadable("C:\\models\\é.ifc", "é.ifc:1:1: expected"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    SarifLog.write(models, out);
    JsonNode log = new ObjectMapper().readTree(out.toByteArray());
    assertThat(log.path("version").textValue()).isEqualTo("2.1.0");
    JsonNode run = log.path("runs").path(0);
    assertThat(run.at("/tool/driver/name").textValue()).isEqualTo("seamledger");
    assertThat(run.at("/invocations/0/executionSuccessful").booleanValue()).isFalse();
    assertThat(run.at("/invocations/0/toolExecutionNotifications/0/locations/0/physicalLocation/artifactLocation/uri").textValue())
        .isEqualTo("file:///C:/models/%C3%A9.ifc");
    assertThat(run.path("results")).hasSize(3).allSatisfy(r -> {
      assertThat(r.at("/message/text").textValue()).isNotBlank();
      assertThat(r.path("level").textValue()).isIn("none", "note", "warning", "error");
      assertThat(run.at("/tool/driver/rules").path(r.path("ruleIndex").intValue()).path("id")).isEqualTo(r.path("ruleId"));
      assertThat(r.at("/locations/0/physicalLocation/artifactLocation/uri").textValue()).isEqualTo("sub%20dir/boat-house.ifc");
    });
    JsonNode first = run.path("results").path(0);
    assertThat(first.at("/suppressions/0/kind").textValue()).isEqualTo("external");
    assertThat(first.at("/suppressions/0/status").textValue()).isEqualTo("accepted");
    assertThat(first.at("/locations/0/logicalLocations/0/fullyQualifiedName").textValue()).isEqualTo("0roof");
    assertThat(run.path("results").findValuesAsText("findingHash/v1")).doesNotHaveDuplicates().allMatch(h -> h.matches("[0-9a-f]{32}"));
  }

  private static Element suite(GateModel model, Severity limit) throws IOException, SAXException, ParserConfigurationException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    JUnitReport.write(List.of(model), limit, out);
    return (Element) DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(out.toByteArray()))
        .getDocumentElement().getElementsByTagName("testsuite").item(0);
  }

  /** Elements and attributes of Maven Surefire's surefire-test-report.xsd: the counts of a suite are those of its cases. */
  @Test
  void junitCountsWhatFailsAndSkipsWhatIsAccepted() throws Exception {
    Element open = suite(GateModel.of(Takeoffs.boatHouse(), List.of("b.ifc")), Severity.WARNING);
    assertThat(List.of("name", "tests", "failures", "errors", "skipped").stream().map(open::getAttribute)).containsExactly("b.ifc", "3",
        "1",
        "0", "0");
    Element failure = (Element) open.getElementsByTagName("failure").item(0);
    assertThat(failure.getAttribute("type")).isEqualTo("kind/unclassified");
    assertThat(failure.getTextContent()).contains("IfcSlab 0roof Roof of the boat house, storey Loft, b.ifc\n");
    Element accepted = suite(GateModel.of(ACCEPTED, List.of("b.ifc")), Severity.WARNING);
    assertThat(List.of("tests", "failures", "skipped").stream().map(accepted::getAttribute)).containsExactly("3", "0", "1");
    assertThat(((Element) accepted.getElementsByTagName("skipped").item(0)).getAttribute("message"))
        .isEqualTo("accepted by A. Roofer on 2024-05-31: =seen");
    assertThat(suite(GateModel.of(Takeoffs.boatHouse(), List.of("b.ifc")), Severity.VIOLATION).getAttribute("failures")).isEqualTo("0");
    Element broken = suite(GateModel.unreadable("c.ifc", "c.ifc:1:1: expected <a>"), Severity.WARNING);
    assertThat(broken.getAttribute("errors")).isEqualTo("1");
    NodeList errors = broken.getElementsByTagName("error");
    assertThat(((Element) errors.item(0)).getAttribute("message")).isEqualTo("c.ifc:1:1: expected <a>");
  }

  @Test
  void oneStatusAModel() {
    GateModel model = GateModel.of(Takeoffs.boatHouse(), List.of("b.ifc"));
    assertThat(model.status(Optional.empty())).isEqualTo(GateModel.Status.PASS);
    assertThat(model.status(Optional.of(Severity.WARNING))).isEqualTo(GateModel.Status.FAIL);
    assertThat(model.status(Optional.of(Severity.VIOLATION))).isEqualTo(GateModel.Status.PASS);
    assertThat(GateModel.of(ACCEPTED, List.of("b.ifc")).status(Optional.of(Severity.WARNING))).isEqualTo(GateModel.Status.PASS);
    assertThat(GateModel.unreadable("c", "x").status(Optional.empty())).isEqualTo(GateModel.Status.UNREADABLE);
  }
}

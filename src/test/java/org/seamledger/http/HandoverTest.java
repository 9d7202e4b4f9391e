package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.bcf.BcfReader;
import org.seamledger.http.setting.Options;
import org.seamledger.run.HandoverForm;
import org.seamledger.run.TakeoffAnalyzer;

/** Forms for other programs, from the service. */
class HandoverTest {

  @TempDir
  private Path folder;

  @Test
  void everyFormIsThere() throws Exception {
    Path model = Path.of("ifc-samples/gatehouse.ifc");
    try (TestService service =
        new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).models(List.of(model)))) {
      String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
      service.await(id);
      for (HandoverForm form : HandoverForm.values()) {
        HttpResponse<byte[]> answer = service.get("/api/analyses/" + id + "/" + form.file());
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.headers().firstValue("Content-Type")).contains(form.type());
        assertThat(answer.body()).hasSizeGreaterThan(1000);
        assertThat(service.get("/api/analyses/nothing/" + form.file()).statusCode()).isEqualTo(404);
      }
      Path file = Files.write(folder.resolve("f.bcf"), service.get("/api/analyses/" + id + "/findings.bcf").body());
      int findings = TestService.json(service.get("/api/analyses/" + id + "/ledger")).path("findings").size();
      assertThat(BcfReader.read(file, "f.bcf").topics()).hasSize(findings);
    }
  }

  private static TestService with(Path folder, String... models) throws Exception {
    return new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data"))
        .models(java.util.Arrays.stream(models).map(Path::of).toList()));
  }

  private static String analysis(TestService service) throws Exception {
    String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
    service.await(id);
    return id;
  }

  private static HttpResponse<byte[]> post(TestService service, String path, String type, String accept, byte[] body) throws Exception {
    return service.send("POST", path, body, "Content-Type", type, "Accept", accept);
  }

  /** The workbook in the units that were asked for, and the copy of each model, which is the command line's. */
  @Test
  void workbookAndCopies() throws Exception {
    try (TestService service = with(folder, "ifc-samples/infirmary/roof.ifc", "ifc-samples/infirmary/services.ifc")) {
      String path = "/api/analyses/" + analysis(service);
      HttpResponse<byte[]> book = service.get(path + "/workbook.xlsx?units=metric");
      assertThat(book.statusCode()).isEqualTo(200);
      try (var opened = new org.apache.poi.xssf.usermodel.XSSFWorkbook(new java.io.ByteArrayInputStream(book.body()))) {
        assertThat(opened.getSheet("Junctions").getRow(3).getCell(2).getStringCellValue()).isEqualTo("Length, m");
        assertThat(opened.getSheet("Junctions").getLastRowNum() - 3)
            .isEqualTo(TestService.json(service.get(path + "/ledger")).path("junctions").size());
      }
      assertThat(service.get(path + "/workbook.xlsx?units=cubits").statusCode()).isEqualTo(400);
      HttpResponse<byte[]> copy = service.get(path + "/copies/1");
      assertThat(copy.statusCode()).isEqualTo(200);
      assertThat(copy.headers().firstValue("Content-Disposition")).contains("attachment; filename=\"roof.ifc\"");
      byte[] before = Files.readAllBytes(Path.of("ifc-samples/infirmary/roof.ifc"));
      assertThat(copy.body().length).isGreaterThan(before.length);
      assertThat(new String(copy.body(), java.nio.charset.StandardCharsets.ISO_8859_1)).contains("IFCELEMENTASSEMBLY(");
      assertThat(service.get(path + "/copies/2").statusCode()).isEqualTo(200);
      for (String none : List.of("0", "3", "x", "-1", "99999999999")) {
        assertThat(service.get(path + "/copies/" + none).statusCode()).as(none).isEqualTo(404);
      }
    }
  }

  /** Topics that come back: one closed with a reason, one that is about nothing here; the same file twice changes nothing more. */
  @Test
  void takesTopicsThatComeBack() throws Exception {
    try (TestService service = with(folder, "ifc-samples/gatehouse.ifc")) {
      String path = "/api/analyses/" + analysis(service);
      byte[] sent = service.get(path + "/findings.bcf").body();
      byte[] closed = answered(sent, "Closed", "B. Reviewer", "2031-05-31T10:00:00Z", "water is led away");
      var first = TestService.json(post(service, path + "/topics", "application/octet-stream", "*/*", closed));
      assertThat(first.path("accepted").intValue()).isEqualTo(1);
      assertThat(first.path("reopened").intValue()).isZero();
      assertThat(first.path("unmatched")).isEmpty();
      var mark = accepted(service, path);
      assertThat(mark.path("acceptedBy").textValue()).isEqualTo("B. Reviewer");
      assertThat(mark.path("acceptedAt").textValue()).startsWith("2031-05-31");
      assertThat(mark.path("reason").textValue()).isEqualTo("water is led away");
      var again = TestService.json(post(service, path + "/topics", "application/octet-stream", "*/*", closed));
      assertThat(again.path("accepted").intValue() + again.path("comments").intValue()).isZero();
      byte[] opened = answered(sent, "ReOpened", "C. Builder", "2031-06-30T10:00:00Z", "it is not");
      var third = TestService.json(post(service, path + "/topics", "application/octet-stream", "*/*", opened));
      assertThat(third.path("reopened").intValue()).isEqualTo(1);
      assertThat(accepted(service, path).isMissingNode()).isTrue();
      Path file = Files.write(folder.resolve("back.bcf"), service.get(path + "/findings.bcf").body());
      assertThat(BcfReader.read(file, "back").topics().stream().flatMap(t -> t.remarks().stream()).map(r -> r.by() + ": " + r.text()))
          .as("comments go out again").contains("B. Reviewer: water is led away", "C. Builder: it is not");
      assertThat(post(service, path + "/topics", "application/octet-stream", "*/*", "no zip".getBytes()).statusCode()).isEqualTo(422);
    }
    try (TestService other = with(folder.resolve("other"), "ifc-samples/school.ifc")) {
      String path = "/api/analyses/" + analysis(other);
      byte[] strange = Files.readAllBytes(folder.resolve("back.bcf"));
      var outcome = TestService.json(post(other, path + "/topics", "application/octet-stream", "*/*", strange));
      assertThat(outcome.path("matched").intValue()).isZero();
      assertThat(outcome.path("unmatched").size()).isPositive();
      assertThat(outcome.path("unmatched").path(0).path("title").textValue()).isNotBlank();
    }
  }

  private static com.fasterxml.jackson.databind.JsonNode accepted(TestService service, String path) throws Exception {
    for (var mark : TestService.json(service.get(path + "/reviews")).path("findings")) {
      if (mark.path("state").textValue().equals("accepted")) {
        return mark;
      }
    }
    return com.fasterxml.jackson.databind.node.MissingNode.getInstance();
  }

  /** The file with its first topic answered, as a coordination tool writes it. */
  static byte[] answered(byte[] bcf, String status, String by, String when, String text) throws Exception {
    java.io.ByteArrayOutputStream bytes = new java.io.ByteArrayOutputStream();
    boolean done = false;
    try (var in = new java.util.zip.ZipInputStream(new java.io.ByteArrayInputStream(bcf));
        var out = new java.util.zip.ZipOutputStream(bytes)) {
      for (var entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        byte[] content = in.readAllBytes();
        if (!done && entry.getName().endsWith("markup.bcf")) {
          String xml = new String(content, java.nio.charset.StandardCharsets.UTF_8);
          String comment = "<Comments><Comment Guid=\"" + java.util.UUID.nameUUIDFromBytes(text.getBytes()) + "\"><Date>" + when
              + "</Date><Author>" + by + "</Author><Comment>" + text + "</Comment></Comment></Comments>";
          xml = xml.replaceFirst("TopicStatus=\"[^\"]*\"", "TopicStatus=\"" + status + "\"")
              .replaceFirst("(</CreationAuthor>)", "$1<ModifiedDate>" + when + "</ModifiedDate><ModifiedAuthor>" + by + "</ModifiedAuthor>")
              .replaceFirst("<Viewpoints>", comment + "<Viewpoints>");
          content = xml.getBytes(java.nio.charset.StandardCharsets.UTF_8);
          done = xml.contains(text);
        }
        out.putNextEntry(new java.util.zip.ZipEntry(entry.getName()));
        out.write(content);
      }
    }
    assertThat(done).isTrue();
    return bytes.toByteArray();
  }

  @Test
  void answersQueriesWithinLimits() throws Exception {
    try (TestService service = with(folder, "ifc-samples/gatehouse.ifc")) {
      String path = "/api/analyses/" + analysis(service) + "/query";
      byte[] query = Files.readAllBytes(Path.of("shapes/queries/lengths-by-kind.rq"));
      HttpResponse<byte[]> csv = post(service, path, "application/sparql-query", "text/csv", query);
      assertThat(csv.statusCode()).isEqualTo(200);
      assertThat(new String(csv.body())).contains("ridge").contains("hip");
      var json = TestService.json(post(service, path, "application/sparql-query", "application/sparql-results+json", query));
      assertThat(json.path("results").path("bindings").size()).isEqualTo(7);
      assertThat(post(service, path, "text/plain", "*/*", query).statusCode()).isEqualTo(415);
      assertThat(post(service, path, "application/sparql-query", "*/*", "SELECT".getBytes()).statusCode()).isEqualTo(400);
      for (String refused : List.of("SELECT * { SERVICE <http://localhost:1/> { ?s ?p ?o } }",
          "SELECT * FROM <file:///etc/passwd> { ?s ?p ?o }",
          "DELETE WHERE { ?s ?p ?o }")) {
        assertThat(post(service, path, "application/sparql-query", "*/*", refused.getBytes()).statusCode()).as(refused).isEqualTo(400);
      }
      byte[] crossed = "SELECT * { ?a ?b ?c . ?d ?e ?f . ?g ?h ?i }".getBytes();
      assertThat(post(service, path, "application/sparql-query", "*/*", crossed).statusCode()).as("too many rows").isEqualTo(422);
      assertThat(post(service, path, "application/sparql-query", "*/*", new byte[1 << 17]).statusCode()).isEqualTo(413);
    }
  }
}

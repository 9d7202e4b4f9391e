package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.ids.IdsProblem;
import org.seamledger.ids.check.DocumentResult;
import org.seamledger.ids.check.FailedElement;
import org.seamledger.ids.check.SpecificationResult;

/** What models say to IDS files, as JSON. */
public final class IdsJson {

  private final JsonOutput json;

  private IdsJson(JsonOutput json) {
    this.json = json;
  }

  public static void write(List<DocumentResult> results, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      IdsJson writer = new IdsJson(json);
      json.document(() -> json.objects("ids", results, writer::document));
    }
  }

  private void document(DocumentResult result) throws IOException {
    json.word("file", result.document().file());
    json.word("title", result.document().title());
    json.flag("valid", result.document().valid());
    json.words("problems", result.document().problems().stream().map(IdsProblem::text).toList());
    json.objects("specifications", result.specifications(), this::specification);
  }

  private void specification(SpecificationResult result) throws IOException {
    json.word("name", result.specification().name());
    json.word("identifier", result.specification().identifier());
    json.word("status", result.passes() ? "pass" : "fail");
    json.count("applicable", result.applicable());
    json.count("failed", result.elements().size());
    if (!result.reason().isEmpty()) {
      json.word("reason", result.reason());
    }
    json.objects("elements", result.elements(), this::element);
  }

  private void element(FailedElement element) throws IOException {
    json.word("globalId", element.globalId());
    json.word("class", element.ifcClass());
    json.word("name", element.name());
    json.word("reason", element.reason());
    json.word("model", element.model());
    json.count("instance", element.instance());
  }
}

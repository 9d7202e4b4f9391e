package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;

/**
 * What an office does on the page with a small hip roof, in a real browser with the program's own analysis: rules, findings, details, and
 * the whole way by keys alone. The roof is 10 m by 7 m at 4:12 each way: its four hips rise by atan(tan 26.57° · sin 45°) = 19.47°.
 */
@Tag("slow")
class OfficePageTest extends BrowserCase {

  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Path SAMPLE = Path.of("ifc-samples", "gatehouse.ifc");

  @TempDir
  private static Path folder;
  private static Server server;
  private static String analysis;

  @BeforeAll
  static void start() throws Exception {
    openBrowser(1440, 900);
    Path samples = Files.createDirectories(folder.resolve("samples").resolve("thumbnails")).getParent();
    Files.copy(SAMPLE, samples.resolve("gatehouse.ifc"));
    Files.copy(Path.of("ifc-samples", "thumbnails", "gatehouse.svg"), samples.resolve("thumbnails").resolve("gatehouse.svg"));
    server = Server.start(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).port(0).samples(samples));
    analysis = ask("POST", "/api/samples/gatehouse.ifc/analyses").path("id").asText();
    until(() -> ask("GET", "/api/analyses/" + analysis).path("state").asText().equals("done") ? true : null);
  }

  @AfterAll
  static void stop() {
    if (server != null) {
      server.close();
    }
  }

  @BeforeEach
  void clean() {
    emulateNothing();
    browser.get(server.url());
    js("localStorage.clear()");
  }

  private static JsonNode ask(String method, String path) {
    try {
      return MAPPER.readTree(HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(server.url()).resolve(path))
          .method(method, HttpRequest.BodyPublishers.noBody()).build(), HttpResponse.BodyHandlers.ofString()).body());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static void open(String tab) {
    browser.get(server.url() + "?analysis=" + analysis + "&tab=" + tab);
    see(".page.at-" + tab, "");
  }

  private static void limit(String id, String value) {
    with(input -> input.sendKeys(Keys.chord(Keys.CONTROL, "a"), value, Keys.TAB), "input[data-limit='" + id + "']", "");
  }

  @Test
  void aLimitIsTriedOnTheRoofAndTheSamplesAndNothingIsKept() {
    String rules = ask("GET", "/api/rules").path("hash").asText();
    String before = ask("GET", "/api/analyses/" + analysis).path("ledgerSha256").asText();
    open("rules");
    with(WebElement::click, ".rule summary", "Hip: convex and sloping");
    see(".rule[open] .requires", "inclination");
    see(".rule[open] .examples", "✓ holds: kinds/hip.ttl");
    see(".rule[open]", "4 places, 21.00 m");
    String id = (String) js("return [...document.querySelectorAll('.rule[open] .limit')].find(l => l.textContent.includes('Level line'))"
        + ".querySelector('input').dataset.limit");
    limit(id, "20");
    see(".edits", "1 limit changed");
    with(WebElement::click, ".edits button", "Try on this roof");
    see(".trial", "1 of 1 samples change");
    assertThat(see(".trial", "").getText()).as("a line that rises less than 20° is level now").contains("4 hip → ridge", "4 changed",
        "examples no longer hold");
    assertThat(ask("GET", "/api/rules").path("hash").asText()).as("the rules stay").isEqualTo(rules);
    assertThat(ask("GET", "/api/analyses/" + analysis).path("ledgerSha256").asText()).as("the result stays").isEqualTo(before);
    limit(id, "twenty");
    with(WebElement::click, ".edits button", "Try on this roof");
    see(".edits .refused", "kinds.ttl:");
    with(WebElement::click, ".edits button", "Take back");
    until(() -> browser.findElements(By.cssSelector(".edits.any")).isEmpty() ? true : null);
  }

  @Test
  void aSavedFolderComesBackWithItsExamplesAndATrialStops() throws IOException {
    Path zip = folder.resolve("shapes.zip");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
      out.putNextEntry(new ZipEntry("office/tests/kinds/hip.ttl"));
      out.write(Files.readAllBytes(Path.of("shapes", "tests", "kinds", "hip.ttl")));
      out.putNextEntry(new ZipEntry("office/kinds.ttl"));
      out.write(Files.readAllBytes(Path.of("shapes", "kinds.ttl")));
    }
    open("rules");
    see(".rule", "");
    hand("input[aria-label='Files of rules of your own']", zip);
    see(".edits", "files of your own: kinds.ttl, 1 example");
    // A sample that never answers: who waits for it may stop.
    js("const real = window.fetch;"
        + "window.fetch = (at, how) => String(at).includes('/api/samples/') ? new Promise(() => {}) : real(at, how)");
    with(WebElement::click, ".edits button", "Try on this roof");
    assertThat(see(".trial", "On the samples").getText()).contains("examples of the rules hold");
    with(WebElement::click, ".trial .stop", "Stop");
    see(".trial", "Stopped: none of the samples was tried.");
    gone(".trial .stop");
    with(WebElement::click, ".edits button", "Take back");
    gone(".edits.any");
  }

  @Test
  void aBrokenFileIsRefusedWithLineAndReason() throws IOException {
    Path broken = Files.writeString(folder.resolve("kinds.ttl"),
        Files.readString(Path.of("shapes", "kinds.ttl")).replace("sl:inclinationDegrees ; sh:maxExclusive 0.5",
            "sl:inclination ; sh:maxExclusive 0.5"));
    long line = Files.readAllLines(broken).stream().takeWhile(l -> !l.contains("sl:inclination ;")).count() + 1;
    open("rules");
    see(".rule", "");
    hand("input[aria-label='Files of rules of your own']", broken);
    assertThat(see(".edits .refused", "kinds.ttl").getText()).contains("kinds.ttl:" + line + ":", "there is no fact inclination");
    assertThat(browser.findElements(By.cssSelector(".edits.any"))).isEmpty();
  }

  @Test
  void findingsAreATableThatIsFoundFromTheLedgersRows() {
    open("findings");
    with(WebElement::click, ".tools .view-switch button", "Table");
    int all = browser.findElements(By.cssSelector(".finding-table tbody tr:not(.group)")).size();
    assertThat(all).isEqualTo(ask("GET", "/api/analyses/" + analysis + "/outline").path("findings").size());
    Object was = js("return document.querySelector('.sheet').getAttribute('viewBox')");
    with(WebElement::click, ".finding-table tr.warning td.num .link", "1");
    until(() -> js("return document.querySelector('.sheet .halo path.place') !== null") == Boolean.TRUE ? true : null);
    until(() -> was.equals(js("return document.querySelector('.sheet').getAttribute('viewBox')")) ? null : true);
    assertThat(see(".finding-table td.element", "Ifc").getText()).as("GlobalId to copy").containsPattern("[0-9A-Za-z_$]{22}")
        .contains("Copy");
    with(WebElement::click, "th[aria-sort] button", "Who acts");
    until(() -> browser.findElements(By.cssSelector("th[aria-sort=ascending]")).size() == 1 ? true : null);
    open("ledger");
    with(WebElement::click, ".canvas button.found", "");
    see(".chip", "At ");
    int some = browser.findElements(By.cssSelector(".finding-table tbody tr:not(.group)")).size();
    assertThat(some).isBetween(1, all - 1);
    js("document.querySelector('.finding-table thead input').click()");
    with(form -> {
      List<WebElement> fields = form.findElements(By.tagName("input"));
      fields.get(0).sendKeys("agreed on site");
      fields.get(1).clear();
      fields.get(1).sendKeys("Ida", Keys.ENTER);
    }, "form.several", "picked");
    until(() -> browser.findElements(By.cssSelector(".finding-table tr.accepted")).size() == some ? true : null);
    see(".finding-table td.state", "accepted by Ida");
  }

  /** A finding's title is short, and its numbers are of one system: 800 mm are 31.5 in. */
  @Test
  void numbersInTextsFollowTheSwitchOfUnits() {
    open("findings");
    assertThat(see(".cause b", "A penetration").getText()).contains("800 mm wide").doesNotContain(" in)", ":", ";");
    with(e -> e.sendKeys("US"), "select[aria-label=Units]", "");
    see(".cause b", "31.5 in wide");
    open("order");
    with(WebElement::click, ".order-table button", "How");
    assertThat(see(".order-table tr.how", "").getText()).contains("in").doesNotContain(" mm", " m²");
    with(e -> e.sendKeys("Metric"), "select[aria-label=Units]", "");
    with(WebElement::click, ".order-table button", "How");
    assertThat(see(".order-table tr.how", "").getText()).contains(" mm").doesNotContain(" in", " ft");
    assertThat((Long) js("return document.querySelector('.order-table tbody tr').offsetHeight")).as("a panel takes one line")
        .isLessThan(40L);
  }

  @Test
  void nodesAreFoldedInGroupsByKind() {
    open("nodes");
    see(".node-group summary", "");
    int nodes = ask("GET", "/api/analyses/" + analysis + "/outline").path("nodes").size();
    assertThat(browser.findElements(By.cssSelector(".node-group tr"))).as("folded").isEmpty();
    assertThat(
        ((Number) js("return [...document.querySelectorAll('.node-group summary small')].reduce((t, e) => t + Number(e.textContent), 0)"))
            .intValue())
        .as("counts of the groups").isEqualTo(nodes);
    with(WebElement::click, ".node-group summary", "");
    with(WebElement::click, ".node-group[open] tbody .link", "F");
    see(".detail-panel .drawing-section", "");
    see(".node-group[open] tr.selected", "N");
  }

  private static String ridge() {
    String ridge = "";
    for (JsonNode j : ask("GET", "/api/analyses/" + analysis + "/outline").path("junctions")) {
      ridge = j.path("kind").asText().equals("ridge") ? j.path("id").asText() : ridge;
    }
    return ridge;
  }

  @Test
  void aSectionsKeyStandsBesideItInSight() {
    emulate(1440, 900);
    browser.get(server.url() + "?analysis=" + analysis + "&selected=" + ridge());
    see(".section-key li", "");
    assertThat(js("return document.querySelector('.section-key li:last-child').getBoundingClientRect().bottom"
        + " <= document.querySelector('.detail-panel').getBoundingClientRect().bottom")).as("the last of its key").isEqualTo(true);
    assertThat((Boolean) js("return [...document.querySelectorAll('.section-key li')].every(l => l.title.startsWith(l.textContent))"))
        .as("all words are a pointer away").isTrue();
    assertThat((List<?>) js("return [...document.querySelectorAll('.canvas .line:not(.group) > div')]"
        + ".filter(d => d.scrollWidth > d.clientWidth && !d.querySelector('.unseen')).map(d => d.textContent)")).as("names that are cut")
        .isEmpty();
  }

  @Test
  void detailsThatFitComeFirstWithASectionOfEach() {
    String ridge = ridge();
    browser.get(server.url() + "?analysis=" + analysis + "&selected=" + ridge);
    with(WebElement::click, ".review summary", "Manual override");
    see(".detail-card[data-detail=ridge-unvented]", "fits this line");
    assertThat((String) js(
        "return document.querySelector('.review optgroup').label + ': ' + document.querySelector('.review optgroup option').value"))
        .isEqualTo("Fits this line: ridge-unvented");
    until(() -> js("return [...document.querySelectorAll('.tiny-section')].every(t => t.shadowRoot?.querySelector('svg path'))")
        == Boolean.TRUE
            ? true : null);
    assertThat(see(".detail-card[data-detail=ridge-vented]", "").getText()).contains("ridge vented", "false");
    with(WebElement::click, ".detail-card[data-detail=ridge-vented]", "");
    assertThat((String) js("return [...document.querySelectorAll('.review select')].pop().value")).isEqualTo("ridge-vented");
  }

  @Test
  void startPageShowsPicturesOfRoofs() {
    browser.get(server.url());
    see(".card", "gatehouse.ifc");
    until(() -> js("return [...document.querySelectorAll('img.thumbnail')].length > 1 && [...document.querySelectorAll('img.thumbnail')]"
        + ".every(i => i.complete && i.naturalWidth === 160)") == Boolean.TRUE ? true : null);
  }

  /** Goes on by the tabulator until an element has the keyboard; each stop on the way is marked so that it can be seen. */
  private static void tabTo(String css, String text) {
    List<String> unseen = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      new Actions(browser).sendKeys(Keys.TAB).perform();
      String at = (String) js("const e = document.activeElement; if (e === document.body) return 'body'; const s = getComputedStyle(e);"
          + "return (e.matches(arguments[0]) && e.textContent.includes(arguments[1]) ? 'there' : 'no') + (s.outlineStyle === 'none' || "
          + "parseFloat(s.outlineWidth) < 1 ? ' unseen ' + e.outerHTML.slice(0, 120) : '')", css, text);
      if (at.contains("unseen")) {
        unseen.add(at);
      }
      if (at.startsWith("there")) {
        assertThat(unseen).as("stops that nobody sees").isEmpty();
        return;
      }
    }
    throw new AssertionError("no way by keys to " + css + " " + text);
  }

  private static void press(CharSequence... keys) {
    for (CharSequence key : keys) {
      new Actions(browser).sendKeys(key).perform();
    }
  }

  @Test
  void theEstimatorsWholeWayGoesByKeysAlone() {
    browser.get(server.url());
    see(".card", "gatehouse.ifc");
    tabTo(".card", "gatehouse.ifc");
    press(Keys.ENTER);
    see(".canvas .line", "");
    tabTo(".rows", "");
    press(Keys.ARROW_DOWN);
    see(".detail-panel h2", " m");
    press(Keys.ENTER);
    until(() -> js("return document.activeElement.matches('.detail-panel')") == Boolean.TRUE ? true : null);
    tabTo(".states button", "Checked");
    press(Keys.ENTER);
    see(".canvas .state.checked", "");
    press(Keys.ESCAPE);
    until(() -> js("return !document.querySelector('.line[aria-selected=true]')") == Boolean.TRUE ? true : null);
    tabTo(".tab", "Findings");
    press(Keys.ENTER);
    see(".at-findings", "Findings:");
    tabTo(".tab", "Order");
    press(Keys.ENTER);
    see(".order-table", "");
    tabTo("a.button", "Order as CSV");
    assertThat(browser.switchTo().activeElement().getDomAttribute("href")).endsWith("/order.csv");
    tabTo("a.button", "Submittal as PDF");
  }
}

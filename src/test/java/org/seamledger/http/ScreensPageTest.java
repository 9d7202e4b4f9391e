package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.WebElement;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;

/** Every screen of the page with one roof, by what holds for all of them: barriers, room, and what its drawings show. */
@Tag("slow")
class ScreensPageTest extends BrowserCase {

  private static final String NAME = "gatehouse-of-the-northern-yard-with-all-its-outbuildings-2026-03-14.ifc";
  private static final List<String> TABS =
      List.of("ledger", "nodes", "findings", "order", "estimates", "revisions", "sequence", "site", "rules", "notes");
  /** Boxes that scroll up and down within one that does: a wheel over the inner one would do something else than it seems. */
  private static final String NESTED = """
      const scrolls = e => e.scrollHeight > e.clientHeight + 1 && /auto|scroll/.test(getComputedStyle(e).overflowY) && e.checkVisibility();
      return [...document.querySelectorAll('main *')].filter(scrolls)
        .filter(e => { for (let p = e.parentElement; p; p = p.parentElement) if (scrolls(p)) return true; return false; })
        .map(e => e.tagName + ' ' + e.className)""";

  @TempDir
  private static Path folder;
  private static TestService service;
  private static String analysis;
  private static String ridge;

  @BeforeAll
  static void open() throws IOException {
    openBrowser(1440, 900);
    Path samples = Files.createDirectories(folder.resolve("samples"));
    Path model = Files.copy(Path.of("ifc-samples", "gatehouse.ifc"), samples.resolve(NAME));
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).models(List.of(model))
        .samples(samples));
    analysis = TestService.json(service.get("/api/start")).path("analysis").asText();
    service.await(analysis);
    TestService.json(service.get("/api/analyses/" + analysis + "/outline")).path("junctions")
        .forEach(j -> ridge = j.path("kind").asText().equals("ridge") ? j.path("id").asText() : ridge);
  }

  @AfterAll
  static void stop() {
    if (service != null) {
      service.close();
    }
  }

  private static void go(String query) {
    browser.get(service.server.url() + "?analysis=" + analysis + query);
    see(".page h2, .canvas .line");
  }

  /** Goes on to a page of the book without loading everything anew, and waits for what it fetches. */
  private static void turnTo(String tab) {
    js("return import('/js/state.js').then(m => m.set({tab: arguments[0], pane: 'book'}))".replace("arguments[0]", "'" + tab + "'"));
    see(".page.at-" + tab);
    see(switch (tab) {
      case "ledger" -> ".canvas .line";
      case "rules" -> ".rule";
      case "sequence" -> ".at-sequence h2";
      case "site" -> ".at-site table";
      default -> ".page.at-" + tab + " h2";
    });
  }

  private static void theme(String name) {
    js("return import('/js/state.js').then(m => m.set({theme: arguments[0]}))".replace("arguments[0]", "'" + name + "'"));
    untilTrue("return document.documentElement.dataset.theme === arguments[0]", name);
  }

  /** Light with all that axe knows; what is dark differs by its colours alone. */
  private static void checked(String where) {
    theme("light");
    barriers(where + ", light");
    theme("dark");
    contrasts(where + ", dark");
  }

  @Test
  void noScreenHasASeriousBarrier() {
    for (int wide : List.of(1280, 390, 1920)) {
      emulate(wide, 900);
      go("");
      for (String tab : TABS) {
        turnTo(tab);
        if (tab.equals("rules")) {
          with(WebElement::click, ".rule summary");
          see(".rule[open] .requires");
        }
        checked(tab + " at " + wide);
      }
    }
  }

  @Test
  void whatOpensOverAScreenHasNoSeriousBarrier() {
    for (int wide : List.of(1280, 390, 1920)) {
      emulate(wide, 900);
      go("&view=3d&selected=" + ridge);
      js("return import('/js/state.js').then(m => m.set({pane: 'detail'}))");
      see(".detail-panel .drawing-section");
      with(WebElement::click, ".review summary", "Manual override");
      see(".detail-card");
      checked("a junction with details to choose from, at " + wide);
      with(WebElement::click, ".detail-panel .drawing-section");
      see("dialog[open] .whole-sheet");
      checked("a whole section, at " + wide);
      with(WebElement::click, "dialog[open] button", "Close");
      turnTo("findings");
      with(WebElement::click, ".tools .view-switch button", "Cards");
      with(WebElement::click, ".notes .warning .doings button", "Accept");
      see("form.inline");
      with(WebElement::click, ".tools .view-switch button", "Table");
      see(".finding-table tbody tr");
      checked("findings as a table, at " + wide);
      js("return import('/js/state.js').then(m => m.set({pane: 'roof'}))");
      with(WebElement::click, ".roof .drawing-tools button", "Cut the view");
      see(".view-cut");
      checked("the roof with its cut, at " + wide);
    }
    browser.get(service.server.url() + "?analysis=none");
    see(".card");
    emulate(390, 900);
    barriers("start at 390");
  }

  /** From above and from a low side, along parallel lines: 50 pixels a metre, the middle of the roof in the middle of 1000 by 600. */
  private static final String NAMES = """
      return Promise.all([import('three'), import('/js/roof3d/labels.js'), import('/js/state.js'), import('/js/ledger/geometry.js')])
        .then(([THREE, {drawLabels}, {state}, {toSegment}]) => {
          const {lo, hi} = state.ledger.box, local = p => p.map((x, i) => x - (lo[i] + hi[i]) / 2), root = document.createElement('div');
          const camera = new THREE.OrthographicCamera(-10, 10, 6, -6, -100, 100);
          camera.up.set(0, 0, 1);
          camera.position.set(...arguments[0]);
          camera.lookAt(0, 0, 0);
          camera.updateMatrixWorld();
          drawLabels(root, {canvas: {clientWidth: 1000, clientHeight: 600}, camera}, local);
          const seen = p => new THREE.Vector3(...local(p)).project(camera).toArray().map((x, i) => i ? (1 - x) * 300 : (1 + x) * 500);
          const off = e => Math.min(...state.ledger.junctions.flatMap(j => j.path.slice(1).map((b, i) =>
            toSegment(parseFloat(e.style.left), parseFloat(e.style.top), seen(j.path[i]), seen(b)))));
          return [...root.querySelectorAll('.face-tag')].map(off);
        })""";

  @Test
  void namesOfFacesInThreeDimensionsLieOverNoLine() {
    emulate(1280, 900);
    go("&view=plan");
    assertThat((List<?>) js(NAMES, List.of(0, -0.01, 5))).as("from above: all four faces").hasSize(4)
        .allSatisfy(d -> assertThat(((Number) d).doubleValue()).isGreaterThanOrEqualTo(8));
    assertThat((List<?>) js(NAMES, List.of(1, -5, 1.8))).as("the north face is hardly seen").hasSizeBetween(1, 3)
        .allSatisfy(d -> assertThat(((Number) d).doubleValue()).isGreaterThanOrEqualTo(8));
  }

  @Test
  void theFootOfATelephoneIsOneLine() {
    emulate(390, 844);
    go("");
    assertThat(((Number) js("return document.querySelector('#foot').getBoundingClientRect().height")).doubleValue()).isLessThan(40);
  }

  @Test
  void smallAndMagnifiedScreensScrollOneThingAtATime() {
    for (int[] size : new int[][] {{1280, 720}, {720, 450}, {390, 844}}) {
      emulate(size[0], size[1]);
      go("&selected=" + ridge);
      for (String tab : TABS) {
        turnTo(tab);
        String where = tab + " at " + size[0] + " × " + size[1];
        assertThat((List<?>) js(NESTED)).as(where).isEmpty();
        assertThat(js("return document.documentElement.scrollWidth > innerWidth || document.documentElement.scrollHeight > innerHeight"))
            .as(where).isEqualTo(false);
      }
      js("return import('/js/state.js').then(m => m.set({pane: 'detail'}))");
      see(".detail-panel h2");
      assertThat((List<?>) js(NESTED)).as("the junction at " + size[0] + " × " + size[1]).isEmpty();
    }
    turnTo("findings");
    with(WebElement::click, ".tools .view-switch button", "Table");
    see(".finding-table tbody tr");
    assertThat(js("return document.documentElement.scrollWidth <= innerWidth")).as("the wide table scrolls in its own box").isEqualTo(true);
    with(WebElement::click, ".tools .view-switch button", "Cards");
    browser.get(service.server.url() + "?analysis=none");
    see(".card");
    assertThat((List<?>) js("return [...document.querySelectorAll('main, main *')].filter(e => e.scrollWidth > e.clientWidth + 1"
        + " && /auto|scroll/.test(getComputedStyle(e).overflowX) && e.checkVisibility()).map(e => e.tagName + ' ' + e.className)"))
        .as("start, sideways").isEmpty();
  }

  @Test
  void theHeadKeepsToOneRowWhateverTheModelIsCalled() {
    for (int wide : List.of(1280, 1440, 1920)) {
      emulate(wide, 900);
      go("");
      assertThat((Long) js("return document.querySelector('#head').offsetHeight")).as("at " + wide).isLessThan(60L);
      assertThat(js("return document.querySelector('.tab:last-child').getBoundingClientRect().right <= document.querySelector('.switches')"
          + ".getBoundingClientRect().left && document.querySelector('.switches').getBoundingClientRect().right <= innerWidth"))
          .as("all of it in sight at " + wide).isEqualTo(true);
    }
    emulate(1280, 900);
    untilTrue("const h = document.querySelector('.sheet-title h1'); return h.scrollWidth > h.clientWidth");
    assertThat(see(".sheet-title h1").getDomAttribute("title")).as("the whole name").startsWith(NAME);
  }

  /** What a layer adds to the picture, in its own colour; the colours are those of base.css, which no light changes. */
  @Test
  void layersAreSeenInThreeDimensions() throws IOException {
    emulate(1440, 900);
    go("&view=3d");
    theme("light");
    until(() -> drawn() > 2);
    with(WebElement::click, ".roof .layer[aria-pressed=true]", "Nodes");
    added("Nodes", 0x22292e);
    added("Water", 0x6fdcf7);
    added("Movement", 0xc2410c);
    theme("dark");
    added("Water", 0xa5efff);
  }

  private static long drawn() {
    return ((Number) js("return Number(document.querySelector('.drawing.roof')?.dataset.drawn ?? 0)")).longValue();
  }

  private static void added(String layer, int rgb) {
    see(".roof .layer[aria-pressed=false]", layer);
    long before = until(() -> steady(rgb));
    with(WebElement::click, ".roof .layer", layer);
    until(() -> pixels(see(".drawing.roof canvas"), rgb) > before + 40);
    with(WebElement::click, ".roof .layer[aria-pressed=true]", layer);
    until(() -> Math.abs(pixels(see(".drawing.roof canvas"), rgb) - before) < 10);
  }

  /** Pixels near a colour once two pictures have the same number of them. */
  private static Long steady(int rgb) {
    long first = pixels(see(".drawing.roof canvas"), rgb);
    return pixels(see(".drawing.roof canvas"), rgb) == first ? first : null;
  }
}

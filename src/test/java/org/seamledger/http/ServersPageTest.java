package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;
import org.seamledger.http.setting.Options;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ServedProject;
import org.seamledger.watch.MemoryServers;

/** Models from servers on the page, in a real browser; the servers are kept in memory. */
@Tag("slow")
class ServersPageTest extends BrowserCase {

  private static final int WIDTH = 1900;
  private static final int HEIGHT = 1000;

  @TempDir
  private Path data;
  private final MemoryServers servers = new MemoryServers();
  private final MemoryServers.Shelf office = servers.add("office");
  private final MemoryServers.Shelf partner = servers.add("partner");
  private final ServedProject school = office.addProject("School <b>& yard</b>");
  private Server server;

  @BeforeAll
  static void open() {
    openBrowser(WIDTH, HEIGHT);
  }

  @BeforeEach
  void start() {
    office.addProject("Barn");
    checkIn("house");
    checkIn("house pipe=no");
    server = Server.start(Options.of(new FixtureAnalyzer(), data).port(0).servers(servers).watch(Duration.ofMillis(300)));
    browser.get(server.url());
    see(".served");
  }

  @AfterEach
  void stop() {
    server.close();
  }

  private void checkIn(String words) {
    office.checkIn(school, words, words.getBytes(StandardCharsets.UTF_8));
  }

  /** Chooses in the field with that label what begins with these words. */
  private static void choose(String label, String words) {
    until(() -> {
      WebElement field = see(".served .field", label);
      Select select = new Select(field.findElement(By.tagName("select")));
      List<String> texts = select.getOptions().stream().map(WebElement::getText).filter(t -> t.startsWith(words)).toList();
      if (texts.isEmpty()) {
        return null;
      }
      select.selectByVisibleText(texts.get(0));
      return true;
    });
  }

  @Test
  void aCoordinatorChoosesARevisionAndGetsItsLedger() throws IOException {
    choose("Server", "office");
    choose("Project", "School <b>& yard</b> (IFC4)");
    WebElement revision = see(".served .field", "Revision").findElement(By.tagName("select"));
    assertThat(new Select(revision).getOptions()).as("the newest stands first").extracting(o -> o.getText().substring(0, 2))
        .containsExactly("2,", "1,");
    choose("Revision", "1,");
    picture("servers-choose");
    with(WebElement::click, ".served button.main", "Analyse this revision");
    see(".canvas .line");
    assertThat(browser.getTitle()).isEqualTo("School <b>& yard</b> · seamledger");
    assertThat(browser.findElements(By.cssSelector("b"))).as("names are text").noneMatch(b -> b.getText().contains("yard"));
  }

  @Test
  void aWatchedProjectShowsItsRevisionsAsTheyAreAnswered() throws IOException {
    choose("Server", "office");
    choose("Project", "School");
    with(WebElement::click, ".served button", "Watch this project");
    see(".served td", "answered");
    assertThat(textOf(".served tbody tr")).contains("School <b>& yard</b>", "office", "2,", "house pipe=no");
    checkIn("house width=12");
    see(".served tbody tr", "3,");
    see(".served td", "answered");
    checkIn("unreadable");
    see(".served tbody tr", "4,");
    see(".served td", "answered");
    checkIn("house width=10");
    see(".served tbody tr", "5,");
    see(".served td", "answered");
    picture("servers-watched");
    barriers("the start page with servers");
    with(WebElement::click, ".served tbody button.link", "5,");
    see(".canvas .line");
    with(WebElement::click, ".tab", "Revisions");
    assertThat(until(() -> see("table.plain", "ready")).getText()).as("revisions 2 to 5 of the server")
        .contains("Open 2", "5, open now", "failed")
        .doesNotContain("1, open now");
    browser.get(server.url());
    with(WebElement::click, ".served button[aria-label^='Stop watching']");
    until(() -> browser.findElements(By.cssSelector(".served table")).isEmpty() ? true : null);
  }

  /** Analyses a revision from the start page and waits for its ledger. */
  private void analyse(String revision) {
    browser.get(server.url());
    see(".served");
    choose("Server", "office");
    choose("Project", "School");
    choose("Revision", revision);
    with(WebElement::click, ".served button.main", "Analyse this revision");
    see(".canvas .line");
  }

  private static Select picker(String label) {
    return new Select(see(".pair .field", label).findElement(By.tagName("select")));
  }

  private static void pick(String label, String words) {
    until(() -> {
      Select select = picker(label);
      List<String> texts = select.getOptions().stream().map(WebElement::getText).filter(t -> t.startsWith(words)).toList();
      if (texts.isEmpty()) {
        return null;
      }
      select.selectByVisibleText(texts.get(0));
      return true;
    });
  }

  @Test
  void anyTwoRevisionsAreComparedByTheServersNumbersAndTheLinkKeepsIt() throws IOException {
    checkIn("house width=12");
    checkIn("house width=13");
    for (String number : List.of("4,", "1,", "2,")) {
      analyse(number);
    }
    assertThat(textOf(".sheet-title .revision")).isEqualTo("Revision 2 (house pipe=no)");
    with(WebElement::click, ".tab", "Revisions");
    assertThat(textOf(".changed h3")).startsWith("Since revision 1 (house): 0 added, 1 gone");
    List<String> rows = browser.findElements(By.cssSelector(".at-revisions table[class=plain] tbody tr")).stream().map(WebElement::getText)
        .limit(3).toList();
    assertThat(rows.get(0)).startsWith("Open 1 house 3/1/2026").contains("ready");
    assertThat(rows.get(1)).startsWith("2, open now house pipe=no");
    assertThat(rows.get(2)).startsWith("Open 4 house width=13");
    pick("Compare revision", "4");
    see(".changed h3", "Against revision 4 (house width=13), which is later: ");
    picture("revisions-later");
    pick("with revision", "1 ");
    see(".sheet-title .revision", "Revision 1 (house)");
    see(".changed h3", "Against revision 4 (house width=13), which is later: ");
    pick("with revision", "4 ");
    see(".sheet-title .revision", "Revision 4 (house width=13)");
    assertThat(textOf(".changed h3", "Since")).startsWith("Since revision 1 (house): ");
    assertThat(browser.getCurrentUrl()).contains("tab=revisions", "against=");
    barriers("the revisions of a server's project");
    browser.get(browser.getCurrentUrl());
    assertThat(textOf(".changed h3")).startsWith("Since revision 1 (house): ");
    assertThat(picker("Compare revision").getFirstSelectedOption().getText()).startsWith("1 · house · 3/1/2026");
    assertThat(see(".pair a").getAttribute("href")).contains("/changes.txt?from=");
    picture("revisions-compared");
    browser.manage().window().setSize(new Dimension(500, 900));
    try {
      picture("revisions-narrow");
    } finally {
      browser.manage().window().setSize(new Dimension(WIDTH, HEIGHT));
    }
  }

  @Test
  void revisionsOfTwoServersAndAFileAreAnalysedTogether() throws IOException {
    ServedProject pipes = partner.addProject("Pipes");
    partner.checkIn(pipes, "as built", "house pipe=no".getBytes(StandardCharsets.UTF_8));
    choose("Server", "office");
    choose("Project", "School");
    with(WebElement::click, ".served button", "Add to an analysis of several");
    choose("Revision", "1,");
    with(WebElement::click, ".served button", "Add to an analysis of several");
    assertThat(textOf(".chosen")).as("another revision of the project takes its place").contains("revision 1 (house), from office")
        .doesNotContain("revision 2");
    choose("Server", "partner");
    choose("Project", "Pipes");
    with(WebElement::click, ".served button", "Add to an analysis of several");
    Path file = Files.writeString(data.resolve("hatch.ifc"), "house width=11");
    hand(".together input[type=file]", file);
    see(".chosen li", "hatch.ifc");
    barriers("models chosen for one analysis");
    picture("servers-together");
    with(WebElement::click, ".together button.main", "Analyse these 3 models together");
    see(".canvas .line");
    assertThat(textOf(".sheet-title")).contains("hatch.ifc + School <b>& yard</b> + Pipes", "Revision 1");
  }

  @Test
  void aServerThatFailsIsSaidInWordsAndTheRestOfThePageWorks() throws IOException {
    partner.before = call -> {
      throw new ModelServerException(Reason.REFUSED, "partner refuses: wrong user or password");
    };
    choose("Server", "partner");
    assertThat(textOf(".served [role=alert]", "partner")).contains("Nothing came from server partner", "wrong user or password");
    picture("servers-trouble");
    choose("Server", "office");
    see(".served .field", "Project");
    assertThat(browser.findElement(By.cssSelector(".served [role=alert]")).getText()).isEmpty();
  }

  @Test
  void aWatchThatFailsInsideTheProgramIsSaidOnThePageUntilItWorksAgain() throws IOException {
    choose("Server", "office");
    choose("Project", "School");
    with(WebElement::click, ".served button", "Watch this project");
    see(".served td", "answered");
    office.before = call -> {
      throw new NoClassDefFoundError("org/example/Missing");
    };
    assertThat(textOf("#health .trouble")).contains("A part of this service does not work",
        "watching server office fails inside the program",
        "It is tried again by itself");
    assertThat(textOf(".served td", "watching server office fails")).doesNotContain("Missing");
    picture("servers-watch-fails");
    barriers("the start page with a fault");
    office.before = call -> {};
    until(() -> browser.findElements(By.cssSelector("#health .trouble")).isEmpty() ? true : null);
  }

  @Test
  void withoutAListThereIsNoPanel() {
    server.close();
    server = Server.start(Options.of(new FixtureAnalyzer(), data).port(0));
    browser.get(server.url());
    see(".drop");
    assertThat(browser.findElements(By.cssSelector(".served"))).isEmpty();
  }

}

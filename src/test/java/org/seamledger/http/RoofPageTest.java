package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WindowType;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;

/** A day on a roof with a telephone that loses its connection, in a real browser. */
@Tag("slow")
class RoofPageTest extends BrowserCase {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  @TempDir
  private Path folder;
  private Server server;
  private String analysis;
  private String token;

  @BeforeAll
  static void open() {
    openBrowser(500, 844);
  }

  @BeforeEach
  void start() throws Exception {
    browser.executeCdpCommand("Emulation.setDeviceMetricsOverride",
        Map.of("width", 390, "height", 844, "deviceScaleFactor", 2, "mobile", true));
    server = Server.start(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).port(0)
        .models(List.of(Path.of("ifc-samples", "gatehouse.ifc"))));
    analysis = ask("GET", "/api/start", "").path("analysis").asText();
    until(() -> ask("GET", "/api/analyses/" + analysis, "").path("state").asText().equals("done") ? true : null);
    String project = ask("GET", "/api/analyses/" + analysis, "").path("project").asText();
    token = ask("POST", "/api/projects/" + project + "/links", "{\"scope\":\"sign\",\"name\":\"crew\",\"days\":2}").path("token").asText();
  }

  /** The next telephone has nothing of this one's: no work that waits, no worker, no page that is kept. */
  @AfterEach
  void stop() {
    network(true);
    browser.get("about:blank");
    browser.executeCdpCommand("Storage.clearDataForOrigin",
        Map.of("origin", server.url().replaceFirst("/$", ""), "storageTypes", "all"));
    server.close();
  }

  private JsonNode ask(String method, String path, String body) {
    try {
      return MAPPER.readTree(HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(server.url()).resolve(path))
          .header("Content-Type", "application/json").method(method, HttpRequest.BodyPublishers.ofString(body)).build(),
          HttpResponse.BodyHandlers.ofString()).body());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private JsonNode record() {
    return ask("GET", "/api/analyses/" + analysis + "/record.json", "");
  }

  private static void network(boolean isOn) {
    browser.executeCdpCommand("Network.enable", Map.of());
    browser.executeCdpCommand("Network.emulateNetworkConditions",
        Map.of("offline", !isOn, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
  }

  /** Goes to the page by its link, and waits until it can do without a connection: files, sheets and drawings are kept. */
  private void openRoof() {
    browser.get(server.url() + "roof/#" + token);
    see("#link", "all sent");
    until(() -> browser.findElements(By.cssSelector(".roof-plan .line")).isEmpty() ? null : true);
    js("return navigator.serviceWorker.ready.then(() => true)");
    until(() -> (Boolean) js("return caches.keys().then(k => Promise.all(k.map(c => caches.open(c).then(x => x.keys()))))"
        + ".then(all => all.flat().length > 15)") ? true : null);
  }

  private void name(String name) {
    js("document.querySelectorAll('#ways button')[document.querySelectorAll('#ways button').length - 1].click()");
    with(field -> field.sendKeys(name + "\t"), "#who");
    until(() -> (Boolean) js("return document.querySelector('#who').value === arguments[0]", name) ? true : null);
  }

  /** Ticks so many things, place by place as the list has them, and photographs some; each is awaited on the telephone's disk. */
  private void work(int ticks, int photos) {
    js("""
        window.done = false;
        (async () => {
          const roof = await import('/js/phone/roof.js'), events = await import('/js/phone/events.js');
          const queue = await import('/js/phone/queue.js');
          let ticks = arguments[0], photos = arguments[1];
          for (const place of roof.places()) for (const item of place.items) {
            if (ticks-- > 0) await events.tick(place, item);
          }
          for (const place of roof.places().slice(0, photos)) {
            const canvas = document.createElement('canvas');
            canvas.width = 400 + photos; canvas.height = 300;
            canvas.getContext('2d').fillRect(0, 0, 50 * photos--, 80);
            await events.photograph(place, null, await new Promise(r => canvas.toBlob(r, 'image/jpeg')), false);
          }
          window.done = true;
        })();
        """, ticks, photos);
    until(() -> (Boolean) js("return window.done") ? true : null);
  }

  private static Set<String> of(JsonNode record, String kind) {
    Set<String> found = new HashSet<>();
    record.path("chain").forEach(e -> {
      if (e.path("kind").asText().equals(kind)) {
        found.add(kind.equals("photo") ? e.path("id").asText() : e.path("point").asText());
      }
    });
    return found;
  }

  /** All work of the order is on one of the days, in words; plan and the day's work share the first screen. */
  private void dayByDay() {
    JsonNode sequence = ask("GET", "/api/analyses/" + analysis + "/sequence", "");
    see(".day-head h2", "Day 1 of " + sequence.path("days").size());
    see(".day h3", "Underlayment");
    assertThat((Boolean) js("return document.querySelector('.day h3').getBoundingClientRect().bottom < 770")).as("in sight").isTrue();
    Set<String> seen = new HashSet<>();
    for (int day = 1; day <= sequence.path("days").size(); day++) {
      see(".day-head h2", "Day " + day + " of");
      ((List<?>) js("return [...document.querySelectorAll('.day .places b, .day-face')].map(e => e.textContent)"))
          .forEach(e -> seen.add(e.toString()));
      js("document.querySelectorAll('.day-head button')[1].click()");
    }
    assertThat(seen).anyMatch(n -> n.startsWith("Hip 4")).anyMatch(n -> n.startsWith("Ridge")).anyMatch(n -> n.startsWith("Face F1"))
        .noneMatch(n -> n.matches(".*\\b[JN][0-9a-z]{8}\\b.*"));
    js("document.querySelectorAll('.plan-tools button')[1].click(); document.querySelectorAll('.plan-tools button')[1].click()");
    assertThat(((Number) js("const s = document.querySelector('.plan-scroll'); return s.scrollLeft / (s.scrollWidth - s.clientWidth)"))
        .doubleValue()).as("what was in the middle stays there").isBetween(0.45, 0.55);
    assertThat((Boolean) js("return [...document.querySelectorAll('#ways button')].every(b => b.textContent.length < 12)")).isTrue();
  }

  @Test
  void whatWasTickedWithoutAConnectionIsThereOnceAfterTheTabWasKilled() throws IOException {
    openRoof();
    picture("roof-plan");
    dayByDay();
    name("Ida");
    picture("roof-whole");
    network(false);
    work(30, 5);
    see("#link", "35 waiting");
    assertThat(record().path("chain")).isEmpty();
    String first = browser.getWindowHandle();
    browser.switchTo().newWindow(WindowType.TAB);
    String second = browser.getWindowHandle();
    browser.switchTo().window(first).close();
    browser.switchTo().window(second);
    network(false);
    browser.get(server.url() + "roof/");
    see("#link", "35 waiting");
    network(true);
    js("dispatchEvent(new Event('online'))");
    see("#link", "all sent");
    JsonNode record = record();
    assertThat(record.path("chain")).as("each once").hasSize(35);
    assertThat(of(record, "tick")).hasSize(30);
    assertThat(of(record, "photo")).hasSize(5);
    js("dispatchEvent(new Event('online'))");
    see("#link", "all sent");
    assertThat(record().path("chain")).hasSize(35);
    signedWithoutAConnection();
  }

  /** What the same telephone said of a place just before, nobody has to see anew before they sign. */
  private void signedWithoutAConnection() {
    network(false);
    js("window.done = false; (async () => {"
        + "const roof = await import('/js/phone/roof.js'), queue = await import('/js/phone/queue.js');"
        + "const {place} = roof.standings().find(s => s.stage === 'checked');"
        + "await queue.say('note', place.id, {text: 'dry since noon'}); await queue.say('sign-off', place.id); window.done = true; })()");
    until(() -> (Boolean) js("return window.done") ? true : null);
    network(true);
    js("dispatchEvent(new Event('online'))");
    until(() -> record().path("chain").size() == 37 ? true : null);
    assertThat(record().path("chain").path(36).path("kind").asText()).isEqualTo("sign-off");
    see("#link", "all sent");
    assertThat((Long) js("return import('/js/phone/roof.js').then(r => r.open.own.filter(e => e.state === 'refused').length)")).isZero();
  }

  @Test
  void aPlaceIsFoundByItsTagAndItsCapWaitsForTheRecheck() throws IOException {
    openRoof();
    name("Ida");
    js("document.querySelectorAll('#ways button')[1].click()");
    with(field -> field.sendKeys("J3f"), "#tag");
    js("return import('/js/phone/roof.js').then(r => r.refresh())");
    assertThat((String) js("return document.activeElement.value")).as("what is being typed stays when news come").isEqualTo("J3f");
    with(field -> field.sendKeys("w1e\n"), "#tag");
    see(".place h1", "Hip");
    assertThat((String) js("return document.querySelector('#ways [aria-current]').textContent")).matches("Hip [1-4]");
    assertThat((Boolean) js("return document.querySelector('.item.step.locked button.main').disabled")).isTrue();
    until(() -> (Boolean) js("const i = document.querySelector('.section img'); return Boolean(i && i.naturalWidth)") ? true : null);
    picture("roof-place");
    js("document.querySelector('.item.step.locked').scrollIntoView({block: 'center'})");
    picture("roof-locked");
    assertThat((Long) js("return Math.floor(Math.min(...[...document.querySelectorAll('button, summary')].filter(b => b.offsetParent)"
        + ".map(b => b.getBoundingClientRect().height)))")).as("smallest target, px (WCAG 2.2, 2.5.5)").isGreaterThanOrEqualTo(44L);
    assertThat((Boolean) js("return document.documentElement.scrollWidth <= 390")).isTrue();
    js("document.querySelector('[data-item$=\"recheck-before-capping\"] button.main').click()");
    until(() -> (Boolean) js("return !document.querySelector('.item.step.locked')") ? true : null);
    // Another telephone, which had not seen it.
    until(() -> record().path("chain").size() == 1 ? true : null);
    ask("PUT", "/api/analyses/" + analysis + "/record/events/123e4567-e89b-42d3-a456-426614174000",
        "{\"kind\":\"failure\",\"place\":\"J3fw1emgc\",\"point\":\"J3fw1emgc/recheck-before-capping\",\"by\":\"Jon\","
            + "\"at\":\"2026-05-04T09:30:00Z\",\"base\":0,\"text\":\"one bead ran down; cut out and laid again\"}");
    js("dispatchEvent(new Event('online'))");
    see(".item.conflict", "What holds?");
    js("document.querySelector('.item.conflict').scrollIntoView({block: 'center'})");
    picture("roof-conflict");
    js("document.querySelector('.item.conflict button.main').click()");
    until(() -> (Boolean) js("return !document.querySelector('.item.conflict')") ? true : null);
    assertThat(record().path("form").asText()).isEqualTo("seamledger-record");
  }

  private void part(int number) {
    js("document.querySelectorAll('#ways button')[arguments[0]].click()", number);
    TestService.pause(300);
  }

  private void turnTheme() {
    js("[...document.querySelectorAll('button')].find(b => ['Dark', 'Light'].includes(b.textContent)).click()");
    TestService.pause(200);
  }

  /** WCAG 2.2, 2.5.5 (target size) and 1.4.10 (reflow), and what axe finds. */
  private void assertUsable(String where) throws IOException {
    picture("roof-" + where);
    barriers(where);
    assertThat((String) js("return [...document.querySelectorAll('button, summary, input:not(.unseen):not([type=checkbox])')]"
        + ".filter(b => b.offsetParent && b.getBoundingClientRect().height < 44).map(b => b.outerHTML.slice(0, 90)).join()")).as(where)
        .isEmpty();
    assertThat((Boolean) js("return document.documentElement.scrollWidth <= 390")).as(where).isTrue();
  }

  @Test
  void everyPartIsLargeEnoughAndWithoutABarrierInLightAndDark() throws IOException {
    openRoof();
    name("Ida");
    for (String theme : List.of("light", "dark")) {
      part(0);
      assertUsable("plan-" + theme);
      part(1);
      assertUsable("list-" + theme);
      js("[...document.querySelectorAll('.place-row')].find(r => r.textContent.includes('J3fw1emgc')).click()");
      until(() -> browser.findElements(By.cssSelector(".pointer img")).size() > 2 ? true : null);
      assertUsable("place-" + theme);
      js("document.querySelector('#view').scrollTop = 700");
      assertUsable("points-" + theme);
      js("[...document.querySelectorAll('.more button')].find(b => b.textContent === 'Deviation').click()");
      see("dialog", "Deviation");
      assertUsable("ask-" + theme);
      js("document.querySelector('dialog button[type=button]').click()");
      js("[...document.querySelectorAll('.neighbours button')][0].click()");
      see(".plan-tools", "");
      assertThat(browser.findElements(By.cssSelector(".here"))).as("where it is on the plan").hasSize(1);
      assertUsable("where-" + theme);
      part(1);
      js("[...document.querySelectorAll('.place-row')].find(r => r.textContent.includes('Hip foot')).click()");
      see(".place h1", "Hip foot");
      assertUsable("node-" + theme);
      part(3);
      assertUsable("whole-" + theme);
      turnTheme();
    }
  }

  @Test
  void aPrintedCodeLeadsToItsPlace() {
    openRoof();
    for (String text : List.of("seamledger:J3fw1emgc", "/roof/#" + analysis + "/J3fw1emgc", server.url() + "roof/#J3fw1emgc", "J3fw1")) {
      assertThat(js("return import('/js/phone/roof.js').then(r => r.byTag(arguments[0])?.id)".replace("arguments[0]",
          "'" + text + "'"))).as(text).isEqualTo("J3fw1emgc");
    }
    // A telephone's own camera opens the address; the roof that was open before is the one that is meant.
    browser.get(server.url() + "roof/#J3fw1emgc");
    js("location.reload()");
    see(".place h1", "Hip");
    browser.get(server.url() + "roof/#Jnowhere0");
    js("location.reload()");
    see(".trouble-line", "no place Jnowhere0");
  }

  @Test
  void theDeskShowsWhatIsDoneAndMakesAndRevokesLinks() throws IOException {
    browser.executeCdpCommand("Emulation.setDeviceMetricsOverride", Map.of("width", 1440, "height", 900, "deviceScaleFactor", 1, "mobile",
        false));
    for (JsonNode place : ask("GET", "/api/analyses/" + analysis + "/record", "").path("places")) {
      if (place.path("kind").asText().equals("eave")) {
        place.path("items").forEach(i -> ask("PUT", "/api/analyses/" + analysis + "/record/events/" + java.util.UUID.randomUUID(),
            MAPPER.createObjectNode().put("kind", "tick").put("place", place.path("id").asText()).put("point", i.path("id").asText())
                .put("by", "Ida").put("at", "2026-05-04T09:30:00Z").put("base", 99).put("after", "").put("text", "").toString()));
      }
    }
    browser.get(server.url() + "?analysis=" + analysis + "&tab=site");
    // Four eaves of 10 and 7 m, twice each, of 61.3 m: see the sample's expected lines.
    see(".at-site h2", "55 % of the length looked at");
    assertThat(browser.findElements(By.cssSelector(".sheet .site path.checked"))).hasSize(1);
    assertThat(
        (String) js("return [...document.querySelectorAll('.at-site td')].map(d => d.textContent).find(t => t.includes('J3fw1emgc'))"))
        .as("as the telephones call it").matches("Hip [1-4] J3fw1emgc");
    see(".links td", "crew");
    with(field -> field.sendKeys("second crew"), ".links input[type=text]");
    js("document.querySelector('.links form button').click()");
    String url = until(() -> (String) js("return document.querySelector('.links input[readonly]')?.value"));
    assertThat(url).startsWith(server.url() + "roof/#roof-");
    picture("roof-desk");
    barriers("On the roof");
    js("window.confirm = () => true; [...document.querySelectorAll('.links td button')][0].click()");
    see(".links td", "revoked");
  }
}

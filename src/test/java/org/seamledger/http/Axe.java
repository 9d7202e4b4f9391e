package org.seamledger.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Properties;
import org.openqa.selenium.chrome.ChromeDriver;

/** The accessibility checks of axe-core on what a browser shows. */
final class Axe {

  private final ChromeDriver browser;
  private final String script;

  private Axe(ChromeDriver browser, String script) {
    this.browser = browser;
    this.script = script;
  }

  static Axe in(ChromeDriver browser) {
    Properties p = new Properties();
    try (InputStream version = Axe.class.getResourceAsStream("/META-INF/maven/org.webjars.npm/axe-core/pom.properties")) {
      p.load(version);
      try (InputStream in =
          Axe.class.getResourceAsStream("/META-INF/resources/webjars/axe-core/" + p.getProperty("version") + "/axe.min.js")) {
        return new Axe(browser, new String(in.readAllBytes(), StandardCharsets.UTF_8));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What is serious or critical by some rules of axe, by default by all, each with the elements that have it. */
  @SuppressWarnings("unchecked")
  List<String> serious(String... rules) {
    if (browser.executeScript("return typeof axe === 'undefined'") == Boolean.TRUE) {
      browser.executeScript(script);
    }
    return (List<String>) browser
        .executeAsyncScript("const done = arguments[1], rules = arguments[0]; axe.run(document, {resultTypes: ['violations'],"
            + "...(rules.length ? {runOnly: rules} : {})}).then(r => done("
            + "r.violations.filter(v => v.impact === 'serious' || v.impact === 'critical').map(v => v.id + ': ' + v.nodes.slice(0, "
            + "4).map(n => n.html.slice(0, 160) + ' ' + (n.any[0]?.message ?? '')).join(' | '))))", List.of(rules));
  }
}

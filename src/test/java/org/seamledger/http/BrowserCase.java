package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementNotInteractableException;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * What tests of the page share: one browser for the tests of a class, with a profile of its own, and words for what a user sees and does.
 * Whatever is waited for ends the waiting when it is there; the limit is for machines with much else to do. Tests are skipped where
 * Debian's Chromium and its driver are not installed.
 */
public abstract class BrowserCase {

  private static final Duration LIMIT = Duration.ofSeconds(90);
  private static final Path PICTURES = Path.of("target", "pictures");

  @TempDir
  private static Path profile;
  protected static ChromeDriver browser;
  private static Axe axe;

  protected static void openBrowser(int width, int height) {
    browser = Chromium.open(profile, width, height);
    axe = Axe.in(browser);
  }

  @AfterAll
  static void closeBrowser() {
    if (browser != null) {
      browser.quit();
      browser = null;
    }
  }

  /** What the supplier answers as soon as that is neither null nor false; the page may draw anew whatever it looks at, at any moment. */
  protected static <T> T until(Supplier<T> what) {
    return new WebDriverWait(browser, LIMIT, Duration.ofMillis(100)).ignoring(StaleElementReferenceException.class)
        .ignoring(NoSuchElementException.class).ignoring(ElementNotInteractableException.class).until(d -> what.get());
  }

  /** Waits until a script's last expression is true. */
  protected static void untilTrue(String script, Object... arguments) {
    until(() -> js(script, arguments) == Boolean.TRUE);
  }

  /** The first such element that is in sight and has these words. */
  protected static WebElement see(String css, String text) {
    return until(() -> browser.findElements(By.cssSelector(css)).stream().filter(e -> e.isDisplayed() && e.getText().contains(text))
        .findFirst().orElse(null));
  }

  protected static WebElement see(String css) {
    return see(css, "");
  }

  /** What an element reads. */
  protected static String textOf(String css, String text) {
    return until(() -> see(css, text).getText());
  }

  protected static String textOf(String css) {
    return textOf(css, "");
  }

  /** Does something with the first such element that is in sight, as soon as there is one. */
  protected static void with(Consumer<WebElement> action, String css, String text) {
    until(() -> {
      action.accept(see(css, text));
      return true;
    });
  }

  protected static void with(Consumer<WebElement> action, String css) {
    with(action, css, "");
  }

  protected static int count(String css) {
    return browser.findElements(By.cssSelector(css)).size();
  }

  protected static void gone(String css) {
    until(() -> count(css) == 0);
  }

  protected static Object js(String code, Object... arguments) {
    return browser.executeScript(code, arguments);
  }

  protected static void tab(String name) {
    with(WebElement::click, ".tab", name);
    see(".tab[aria-current]", name);
  }

  /** Hands files to a field for files, hidden or not. */
  protected static void hand(String css, Path... files) {
    StringBuilder names = new StringBuilder();
    for (Path file : files) {
      names.append(names.isEmpty() ? "" : "\n").append(file.toAbsolutePath());
    }
    until(() -> {
      browser.findElement(By.cssSelector(css)).sendKeys(names);
      return true;
    });
  }

  /** Makes the page as wide and high as that, in its own pixels. */
  protected static void emulate(int width, int height) {
    browser.executeCdpCommand("Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  protected static void emulateNothing() {
    browser.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
  }

  /** The page as it looks, kept beside the results of the tests for people to look at. */
  protected static void picture(String name) throws IOException {
    Files.write(Files.createDirectories(PICTURES).resolve(name + ".png"), browser.getScreenshotAs(OutputType.BYTES));
  }

  /** Pixels of an element that are near a colour, as the browser shows it. */
  protected static long pixels(WebElement element, int rgb) {
    BufferedImage image = image(element);
    long count = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int p = image.getRGB(x, y);
        int distance =
            Math.abs((p >> 16 & 255) - (rgb >> 16 & 255)) + Math.abs((p >> 8 & 255) - (rgb >> 8 & 255)) + Math.abs((p & 255) - (rgb & 255));
        if (distance < 40) {
          count++;
        }
      }
    }
    return count;
  }

  private static BufferedImage image(WebElement element) {
    try {
      return ImageIO.read(new ByteArrayInputStream(element.getScreenshotAs(OutputType.BYTES)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What axe finds to be serious on the page as it is now: nothing. */
  protected static void barriers(String where) {
    assertThat(axe.serious()).as(where).isEmpty();
  }

  /** The same for contrasts alone: the rest doesn't depend on colours. */
  protected static void contrasts(String where) {
    assertThat(axe.serious("color-contrast")).as(where).isEmpty();
  }
}

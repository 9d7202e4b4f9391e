package org.seamledger.http;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.openqa.selenium.By;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Debian's Chromium without a window; tests that want it are skipped where it or its driver is not installed. */
public final class Chromium {

  private static final Path PROGRAM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  private Chromium() {
  }

  public static ChromeDriver open(Path profile, int width, int height) {
    assumeTrue(Files.exists(PROGRAM) && Files.exists(DRIVER), "Chromium and its driver are not installed");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(PROGRAM.toFile());
    options.addArguments("--headless", "--no-sandbox", "--disable-gpu", "--use-gl=angle", "--use-angle=swiftshader",
        "--enable-unsafe-swiftshader",
        "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
        "--user-data-dir=" + profile, "--window-size=" + width + "," + height);
    ChromeDriver browser = new ChromeDriver(new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile()).build(), options);
    browser.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
    return browser;
  }

  /** The first such element that is in sight and has these words, as soon as there is one; the page may draw it anew at any moment. */
  public static WebElement see(ChromeDriver browser, String css, String text) {
    return new WebDriverWait(browser, Duration.ofSeconds(40)).ignoring(StaleElementReferenceException.class).until(d -> d
        .findElements(By.cssSelector(css)).stream().filter(e -> e.isDisplayed() && e.getText().contains(text)).findFirst().orElse(null));
  }
}

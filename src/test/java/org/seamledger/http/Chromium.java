package org.seamledger.http;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

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
}

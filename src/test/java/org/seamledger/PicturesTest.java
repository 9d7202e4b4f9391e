package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.StreamSupport;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.seamledger.http.Chromium;

/**
 * The pictures of the README show the program as it is. {@code mvn test -Dtest=PicturesTest -Dpictures.write=true} takes them anew; without
 * that property they are compared: the section byte by byte, the page as far as the fonts of another machine leave it the same.
 */
@Tag("slow")
class PicturesTest {

  private static final Path FOLDER = Path.of("src", "pictures");
  private static final Path PAGE = FOLDER.resolve("page.png");
  private static final Path SAMPLES = Path.of("ifc-samples");
  private static final boolean WRITES = Boolean.getBoolean("pictures.write");
  private static final int WIDTH = 1440;
  private static final int HEIGHT = 900;
  private static final long MOST_BYTES = 200_000;
  /** The ridge of the gatehouse and the longest ridge of the school. */
  private static final String GATEHOUSE_RIDGE = "Jexwx7h7k";
  private static final String SCHOOL_RIDGE = "J424qktcv";

  @TempDir
  private Path folder;

  /** A process of the program with the classes under test. */
  private Process program(String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), "org.seamledger.cli.Main"));
    command.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().keySet().removeIf(name -> name.startsWith("SEAMLEDGER_"));
    return builder.redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
  }

  @Test
  void theSectionIsWhatTheProgramDraws() throws Exception {
    Path drawn = folder.resolve("section.svg");
    Process process = program("section", SAMPLES.resolve("gatehouse.ifc").toString(), GATEHOUSE_RIDGE, "--output", drawn.toString());
    String said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    Path picture = FOLDER.resolve("section.svg");
    if (WRITES) {
      Files.write(picture, Files.readAllBytes(drawn));
    }
    assertThat(picture).hasSameBinaryContentAs(drawn);
  }

  @Test
  void thePageLooksAsItDoesThere() throws Exception {
    ChromeDriver browser = Chromium.open(folder.resolve("profile"), WIDTH, HEIGHT);
    Process server = program("serve", SAMPLES.resolve("school.ifc").toString(), "--port", "0", "--data", folder.resolve("data").toString());
    try {
      BufferedImage now = page(browser, address(server) + "?selected=" + SCHOOL_RIDGE);
      if (WRITES) {
        ImageIO.write(FewColours.of(now), "png", PAGE.toFile());
      }
      Path kept = Files.createDirectories(Path.of("target", "pictures")).resolve("page.png");
      ImageIO.write(now, "png", kept.toFile());
      assertThat(CoarseLook.of(now).isLike(CoarseLook.of(ImageIO.read(PAGE.toFile())))).as("%s looks like %s", PAGE, kept).isTrue();
    } finally {
      browser.quit();
      server.destroy();
      server.waitFor();
    }
  }

  @Test
  void thePictureOfThePageIsWholeAndSmall() throws IOException {
    BufferedImage picture = ImageIO.read(PAGE.toFile());
    assertThat(picture.getWidth()).isEqualTo(WIDTH);
    assertThat(picture.getHeight()).isEqualTo(HEIGHT);
    assertThat(Files.size(PAGE)).isLessThan(MOST_BYTES);
  }

  /** The plan stands in the middle of the page above, the section below on the right. */
  @ParameterizedTest
  @CsvSource({"880, 250, 260, 130", "890, 640, 510, 200", "0, 130, 840, 660"})
  void aPartThatIsGoneIsSeen(int x, int y, int width, int height) throws IOException {
    BufferedImage picture = ImageIO.read(PAGE.toFile());
    CoarseLook whole = CoarseLook.of(picture);
    assertThat(CoarseLook.of(ImageIO.read(PAGE.toFile())).isLike(whole)).isTrue();
    int[] blank = new int[width * height];
    Arrays.fill(blank, picture.getRGB(x, y));
    picture.setRGB(x, y, width, height, blank, 0, width);
    assertThat(CoarseLook.of(picture).isLike(whole)).isFalse();
  }

  private static String address(Process server) throws IOException {
    BufferedReader log = server.errorReader(StandardCharsets.UTF_8);
    StringBuilder said = new StringBuilder();
    for (String line = log.readLine(); line != null; line = log.readLine()) {
      said.append(line).append('\n');
      if (line.startsWith("seamledger: open ")) {
        return line.replaceAll(".*(http://\\S+).*", "$1");
      }
    }
    throw new AssertionError(said);
  }

  /** The page in its light colours, once it shows all that it must and has come to rest. */
  private static BufferedImage page(ChromeDriver browser, String url) throws IOException {
    browser.executeCdpCommand("Emulation.setDeviceMetricsOverride",
        Map.of("width", WIDTH, "height", HEIGHT, "deviceScaleFactor", 1, "mobile", false));
    browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of(
        Map.of("name", "prefers-color-scheme", "value", "light"), Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
    browser.get(url);
    List<String> words = words();
    byte[] before = {};
    String text = "";
    for (int looks = 0; looks < 120; looks++) {
      byte[] now = browser.getScreenshotAs(OutputType.BYTES);
      text = String.valueOf(browser.executeScript("return document.body.innerText"));
      if (words.stream().allMatch(text::contains) && Arrays.equals(now, before)) {
        return ImageIO.read(new ByteArrayInputStream(now));
      }
      before = now;
      pause();
    }
    assertThat(text).contains(words);
    throw new AssertionError("the page does not come to rest");
  }

  /** What can be read on the page, by the formulas of the sample. */
  private static List<String> words() throws IOException {
    JsonNode lengths = new ObjectMapper().readTree(SAMPLES.resolve("school.expected.json").toFile()).path("lengthsM");
    double[] all = StreamSupport.stream(lengths.spliterator(), false).flatMapToDouble(PicturesTest::numbers).toArray();
    return List.of("school.ifc", all.length + " of " + all.length, String.format(Locale.ROOT, "%.2f m", Arrays.stream(all).sum()),
        String.format(Locale.ROOT, "Ridge %.3f m", numbers(lengths.path("ridge")).max().orElseThrow()));
  }

  private static DoubleStream numbers(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false).mapToDouble(JsonNode::doubleValue);
  }

  private static void pause() {
    try {
      Thread.sleep(500);
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }
}

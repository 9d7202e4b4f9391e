package org.seamledger.export.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.PNGTranscoder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Codes are drawn by another library, and read from the pixels by a decoder, as a camera would. */
class TagCodeTest {

  private static final int SIDE_PX = 300;

  private static BufferedImage drawn(String svg) throws TranscoderException, IOException {
    PNGTranscoder pen = new PNGTranscoder();
    pen.addTranscodingHint(PNGTranscoder.KEY_WIDTH, (float) SIDE_PX);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    pen.transcode(new TranscoderInput(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8))), new TranscoderOutput(png));
    return ImageIO.read(new ByteArrayInputStream(png.toByteArray()));
  }

  private static String read(BufferedImage image) throws ReaderException {
    int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    RGBLuminanceSource seen = new RGBLuminanceSource(image.getWidth(), image.getHeight(), pixels);
    Result result = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(seen)), Map.of(DecodeHintType.TRY_HARDER, true));
    return result.getText();
  }

  @ParameterizedTest
  @ValueSource(strings = {"seamledger:Jcm4et0qk", "/roof/#0123456789abcdef0123456789abcdef/N1a2b3c4d",
      "https://roofs.example.org/roof/#Jcm4et0qk"})
  void codeReadsBackAsWhatItSays(String text) throws Exception {
    assertThat(read(drawn(TagCode.svg(text, 20)))).isEqualTo(text);
    assertThat(TagCode.svg(text, 20)).isEqualTo(TagCode.svg(text, 20)).contains("width=\"20mm\"");
  }

  @Test
  void codeOfAPlaceSaysThePlaceAndIsReadWithASpotOnIt() throws Exception {
    assertThat(TagCode.text("Jcm4et0qk")).isEqualTo("seamledger:Jcm4et0qk");
    BufferedImage image = drawn(TagCode.svg(TagCode.text("Jcm4et0qk"), 20));
    // A drop over a twentieth of the code, in its middle; level Q restores a quarter of the codewords (ISO/IEC 18004, 6.5.1).
    image.createGraphics().fillRect(140, 140, 55, 55);
    assertThat(read(image)).isEqualTo("seamledger:Jcm4et0qk");
    for (int y = 0; y < SIDE_PX; y++) {
      for (int x = 0; x < SIDE_PX / 2; x++) {
        image.setRGB(x, y, Color.WHITE.getRGB());
      }
    }
    assertThatThrownBy(() -> read(image)).isInstanceOf(NotFoundException.class);
  }

  @Test
  void whatNoCodeHoldsIsRefused() {
    assertThatThrownBy(() -> TagCode.svg("", 20)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> TagCode.svg("x".repeat(4000), 20)).isInstanceOf(IllegalArgumentException.class);
  }
}

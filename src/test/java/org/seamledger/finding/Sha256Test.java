package org.seamledger.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;

/** The one-block example of FIPS 180-2, appendix B.1 ("abc"), and the empty message of NIST's validation vectors. */
class Sha256Test {

  @Test
  void publishedExamples() {
    assertThat(HexFormat.of().formatHex(Sha256.of("abc")))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assertThat(HexFormat.of().formatHex(Sha256.of("")))
        .isEqualTo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  }
}

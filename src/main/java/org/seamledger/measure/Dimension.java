package org.seamledger.measure;

/** What a measure measures. The SI unit in which its value is kept stands beside each. */
public enum Dimension {
  /** Metres. */
  LENGTH("a length", "16 in"),
  /** Square metres. */
  AREA("an area", "120 m2"),
  /** Cubic metres. */
  VOLUME("a volume", "10.1 fl oz"),
  /** A slope, kept as its tangent: rise over run. */
  SLOPE("a slope", "3:12"),
  /** Degrees. */
  ANGLE("an angle", "90 deg"),
  /** What a thermometer reads, kelvin above absolute zero. */
  TEMPERATURE("a temperature", "70 °F"),
  /** A difference of two readings, kelvin. 9 °F of difference are 5 K: no offset. */
  TEMPERATURE_DIFFERENCE("a temperature difference", "100 °F"),
  /** Metres per second; rainfall is one, too. */
  SPEED("a speed", "90 mph"),
  /** Pascal. */
  PRESSURE("a pressure", "6 psf"),
  /** Seconds. */
  TIME("a duration", "5 min"),
  /** Kilograms per cubic metre. */
  DENSITY("a density", "1300 kg/m3"),
  /** A share of one. */
  SHARE("a percentage", "10 %");

  private final String noun;
  private final String example;

  Dimension(String noun, String example) {
    this.noun = noun;
    this.example = example;
  }

  /** For messages: {@code a length}. */
  public String noun() {
    return noun;
  }

  /** Text that this dimension accepts. */
  public String example() {
    return example;
  }
}

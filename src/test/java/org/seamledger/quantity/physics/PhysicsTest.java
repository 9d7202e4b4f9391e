package org.seamledger.quantity.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhysicsTest {

  private static final double IN = 0.0254;
  private static final double FT = 0.3048;
  private static final double PER_F = 5.0 / 9;
  private static final double IN_PER_H = IN / 3600;
  private static final double CFS = FT * FT * FT;
  /** 1 cfs = 448.831 gpm (NIST SP 811, from memory). */
  private static final double GPM = CFS / 448.831;

  // α from a materials-science textbook's table (aluminium 23.6, copper 17.0, lead 29.3), the rest from memory; movement derived.
  @ParameterizedTest
  @CsvSource({"STEEL,.080,6.00,1.600", "STAINLESS_STEEL,.115,8.60,2.293", "COPPER,.113,8.50,2.267", "ALUMINIUM,.157,11.80,3.147",
      "ZINC,.147,11.00,2.933", "LEAD,.195,14.65,3.907"})
  void movement(Metal metal, double inPer10FtPer100F, double mmPer10MPer50K, double inPer100FtPer200F) {
    assertThat(Thermal.movementM(metal, 10 * FT, 100 * PER_F) / IN).isEqualTo(inPer10FtPer100F, within(6e-4));
    assertThat(Thermal.movementM(metal, 10, 50) * 1000).isEqualTo(mmPer10MPer50K, within(1e-9));
    assertThat(Thermal.movementM(metal, 100 * FT, 200 * PER_F) / IN).isEqualTo(inPer100FtPer200F, within(6e-4));
  }

  @Test
  void aNationalCodesExample() {
    // New Zealand metal roof and wall cladding code of practice: 30 m of steel, 60 K: 21.6 mm.
    assertThat(Thermal.movementM(Metal.STEEL, 30, 60) * 1000).isEqualTo(21.6, within(1e-9));
  }

  @Test
  void jointWidths() {
    // Aluminium, 10 ft, 100 °F, ±25 %: butt .629 in, lap .210 in (derived).
    double movement = Thermal.movementM(Metal.ALUMINIUM, 10 * FT, 100 * PER_F);
    assertThat(Thermal.buttJointM(movement, .25) / IN).isEqualTo(.629, within(5e-4));
    assertThat(Thermal.lapJointM(movement, .25) / IN).isEqualTo(.210, within(5e-4));
    double[] factors = {Thermal.lapJointM(1, .125), Thermal.lapJointM(1, .25), Thermal.lapJointM(1, .35), Thermal.lapJointM(1, .50)};
    assertThat(factors).containsExactly(new double[] {1.940, 1.333, 1.103, .894}, within(6e-4));
  }

  @Test
  void aPanelPinnedTwice() {
    // 29e6 psi · 6.5e-6 /°F · 100 °F = 18.9 ksi (derived); the metal table's steel is 200 GPa and 12.0e-6/K, 2.4 % more.
    double ksi = 6894.757e3;
    assertThat(Thermal.lockedStressPa(Metal.STEEL, 100 * PER_F) / ksi).isEqualTo(18.9, within(0.5));
    assertThat(Thermal.gapAtInstallM(0.020, Metal.STEEL, 10, 20, -20)).isEqualTo(0.0152, within(1e-9));
  }

  @Test
  void rationalMethod() {
    // 1 in/h on 1 ft² = .010389 gpm (derived).
    assertThat(Rain.flow(1, IN_PER_H, FT * FT) / GPM).isEqualTo(.010389, within(1e-6));
    assertThat(Rain.flow(1, 4.7 * IN_PER_H, 40 * FT * 16 * IN) / CFS).isEqualTo(.005802, within(5e-7));
    assertThat(Rain.flow(1, 4.7 * IN_PER_H, 40 * FT * 16 * IN) / GPM).isEqualTo(2.604, within(5e-4));
  }

  // 4.7 in/h (Miami, International Plumbing Code 2018, appendix B), pan of 16 in, n = .012; Manning, derived.
  @ParameterizedTest
  @CsvSource({"0.25,40,.0815,62", "0.5,40,.0662,51", "3,40,.0390,29.9", "0.25,100,.1412,108"})
  void filmInAPan(double rise, double runFt, double manningIn, double seconds) {
    double slope = Math.toDegrees(Math.atan(rise / 12));
    double q = Rain.flow(1, 4.7 * IN_PER_H, runFt * FT * 16 * IN) / (16 * IN);
    assertThat(Rain.filmDepthM(q, .012, slope) / IN).isEqualTo(manningIn, within(6e-5));
    double time = Rain.equilibriumSeconds(runFt * FT, .012, slope, 4.7 * IN_PER_H);
    assertThat(time).isEqualTo(seconds, within(0.5));
    // At equilibrium the depth at the eave is the rain that fell in that time (kinematic wave).
    assertThat(time * 4.7 * IN_PER_H).isEqualTo(Rain.filmDepthM(q, .012, slope), within(1e-9));
  }

  // 400 ft² in plan, 4.7 in/h, regular valley: z = 1/S (derived).
  @ParameterizedTest
  @CsvSource({"6,.596,3.58", "3,.523,6.01"})
  void flowInAValley(double rise, double depthIn, double widthIn) {
    double line = Math.toDegrees(Math.atan(rise / 12 / Math.sqrt(2)));
    double z = 1 / Math.sin(Math.toRadians(line));
    double flow = Rain.flow(1, 4.7 * IN_PER_H, 400 * FT * FT);
    Rain.ValleyFlow valley = Rain.valley(flow, .012, line, z, z);
    assertThat(valley.depthM() / IN).isEqualTo(depthIn, within(6e-4));
    assertThat(valley.widthM() / IN).isEqualTo(widthIn, within(6e-3));
    if (rise == 6) {
      assertThat(flow / CFS).isEqualTo(.04352, within(5e-6));
      assertThat(valley.speedMs() / FT).isEqualTo(5.9, within(0.05));
    }
  }

  @Test
  void anUnevenValleyCarriesItsFlow() {
    Rain.ValleyFlow v = Rain.valley(0.002, 0.012, 10, 2, 5);
    double area = 3.5 * v.depthM() * v.depthM();
    double radius = area / (v.depthM() * (Math.sqrt(5) + Math.sqrt(26)));
    assertThat(area / 0.012 * Math.pow(radius, 2 / 3.0) * Math.sqrt(Math.sin(Math.toRadians(10)))).isEqualTo(0.002, within(1e-12));
    assertThat(Rain.valley(0, 0.012, 10, 2, 5).depthM()).isZero();
  }

  // q = .00256 V² psf (ASCE 7's constant, from memory); heads derived.
  @ParameterizedTest
  @CsvSource({"50,306,1.230", "70,601,2.411", "90,993,3.986", "100,1226,4.921", "110,1483,5.954", "120,1765,7.086", "150,2758,11.072",
      "60,441,1.772"})
  void windHead(double mph, double pascal, double inches) {
    double pressure = Head.stagnationPa(mph * 0.44704);
    assertThat(pressure).isEqualTo(pascal, within(0.6));
    assertThat(Head.headM(pressure) / IN).isEqualTo(inches, within(6e-4));
  }

  @Test
  void runUp() {
    // 100 mph: 20.3 in up a slope of 3:12, 236 in at 1/4:12 (derived).
    double head = Head.headM(Head.stagnationPa(100 * 0.44704));
    assertThat(Head.runUpM(head, Math.toDegrees(Math.atan(3 / 12.0))) / IN).isEqualTo(20.3, within(0.05));
    assertThat(Head.runUpM(head, Math.toDegrees(Math.atan(.25 / 12))) / IN).isEqualTo(236, within(0.5));
    assertThat(Head.headM(1494.5) / IN).isEqualTo(6, within(5e-4));
  }

  // h = 2γ cos α / (ρ g d), γ = .0728 N/m (textbook), 20 °C.
  @ParameterizedTest
  @CsvSource({".05,297", ".1,149", ".25,59.5", ".5,29.7", "1,14.9", "2,7.44", "3,4.96", "5,2.97", "6.35,2.34", "9.53,1.56"})
  void capillaryRise(double gapMm, double riseMm) {
    assertThat(Head.capillaryRiseM(gapMm / 1000, 0) * 1000).isEqualTo(riseMm, within(riseMm * 2.5e-3));
  }

  @Test
  void capillaryRiseOnPaintAndOnASlope() {
    assertThat(Head.capillaryRiseM(.001, 70) / Head.capillaryRiseM(.001, 0)).isEqualTo(.342, within(5e-4));
    double rise = Head.capillaryRiseM(.00025, 0);
    assertThat(Head.runUpM(rise, Math.toDegrees(Math.atan(.25))) * 1000).isEqualTo(245, within(0.6));
  }

  // Magnus form with the World Meteorological Organization's constants; dew points and densities derived from it.
  @ParameterizedTest
  @CsvSource({"0,611.2,4.848,-9.20,-3.04", "5,871.7,6.791,-4.58,1.83", "10,1226.0,9.382,.04,6.71", "15,1701.7,12.796,4.65,11.58",
      "20,2332.6,17.241,9.26,16.44", "23,2802.5,20.504,12.01,19.36", "25,3160.1,22.965,13.85,21.31", "30,4233.7,30.260,18.44,26.17",
      "35,5612.8,39.467,23.02,31.03", "40,7367.5,50.977,27.60,35.89"})
  void moistAir(double celsius, double pascal, double gramsPerM3, double dewAt50, double dewAt80) {
    assertThat(Air.saturationPa(celsius)).isEqualTo(pascal, within(0.06));
    assertThat(Air.saturationDensity(celsius) * 1000).isEqualTo(gramsPerM3, within(1e-3));
    assertThat(Air.dewPointC(celsius, .5)).isEqualTo(dewAt50, within(6e-3));
    assertThat(Air.dewPointC(celsius, .8)).isEqualTo(dewAt80, within(6e-3));
  }

  // Saturation pressure in steam tables (from memory), within a quarter of a percent.
  @ParameterizedTest
  @CsvSource({"0,611.2", "5,872.6", "10,1228.2", "15,1705.8", "20,2339.3", "23,2811", "25,3169.9", "30,4247.0", "35,5628.6", "40,7384.9"})
  void saturationAgainstSteamTables(double celsius, double pascal) {
    assertThat(Air.saturationPa(celsius)).isEqualTo(pascal, within(pascal * 3.5e-3));
  }

  // A coatings dew-point chart in °F: 70/50 → 50, 80/50 → 59, 60/90 → 57; charts round to whole degrees.
  @ParameterizedTest
  @CsvSource({"70,.5,50", "80,.5,59", "60,.9,57"})
  void dewPointAgainstAChart(double fahrenheit, double humidity, double dewF) {
    double dew = Air.dewPointC((fahrenheit - 32) / 1.8, humidity) * 1.8 + 32;
    assertThat(dew).isEqualTo(dewF, within(0.8));
  }

  // US Standard Atmosphere 1976 (SI form) and an engineering handbook's table in psia.
  @ParameterizedTest
  @CsvSource({"0,101325,15", "500,95461,11.75", "1000,89875,8.5", "1500,84556,5.25", "2000,79495,2.0", "2500,74683,-1.25",
      "3000,70109,-4.5"})
  void atmosphere(double metres, double pascal, double celsius) {
    assertThat(Air.pressurePa(metres)).isEqualTo(pascal, within(1.0));
    assertThat(Air.temperatureC(metres)).isEqualTo(celsius, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1000,14.175", "5000,12.230", "10000,10.108"})
  void atmosphereInPsi(double feet, double psia) {
    assertThat(Air.pressurePa(feet * FT) / 6894.757).isEqualTo(psia, within(3e-3));
  }

  // Estimate: time against 23 °C and 50 %, the inverse of the vapour in the air (derived from the saturation densities above).
  @ParameterizedTest
  @CsvSource({"5,.5,3.02", "5,.8,1.89", "10,.5,2.19", "15,.5,1.60", "30,.5,.678", "35,.3,.866", "0,.8,2.64", "30,.8,.423", "23,.5,1"})
  void cureTimeFactor(double celsius, double humidity, double factor) {
    assertThat(Cure.timeFactor(celsius, humidity)).isEqualTo(factor, within(6e-3));
  }

  @Test
  void cureDepth() {
    // 2 mm in the first day: 6 mm in 9 days (d = k√t).
    assertThat(Cure.seconds(.006, .002, 23, .5) / 86400).isEqualTo(9, within(1e-9));
    assertThat(Cure.seconds(.006, .002, 23, 0)).isInfinite();
  }

  @Test
  void metalsTogether() {
    // Area rule of MIL-STD-889B: stainless screws in aluminium sheet yes, zinc or aluminium screws in copper or stainless no.
    assertThat(Galvanic.fastener(Metal.STAINLESS_STEEL, Metal.ALUMINIUM, false)).isEqualTo(Galvanic.Verdict.SMALL_NOBLE);
    assertThat(Galvanic.fastener(Metal.ALUMINIUM, Metal.COPPER, false)).isEqualTo(Galvanic.Verdict.CORRODES);
    assertThat(Galvanic.fastener(Metal.ZINC, Metal.STAINLESS_STEEL, false)).isEqualTo(Galvanic.Verdict.CORRODES);
    assertThat(Galvanic.fastener(Metal.GALVANIZED_STEEL, Metal.GALVANIZED_STEEL, true)).isEqualTo(Galvanic.Verdict.COMPATIBLE);
    // 0.15 V from copper to stainless: just within the marine limit.
    assertThat(Galvanic.sheets(Metal.COPPER, Metal.STAINLESS_STEEL, true)).isEqualTo(Galvanic.Verdict.COMPATIBLE);
    assertThat(Galvanic.sheets(Metal.LEAD, Metal.STAINLESS_STEEL, true)).isEqualTo(Galvanic.Verdict.CORRODES);
    assertThat(Galvanic.sheets(Metal.LEAD, Metal.STAINLESS_STEEL, false)).isEqualTo(Galvanic.Verdict.COMPATIBLE);
  }
}

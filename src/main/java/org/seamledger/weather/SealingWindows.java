package org.seamledger.weather;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.measure.Measure;
import org.seamledger.measure.Unit;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.formula.Slump;
import org.seamledger.quantity.physics.Cure;
import org.seamledger.quantity.system.CureKind;
import org.seamledger.quantity.system.SealantSettings;

/**
 * When sealants may be applied, hour by hour, and how long beads then take. The roof system's data sheets govern. A skin, and the time
 * that an upright bead stands, are stated for 23 °C and 50 %; a sealant that cures with moisture takes longer or shorter by
 * {@link Cure#timeFactor}, hour by hour (an estimate); others take what is stated.
 *
 * @param source of the weather
 * @param byHand whether one state of the weather stands for all hours
 * @param upright whether a concealed bead of this size stands upright
 */
public record SealingWindows(String source, boolean byHand, Upright upright, List<SealingHour> hours) {

  private static final double SECONDS_PER_HOUR = 3600;

  public SealingWindows {
    hours = List.copyOf(hours);
  }

  /** What the data sheet says of a bead that stands upright. */
  public enum Upright {
    /** Its yield stress is more than the bead needs. */
    STANDS,
    /** It is less: the bead slumps. */
    SLUMPS,
    /** It says nothing. */
    NOT_STATED
  }

  private static Upright upright(RoofSystem system) {
    double yield = system.sealant().yieldStress().value();
    double needed = Slump.neededYieldStressPa(system.sealant().density().value(), system.bead().size().value(), 90);
    return yield == 0 ? Upright.NOT_STATED : yield >= needed ? Upright.STANDS : Upright.SLUMPS;
  }

  /** A stretch of hours: from the beginning of one to the beginning of another. */
  public record Window(int from, int to) {
  }

  /** Of a series of weather from its beginning. */
  public static SealingWindows of(WeatherSeries series, RoofSystem system) {
    return of(series.source(), series.byHand(), series.hours(), system);
  }

  /** The same of some hours of it. */
  public static SealingWindows of(String source, boolean byHand, List<WeatherHour> weather, RoofSystem system) {
    MetalSurface surface = new MetalSurface(system.finish().solarAbsorptance().value(), system.finish().emittance().value());
    double[] metal = weather.stream()
        .mapToDouble(h -> h.isKnown() ? surface.temperatureC(h, system.site().elevation().value()) : Double.NaN).toArray();
    List<SealingHour> hours = new ArrayList<>();
    for (int i = 0; i < weather.size(); i++) {
      hours.add(hour(i, weather, metal[i], system));
    }
    return new SealingWindows(source, byHand, upright(system), hours);
  }

  private static SealingHour hour(int i, List<WeatherHour> weather, double metal, RoofSystem system) {
    WeatherHour hour = weather.get(i);
    SealantSettings sealant = system.sealant();
    boolean skins = sealant.cure() != CureKind.NONE;
    double skin = skins ? after(i, weather, sealant.skinTime(), sealant.cure()) : Double.NaN;
    double cap = after(i, weather, sealant.holdTime(), sealant.cure());
    Map<SealantClass, Set<Hindrance>> against = new EnumMap<>(SealantClass.class);
    for (SealantClass c : SealantClass.values()) {
      against.put(c, against(c, hour, metal, system));
    }
    if (skins && hour.isKnown() && isRainWithin(i, skin, weather)) {
      against.get(SealantClass.BEAD).add(Hindrance.RAIN_SOON);
    }
    return new SealingHour(hour, hour.isKnown() ? hour.dewPointC() : Double.NaN, metal, against, skin, cap);
  }

  private static boolean isRainWithin(int i, double hours, List<WeatherHour> weather) {
    for (int k = i + 1; k < weather.size() && k < i + hours; k++) {
      if (weather.get(k).rainMm() > 0) {
        return !(weather.get(i).rainMm() > 0);
      }
    }
    return false;
  }

  private static Set<Hindrance> against(SealantClass c, WeatherHour hour, double metal, RoofSystem system) {
    Set<Hindrance> all = EnumSet.noneOf(Hindrance.class);
    if (!hour.isKnown()) {
      all.add(Hindrance.UNKNOWN);
      return all;
    }
    add(all, Hindrance.RAIN, hour.rainMm() > 0);
    add(all, Hindrance.DEW, metal < hour.dewPointC() + system.sealant().dewPointMargin().value());
    SealantSettings s = system.sealant();
    switch (c) {
      case TAPE -> add(all, Hindrance.COLD_METAL, metal < celsius(system.tape().lowest()));
      case IN_SEAM -> {
        add(all, Hindrance.COLD_METAL, metal < celsius(system.inSeam().lowest()));
        add(all, Hindrance.HOT_METAL, metal > celsius(system.inSeam().highest()));
      }
      case BEAD -> {
        add(all, Hindrance.COLD_METAL, metal < celsius(s.lowest()));
        add(all, Hindrance.COLD_AIR, hour.airC() < celsius(s.lowest()));
        add(all, Hindrance.HOT_AIR, hour.airC() > celsius(s.highest()));
        add(all, Hindrance.HOT_METAL, metal > celsius(s.highestMetal()));
        add(all, Hindrance.HUMID, hour.humidity() > s.highestHumidity().value());
      }
    }
    return all;
  }

  private static void add(Set<Hindrance> all, Hindrance hindrance, boolean is) {
    if (is) {
      all.add(hindrance);
    }
  }

  private static double celsius(Measure temperature) {
    return temperature.in(Unit.CELSIUS);
  }

  /** Hours from the beginning of one until a duration at 23 °C and 50 % has run, each hour at its own pace. */
  private static double after(int from, List<WeatherHour> weather, Measure stated, CureKind cure) {
    double left = stated.value() / SECONDS_PER_HOUR;
    if (cure != CureKind.MOISTURE) {
      return left;
    }
    for (int i = from; i < weather.size(); i++) {
      WeatherHour h = weather.get(i);
      double pace = h.isKnown() && h.humidity() > 0 ? 1 / Cure.timeFactor(h.airC(), Math.min(1, h.humidity())) : 0;
      if (pace >= left) {
        return i - from + left / pace;
      }
      left -= pace;
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Stretches of some hours in which a class may be applied. */
  public static List<Window> windows(List<SealingHour> hours, SealantClass sealant) {
    List<Window> all = new ArrayList<>();
    int from = -1;
    for (int i = 0; i <= hours.size(); i++) {
      boolean open = i < hours.size() && hours.get(i).isOpen(sealant);
      if (open && from < 0) {
        from = i;
      } else if (!open && from >= 0) {
        all.add(new Window(from, i));
        from = -1;
      }
    }
    return all;
  }

  /** The hours of a day, the first of which is 1; none behind the last. Weather by hand has one day only. */
  public List<SealingHour> onDay(int day) {
    int from = Math.max(0, (day - 1) * 24 - begins());
    int to = Math.min(hours.size(), day * 24 - begins());
    return from >= to ? List.of() : hours.subList(from, to);
  }

  /** Hours from the first midnight to the first hour. */
  private int begins() {
    return byHand || hours.isEmpty() ? 0 : hours.get(0).weather().hour();
  }

  /**
   * The moment from which on all of some classes may be applied, in hours from the first midnight; before the first hour and behind the
   * last nothing is known, and nothing in the way. Weather by hand says nothing of a better hour: no moment is put off.
   */
  public double open(Set<SealantClass> classes, double at) {
    for (int i = Math.max(0, index(at)); index(at) >= 0 && !byHand && i < hours.size(); i++) {
      SealingHour hour = hours.get(i);
      if (classes.stream().allMatch(hour::isOpen)) {
        return Math.max(at, begins() + i);
      }
    }
    return byHand || index(at) < 0 ? at : Math.max(at, begins() + hours.size());
  }

  /** The moment at which some classes may no longer all be applied, from one at which they may; infinite where none is known. */
  public double closes(Set<SealantClass> classes, double at) {
    for (int i = Math.max(0, index(at)); !byHand && i < hours.size(); i++) {
      SealingHour hour = hours.get(i);
      if (!classes.stream().allMatch(hour::isOpen)) {
        return Math.max(at, begins() + i);
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  private int index(double at) {
    return (int) Math.floor(at + 1e-9) - begins();
  }

  /** When a bead that was gunned may be covered, hours from the first midnight; where nothing is known, after {@code otherwise}. */
  public double covered(double gunned, double otherwise) {
    int i = index(gunned);
    double lasts = i >= 0 && i < hours.size() ? hours.get(i).capHours() : Double.POSITIVE_INFINITY;
    return gunned + (Double.isInfinite(lasts) ? otherwise : lasts);
  }
}

/**
 * Weather, and what may be sealed in it. Hours by hand, from an EPW file or a table ({@link org.seamledger.weather.WeatherSeries}); how
 * warm metal gets in them ({@link org.seamledger.weather.MetalSurface}); and when tape, beads and in-seam sealant may be applied, skin and be
 * covered, by the roof system's data sheet ({@link org.seamledger.weather.SealingWindows}). Estimates for a person who decides: whoever
 * seals measures the metal.
 */
package org.seamledger.weather;

package rainward.feed.hourly;

import java.util.List;
import rainward.feed.reading.Spell;

/**
 * Layers of air, wind and sky as a service gave them, in SI, in order of time.
 *
 * @param airTempC at screen height [C]
 * @param dewPointC at screen height [C]
 * @param humidityFraction relative humidity [0..1]
 * @param wind10Mps at 10 m [m/s]
 * @param skyCoverFraction clouds [0..1]
 */
public record AirLayers(
        List<Spell> airTempC,
        List<Spell> dewPointC,
        List<Spell> humidityFraction,
        List<Spell> wind10Mps,
        List<Spell> skyCoverFraction) {}

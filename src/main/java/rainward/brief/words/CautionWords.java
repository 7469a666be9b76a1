package rainward.brief.words;

import java.time.Duration;
import rainward.brief.Caution;
import rainward.brief.making.HeatIndex;
import rainward.farm.Operation;

/**
 * What is said of a danger. Heat follows the general advice of OSHA and NIOSH, lightning the 30-30
 * rule of NOAA, wind the label; numbers without a label are those of {@code spray-wind}.
 */
public final class CautionWords {

    /** What goes before anything that a brief or an alert says. */
    public static final String WHAT_GOES_BEFORE =
            "Chances are worked out from a public forecast; they are no promise. Labels, "
                    + "local codes and licensed practice go before anything said here.";

    private final Reader reader;

    public CautionWords(Reader reader) {
        this.reader = reader;
    }

    public String of(Caution caution) {
        if (caution instanceof Caution.Heat heat) {
            return heat(heat);
        }
        if (caution instanceof Caution.Thunder thunder) {
            return thunder(thunder);
        }
        if (caution instanceof Caution.Wind wind) {
            return wind(wind);
        }
        if (caution instanceof Caution.Slope slope) {
            return slope(slope);
        }
        return withoutNumbers(caution);
    }

    private String heat(Caution.Heat heat) {
        return "Heat: feels like up to " + reader.units().temp(heat.heatIndexC())
                + " in the shade at " + heat.property() + ", more in the sun ("
                + reader.clock().span(heat.when()) + "). " + care(heat.care());
    }

    private static String care(HeatIndex.Care care) {
        return switch (care) {
            case LOWER, MODERATE ->
                "Water, rest and shade for everybody; people new to the heat start with short spells.";
            case HIGH ->
                "High: water within reach, breaks in the shade on a timetable, nobody alone, "
                        + "the heavy work early; people new to the heat start with short spells.";
            case VERY_HIGH ->
                "Very high: put off what can wait. Water, shade, short spells, nobody alone. "
                        + "Confusion or no more sweat is an emergency: cool the person, call 911.";
        };
    }

    private static String thunder(Caution.Thunder thunder) {
        return "Lightning: rain up to " + Reader.percent(thunder.chance()) + " likely today at "
                + Reader.and(thunder.properties()) + ". " + LIGHTNING;
    }

    /** 30-30 rule, NOAA (key {@code noaa-lightning}). */
    public static final String LIGHTNING =
            "Thunder within 30 seconds of the flash: everybody into a "
                    + "building or a closed cab, and stay there until 30 minutes after the last thunder.";

    private String wind(Caution.Wind wind) {
        String range = range(wind.leastMps(), wind.greatestMps());
        String what = wind.operation() == Operation.SPRAY ? "Spraying" : "Spreading";
        String rule = wind.operation() == Operation.SPRAY
                ? "The label's limits hold; where it names none, spray at "
                        + range(CALM_MPS, WINDY_MPS)
                        + ", and never in an inversion (still air around sunrise and sunset)."
                : "The label's limits hold; stop when the spread pattern drifts.";
        return what + " at " + wind.property() + " " + reader.clock().daySpan(wind.when())
                + ": wind " + range + " at head height (2 m). " + rule;
    }

    private String range(double fromMps, double toMps) {
        return Reader.range(reader.units().wind(fromMps), reader.units().wind(toMps));
    }

    /** 3 and 8 mph, where the label names no wind (key {@code spray-wind}) [m/s]. */
    private static final double CALM_MPS = 3 * 0.44704;

    private static final double WINDY_MPS = 8 * 0.44704;

    private static String slope(Caution.Slope slope) {
        return "Slopes: up to " + Reader.percent(slope.steepestFraction()) + " on "
                + Reader.and(slope.fields())
                + ". Roll bar up, seat belt on, no sharp turns uphill, "
                + "no riders; the operator's manual sets the limit.";
    }

    private static String withoutNumbers(Caution caution) {
        if (caution instanceof Caution.Road road) {
            return "Road: " + Reader.span(Duration.ofMinutes(Math.round(road.drivingHours() * 60)))
                    + " of driving between fields. Lights and the slow-moving-vehicle "
                    + "emblem on, implements folded and pinned, loads tied; local road rules hold.";
        }
        if (caution instanceof Caution.Spray) {
            return "Spraying: the label is the law. Protective gear, re-entry times and buffers as "
                    + "it says; restricted products only by a licensed applicator.";
        }
        return "Dust of lime, fertilizer and treated seed: goggles, gloves and dust mask as the "
                + "label or safety sheet says; fill upwind.";
    }
}

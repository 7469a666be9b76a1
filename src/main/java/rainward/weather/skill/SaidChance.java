package rainward.weather.skill;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rainward.farm.Require;
import rainward.farm.Window;
import rainward.weather.rain.ChanceRuns;
import rainward.weather.rain.RainChance;
import rainward.weather.source.ForecastSeries;

/**
 * A chance of rain as a forecast said it.
 *
 * @param source short name of the service
 * @param issuedAt by it
 * @param window of the chance
 * @param probability 0 to 1
 */
public record SaidChance(String source, Instant issuedAt, Window window, double probability) {

    public SaidChance {
        Require.named("source", source);
        Require.inRange("probability", probability, 0, 1);
    }

    /**
     * What a forecast says of periods that begin after it was pulled. Of periods shorter than six
     * hours only those count that begin at 00, 06, 12 or 18 UTC: neighbours hardly differ, and
     * would look like experience that is not there.
     */
    public static List<SaidChance> of(ForecastSeries forecast) {
        ForecastSeries.Stamp stamp = forecast.stamp();
        List<SaidChance> said = new ArrayList<>();
        for (RainChance chance : forecast.rain().probabilities()) {
            for (Window period : ChanceRuns.periods(chance.window())) {
                boolean ahead = period.from().isAfter(stamp.pulledAt());
                if (ahead && beginsQuarterDay(period.from())) {
                    said.add(new SaidChance(
                            stamp.source(), stamp.issuedAt(), period, chance.probability()));
                }
            }
        }
        return said;
    }

    private static boolean beginsQuarterDay(Instant from) {
        return from.getEpochSecond() % Duration.ofHours(ChanceRuns.LONGEST_H).toSeconds() == 0;
    }

    /** From issue to the start of the period [h]. */
    public double leadHours() {
        return Math.max(0, Duration.between(issuedAt, window.from()).toMinutes() / 60.0);
    }

    public LeadClass lead() {
        return LeadClass.of(leadHours());
    }
}

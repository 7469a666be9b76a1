package rainward.weather.skill;

import java.time.Instant;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.Function;
import rainward.farm.Require;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.past.PastWeather;
import rainward.weather.rain.HourGrid;
import rainward.weather.rain.RainAmount;

/**
 * A chance of rain beside what was observed.
 *
 * @param said the chance
 * @param wet at least 0.254 mm was observed in its window
 * @param usualProbability chance of the month for a period of that length, 0 to 1
 */
public record SeenChance(SaidChance said, boolean wet, double usualProbability) {

    public SeenChance {
        Require.inRange("usualProbability", usualProbability, 0, 1);
    }

    /**
     * Cases for all chances of whose every hour it was seen how much rain fell; others are left
     * out, since rain that was put into hours by rule would judge the rule.
     *
     * @param said chances, in any order
     * @param past observed
     * @param usual what the month of an instant is like
     */
    public static List<SeenChance> of(
            List<SaidChance> said, PastWeather past, Function<Instant, MonthlyClimate> usual) {
        double[] rainMm = past.weather().rainMm();
        HourGrid grid = new HourGrid(past.weather().air().start(), rainMm.length);
        List<SeenChance> seen = new ArrayList<>();
        for (SaidChance chance : said) {
            int from = grid.hourOf(chance.window().from());
            int to = grid.hourOf(chance.window().to());
            if (from >= 0 && to <= rainMm.length && allSeen(past.timedHours(), from, to)) {
                double mm = 0;
                for (int h = from; h < to; h++) {
                    mm += rainMm[h];
                }
                double hours = chance.window().length().toMinutes() / 60.0;
                seen.add(new SeenChance(
                        chance,
                        mm >= RainAmount.MEASURABLE_MM - 1e-9,
                        usual.apply(chance.window().from()).wetChance(hours)));
            }
        }
        return seen;
    }

    private static boolean allSeen(BitSet timed, int from, int to) {
        return timed.nextClearBit(from) >= to;
    }

    ForecastCase asForecast() {
        return new ForecastCase(said.leadHours(), said.probability(), wet);
    }

    private ForecastCase asUsual() {
        return new ForecastCase(said.leadHours(), usualProbability, wet);
    }

    static List<ForecastCase> forecasts(List<SeenChance> seen) {
        return seen.stream().map(SeenChance::asForecast).toList();
    }

    static List<ForecastCase> usual(List<SeenChance> seen) {
        return seen.stream().map(SeenChance::asUsual).toList();
    }
}

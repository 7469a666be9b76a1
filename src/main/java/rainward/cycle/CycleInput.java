package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rainward.cycle.ground.SoilWord;
import rainward.farm.FieldCase;
import rainward.farm.Require;
import rainward.farm.Roster;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.queue.problem.Fillings;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.weather.alert.PublicAlert;
import rainward.weather.climate.Climate;
import rainward.weather.past.PastWeather;
import rainward.weather.skill.Recalibration;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.WeightedEnsemble;
import rainward.weather.trace.PointForecast;
import rainward.window.WindowRecord;
import rainward.window.WindowRules;

/**
 * All that one round of reckoning starts from.
 *
 * @param asOf the moment it is for
 * @param roster what names mean
 * @param fields every field, as it lies and stands
 * @param weather by property; a property without a forecast keeps its past
 * @param rules how it is reckoned
 * @param memory what was given out and told before
 * @param fillings how fields empty machines, by field, as far as that is known
 */
public record CycleInput(
        Instant asOf,
        Roster roster,
        List<FieldCase> fields,
        Map<String, PropertyWeather> weather,
        Rules rules,
        Memory memory,
        Map<String, Fillings> fillings) {

    /**
     * How far ahead the weather is drawn: seeding of the last planned day needs time to come up.
     */
    static final int TRACE_HOURS = 240;

    /** How far ahead work is planned. */
    static final int PLAN_HOURS = 168;

    public CycleInput {
        fields = List.copyOf(fields);
        weather = Map.copyOf(weather);
        fillings = Map.copyOf(fillings);
    }

    /** A round in which machines are filled by the ground that they work. */
    public CycleInput(
            Instant asOf,
            Roster roster,
            List<FieldCase> fields,
            Map<String, PropertyWeather> weather,
            Rules rules,
            Memory memory) {
        this(asOf, roster, fields, weather, rules, memory, Map.of());
    }

    ZoneId zone() {
        return roster.crew().zone();
    }

    /** The full hour that the moment lies in; traces and plan start there. */
    Instant firstHour() {
        return asOf.truncatedTo(ChronoUnit.HOURS);
    }

    Window traceHorizon() {
        return new Window(firstHour(), firstHour().plus(Duration.ofHours(TRACE_HOURS)));
    }

    Window planHorizon() {
        return new Window(firstHour(), firstHour().plus(Duration.ofHours(PLAN_HOURS)));
    }

    /**
     * Weather of one property.
     *
     * @param forecast the best there is, however old; empty where none ever came
     * @param past the days before, up to {@link #firstHour}
     * @param ensembles courses of the rain that services reckon with, beside the forecast
     * @param taught what past forecasts for the place teach
     * @param alerts public ones that stand there
     */
    public record PropertyWeather(
            Optional<ForecastSeries> forecast,
            PastWeather past,
            List<WeightedEnsemble> ensembles,
            Recalibration taught,
            List<PublicAlert> alerts) {

        public PropertyWeather {
            ensembles = List.copyOf(ensembles);
            alerts = List.copyOf(alerts);
        }

        /** Weather with nothing beside the forecast. */
        public PropertyWeather(Optional<ForecastSeries> forecast, PastWeather past) {
            this(forecast, past, List.of(), Recalibration.NONE, List.of());
        }

        Optional<PointForecast> ahead() {
            return forecast.map(f -> new PointForecast(f, ensembles, taught));
        }
    }

    /**
     * How it is reckoned.
     *
     * @param draw how the weather is drawn
     * @param workableConfidence share of traces in which ground must be fit for an hour to be
     *     planned, 0 to 1
     * @param prices of driving, overtime and change
     * @param windows when a storm window is worth a message
     * @param units of the person who reads the reasons
     * @param patient true where seed may be kept for days after those planned; false where what
     *     does not go in by then counts for nothing
     */
    public record Rules(
            Draw draw,
            double workableConfidence,
            PlanProblem.Prices prices,
            WindowRules windows,
            UnitSystem units,
            boolean patient) {

        public Rules {
            Require.inRange("workableConfidence", workableConfidence, 0.05, 0.99);
        }

        /** Rules by which seed may be kept. */
        public Rules(
                Draw draw,
                double workableConfidence,
                PlanProblem.Prices prices,
                WindowRules windows,
                UnitSystem units) {
            this(draw, workableConfidence, prices, windows, units, true);
        }
    }

    /**
     * How the weather is drawn.
     *
     * @param climate of the region
     * @param traces how many
     * @param seed same seed, same answer
     */
    public record Draw(Climate climate, int traces, long seed) {

        public Draw {
            Require.inRange("traces", traces, 10, 2000);
        }
    }

    /**
     * What was given out and told before.
     *
     * @param lastOrder the order the crew has
     * @param windows what was decided about storm windows
     * @param outOfStock mixes that the shed cannot fill
     * @param words what somebody who dug said of the soil, by field, in order of time
     */
    public record Memory(
            Optional<Plan> lastOrder,
            WindowRecord windows,
            Set<String> outOfStock,
            Map<String, List<SoilWord>> words) {

        /** Nothing was given out. */
        public static final Memory NONE =
                new Memory(Optional.empty(), WindowRecord.NOTHING, Set.of(), Map.of());

        public Memory {
            outOfStock = Set.copyOf(outOfStock);
            words = Map.copyOf(words);
        }
    }
}

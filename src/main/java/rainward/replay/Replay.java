package rainward.replay;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rainward.farm.Require;
import rainward.replay.crew.CrewSeason;
import rainward.replay.crew.Policy;
import rainward.replay.crew.Scene;
import rainward.replay.crew.World;
import rainward.replay.score.SeasonResult;
import rainward.replay.score.SeasonScore;
import rainward.replay.truth.TrueWeather;
import rainward.soil.verify.StationDay;
import rainward.soil.verify.StationYear;

/** Runs seasons again by every policy. */
public final class Replay {

    /** Weather that is needed before the first day, for the soil to forget where it began [d]. */
    private static final int RUN_UP_DAYS = 75;

    /** A season; what is not seeded by then stays undone [d]. */
    private static final int SEASON_DAYS = 42;

    /** Weather that is needed after the season, for the last seed to come up [d]. */
    private static final int AFTER_DAYS = 45;

    private static final int WHOLE_DAYS = RUN_UP_DAYS + SEASON_DAYS + AFTER_DAYS;

    /** A day without a figure counts as dry, so a season needs most of them; chosen by us. */
    private static final double LEAST_KNOWN = 2.0 / 3;

    private final Scene scene;
    private final List<Policy> policies;
    private final long tries;

    /**
     * A replay.
     *
     * @param scene crew and fields, wherever they lie
     * @param policies that are run
     * @param tries of the planner each time
     */
    public Replay(Scene scene, List<Policy> policies, long tries) {
        this.scene = scene;
        this.policies = List.copyOf(policies);
        this.tries = tries;
    }

    /**
     * A season to be run.
     *
     * @param year with its weather
     * @param start first day
     * @param seed of forecasts and luck
     */
    public record Asked(StationYear year, LocalDate start, long seed) {

        /** A season in the year that the middle of the weather lies in. */
        public static Asked of(StationYear year, LocalDate start, long seed) {
            StationDay middle = year.days().get(year.days().size() / 2);
            return new Asked(year, start.withYear(middle.weather().day().getYear()), seed);
        }

        /** As {@link SeasonResult#key}. */
        public String key() {
            return year.station() + " " + start + " " + seed;
        }

        /** Why its weather is not known well enough, in words; empty where it is. */
        public Optional<String> lacks() {
            List<StationDay> days = days();
            long known =
                    days.stream().filter(d -> d.weather().rainMm().isPresent()).count();
            return days.size() == WHOLE_DAYS && known >= LEAST_KNOWN * WHOLE_DAYS
                    ? Optional.empty()
                    : Optional.of(String.format(
                            Locale.ENGLISH,
                            "%s from %s: rain is known on %d of the %d days around it, must be"
                                    + " two in three",
                            year.station(),
                            start,
                            known,
                            WHOLE_DAYS));
        }

        private List<StationDay> days() {
            LocalDate from = start.minusDays(RUN_UP_DAYS);
            LocalDate to = from.plusDays(WHOLE_DAYS);
            return year.days().stream()
                    .filter(d -> !d.weather().day().isBefore(from)
                            && d.weather().day().isBefore(to))
                    .toList();
        }

        StationYear cut() {
            List<StationDay> days = days();
            Require.that(
                    days.size() == WHOLE_DAYS,
                    year.station() + ": the days around " + start + " are not all there");
            return new StationYear(year.station(), year.place(), days);
        }
    }

    /**
     * Seasons of stations: each start date at each station, then again with other luck.
     *
     * @param years of stations
     * @param starts first days, in whatever year
     * @param count how many seasons
     */
    public static List<Asked> seasons(List<StationYear> years, List<LocalDate> starts, int count) {
        List<Asked> asked = new ArrayList<>();
        for (long round = 0; asked.size() < count; round++) {
            for (LocalDate start : starts) {
                for (StationYear year : years) {
                    asked.add(Asked.of(year, start, 11 + round));
                }
            }
        }
        return asked.subList(0, count);
    }

    /** Tries each change that the runs by policy do not show already. */
    public List<Gains.Outcome> trials(Asked asked) {
        return Arrays.stream(Trial.values())
                .filter(trial -> !trial.isPolicy())
                .map(trial -> new Gains.Outcome(trial, tried(asked, trial)))
                .toList();
    }

    private SeasonScore tried(Asked asked, Trial trial) {
        World.Span span = new World.Span(
                asked.start().minusDays(trial.daysEarlier()), SEASON_DAYS + trial.daysEarlier());
        World world = world(trial.scene(scene.laidAround(asked.year().place())), asked, span);
        return SeasonScore.of(
                trial.policy(), CrewSeason.run(world, trial.policy(), trial.tries(tries)), world);
    }

    private static World world(Scene here, Asked asked, World.Span span) {
        TrueWeather truth = TrueWeather.of(
                asked.cut(), List.copyOf(here.roster().properties().values()), asked.seed());
        return new World(here, truth, span, asked.seed());
    }

    /** Runs one season by all policies. */
    public SeasonResult run(Asked asked) {
        Scene here = scene.laidAround(asked.year().place());
        World world = world(here, asked, new World.Span(asked.start(), SEASON_DAYS));
        return new SeasonResult(
                asked.year().station(),
                asked.start(),
                asked.seed(),
                policies.stream()
                        .map(policy ->
                                SeasonScore.of(policy, CrewSeason.run(world, policy, tries), world))
                        .toList());
    }
}
